package envelope

import "math"

// exchange holds exchange areas in m² between the parts of a body: each row
// sums to the part's area, and the table is symmetric.
type exchange struct {
	parts []part
	area  []float64 // m²
	x     [][]float64
}

func newExchange(parts []part) exchange {
	e := exchange{parts: parts, area: make([]float64, len(parts)), x: make([][]float64, len(parts))}
	for i := range e.x {
		e.x[i] = make([]float64, len(parts))
	}
	return e
}

// set takes an exchange area; parts of one plane see nothing of each other but
// for rounding.
func (e *exchange) set(i, j int, v float64) {
	v = max(0, v)
	e.x[i][j], e.x[j][i] = v, v
}

// index returns where a part stands, or -1.
func (e *exchange) index(p part) int {
	for i, q := range e.parts {
		if q == p {
			return i
		}
	}
	return -1
}

// exchange returns the exchange areas inside the prism: those of what runs
// along the house by exchangeArea, of the low parts of the ends by toEnd and
// endToEnd, of the rest of the ends by what closure leaves, half for each end. A
// strip of an arch, plane here, sees itself by what its arc is longer; strips
// have the areas of their arcs when areas holds them.
func (p *prism) exchange(area func(part) float64) exchange {
	n, m := len(p.longs), len(p.lows)
	parts := make([]part, 0, n+2*m+2)
	for _, l := range p.longs {
		parts = append(parts, l.part)
	}
	for _, end := range [2]int{toFarEnd, toNearEnd} {
		for _, l := range p.lows {
			parts = append(parts, part{l.kind, end, 0})
		}
		parts = append(parts, part{EndWall, end, 0})
	}
	e := newExchange(parts)
	far, near := n, n+m+1
	outline := make([][]edge, m)
	top := p.end
	for k, l := range p.lows {
		a, b, c, d := planar{0, l.from}, planar{0, l.to}, planar{p.width, l.to}, planar{p.width, l.from}
		outline[k] = []edge{{a, b}, {b, c}, {c, d}, {d, a}}
		e.area[far+k] = p.width * (l.to - l.from)
		e.area[near+k] = e.area[far+k]
		top -= e.area[far+k]
	}
	e.area[far+m], e.area[near+m] = max(0, top), max(0, top)
	for i, a := range p.longs {
		plane := a.edge.length() * p.length
		e.area[i] = plane
		if v := area(a.part); v > plane {
			e.area[i] = v
			e.x[i][i] = v - plane
		}
		rest := plane
		for j, b := range p.longs {
			if j > i {
				e.set(i, j, exchangeArea(a.edge, b.edge, p.length))
			}
			if j != i {
				rest -= e.x[i][j]
			}
		}
		for k := range p.lows {
			v := toEnd(a.edge, outline[k], p.length)
			e.set(i, far+k, v)
			e.set(i, near+k, v)
			rest -= 2 * v
		}
		e.set(i, far+m, rest/2)
		e.set(i, near+m, rest/2)
	}
	left := e.area[far+m]
	for i := range n {
		left -= e.x[i][far+m]
	}
	for k := range p.lows {
		rest := e.area[far+k]
		for i := range n {
			rest -= e.x[i][far+k]
		}
		for l := range p.lows {
			v := endToEnd(outline[k], outline[l], p.length)
			e.set(far+k, near+l, v)
			rest -= v
		}
		e.set(far+k, near+m, rest)
		e.set(near+k, far+m, rest)
		left -= rest
	}
	e.set(far+m, near+m, left)
	return e
}

// exchange returns the exchange areas of the house of the form. One bay is one
// convex body. Several bays are a body below the eaves and the attics above it:
// slopes of different bays do not see each other, and what passes the level of
// the eaves is taken as spread evenly over it and over all directions, which
// keeps closure and reciprocity.
func (f *Form) exchange(area func(part) float64) exchange {
	body := f.body()
	if f.Bays == 1 {
		return body.exchange(area)
	}
	bays := float64(f.Bays)
	b := body.exchange(func(part) float64 { return 0 })
	attic := f.attic()
	a := attic.exchange(func(p part) float64 { return area(p) / bays })
	var parts []part
	for _, p := range b.parts {
		if p != ceiling {
			parts = append(parts, p)
		}
	}
	for _, p := range a.parts {
		if p.kind == Roof {
			parts = append(parts, p)
		}
	}
	gutter := part{kind: Gutter, side: toLevel}
	if f.GutterWidth > 0 {
		parts = append(parts, gutter)
	}
	e := newExchange(parts)
	top, open := b.index(ceiling), a.index(ceiling)
	all := b.area[top]
	// through returns how much of each attic and of the gutters a part sees from
	// the level of the eaves: its area times the share that the level sends it.
	through := make([]float64, len(parts)) // m², of the level towards the part from above
	below := make([]float64, len(parts))   // m², of the level towards the part from below
	for i, p := range parts {
		if k := b.index(p); k >= 0 && p != ceiling {
			e.area[i] += b.area[k]
			below[i] = b.x[top][k]
		}
		if k := a.index(p); k >= 0 && p != ceiling {
			e.area[i] += bays * a.area[k]
			through[i] = bays * a.x[open][k]
		}
		if p == gutter {
			e.area[i] = (bays - 1) * f.GutterWidth * f.Length
			through[i] = e.area[i]
		}
	}
	for i, p := range parts {
		for j, q := range parts {
			v := (through[i]*below[j] + below[i]*through[j]) / all
			if k, l := b.index(p), b.index(q); k >= 0 && l >= 0 {
				v += b.x[k][l]
			}
			if k, l := a.index(p), a.index(q); k >= 0 && l >= 0 {
				v += bays * a.x[k][l]
			}
			e.x[i][j] = v
		}
	}
	return e
}

