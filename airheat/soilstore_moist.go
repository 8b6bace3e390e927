package airheat

import (
	"errors"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// MoistStoreStep is what a store did in one step with moist air.
type MoistStoreStep struct {
	StoreStep             // °C, W, Pa as its fields say; Heat with that of the water
	HumidityRatio float64 // kg/kg dry air, of the air that leaves
	Water         float64 // kg/s, condensed in the store; it must be drained
	Latent        float64 // W, the part of Heat that condensing water gives
}

// StepMoist is Step for moist air in the state inlet, with the water that
// condenses where the wall lies below its dew point: flow in m³/s at the inlet
// (above 0 to 1000), air for the fan's pressure, step 1 to 86400 s. Mass follows
// heat by Lewis's relation; a wet store does not dry again into air that could
// take the water up. The heat into the store is what the air's enthalpy loses
// less what the water takes along. The error lists every fault.
func (s *Store) StepMoist(flow float64, inlet psychro.State, air AirProperties, step time.Duration, backward bool) (MoistStoreStep, error) {
	if err := errors.Join(
		s.made(),
		notZero(ductFlowRange).Check("flow", flow),
		stateCheck("inlet", inlet),
		storeStepRange.Check("step", step.Seconds()),
		domain.Within("air", air.check()),
	); err != nil {
		return MoistStoreStep{}, err
	}
	lewis, moist := inlet.LewisFactor(), inlet.Model()
	mass := flow / inlet.SpecificVolume()
	r := MoistStoreStep{StoreStep: StoreStep{Units: s.film * float64(len(s.temp)) / (mass * inlet.HeatCapacity())}}
	r.Pressure, r.FanPower = s.cost(flow, air)
	parts := s.parts(flow, step)
	seconds, share := step.Seconds()/float64(parts), 1/float64(parts)
	for range parts {
		a := passing{t: inlet.Temperature(), w: inlet.HumidityRatio(), p: inlet.Pressure(), mass: mass}
		for i := range s.temp {
			cell := s.cell(i, backward)
			k := s.sweep(cell, seconds)
			a.units = s.wall / (mass * (cpAir + cpVapour*a.w))
			c := wetCell(moist, a, lewis, 1/(s.behind+s.late*k.per), k.free)
			k.settle(cell, k.free+k.per*c.heat)
			r.Heat += c.heat * share
			r.Up += s.rising(cell) * share
			r.Latent += (c.heat - mass*(cpAir+cpVapour*c.w)*(a.t-c.t)) * share
			r.Water += mass * (a.w - c.w) * share
			a.t, a.w = c.t, c.w
		}
		r.Outlet += a.t * share
		r.HumidityRatio += a.w * share
	}
	return r, nil
}
