package envelope

import (
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// followedPart holds the state of one part of a cover, from which its next is
// sought in one go: where the face is wet or dry as before.
type followedPart struct {
	have  bool
	mode  faceMode
	wet   float64 // fraction of the face under water or drops
	x     [3*MaxLayers - 1]float64
	by    [insideDrives][3*MaxLayers - 1]float64 // change of x with each drive
	wets  [insideDrives]float64                  // change of wet with each drive
	at    [insideDrives]float64                  // the drives
	inner float64                                // °C, of the inner face
	near  nearPart                               // what the solver prepares once, and the stage
	now   wetPart                                // what it sends, as it is

	drenched wetPart // a dry part of a film, under water
	drowned  bool    // taken as under water in a look at the house
}

// followedFacet is one facet of a HouseCovers.
type followedFacet struct {
	facet          int // index in Shape.Facets
	like           int // where its twin stands, whose solution it shares, or -1
	set            *layerSet
	apart, touched followedPart
	seen, sent     float64         // W/m²
	by             [seenBy]float64 // change of seen: to close the exchange, and with each drive
	partTakes                      // of both parts
	split          response
	mild           mild
	bySky, bySun   float64 // W/m², flux that sky and sun drive

	film   bool // lets heat radiation through
	soaked bool // taken as wet, since it has no state
	dry    bool // no water on either part
	dries  bool // under water that would dry off
}

// seenBy counts what moves what a facet sees.
const seenBy = 1 + insideDrives

// fit lets go of what is known of another cover, as when a screen is drawn.
func (f *followedFacet) fit(h *House, k *HouseConditions) {
	c := h.covers[f.facet].set
	if k.ScreenDrawn {
		c = h.drawn[f.facet].set
	}
	if f.set != c {
		f.set, f.film, f.soaked = c, c.dry.transmit[c.n-1] > 0, false
		f.apart, f.touched = followedPart{}, followedPart{}
	}
}

// before sets one for the facet that sees f.seen.
func (f *followedFacet) before(h *House, k *HouseConditions, one *CoverConditions) {
	shape := &h.plan.Shape.Facets[f.facet]
	one.Tilt, one.Height = shape.Tilt, shape.Height
	one.AbsorbedSun = [MaxLayers]float64{}
	if k.Sun != nil {
		one.AbsorbedSun = k.Sun[f.facet]
	}
	one.RadiantRise = fourthRoot(f.seen/standard.sigma) - constant.ZeroCelsius - k.Inside
}

// solve finds the state of the facet that sees f.seen, and its slopes.
func (f *followedFacet) solve(h *House, k *HouseConditions, one *CoverConditions, room *roomAir, space *system) error {
	f.before(h, k, one)
	c, shape := f.set, &h.plan.Shape.Facets[f.facet]
	if err := one.checkFacet(c.n); err != nil {
		return domain.Within(fmt.Sprintf("facet %d (%s)", f.facet, shape.Name), err)
	}
	var o Solution
	part, err := f.apart.solve(c, one, room, space, false, &o)
	f.apart.sends(c, f.seen, &part)
	if err == nil && c.patchGap >= 0 {
		var patch partTakes
		var other Solution
		patch, err = f.touched.solve(c, one, room, space, true, &other)
		f.touched.sends(c, f.seen, &patch)
		part.join(&patch, c.gaps[c.patchGap].Collapsed)
		o.drive.join(&other.drive, c.gaps[c.patchGap].Collapsed)
	}
	if err != nil {
		return domain.Within(fmt.Sprintf("facet %d (%s)", f.facet, shape.Name), err)
	}
	patched := c.patchGap >= 0
	f.dry = f.apart.mode == faceDry && (!patched || f.touched.mode == faceDry)
	f.dries = f.apart.near.dries || patched && f.touched.near.dries
	f.partTakes = part
	f.sent = f.seen - part.took[glowTakes]
	f.split = o.drive
	return nil
}

// join takes in the collapsed part of the given share of the area.
func (p *partTakes) join(patch *partTakes, share float64) {
	for i := range p.took {
		p.took[i] += share * (patch.took[i] - p.took[i])
		for d := range p.slope[i] {
			p.slope[i][d] += share * (patch.slope[i][d] - p.slope[i][d])
		}
	}
	p.inner, p.margin, p.open = min(p.inner, patch.inner), min(p.margin, patch.margin), max(p.open, patch.open)
	p.smooth = min(p.smooth, patch.smooth)
}

func (r *response) join(patch *response, share float64) {
	for d := range drives {
		r.flux[d] += share * (patch.flux[d] - r.flux[d])
		r.radiosity[d] += share * (patch.radiosity[d] - r.radiosity[d])
	}
}

// solve finds the state of the part in the conditions, which have been checked.
func (w *followedPart) solve(c *layerSet, k *CoverConditions, room *roomAir, space *system, touching bool, o *Solution) (partTakes, error) {
	s := solver{dry: &c.dry, wet: &c.wet, c: &standard, k: k, room: room, near: &w.near, system: space}
	s.prepare(c, k, &standard, touching)
	at := [insideDrives]float64{k.Inside, s.eIn, room.pressure}
	w.near.dries, w.near.shed = false, math.Inf(1)
	if !w.resume(&s, &at) && !w.seek(&s) {
		if err := s.settle(o); err != nil {
			return partTakes{}, err
		}
		w.mode, w.have = s.inner, false
		return s.stepped(c, touching, &at)
	}
	p := s.takes()
	p.margin, p.smooth = s.margin(), s.straight()
	if !s.slopes(room.byPressure, w.wet, &p) {
		return p, s.open()
	}
	w.keep(&s, &at, &p)
	s.split(o, drivesApart)
	return p, nil
}

// keep takes the state for the next start.
func (w *followedPart) keep(s *solver, at *[insideDrives]float64, p *partTakes) {
	w.have, w.mode, w.at, w.inner = s.sole(s.inner), s.inner, *at, p.inner
	w.wet += p.shares[0]
	for d := range insideDrives {
		w.wets[d] = p.shares[1+d]
		for i := range s.vars {
			w.by[d][i] = s.system.matrix[i][s.vars+1+d]
		}
	}
	copy(w.x[:], s.x[:s.vars])
	near := &w.near
	near.have[w.mode], near.last = w.have, w.mode
	copy(near.x[w.mode][:], w.x[:])
	near.seen, near.ratio = s.eIn, s.room.ratio
	near.bySeen, near.byRatio = [nearVars]float64{}, [nearVars]float64{}
}

// seek finds the state of the part from the iterates of before, wet or dry as
// they lead, and reports false where its balances do not tell its slopes.
func (w *followedPart) seek(s *solver) bool {
	var err error
	w.near.dries = false
	w.near.hanging = w.wet
	if w.wet, err = s.seek(); err != nil || !s.smooth() {
		return false
	}
	if s.inner == faceDamp && w.wet < 1 || !s.far && s.sole(s.inner) && s.margin() > 0 {
		return true
	}
	s.aim = closure // from afar, where the next may begin there, too, and at a jump of a gap
	return s.newton(nearSteps)
}

// resume finds the state of the part as it was before, wet or dry, moved along
// with the drives, and reports whether it is the state still.
func (w *followedPart) resume(s *solver, at *[insideDrives]float64) bool {
	if !w.have || w.near.stage == stageFree && w.mode != faceDry { // which may be dry as well
		return false
	}
	old := s.x
	s.take(w.mode)
	s.aim = roughClosure // slopes takes one step more
	copy(s.x[:s.vars], w.x[:])
	wet := w.wet
	for d := range insideDrives {
		move := at[d] - w.at[d]
		wet += move * w.wets[d]
		for i := range s.vars {
			s.x[i] += move * w.by[d][i]
		}
	}
	ok := false
	if w.mode == faceDamp {
		wet, ok = s.drips(wet)
	} else {
		if ok = s.newton(nearSteps); ok {
			copy(w.near.x[w.mode][:], s.x[:s.vars]) // where seek begins, if need be
			ok = s.sole(w.mode) && s.stays()
		}
	}
	if ok && (w.mode == faceDamp || s.margin() > edgeDew) {
		w.wet = wet
		return true
	}
	s.x = old
	w.have = false
	return false
}

// drips finds the state with drops on about the share of the face, or with water
// all over from which no vapour leaves, and reports whether it is the one that
// settle would take: of a film that water makes more opaque only where it could not
// be under water as well.
func (s *solver) drips(share float64) (float64, bool) {
	last := innerFace(s.n - 1)
	if s.near.stage == stageSoaked {
		s.mix(1)
		s.near.dries = true
		return 1, s.newton(nearSteps) && s.sole(faceDamp) && s.t[last] > s.room.dew+edgeDew
	}
	if s.k.InnerFace != InnerAuto || !(share > 0 && share < 1) {
		return share, false
	}
	share, ok := s.poise(share)
	if !ok || s.dry.transmit[s.n-1] == 0 {
		return share, ok
	}
	x := s.x
	ok = s.shedsWater()
	s.x = x
	s.take(faceDamp)
	s.mix(share)
	s.evaluate(s.system)
	return share, ok
}

// stays reports whether the state that was found in the mode of the face is the
// one that settle would take.
func (s *solver) stays() bool {
	t := s.t[innerFace(s.n-1)]
	face := s.k.InnerFace
	switch s.inner {
	case faceWater:
		return t >= psychro.TriplePoint
	case faceFrost:
		return t < psychro.TriplePoint
	case faceDry:
		return face == InnerDry || face == InnerAuto && (s.room.ratio == 0 || s.closed == 0 ||
			t >= s.room.dew && (s.near.stage == stageFree || s.near.stage == stageAuto && s.onlyDry(t)))
	}
	return false
}

// branchMargin is the fraction about the upward jump of an upright gap, like
// nearBranch about the downward one, within which a gap may change its branch.
const branchMargin = 0.05

// margin returns by how much, K, the inner face and the dew point may move against
// each other, or the face from the freezing point, and the face stays as it is; 0
// near a jump of a gap.
func (s *solver) margin() float64 {
	for i := range s.n - 1 {
		if g := &s.gaps[i]; g.upright && (abs(g.ra/wrightLow-1) < nearBranch || abs(g.ra/wrightHigh-1) < branchMargin) {
			return 0
		}
	}
	t := s.t[innerFace(s.n-1)]
	if s.inner == faceDamp { // all over, see slopes for a part
		return t - s.room.dew
	}
	if s.inner != faceDry {
		return min((s.room.ratio-s.water.ratio)/s.water.slope, abs(t-psychro.TriplePoint))
	}
	if s.k.InnerFace != InnerAuto || s.room.ratio == 0 || s.closed == 0 {
		return math.Inf(1)
	}
	return min(t-s.room.dew, s.near.shed)
}

// smooth reports whether the balances of the state, as they stand, tell its
// slopes: the face is not held at the freezing point and no gap at a jump.
func (s *solver) smooth() bool {
	for i := range s.n - 1 {
		if g := &s.gaps[i]; g.pinned || g.held > 0 || g.unsettled {
			return false
		}
	}
	return s.inner != faceHeld
}
