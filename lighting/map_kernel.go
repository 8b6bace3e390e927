package lighting

import "math"

// run is a stretch of points that differ in x alone. The kernels add one
// fixture to it, or a set of them. With d from fixture to point, a the axis and n the normal,
// the PPFD is I0 (a·d/r)^m (-n·d)/r³ where both products are positive; along
// the run both products are linear in x.
type run struct {
	out, x []float64
	y, z   float64
	n      Vector
}

// products returns a·d and -n·d less their parts from dx, and dy² + dz².
func (r *run) products(s *powerSource) (ad, g, rest float64) {
	dy, dz := r.y-s.y, r.z-s.z
	return s.ay*dy + s.az*dz, -(r.n.Y*dy + r.n.Z*dz), dy*dy + dz*dz
}

// addDown adds Lambertian downlights to points that face up, two at a time so
// that the two share a division.
func (r *run) addDown(down []downSource) {
	y, z := r.y, r.z
	i := 0
	for ; i+1 < len(down); i += 2 {
		a, b := &down[i], &down[i+1]
		ha, hb := max(a.z-z, 0), max(b.z-z, 0)
		ka, kb := ha*ha+(y-a.y)*(y-a.y), hb*hb+(y-b.y)*(y-b.y)
		ca, cb := a.intensity*ha*ha, b.intensity*hb*hb
		xa, xb := a.x, b.x
		out := r.out[:len(r.x)]
		for j, v := range r.x {
			da, db := v-xa, v-xb
			qa, qb := da*da+ka, db*db+kb
			qa *= qa
			qb *= qb
			out[j] += (ca*qb + cb*qa) / (qa * qb)
		}
	}
	if i < len(down) {
		s := &down[i]
		r.addLambert(&powerSource{x: s.x, y: s.y, z: s.z, az: -1, intensity: s.intensity})
	}
}

// addLambert adds a source with m = 1.
func (r *run) addLambert(s *powerSource) {
	ad0, g0, rest := r.products(s)
	ax, gx := s.ax, -r.n.X
	out := r.out[:len(r.x)]
	for i, x := range r.x {
		dx := x - s.x
		ad, g, r2 := ad0+ax*dx, g0+gx*dx, rest+dx*dx
		if ad > 0 && g > 0 {
			out[i] += s.intensity * ad * g / (r2 * r2)
		} else if r2 == 0 {
			out[i] = math.NaN()
		}
	}
}

// grazing is the least a·d, m, that gives light: below it the cube of a·d in
// addPower would leave the range of float64.
const grazing = 1e-60

// addPower takes r^-(m+3) as ((a·d)²/r²)^p/(a·d)^(2p) with p = (m+3)/2, one
// division and one power by table, which stands in the loop: a call would cost
// as much again.
func (r *run) addPower(s *powerSource) {
	ad0, g0, rest := r.products(s)
	ax, gx, sx := s.ax, -r.n.X, s.x
	scale, poly, shift, intensity := &s.power.scale, s.power.poly, s.power.shift&63, s.intensity
	out := r.out[:len(r.x)]
	for i, x := range r.x {
		dx := x - sx
		ad, g, r2 := ad0+ax*dx, g0+gx*dx, rest+dx*dx
		if !(ad > grazing && g > 0) {
			if r2 == 0 {
				out[i] = math.NaN()
			}
			continue
		}
		a2 := ad * ad
		a3 := a2 * ad
		inv := 1 / (r2 * a3)
		b := math.Float64bits(a2 * a3 * inv)
		frac := b & fraction
		c := &poly[frac>>shift]
		d := math.Float64frombits(oneBits|frac) - c[0]
		d2 := d * d
		power := scale[b>>52&exponentMask] * ((c[1] + c[2]*d) + d2*((c[3]+c[4]*d)+d2*c[5]))
		out[i] += intensity * g * (r2 * inv) * power
	}
}

// addSteep is addPower for exponents too large for a table.
func (r *run) addSteep(s *powerSource) {
	ad0, g0, rest := r.products(s)
	for i, x := range r.x {
		dx := x - s.x
		ad, g, r2 := ad0+s.ax*dx, g0-r.n.X*dx, rest+dx*dx
		if ad > 0 && g > 0 {
			r.out[i] += s.intensity * g * math.Pow(ad*ad/r2, s.exponent-1.5) / (r2 * math.Sqrt(r2))
		} else if r2 == 0 {
			r.out[i] = math.NaN()
		}
	}
}
