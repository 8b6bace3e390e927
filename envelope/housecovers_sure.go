package envelope

import "math"

// Whether films have another state is told by one look at the house as LossTo
// begins with it: all of them under water.
const (
	sureOpen = 1e-2 // W/m², by which what the facets see may be off for the look
	sureDew  = 0.06 // K, from the dew point, by which a film under water surely dries off or stays wet,
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
// are all under water those that are dry would dry off, let go of as judge does,
// and each that is wet would not. It takes the margin of that into account.
func (c *HouseCovers) sure(k *HouseConditions, one *CoverConditions, room *roomAir) bool {
	if c.judged[0] == unjudged[0] {
		return false
	}
	for i := range c.facets {
		f := &c.facets[i]
		if f.like >= 0 || !f.film {
			continue
		}
		f.before(c.house, k, one)
		if f.soaked || f.apart.near.stage == stageAuto || f.dries || !f.drench(f.set, one, room, c.space) {
			return false
		}
	}
	margin := math.Inf(1)
	for first := true; ; first = false {
		moved, wide := c.drenched()
		most, left := 0.0, false
		for i := range c.facets {
			f, more := &c.facets[i], moved[i*wide]
			for p := range f.judged {
				switch {
				case p.drowned:
					most, left = max(most, p.above(more, room.dew)), true
				case first && p.near.stage == stageSoaked:
					margin = min(margin, room.dew-p.now.face-p.now.faceBySeen*more-sureMiss(more))
				}
			}
		}
		switch {
		case !left:
			c.Margin = min(c.Margin, margin)
			return margin > 0
		case !(most > 0): // they would stay wet
			return false
		}
		for i := range c.facets {
			f, more := &c.facets[i], moved[i*wide]
			for p := range f.judged {
				if p.drowned && p.above(more, room.dew) >= min(surelyDry, letGo*most) {
					p.drowned, margin = false, min(margin, p.above(more, room.dew)-sureMiss(more))
				}
			}
		}
		if !(margin > 0) {
			return false
		}
	}
}

// sureMiss is what the look may miss of a face, K, of which moved moves what it
// sees, W/m².
func sureMiss(moved float64) float64 { return sureDew + sureSeen*abs(moved) }

// above returns by how much in K the part under water lies above the dew point,
// where what it sees is more by so much, W/m².
func (w *followedPart) above(more, dew float64) float64 {
	return w.drenched.face + w.drenched.faceBySeen*more - dew
}

// judged yields the parts of a film that are solved for it.
func (f *followedFacet) judged(yield func(*followedPart) bool) {
	if f.film && f.like < 0 && yield(&f.apart) && f.set.patchGap >= 0 {
		yield(&f.touched)
	}
}

// drenched finds by how much in W/m² what each facet sees is more with the parts
// under water that are drowned: the first of each row, of which the length is wide.
func (c *HouseCovers) drenched() (moved []float64, wide int) {
	const sides = 1
	n := len(c.facets)
	c.wet = c.wet[:0]
	for i := range c.facets {
		f := &c.facets[i]
		if f.like >= 0 {
			c.wet = append(c.wet, c.wet[f.like])
		} else {
			c.wet = append(c.wet, f.watered())
		}
	}
	c.table(sides, func(i int) float64 { return c.wet[i].sentBySeen })
	wide = n + sides
	for j := range n {
		more := c.wet[j].sent - c.facets[j].sent
		for i := range n {
			c.matrix[i*wide+n] += c.house.room.share[i*n+j] * more
		}
	}
	eliminateRows(c.matrix, n, sides)
	return c.matrix[n:], wide
}

// drench finds the dry parts of a film under water and takes them as drowned.
func (f *followedFacet) drench(set *layerSet, one *CoverConditions, room *roomAir, space *system) bool {
	for p := range f.judged {
		if p.drowned = p.lets(); p.drowned && !p.drench(set, one, room, space, p == &f.touched) {
			return false
		}
	}
	return true
}

// watered returns the facet with its drowned parts under water.
func (f *followedFacet) watered() wetPart {
	o := wetPart{sent: f.sent, sentBySeen: 1 - f.slope[glowTakes][glowDrive]}
	for p := range f.judged {
		if !p.drowned {
			continue
		}
		share := 1.0
		if f.set.patchGap >= 0 {
			share = f.set.gaps[f.set.patchGap].Collapsed
			if p == &f.apart {
				share = 1 - share
			}
		}
		o.sent += share * (p.drenched.sent - p.now.sent)
		o.sentBySeen += share * (p.drenched.sentBySeen - p.now.sentBySeen)
	}
	return o
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
