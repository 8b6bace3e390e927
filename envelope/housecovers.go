package envelope

import (
	"errors"
	"math"

	"cloche.example/psychro"
)

// HouseCovers is what the covers of a house take near one state of its inside,
// for whoever solves a balance of the inside together with them: heat out of the
// air, heat radiation out of floor and crop, and vapour, each with its slope.
// Ground and leakage are not part of it; frame, doors, thermal bridges and walls
// to annexes are. CoversTo fills it; it keeps the state of every facet, from which
// the next is sought.
type HouseCovers struct {
	Air         float64     // W, sensible heat out of the air
	Radiation   float64     // W, heat radiation out of what the facets see beside each other
	Condensate  float64     // kg/s, on facets, their frame and the doors
	Latent      float64     // W, that evaporates the condensate at the temperature of the inside air
	Sky         float64     // W, sky-driven part of Air and Radiation, without frame
	Sun         float64     // W, absorbed by the facets
	Inner       float64     // °C, mean of the facets' inner faces
	Leakage     LeakageFlow // through the leaks of the plan
	LeakageByK  float64     // kg/(s K), change of the dry air that leaks with the inside temperature
	LeakageByPa float64     // kg/(s Pa), and with the inside vapour pressure

	// Slope is the change of Air, Radiation and Condensate with 1 K of inside air, 1
	// W/m² of radiation of floor and crop, and 1 Pa of inside vapour.
	Slope [insideDrives][insideDrives]float64

	// Open is by how much, W/m², what a facet sees and the balances of its faces were
	// off; what the facets take has been corrected for it by their slopes, which
	// leaves its square over some hundred. With the conditions as they were a
	// further CoversTo closes it.
	Open float64

	// Margin is by how much, K, inside air and dew point may move before a face
	// becomes wet or dry, freezes or thaws, or a gap jumps, roughly; 0 where that is
	// not known.
	Margin float64

	// Edge is by how much, K, air and dew point may move before a face that tells it
	// changes, whatever films see of each other; 0 where a face does not tell it.
	Edge float64

	// Smooth is by how much, K, all may move before a coefficient of convection, too,
	// changes its course, as at a critical Rayleigh number; at most Margin, and 0 where it is not known.
	Smooth float64

	house  *House
	facets []followedFacet
	matrix []float64 // of the exchange between facets
	space  *system
	loss   HouseLoss             // by which films are judged
	judged [insideDrives]float64 // drives when they were
	stuck  int                   // count of calls that left them open where they are
	wet    []wetPart             // each facet, where all films are under water
	at     [insideDrives]float64
	mild   mild
	rooms  HouseLoss // of the annexes alone
}

// CoversTo fills dst with what the covers take in the conditions k, whose Month
// is not read. What dst holds of an hour before saves most of the work; nothing
// is allocated from the second hour on. One call takes one round over all
// facets: those that see each other agree with what dst.Open says. The error is
// that of Loss, though facets that Loss finds no agreement of are no fault; dst then
// begins anew.
func (h *House) CoversTo(dst *HouseCovers, k *HouseConditions) error {
	inside, outside, err := h.states(k)
	if err != nil {
		return err
	}
	one := k.CoverConditions
	if h.plan.Radiant == RadiantAir {
		one.RadiantRise = 0
	}
	room := newRoomAir(&one)
	room.pressure = k.InsideHumidity * psychro.SaturationPressureOver(psychro.SurfaceAt(k.Inside), k.Inside)
	room.byPressure = room.byVapourPressure()
	at := [insideDrives]float64{k.Inside, standard.emission(one.radiant()), room.pressure}
	dst.begin(h, k, &at)
	if err := dst.round(k, &one, &room, &at); err != nil {
		dst.house = nil
		return err
	}
	if dst.doubtful(k, &room) && (dst.Open > sureOpen || !dst.sure(k, &one, &room)) {
		changed, err := false, error(nil)
		if dst.ripe(&at) {
			changed, err = dst.judge(k, &at)
		}
		if err == nil && changed {
			err = dst.round(k, &one, &room, &at)
		}
		if err != nil {
			dst.house = nil
			return err
		}
		dst.Margin = 0
	}
	dst.Smooth = min(dst.Smooth, dst.Margin)
	dst.spread()
	dst.at = at
	dst.sum(k, &room)
	if err := dst.others(k, &room); err != nil {
		return err
	}
	return dst.leak(k, inside, outside)
}

