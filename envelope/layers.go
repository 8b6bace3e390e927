package envelope

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
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
	if err := k.check(c.set.n); err != nil {
		return Solution{}, err
	}
	var out Solution
	room := newRoomAir(k)
	err := c.set.solve(k, pc, &room, nil, &out)
	return out, err
}

// solve finds the state in conditions that have been checked, in the given air.
// The part that stands apart and, where there is one, the collapsed part are
// each judged by themselves and joined. Iterates of before may be nil.
func (c *layerSet) solve(k *CoverConditions, pc *constants, room *roomAir, near *nearCover, out *Solution) error {
	s := solver{dry: &c.dry, wet: &c.wet, c: pc, k: k, room: room}
	if near != nil {
		near.of(c)
		s.near, s.system = &near.apart, near.space
	} else {
		s.system = new(system)
	}
	s.prepare(c, k, pc, false)
	if err := s.settle(out); err != nil {
		return err
	}
	if c.patchGap >= 0 {
		touching := solver{dry: &c.dry, wet: &c.wet, c: pc, k: k, room: room, system: s.system}
		if near != nil {
			touching.near = &near.touched
		}
		var patch Solution
		touching.prepare(c, k, pc, true)
		if err := touching.settle(&patch); err != nil {
			return err
		}
		out.join(&patch, c.gaps[c.patchGap].Collapsed)
	}
	out.finish(c, k, room)
	return nil
}

// join takes in the collapsed part of the given share of the area.
func (o *Solution) join(patch *Solution, share float64) {
	last := o.Layers - 1
	o.Patch = Patch{
		Share: share, FluxIn: patch.FluxIn, FluxOut: patch.FluxOut,
		InnerTemperature: patch.Inner[last].Temperature, OuterTemperature: patch.Outer[0].Temperature,
		WetShare: patch.WetShare, IceShare: patch.IceShare, Condensate: patch.Condensate,
		Residual: patch.Residual,
	}
	if water := (1-share)*o.Condensate + share*patch.Condensate; water != 0 {
		o.IceShare = ((1-share)*o.IceShare*o.Condensate + share*patch.IceShare*patch.Condensate) / water
	} else {
		o.IceShare = max(o.IceShare, patch.IceShare)
	}
	if o.TwoStates || patch.TwoStates {
		o.DryFluxIn += share * (patch.DryFluxIn - o.DryFluxIn)
		o.TwoStates = true
	}
	o.Condenses = o.Condenses || patch.Condenses
	o.DripHumidity = min(o.DripHumidity, patch.DripHumidity)
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
	mix(&o.UOvercast, patch.UOvercast)
	mix(&o.Condensate, patch.Condensate)
	o.flow.join(&patch.flow, share)
	for d := range drives {
		mix(&o.drive.flux[d], patch.drive.flux[d])
		mix(&o.drive.radiosity[d], patch.drive.radiosity[d])
	}
	mix(&o.WetShare, patch.WetShare)
	o.Iterations += patch.Iterations
}

// approach finds what the cover sends and takes near its state, from the
// iterates of before: see solver.approach.
func (c *layerSet) approach(k *CoverConditions, room *roomAir, near *nearCover, o *flow) error {
	near.of(c)
	s := solver{dry: &c.dry, wet: &c.wet, c: &standard, k: k, room: room, near: &near.apart, system: near.space}
	s.prepare(c, k, &standard, false)
	if err := s.approach(o); err != nil || c.patchGap < 0 {
		return err
	}
	touching := solver{dry: &c.dry, wet: &c.wet, c: &standard, k: k, room: room, near: &near.touched, system: near.space}
	touching.prepare(c, k, &standard, true)
	var patch flow
	if err := touching.approach(&patch); err != nil {
		return err
	}
	o.join(&patch, c.gaps[c.patchGap].Collapsed)
	return nil
}

// finish computes what follows from the fluxes and the inner face.
func (o *Solution) finish(c *layerSet, k *CoverConditions, room *roomAir) {
	o.InnerTemperature = o.Inner[o.Layers-1].Temperature
	if o.Patch.Share > 0 {
		o.InnerTemperature = math.Min(o.InnerTemperature, o.Patch.InnerTemperature)
	}
	o.DewPoint = room.dew
	o.LatentLoad = o.Condensate * room.load
	o.Load = o.FluxIn - o.InLatent + o.LatentLoad
	if !o.TwoStates {
		o.DryFluxIn = o.FluxIn
	}
	for i := c.n - 2; i >= 0 && c.layers[i+1].Leakage > 0; i-- {
		if min(o.Inner[i].Temperature, o.Outer[i+1].Temperature) < o.DewPoint {
			o.DripsAbove = true
		}
	}
	o.U = quotient(o.Load, k.Inside-k.Outside)
	o.UAmbient = quotient(o.FluxIn, o.AmbientIn-o.AmbientOut)
}

// quotient returns a/b, NaN for b of zero.
func quotient(a, b float64) float64 {
	if b == 0 {
		return nan
	}
	return a / b
}

// report writes the state of one part, whose inner face is wet on the given
// share of its area.
func (s *solver) report(o *Solution, wet float64) {
	n := s.n
	last := innerFace(n - 1)
	o.Layers, o.Iterations, o.WetShare = n, s.steps, wet
	if wet > 0 {
		o.Condenses = s.vapour >= 0
		o.IceShare = s.ice
		if wet < 1 && s.t[last] < psychro.TriplePoint {
			o.IceShare = 1
		}
	}
	drips := s.dripAt
	if math.IsNaN(drips) {
		drips = s.t[last]
	}
	o.DripHumidity = s.room.dripHumidity(drips)
	for i := range n {
		o.Outer[i] = s.face(outerFace(i), innerFace(i))
		o.Inner[i] = s.face(innerFace(i), outerFace(i))
	}
	for i := range n - 1 {
		g := &s.gaps[i]
		flux := (g.h + g.bridge) * (s.t[outerFace(i+1)] - s.t[innerFace(i)])
		if s.leaks {
			flux = 2*g.films[0]*(g.air-s.t[innerFace(i)]) + g.bridge*(s.t[outerFace(i+1)]-s.t[innerFace(i)])
		}
		o.Gaps[i] = GapState{
			Rayleigh: g.ra, Nusselt: g.nu, Convection: g.h, Bridge: g.bridge, Flux: flux,
			FlowTilt: g.tilt[g.side], Air: g.air, AtJump: g.pinned || g.unsettled,
			InRange: g.flow[g.side].kind != gapHollands || hollandsRayleighRange.Contains(g.ra),
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
	s.split(o, drives)
	if s.near != nil {
		s.flow(&o.flow, wet)
	}
}

// face returns the state of face a, b being the layer's other face.
func (s *solver) face(a, b int) Face {
	return Face{
		Temperature: s.t[a], Irradiance: s.g[a], Residual: s.f[a],
		Radiosity: s.optics().radiosity(a, s.black[a], s.g[a], s.g[b]),
	}
}

// ambient mixes air and radiant temperature, °C, by the coefficients at face
// a: [IsoWin03] 8.1, environmental temperature.
func (s *solver) ambient(a int, h, air, irradiance float64) float64 {
	radiant := math.Sqrt(math.Sqrt(irradiance/s.c.sigma)) - constant.ZeroCelsius
	hr := s.optics().emittance[a] * s.c.secant(s.t[a], radiant)
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
