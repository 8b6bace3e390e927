package airheat

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
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
// flue at power, W, 0 to 1e9, on the lower heating value. Print CombustionCaution with it.
func (f Fuel) DirectFired(power float64) (DirectFired, error) {
	if err := errors.Join(f.valid(), powerRange.Check("power", power)); err != nil {
		return DirectFired{}, err
	}
	s := f.burn(DefaultCombustionAir())
	m := power / f.Lower
	water := m * s.H2O * molarH2O
	return DirectFired{
		Fuel: m, Sensible: power, Latent: water * condensationHeat, Water: water,
		CO2: m * s.CO2 * molarCO2, CO2Volume: m * s.CO2 * molarVolume, Oxygen: m * s.Oxygen * molarO2,
	}, nil
}

// steadyShare returns the fraction by which a gas released at source, m³/s, 0
// to 1e4, ends above that of the outside air, when flow, m³/s, 1e-6 to 1e4, is
// exchanged: both at the same temperature. NaN outside.
func steadyShare(source, flow float64) float64 {
	if !sourceRange.Contains(source) || !flowRange.Contains(flow) {
		return math.NaN()
	}
	return source / flow
}

// MixedGas is a gas in a well mixed volume that exchanges air with outside.
type MixedGas struct {
	Start  float64 // fraction, 0 to 1, above outside air at the start
	Source float64 // m³/s, 0 to 1e4, released
	Flow   float64 // m³/s, 1e-6 to 1e4, exchanged, at the same temperature
	Volume float64 // m³, 0.001 to 1e8
}

// ShareAfter returns the fraction of the gas above outside air after a time:
// C = Cs + (C0 - Cs) exp(-flow t/volume). NaN outside the ranges and for a time
// before the start.
func (g MixedGas) ShareAfter(after time.Duration) float64 {
	s := steadyShare(g.Source, g.Flow)
	if !shareRange.Contains(g.Start) || !mixedVolumeRange.Contains(g.Volume) || after < 0 {
		return math.NaN()
	}
	return s + (g.Start-s)*math.Exp(-g.Flow*after.Seconds()/g.Volume)
}

var (
	sourceRange      = domain.Range{Min: 0, Max: 1e4, Unit: "m³/s"}
	mixedVolumeRange = domain.Range{Min: 0.001, Max: 1e8, Unit: "m³"}
	dilutionRange    = domain.Range{Min: 1, Max: 1e12, Unit: "ratio"}
	changesRange     = domain.Range{Min: domain.MoreThan(0), Max: 1e4, Unit: "1/h"}
)

// PurgeTime returns how long a well mixed house takes to dilute a gas by
// factor, a ratio, 1 to 1e12, at airChanges, air changes per hour in 1/h, more
// than 0, at most 1e4. Forever outside: a house is never called clear of carbon
// monoxide by an input error.
func PurgeTime(factor, airChanges float64) time.Duration {
	if !dilutionRange.Contains(factor) || !changesRange.Contains(airChanges) {
		return Forever
	}
	return duration(math.Log(factor) / airChanges * 3600)
}
