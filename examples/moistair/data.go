package main

import (
	"math"

	"cloche.example/psychro"
)

// found is a state in JSON; null where a property is not defined, as the dew
// point of dry air.
type found struct {
	Pressure                 *float64 `json:"pressure_pa"`
	Temperature              *float64 `json:"dry_bulb_c"`
	RelativeHumidity         *float64 `json:"relative_humidity"`
	HumidityRatio            *float64 `json:"humidity_ratio_kg_kg"`
	SpecificHumidity         *float64 `json:"specific_humidity_kg_kg"`
	AbsoluteHumidity         *float64 `json:"absolute_humidity_kg_m3"`
	MoleFraction             *float64 `json:"mole_fraction"`
	DegreeOfSaturation       *float64 `json:"degree_of_saturation_fraction"`
	VapourPressure           *float64 `json:"vapour_pressure_pa"`
	SaturationVapourPressure *float64 `json:"saturation_vapour_pressure_pa"`
	VapourPressureDeficit    *float64 `json:"vapour_pressure_deficit_pa"`
	DewPoint                 *float64 `json:"dew_point_c"`
	WetBulb                  *float64 `json:"wet_bulb_c"`
	Enthalpy                 *float64 `json:"enthalpy_j_kg"`
	Entropy                  *float64 `json:"entropy_j_kg_k"`
	SpecificVolume           *float64 `json:"specific_volume_m3_kg"`
	Density                  *float64 `json:"density_kg_m3"`
	HeatCapacity             *float64 `json:"heat_capacity_j_kg_k"`
	LatentHeat               *float64 `json:"latent_heat_j_kg"`
	Viscosity                *float64 `json:"viscosity_pa_s"`
	Conductivity             *float64 `json:"conductivity_w_m_k"`
	VapourDiffusivity        *float64 `json:"vapour_diffusivity_m2_s"`
	PrandtlNumber            *float64 `json:"prandtl_number"`
	SchmidtNumber            *float64 `json:"schmidt_number"`
	PsychrometricConstant    *float64 `json:"psychrometric_constant_pa_k"`
}

func foundOf(q psychro.Properties) found {
	return found{
		Pressure:                 some(q.Pressure),
		Temperature:              some(q.Temperature),
		RelativeHumidity:         some(q.RelativeHumidity),
		HumidityRatio:            some(q.HumidityRatio),
		SpecificHumidity:         some(q.SpecificHumidity),
		AbsoluteHumidity:         some(q.AbsoluteHumidity),
		MoleFraction:             some(q.MoleFraction),
		DegreeOfSaturation:       some(q.DegreeOfSaturation),
		VapourPressure:           some(q.VapourPressure),
		SaturationVapourPressure: some(q.SaturationVapourPressure),
		VapourPressureDeficit:    some(q.VapourPressureDeficit),
		DewPoint:                 some(q.DewPoint),
		WetBulb:                  some(q.WetBulb),
		Enthalpy:                 some(q.Enthalpy),
		Entropy:                  some(q.Entropy),
		SpecificVolume:           some(q.SpecificVolume),
		Density:                  some(q.Density),
		HeatCapacity:             some(q.HeatCapacity),
		LatentHeat:               some(q.LatentHeat),
		Viscosity:                some(q.Viscosity),
		Conductivity:             some(q.Conductivity),
		VapourDiffusivity:        some(q.VapourDiffusivity),
		PrandtlNumber:            some(q.PrandtlNumber),
		SchmidtNumber:            some(q.SchmidtNumber),
		PsychrometricConstant:    some(q.PsychrometricConstant),
	}
}

func some(v float64) *float64 {
	if math.IsNaN(v) {
		return nil
	}
	return &v
}

// data are the states, and those that they change to.
func data(states, ends []psychro.State) any {
	d := struct {
		States []found `json:"states"`
		Ends   []found `json:"second_states"`
	}{Ends: []found{}}
	for _, s := range states {
		d.States = append(d.States, foundOf(s.Properties()))
	}
	for _, s := range ends {
		d.Ends = append(d.Ends, foundOf(s.Properties()))
	}
	return d
}
