package fromplan

import (
	"math"

	"cloche.example/examples/internal/plan"
)

// RoofLine is the line from the left eave to the right one, without the
// left eave: x from the left eave, m, and height above the ground outside, m, in
// turn.
func RoofLine(h plan.House) []float64 {
	rise := h.RidgeHeight - h.EaveHeight
	switch h.Shape {
	case "round arch":
		r := (h.Span*h.Span/4 + rise*rise) / (2 * rise)
		var line []float64
		for i := 1; i <= 24; i++ {
			x := h.Span * float64(i) / 24
			line = append(line, x, h.EaveHeight+math.Sqrt(max(0, r*r-math.Pow(x-h.Span/2, 2)))-(r-rise))
		}
		return line
	case "pointed arch":
		return pointed(h, rise)
	case "lean-to":
		return []float64{0, h.RidgeHeight, h.Span, h.EaveHeight}
	case "uneven gable":
		return []float64{h.RidgeOffset, h.RidgeHeight, h.Span, h.EaveHeight}
	}
	return []float64{h.Span / 2, h.RidgeHeight, h.Span, h.EaveHeight}
}

// pointed draws two arcs that meet at the ridge with its slope: from the slope
// at the eave, which the chord's symmetry gives, to that at the ridge.
func pointed(h plan.House, rise float64) []float64 {
	top := h.RidgeSlope * math.Pi / 180
	chord := math.Atan2(rise, h.Span/2)
	eave := 2*chord - top
	radius := math.Hypot(rise, h.Span/2) / 2 / math.Sin((eave-top)/2)
	var left, line []float64
	for i := 0; i <= 12; i++ {
		t := eave + (top-eave)*float64(i)/12
		left = append(left, radius*(math.Sin(eave)-math.Sin(t)), h.EaveHeight+radius*(math.Cos(t)-math.Cos(eave)))
	}
	line = append(line, left[2:]...)
	for i := len(left) - 4; i >= 0; i -= 2 {
		line = append(line, h.Span-left[i], left[i+1])
	}
	return line
}

// RidgeAt is how far the ridge of a bay lies from its left eave, m.
func RidgeAt(h plan.House) float64 {
	switch h.Shape {
	case "lean-to":
		return 0
	case "uneven gable":
		return h.RidgeOffset
	}
	return h.Span / 2
}

// VentLine is a vent in the section of a bay: the line of one in a side, at the
// ridge or in the roof, standing off, and the outline of one in an end.
func VentLine(h plan.House, v plan.Vent) []float64 {
	low, high := v.Centre-v.Height/2, v.Centre+v.Height/2
	ridge := RidgeAt(h)
	switch v.Place {
	case "left side":
		return []float64{0, low, 0, high}
	case "right side":
		return []float64{h.Span, low, h.Span, high}
	case "near end", "far end":
		half := min(v.Length, h.Span) / 2
		return []float64{h.Span/2 - half, low, h.Span/2 + half, low, h.Span/2 + half, high, h.Span/2 - half, high}
	}
	run := v.Height * 0.9
	if v.Place == "left roof" {
		run = -run
	}
	return []float64{ridge, h.RidgeHeight, ridge + run, h.RidgeHeight + 0.15*math.Abs(run)}
}
