package envelope

import "math"

// solid is the outline of a flat, convex figure in space: metres to the right
// from the left wall, along the house from the near end, and above grade.
type solid [][3]float64

// faces returns the flat parts of the inside with the facet that each is.
func (p *prism) faces(g Glazing, parts []part) (all []face) {
	add := func(of part, outline solid) {
		for i, q := range parts {
			if q == of && len(outline) > 2 {
				all = append(all, face{i, outline})
			}
		}
	}
	for _, l := range p.longs {
		a, b := l.edge.a, l.edge.b
		add(l.part, solid{{a.x, 0, a.z}, {b.x, 0, b.z}, {b.x, p.length, b.z}, {a.x, p.length, a.z}})
	}
	for _, end := range [2]struct {
		side int
		y    float64
	}{{toNearEnd, 0}, {toFarEnd, p.length}} {
		var whole solid
		for _, l := range p.longs {
			whole = append(whole, [3]float64{l.edge.a.x, end.y, l.edge.a.z})
		}
		from := math.Inf(-1)
		for _, w := range p.lows {
			add(part{w.kind, end.side, 0}, solid{{0, end.y, w.from}, {p.width, end.y, w.from}, {p.width, end.y, w.to}, {0, end.y, w.to}})
			from = math.Max(from, w.to)
		}
		add(part{EndWall, end.side, 0}, whole.above(from))
	}
	return all
}

// onEdge is how far outside, m, a point may lie that was made to lie on an edge.
const onEdge = 1e-9

// holds tells whether a point of the section lies inside, but for rounding.
func (p *prism) holds(at planar) bool {
	for _, l := range p.longs {
		d, v := l.edge.b.minus(l.edge.a), at.minus(l.edge.a)
		if d.x*v.z-d.z*v.x < -onEdge*d.length() {
			return false
		}
	}
	return true
}

// clearAt returns the height of the roof in m above grade at x.
func (p *prism) clearAt(x float64) float64 {
	for _, l := range p.longs {
		a, b := l.edge.a, l.edge.b
		if l.part.kind == Roof && math.Min(a.x, b.x) <= x && x <= math.Max(a.x, b.x) {
			return a.z + (b.z-a.z)*(x-a.x)/(b.x-a.x)
		}
	}
	return 0
}

// above returns what of the figure lies above the level z.
func (s solid) above(z float64) solid {
	out := make(solid, 0, len(s)+1)
	for i, b := range s {
		a := s[(i+len(s)-1)%len(s)]
		if (a[2] < z) != (b[2] < z) {
			f := (z - a[2]) / (b[2] - a[2])
			out = append(out, [3]float64{a[0] + f*(b[0]-a[0]), a[1] + f*(b[1]-a[1]), z})
		}
		if b[2] >= z {
			out = append(out, b)
		}
	}
	return out
}

// sunView looks along the sun's beam: two directions across it.
type sunView struct{ right, up [3]float64 }

// view returns the look from the sun at the angles in degree.
func (l *BedLight) view(elevation, azimuth float64) sunView {
	sinE, cosE := math.Sincos(elevation * degree)
	sinA, cosA := math.Sincos((azimuth - l.glazing.form.Azimuth) * degree)
	// The sun stands at (cosE sinA, cosE cosA, sinE): to the right, ahead, up.
	return sunView{right: [3]float64{cosA, -sinA, 0}, up: [3]float64{-sinE * sinA, -sinE * cosA, cosE}}
}

// flat returns the figure as the sun sees it.
func (v *sunView) flat(s solid) []planar {
	out := make([]planar, len(s))
	for i, p := range s {
		out[i] = planar{p[0]*v.right[0] + p[1]*v.right[1], p[0]*v.up[0] + p[1]*v.up[1] + p[2]*v.up[2]}
	}
	return out
}

// common returns the part in m² of the beam's section that crosses both figures:
// one convex outline cut by each side of the other.
func (v *sunView) common(a, b solid) float64 {
	if len(a) < 3 || len(b) < 3 {
		return 0
	}
	cut, by := v.flat(a), v.flat(b)
	sign := 1.0
	if twiceArea(by) < 0 {
		sign = -1
	}
	for i, q := range by {
		p := by[(i+len(by)-1)%len(by)]
		d := q.minus(p)
		side := func(at planar) float64 {
			w := at.minus(p)
			return sign * (d.x*w.z - d.z*w.x)
		}
		var left []planar
		for j, to := range cut {
			from := cut[(j+len(cut)-1)%len(cut)]
			s, t := side(from), side(to)
			if (s < 0) != (t < 0) {
				f := s / (s - t)
				left = append(left, planar{from.x + f*(to.x-from.x), from.z + f*(to.z-from.z)})
			}
			if t >= 0 {
				left = append(left, to)
			}
		}
		if cut = left; len(cut) < 3 {
			return 0
		}
	}
	return math.Abs(twiceArea(cut)) / 2
}

// twiceArea of an outline in m², positive when it runs counter-clockwise.
func twiceArea(s []planar) float64 {
	sum := 0.0
	for i := 1; i+1 < len(s); i++ {
		a, b := s[i].minus(s[0]), s[i+1].minus(s[0])
		sum += a.x*b.z - a.z*b.x
	}
	return sum
}
