package envelope

import "math"

// Whether films have another state is told by one look at the house as LossTo
// begins with it: all of them under water.
const (
	sureOpen = 1e-2 // W/m², by which what the facets see may be off for the look
	sureDew  = 0.03 // K, from the dew point, by which a film under water surely dries off or stays wet,
	sureSeen = 0.02 // and K more for each W/m² by which its neighbours' water moves what it sees: several times what straight lines miss
)

// wetPart is a dry part as it would be under water from which no vapour leaves.
type wetPart struct {
	face, faceBySeen float64 // °C, and K for each W/m²
	sent, sentBySeen float64 // W/m², and for each W/m²
}

// drench finds the part under water, seeing what it sees.
func (w *followedPart) drench(c *layerSet, k *CoverConditions, room *roomAir, space *system, touching bool) bool {
	o := &w.drenched
	s := solver{dry: &c.dry, wet: &c.wet, c: &standard, k: k, room: room, near: &w.near, system: space}
	s.prepare(c, k, &standard, touching)
	s.aim = roughClosure
	if _, err := s.damp(1); err != nil {
		return false
	}
	if !s.fresh {
		s.evaluate(space)
	}
	v, last := s.vars, innerFace(s.n-1)
	m := &space.matrix
	rad := s.optics()
	for r := range v {
		m[r][v], m[r][v+1] = -s.f[r], 0
		if r <= last {
			m[r][v+1] = -rad.emittance[r] * rad.inside[r]
		}
	}
	if s.vars != s.base() || !space.eliminate(v, 2) {
		return false
	}
	o.face, o.sent = s.t[last], rad.radiosity(last, s.black[last], s.g[last], s.g[last-1])
	for col, seen := range [2]float64{0, 1} {
		var black [maxFaces]float64
		for a := range last + 1 {
			black[a] = s.slopeOf(a) * s.rises(a, v+col)
		}
		sent := rad.radiosity(last, black[last], rad.irradiance(last, last+1, &black, 0, seen), rad.irradiance(last-1, last+1, &black, 0, seen))
		if col == 0 {
			o.face, o.sent = o.face+s.rises(last, v), o.sent+sent
		} else {
			o.faceBySeen, o.sentBySeen = s.rises(last, v+1), sent
		}
	}
	for r := range v {
		w.near.x[faceDamp][r] = s.x[r] + m[r][v]
	}
	return true
}

// sure reports whether the films are as LossTo has them: in a house whose films
// are all under water each that is dry would dry off, and each that is wet would
// not. It takes the margin of that into account.
func (c *HouseCovers) sure(k *HouseConditions, one *CoverConditions, room *roomAir) bool {
	h := c.house
	if c.judged[0] == unjudged[0] {
		return false
	}
	n := len(c.facets)
	c.wet = c.wet[:0]
	for i := range c.facets {
		f := &c.facets[i]
		if f.like >= 0 {
			c.wet = append(c.wet, c.wet[f.like])
			continue
		}
		if f.film && (f.apart.near.stage == stageAuto || f.dries && !f.soaked) {
			return false
		}
		w, ok := f.under(f.before(h, k, one), one, room, c.space)
		if !ok {
			return false
		}
		c.wet = append(c.wet, w)
	}
	const sides = 1
	c.table(sides, func(i int) float64 { return c.wet[i].sentBySeen })
	wide := n + sides
	for j := range n {
		more := c.wet[j].sent - c.facets[j].sent
		for i := range n {
			c.matrix[i*wide+n] += h.room.share[i*n+j] * more
		}
	}
	eliminateRows(c.matrix, n, sides)
	margin := math.Inf(1)
	for i := range c.facets {
		f, moved := &c.facets[i], c.matrix[i*wide+n]
		if f.like < 0 && f.film {
			for _, p := range [2]*followedPart{&f.apart, &f.touched} {
				miss := sureDew + sureSeen*abs(moved)
				switch {
				case p.lets():
					margin = min(margin, p.drenched.face+p.drenched.faceBySeen*moved-room.dew-miss)
				case p.near.stage == stageSoaked && !f.soaked && (p != &f.touched || f.set.patchGap >= 0):
					margin = min(margin, room.dew-p.now.face-p.now.faceBySeen*moved-miss)
				}
			}
		}
	}
	c.Margin = min(c.Margin, margin)
	return margin > 0
}

// under returns the facet with its dry parts, where it is a film, under water.
func (f *followedFacet) under(set *layerSet, one *CoverConditions, room *roomAir, space *system) (o wetPart, ok bool) {
	o = wetPart{sent: f.sent, sentBySeen: 1 - f.slope[glowTakes][glowDrive]}
	if !f.film {
		return o, true
	}
	share := [2]float64{1, 0}
	if set.patchGap >= 0 {
		share[1] = set.gaps[set.patchGap].Collapsed
		share[0] = 1 - share[1]
	}
	for i, p := range [2]*followedPart{&f.apart, &f.touched} {
		if share[i] == 0 || !p.lets() {
			continue
		}
		if !p.drench(set, one, room, space, i == 1) {
			return o, false
		}
		o.sent += share[i] * (p.drenched.sent - p.now.sent)
		o.sentBySeen += share[i] * (p.drenched.sentBySeen - p.now.sentBySeen)
	}
	return o, true
}

// lets reports whether the part is dry where it could be wet.
func (w *followedPart) lets() bool { return w.near.stage == stageFree && w.mode == faceDry }

// sends notes what the part sends and how warm its face is, seeing seen.
func (w *followedPart) sends(s *layerSet, seen float64, p *partTakes) {
	w.now = wetPart{sent: seen - p.took[glowTakes], sentBySeen: 1 - p.slope[glowTakes][glowDrive], face: p.inner, faceBySeen: steepFace}
	if w.have {
		w.now.faceBySeen = w.by[glowDrive][2*s.n-2] + s.layers[s.n-1].Thickness/s.layers[s.n-1].Conductivity*w.by[glowDrive][2*s.n-1]
	}
}

// steepFace is the change of a face with what it sees where that is not known, K for
// each W/m²: that of one with little convection.
const steepFace = 0.25
