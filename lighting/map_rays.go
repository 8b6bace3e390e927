package lighting

import "math"

// chunk is how many points a table fixture passes over at a time.
const chunk = 128

// rays run from one fixture to a chunk of points. Each pass of addTable is a
// loop of its own, short enough for a core to work on several points at once;
// what passes hand on stays in the nearest cache.
type rays struct {
	gain   [chunk]float64 // cos φ/r², 1/m²
	polar  [chunk]float64 // cosine of the polar angle, then the angle in steps
	azi    [chunk]float64 // tangent of the azimuth in its octant, then the azimuth in steps
	octant [chunk]uint8
}

// addTable adds I cos φ/r² of a table; b is working space.
func (r *run) addTable(s *tableSource, b *rays) {
	for lo := 0; lo < len(r.x); lo += chunk {
		hi := min(lo+chunk, len(r.x))
		part := run{out: r.out[lo:hi], x: r.x[lo:hi], y: r.y, z: r.z, n: r.n}
		part.aim(s, b)
		b.polarSteps(hi-lo, &s.table.polar)
		if s.table.round {
			s.table.addRound(part.out, b)
			continue
		}
		b.aziSteps(hi-lo, &s.table.azi)
		s.table.add(part.out, b)
	}
}

// nearAxis is the square of the tangent of the polar angle below which the
// cosine has lost the angle's last digits.
const nearAxis = 1.0 / (1 << (acosOctaves - 3))

// aim finds the direction of each point in the frame of the polar axis.
func (r *run) aim(s *tableSource, b *rays) {
	dy, dz := r.y-s.y, r.z-s.z
	g0, gx := -(r.n.Y*dy + r.n.Z*dz), -r.n.X
	u0, v0, w0 := s.u.Y*dy+s.u.Z*dz, s.v.Y*dy+s.v.Z*dz, s.w.Y*dy+s.w.Z*dz
	ux, vx, wx, sx := s.u.X, s.v.X, s.w.X, s.x
	if len(r.x) > chunk {
		return
	}
	for i, x := range r.x {
		dx := x - sx
		g := g0 + gx*dx
		u, v, w := u0+ux*dx, v0+vx*dx, w0+wx*dx
		u2, v2, w2 := u*u, v*v, w*w
		if !(u2+v2 > nearAxis*w2) {
			r.out[i] += s.exactly(u, v, w, g)
			b.gain[i], b.polar[i], b.azi[i] = 0, 0, 0
			continue
		}
		if g < 0 {
			g = 0
		}
		inv := 1 / math.Sqrt(u2+v2+w2)
		o := uint8(0)
		if u < 0 {
			o = 2
		}
		if v < 0 {
			o |= 4
		}
		if v2 > u2 {
			u, v = v, u
			o |= 1
		}
		b.octant[i] = o
		b.azi[i] = v / u
		b.polar[i] = w * inv
		b.gain[i] = g * inv * (inv * inv)
	}
}

// exactly is I cos φ/r² by the definition, for points next to the polar axis
// and for NaN on the fixture itself.
func (s *tableSource) exactly(u, v, w, g float64) float64 {
	rho2 := u*u + v*v
	r2 := rho2 + w*w
	if r2 == 0 {
		return math.NaN()
	}
	if g < 0 {
		return 0
	}
	return s.exact.lookup(math.Atan2(math.Sqrt(rho2), w), math.Atan2(v, u)) * g / (r2 * math.Sqrt(r2))
}

// polarSteps turns the cosines into angles.
func (b *rays) polarSteps(n int, s *ladder) {
	if n > chunk {
		return
	}
	front, back := -s.zero*s.scale, (math.Pi-s.zero)*s.scale
	scale, polar := s.scale, b.polar[:n]
	for i, c := range polar {
		base, turn := front, scale
		if c < 0 {
			c = -c
			base, turn = back, -scale
		}
		v := 1 - c
		p := &acosTable[math.Float64bits(v)>>(52-acosBits)&acosMask]
		d := v - p[0]
		d2 := d * d
		polar[i] = base + turn*((p[1]+p[2]*d)+d2*((p[3]+p[4]*d)+d2*p[5]))
	}
}

// aziSteps turns tangents and octants into azimuths.
func (b *rays) aziSteps(n int, s *ladder) {
	if n > chunk {
		return
	}
	var octant [8][2]float64
	for o, f := range octants {
		octant[o] = [2]float64{(f[0] - s.zero) * s.scale, f[1] * s.scale}
	}
	azi, octs := b.azi[:n], b.octant[:n]
	for i, q := range azi {
		p := &atanTable[int(q*atanCells+atanCells)&atanMask]
		d := q - p[0]
		d2 := d * d
		f := &octant[octs[i]&7]
		azi[i] = f[0] + f[1]*((p[1]+p[2]*d)+d2*(p[3]+p[4]*d))
	}
}

// octants turn the arctangent a of v/u or u/v, whichever is the smaller, into
// the azimuth f[0] + f[1] a: bit 0 tells that it was u/v, bit 1 that u is
// negative, bit 2 that v is.
var octants = [8][2]float64{
	{0, 1}, {math.Pi / 2, -1}, {math.Pi, 1}, {math.Pi / 2, -1},
	{0, 1}, {-math.Pi / 2, -1}, {-math.Pi, 1}, {-math.Pi / 2, -1},
}

// add interpolates.
func (t *fastTable) add(out []float64, b *rays) {
	n := len(out)
	if n > chunk {
		return
	}
	gain, polar, azi := b.gain[:n], b.polar[:n], b.azi[:n]
	cells, across, polars, azis := t.cells, t.across, t.polar, t.azi
	for i, p := range polar {
		q := azi[i]
		k, j := int(p), int(q)
		if uint(k) >= uint(len(polars.start)) || uint(j) >= uint(len(azis.start)) {
			continue
		}
		k, j = int(polars.start[k]), int(azis.start[j])
		for p >= polars.intervals[k].to {
			k++
		}
		for q >= azis.intervals[j].to {
			j++
		}
		p -= polars.intervals[k].from
		q -= azis.intervals[j].from
		e := &cells[j*across+k]
		out[i] += gain[i] * (e[0] + e[1]*p + q*(e[2]+e[3]*p))
	}
}

// addRound interpolates where the azimuth makes no difference.
func (t *fastTable) addRound(out []float64, b *rays) {
	n := len(out)
	if n > chunk {
		return
	}
	gain, polar := b.gain[:n], b.polar[:n]
	cells, polars := t.cells[t.across:], t.polar
	for i, p := range polar {
		k := int(p)
		if uint(k) >= uint(len(polars.start)) {
			continue
		}
		k = int(polars.start[k])
		for p >= polars.intervals[k].to {
			k++
		}
		e := &cells[k]
		out[i] += gain[i] * (e[0] + e[1]*(p-polars.intervals[k].from))
	}
}
