package lighting

import "math"

// CosineFlux returns the photon flux in µmol/s that a point fixture with a
// cosine-power light sends through a plane convex polygon with the given
// corners, at most 12, as if nothing stood between. By Stokes' theorem it is
// ∮ G dφ along the edges, with φ about the axis and
// G(γ) = I0 (1 - cos^(m+1) γ)/(m+1): closed for m = 1, one smooth integral for
// each edge otherwise, exact to about 1e-9 of the fixture's flux. NaN for more
// corners, and when the fixture is a bar or has a table.
func CosineFlux(f Fixture, corners ...Point) float64 {
	d, ok := f.Light.(CosinePower)
	if !ok || f.Length > 0 || len(corners) > maxCorners {
		return math.NaN()
	}
	var poly polygon
	for _, c := range corners {
		poly.add(Vector{c.X - f.At.X, c.Y - f.At.Y, c.Z - f.At.Z})
	}
	return poly.cosineFlux(f.Aim.Axis(), d)
}

// cosineFlux is the flux of a light at the origin through the polygon.
func (p *polygon) cosineFlux(axis Vector, d CosinePower) float64 {
	seen := p.clip(axis)
	if d.m == 1 {
		return d.axial() / 2 * math.Abs(seen.lambert(axis))
	}
	sum := 0.0
	for i := range seen.n {
		sum += edgeFlux(seen.corner[i], seen.corner[(i+1)%seen.n], axis, d.m)
	}
	return d.axial() / (d.m + 1) * math.Abs(sum)
}

// edgeFlux is ∫ (1 - c^(m+1))/(1 - c²) dα times the cosine between the axis
// and the normal of the plane through the origin and the edge from a to b; α
// is the angle along the edge, c the cosine to the axis. A change of variable
// flattens both ends, where c may run into its zero.
func edgeFlux(a, b, axis Vector, m float64) float64 {
	n := cross(a, b)
	s := math.Sqrt(dot(n, n))
	if s == 0 {
		return 0
	}
	span := math.Atan2(s, dot(a, b))
	la := math.Sqrt(dot(a, a))
	e1 := Vector{a.X / la, a.Y / la, a.Z / la}
	e2 := cross(Vector{n.X / s, n.Y / s, n.Z / s}, e1)
	c1, c2 := dot(axis, e1), dot(axis, e2)
	k := (m + 1) / 2
	panels := math.Ceil(span * math.Sqrt(m+2))
	half := 0.5 / panels
	sum := 0.0
	for i := 0.0; i < panels; i++ {
		mid := (2*i + 1) * half
		for j, x := range gaussX {
			sum += gaussW[j] * (edgeTerm(mid-half*x, span, c1, c2, k) + edgeTerm(mid+half*x, span, c1, c2, k))
		}
	}
	return dot(axis, n) / s * span * half * sum
}

func edgeTerm(u, span, c1, c2, k float64) float64 {
	v := 1 - u
	s, c := math.Sincos(span * u * u * u * (10 - 15*u + 6*u*u))
	return 30 * u * u * v * v * capShare(c1*c+c2*s, k)
}

// headOn is the square of a sine below which it is zero but for rounding.
const headOn = 1e-14

// capShare is (1 - c^2k)/(1 - c²), with its limits k at 1 and 1 at 0.
func capShare(c, k float64) float64 {
	x := 1 - c*c
	if x < headOn {
		return k
	}
	if c <= 0 {
		return 1
	}
	return -math.Expm1(k*math.Log1p(-x)) / x
}
