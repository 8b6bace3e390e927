package airheat

import (
	"errors"
	"time"

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
func (s *Store) StepMoist(flow float64, inlet psychro.State, air Air, step time.Duration, backward bool) (MoistStoreStep, error) {
	if err := errors.Join(
		s.made(),
		notZero(ductFlowRange).Check("flow", flow),
		stateCheck("inlet", inlet),
		storeStepRange.Check("step", step.Seconds()),
		air.check("Air."),
	); err != nil {
		return MoistStoreStep{}, err
	}
	lewis, moist := inlet.LewisFactor(), inlet.Model()
	mass := flow / inlet.SpecificVolume()
	r := MoistStoreStep{StoreStep: StoreStep{Outlet: inlet.Temperature(), Units: s.film * storeCells / (mass * inlet.HeatCapacity())}, HumidityRatio: inlet.HumidityRatio()}
	r.Pressure, r.FanPower = s.cost(flow, air)
	for i := range storeCells {
		tube := s.temp[i]
		if backward {
			tube = s.temp[storeCells-1-i]
		}
		k := s.sweep(tube, step.Seconds())
		units := s.wall / (mass * (cpAir + cpVapour*r.HumidityRatio))
		c := wetCell(moist, passing{r.Outlet, r.HumidityRatio, inlet.Pressure(), mass, units}, lewis, 1/(s.behind+k.per), k.free)
		k.settle(tube, k.free+k.per*c.heat)
		r.Heat += c.heat
		r.Latent += c.heat - mass*(cpAir+cpVapour*c.w)*(r.Outlet-c.t)
		r.Water += mass * (r.HumidityRatio - c.w)
		r.Outlet, r.HumidityRatio = c.t, c.w
	}
	return r, nil
}
