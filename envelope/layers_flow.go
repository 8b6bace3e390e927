package envelope

// flow is what a cover sends to the others and takes of the vapour near a state,
// straight in the long-wave that its inner face sees, W/m², and in the humidity
// ratio of the air, kg/kg.
type flow struct {
	sent         float64 // W/m², long-wave that leaves the inner face
	water        float64 // kg/(s m²), what condenses
	sentBySeen   float64 // W/m² for each W/m²
	sentByRatio  float64 // W/m² for each kg/kg
	waterBySeen  float64 // kg/(s m²) for each W/m²
	waterByRatio float64 // kg/(s m²) for each kg/kg
	wet          float64 // fraction of the face under water
}

// join takes in the collapsed part of the given share of the area.
func (a *flow) join(b *flow, share float64) {
	mix := func(x *float64, y float64) { *x += share * (y - *x) }
	mix(&a.sent, b.sent)
	mix(&a.water, b.water)
	mix(&a.sentBySeen, b.sentBySeen)
	mix(&a.sentByRatio, b.sentByRatio)
	mix(&a.waterBySeen, b.waterBySeen)
	mix(&a.waterByRatio, b.waterByRatio)
	mix(&a.wet, b.wet)
}

// Right-hand sides behind the Jacobian: what is left open, and what a change of
// each drive opens.
const (
	sideOpen = iota
	sideSeen
	sideRatio
	sideShare // what a change of the share under drops opens
	flowSides
)

// shareStep is the step of the share under drops by which its effect is taken: the
// balances are nearly straight in the share.
const shareStep = 1e-4

// flow finds what the part sends and takes, wet on the share of its face, at the
// root that one more step of Newton's method leads to, and how that changes. A
// face at the freezing point or at the dew point is warmed no further by what it
// draws.
func (s *solver) flow(o *flow, wet float64) {
	*o = flow{wet: wet}
	faces := 2 * s.n
	last := faces - 1
	rad := s.optics()
	if s.plain = false; !s.fresh {
		s.evaluate(s.system)
	}
	if s.inner == faceHeld && s.under == faceWater {
		s.frozen()
	}
	j := &s.system.matrix
	v := s.vars
	carry, heat := s.closed*max(s.hIn, stillVapour)*s.water.perH, 0.0
	if s.inner == faceWater || s.inner == faceFrost {
		heat = latentHeat(s.t[last], s.inner == faceFrost)
	}
	for r := range v {
		j[r][v+sideOpen] = -s.f[r]
		j[r][v+sideSeen], j[r][v+sideRatio] = 0, 0
		if r < faces {
			j[r][v+sideSeen] = -rad.emittance[r] * rad.inside[r]
		}
	}
	j[last][v+sideRatio] = -carry * heat * s.water.drives
	sides, byShare := sideShare, 0.0
	if wet > 0 && wet < 1 {
		sides, byShare = flowSides, s.sharing(wet)
	}
	o.sent = rad.radiosity(last, s.black[last], s.g[last], s.g[last-1])
	o.water = s.vapour
	if s.inner == faceHeld && s.under == faceWater {
		w := s.room.wetAt(s.held)
		o.waterByRatio = s.closed * max(s.hIn, stillVapour) * w.perH * w.drives
	}
	if !s.system.eliminate(v, sides) {
		o.sentBySeen = rad.reflect(last)
		s.forget()
		return
	}
	var rises, sends [flowSides]float64 // K and W/m² of each side
	for d := range sides {
		var black [maxFaces]float64
		for a := range faces {
			black[a] = s.slopeOf(a) * s.rises(a, v+d)
		}
		seen := 0.0
		if d == sideSeen {
			seen = 1
		}
		rise := s.rises(last, v+d)
		sent := rad.radiosity(last, black[last], seen, rad.irradiance(last-1, faces, &black, 0, seen))
		rises[d], sends[d] = rise, sent
		water := 0.0
		if heat > 0 {
			water = (s.vapour*s.water.bends - carry*s.water.slope) * rise
			if dt := s.in - s.t[last]; s.hIn > stillVapour && abs(dt) > alikeAir {
				water += s.vapour * (s.hInSlope + s.hIn) / (dt * s.hIn) * rise
			}
		}
		switch d {
		case sideOpen:
			o.sent += sent
			o.water += water
		case sideSeen:
			o.sentBySeen, o.waterBySeen = sent, water
		case sideRatio:
			o.sentByRatio, o.waterByRatio = sent, o.waterByRatio+water
			if heat > 0 {
				o.waterByRatio += carry * s.water.drives
			}
		}
	}
	if sides == flowSides && rises[sideShare] != 0 {
		// Drops hold the face at the dew point: their share follows.
		more := (sends[sideShare] + byShare) / rises[sideShare]
		o.sentBySeen -= more * rises[sideSeen]
		if w := s.room.wetAt(s.room.dew); w.slope > 0 {
			o.sentByRatio = more / w.slope
		}
	}
	s.foresee()
}

// sharing fills in what more of the face under drops opens, from the share wet,
// and returns by how much more then leaves the face, W/m² for all of it.
func (s *solver) sharing(wet float64) (sends float64) {
	last := innerFace(s.n - 1)
	before, step := s.f, shareStep
	if wet+step > 1 {
		step = -step
	}
	sent := s.mixed.radiosity(last, s.black[last], s.g[last], s.g[last-1])
	s.mix(wet + step)
	s.evaluate(nil)
	sends = (s.mixed.radiosity(last, s.black[last], s.g[last], s.g[last-1]) - sent) / step
	for r := range s.vars {
		s.system.matrix[r][s.vars+sideShare] = (before[r] - s.f[r]) / step
	}
	s.mix(wet)
	s.evaluate(nil)
	return sends
}

// foresee keeps the state, one step on, and how it changes with each drive, for
// the next start.
func (s *solver) foresee() {
	if s.near == nil || s.vars != s.base() {
		return
	}
	w := s.near
	w.last, w.seen, w.ratio = s.inner, s.eIn, s.room.ratio
	j := &s.system.matrix
	for r := range s.vars {
		w.x[s.inner][r] = s.x[r] + j[r][s.vars+sideOpen]
		w.bySeen[r], w.byRatio[r] = j[r][s.vars+sideSeen], j[r][s.vars+sideRatio]
	}
}

// forget leaves no state to start from.
func (s *solver) forget() {
	if s.near != nil {
		s.near.have = [nearModes]bool{}
	}
}

// approach finds what the part sends and takes near its state, whose balances
// need not be closed: for the search of what facets see and of the humidity,
// which ends with states by settle.
func (s *solver) approach(o *flow) error {
	wet, err := s.seek()
	if err != nil {
		return err
	}
	s.flow(o, wet)
	return nil
}
