package envelope

import "math"

// planar is a point of a house's section, m: across the ridge and up.
type planar struct{ x, z float64 }

func (a planar) minus(b planar) planar     { return planar{a.x - b.x, a.z - b.z} }
func (a planar) dot(b planar) float64      { return a.x*b.x + a.z*b.z }
func (a planar) length() float64           { return math.Hypot(a.x, a.z) }
func (a planar) distance(b planar) float64 { return a.minus(b).length() }

// edge is a straight edge of a section, from a to b.
type edge struct{ a, b planar }

func (e edge) length() float64 { return e.a.distance(e.b) }

// exchangeArea returns the area in m² times the view factor between two
// surfaces that stand on the edges p and q of a convex section and both run
// over the length in m. Lambert's integral over both areas turns by the theorem
// of Stokes into one over both outlines, ln r dr·dr' over two pi [MazRav12]; the
// edges along the house have a closed form.
func exchangeArea(p, q edge, length float64) float64 {
	along := alongEdges(p.b.distance(q.b), length) + alongEdges(p.a.distance(q.a), length) -
		alongEdges(p.b.distance(q.a), length) - alongEdges(p.a.distance(q.b), length)
	across := 2 * (acrossEdges(p, q, 0) - acrossEdges(p, q, length))
	return (along + across) / (2 * math.Pi)
}

// toEnd returns the exchange area in m² between a surface on the edge p and
// that part of an end wall which the outline bounds. The outline runs round it
// with the part to its right, as the edges of the section run with the house to
// their left.
func toEnd(p edge, outline []edge, length float64) float64 {
	sum := 0.0
	for _, e := range outline {
		sum += acrossEdges(p, e, 0) - acrossEdges(p, e, length)
	}
	return sum / (2 * math.Pi)
}

// endToEnd returns the exchange area in m² between parts of the two end walls.
func endToEnd(near, far []edge, length float64) float64 {
	sum := 0.0
	for _, e := range near {
		for _, f := range far {
			sum -= acrossEdges(e, f, length)
		}
	}
	return sum / (2 * math.Pi)
}

// alongEdges returns the integral of ln r, m², over two parallel edges of the
// given length side by side at the distance d, both in m.
func alongEdges(d, length float64) float64 {
	l2, d2 := length*length, d*d
	sum := l2*math.Log(l2+d2)/2 - 1.5*l2 - d2*math.Log1p(l2/max(d2, math.SmallestNonzeroFloat64))/2
	if d == 0 {
		return l2*math.Log(l2)/2 - 1.5*l2
	}
	return sum + 2*length*d*math.Atan(length/d)
}

// upright is the cosine below which two edges count as upright on each other, so
// that nothing is exchanged across them: what rounding leaves of a right angle,
// four times the spacing of numbers at 1. A cosine so small adds as little.
const upright = 1e-15

// acrossEdges returns the integral of ln r dr·dr', m², over two edges of the
// section whose planes are the distance in m apart along the house: along the
// second in closed form, along the first by Gauss's rule, graded towards the
// ends, where edges may meet.
func acrossEdges(p, q edge, apart float64) float64 {
	d, e := p.b.minus(p.a), q.b.minus(q.a)
	cos := d.dot(e)
	l := e.length()
	if l == 0 || math.Abs(cos) <= upright*l*d.length() {
		return 0
	}
	e = planar{e.x / l, e.z / l}
	sum := 0.0
	for i, u := range gradedNode {
		from := planar{p.a.x + u*d.x, p.a.z + u*d.z}.minus(q.a)
		x := from.dot(e)
		off := from.x*e.z - from.z*e.x
		h2 := off*off + apart*apart
		sum += gradedWeight[i] * (logAlong(l-x, h2) + logAlong(x, h2))
	}
	return cos * sum / l
}

// logAlong returns the integral of ln sqrt(s² + h²) for s from 0 to v.
func logAlong(v, h2 float64) float64 {
	r2 := v*v + h2
	if r2 == 0 {
		return 0
	}
	h := math.Sqrt(h2)
	sum := v*math.Log(r2)/2 - v
	if h > 0 {
		sum += h * math.Atan(v/h)
	}
	return sum
}