// round solves all facets with what they see.
func (c *HouseCovers) round(k *HouseConditions, one *CoverConditions, room *roomAir, at *[insideDrives]float64) error {
	h := c.house
	for i := range c.facets {
		f := &c.facets[i]
		f.fit(h, k)
		if f.like = f.twin(h, k, c.facets[:i]); f.like >= 0 {
			t := &c.facets[f.like]
			f.partTakes, f.split, f.sent, f.dry, f.dries = t.partTakes, t.split, t.sent, t.dry, t.dries
			continue
		}
		if err := f.solve(h, k, one, room, c.space); err != nil {
			return err
		}
	}
	c.Open, c.Margin, c.Smooth = 0, math.Inf(1), math.Inf(1)
	for i := range c.facets {
		c.Smooth = min(c.Smooth, c.facets[i].smooth)
		c.Open, c.Margin = max(c.Open, c.facets[i].open), min(c.Margin, c.facets[i].margin)
	}
	c.Edge = c.Margin
	if h.plan.Radiant == RadiantEnclosure {
		c.exchange(at[glowDrive])
	}
	return nil
}

// begin readies dst for the conditions k: each facet sees what it saw, moved along
// with the drives, or at first what LossTo begins with.
func (c *HouseCovers) begin(h *House, k *HouseConditions, at *[insideDrives]float64) {
	if c.house != h {
		*c = HouseCovers{house: h, facets: c.facets[:0], matrix: c.matrix, space: new(system), loss: c.loss, wet: c.wet, judged: unjudged}
		p := &h.plan
		for i := range p.Shape.Facets {
			if f := &p.Shape.Facets[i]; !f.Kind.InGround() && !f.Party {
				c.facets = append(c.facets, followedFacet{facet: i})
			}
		}
		start := standard.emission(k.Inside - firstDrop*(k.Inside-k.Outside))
		for i := range c.facets {
			f := &c.facets[i]
			switch p.Radiant {
			case RadiantEnclosure:
				w := h.room.warm[i]
				f.seen = w*at[glowDrive] + (1-w)*start
			case RadiantGiven:
				f.by[1+glowDrive] = 1
			case RadiantAir:
				f.by[1+airDrive] = standard.secant(k.Inside, k.Inside)
			}
		}
	}
	c.shift(k)
	for i := range c.facets {
		f := &c.facets[i]
		if h.plan.Radiant != RadiantEnclosure {
			f.seen = at[glowDrive]
			continue
		}
		seen := f.seen + f.by[0]
		for d := range insideDrives {
			seen += f.by[1+d] * (at[d] - c.at[d])
		}
		if seen > leastSeen && seen < mostSeen {
			f.seen = seen
		}
	}
}

// twin returns where the facet before f stands that is its like and sees the same,
// or -1.
func (f *followedFacet) twin(h *House, k *HouseConditions, before []followedFacet) int {
	j := h.twin[f.facet]
	if j < 0 || k.Sun != nil && k.Sun[j] != k.Sun[f.facet] {
		return -1
	}
	for i := range before {
		if t := &before[i]; t.facet == j && abs(t.seen-f.seen) <= twinLimit && t.apart.near.stage == f.apart.near.stage && t.touched.near.stage == f.touched.near.stage {
			return i
		}
	}
	return -1
}

