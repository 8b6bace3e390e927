package lighting

import (
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// split returns the fixture as n points (count, 1 to 100,000) at the middles of
// n equal segments, each with an nth of the flux and power and the shape of the
// whole.
func (f Fixture) split(n int) ([]Fixture, error) {
	if n < 1 || n > 100000 {
		return nil, &RangeError{Field: "n", Value: float64(n), Min: 1, Max: 100000, Unit: "count"}
	}
	if err := f.check(); err != nil {
		return nil, err
	}
	u := f.Aim.along()
	part := f
	part.Light = f.Light.scaled(1 / float64(n))
	part.Power = f.Power / float64(n)
	part.Length = 0
	out := make([]Fixture, n)
	for i := range out {
		part.At = f.At.plus(u, f.Length*((float64(i)+0.5)/float64(n)-0.5))
		out[i] = part
	}
	return out, nil
}

// barSource is a bar with a cosine-power light, ready for points.
type barSource struct {
	at    Point
	along Vector
	axis  Vector
	half  float64 // m
	m     float64
	scale float64 // µmol/(s sr m): intensity of a metre on the axis
}

// shortBar is the tangent of the angle at which a bar is seen, up to which the angle
// is taken of the difference of its ends.
const shortBar = 0.5

// ppfd returns what the bar gives to a point with the unit normal n, by
// integration along the bar. With α the angle at the point from the foot of
// the perpendicular, of length ρ, the integrand is
// I1 A^m cos^m α (B cos α + C sin α)/ρ: the second part is closed, the first
// takes cosineIntegral.
func (b *barSource) ppfd(x, y, z, nx, ny, nz float64) float64 {
	qx, qy, qz := x-b.at.X, y-b.at.Y, z-b.at.Z
	u := b.along
	foot := qx*u.X + qy*u.Y + qz*u.Z
	px, py, pz := qx-foot*u.X, qy-foot*u.Y, qz-foot*u.Z
	rho := math.Sqrt(px*px + py*py + pz*pz)
	towards := b.axis.X*px + b.axis.Y*py + b.axis.Z*pz
	if !(towards > 0) {
		return 0
	}
	bb := -(nx*px + ny*py + nz*pz) / rho
	cc := nx*u.X + ny*u.Y + nz*u.Z
	s1, s2 := -b.half-foot, b.half-foot
	// The receiver sees only what lies above its plane: B + C s/ρ > 0.
	switch {
	case cc > 0:
		s1 = math.Max(s1, -bb/cc*rho)
	case cc < 0:
		s2 = math.Min(s2, -bb/cc*rho)
	case bb <= 0:
		return 0
	}
	if s1 >= s2 {
		return 0
	}
	a1, a2 := math.Atan2(s1, rho), math.Atan2(s2, rho)
	if cross := (s2 - s1) * rho / (rho*rho + s1*s2); math.Abs(cross) < shortBar && rho*rho+s1*s2 > 0 {
		// A short bar: the difference of the two angles keeps its digits.
		a2 = a1 + math.Atan(cross)
	}
	k := b.m + 1
	e := bb * cosineIntegral(a1, a2, k)
	if cc != 0 {
		c1, c2 := math.Pow(rho/math.Hypot(rho, s1), k), math.Pow(rho/math.Hypot(rho, s2), k)
		e += cc * (c1 - c2) / k
	}
	return b.scale * math.Pow(towards/rho, b.m) * e / rho
}

// cosineIntegral is ∫ cos^k from a to b within ±π/2, k at least 1. Small k are
// raised first, which takes the edge off the integrand at ±π/2:
// S(k) = ((k+2) S(k+2) - [cos^(k+1) sin])/(k+1).
func cosineIntegral(a, b, k float64) float64 {
	if k < 3 && math.Max(math.Abs(a), math.Abs(b)) > 1 {
		sa, ca := math.Sincos(a)
		sb, cb := math.Sincos(b)
		edge := math.Pow(math.Max(cb, 0), k+1)*sb - math.Pow(math.Max(ca, 0), k+1)*sa
		return ((k+2)*cosineIntegral(a, b, k+2) - edge) / (k + 1)
	}
	panels := math.Ceil((b - a) * math.Sqrt(k+1) / 2)
	if panels < 1 {
		panels = 1
	}
	half := (b - a) / panels / 2
	sum := 0.0
	for i := 0.0; i < panels; i++ {
		mid := a + (2*i+1)*half
		for j, x := range gaussX {
			sum += gaussW[j] * (math.Pow(math.Max(math.Cos(mid-half*x), 0), k) + math.Pow(math.Max(math.Cos(mid+half*x), 0), k))
		}
	}
	return half * sum
}

// gaussX and gaussW are the positive half of the nodes and weights of the
// 16-point Gauss-Legendre rule on -1..1.
var (
	gaussX = [8]float64{
		0.09501250983763744, 0.28160355077925891, 0.45801677765722739, 0.61787624440264375,
		0.75540440835500303, 0.86563120238783174, 0.94457502307323258, 0.98940093499164993,
	}
	gaussW = [8]float64{
		0.18945061045506850, 0.18260341504492359, 0.16915651939500254, 0.14959598881657673,
		0.12462897125553387, 0.09515851168249278, 0.06225352393864789, 0.02715245941175409,
	}
)

// SplitWithin splits a bar with any light, halving its segments until the
// greatest change of the PPFD at the points, as a fraction of the greatest
// PPFD, is at most tol, the fraction 1e-9 to 0.1: the way for bars with a
// table. Bars with a cosine-power light need no splitting. ErrNotConverged means that 65,536 segments were not enough.
func (f Fixture) SplitWithin(p *Points, tol float64) (Layout, error) {
	if err := (domain.Range{Min: 1e-9, Max: 0.1, Unit: "fraction"}).Check("tol", tol); err != nil {
		return nil, err
	}
	const most = 65536
	var last []float64
	change := math.Inf(1)
	for n := 1; n <= most; n *= 2 {
		parts, err := f.split(n)
		if err != nil {
			return nil, err
		}
		l, err := NewLights(parts...)
		if err != nil {
			return nil, err
		}
		ppfd, err := l.MapTo(nil, p)
		if err != nil {
			return nil, err
		}
		peak := 0.0
		for _, v := range ppfd {
			peak = math.Max(peak, v)
		}
		if last != nil {
			change = 0
			for i, v := range ppfd {
				change = math.Max(change, math.Abs(v-last[i]))
			}
			if change <= tol*peak {
				return parts, nil
			}
		}
		last = ppfd
	}
	return nil, fmt.Errorf("%w: %d segments still change the light by %g µmol/(m² s)", ErrNotConverged, most, change)
}