// roomView is what the facets of a house see of each other inside.
type roomView struct {
	n     int       // facets against the air
	share []float64 // fraction of what facet i sees that is facet j, at i n + j
	warm  []float64 // fraction that is floor, buried wall, party wall or a wall to an annex
}

// newRoomView returns what the facets of the shape see of each other, in the
// order of those against the air: exact by parts for a shape of NewShape, evened
// out for facets of the caller's own.
func newRoomView(s *Shape) roomView {
	var active []int
	for i := range s.Facets {
		if f := &s.Facets[i]; !f.Kind.InGround() && !f.Party {
			active = append(active, i)
		}
	}
	v := roomView{n: len(active), share: make([]float64, len(active)*len(active)), warm: make([]float64, len(active))}
	e, at := s.parts()
	if at == nil {
		e, at = s.evened()
	}
	for a, i := range active {
		v.warm[a] = 1
		for b, j := range active {
			p, q := at[i], at[j]
			f := e.x[p][q] / e.area[p] * min(1, s.Facets[j].Area/e.area[q])
			v.share[a*v.n+b] = f
			v.warm[a] -= f
		}
		v.warm[a] = max(0, v.warm[a])
	}
	return v
}

// What counts as the same where facets are compared with those of a form: areas
// and azimuths of the caller's own come from texts or sums, which keep no more
// digits than this.
const (
	sameArea    = 1e-6 // of the area, that a facet may exceed its part by
	sameAzimuth = 1e-9 // degree
	sameWay     = 1e-9 // below 1, cosine of two directions
)

// parts returns the exchange areas of the shape's form and the part that each
// facet is, or nil when the facets are not those of the form.
func (s *Shape) parts() (exchange, []int) {
	f := s.Form
	f.Annexes = nil
	if f.check() != nil || f.Bays < 1 {
		return exchange{}, nil
	}
	whole, err := NewShape(f)
	if err != nil {
		return exchange{}, nil
	}
	areas := map[part]float64{}
	for i, p := range f.partsOf(whole.Facets) {
		areas[p] += whole.Facets[i].Area
	}
	e := f.exchange(func(p part) float64 {
		if p.kind == Roof {
			return areas[p]
		}
		return 0
	})
	at := make([]int, len(s.Facets))
	for i, p := range f.partsOf(s.Facets) {
		at[i] = e.index(p)
		if at[i] < 0 || s.Facets[i].Area > e.area[at[i]]*(1+sameArea) {
			return exchange{}, nil
		}
	}
	return e, at
}

// partsOf names the part of the form that each facet is.
func (f *Form) partsOf(facets []Facet) []part {
	turns := [4]float64{toLeftSide: wrap(f.Azimuth + 270), toRightSide: wrap(f.Azimuth + 90), toFarEnd: wrap(f.Azimuth), toNearEnd: wrap(f.Azimuth + 180)}
	parts := make([]part, len(facets))
	var seen [2]int
	for i := range facets {
		w := &facets[i]
		p := part{w.Kind, toLevel, 0}
		if w.Kind != Floor && w.Kind != Gutter {
			for side, azimuth := range turns {
				if math.Abs(w.Azimuth-azimuth) < sameAzimuth {
					p.side = side
				}
			}
		}
		if w.Kind == Roof && p.side <= toRightSide {
			p.strip = seen[p.side]
			seen[p.side]++
		}
		parts[i] = p
	}
	return parts
}

// evened returns exchange areas of facets of which only areas and directions
// are known: in proportion to the product of two sizes, one for each facet, none
// between facets that look the same way, the sizes found so that each row sums
// to its area, after the network of mean radiant temperature of [Carroll80].
// It is exact in a sphere, and within 0.001 in a cube.
func (s *Shape) evened() (exchange, []int) {
	n := len(s.Facets)
	at := make([]int, n)
	e := newExchange(make([]part, n))
	size := make([]float64, n)
	total := 0.0
	sees := func(i, j int) bool {
		a, b := &s.Facets[i], &s.Facets[j]
		ae, an, au := a.normal()
		be, bn, bu := b.normal()
		return i != j && ae*be+an*bn+au*bu < (1-sameWay)*a.Area*b.Area
	}
	for i := range s.Facets {
		at[i] = i
		e.area[i] = s.Facets[i].Area
		total += e.area[i]
	}
	for i := range size {
		size[i] = e.area[i] / math.Sqrt(total)
	}
	for range evenedRounds {
		for i := range size {
			sum := 0.0
			for j := range size {
				if sees(i, j) {
					sum += size[j]
				}
			}
			if sum > 0 {
				size[i] = math.Sqrt(size[i] * e.area[i] / sum)
			}
		}
	}
	for i := range size {
		rest := e.area[i]
		for j := range size {
			if sees(i, j) {
				e.x[i][j] = size[i] * size[j]
				rest -= e.x[i][j]
			}
		}
		e.x[i][i] = rest
	}
	return e, at
}

// evenedRounds settles the sizes of ordinary houses to 1e-9 of an area.
const evenedRounds = 60
