package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Losses are the parts of a fire's heat that do not become useful, each as a
// fraction of the heat supplied on one heating value (the losses of
// [EnBoiler12], an edition superseded in 2021).
type Losses struct {
	Flue     float64 // fraction, any finite number, sensible and, on the higher value, latent heat of the flue gas
	Unburnt  float64 // fraction, at least 0, unburnt gas, mostly carbon monoxide
	Residues float64 // fraction, at least 0, fuel left in the ash
	Casing   float64 // fraction, at least 0, heat from the casing that does not reach the house
}

// Efficiency returns the efficiency by losses, a fraction: 1 less their sum.
// It exceeds 1 only on the lower heating value and with condensation, which
// makes Flue negative. NaN when a loss other than Flue is negative.
func (l Losses) Efficiency() float64 {
	if !(l.Unburnt >= 0 && l.Residues >= 0 && l.Casing >= 0) {
		return math.NaN()
	}
	return 1 - l.Flue - l.Unburnt - l.Residues - l.Casing
}

// carbonMonoxideHeat is what CO would give on burning, J/mol (from memory).
const carbonMonoxideHeat = 282.98e3

// UnburntLoss returns the fraction of the lower heating value lost with the
// measured fraction co of carbon monoxide in the dry flue gas g of fuel f, 0 to
// 0.05. The gas volume is that of complete combustion. NaN outside.
func (f Fuel) UnburntLoss(g FlueGas, co float64) float64 {
	if !(co >= 0 && co <= 0.05) {
		return math.NaN()
	}
	return co * g.Dry * 1000 * carbonMonoxideHeat / f.Lower
}

// GasAnalysis is the analysis of a dry flue gas by volume.
type GasAnalysis struct {
	CO2 float64 // fraction, 0 to 1
	O2  float64 // fraction, 0 to 1
	CO  float64 // fraction, 0 to 1
	N2  float64 // fraction, 0 to 1
}

// hasCarbon reports whether a is an analysis with carbon in it.
func (a GasAnalysis) hasCarbon() bool {
	return shareRange.Contains(a.CO2) && shareRange.Contains(a.O2) && shareRange.Contains(a.CO) && shareRange.Contains(a.N2) && a.CO2+a.CO > 0
}

// DryGasFromAnalysis returns the dry flue gas in kg per kg of fuel from a gas
// analysis and the fuel's burnt carbon, kg/kg, 0 to 1: (11 CO2 + 8 O2 + 7 (CO +
// N2))/(3 (CO2 + CO)) C [BWSteam11]. NaN without carbon in the gas and outside
// the ranges.
func DryGasFromAnalysis(a GasAnalysis, carbon float64) float64 {
	if !a.hasCarbon() || !shareRange.Contains(carbon) {
		return math.NaN()
	}
	return (11*a.CO2 + 8*a.O2 + 7*(a.CO+a.N2)) / (3 * (a.CO2 + a.CO)) * carbon
}

// DryGasLoss returns the heat that dry flue gas takes away, J/kg of fuel, by
// the short form gas × capacity × rise: gas in kg/kg of fuel, 0 to 1000;
// capacity in J/(kg K), 0 to 5000; rise of flue over air in K, -100 to 1000
// [BWSteam11]. NaN outside. Fuel.FlueLoss integrates.
func DryGasLoss(gas, capacity, rise float64) float64 {
	if !dryGasRange.Contains(gas) || !gasCapacityRange.Contains(capacity) || !gasRiseRange.Contains(rise) {
		return math.NaN()
	}
	return gas * capacity * rise
}

// Ranges of the short forms.
var (
	dryGasRange      = domain.Range{Min: 0, Max: 1000, Unit: "kg/kg"}
	gasCapacityRange = domain.Range{Min: 0, Max: 5000, Unit: "J/(kg K)"}
	gasRiseRange     = domain.Range{Min: -100, Max: 1000, Unit: "K"}
)

// incompleteCarbon is the heat lost per kg of carbon burnt to carbon monoxide
// only, 10150 Btu/lb in [BWSteam11], J/kg.
const incompleteCarbon = 10150 * 2326.0

// IncompleteCarbonLoss returns the heat lost by carbon monoxide, J/kg of fuel,
// from the gas analysis and the fuel's burnt carbon, kg/kg, 0 to 1: CO/(CO2 +
// CO) C × 10150 Btu/lb [BWSteam11]. NaN without carbon in the gas and outside
// the ranges.
func IncompleteCarbonLoss(a GasAnalysis, carbon float64) float64 {
	if !a.hasCarbon() || !shareRange.Contains(carbon) {
		return math.NaN()
	}
	return a.CO / (a.CO2 + a.CO) * carbon * incompleteCarbon
}

