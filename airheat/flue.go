package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of the flue.
var (
	flueRange        = domain.Range{Min: -20, Max: 900, Unit: "°C", Source: "the fits of the gases' heat capacities"}
	fireAirRange     = domain.Range{Min: -30, Max: 60, Unit: "°C"}
	gasPressureRange = domain.Range{Min: 30e3, Max: 200e3, Unit: "Pa"}
)

// FlueHeat is the heat that leaves with the flue gas, per kg of fuel.
type FlueHeat struct {
	Gas       FlueGas // composition of the flue gas
	Sensible  float64 // J/kg, heat of the gases and of the condensate above the air's temperature
	Water     float64 // kg/kg, water from hydrogen and moisture of the fuel
	Condensed float64 // kg/kg, water condensed before the gas leaves
	Latent    float64 // J/kg, heat of the fuel's water that leaves as vapour: the heating values' difference less what condenses
	DewPoint  float64 // °C, of the flue gas; NaN where it is so dry that it has none above -100 °C
	OfLower   float64 // fraction of the lower heating value; below zero when condensation returns more than is lost
	OfHigher  float64 // fraction of the higher heating value
}

const liquidHeat = 4.18e3 // J/(kg K), liquid water

// FlueState says how a fire draws air and lets the flue gas go.
type FlueState struct {
	Drawn           CombustionAir // air the fire draws
	AirRatio        float64       // ratio, 1 to 50, of that air to the least
	AirTemperature  float64       // °C, -30 to 60, at which it is drawn
	FlueTemperature float64       // °C, -20 to 900, at which the flue gas leaves
	Pressure        float64       // Pa, 30000 to 200000
}

func (s FlueState) check() error {
	return errors.Join(
		domain.Within("Drawn", s.Drawn.check()),
		airRatioRange.Check("AirRatio", s.AirRatio),
		fireAirRange.Check("AirTemperature", s.AirTemperature),
		flueRange.Check("FlueTemperature", s.FlueTemperature),
		gasPressureRange.Check("Pressure", s.Pressure),
	)
}

// FlueLoss returns the loss of the flue gas in the state s. The sensible part
// is the sum over the gases of the integral of their heat capacity [Janaf98]. A
// flue below the dew point is taken as saturated, the rest of its water as
// condensed. The two fractions give the same useful heat: (1 - OfLower) Lower =
// (1 - OfHigher) Higher. The error lists every fault.
func (f Fuel) FlueLoss(s FlueState) (FlueHeat, error) {
	if err := errors.Join(f.valid(), s.check()); err != nil {
		return FlueHeat{}, err
	}
	g, err := f.Burn(s.Drawn, s.AirRatio)
	if err != nil {
		return FlueHeat{}, err
	}
	flue, air, pressure := s.FlueTemperature, s.AirTemperature, s.Pressure
	T1, T2 := air+zeroC, flue+zeroC
	loss := FlueHeat{Gas: g, Water: (g.H2O - g.airWater) * molarH2O, DewPoint: g.dewPoint(pressure)}
	vapour := g.H2O
	if flue < loss.DewPoint {
		e := psychro.SaturationPressure(flue)
		vapour = g.Dry * e / (pressure - e)
		loss.Condensed = (g.H2O - vapour) * molarH2O
	}
	// kmol × J/mol is kJ.
	loss.Sensible = 1000*(g.CO2*gasCO2.heat(T1, T2)+g.SO2*gasSO2.heat(T1, T2)+g.N2*gasN2.heat(T1, T2)+g.O2*gasO2.heat(T1, T2)+vapour*gasH2O.heat(T1, T2)) +
		loss.Condensed*liquidHeat*(flue-air)
	loss.Latent = f.Higher - f.Lower - loss.Condensed*condensationHeat
	loss.OfLower = (loss.Sensible - loss.Condensed*condensationHeat) / f.Lower
	loss.OfHigher = (loss.Sensible + loss.Latent) / f.Higher
	return loss, nil
}

// dewPoint returns the temperature, °C, at which the flue gas begins to
// condense at the pressure, Pa. Sulphuric acid condenses sooner: AcidDewPoint.
func (g FlueGas) dewPoint(pressure float64) float64 {
	return psychro.SaturationTemperature(g.H2O / g.Wet * pressure)
}

// SiegertConstants are those of the Siegert form of the flue loss. The
// fraction lost is (flue - air)(A2/(21 - O2) + B)/100, O2 in per cent.
type SiegertConstants struct {
	A2 float64 // per cent of oxygen per K
	B  float64 // per cent per K
}

// FindSiegert returns the constants of the fuel named "light oil", "natural gas"
// or "propane" as the ordinance [BimschV10] has them, from memory, and whether
// it has that fuel.
func FindSiegert(fuel string) (SiegertConstants, bool) {
	switch fuel {
	case "light oil":
		return SiegertConstants{0.68, 0.007}, true
	case "natural gas":
		return SiegertConstants{0.65, 0.009}, true
	case "propane":
		return SiegertConstants{0.63, 0.008}, true
	}
	return SiegertConstants{}, false
}

// Siegert returns the flue loss as a fraction of the lower heating value by the
// legal rule [BimschV10] for a flue at flue, °C, -20 to 900, air at air, °C,
// -30 to 60, and the measured fraction o2 of oxygen in the dry flue gas, 0 to
// below 0.21. It leaves out condensation; NaN outside. Fuel.FlueLoss is the
// integral that it approximates.
func (k SiegertConstants) Siegert(flue, air, o2 float64) float64 {
	if !(o2 >= 0 && o2 < 0.21) || !flueRange.Contains(flue) || !fireAirRange.Contains(air) {
		return math.NaN()
	}
	return (flue - air) * (k.A2/(21-100*o2) + k.B) / 100
}

// siegertO2 are the two oxygen contents at which SiegertFor meets the integral.
var siegertO2 = [2]float64{0.03, 0.10}

// SiegertFor derives Siegert constants from the fuel's composition, so that
// the form meets FlueLoss at 3 and at 10 % of oxygen for the flue at flue, °C,
// -20 to 900, and air at air, °C, -30 to 60. Between them, and down to 1 %, it is within 0.2 % of it.
func (f Fuel) SiegertFor(flue, air float64) (SiegertConstants, error) {
	drawn := DefaultCombustionAir()
	var per, x [2]float64
	for i, o2 := range siegertO2 {
		ratio, err := f.AirRatioFromO2(drawn, o2)
		if err != nil {
			return SiegertConstants{}, err
		}
		loss, err := f.FlueLoss(FlueState{Drawn: drawn, AirRatio: ratio, AirTemperature: air, FlueTemperature: flue, Pressure: constant.StandardPressure})
		if err != nil {
			return SiegertConstants{}, err
		}
		if !(flue > air) || loss.Condensed > 0 {
			return SiegertConstants{}, &RangeError{Field: "flue", Value: flue, Min: math.Max(air, loss.DewPoint), Max: flueRange.Max, Unit: "°C", Source: "the form holds above the dew point"}
		}
		per[i] = 100 * loss.OfLower / (flue - air)
		x[i] = 1 / (21 - 100*o2)
	}
	a2 := (per[1] - per[0]) / (x[1] - x[0])
	return SiegertConstants{A2: a2, B: per[0] - a2*x[0]}, nil
}
