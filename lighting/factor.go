package lighting

import "math"

// Configuration factors between diffuse surfaces: closed forms for circles,
// rectangles and convex polygons [Howell10], [Sparrow63].

// PolygonFactor returns the fraction of a point's hemisphere, weighted by the
// cosine to its normal n, that a plane convex polygon with the given corners
// fills, by Lambert's exact formula F = |Σ Γk (a×b/|a×b|)·n|/2π; only what
// lies above the point's horizon counts. The corners run either way round, at
// most 12 of them; NaN for more, or when n has no length.
func PolygonFactor(at Point, n Vector, corners ...Point) float64 {
	length := math.Sqrt(n.X*n.X + n.Y*n.Y + n.Z*n.Z)
	if len(corners) > maxCorners || !(length > 0) {
		return math.NaN()
	}
	var poly polygon
	for _, c := range corners {
		poly.add(Vector{c.X - at.X, c.Y - at.Y, c.Z - at.Z})
	}
	unit := Vector{n.X / length, n.Y / length, n.Z / length}
	seen := poly.clip(unit)
	return math.Abs(seen.lambert(unit)) / (2 * math.Pi)
}

// maxCorners leaves room for the corners that clipping adds.
const maxCorners = 12

// polygon holds the corners of a plane convex polygon as seen from a point.
type polygon struct {
	n      int
	corner [maxCorners + 4]Vector
}

func (p *polygon) add(v Vector) {
	p.corner[p.n] = v
	p.n++
}

// clip returns the part with n·v >= 0.
func (p *polygon) clip(n Vector) (out polygon) {
	for i := range p.n {
		a, b := p.corner[i], p.corner[(i+1)%p.n]
		da, db := dot(n, a), dot(n, b)
		if da >= 0 {
			out.add(a)
		}
		if da > 0 && db < 0 || da < 0 && db > 0 {
			t := da / (da - db)
			out.add(Vector{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y), a.Z + t*(b.Z-a.Z)})
		}
	}
	return out
}

// lambert is Σ Γk (a×b/|a×b|)·n over the edges.
func (p *polygon) lambert(n Vector) float64 {
	sum := 0.0
	for i := range p.n {
		a, b := p.corner[i], p.corner[(i+1)%p.n]
		c := cross(a, b)
		s := math.Sqrt(dot(c, c))
		if s > 0 {
			sum += math.Atan2(s, dot(a, b)) * dot(c, n) / s
		}
	}
	return sum
}

func dot(a, b Vector) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

