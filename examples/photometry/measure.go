package main

import (
	"math"
	"slices"
	"sort"

	"cloche.example/lighting"
)

// symmetry says what the horizontal angles stand for.
func symmetry(w lighting.CandelaWeb) string {
	first, last := w.Horizontal[0], w.Horizontal[len(w.Horizontal)-1]
	switch {
	case w.Coordinates != lighting.TypeC && first == 0:
		return "mirrored"
	case w.Coordinates != lighting.TypeC:
		return "no symmetry"
	case last == 0:
		return "the same all round"
	case last == 90:
		return "mirrored in both planes"
	case last == 180:
		return "mirrored in the plane 0-180"
	case first == 90:
		return "mirrored in the plane 90-270"
	}
	return "no symmetry"
}

// below is the flux under the horizontal, lm: the exact integral of the web cut
// there.
func below(w lighting.CandelaWeb) float64 {
	horizon := map[lighting.Coordinates]float64{lighting.TypeC: 90, lighting.TypeA: 0, lighting.TypeB: 90}[w.Coordinates]
	n := sort.SearchFloat64s(w.Vertical, horizon)
	if n == 0 {
		return 0
	}
	if n < len(w.Vertical) {
		share := (horizon - w.Vertical[n-1]) / (w.Vertical[n] - w.Vertical[n-1])
		w.Vertical = append(slices.Clone(w.Vertical[:n]), horizon)
		w.Candela = slices.Clone(w.Candela)
		for i, row := range w.Candela {
			w.Candela[i] = append(slices.Clone(row[:n]), row[n-1]+share*(row[n]-row[n-1]))
		}
	}
	t, err := lighting.NewCandelaTable(w)
	if err != nil {
		return math.NaN()
	}
	return t.Lumens()
}

// width is the full angle, degree, between the outermost directions of a plane
// whose intensity is a share of the plane's greatest.
func width(t *lighting.CandelaTable, c, share float64) float64 {
	top := 0.0
	at := func(g float64) float64 {
		if g < 0 {
			return t.Intensity(-g, c+180)
		}
		return t.Intensity(g, c)
	}
	for g := -90.0; g <= 90; g += 0.25 {
		top = max(top, at(g))
	}
	if top == 0 {
		return math.NaN()
	}
	low, high := 90.0, -90.0
	for g := -90.0; g <= 90; g += 0.25 {
		if at(g) >= share*top {
			low, high = min(low, g), max(high, g)
		}
	}
	return high - low
}
