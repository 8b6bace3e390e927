package figures

import (
	_ "embed"
	"fmt"
	"strings"

	"cloche.example/lighting"
)

// photometric is an invented photometric file, the one of the package's own
// examples; a test holds them alike.
//
//go:embed testdata/invented_300w.ies
var photometric string

func mapAndEvenness() Figure {
	return Figure{
		Name: "map-and-evenness", Title: "The map of a bed and its evenness", Subject: "light on the bed", Package: "lighting", Example: "Example_embedPhotonMap",
		Question: "Rows of fixtures hang over a bed. How bright is each place, how even is the bed, and how long must the lamps burn?",
		Sketch:   "A bed of 12 by 4.5 m, 0.8 m above the floor; the fixtures, each over the middle of its equal share, from an invented photometric file.",
		Given: []Given{
			{"f", "lumens for each photon flux of the lamps", "lx per µmol/(m² s)", 71, 8, 90},
			{"h", "height above the bed", "m", 1.4, 0.6, 4},
			{"n_x", "fixtures along the bed, a whole number", "", 6, 1, 12},
			{"n_y", "rows, a whole number", "", 3, 1, 6},
			{"D", "light wanted in a day", "mol/(m² d)", 14, 1, 40},
		},
		Assumes: []string{"Direct light alone: no wall gives any back, nothing shades. Points at most a fifth of the height apart, so that none of the extremes is missed."},
		Change:  []string{"Raise the fixtures to 3 m: the bed is more even, and less of the light falls on it.", "Five rows of four instead of three of six: two lamps more, and a darker least place, since the ends lie farther from a lamp."},
		Code:    "solveMapAndEvenness",
		Solve:   solveMapAndEvenness,
	}
}

func solveMapAndEvenness(v []float64) (r Result, err error) {
	nx, ny, err := counts(v[2], v[3])
	if err != nil {
		return r, err
	}
	fixture, err := lighting.FromLM63(strings.NewReader(photometric), 1/v[0])
	if err != nil {
		return r, err
	}
	bed := lighting.Bed{Z: 0.8, Length: 12, Width: 4.5}
	layout, err := lighting.Rows(fixture, bed, v[1], nx, ny)
	if err != nil {
		return r, err
	}
	m, err := bed.Map(layout)
	if err != nil {
		return r, err
	}
	e := m.Evenness
	r.Lines = []string{fmt.Sprintf("%d points, mean %.0f µmol/(m² s), least/mean %.2f", len(m.PPFD), e.Mean, e.U0)}
	if run, err := lighting.LightingTime(v[4], e.Mean); err == nil {
		r.Lines = append(r.Lines, fmt.Sprintf("%g mol/(m² d) take %.1f h", v[4], run.Hours()))
	} else {
		r.Lines = append(r.Lines, fmt.Sprintf("%g mol/(m² d) take more than a day", v[4]))
	}
	flux := fixture.Light.Flux()
	dli := lighting.DLI(e.Mean, 24*3600e9)
	r.Steps = []Step{
		{Says: "Photons of one fixture, from the lumens of its file.", Formula: "Φ = Φ_v/f", Values: numbers{"Φ_v": flux * v[0], "f": v[0]}, Value: flux, Unit: "µmol/s"},
		{Says: "The mean of the map: at each point the sum over the fixtures of I cos φ/r².", Symbol: "E_m", Source: "inverse square and cosine", Value: e.Mean, Unit: "µmol/(m² s)"},
		{Says: "Of all photons this part falls on the bed.", Formula: "u = E_m A/(n_x n_y Φ)", Values: numbers{"E_m": e.Mean, "A": bed.Area(), "n_x": float64(nx), "n_y": float64(ny), "Φ": flux}, Value: e.Mean * bed.Area() / layout.PPF()},
		{Says: "Evenness: the darkest point over the mean.", Formula: "U_0 = E_min/E_m", Values: numbers{"E_min": e.Minimum, "E_m": e.Mean}, Value: e.U0},
		{Says: "And over the brightest.", Formula: "U_d = E_min/E_max", Values: numbers{"E_min": e.Minimum, "E_max": e.Maximum}, Value: e.Ud},
		{Says: "Hours for the light of the day; more than 24 are more than a day has.", Formula: "H = D/(0.0036 E_m)", Values: numbers{"D": v[4], "E_m": e.Mean}, Value: 24 * v[4] / dli, Unit: "h"},
	}
	r.Picture = maps("Map of the bed", "A plan of the bed, light in the middle and dark along the edges and in the corners, with a dot for each fixture.",
		"PPFD in µmol/(m² s), dots are fixtures. The edges have neighbours on one side only: there the light falls off.", bed, bedMap{evenly(m), m, layout})
	return r, nil
}

// counts reads two whole numbers.
func counts(x, y float64) (nx, ny int, err error) {
	nx, ny = int(x), int(y)
	if float64(nx) != x || float64(ny) != y {
		return 0, 0, fmt.Errorf("%g by %g fixtures: the counts are whole numbers", x, y)
	}
	return nx, ny, nil
}
