package envelope

import "cloche.example/psychro"

// faceMode says what the solver takes the inner face for.
type faceMode uint8

const (
	faceDry   faceMode = iota // no water
	faceDamp                  // water on the share mix of it, no vapour
	faceWater                 // water all over, vapour with the heat of evaporation
	faceFrost                 // frost all over, vapour with the heat of sublimation
	faceHeld                  // as under says, held at a temperature by a heat to be found
)

// holding scales the balance of a face that is held, W/(m² K), to those of the
// faces.
const holding = 10.0

// optics returns the tables of the face as it is taken.
func (s *solver) optics() *longwave {
	m := s.inner
	if m == faceHeld {
		m = s.under
	}
	switch m {
	case faceDry:
		return s.dry
	case faceDamp:
		return &s.mixed
	}
	return s.wet
}

// take sets the mode; the last iterate is the next start.
func (s *solver) take(m faceMode) {
	s.inner, s.plain, s.fresh = m, false, false
	for i := range s.n - 1 {
		g := &s.gaps[i]
		g.locked, g.pinned, g.held, g.unsettled = false, false, 0, false
	}
	s.vars = s.base()
}

// settle finds the state of one part of the cover: wet, dry or partly wet,
// tried in that order, or as declared.
//
// The dry face is solved first, since it is needed to tell the states apart: a
// dry face at or above the dew point whose faces all lose no more when wet
// cannot be wet as well. A stage of the iterates has another order.
func (s *solver) settle(o *Solution) error {
	last := innerFace(s.n - 1)
	s.aim = closure
	if s.k.InnerFace == InnerWet {
		s.dripAt = nan
		if err := s.soak(); err != nil {
			return err
		}
		s.report(o, 1)
		return nil
	}
	stage := stageAuto
	if s.near != nil && s.k.InnerFace == InnerAuto {
		stage = s.near.stage
	}
	if err := s.taken(faceDry); err != nil {
		return err
	}
	dryFace := s.t[last]
	s.dripAt = dryFace
	if s.near != nil {
		s.near.dripAt = dryFace
	}
	dry := dryFace >= s.room.dew
	if s.k.InnerFace == InnerDry || s.room.ratio == 0 || s.closed == 0 || dry && (stage == stageFree || stage == stageAuto && !s.coolsWet()) {
		s.report(o, 0)
		o.Condenses = !dry
		return nil
	}
	flux, x := s.fluxIn(), s.x
	if err := s.soak(); err != nil {
		return err
	}
	switch {
	case s.vapour >= 0:
		drops, other, err := s.drops(dryFace)
		if err != nil {
			return err
		}
		s.report(o, 1)
		switch {
		case dry:
			o.TwoStates, o.DryFluxIn = true, flux
		case drops:
			o.TwoStates, o.DryFluxIn = true, other
		}
		return nil
	case stage == stageSoaked:
		above, err := s.damp(1)
		if err != nil {
			return err
		}
		s.near.dries, s.near.above = true, above
		s.report(o, 1)
		return nil
	case dry:
		s.x = x
		if err := s.taken(faceDry); err != nil {
			return err
		}
		s.report(o, 0)
		return nil
	}
	share, err := s.partly(dryFace)
	if err != nil {
		return err
	}
	s.report(o, share)
	return nil
}

// fluxRounding is what rounding may leave of a flux of some hundred W/m².
const fluxRounding = 1e-12

// coolsWet reports whether any face of the dry state would lose heat by
// becoming wet: where none does, water makes the inner face no colder.
func (s *solver) coolsWet() bool {
	if s.leaks {
		return true
	}
	for a := range 2 * s.n {
		dry := s.dry.emittance[a] * (s.g[a] - s.black[a])
		wet := s.wet.emittance[a] * (s.wet.irradiance(a, 2*s.n, &s.black, s.eOut, s.eIn) - s.black[a])
		if wet < dry-fluxRounding {
			return true
		}
	}
	return false
}

// soak solves the cover with a wet face: water, frost, or at the freezing point
// a part of each. Vapour that dries off may leave both water and frost with a
// balance; it is then water.
func (s *solver) soak() error {
	last := innerFace(s.n - 1)
	if s.refreeze() {
		return nil
	}
	if s.dripAt < psychro.TriplePoint-1 || s.near != nil && s.near.last == faceFrost { // dripAt of the dry face, where it was solved
		if err := s.taken(faceFrost); err != nil {
			return err
		}
		if s.t[last] < psychro.TriplePoint && s.vapour >= 0 {
			s.ice = 1
			return nil
		}
	}
	s.ice = 0
	if err := s.taken(faceWater); err != nil || s.t[last] >= psychro.TriplePoint {
		return err
	}
	s.ice = 1
	if err := s.taken(faceFrost); err != nil || s.t[last] < psychro.TriplePoint {
		return err
	}
	return s.freeze()
}

// taken solves the cover in the mode m.
func (s *solver) taken(m faceMode) error {
	if s.resume(m) {
		s.keep(m)
		return nil
	}
	s.take(m)
	s.far = true
	if s.solve() != nil {
		return s.rescue(m)
	}
	s.keep(m)
	return nil
}

