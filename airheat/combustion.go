package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// CombustionCaution is to be printed wherever a flue, an efficiency of a
// fired heater or direct firing is computed.
const CombustionCaution = "Burning fuel makes carbon monoxide, which kills without smell. A fired heater needs its own combustion air, a sound flue, a carbon monoxide alarm and yearly service; directly fired heaters also give off water vapour, carbon dioxide and, from bad combustion, ethylene, which harms plants. Local codes and licensed practice decide."

// Composition is a fuel's make-up as fired, by mass. The shares sum to 1.
type Composition struct {
	Carbon   float64 // kg/kg, 0 to 1
	Hydrogen float64 // kg/kg, 0 to 1, without that of the water
	Oxygen   float64 // kg/kg, 0 to 1, without that of the water
	Nitrogen float64 // kg/kg, 0 to 1
	Sulphur  float64 // kg/kg, 0 to 1
	Water    float64 // kg/kg, 0 to 1, moisture on the wet basis
	Ash      float64 // kg/kg, 0 to 1
}

// sumSlack is how far the shares of a composition may miss 1, for those given
// with few decimals.
const sumSlack = 1e-3

func (c Composition) check() error {
	err := errors.Join(
		shareRange.Check("Carbon", c.Carbon), shareRange.Check("Hydrogen", c.Hydrogen), shareRange.Check("Oxygen", c.Oxygen),
		shareRange.Check("Nitrogen", c.Nitrogen), shareRange.Check("Sulphur", c.Sulphur), shareRange.Check("Water", c.Water), shareRange.Check("Ash", c.Ash),
	)
	if err != nil {
		return err
	}
	sum := c.Carbon + c.Hydrogen + c.Oxygen + c.Nitrogen + c.Sulphur + c.Water + c.Ash
	return domain.Range{Min: 1 - sumSlack, Max: 1 + sumSlack, Unit: "kg/kg", Source: "the shares of a fuel sum to 1"}.Check("sum of the composition", sum)
}

// moist returns the composition at the moisture water, kg/kg on the wet basis,
// 0 to below 1: the dry matter is scaled. NaN shares outside.
func (c Composition) moist(water float64) Composition {
	f := (1 - water) / (1 - c.Water)
	if !(water >= 0 && water < 1) || !(c.Water < 1) {
		f, water = math.NaN(), math.NaN()
	}
	return Composition{c.Carbon * f, c.Hydrogen * f, c.Oxygen * f, c.Nitrogen * f, c.Sulphur * f, water, c.Ash * f}
}

// Molar masses, kg/kmol [IupacAw21], abridged.
const (
	molarC   = 12.011
	molarH2  = 2.016
	molarO2  = 31.998
	molarN2  = 28.014
	molarS   = 32.06
	molarH2O = 18.015
	molarCO2 = 44.009
)

// molarVolume is that of an ideal gas at 0 °C and 101325 Pa, m³/kmol, from
// CODATA's gas constant.
const molarVolume = 1000 * constant.MolarGas * constant.ZeroCelsius / constant.StandardPressure

// CombustionAir is the air a fire draws.
type CombustionAir struct {
	Oxygen        float64 // fraction, 0.15 to 1, of the dry air's volume
	HumidityRatio float64 // kg/kg dry air, 0 to 0.1
}

// DefaultCombustionAir is dry air with 20.95 % of oxygen; the rest, argon
// included, counts as nitrogen.
func DefaultCombustionAir() CombustionAir { return CombustionAir{Oxygen: 0.2095} }

func (a CombustionAir) check() error {
	return errors.Join(
		domain.Range{Min: 0.15, Max: 1, Unit: "fraction"}.Check("Oxygen", a.Oxygen),
		domain.Range{Min: 0, Max: 0.1, Unit: "kg/kg"}.Check("HumidityRatio", a.HumidityRatio),
	)
}

// molarMass of the dry air, kg/kmol. Its rest beside oxygen is that of air
// without oxygen, argon included: 28.16, so that 20.95 % gives air's 28.965.
func (a CombustionAir) molarMass() float64 { return a.Oxygen*molarO2 + (1-a.Oxygen)*molarRest }

const molarRest = 28.161 // kg/kmol, (28.965 - 0.2095 × 31.998)/0.7905

// Stoichiometry is complete combustion with just enough air, per kg of fuel.
type Stoichiometry struct {
	Oxygen    float64 // kmol/kg, oxygen needed
	DryAir    float64 // kmol/kg of dry air
	AirMass   float64 // kg/kg of dry air
	AirVolume float64 // m³/kg of dry air at 0 °C and 101325 Pa
	CO2       float64 // kmol/kg
	SO2       float64 // kmol/kg
	N2        float64 // kmol/kg
	H2O       float64 // kmol/kg, from hydrogen, moisture and humid air
	DryFlue   float64 // kmol/kg, CO2 + SO2 + N2
	WetFlue   float64 // kmol/kg
	CO2Max    float64 // fraction of the dry flue gas
}

// Stoichiometry returns the combustion of the fuel with the least air. The
// oxygen is C/12.011 + H/4.032 + S/32.06 - O/31.998 kmol/kg.
func (f Fuel) Stoichiometry(air CombustionAir) (Stoichiometry, error) {
	if err := errors.Join(f.valid(), air.check()); err != nil {
		return Stoichiometry{}, err
	}
	return f.burn(air), nil
}

