package main

import (
	"math"
	"time"

	"cloche.example/ventilation"
)

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
	return off > tubesAgree*(math.Abs(at.heat)+evaporating*at.water)+least, err
}

// end passes the hour that was solved, with the house's air as it came out.
func (u *tubes) end(x *ventilation.ClimateState) error {
	none := x.DryAir == 0 && x.Temperature == 0 // without a state the stores stand still
	var p passed
	var err error
	if !none {
		err = u.store.SetAbove(u.over(x))
	}
	switch {
	case none || err != nil:
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
