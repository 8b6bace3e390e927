package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Fuel is a fuel as fired. Make it with NewFuel, NewGasFuel or take one of the
// ready-made ones.
type Fuel struct {
	Name        string      // as printed
	Composition Composition // kg/kg
	Lower       float64     // J/kg, 1e6 to 125e6, heating value with the water as vapour
	Higher      float64     // J/kg, Lower to 1.6 of it, heating value with the water condensed at 25 °C
	MolarMass   float64     // kg/kmol, 0 to 500, of a gas; 0 for others
	Emission    float64     // kg/J, 0 to 1e-6, carbon dioxide counted per heat on Lower; 0 for what is counted as neutral
	Source      string      // where composition and heating value come from
}

// condensationHeat is the latent heat of water at 25 °C, J/kg, that joins the
// two heating values (EN 14918, ISO 17225-1: 2.443 MJ/kg).
const condensationHeat = 2.443e6

// waterPerHydrogen is the water that hydrogen burns to, kg/kg, as the same
// standards print it.
const waterPerHydrogen = 8.937

// lowerHeating returns the lower heating value, J/kg as fired, of a fuel of
// composition c whose higher heating value is higher, J/kg:
// LHV = HHV - 2.443 (8.937 H + w) MJ/kg [IsoFuel21].
func lowerHeating(c Composition, higher float64) float64 {
	return higher - condensationHeat*(waterPerHydrogen*c.Hydrogen+c.Water)
}

// moistHeating returns the lower heating value, J/kg as fired, of a fuel whose
// dry matter has the lower heating value dry, J/kg, at the moisture water, kg/kg
// on the wet basis: NCV = NCVdry (1 - M) - 2.443 M MJ/kg [IsoFuel21]. NaN for
// water outside 0 to 1.
func moistHeating(dry, water float64) float64 {
	if !(water >= 0 && water <= 1) {
		return math.NaN()
	}
	return dry*(1-water) - condensationHeat*water
}

// Dulong returns the higher and the lower heating value, J/kg, from the
// composition c by the forms in [MurMck03] ch. 6: 33.9 C + 143 (H - O/8) + 9.1 S
// MJ/kg, and 121 in place of 143 for the lower one, without the fuel's moisture.
// A fall-back for coal; for wood, rich in oxygen, it is poor: prefer a declared
// value. NaN for a composition with shares outside 0 to 1.
func Dulong(c Composition) (higher, lower float64) {
	if !c.shares() {
		return math.NaN(), math.NaN()
	}
	h := c.Hydrogen - c.Oxygen/8
	return 1e6 * (33.9*c.Carbon + 143*h + 9.1*c.Sulphur), 1e6 * (33.9*c.Carbon + 121*h + 9.1*c.Sulphur)
}

// shares reports whether every part of c is a share.
func (c Composition) shares() bool {
	for _, v := range [...]float64{c.Carbon, c.Hydrogen, c.Oxygen, c.Nitrogen, c.Sulphur, c.Water, c.Ash} {
		if !shareRange.Contains(v) {
			return false
		}
	}
	return true
}

// Boie returns the higher heating value, J/kg, from the composition c by Boie's
// form, from memory: 35.16 C + 116.225 H - 11.09 O + 6.28 N + 10.465 S MJ/kg.
// Similar forms differ by 1 to 3 %. NaN as for Dulong.
func Boie(c Composition) float64 {
	if !c.shares() {
		return math.NaN()
	}
	return 1e6 * (35.16*c.Carbon + 116.225*c.Hydrogen - 11.09*c.Oxygen + 6.28*c.Nitrogen + 10.465*c.Sulphur)
}

// heatingRange is that of the lower heating value.
var heatingRange = domain.Range{Min: 1e6, Max: 125e6, Unit: "J/kg"}

// NewFuel returns a fuel with composition c as fired and the lower heating
// value lower, J/kg as fired, from 1e6 to 125e6. All faults are reported
// together, among them a composition that does not sum to 1. Emission is left
// at 0; set it for a fuel that is not counted as neutral.
func NewFuel(name string, c Composition, lower float64) (Fuel, error) {
	f := Fuel{Name: name, Composition: c, Lower: lower, Higher: lower + condensationHeat*(waterPerHydrogen*c.Hydrogen+c.Water), Source: "as given"}
	return f, f.valid()
}

func (f Fuel) valid() error {
	err := errors.Join(f.Composition.check(), heatingRange.Check("Lower", f.Lower))
	if err == nil {
		c := &f.Composition
		oxygen := c.Carbon/molarC + c.Sulphur/molarS + c.Hydrogen/(2*molarH2) - c.Oxygen/molarO2
		err = domain.Range{Min: 1e-9, Max: 1, Unit: "kmol/kg", Source: "the fuel must need oxygen"}.Check("oxygen needed", oxygen)
	}
	if err == nil {
		err = domain.Range{Min: f.Lower, Max: 1.6 * f.Lower, Unit: "J/kg", Source: "at or above Lower"}.Check("Higher", f.Higher)
	}
	if err != nil {
		return fmt.Errorf("fuel %q: %w", f.Name, err)
	}
	return nil
}

// MoistFuel returns the solid fuel f at the moisture water, kg/kg on the wet
// basis, 0 to 0.65: composition and both heating values follow from its dry
// matter [IsoFuel21].
func (f Fuel) MoistFuel(water float64) (Fuel, error) {
	if err := errors.Join(f.valid(), domain.Range{Min: 0, Max: 0.65, Unit: "kg/kg", Source: "wetter wood does not burn by itself"}.Check("water", water)); err != nil {
		return Fuel{}, err
	}
	c := &f.Composition
	dry := (f.Lower + condensationHeat*c.Water) / (1 - c.Water)
	f.Composition = c.moist(water)
	f.Lower = moistHeating(dry, water)
	f.Higher = f.Lower + condensationHeat*(waterPerHydrogen*f.Composition.Hydrogen+water)
	return f, nil
}
