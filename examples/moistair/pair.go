package main

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// given are two inputs; name holds their names in the order of the table.
type given struct {
	name string
	a, b float64
}

// inputs are the names on the command line and what they mean.
var inputs = map[string]string{
	"t":   "dry bulb, °C",
	"rh":  "relative humidity, fraction 0 to 1",
	"w":   "humidity ratio, kg/kg dry air",
	"td":  "dew or frost point, °C",
	"tw":  "wet bulb, °C",
	"e":   "vapour pressure, Pa",
	"vpd": "vapour pressure deficit, Pa",
	"h":   "enthalpy, J/kg dry air",
	"v":   "specific volume, m³/kg dry air",
	"mu":  "degree of saturation, fraction 0 to 1",
	"ah":  "absolute humidity, kg/m³",
	"x":   "mole fraction of vapour",
	"q":   "specific humidity, kg/kg moist air",
}

// pairs are the pairs that fix a state.
var pairs = map[string]func(m psychro.Model, a, b, p float64) (psychro.State, error){
	"t rh":  psychro.Model.FromRelativeHumidity,
	"t w":   psychro.Model.FromHumidityRatio,
	"t td":  psychro.Model.FromDewPoint,
	"t tw":  psychro.Model.FromWetBulb,
	"t e":   psychro.Model.FromVapourPressure,
	"t vpd": psychro.Model.FromVapourPressureDeficit,
	"t h":   psychro.Model.FromEnthalpy,
	"t v":   psychro.Model.FromSpecificVolume,
	"t mu":  psychro.Model.FromDegreeOfSaturation,
	"t ah":  psychro.Model.FromAbsoluteHumidity,
	"t x":   fromMoleFraction,
	"t q":   fromSpecificHumidity,
	"h rh":  psychro.Model.FromEnthalpyAndRelativeHumidity,
	"h w":   psychro.Model.FromEnthalpyAndHumidityRatio,
	"v w":   psychro.Model.FromSpecificVolumeAndHumidityRatio,
	"tw w":  psychro.Model.FromWetBulbAndHumidityRatio,
	"tw rh": psychro.Model.FromWetBulbAndRelativeHumidity,
	"w rh":  psychro.Model.FromHumidityRatioAndRelativeHumidity,
	"td rh": psychro.Model.FromDewPointAndRelativeHumidity,
}

// A mole fraction is vapour pressure over total pressure.
func fromMoleFraction(m psychro.Model, t, x, p float64) (psychro.State, error) {
	s, err := m.FromVapourPressure(t, x*p, p)
	if err != nil {
		err = fmt.Errorf("mole fraction %g: %w", x, err)
	}
	return s, err
}

// A specific humidity is per kg of moist air, a humidity ratio per kg of dry.
func fromSpecificHumidity(m psychro.Model, t, q, p float64) (psychro.State, error) {
	if err := (domain.Range{Min: 0, Max: domain.LessThan(1), Unit: "kg/kg"}).Check("specific humidity", q); err != nil {
		return psychro.State{}, err
	}
	s, err := m.FromHumidityRatio(t, q/(1-q), p)
	if err != nil {
		err = fmt.Errorf("specific humidity %g: %w", q, err)
	}
	return s, err
}

// read takes two words NAME=VALUE in either order.
func read(words []string) (given, error) {
	if len(words) != 2 {
		return given{}, fmt.Errorf("give two inputs such as t=21 rh=0.6, not %d", len(words))
	}
	var names [2]string
	var values [2]float64
	for i, w := range words {
		name, text, found := strings.Cut(strings.TrimSpace(w), "=")
		if inputs[name] == "" || !found {
			return given{}, fmt.Errorf("%q is not one of the inputs; see -h", w)
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return given{}, fmt.Errorf("%s: %q is not a number", name, text)
		}
		names[i], values[i] = name, v
	}
	if key := names[0] + " " + names[1]; pairs[key] != nil {
		return given{key, values[0], values[1]}, nil
	}
	if key := names[1] + " " + names[0]; pairs[key] != nil {
		return given{key, values[1], values[0]}, nil
	}
	return given{}, fmt.Errorf("%s and %s do not fix a state here; see -h", names[0], names[1])
}

func (g given) state(m psychro.Model, p float64) (psychro.State, error) {
	return pairs[g.name](m, g.a, g.b, p)
}

func inputHelp() string {
	var b strings.Builder
	names := make([]string, 0, len(inputs))
	for n := range inputs {
		names = append(names, n)
	}
	sort.Strings(names)
	for _, n := range names {
		fmt.Fprintf(&b, "  %-4s %s\n", n, inputs[n])
	}
	keys := make([]string, 0, len(pairs))
	for k := range pairs {
		if !strings.HasPrefix(k, "t ") {
			keys = append(keys, strings.ReplaceAll(k, " ", " and "))
		}
	}
	sort.Strings(keys)
	fmt.Fprintf(&b, "t goes with each of the others; besides: %s.", strings.Join(keys, ", "))
	return b.String()
}