func (f Fuel) burn(air CombustionAir) Stoichiometry {
	c := &f.Composition
	s := Stoichiometry{CO2: c.Carbon / molarC, SO2: c.Sulphur / molarS}
	s.Oxygen = s.CO2 + s.SO2 + c.Hydrogen/(2*molarH2) - c.Oxygen/molarO2
	s.DryAir = s.Oxygen / air.Oxygen
	s.AirMass = s.DryAir * air.molarMass()
	s.AirVolume = s.DryAir * molarVolume
	s.N2 = s.DryAir - s.Oxygen + c.Nitrogen/molarN2
	s.H2O = c.Hydrogen/molarH2 + c.Water/molarH2O + s.AirMass*air.HumidityRatio/molarH2O
	s.DryFlue = s.CO2 + s.SO2 + s.N2
	s.WetFlue = s.DryFlue + s.H2O
	s.CO2Max = s.CO2 / s.DryFlue
	return s
}

// FlueGas is the gas of complete combustion with more air than needed, per kg
// of fuel.
type FlueGas struct {
	AirRatio float64 // ratio of the air supplied to the least air
	AirMass  float64 // kg/kg of dry air supplied
	CO2      float64 // kmol/kg
	SO2      float64 // kmol/kg
	N2       float64 // kmol/kg
	O2       float64 // kmol/kg
	H2O      float64 // kmol/kg
	Dry      float64 // kmol/kg, CO2 + SO2 + N2 + O2
	Wet      float64 // kmol/kg, Dry and H2O
	DryCO2   float64 // fraction of the dry gas, carbon dioxide
	DryO2    float64 // fraction of the dry gas, oxygen
	Mass     float64 // kg/kg, of the wet gas, nitrogen counted with air's argon
	air      float64 // kmol/kg of dry air supplied
	airWater float64 // kmol/kg, the part of H2O that came with the air
}

// airRatioRange is the range of the air ratio.
var airRatioRange = domain.Range{Min: 1, Max: 50, Unit: "ratio"}

// Burn returns the flue gas at the given airRatio, a ratio, 1 to 50.
func (f Fuel) Burn(air CombustionAir, airRatio float64) (FlueGas, error) {
	if err := errors.Join(f.valid(), air.check(), airRatioRange.Check("airRatio", airRatio)); err != nil {
		return FlueGas{}, err
	}
	s := f.burn(air)
	extra := (airRatio - 1) * s.DryAir
	perKmol := air.molarMass() * air.HumidityRatio / molarH2O
	g := FlueGas{
		AirRatio: airRatio, AirMass: airRatio * s.AirMass, air: airRatio * s.DryAir,
		CO2: s.CO2, SO2: s.SO2, N2: s.N2 + (1-air.Oxygen)*extra, O2: air.Oxygen * extra,
		H2O: s.H2O + perKmol*extra, airWater: perKmol * airRatio * s.DryAir,
	}
	g.Dry = g.CO2 + g.SO2 + g.N2 + g.O2
	g.Wet = g.Dry + g.H2O
	g.DryCO2, g.DryO2 = g.CO2/g.Dry, g.O2/g.Dry
	g.Mass = g.AirMass + g.airWater*molarH2O + 1 - f.Composition.Ash
	return g, nil
}

// AirRatioFromO2 returns the air ratio at which the dry flue gas holds the
// measured fraction o2 of oxygen:
// 1 + o2/(x - o2) Vdry/L, with x the oxygen of the air, exact for complete combustion.
// The rule 21/(21 - O2) takes Vdry for L.
func (f Fuel) AirRatioFromO2(air CombustionAir, o2 float64) (float64, error) {
	if err := errors.Join(f.valid(), air.check()); err != nil {
		return 0, err
	}
	if err := (domain.Range{Min: 0, Max: air.Oxygen * 0.98, Unit: "fraction", Source: "oxygen of the dry flue gas, below that of the air"}).Check("o2", o2); err != nil {
		return 0, err
	}
	s := f.burn(air)
	return 1 + o2/(air.Oxygen-o2)*s.DryFlue/s.DryAir, nil
}

// AirRatioFromCO2 returns the air ratio at which the dry flue gas holds the
// measured fraction co2 of carbon dioxide: 1 + (CO2max/co2 - 1) Vdry/L, exact.
// A co2 above the fuel's greatest is refused.
func (f Fuel) AirRatioFromCO2(air CombustionAir, co2 float64) (float64, error) {
	if err := errors.Join(f.valid(), air.check()); err != nil {
		return 0, err
	}
	s := f.burn(air)
	if err := (domain.Range{Min: s.CO2Max / 50, Max: s.CO2Max, Unit: "fraction", Source: "at most the fuel's CO2Max"}).Check("co2", co2); err != nil {
		return 0, err
	}
	return 1 + (s.CO2Max/co2-1)*s.DryFlue/s.DryAir, nil
}

// AirRatioRule returns the rule 21/(21 - O2) for a measured fraction o2 of
// oxygen in the dry flue gas, 0 to below 0.21; NaN outside. Between 2 and 9 %
// it lies up to 3 % above the exact ratio.
func AirRatioRule(o2 float64) float64 {
	if !(o2 >= 0 && o2 < 0.21) {
		return math.NaN()
	}
	return 0.21 / (0.21 - o2)
}