func cross(a, b Vector) Vector {
	return Vector{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// DiscFactor returns the fraction of the hemisphere above a point that a disc
// of the radius, m, at least 0, fills at the distance, m, above 0, facing it on
// its axis: R²/(R²+h²) [Howell10]. NaN outside.
func DiscFactor(radius, distance float64) float64 {
	if !(radius >= 0) || !(distance > 0) {
		return math.NaN()
	}
	return radius * radius / (radius*radius + distance*distance)
}

// Plates are a rectangle and what faces it in parallel: a point straight in
// front of a corner, or an equal rectangle straight opposite.
type Plates struct {
	A        float64 // m, at least 0; one side
	B        float64 // m, at least 0; the other side
	Distance float64 // m, more than 0
}

// CornerFactor returns the fraction of the hemisphere of a point that a
// parallel rectangle fills when one of its corners lies straight in front of
// the point [Howell10]. NaN outside.
func CornerFactor(p Plates) float64 {
	if !(p.A >= 0) || !(p.B >= 0) || !(p.Distance > 0) {
		return math.NaN()
	}
	x, y := p.A/p.Distance, p.B/p.Distance
	rx, ry := math.Sqrt(1+x*x), math.Sqrt(1+y*y)
	return (x/rx*math.Atan(y/rx) + y/ry*math.Atan(x/ry)) / (2 * math.Pi)
}

// StripFactor returns the fraction of the hemisphere of a point that an
// infinitely long parallel strip of half width halfWidth, m, at least 0, fills
// when its middle lies at the distance, m, above 0, in front of the point: the
// sine of the half angle. NaN outside.
func StripFactor(halfWidth, distance float64) float64 {
	if !(halfWidth >= 0) || !(distance > 0) {
		return math.NaN()
	}
	return halfWidth / math.Hypot(halfWidth, distance)
}

// CoaxialDiscs are two parallel discs that face each other on one axis.
type CoaxialDiscs struct {
	From     float64 // m, more than 0; radius of the disc that gives the light
	To       float64 // m, at least 0; radius of the disc that receives it
	Distance float64 // m, more than 0
}

// CoaxialDiscsFactor returns the fraction of the light leaving one disc that
// reaches the other [Howell10]. NaN outside.
func CoaxialDiscsFactor(d CoaxialDiscs) float64 {
	if !(d.From > 0) || !(d.To >= 0) || !(d.Distance > 0) {
		return math.NaN()
	}
	a, b := d.From/d.Distance, d.To/d.Distance
	x := 1 + (1+b*b)/(a*a)
	return 2 * (b / a) * (b / a) / (x + math.Sqrt(x*x-4*(b/a)*(b/a)))
}

// OpposedPlatesFactor returns the fraction of the light leaving a rectangle,
// both sides more than 0, that reaches an equal one straight opposite. NaN
// outside.
func OpposedPlatesFactor(p Plates) float64 {
	if !(p.A > 0) || !(p.B > 0) || !(p.Distance > 0) {
		return math.NaN()
	}
	return parallelExchange(span{0, p.A}, span{0, p.A}, span{0, p.B}, span{0, p.B}, p.Distance) / (p.A * p.B)
}

// AdjacentPlates are two rectangles at a right angle along a common edge.
type AdjacentPlates struct {
	Common float64 // m, more than 0; the edge
	From   float64 // m, more than 0; other side of the rectangle that gives the light
	To     float64 // m, more than 0; other side of the one that receives it
}

// AdjacentPlatesFactor returns the fraction of the light leaving one rectangle
// that reaches the other. NaN outside.
func AdjacentPlatesFactor(p AdjacentPlates) float64 {
	if !(p.Common > 0) || !(p.From > 0) || !(p.To > 0) {
		return math.NaN()
	}
	return squareExchange(span{0, p.Common}, span{0, p.Common}, span{0, p.From}, span{0, p.To}) / (p.Common * p.From)
}

// span is an interval of a coordinate, m.
type span struct{ lo, hi float64 }

// edges is ∫∫ ln √((u-v)² + d²) du dv over two parallel edges, but for terms
// that cancel around a closed contour.
func edges(u, v span, d2 float64) float64 {
	return edge(u.hi-v.lo, d2) - edge(u.lo-v.lo, d2) - edge(u.hi-v.hi, d2) + edge(u.lo-v.hi, d2)
}

// edge is the second antiderivative of ln √(w² + d²).
func edge(w, d2 float64) float64 {
	s := w*w + d2
	if s == 0 {
		return 0
	}
	e := (w*w - d2) / 4 * math.Log(s)
	if d2 > 0 {
		d := math.Sqrt(d2)
		e += d * w * math.Atan2(w, d)
	}
	return e
}

// parallelExchange is area times factor, m², between two rectangles in
// parallel planes at the distance d, sides along x and y: Stokes' form
// AF = 1/2π ∮∮ ln r dr1·dr2 [Sparrow63], in which only parallel edges count.
func parallelExchange(x1, x2, y1, y2 span, d float64) float64 {
	sum := 0.0
	for i, a := range [2]float64{y1.lo, y1.hi} {
		for j, b := range [2]float64{y2.lo, y2.hi} {
			sum -= parity(i+j) * edges(x1, x2, (a-b)*(a-b)+d*d)
		}
	}
	for i, a := range [2]float64{x1.lo, x1.hi} {
		for j, b := range [2]float64{x2.lo, x2.hi} {
			sum -= parity(i+j) * edges(y1, y2, (a-b)*(a-b)+d*d)
		}
	}
	return sum / (2 * math.Pi)
}

// squareExchange is area times factor, m², between two rectangles at a right
// angle: c1 and c2 lie along the common direction, a and b are the distances
// of the two from the common line.
func squareExchange(c1, c2, a, b span) float64 {
	sum := 0.0
	for i, p := range [2]float64{a.lo, a.hi} {
		for j, q := range [2]float64{b.lo, b.hi} {
			sum -= parity(i+j) * edges(c1, c2, p*p+q*q)
		}
	}
	return sum / (2 * math.Pi)
}

func parity(k int) float64 {
	if k%2 == 1 {
		return -1
	}
	return 1
}

// EnclosureMean returns the mean PPFD in µmol/(m² s) over the inside of a
// closed enclosure of any shape, its first light included, that reflects the
// same fraction reflectance, 0 to 0.98, everywhere: PPF/(A (1-ρ)) for the
// photon flux ppf, µmol/s, at least 0, and the area, m², above 0. In a sphere
// the reflected part, ρ times it, is the same at every point. NaN outside.
func EnclosureMean(ppf, area, reflectance float64) float64 {
	if !(ppf >= 0) || !(area > 0) || !reflectanceRange.Contains(reflectance) {
		return math.NaN()
	}
	return ppf / (area * (1 - reflectance))
}