// sum adds up the facets, frame, doors, bridges and annexes.
func (c *HouseCovers) sum(k *HouseConditions, room *roomAir) {
	h := c.house
	p := &h.plan
	var took [insideDrives]float64
	var slope [insideDrives][insideDrives]float64
	sky, sun, inner, area := 0.0, 0.0, 0.0, 0.0
	for i := range c.facets {
		f := &c.facets[i]
		a := h.net[f.facet]
		frame := h.frame(p.Shape.Facets[f.facet].Kind)
		share := [insideDrives]float64{a * (1 + frame), a, a * (1 + frame)}
		own := f.took
		by := f.slope
		for i := range own {
			own[i] += f.slope[i][glowDrive] * f.by[0]
			for d := range insideDrives {
				if d == glowDrive {
					by[i][d] = f.slope[i][glowDrive] * f.by[1+d]
				} else {
					by[i][d] += f.slope[i][glowDrive] * f.by[1+d]
				}
			}
		}
		for i := range own {
			took[i] += share[i] * own[i]
			for d := range insideDrives {
				slope[i][d] += share[i] * by[i][d]
			}
		}
		// The frame loses what facet and sun alone would, radiation included.
		took[airTakes] += a * frame * own[glowTakes]
		for d := range insideDrives {
			slope[airTakes][d] += a * frame * by[glowTakes][d]
		}
		took[airTakes] -= a * frame * f.bySun
		sky += a * f.bySky
		for layer := range MaxLayers {
			if k.Sun != nil {
				sun += a * k.Sun[f.facet][layer]
			}
		}
		inner += a * f.inner
		area += a
	}
	c.Slope, c.Sky, c.Sun, c.Inner = slope, sky, sun, inner/area
	c.Air, c.Radiation, c.Condensate = took[airTakes], took[glowTakes], took[vapourTakes]
}

// others adds doors, bridges and annexes, and the latent heat of it all. Doors
// that condense have slopes near theirs.
func (c *HouseCovers) others(k *HouseConditions, room *roomAir) error {
	p := &c.house.plan
	dt := k.Inside - k.Outside
	for _, d := range p.Doors {
		x := doorHeat{load: d.U * dt}
		if k.InnerFace != InnerDry {
			x = room.door(d.U, k.Outside)
		}
		c.Air += d.Area * (x.load - x.condensate*room.load)
		c.Condensate += d.Area * x.condensate
		c.Slope[airTakes][airDrive] += d.Area * d.U
		if x.condensate > 0 {
			c.Slope[vapourTakes][vapourDrive] += d.Area * doorVapour * room.byPressure
			c.Slope[vapourTakes][airDrive] -= d.Area * doorVapour * doorRatio
		}
	}
	c.Latent = c.Condensate * room.load
	for _, b := range p.Bridges {
		c.Air += b.Length * b.Psi * dt
		c.Slope[airTakes][airDrive] += b.Length * b.Psi
	}
	c.rooms.Annexes, c.rooms.Partitions = c.rooms.Annexes[:0], 0
	if err := c.house.annexes(&c.rooms, k); err != nil {
		return err
	}
	c.Air += c.rooms.Partitions
	for i := range p.Annexes {
		c.Slope[airTakes][airDrive] += c.house.partitionSlope(i, c.rooms.annexNear[i])
	}
	return nil
}

const (
	doorVapour = 1.5e-3 // kg/(s m²), that condense on a door for each kg/kg of humidity ratio, near enough for a slope: about half of iso6946Level over the air's heat capacity, since what condenses warms the face
	doorRatio  = 5e-4   // 1/K, change of the humidity ratio at the door's face, near enough for a slope
	leakStep   = 0.01   // K, by which the slope of the leakage is found: its flow goes as a power of the difference, nearly straight over so little
	leakDrier  = 0.01   // of the humidity ratio, for the same
)

// leak adds what leaks and its slope.
func (c *HouseCovers) leak(k *HouseConditions, inside, outside psychro.State) (err error) {
	p := &c.house.plan
	flow := func(inside psychro.State) (LeakageFlow, error) {
		return p.Leakage.Flow(p.Shape.Volume, p.Shape.RidgeHeight, HouseAir{Inside: inside, Outside: outside, Wind: k.Wind})
	}
	if c.Leakage, err = flow(inside); err != nil {
		return err
	}
	warmer, bad := psychro.FromHumidityRatio(k.Inside+leakStep, inside.HumidityRatio(), k.Pressure)
	drier, worse := psychro.FromHumidityRatio(k.Inside, (1-leakDrier)*inside.HumidityRatio(), k.Pressure)
	if err = errors.Join(bad, worse); err != nil {
		return err
	}
	l, bad := flow(warmer)
	c.LeakageByK, c.LeakageByPa = (l.DryAir-c.Leakage.DryAir)/leakStep, 0
	if less := leakDrier * c.at[vapourDrive]; less > 0 {
		l, worse = flow(drier)
		c.LeakageByPa = (c.Leakage.DryAir - l.DryAir) / less
	}
	return errors.Join(bad, worse)
}
