package envelope

import (
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// together is the search for what the facets of a house see of each other, in
// air of a given humidity or one that is sought with it. On the way a cover is
// solved no closer than the search has come, and counts with how what it sends
// and takes changes with what it sees and with the humidity: the search is one
// run of Newton's method over house and covers.
type together struct {
	h               *House
	dst             *HouseLoss
	k               HouseConditions
	inside, outside psychro.State
	one             CoverConditions
	air             roomAir
	floor           float64 // W/m², emission of the floor
	enclosed        bool    // facets see each other
	still           bool    // the humidity stays: what a facet does time and again it does for good
	rounds          int     // solutions of all covers, rough or not
	turns           bool    // a facet has changed between wet and dry time and again
}

// mutual is one facet on the way to the radiation that all of them share.
type mutual struct {
	seen   float64         // W/m², long-wave that the facet receives
	flow   flow            // what it sends and takes then
	drive  [splits]float64 // W/m², seen of each drive
	flips  int             // how often it changed between wet and dry
	soaked bool            // taken as wet, since it changed too often
}

// Limits of the exchange between facets.
const (
	mutualLimit  = 1e-8 // W/m², by which what a facet sees may miss what the others send: ten times what a cover's balance leaves open
	mutualRounds = 50   // rounds of all covers; two or three are usual
	roughRounds  = 8    // rounds after which covers are solved to the end each time: a face at the edge of being wet may end in another state than on the way
	plainRounds  = 20   // rounds before steps are damped, more than any house takes whose covers answer without a jump
	dampingStep  = 0.7  // damping from round to round from there on, unless the last left less than so much
	jumpLimit    = 0.5  // W/m², accepted where a cover jumps from one state to another and no state agrees with what the others then send; the cover's flux is uncertain by as much
	exactFrom    = 5e-3 // W/m² that facets miss: a step of Newton's method from there leaves less than mutualLimit, its square over some thousands, so that the covers may be solved to the end
	twinLimit    = 1e-9 // W/m², by which what twins see may differ for them to share a solution: a tenth of mutualLimit
	letGo        = 0.95 // of the most that a film under water lies above the dew point: it is let go of in the same turn
	surelyDry    = 3.0  // K, the same: as much as a film is colder at most once the others are dry
	turnFlips    = 2    // changes of a facet between wet and dry from which each more halves a step: drops on a share of it may lie between
	turnStep     = 0.5  // of such a step
	mostFlips    = 10   // changes after which a facet is taken as wet: a film that water makes opaque may have no state that agrees with what the others then send
	leastSeen    = 1.0  // W/m², less than any face inside receives, and
	mostSeen     = 1500 // more: the search does not go there
	mostSlope    = 20.0 // of what a facet sends over what it sees, either way: between 0 and 1, but for a film under some drops, whose share follows
	firstDrop    = 0.3  // of inside over outside air that facets lie below the inside air at first
)

// begin sets the search out in the conditions k, from what dst holds of the hour
// before. A film that passes heat radiation may have a state with water and one
// without, and which of them the others leave it depends on theirs: all such
// films begin under water, and judge lets go of those that would not stay wet,
// so that the answer does not depend on where the search begins.
func (t *together) begin() {
	h, dst := t.h, t.dst
	for i := range h.plan.Shape.Facets {
		if f := &h.plan.Shape.Facets[i]; !f.Kind.InGround() && !f.Party {
			dst.Facets = append(dst.Facets, FacetLoss{Facet: i})
		}
	}
	n := len(dst.Facets)
	t.enclosed = h.plan.Radiant == RadiantEnclosure
	t.one = t.k.CoverConditions
	if h.plan.Radiant == RadiantAir {
		t.one.RadiantRise = 0
	}
	t.floor = standard.emission(t.k.radiant())
	near := len(dst.mutual) == n && len(dst.near) == n && dst.floor > 0
	if !near {
		dst.mutual, dst.near = make([]mutual, n), make([]nearCover, n)
		space := new(system)
		for i := range dst.near {
			dst.near[i].space = space
		}
	}
	start := standard.emission(t.k.Inside - firstDrop*(t.k.Inside-t.k.Outside))
	for i := range n {
		x, before := &dst.mutual[i], dst.mutual[i].seen
		*x = mutual{seen: t.floor}
		if t.enclosed {
			w := h.room.warm[i]
			x.seen = w*t.floor + (1-w)*start
			if seen := before + w*(t.floor-dst.floor); near && seen > leastSeen && seen < mostSeen {
				x.seen = seen
			}
		}
		judged := stageAuto
		if c := t.cover(dst.Facets[i].Facet).set; t.enclosed && c.dry.transmit[c.n-1] > 0 {
			judged = stageSoaked
		}
		dst.near[i].apart.stage, dst.near[i].touched.stage = judged, judged
	}
	dst.floor = 0 // until solved
}

// cover returns the cover of the facet, with the screen as it is.
func (t *together) cover(facet int) Cover {
	if t.k.ScreenDrawn {
		return t.h.drawn[facet]
	}
	return t.h.covers[facet]
}

// judge lets go of the films under water that would dry off, which then are dry
// where they can be, and reports whether there were any. A dry film sends less, so
// that with it others may stay wet: those go first that would dry off the most.
func (t *together) judge() (more bool) {
	most := 0.0
	t.soaked(func(p *nearPart) { most = max(most, p.above) })
	t.soaked(func(p *nearPart) {
		if max(0, p.above) >= min(surelyDry, letGo*most) {
			p.stage, more = stageFree, true
		}
	})
	for i := range t.dst.mutual {
		if !t.dst.mutual[i].soaked {
			t.dst.mutual[i].flips = 0
		}
	}
	return more
}

// soaked does it with each part of a film under water that would dry off.
func (t *together) soaked(do func(p *nearPart)) {
	for i := range t.dst.near {
		if t.dst.mutual[i].soaked {
			continue
		}
		w := &t.dst.near[i]
		for _, p := range [2]*nearPart{&w.apart, &w.touched} {
			if p.stage == stageSoaked && p.dries {
				do(p)
			}
		}
	}
}

// moisten sets the humidity ratio of the inside air in kg/kg.
func (t *together) moisten(w float64, full psychro.State) (err error) {
	t.inside, t.k.InsideHumidity = full, 1
	if w < full.HumidityRatio() {
		if t.inside, err = psychro.FromHumidityRatio(t.k.Inside, w, t.k.Pressure); err != nil {
			return err
		}
		t.k.InsideHumidity = min(1, t.inside.RelativeHumidity())
	}
	t.air = roomOf(t.inside)
	return nil
}

// round solves all facets with what they see, roughly or to the end.
func (t *together) round(exact bool) error {
	h, dst := t.h, t.dst
	m := dst.mutual
	t.rounds++
	t.turns = false
	for i := range dst.Facets {
		r, near := &dst.Facets[i], &dst.near[i]
		if t.enclosed {
			t.one.RadiantRise = math.Sqrt(math.Sqrt(m[i].seen/standard.sigma)) - constant.ZeroCelsius - t.k.Inside
		}
		wet := m[i].flow.wet > 0
		if j := h.twinOf(&t.k, dst.Facets[:i], r.Facet); j >= 0 && math.Abs(m[j].seen-m[i].seen) <= twinLimit &&
			dst.near[j].apart.stage == near.apart.stage && dst.near[j].touched.stage == near.touched.stage {
			m[i].flow = m[j].flow
			near.apart.dries, near.touched.dries = dst.near[j].apart.dries, dst.near[j].touched.dries
			near.apart.above, near.touched.above = dst.near[j].apart.above, dst.near[j].touched.above
			if exact {
				h.same(r, &dst.Facets[j])
			}
		} else if err := t.facet(r, near, &m[i].flow, exact); err != nil {
			return domain.Within(fmt.Sprintf("facet %d (%s)", r.Facet, h.plan.Shape.Facets[r.Facet].Name), err)
		}
		if wet != (m[i].flow.wet > 0) {
			m[i].flips++
			t.turns = t.turns || m[i].flips > turnFlips
			if m[i].flips > mostFlips && t.enclosed && t.still {
				m[i].soaked = true
				near.apart.stage, near.touched.stage = stageSoaked, stageSoaked
			}
		}
	}
	return nil
}

// facet solves one facet.
func (t *together) facet(r *FacetLoss, near *nearCover, o *flow, exact bool) error {
	i := r.Facet
	f := &t.h.plan.Shape.Facets[i]
	t.one.Tilt, t.one.Height = f.Tilt, f.Height
	t.one.AbsorbedSun = [MaxLayers]float64{}
	if t.k.Sun != nil {
		t.one.AbsorbedSun = t.k.Sun[i]
	}
	near.apart.dries, near.touched.dries = false, false
	set := t.cover(i).set
	if !exact {
		return set.approach(&t.one, &t.air, near, o)
	}
	if err := r.solve(set, &t.one, &t.air, near); err != nil {
		return err
	}
	r.scale(i, f, t.h.net[i])
	*o = r.Solution.flow
	return nil
}

// missed returns by how much in W/m² what a facet sees misses what the others
// send.
func (t *together) missed() (off float64) {
	if !t.enclosed {
		return 0
	}
	for i := range t.dst.mutual {
		off = max(off, math.Abs(t.receives(i)-t.dst.mutual[i].seen))
	}
	return off
}

// receives returns what facet i sees in W/m².
func (t *together) receives(i int) float64 {
	v := &t.h.room
	e := v.warm[i] * t.floor
	for j, f := range v.share[i*v.n : i*v.n+v.n] {
		e += f * t.dst.mutual[j].flow.sent
	}
	return e
}

// settle finds what the facets see in air of the humidity that is set.
func (t *together) settle() error {
	exact, damping, before := !t.enclosed, 1.0, math.Inf(1)
	t.still = true
	defer func() { t.still = false }()
	for round := range mutualRounds {
		if err := t.round(exact); err != nil {
			return err
		}
		off := t.missed()
		if exact && (off <= mutualLimit || round == mutualRounds-1 && off <= jumpLimit) {
			t.dst.RadiantResidual = off
			return nil
		}
		rows, wide := t.lines()
		if damping *= dampingStep; round < plainRounds || off < dampingStep*before {
			damping = 1
		}
		before = off
		step := damping
		if t.turns {
			step *= turnStep
		}
		t.move(rows, wide, 0, step)
		exact = off <= exactFrom || round >= roughRounds
	}
	return fmt.Errorf("%w: the facets of a house that see each other, after %d rounds", ErrNotConverged, mutualRounds)
}
