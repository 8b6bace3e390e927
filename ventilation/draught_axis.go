package ventilation

import (
	"math"

	"cloche.example/internal/jet"
)

// bend is the axis of a jet: at s along its straight line it has dropped by
// c s^n - s sin, n 3 of a compact jet and 5/2 of a slot.
type bend struct {
	c, sin, cos float64
	shape       jet.Shape
}

// exponent returns n.
func (b bend) exponent() float64 { return jet.LawOf(b.shape).Power }

func (j ColdJet) bend(psi float64) bend {
	sin, cos := math.Sincos(j.Angle * math.Pi / 180)
	if j.Angle == inletAngleRange.Min {
		cos = 0
	}
	return bend{c: -j.free().Bend(psi), sin: sin, cos: cos, shape: jet.Shape(j.Shape)}
}

// power returns s^(n-1).
func (b bend) power(s float64) float64 { return b.shape.Power(s) }

// drop returns how far the axis lies below the opening at s.
func (b bend) drop(s float64) float64 { return s * (b.c*b.power(s) - b.sin) }

// slope returns the rate at which drop grows with s.
func (b bend) slope(s float64) float64 { return b.exponent()*b.c*b.power(s) - b.sin }

// land follows the axis with the factor psi.
func (j ColdJet) land(psi, drop, reach float64) Landing {
	b := j.bend(psi)
	var l Landing
	s := b.comesDown(drop)
	switch {
	case drop == 0 && b.sin <= 0:
	case b.cos == 0: // straight down
		l.Path = drop
	case s*b.cos <= reach:
		l.Distance, l.Path = s*b.cos, b.arc(s)
	default: // the far wall, also of a jet without weight
		l.Struck, l.Distance = true, reach
		s = reach / b.cos
		// If it meets the roof the air runs back along it, and down the wall.
		l.Path = b.arc(s) + drop - math.Max(0, b.drop(s))
	}
	l.Speed = j.axisSpeed(l.Path) * j.falling(l.Path)
	l.Temperature = j.House + j.axisExcess(l.Path)
	l.Mild = j.House + j.mildExcess(l.Path)
	return l
}

// axisFound is the last step of comesDown, as a fraction of the way: Newton's method
// doubles the digits, so that the next is rounding.
const axisFound = 1e-13

// comesDown returns the last s, m, at which the axis has dropped by drop; +Inf
// if none. The drop is convex: Newton's steps from beyond the root fall to it.
func (b bend) comesDown(drop float64) float64 {
	s := math.Inf(1)
	if b.c > 0 {
		n := b.exponent()
		// Each of the two parts at most half of c s^n.
		s = math.Max(math.Pow(2*drop/b.c, 1/n), math.Pow(2*math.Max(b.sin, 0)/b.c, 1/(n-1)))
	}
	if b.sin < 0 {
		s = math.Min(s, -drop/b.sin)
	}
	if math.IsInf(s, 1) || s == 0 {
		return s
	}
	for range maxSteps {
		step := (b.drop(s) - drop) / b.slope(s)
		s -= step
		if !(step > axisFound*s) {
			break
		}
	}
	return s
}

// arc returns the length, m, of the axis up to s by Simpson's rule; the
// integrand is smooth, and 64 strips leave an error below 1e-4.
func (b bend) arc(s float64) float64 {
	const strips = 64
	sum := 0.0
	for i := range strips + 1 {
		slope := b.slope(s * float64(i) / strips)
		weight := float64(2 + 2*(i&1))
		if i == 0 || i == strips {
			weight = 1
		}
		sum += weight * math.Sqrt(b.cos*b.cos+slope*slope)
	}
	return sum * s / (3 * strips)
}
