package envelope

import (
	"math"

	"cloche.example/internal/constant"
)

// Solve returns the steady state of the cover in the conditions k: every face
// temperature and radiosity, the heat flux in W/m² and what drives it, and the
// coefficients used. Face balances close to 1e-9 W/m². The error joins a
// *RangeError for each field of k out of range; ErrNotConverged when the
// balances of the faces do not close.
func (c Cover) Solve(k CoverConditions) (Solution, error) {
	return c.solve(&k, &standard)
}

func (c Cover) solve(k *CoverConditions, pc *constants) (Solution, error) {
	if c.set == nil {
		return Solution{}, layerCountRange.Check("number of layers", 0)
	}
	return c.set.solve(k, pc)
}

func (c *layerSet) solve(k *CoverConditions, pc *constants) (Solution, error) {
	if err := k.check(c.n); err != nil {
		return Solution{}, err
	}
	var out Solution
	wet := k.InnerFace == InnerWet
	if err := c.run(k, pc, wet, &out); err != nil {
		return Solution{}, err
	}
	if k.InnerFace == InnerAuto && out.Condenses {
		out = Solution{}
		if err := c.run(k, pc, true, &out); err != nil {
			return Solution{}, err
		}
	}
	return out, nil
}

// run solves the part that stands apart and, where there is one, the
// collapsed part, and joins them.
func (c *layerSet) run(k *CoverConditions, pc *constants, wet bool, out *Solution) error {
	s := solver{rad: c.longwave(wet), c: pc, k: k}
	s.prepare(c, k, pc, wet, false)
	if err := s.solve(); err != nil {
		return err
	}
	s.report(out)
	if c.patchGap >= 0 {
		touching := solver{rad: c.longwave(wet), c: pc, k: k}
		var patch Solution
		touching.prepare(c, k, pc, wet, true)
		if err := touching.solve(); err != nil {
			return err
		}
		touching.report(&patch)
		out.join(&patch, c.gaps[c.patchGap].Collapsed)
	}
	out.finish(c, k)
	return nil
}

// join takes in the collapsed part of the given share of the area.
func (o *Solution) join(patch *Solution, share float64) {
	last := o.Layers - 1
	o.Patch = Patch{
		Share: share, FluxIn: patch.FluxIn, FluxOut: patch.FluxOut,
		InnerTemperature: patch.Inner[last].Temperature, OuterTemperature: patch.Outer[0].Temperature,
		Residual: patch.Residual,
	}
	mix := func(a *float64, b float64) { *a += share * (b - *a) }
	mix(&o.FluxIn, patch.FluxIn)
	mix(&o.InConvective, patch.InConvective)
	mix(&o.InRadiative, patch.InRadiative)
	mix(&o.InLatent, patch.InLatent)
	mix(&o.InLeakage, patch.InLeakage)
	mix(&o.FluxOut, patch.FluxOut)
	mix(&o.OutConvective, patch.OutConvective)
	mix(&o.OutRadiative, patch.OutRadiative)
	mix(&o.AirDriven, patch.AirDriven)
	mix(&o.SkyDriven, patch.SkyDriven)
	mix(&o.SunDriven, patch.SunDriven)
	mix(&o.UAir, patch.UAir)
	mix(&o.Condensate, patch.Condensate)
	for d := range drives {
		mix(&o.drive.flux[d], patch.drive.flux[d])
		mix(&o.drive.radiosity[d], patch.drive.radiosity[d])
	}
	o.Iterations += patch.Iterations
}

// finish computes what follows from the fluxes and the inner face.
func (o *Solution) finish(c *layerSet, k *CoverConditions) {
	o.InnerTemperature = o.Inner[o.Layers-1].Temperature
	if o.Patch.Share > 0 {
		o.InnerTemperature = math.Min(o.InnerTemperature, o.Patch.InnerTemperature)
	}
	o.DewPoint = coverDewPoint(k.Inside, k.InsideHumidity)
	o.Condenses = o.InnerTemperature < o.DewPoint
	for i := c.n - 2; i >= 0 && c.layers[i+1].Leakage > 0; i-- {
		if min(o.Inner[i].Temperature, o.Outer[i+1].Temperature) < o.DewPoint {
			o.DripsAbove = true
		}
	}
	face, _ := moistSaturation(o.InnerTemperature)
	air, _ := moistSaturation(k.Inside)
	o.DripHumidity = face / air
	o.U = quotient(o.FluxIn, k.Inside-k.Outside)
	o.UAmbient = quotient(o.FluxIn, o.AmbientIn-o.AmbientOut)
}

