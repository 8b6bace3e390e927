package airheat

import "math"

// timeStep is a span of a house under a constant drive: the excess over the
// steady state goes from x to decay x, its mean over the span is mean x.
type timeStep struct {
	decay, mean [3][3]float64
	perWatt     [3]float64 // K/W, rise at the span's end from 1 W to the air
}

// step returns the exact step of the given span in s.
func (h *House) step(span float64) timeStep {
	var s timeStep
	for k := range 3 {
		e := math.Exp(-h.lambda[k] * span)
		m := -math.Expm1(-h.lambda[k]*span) / (h.lambda[k] * span)
		for i := range 3 {
			for j := range 3 {
				v := h.vec[i][k] * h.vec[j][k] * h.scale[j] / h.scale[i]
				s.decay[i][j] += v * e
				s.mean[i][j] += v * m
			}
		}
		// y' = -lambda y + g for the span from rest.
		g := h.vec[0][k] / h.scale[0]
		for i := range 3 {
			s.perWatt[i] += h.vec[i][k] / h.scale[i] * g * m * span
		}
	}
	return s
}

func times(a *[3][3]float64, x [3]float64) [3]float64 {
	return [3]float64{
		a[0][0]*x[0] + a[0][1]*x[1] + a[0][2]*x[2],
		a[1][0]*x[0] + a[1][1]*x[1] + a[1][2]*x[2],
		a[2][0]*x[0] + a[2][1]*x[1] + a[2][2]*x[2],
	}
}
