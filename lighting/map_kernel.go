package lighting

import "math"

// The kernels add one fixture to a stretch of points that starts at lo. With
// d from fixture to point, a the axis and n the normal, the PPFD is
// I0 (a·d/r)^m (-n·d)/r³ where both products are positive.

// grazing is the least a·d, m, that gives light: below it the cube of a·d in
// quick would leave the range of float64.
const grazing = 1e-60

// quick takes r^-(m+3) as ((a·d)²/r²)^p/(a·d)^(2p) with p = (m+3)/2, one
// division and one power by table: powerTable.at stands in the loop, a call
// would cost as much again.
func (s *powerSource) quick(out []float64, p *Points, lo int) {
	n := len(out)
	x, y, z := p.x[lo:lo+n], p.y[lo:lo+n], p.z[lo:lo+n]
	nx, ny, nz := p.nx[lo:lo+n], p.ny[lo:lo+n], p.nz[lo:lo+n]
	scale, poly, shift := &s.power.scale, s.power.poly, s.power.shift&63
	half := uint64(1) << (shift - 1)
	sx, sy, sz, ax, ay, az := s.x, s.y, s.z, s.ax, s.ay, s.az
	for i := range out {
		dx, dy, dz := x[i]-sx, y[i]-sy, z[i]-sz
		ad := ax*dx + ay*dy + az*dz
		g := -(nx[i]*dx + ny[i]*dy + nz[i]*dz)
		if !(ad > grazing && g > 0) {
			if dx == 0 && dy == 0 && dz == 0 {
				out[i] = math.NaN()
			}
			continue
		}
		r2 := dx*dx + dy*dy + dz*dz
		a3 := ad * ad * ad
		inv := 1 / (r2 * a3)
		b := math.Float64bits(ad * ad * a3 * inv)
		frac := b & fraction
		k := frac >> shift
		d := math.Float64frombits(oneBits|frac) - math.Float64frombits(oneBits|k<<shift|half)
		c := &poly[k]
		d2 := d * d
		power := scale[b>>52&exponentMask] * ((c[0] + c[1]*d) + d2*((c[2]+c[3]*d)+d2*(c[4]+c[5]*d)))
		out[i] += s.intensity * g * (r2 * inv) * power
	}
}

// lambert is quick for m = 1.
func (s *powerSource) lambert(out []float64, p *Points, lo int) {
	n := len(out)
	x, y, z := p.x[lo:lo+n], p.y[lo:lo+n], p.z[lo:lo+n]
	nx, ny, nz := p.nx[lo:lo+n], p.ny[lo:lo+n], p.nz[lo:lo+n]
	for i := range out {
		dx, dy, dz := x[i]-s.x, y[i]-s.y, z[i]-s.z
		ad := s.ax*dx + s.ay*dy + s.az*dz
		g := -(nx[i]*dx + ny[i]*dy + nz[i]*dz)
		if ad > 0 && g > 0 {
			r2 := dx*dx + dy*dy + dz*dz
			out[i] += s.intensity * ad * g / (r2 * r2)
		} else if dx == 0 && dy == 0 && dz == 0 {
			out[i] = math.NaN()
		}
	}
}

// steep is quick for exponents too large for a table.
func (s *powerSource) steep(out []float64, p *Points, lo int) {
	for i := range out {
		dx, dy, dz := p.x[lo+i]-s.x, p.y[lo+i]-s.y, p.z[lo+i]-s.z
		ad := s.ax*dx + s.ay*dy + s.az*dz
		g := -(p.nx[lo+i]*dx + p.ny[lo+i]*dy + p.nz[lo+i]*dz)
		if ad > 0 && g > 0 {
			r2 := dx*dx + dy*dy + dz*dz
			out[i] += s.intensity * g * math.Pow(ad*ad/r2, s.exponent-1.5) / (r2 * math.Sqrt(r2))
		} else if dx == 0 && dy == 0 && dz == 0 {
			out[i] = math.NaN()
		}
	}
}
