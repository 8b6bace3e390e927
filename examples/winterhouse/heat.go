package main

import (
	"errors"
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/ventilation"
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
		ByRule: full.ByRule, Passes: ventilation.AirChanges(full.InletFlow, d.Shape.Volume),
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

// stillShare is the fraction of the heat exchange with structure and soil that
// natural convection keeps when the fan stands still, chosen.
const stillShare = 0.5

// horizon is how far ahead warm-up and frost are looked for.
const horizon = 7 * 24 * time.Hour

// timesOf takes the house's loss as a straight line down to the outside air for
// the warm-up, and down to the frost for the failures.
func timesOf(p plan, d design) (timeFigures, error) {
	stores := envelope.NodeStores{
		Structure: 1000 * p.Storage.Structure / d.Shape.Floor, SoilDepth: p.Storage.SoilDepth,
		AirStructure: p.Storage.AirToStructure, AirSoil: p.Storage.AirToSoil,
	}
	wide, drive, err := d.house.Nodes(d.night, p.Site.Outside, stores)
	if err != nil {
		return timeFigures{}, err
	}
	house, err := airheat.NewTransient(wide)
	if err != nil {
		return timeFigures{}, err
	}
	unheated := drive
	drive.Heat = p.Heater.Power
	up, err := house.WarmUp(drive, p.Inside.Temperature, horizon)
	if err != nil {
		return timeFigures{}, err
	}
	fan, fall, err := d.house.Nodes(d.night, 0, stores)
	if err != nil {
		return timeFigures{}, err
	}
	still := fan
	still.AirStructure *= stillShare
	still.AirSoil *= stillShare
	turning, e1 := airheat.NewTransient(fan)
	dark, e2 := airheat.NewTransient(still)
	if err := errors.Join(e1, e2); err != nil {
		return timeFigures{}, err
	}
	fails := airheat.HeatFailure{SetPoint: p.Inside.Temperature, Share: 0, Level: 0, Limit: horizon}
	out, err := turning.CoolDown(turning, fall, fails)
	if err != nil {
		return timeFigures{}, err
	}
	cut, err := turning.CoolDown(dark, fall, fails)
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
