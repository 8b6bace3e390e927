package main

import (
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

type heaterDuty struct {
	Power    float64  `json:"power_w"`
	Needed   float64  `json:"needed_w"`
	Margin   float64  `json:"margin"`
	Inlet    float64  `json:"flow_at_inlet_m3_s"`
	Outlet   float64  `json:"flow_at_outlet_m3_s"`
	Mass     float64  `json:"flow_kg_s"`
	Supply   float64  `json:"supply_c"`
	Rise     float64  `json:"rise_k"`
	ByRule   float64  `json:"power_by_1_2_x_1005_w"`
	Passes   float64  `json:"air_passes_per_h"`
	SupplyAt *float64 `json:"supply_at_needed_power_c"`
}

var bases = map[string]airheat.FlowBasis{"fan inlet": airheat.FanInlet, "standard air": airheat.StandardAir, "outlet": airheat.Outlet}

func dutyOf(p plan, d design) (heaterDuty, error) {
	flow := airheat.Flow{Value: p.Heater.Flow, Basis: bases[p.Heater.FlowBasis]}
	full, err := airheat.RiseFor(d.Air.inside, flow, p.Heater.Power)
	if err != nil {
		return heaterDuty{}, named(err, "heater.power_w into heater.flow_m3_s is too much for air")
	}
	h := heaterDuty{
		Power: p.Heater.Power, Needed: d.Loss.Total, Margin: p.Heater.Power/d.Loss.Total - 1,
		Inlet: full.InletFlow, Outlet: full.OutletFlow, Mass: full.MoistAir, Supply: full.Outlet, Rise: full.Rise,
		ByRule: full.ByRule, Passes: airheat.AirPasses(full.InletFlow, d.Shape.Volume),
	}
	if needed, err := airheat.RiseFor(d.Air.inside, flow, d.Loss.Total); err == nil {
		h.SupplyAt = &needed.Outlet
	}
	return h, nil
}

type timeFigures struct {
	Start      float64    `json:"unheated_air_c"`
	WarmUp     *float64   `json:"warm_up_h"`
	WouldReach float64    `json:"full_heat_settles_at_c"`
	HeaterOut  *float64   `json:"frost_after_heater_failure_h"`
	PowerCut   *float64   `json:"frost_after_power_cut_h"`
	Constants  [3]float64 `json:"time_constants_h"`
}

// Heat capacity of the air for its node, J/(m³ K), and of moist soil, J/(m³ K),
// from memory; the share of the heat exchange with structure and soil that
// natural convection keeps when the fan stands still, fraction, chosen.
const (
	airCapacity  = 1210.0
	soilCapacity = 2.0e6
	stillShare   = 0.5
)

// horizon is how far ahead warm-up and frost are looked for.
const horizon = 7 * 24 * time.Hour

func timesOf(p plan, d design) (timeFigures, error) {
	l := d.Loss.linear
	sky := 0.0
	if d.Air.skyBelowAir > 0 {
		sky = l.SkyDriven / d.Air.skyBelowAir
	}
	n := envelope.Nodes{
		AirCapacity: airCapacity * d.Shape.Volume, StructureCapacity: 1000 * p.Storage.Structure,
		SoilCapacity: soilCapacity * d.Shape.Floor * p.Storage.SoilDepth,
		Cover:        max(0, l.CoverAir+l.Doors+l.Bridges-sky), CoverSky: sky, Leakage: l.Leakage,
		AirStructure: p.Storage.AirToStructure * d.Shape.Floor, AirSoil: p.Storage.AirToSoil * d.Shape.Floor,
		SoilDeep: l.Ground,
	}
	still := n
	still.AirStructure *= stillShare
	still.AirSoil *= stillShare
	house, err := airheat.NewTransient(n)
	if err != nil {
		return timeFigures{}, err
	}
	dark, err := airheat.NewTransient(still)
	if err != nil {
		return timeFigures{}, err
	}
	drive := envelope.Drive{Heat: p.Heater.Power, Outside: p.Site.Outside, SkyDrop: d.Air.skyBelowAir, Deep: climate(p).OutsideMean}
	unheated := drive
	unheated.Heat = 0
	up, err := house.WarmUp(drive, p.Inside.Temperature, horizon)
	if err != nil {
		return timeFigures{}, err
	}
	out, err := house.CoolDown(drive, p.Inside.Temperature, 0, 0, horizon)
	if err != nil {
		return timeFigures{}, err
	}
	cut, err := house.Failure(dark, drive, p.Inside.Temperature, 0, 0, horizon)
	if err != nil {
		return timeFigures{}, err
	}
	f := timeFigures{Start: house.Steady(unheated).Air, WarmUp: hours(up), WouldReach: house.Steady(drive).Air, HeaterOut: hours(out), PowerCut: hours(cut)}
	for i, c := range house.TimeConstants() {
		f.Constants[i] = c.Hours()
	}
	return f, nil
}

// hours returns the time of an event in h, nil when it does not come.
func hours(e airheat.Event) *float64 {
	if !e.Reached {
		return nil
	}
	h := e.Time.Hours()
	return &h
}
