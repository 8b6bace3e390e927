package envelope

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"cloche.example/psychro"
)

// An independent solution of the same problem: formulas written out once more
// with powers and kelvin, radiosities from a dense linear system at each
// evaluation, temperatures alone as unknowns, differences for slopes. Slow and
// plain; it shares nothing with the solver but the constants of nature.
type plainLayers struct {
	layers []Layer
	gaps   []Gap
	k      CoverConditions
	wet    float64 // share of the inner face under water
	vapour bool    // passes to it
	ice    float64 // share of it that freezes
	j, g   []float64
}

// plainFace returns emittance and transmittance of face a, open area and water
// included.
func (p *plainLayers) plainFace(a int) (e, transmittance float64) {
	l := p.layers[a/2]
	out, in, tau := l.EmittanceOut, l.EmittanceIn, l.Transmittance
	if p.wet > 0 && a/2 == len(p.layers)-1 {
		// Behind the layer water that reflects 0.05: a sum over the bounces.
		rIn, back, ray := 1-in-tau, 1-out-tau, tau*0.05
		for range 60 {
			back += ray * tau
			ray *= rIn * 0.05
		}
		out += p.wet * (1 - back - out)
		in += p.wet * (0.95 - in)
		tau -= p.wet * tau
	}
	closed := 1 - l.Openness
	out, in, tau = closed*out, closed*in, closed*tau+l.Openness
	if a%2 == 0 {
		return out, tau
	}
	return in, tau
}

func (p *plainLayers) leaks() bool {
	for _, l := range p.layers {
		if l.Leakage > 0 {
			return true
		}
	}
	return false
}

// latent is the heat that vapour brings to a wet face at t in kelvin with the
// convection coefficient h, by the formula of package psychro.
func (p *plainLayers) latent(t, h float64) float64 {
	air, err := psychro.FromRelativeHumidity(p.k.Inside, p.k.InsideHumidity, p.k.Pressure)
	if err != nil {
		panic(err)
	}
	c := math.Max(-100, math.Min(95, t-273.15))
	v, err := air.VapourFlux(c, math.Max(h, 0.5))
	if err != nil {
		panic(err)
	}
	water := psychro.LatentHeatOver(psychro.Liquid, math.Max(0.01, c))
	frost := psychro.LatentHeatOver(psychro.Ice, math.Min(0.01, c))
	return (1 - p.layers[len(p.layers)-1].Openness) * v.Flux * (water + p.ice*(frost-water))
}

// radiosities solves the 2N equations for J, outer faces at even places.
func (p *plainLayers) radiosities(t []float64) {
	n := len(p.layers)
	f := (1 + math.Cos(p.k.Tilt*math.Pi/180)) / 2
	above := math.Pow(p.k.sky()+273.15, 4)
	if p.k.Sky == SkyWeighted {
		air := math.Pow(p.k.Outside+273.15, 4)
		above = air + math.Cos(p.k.Tilt/2*math.Pi/180)*(above-air)
	}
	eOut := plainSigma * (f*above + (1-f)*math.Pow(p.k.ground()+273.15, 4))
	eIn := plainSigma * math.Pow(p.k.radiant()+273.15, 4)
	m := mat.NewDense(2*n, 2*n, nil)
	b := mat.NewVecDense(2*n, nil)
	// irradiance on face a: the neighbour's radiosity (index) or a constant.
	source := func(a int) (int, float64) {
		switch {
		case a == 0:
			return -1, eOut
		case a == 2*n-1:
			return -1, eIn
		case a%2 == 0:
			return a - 1, 0
		}
		return a + 1, 0
	}
	for a := range 2 * n {
		e, tau := p.plainFace(a)
		m.Set(a, a, m.At(a, a)+1)
		rhs := e * plainSigma * math.Pow(t[a], 4)
		for _, part := range []struct {
			face int
			w    float64
		}{{a, 1 - e - tau}, {a ^ 1, tau}} {
			if i, v := source(part.face); i < 0 {
				rhs += part.w * v
			} else {
				m.Set(a, i, m.At(a, i)-part.w)
			}
		}
		b.SetVec(a, rhs)
	}
	var x mat.VecDense
	if err := x.SolveVec(m, b); err != nil {
		panic(err)
	}
	p.j, p.g = make([]float64, 2*n), make([]float64, 2*n)
	for a := range 2 * n {
		p.j[a] = x.AtVec(a)
	}
	for a := range 2 * n {
		if i, v := source(a); i < 0 {
			p.g[a] = v
		} else {
			p.g[a] = p.j[i]
		}
	}
}

