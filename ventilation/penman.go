package ventilation

import (
	"errors"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// BigLeaf is the canopy as one wet surface behind two resistances.
type BigLeaf struct {
	Slope       float64 // Pa/K, of the saturation vapour pressure at the air's temperature
	Psychro     float64 // Pa/K, psychrometric constant
	Radiation   float64 // W/m², latent heat that the available radiation drives
	Dryness     float64 // W/m², latent heat that the air's deficit drives
	Latent      float64 // W/m², the sum
	Heat        float64 // W/m², sensible: the rest of the radiation
	Transpired  float64 // kg/(m² s)
	Temperature float64 // °C, of the surface that gives off Heat
}

// bigLeafRange is the range of the resistances of a big leaf.
var bigLeafRange = domain.Range{Min: 0, Max: 1e5, Unit: "s/m", Source: "free water in a gale to a shut canopy"}
var openBigLeafRange = domain.Range{Min: domain.MoreThan(0), Max: 1e5, Unit: "s/m", Source: "free water in a gale to a shut canopy"}

// PenmanMonteith returns the evaporation of a canopy in the given air from the
// available radiation (net radiation less heat into the ground), W/m² (-1000
// to 1500), behind the aerodynamic and the surface resistance, s/m, 0 to
// 1e5, of which aerodynamic is more than 0, at most 1e5, both on floor area:
//
//	lambda E = (s Rn + rho cp D/ra)/(s + gamma (1 + rs/ra))
//
// [Monteith65], [FAO56] eq. 3. It is an alternative to Canopy.Solve, with the
// saturation line straight and the surface's own radiation taken as known: the
// resistances of a crop are LeafBoundary/(2 LAI) and the stomatal one over 2
// LAI, or grass's 100 s/m over half the LAI. The error joins the inputs outside
// their ranges.
func PenmanMonteith(air psychro.State, available, aerodynamic, surface float64) (BigLeaf, error) {
	if err := errors.Join(
		temperatureRange.Check("air.Temperature", air.Temperature()),
		pressureRange.Check("air.Pressure", air.Pressure()),
		domain.Range{Min: -1000, Max: 1500, Unit: "W/m²", Source: "net radiation"}.Check("available", available),
		openBigLeafRange.Check("aerodynamic", aerodynamic),
		bigLeafRange.Check("surface", surface),
	); err != nil {
		return BigLeaf{}, err
	}
	t, p, w := air.Temperature(), air.Pressure(), air.HumidityRatio()
	e := p * w / (vapourRatio + w)
	cp := heatCapacityAir + vapourHeat*w
	rhoCp := (p - e) / (gasConstantDryAir * (t + kelvin)) * cp
	latent := vapourEnthalpy(t) - liquidHeat*t
	es, slope := saturation(t)
	b := BigLeaf{Slope: slope, Psychro: cp * (p - e) / (vapourRatio * latent)}
	under := b.Slope + b.Psychro*(1+surface/aerodynamic)
	b.Radiation = b.Slope * available / under
	b.Dryness = rhoCp * (es - e) / aerodynamic / under
	b.Latent = b.Radiation + b.Dryness
	b.Heat = available - b.Latent
	b.Transpired = b.Latent / latent
	b.Temperature = t + b.Heat*aerodynamic/rhoCp
	return b, nil
}