// rescue is search, and takes the state from which it sets out where that is open by no
// more than rounding leaves and search ends at none.
func (s *solver) rescue(m faceMode) error {
	x, vars, gaps, open := s.x, s.vars, s.gaps, s.biggest
	err := s.search(m)
	if err == nil || !(open <= roundingLimit) {
		return err
	}
	s.take(m)
	s.x, s.vars, s.gaps = x, vars, gaps
	s.evaluate(nil)
	return nil
}

// search solves the cover in the mode m where the solver leaves it open: as a
// rule a wet face about as warm as the air, where the coefficient of free
// convection falls to nothing and vapour with it, so that the balance over the
// face's temperature is no longer monotone. The face is held at a temperature,
// which leaves the rest of the cover an easy problem, and the temperature is
// halved in on at which vapour brings the heat that holds it.
func (s *solver) search(m faceMode) error {
	const (
		margin = 1.0  // K, beyond the surroundings (chosen; the bracket may be wider)
		reach  = 20.0 // K, more, while heat is left over, as with sun, or missing, as where water dries off (chosen)
		passes = 200
	)
	s.under = m
	low := min(s.in, s.out, s.k.sky(), s.k.ground(), s.k.radiant()) - margin
	high := max(s.in, s.out, s.k.sky(), s.k.ground(), s.k.radiant()) + margin
	for range passes {
		if off, err := s.leftOver(high, m); err != nil || off < 0 {
			break
		}
		high += reach
	}
	for range passes {
		if off, err := s.leftOver(low, m); err != nil || off > 0 {
			break
		}
		low -= reach
	}
	for range passes {
		mid := low + (high-low)/2
		if mid == low || mid == high {
			break
		}
		off, err := s.leftOver(mid, m)
		if err != nil {
			return err
		}
		if off > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	if _, err := s.leftOver(high, m); err != nil {
		return err
	}
	unsettled := s.gaps
	s.take(m)
	for i := range s.n - 1 {
		g := &s.gaps[i]
		g.locked, g.branch, g.held, g.unsettled = unsettled[i].locked, unsettled[i].branch, unsettled[i].held, unsettled[i].unsettled
		if unsettled[i].pinned {
			g.held, g.unsettled = unsettled[i].nu, true
		}
	}
	s.evaluate(nil)
	if s.biggest <= closureLimit || s.newton(20) || s.biggest <= roundingLimit {
		return nil
	}
	return s.open()
}

// leftOver returns the heat in W/m² that vapour brings to the inner face held
// at t in °C above the heat that holds it.
func (s *solver) leftOver(t float64, m faceMode) (float64, error) {
	s.held = t
	s.take(faceHeld)
	if err := s.solve(); err != nil {
		return 0, err
	}
	off := -s.latent
	if m == faceWater || m == faceFrost {
		w := s.room.wetAt(t)
		off += s.closed * max(s.hIn, stillVapour) * w.perH * (s.room.ratio - w.ratio) * latentHeat(t, m == faceFrost)
	}
	return off, nil
}

// freeze holds the wet face at the freezing point, where the latent heat jumps:
// as water it would fall below and as frost rise above, so that a part of the
// vapour freezes.
func (s *solver) freeze() error {
	s.held, s.under = psychro.TriplePoint, faceWater
	s.take(faceHeld)
	s.x[s.vars-1] = s.latent
	if err := s.solve(); err != nil {
		return err
	}
	s.keep(faceHeld)
	s.frozen()
	return nil
}

// frozen finds what condenses on a face that is held at the freezing point, and
// how much of it is ice.
func (s *solver) frozen() {
	w := s.room.wetAt(s.held)
	s.vapour = s.closed * max(s.hIn, stillVapour) * w.perH * (s.room.ratio - w.ratio)
	water, frost := latentHeat(s.held, false), latentHeat(s.held, true)
	s.ice = min(1, max(0, (s.latent/s.vapour-water)/(frost-water)))
}

// refreeze is freeze from the last iterate. It reports false where that was not
// held or the face is not part water, part frost.
func (s *solver) refreeze() bool {
	if s.near == nil || s.near.last != faceHeld {
		return false
	}
	s.held, s.under = psychro.TriplePoint, faceWater
	if !s.resume(faceHeld) {
		return false
	}
	s.frozen()
	if s.keep(faceHeld); !(s.vapour > 0) {
		return false
	}
	return s.ice > 0 && s.ice < 1
}

// fluxIn returns the heat from the house into the part, W/m².
func (s *solver) fluxIn() float64 {
	last := innerFace(s.n - 1)
	q := s.hIn*(s.in-s.t[last]) + s.eIn - s.optics().radiosity(last, s.black[last], s.g[last], s.g[last-1]) + s.latent
	if s.leaks && s.n > 1 {
		q += s.leak[s.n-1] * (s.in - s.gaps[s.n-2].air)
	}
	return q
}