func (p *plainLayers) balances(t []float64) []float64 {
	n := len(p.layers)
	p.radiosities(t)
	f := make([]float64, len(t))
	hce := 4 + 4*p.k.Wind
	if p.k.OutsideConvection == OutsideWatmuff {
		hce = 2.8 + 3*p.k.Wind
	}
	for i, l := range p.layers {
		o, s := 2*i, 2*i+1
		q := l.Conductivity / l.Thickness * (t[s] - t[o])
		eo, _ := p.plainFace(o)
		es, _ := p.plainFace(s)
		f[o] = q + eo*(p.g[o]-plainSigma*math.Pow(t[o], 4)) + p.k.AbsorbedSun[i]/2
		f[s] = -q + es*(p.g[s]-plainSigma*math.Pow(t[s], 4)) + p.k.AbsorbedSun[i]/2
	}
	for i, g := range p.gaps {
		o, s := 2*i+1, 2*i+2
		tm := (t[o] + t[s]) / 2
		k, mu, cp, rho := plainAir(tm)
		at := func(d float64, nusselt func(ra, aspect, tilt float64) float64) float64 { // W/(m² K), with the house side warmer by d
			ra := 9.80665 * math.Pow(g.Width, 3) * math.Abs(d) * cp * rho * rho / (tm * mu * k)
			tilt := p.k.Tilt
			if d < 0 {
				tilt = 180 - tilt
			}
			return nusselt(ra, p.k.Height/g.Width, tilt) * k / g.Width
		}
		q := g.Bridge * (t[s] - t[o])
		if len(t) == 2*n {
			q += at(t[s]-t[o], plainGapNusselt) * (t[s] - t[o])
		} else {
			// The gap's air between two films, each of twice the conductance; each by
			// itself where the air is no longer between the sides.
			air := t[2*n+i]
			hOuter := at(t[s]-t[o], plainGapNusselt)
			hInner := hOuter
			if air > math.Max(t[o], t[s]) || air < math.Min(t[o], t[s]) {
				near, far := plainNearer, plainGapNusselt
				if math.Abs(air-t[o]) > math.Abs(air-t[s]) {
					near, far = far, near
				}
				hOuter, hInner = at(air-t[o], near), at(t[s]-air, far)
			}
			f[o] += 2 * hOuter * (air - t[o])
			f[s] += 2 * hInner * (air - t[s])
			f[2*n+i] -= 2*hOuter*(air-t[o]) + 2*hInner*(air-t[s])
		}
		f[o] += q
		f[s] -= q
	}
	f[0] += hce * (p.k.Outside + 273.15 - t[0])
	tin, last := p.k.Inside+273.15, 2*n-1
	h := plainInside(&p.k, tin, t[last])
	f[last] += h * (tin - t[last])
	if p.vapour {
		f[last] += p.latent(t[last], h)
	}
	if len(t) > 2*n {
		_, _, cp, rho := plainAir(tin)
		for i := 1; i < n; i++ { // between gap i-1 and gap i or the house
			inner := tin
			if i < n-1 {
				inner = t[2*n+i]
			}
			q := p.layers[i].Leakage * rho * cp * (inner - t[2*n+i-1])
			f[2*n+i-1] += q
			if i < n-1 {
				f[2*n+i] -= q
			}
		}
	}
	return f
}

// solve is Newton's method with slopes by differences, each step shortened
// until the norm falls; false where it does not.
func (p *plainLayers) solve() ([]float64, bool) {
	faces := 2 * len(p.layers)
	n := faces
	if p.leaks() {
		n += len(p.gaps)
	}
	t := make([]float64, n)
	for a := range t {
		t[a] = 273.15 + p.k.Outside + (p.k.Inside-p.k.Outside)*(float64(a)+1)/float64(faces+1)
		if a >= faces {
			t[a] = (t[2*(a-faces)+1] + t[2*(a-faces)+2]) / 2
		}
	}
	norm := func(f []float64) float64 {
		s := 0.0
		for _, v := range f {
			s += v * v
		}
		return s
	}
	for range 200 {
		f := append([]float64(nil), p.balances(t)...)
		if norm(f) < 1e-13 {
			return t, true
		}
		m := mat.NewDense(n, n, nil)
		for a := range n {
			u := append([]float64(nil), t...)
			u[a] += 1e-5
			for r, v := range p.balances(u) {
				m.Set(r, a, (v-f[r])/1e-5)
			}
		}
		var x mat.VecDense
		if err := x.SolveVec(m, mat.NewVecDense(n, f)); err != nil {
			return t, false
		}
		for scale := 1.0; ; scale /= 2 {
			if scale < 1e-6 {
				return t, norm(f) < 1e-10
			}
			u := make([]float64, n)
			for a := range u {
				u[a] = t[a] - scale*x.AtVec(a)
			}
			if g := p.balances(u); norm(g) < norm(f) {
				t = u
				break
			}
		}
	}
	return t, false
}