// quotient returns a/b, NaN for b of zero.
func quotient(a, b float64) float64 {
	if b == 0 {
		return nan
	}
	return a / b
}

// report writes the state of one part.
func (s *solver) report(o *Solution) {
	n := s.n
	last := innerFace(n - 1)
	o.Layers, o.Iterations, o.Wet = n, s.steps, s.wet
	for i := range n {
		o.Outer[i] = s.face(outerFace(i), innerFace(i))
		o.Inner[i] = s.face(innerFace(i), outerFace(i))
	}
	for i := range n - 1 {
		g := &s.gaps[i]
		side := 0
		if s.t[outerFace(i+1)] < s.t[innerFace(i)] {
			side = 1
		}
		flux := (g.h + g.bridge) * (s.t[outerFace(i+1)] - s.t[innerFace(i)])
		if s.leaks {
			flux = 2*g.h*(g.air-s.t[innerFace(i)]) + g.bridge*(s.t[outerFace(i+1)]-s.t[innerFace(i)])
		}
		o.Gaps[i] = GapState{
			Rayleigh: g.ra, Nusselt: g.nu, Convection: g.h, Bridge: g.bridge, Flux: flux,
			FlowTilt: g.tilt[side], Air: g.air, AtJump: g.pinned || g.unsettled,
			InRange: g.flow[side].kind != gapHollands || hollandsRayleighRange.Contains(g.ra),
		}
	}
	o.InConvective = s.hIn * (s.in - s.t[last])
	o.InRadiative = s.eIn - o.Inner[n-1].Radiosity
	o.InLatent = s.latent
	o.Condensate = s.vapour
	if s.leaks && n > 1 {
		o.InLeakage = s.leak[n-1] * (s.in - s.gaps[n-2].air)
	}
	o.FluxIn = o.InConvective + o.InRadiative + o.InLatent + o.InLeakage
	o.OutConvective = s.hOut * (s.t[0] - s.out)
	o.OutRadiative = o.Outer[0].Radiosity - s.eOut
	o.FluxOut = o.OutConvective + o.OutRadiative
	o.OutsideCoefficient, o.InsideCoefficient = s.hOut, s.hIn
	o.SkyView = skyView(s.k.Tilt)
	o.IrradianceOut, o.IrradianceIn = s.eOut, s.eIn
	o.OutsideInRange = s.k.OutsideConvection.published().Contains(s.k.Wind)
	o.InsideInRange = s.k.InsideConvection.published().Contains(s.k.Tilt)
	o.Residual = s.biggest
	o.AmbientOut = s.ambient(0, s.hOut, s.out, s.eOut)
	o.AmbientIn = s.ambient(last, s.hIn, s.in, s.eIn)
	s.split(o)
}

// face returns the state of face a, b being the layer's other face.
func (s *solver) face(a, b int) Face {
	return Face{
		Temperature: s.t[a], Irradiance: s.g[a], Residual: s.f[a],
		Radiosity: s.rad.radiosity(a, s.black[a], s.g[a], s.g[b]),
	}
}

// ambient mixes air and radiant temperature, °C, by the coefficients at face
// a: [IsoWin03] 8.1, environmental temperature.
func (s *solver) ambient(a int, h, air, irradiance float64) float64 {
	radiant := math.Sqrt(math.Sqrt(irradiance/s.c.sigma)) - constant.ZeroCelsius
	hr := s.rad.emittance[a] * s.c.secant(s.t[a], radiant)
	if h+hr == 0 {
		return nan
	}
	return (h*air + hr*radiant) / (h + hr)
}

// secant returns the slope in W/(m² K) of black-body emission between two
// temperatures in °C.
func (c *constants) secant(a, b float64) float64 {
	a += constant.ZeroCelsius
	b += constant.ZeroCelsius
	return c.sigma * (a*a + b*b) * (a + b)
}
