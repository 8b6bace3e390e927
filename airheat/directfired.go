package airheat

import (
	"errors"
	"math"
	"time"
)

// DirectFired is what a heater without a flue gives to the house's air. All
// its heat stays inside, part of it as vapour.
type DirectFired struct {
	Fuel      float64 // kg/s burnt
	Sensible  float64 // W, the lower heating value's share
	Latent    float64 // W, carried by the water made
	Water     float64 // kg/s of vapour made
	CO2       float64 // kg/s of carbon dioxide made
	CO2Volume float64 // m³/s of carbon dioxide at 0 °C and 101325 Pa
	Oxygen    float64 // kg/s of oxygen used
}

// DirectFired returns what the fuel gives to the house when it burns without a
// flue at power, W on the lower heating value. Print CombustionCaution with it.
func (f *Fuel) DirectFired(power float64) (DirectFired, error) {
	if err := errors.Join(f.valid(), powerRange.Check("power", power)); err != nil {
		return DirectFired{}, err
	}
	s := f.burn(DefaultCombustionAir())
	m := power / f.Lower
	water := m * s.H2O * molarH2O
	return DirectFired{
		Fuel: m, Sensible: power, Latent: water * CondensationHeat, Water: water,
		CO2: m * s.CO2 * molarCO2, CO2Volume: m * s.CO2 * molarVolume, Oxygen: m * s.Oxygen * molarO2,
	}, nil
}

// SteadyShare returns the fraction by which a gas released at source, m³/s,
// ends above that of the outside air, when flow, m³/s, is exchanged: both at
// the same temperature. NaN unless flow is positive and source 0 or more.
func SteadyShare(source, flow float64) float64 {
	if !(source >= 0 && flow > 0) {
		return math.NaN()
	}
	return source / flow
}

// ShareAfter returns the fraction of a gas above outside air after a time in a
// well mixed volume, m³, that began at start, with source and flow in m³/s:
// C = Cs + (C0 - Cs) exp(-flow t/volume). NaN unless flow and volume are
// positive, and for a time before the start.
func ShareAfter(start, source, flow, volume float64, after time.Duration) float64 {
	if !(flow > 0 && volume > 0 && start >= 0 && after >= 0) {
		return math.NaN()
	}
	s := SteadyShare(source, flow)
	return s + (start-s)*math.Exp(-flow*after.Seconds()/volume)
}

// PurgeTime returns how long a well mixed house takes to dilute a gas by
// factor, a ratio of 1 and more, at airChanges, air changes per hour. Forever
// without air changes and for inputs outside: a house is never told clear of
// carbon monoxide by a slip.
func PurgeTime(factor, airChanges float64) time.Duration {
	if !(factor >= 1 && airChanges > 0) {
		return Forever
	}
	return duration(math.Log(factor) / airChanges * 3600)
}
