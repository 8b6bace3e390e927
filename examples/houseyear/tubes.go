package main

import (
	"math"
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
	fan      []float64 // W, electricity by the hour
	up       []float64 // W, from it into the floor by the hour
	took     []float64 // W, by the hour, from the house's air: what the tubes keep and what drains off with their water
	water    []float64 // kg/s, condensed by the hour
	keeps    []float64 // W, by the hour, the part of it that does not drain off with the water
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
func newTubes(p *plan.Plan, pressure float64) (*tubes, error) {
	if p.SoilStore == nil {
		return nil, nil
	}
	s, at := fromplan.SoilStore(p), answers.MeanSetPoint(p)
	s.Above = at
	store, err := airheat.NewSoilStore(s, at)
	return &tubes{store: store, flow: p.SoilStore.Flow, air: airheat.DryAir(at, pressure), pressure: pressure}, err
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
	at, err := u.pass(u.store.Clone(), x.Temperature, x.HumidityRatio)
	if err != nil {
		return at, err
	}
	warmer, err := u.pass(u.store.Clone(), x.Temperature+byKelvin, x.HumidityRatio)
	if err != nil {
		return at, err
	}
	t.Exchange = (warmer.heat - at.heat) / byKelvin
	t.Store = x.Temperature - at.heat/t.Exchange
	t.Condensing, t.StoreVapour = 0, 0
	if at.water <= 0 {
		return at, nil
	}
	drier, err := u.pass(u.store.Clone(), x.Temperature, x.HumidityRatio+byRatio)
	if err != nil {
		return at, err
	}
	t.Condensing = (drier.water - at.water) / (drier.air.VapourPressure() - at.air.VapourPressure())
	t.StoreVapour = max(0, x.VapourPressure-at.water/t.Condensing)
	return at, nil
}

// begin decides whether the fan runs in the hour that comes, by what the house was
// in the hour before.
func (u *tubes) begin(t *ventilation.Targets, before *ventilation.ClimateState, heated bool) error {
	u.runs, u.back = false, heated
	if !u.back && before.Temperature < t.Warm+spare {
		return nil
	}
	own := *t
	if _, err := u.straight(before, t); err != nil {
		return err
	}
	if u.runs = before.Temperature > t.Store+worth; u.back {
		u.runs = t.Store > t.Warm+worth
	}
	if !u.runs {
		*t = own
	}
	return nil
}

// tubesAgree is to which part of it the house gives what the tubes take, and
// evaporating what weighs their water in that, J/kg.
const (
	tubesAgree  = 1e-8
	evaporating = 2.5e6
)

// refine reports whether the tubes take other than they were taken to in the state x,
// and sets that anew.
func (u *tubes) refine(x *ventilation.ClimateState, t *ventilation.Targets) (bool, error) {
	if !u.runs {
		return false, nil
	}
	at, err := u.straight(x, t)
	off := math.Abs(at.heat-x.ToStore) + evaporating*math.Abs(at.water-x.IntoStore)
	return off > tubesAgree*(math.Abs(at.heat)+evaporating*at.water)+1e-6, err
}

// end passes the hour that was solved, with the house's air as it came out.
func (u *tubes) end(x *ventilation.ClimateState) error {
	none := x.DryAir == 0 && x.Temperature == 0 // without a state the stores stand still
	var p passed
	var err error
	switch {
	case none:
	case u.runs:
		if p, err = u.pass(u.store, x.Temperature, x.HumidityRatio); err != nil {
			return err
		}
	default:
		p.step.StoreStep, err = u.store.Step(0, x.Temperature, u.air, time.Hour, u.back)
	}
	u.fan, u.up = append(u.fan, p.step.FanPower), append(u.up, p.step.Up)
	u.keeps = append(u.keeps, p.step.Heat)
	u.took, u.water = append(u.took, p.heat+latent(x)*p.water), append(u.water, p.water)
	return err
}

// latent is the enthalpy of the vapour that condenses in the tubes, J/kg; 0 where none
// does.
func latent(x *ventilation.ClimateState) float64 {
	if x.IntoStore > 0 {
		return x.StoreLatent / x.IntoStore
	}
	return 0
}