// efficiencyRange is that of an efficiency on the lower heating value; a
// condensing heater of methane can reach 1.11.
var efficiencyRange = domain.Range{Min: 0.05, Max: 1.12, Unit: "fraction", Source: "of the lower heating value"}

var (
	emissionRange  = domain.Range{Min: 0, Max: 1e-6, Unit: "kg/J"}
	molarMassRange = domain.Range{Min: 0, Max: 500, Unit: "kg/kmol"}
	readyRange     = domain.Range{Min: 0, Max: 8784, Unit: "h"}
)

// Burner is a fired heater as it uses fuel at part load: it cycles, and loses
// heat while it stands ready.
type Burner struct {
	Rated      float64 // W, 1e-6 to 1e9, useful heat at full load
	Efficiency float64 // fraction, 0.05 to the ratio of the fuel's Higher to its Lower, of the lower heating value at full load
	Standby    float64 // fraction, 0 to 0.2, of the rated fuel power lost while ready and not firing
	Ready      float64 // h, 0 to 8784, of the year in which it stands ready, firing or not; more than 0 with a Standby loss
	Fuel       Fuel    // what it burns
}

// Check returns all faults of b: an efficiency above what the fuel's heating
// value allows is one of them.
func (b Burner) Check() error {
	err := errors.Join(
		positivePower.Check("Rated", b.Rated),
		domain.Range{Min: 0, Max: 0.2, Unit: "fraction"}.Check("Standby", b.Standby),
		readyRange.Check("Ready", b.Ready),
		b.Fuel.valid(),
		emissionRange.Check("Fuel.Emission", b.Fuel.Emission),
		molarMassRange.Check("Fuel.MolarMass", b.Fuel.MolarMass),
	)
	if b.Standby > 0 && b.Ready == 0 {
		err = errors.Join(err, &RangeError{Field: "Ready", Value: 0, Min: domain.MoreThan(0), Max: readyRange.Max, Unit: "h", Source: "with a Standby loss"})
	}
	limit := efficiencyRange
	if b.Fuel.Lower > 0 {
		limit.Max = b.Fuel.Higher / b.Fuel.Lower
		limit.Source = "of the lower heating value; at most the ratio of the two heating values"
	}
	return errors.Join(err, limit.Check("Efficiency", b.Efficiency))
}

// FuelPower returns the fuel's power on the lower heating value, W, when the
// burner gives the useful heat, W, on average: heat/Efficiency while firing,
// and the standby loss for the rest of the time. NaN for heat outside 0 to Rated.
func (b Burner) FuelPower(heat float64) float64 { return b.fuelPower(heat) }

func (b *Burner) fuelPower(heat float64) float64 {
	const rounding = 1e-9 // a heater at its rating may be a rounding above it
	if !(heat >= 0 && heat <= b.Rated*(1+rounding)) {
		return math.NaN()
	}
	load := heat / b.Rated
	return b.Rated / b.Efficiency * (load + b.Standby*math.Max(0, 1-load))
}

// yearFuel returns the fuel's heat, J on the lower heating value, for a year in
// which the burner gives heat, J: by every method of the season alike, since what
// it loses while ready falls on the hours it stands ready, less those it fires.
func (b *Burner) yearFuel(heat float64) float64 {
	idle := math.Max(0, b.Ready*3600-heat/b.Rated)
	return (heat + b.Standby*b.Rated*idle) / b.Efficiency
}

// partLoad returns the efficiency on the lower heating value at the given
// load, a fraction of the rated heat from 0 to 1: zero at no load, NaN outside.
func (b Burner) partLoad(load float64) float64 {
	if load == 0 {
		return 0
	}
	return load * b.Rated / b.FuelPower(load*b.Rated)
}

// CombustionAirFlow returns the air a fire draws, m³/s at temperature t, °C, -30 to 60,
// and pressure p, Pa, 30000 to 200000, for the fuel's power, W on the lower heating value, burning
// to gas g. It is what the house must let in, or the fire starves. NaN for a
// power outside 0 to 1e9 W, t or p outside. Print CombustionCaution with it.
func (f Fuel) CombustionAirFlow(g FlueGas, power, t, p float64) float64 {
	if !powerRange.Contains(power) || !fireAirRange.Contains(t) || !(domain.Range{Min: 30e3, Max: 200e3, Unit: "Pa"}).Contains(p) {
		return math.NaN()
	}
	kmol := power / f.Lower * (g.air + g.airWater)
	return kmol * 1000 * constant.MolarGas * (t + zeroC) / p
}
