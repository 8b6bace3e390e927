package airheat

import (
	"errors"
	"fmt"

	"cloche.example/internal/domain"
)

// GasShares is a gas by volume. The shares sum to 1.
type GasShares struct {
	Methane        float64 // fraction, 0 to 1, CH4
	Ethane         float64 // fraction, 0 to 1, C2H6
	Propane        float64 // fraction, 0 to 1, C3H8
	Butane         float64 // fraction, 0 to 1, C4H10
	Hydrogen       float64 // fraction, 0 to 1, H2
	CarbonMonoxide float64 // fraction, 0 to 1, CO
	CarbonDioxide  float64 // fraction, 0 to 1, CO2
	Nitrogen       float64 // fraction, 0 to 1, N2
	Oxygen         float64 // fraction, 0 to 1, O2
}

// gasParts lists, in the order of GasShares, the atoms of each gas and its
// molar higher heating value at 25 °C in J/mol (ISO 6976, from memory).
var gasParts = [9]struct{ c, h, o, n, heat float64 }{
	{c: 1, h: 4, heat: 890.58e3}, {c: 2, h: 6, heat: 1560.69e3}, {c: 3, h: 8, heat: 2219.17e3}, {c: 4, h: 10, heat: 2877.40e3},
	{h: 2, heat: 285.83e3}, {c: 1, o: 1, heat: 282.98e3}, {c: 1, o: 2}, {n: 2}, {o: 2},
}

// NewGasFuel returns a gas with the given shares by volume; its heating values
// follow from those of its parts (ISO 6976, from memory). Emission is left at 0;
// set it for a gas that is not counted as neutral.
func NewGasFuel(name string, g GasShares) (Fuel, error) {
	shares := [9]float64{g.Methane, g.Ethane, g.Propane, g.Butane, g.Hydrogen, g.CarbonMonoxide, g.CarbonDioxide, g.Nitrogen, g.Oxygen}
	names := [9]string{"Methane", "Ethane", "Propane", "Butane", "Hydrogen", "CarbonMonoxide", "CarbonDioxide", "Nitrogen", "Oxygen"}
	var sum, c, h, o, n, heat float64
	var err error
	for i, x := range shares {
		err = errors.Join(err, shareRange.Check(names[i], x))
		p := &gasParts[i]
		sum += x
		c += x * p.c * molarC
		h += x * p.h * molarH2 / 2
		o += x * p.o * molarO2 / 2
		n += x * p.n * molarN2 / 2
		heat += x * p.heat
	}
	if err == nil {
		err = domain.Range{Min: 1 - sumSlack, Max: 1 + sumSlack, Unit: "fraction", Source: "the shares of a gas sum to 1"}.Check("sum of the gas", sum)
	}
	if err != nil {
		return Fuel{}, fmt.Errorf("fuel %q: %w", name, err)
	}
	m := c + h + o + n
	f := Fuel{Name: name, Composition: Composition{Carbon: c / m, Hydrogen: h / m, Oxygen: o / m, Nitrogen: n / m}, Higher: 1000 * heat / m, MolarMass: m / sum, Source: "shares as given; heats of the gases ISO 6976, from memory"}
	f.Lower = lowerHeating(f.Composition, f.Higher)
	return f, f.valid()
}

// Emission factors of carbon dioxide, kg/J on the lower heating value: the
// IPCC's defaults of 2006, from memory. Wood and straw are counted as neutral.
const (
	emissionGas     = 56.1e-9
	emissionPropane = 63.1e-9
	emissionOil     = 74.1e-9
	emissionCoal    = 94.6e-9
)

// naturalGas is methane, which good natural gas nearly is.
func naturalGas() Fuel {
	f, _ := NewGasFuel("natural gas", GasShares{Methane: 1})
	f.Emission = emissionGas
	return f
}

// propane is pure propane.
func propane() Fuel {
	f, _ := NewGasFuel("propane", GasShares{Propane: 1})
	f.Emission = emissionPropane
	return f
}

// LightOil is light fuel oil: composition and heating value from memory.
func LightOil() Fuel {
	f, _ := NewFuel("light oil", Composition{Carbon: 0.862, Hydrogen: 0.132, Sulphur: 0.001, Oxygen: 0.005}, 42.7e6)
	f.Emission, f.Source = emissionOil, "from memory"
	return f
}

// drySolid builds a ready-made solid fuel from its dry matter.
func drySolid(name string, dry Composition, lowerDry, water float64) Fuel {
	f, _ := NewFuel(name, dry, lowerDry)
	f.Source = "from memory"
	f, _ = f.MoistFuel(water)
	return f
}

// Wood is split wood with 20 % of moisture; use MoistFuel for other
// moistures. Dry matter from memory, within the typical values of [IsoFuel21].
func Wood() Fuel {
	return drySolid("wood", Composition{Carbon: 0.50, Hydrogen: 0.06, Oxygen: 0.435, Ash: 0.005}, 18.5e6, 0.20)
}

// pellets are wood pellets with 8 % of moisture. Dry matter from memory,
// within the typical values of [IsoFuel21].
func pellets() Fuel {
	return drySolid("wood pellets", Composition{Carbon: 0.50, Hydrogen: 0.06, Oxygen: 0.435, Ash: 0.005}, 18.5e6, 0.08)
}

// straw is baled straw with 15 % of moisture, from memory. Its ash melts low
// and its chlorine corrodes: it needs a furnace made for it.
func straw() Fuel {
	return drySolid("straw", Composition{Carbon: 0.47, Hydrogen: 0.06, Oxygen: 0.41, Nitrogen: 0.005, Sulphur: 0.001, Ash: 0.054}, 17.4e6, 0.15)
}

// hardCoal is a bituminous coal, from memory.
func hardCoal() Fuel {
	f, _ := NewFuel("hard coal", Composition{Carbon: 0.74, Hydrogen: 0.046, Oxygen: 0.075, Nitrogen: 0.014, Sulphur: 0.008, Water: 0.045, Ash: 0.072}, 29.0e6)
	f.Emission, f.Source = emissionCoal, "from memory"
	return f
}

// Fuels returns the ready-made fuels: natural gas, propane, light oil, wood, wood
// pellets, straw and hard coal.
func Fuels() []Fuel {
	return []Fuel{naturalGas(), propane(), LightOil(), Wood(), pellets(), straw(), hardCoal()}
}

// FindFuel returns the ready-made fuel of that name, and whether there is one.
func FindFuel(name string) (Fuel, bool) {
	for _, f := range Fuels() {
		if f.Name == name {
			return f, true
		}
	}
	return Fuel{}, false
}
