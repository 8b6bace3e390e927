package ventilation

import (
	"math"

	"cloche.example/internal/constant"
)

// byDensity returns the rate of the flow that pressures drive, m³/s, with the
// density of the inside air of given humidity, at the inside pressure p, Pa, that
// balances it: what enters and leaves changes at that pressure as the drive of
// each element does at its height, what leaves as its own density, too; then the
// pressure follows as far as holds the two alike. share is the fraction by which
// the flow grows where the share of dry air in what leaves does.
func (s *dryFlow) byDensity(p float64) (rate, share float64) {
	kIn, kOut := s.outside.root*s.dryOut, s.inside.root*s.dryIn
	var rateIn, rateOut, leverIn, leverOut, denser float64 // kg/(s Pa), kg m/(s Pa), kg/s
	for i := range s.paths {
		e := &s.paths[i]
		if e.kind == pointPath {
			k := e.flow * s.opening
			if k == 0 {
				continue
			}
			d := e.drive(e.bottom, s.dynamic, s.buoyancy, p)
			root := math.Sqrt(math.Abs(d))
			if d > 0 {
				rate := 0.5 * k * kIn / root
				rateIn += rate
				leverIn += rate * e.bottom
			} else {
				rate := 0.5 * k * kOut / root
				rateOut += rate
				leverOut += rate * e.bottom
				denser += 0.5 * k * kOut * root
			}
			continue
		}
		if t := *e; s.stands(&t) {
			o, in, out, more := s.levers(&t, p)
			rateIn += o.rateIn
			rateOut += o.rateOut
			leverIn += in
			leverOut += out
			denser += more
		}
	}
	in, out := constant.Gravity*leverIn, denser/s.inside.rho-constant.Gravity*leverOut
	all := rateIn + rateOut
	return (in*rateOut + out*rateIn) / all, rateIn / all
}

// levers returns what passes the element e that is no point, its rates with the
// pressure times the heights where they act, kg m/(s Pa), and what leaves by it
// times the power of density in that, kg/s.
func (s *dryFlow) levers(e *path, p float64) (o dryLook, in, out, denser float64) {
	bottom, top := e.drive(e.bottom, s.dynamic, s.buoyancy, p), e.drive(e.top, s.dynamic, s.buoyancy, p)
	o = s.through(e, bottom, top)
	switch {
	case o.in > 0 && o.out > 0: // a height that air passes both ways
		inward, outward := e.bottom, e.top
		if bottom < top {
			inward, outward = outward, inward
		}
		gap := (outward - inward) / (math.Abs(bottom) + math.Abs(top))
		return o, o.rateIn*inward + o.in*gap, o.rateOut*outward - o.out*gap, 0.5 * o.out
	case e.kind == tallPath:
		a, b := math.Sqrt(math.Abs(bottom)), math.Sqrt(math.Abs(top))
		height := ((a+2*b)*e.bottom + (2*a+b)*e.top) / (3 * (a + b))
		return o, o.rateIn * height, o.rateOut * height, 0.5 * o.out
	case e.kind == screenPath:
		return o, o.rateIn * e.bottom, o.rateOut * e.bottom, 0.5 * o.out * (1 + e.slope*o.rateOut/(s.inside.rho*s.dryIn))
	}
	return o, o.rateIn * e.bottom, o.rateOut * e.bottom, o.out
}
