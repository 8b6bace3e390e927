package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func leafDeficit() Figure {
	return Figure{
		Name: "leaf-deficit", Title: "The deficit that a leaf feels", Subject: "moisture and crop", Package: "psychro", Example: "Example_leafDeficit",
		Question: "How much drier is the air to a warm leaf than to a cool one, and when is the leaf wet?",
		Sketch:   "A leaf in the air of a house: cooler than the air in the shade, warmer under sun or lamps.",
		Given: []Given{
			{"t", "temperature of the air", "°C", 22, 5, 40},
			{"φ", "relative humidity", "fraction", 0.75, 0.05, 1},
		},
		Assumes: []string{"The air inside the leaf is saturated at the leaf's temperature."},
		Change:  []string{"Raise the humidity to 95 %: a leaf 1 K cooler than the air is wet."},
		Code:    "solveLeafDeficit",
		Solve:   solveLeafDeficit,
	}
}

func solveLeafDeficit(v []float64) (r Result, err error) {
	t, rh := v[0], v[1]
	s, err := psychro.FromRelativeHumidity(t, rh, 101325)
	if err != nil {
		return r, err
	}
	r.Lines = []string{fmt.Sprintf("air %g °C, %.0f %%: dew point %.1f °C, deficit %.0f Pa", t, 100*rh, s.DewPoint(), s.VapourPressureDeficit())}
	for _, off := range []float64{-6, -4, -2, 0, 2} {
		leaf := t + off
		r.Lines = append(r.Lines, fmt.Sprintf("leaf %g °C: %5.0f Pa  wet: %v", leaf, s.VapourPressureDeficitAt(leaf), s.Condenses(leaf)))
	}
	leaf := t + 2
	saturated, err := psychro.FromRelativeHumidity(leaf, 1, 101325)
	if err != nil {
		return r, err
	}
	e, es := s.VapourPressure(), saturated.VapourPressure()
	r.Steps = []Step{
		{Says: "Vapour pressure of the air.", Formula: "e = φ e_s", Values: numbers{"φ": rh, "e_s": s.SaturationVapourPressure()}, Value: e, Unit: "Pa"},
		{Says: "Vapour pressure inside a leaf 2 K warmer than the air.", Symbol: "e_l", Source: "IAPWS saturation, enhancement factor", Value: es, Unit: "Pa"},
		{Says: "The deficit that this leaf feels.", Formula: "D = e_l - e", Values: numbers{"e_l": es, "e": e}, Value: s.VapourPressureDeficitAt(leaf), Unit: "Pa", Within: 1e-4, Why: "the enhancement factor is taken at the leaf"},
	}
	r.Picture, err = chart{title: "Deficit against the temperature of the leaf", says: "A line that rises with the leaf's temperature and crosses nought at the dew point.", x: "temperature of the leaf, °C", y: "deficit, Pa",
		curves: []curve{{"", along(t-8, t+6, 60, s.VapourPressureDeficitAt)}, {"", straight(t-8, 0, t+6, 0)}},
		marks:  []mark{{"air", t, s.VapourPressureDeficit()}, {"dew point", s.DewPoint(), 0}}}.picture("Below the dew point the deficit is negative: water settles on the leaf.")
	return r, err
}
