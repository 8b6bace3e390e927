package transient

import "math"

// Step is a span under constant heat: the excess over the steady state goes
// from x to Decay x, and its mean over the span is Mean x.
type Step struct {
	Decay, Mean [3][3]float64
	PerWatt     [3]float64 // K/W, rise at the span's end from 1 W to node 0
}

// Step returns the exact step of the given span, s.
func (s *System) Step(span float64) Step {
	var r Step
	for k := range 3 {
		e := math.Exp(-s.Rates[k] * span)
		m := -math.Expm1(-s.Rates[k]*span) / (s.Rates[k] * span)
		for i := range 3 {
			for j := range 3 {
				v := s.vec[i][k] * s.vec[j][k] * s.scale[j] / s.scale[i]
				r.Decay[i][j] += v * e
				r.Mean[i][j] += v * m
			}
		}
		// y' = -r y + g for the span from rest.
		g := s.vec[0][k] / s.scale[0]
		for i := range 3 {
			r.PerWatt[i] += s.vec[i][k] / s.scale[i] * g * m * span
		}
	}
	return r
}

// Times returns the product of a matrix of a Step and x.
func Times(a *[3][3]float64, x [3]float64) [3]float64 {
	return [3]float64{
		a[0][0]*x[0] + a[0][1]*x[1] + a[0][2]*x[2],
		a[1][0]*x[0] + a[1][1]*x[1] + a[1][2]*x[2],
		a[2][0]*x[0] + a[2][1]*x[1] + a[2][2]*x[2],
	}
}
