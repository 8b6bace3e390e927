package answers

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Heater is the heater on the design night.
type Heater struct {
	Power       float64  `json:"power_w"`
	Needed      float64  `json:"needed_w"`
	Worse       string   `json:"sized_for"`              // wet or dry
	Ridge       float64  `json:"air_from_ridge_saves_w"` // of what the house asks; below zero it costs; 0 where the heater draws low
	Margin      float64  `json:"margin_fraction"`
	FlowFrom    string   `json:"flow_from"` // the plan, or fan and ducts
	Inlet       float64  `json:"flow_at_inlet_m3_s"`
	Outlet      float64  `json:"flow_at_outlet_m3_s"`
	Mass        float64  `json:"flow_kg_s"`
	InletAir    float64  `json:"inlet_c"`
	Supply      float64  `json:"supply_c"`
	Rise        float64  `json:"rise_k"`
	SupplyAt    *float64 `json:"supply_at_needed_power_c"` // null: hotter than air is computed for
	BySeaLevel  float64  `json:"power_by_sea_level_rule_w"`
	Passes      float64  `json:"house_volumes_per_h"`
	PlantsFlow  *float64 `json:"flow_for_plants_m3_s"` // at which the supply is no hotter than plants bear at the outlet
	PlantsBear  float64  `json:"plants_bear_c"`
	PeopleBear  float64  `json:"people_bear_c"`
	FilmBears   float64  `json:"film_bears_c"`
	FuelPerHour float64  `json:"energy_at_needed_power_w"`

	full airheat.Duty
}

// Ducts is the air's way from the fan to the house.
type Ducts struct {
	Flow      float64  `json:"flow_at_fan_m3_s"`
	Stated    float64  `json:"flow_stated_m3_s"`
	Pressure  float64  `json:"pressure_pa"`
	Electric  float64  `json:"fan_electric_w"`
	Crossings int      `json:"operating_points_count"`
	Rising    bool     `json:"fan_pressure_rises_with_flow"`
	Branches  []Branch `json:"branches"`
	Tube      *Tube    `json:"tube"`

	blown fromplan.Blown
}

// Branch is what a branch of the ducts carries.
type Branch struct {
	Name string  `json:"name"`
	Flow float64 `json:"flow_m3_s"`
	Loss float64 `json:"loss_pa"`
}

// Tube is the perforated tube at the flow that fan and ducts give it.
type Tube struct {
	Hole     float64  `json:"hole_diameter_m"`
	Evenness float64  `json:"evenness_fraction"`
	Wanted   float64  `json:"evenness_wanted_fraction"`
	Pressure float64  `json:"pressure_pa"`
	First    float64  `json:"first_row_c"`
	Last     float64  `json:"last_row_c"`
	AtCrop   *float64 `json:"jet_at_crop_c"` // null: the jet does not come down to it
	CropWind *float64 `json:"jet_at_crop_m_s"`
}

// Blow is the air's way, nil where the plan has no fan or no ducts.
func (h *House) Blow() (*Ducts, error) {
	p := h.Plan
	if p.HeaterFan == nil || len(p.Ducts) == 0 {
		return nil, nil
	}
	inside := p.SetPoints.WinterNight.Temperature
	b, err := fromplan.Blow(p, p.Heater.Power, inside)
	if err != nil {
		return nil, err
	}
	d := &Ducts{Flow: b.Inlet, Stated: h.statedInlet(), Pressure: b.Pressure, Electric: b.Electric, Crossings: b.Crossing, Rising: b.Rising, blown: b}
	for i, f := range b.Ducts.Branches {
		d.Branches = append(d.Branches, Branch{p.Ducts[i].Name, f.Flow, f.Loss})
	}
	if t := b.Tube; t != nil && len(b.TubeFlow.Positions) > 0 {
		rows := b.TubeFlow.Positions
		d.Tube = &Tube{Hole: t.HoleDiameter, Evenness: b.TubeFlow.Evenness, Wanted: p.PerforatedTube.Evenness, Pressure: b.TubeFlow.FanTotal,
			First: rows[0].Temperature, Last: rows[len(rows)-1].Temperature}
		j := fromplan.HoleJet(b, inside)
		j.Angle = -45
		if at, _ := j.Meets(-p.PerforatedTube.AboveCrop, 10*p.PerforatedTube.AboveCrop); at.Speed == at.Speed {
			d.Tube.AtCrop, d.Tube.CropWind = some(inside+at.Excess), some(at.Speed)
		}
	}
	return d, nil
}

// statedInlet is the flow that the plan states, as it enters the heater, m³/s.
func (h *House) statedInlet() float64 {
	d, err := airheat.RiseFor(h.Night.Inside, fromplan.HeaterFlow(h.Plan), h.Plan.Heater.Power)
	if err != nil {
		return h.Plan.Heater.Flow
	}
	return d.InletFlow
}

// Heater is the heater that must give needed, W, on a night, with the flow of the
// ducts where there are any. Where it draws from the ridge, it must give less, or
// more, and its air enters as warm as it is there.
func (h *House) Heater(needed float64, night Night, ducts *Ducts) (Heater, error) {
	p := h.Plan
	inlet := h.statedInlet()
	if ducts != nil {
		inlet = ducts.Flow
	}
	saving, entering, err := h.drawnAir(night, inlet)
	if err != nil {
		return Heater{}, err
	}
	ridge := needed * saving
	needed -= ridge
	air := h.Night.Inside
	if h.fromRidge() {
		if air, err = psychro.FromHumidityRatio(entering, air.HumidityRatio(), h.Pressure); err != nil {
			return Heater{}, err
		}
	}
	flow, from := fromplan.HeaterFlow(p), "the plan"
	if ducts != nil {
		flow, from = airheat.Flow{Value: ducts.Flow, Basis: airheat.FanInlet}, "fan and ducts"
	}
	full, err := airheat.RiseFor(air, flow, p.Heater.Power)
	if err != nil {
		return Heater{}, fmt.Errorf("heater.power_w of %g W into a flow of %.3g m³/s is too much for air: it would leave hotter than some 200 °C, where the formulas end", p.Heater.Power, flow.Value)
	}
	limits := airheat.DefaultSupplyLimits()
	r := Heater{
		Power: p.Heater.Power, Needed: needed, Margin: p.Heater.Power/needed - 1, FlowFrom: from,
		Inlet: full.InletFlow, Outlet: full.OutletFlow, Mass: full.MoistAir, Ridge: ridge, InletAir: air.Temperature(), Supply: full.Outlet, Rise: full.Rise,
		BySeaLevel: full.ByRule, Passes: ventilation.AirChanges(full.InletFlow, h.Shape.Volume),
		PlantsBear: limits.Plant, PeopleBear: limits.Person, FilmBears: limits.Film, full: full,
	}
	if at, err := airheat.RiseFor(air, flow, needed); err == nil {
		r.SupplyAt = some(at.Outlet)
	}
	if d, err := airheat.FlowFor(air, p.Heater.Power, limits.Plant); err == nil {
		r.PlantsFlow = some(d.InletFlow)
	}
	s, err := fromplan.HeatSource(p)
	if err != nil {
		return r, err
	}
	r.FuelPerHour = s.Energy(min(needed, p.Heater.Power), 1)
	return r, nil
}
