package main

import (
	"time"

	"cloche.example/airheat"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// tubes are the plan's air tubes in the soil, through which a fan blows house
// air: by day to store heat, and back when the heater would work. Water that
// condenses in them gives them its heat and is drained.
type tubes struct {
	store    *airheat.Store
	flow     float64 // m³/s
	air      airheat.AirProperties
	pressure float64   // Pa
	grip     float64   // W/K, from the floor's surface to the soil under it
	fan      []float64 // W, electricity by the hour
	up       []float64 // W, from it into the floor by the hour
	took     []float64 // W, by the hour, from the house's air: what the tubes keep and what drains off with their water
	water    []float64 // kg/s, condensed by the hour
	keeps    []float64 // W, by the hour, the part of it that does not drain off with the water
	owed     float64   // K, by which the deep ground is to be warmer for what rose into the floor and did not yet count
	runs     bool      // in the hour that is solved
	back     bool      // and blows backward, to give heat
}

// Limits of when the fan runs, K: the house over its set-point, and over or under
// what the air meets in the soil (chosen).
const (
	spare = 2
	worth = 3
)

// newTubes has the soil at the house's mean temperature; nil without tubes.
func newTubes(p *plan.Plan, pressure, grip float64) (*tubes, error) {
	if p.SoilStore == nil {
		return nil, nil
	}
	s, at := fromplan.SoilStore(p), answers.MeanSetPoint(p)
	s.Above = at
	store, err := airheat.NewSoilStore(s, at)
	return &tubes{store: store, flow: p.SoilStore.Flow, air: airheat.DryAir(at, pressure), pressure: pressure, grip: grip}, err
}

// over is the temperature of the soil under the floor in the state x, °C, to which
// heat rises from the tubes.
func (u *tubes) over(x *ventilation.ClimateState) float64 {
	if u.grip <= 0 {
		return x.FloorTemperature
	}
	return x.FloorTemperature - x.Ground/u.grip
}

// passed is house air that went through the tubes.
type passed struct {
	heat  float64 // W, sensible: by which the air comes back cooler
	water float64 // kg/s, condensed
	step  airheat.MoistStoreStep
	air   psychro.State // before
}

// pass blows air of t, °C, and w, kg/kg, through a store for an hour.
func (u *tubes) pass(store *airheat.Store, t, w float64) (p passed, err error) {
	w = min(w, psychro.IdealGas.SaturationHumidityRatio(t, u.pressure)*(1-1e-9)) // saturated air, rounded
	if p.air, err = psychro.IdealGas.FromHumidityRatio(t, w, u.pressure); err != nil {
		return p, err
	}
	if p.step, err = store.StepMoist(u.flow, p.air, u.air, time.Hour, u.back); err != nil {
		return p, err
	}
	mass := u.flow / p.air.SpecificVolume()
	dry, err := psychro.IdealGas.FromHumidityRatio(t, p.step.HumidityRatio, u.pressure)
	p.heat, p.water = mass*dry.HeatCapacity()*(t-p.step.Outlet), p.step.Water
	return p, err
}

// Steps by which the slopes of what tubes take are found.
const (
	byKelvin = 0.1   // K
	byRatio  = -1e-5 // kg/kg: drier, since the air may be saturated
)

// straight sets what the house's air meets in the tubes as straight lines through what
// they take in its state x, and returns that.
func (u *tubes) straight(x *ventilation.ClimateState, t *ventilation.Targets) (passed, error) {
	own := u.store.Clone()
	if err := own.SetAbove(u.over(x)); err != nil {
		return passed{}, err
	}
	at, err := u.pass(own.Clone(), x.Temperature, x.HumidityRatio)
	if err != nil {
		return at, err
	}
	warmer, err := u.pass(own.Clone(), x.Temperature+byKelvin, x.HumidityRatio)
	if err != nil {
		return at, err
	}
	t.Exchange = (warmer.heat - at.heat) / byKelvin
	t.Store = x.Temperature - at.heat/t.Exchange
	t.Condensing, t.StoreVapour = 0, 0
	if at.water <= 0 {
		return at, nil
	}
	drier, err := u.pass(own.Clone(), x.Temperature, x.HumidityRatio+byRatio)
	if err != nil {
		return at, err
	}
	t.Condensing = (drier.water - at.water) / (drier.air.VapourPressure() - at.air.VapourPressure())
	t.StoreVapour = max(0, x.VapourPressure-at.water/t.Condensing)
	return at, nil
}
