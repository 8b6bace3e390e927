package envelope

import (
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// RadiantRoom says what heat radiation the inner faces of a house's covers see.
type RadiantRoom uint8

// The radiant surroundings of the inner faces. The enclosure is what a
// HousePlan has that says nothing else; see the package comment for the
// difference.
const (
	RadiantEnclosure RadiantRoom = iota // each other, and the floor with the crop, black and RadiantRise above the inside air
	RadiantAir                          // a black body at the inside air's temperature: every facet alone
	RadiantGiven                        // a black body RadiantRise above the inside air: every facet alone
)

var radiantRooms = domain.Range{Min: 0, Max: float64(RadiantGiven), Unit: "number", Source: "constants of RadiantRoom"}

// enclosedRange is the number of facets that may see each other: their table
// takes the square of it.
var enclosedRange = domain.Range{Min: 1, Max: 500, Unit: "facets", Source: "that see each other; other choices of Radiant take more"}

// mutual is one facet on the way to the radiation that all of them share.
type mutual struct {
	seen, seenBefore float64         // W/m², long-wave that the facet receives
	sent, sentBefore float64         // W/m², long-wave that leaves its inner face
	slope            float64         // of sent over seen
	drive            [splits]float64 // W/m², seen of each drive
	uptake           float64         // Solution.uptake of the first round
	wet              bool            // state of the round before
	flips            int             // how often the state changed
}

// The drives of a house's flux.
const (
	splitInside = iota // inside air, floor and vapour
	splitSky           // sky and ground
	splitSun           // absorbed sun
	splitUnit          // 1 K of inside air and floor
	splits
)

// Limits of the exchange between facets.
const (
	mutualLimit  = 1e-8  // W/m², by which what a facet sees may miss what the others send: ten times what a cover's balance leaves open
	mutualRounds = 50    // rounds of all covers; three or four are usual
	plainRounds  = 20    // rounds before steps are damped, more than any house takes whose covers answer without a jump
	dampingStep  = 0.7   // damping from round to round from there on
	jumpLimit    = 0.5   // W/m², accepted where a cover jumps from one state to another and no state agrees with what the others then send; the cover's flux is uncertain by as much
	twinLimit    = 1e-10 // W/m², by which what twins see may differ for them to share a solution: ten times what ends a sweep
	sweepLimit   = 1e-11 // W/m², change of a sweep over the linear exchange that ends it
	sweeps       = 500   // sweeps; each leaves a third of the error or less unless facets are mirrors
	mostFlips    = 4     // changes between wet and dry after which a facet is taken as wet: a film that water makes opaque may have no state that agrees with what the others then send
	mostSeen     = 1500  // W/m², more than any face inside receives: the search does not begin there
	firstDrop    = 0.3   // of inside over outside air that facets lie below the inside air at first
)

// solveFacets appends the facets against the air to dst and solves each.
func (h *House) solveFacets(dst *HouseLoss, k *HouseConditions) error {
	p := &h.plan
	for i := range p.Shape.Facets {
		if f := &p.Shape.Facets[i]; !f.Kind.InGround() && !f.Party {
			dst.Facets = append(dst.Facets, FacetLoss{Facet: i})
		}
	}
	if len(dst.near) != len(dst.Facets) {
		dst.near = make([]nearCover, len(dst.Facets))
	}
	one := k.CoverConditions
	air := newRoomAir(&one)
	air.grows = dst.grows
	if p.Radiant == RadiantAir {
		one.RadiantRise = 0
	}
	if p.Radiant != RadiantEnclosure {
		for i := range dst.Facets {
			if t := h.twinOf(k, dst.Facets[:i], dst.Facets[i].Facet); t >= 0 {
				h.same(&dst.Facets[i], &dst.Facets[t])
				continue
			}
			if err := h.solveFacet(&dst.Facets[i], k, &one, &air, &dst.near[i]); err != nil {
				return err
			}
		}
		return nil
	}
	return h.solveEnclosure(dst, k, &one, &air)
}

// solveFacet solves one facet that sees what one says.
func (h *House) solveFacet(r *FacetLoss, k *HouseConditions, one *CoverConditions, air *roomAir, near *nearCover) error {
	i := r.Facet
	f := &h.plan.Shape.Facets[i]
	cover := h.covers[i]
	if k.ScreenDrawn {
		cover = h.drawn[i]
	}
	one.Tilt, one.Height = f.Tilt, f.Height
	one.AbsorbedSun = [MaxLayers]float64{}
	if k.Sun != nil {
		one.AbsorbedSun = k.Sun[i]
	}
	if err := r.solve(cover.set, one, air, near); err != nil {
		return domain.Within(fmt.Sprintf("facet %d (%s)", i, f.Name), err)
	}
	r.scale(i, f, h.net[i])
	return nil
}

// same takes for the facet r the solution of its twin.
func (h *House) same(r, twin *FacetLoss) {
	r.Solution, r.DripHumidity = twin.Solution, twin.DripHumidity
	r.scale(r.Facet, &h.plan.Shape.Facets[r.Facet], h.net[r.Facet])
}

// twinOf returns where in before the twin of the facet of the shape stands that
// has the same sun, or -1.
func (h *House) twinOf(k *HouseConditions, before []FacetLoss, facet int) int {
	j := h.twin[facet]
	if j < 0 || k.Sun != nil && k.Sun[j] != k.Sun[facet] {
		return -1
	}
	for at := range before {
		if before[at].Facet == j {
			return at
		}
	}
	return -1
}

// twins returns for each facet the first before it of the same covers, tilt and
// height, or -1.
func (h *House) twins() []int {
	facets := h.plan.Shape.Facets
	twin := make([]int, len(facets))
	for i := range facets {
		twin[i] = -1
		for j := range i {
			a, b := &facets[i], &facets[j]
			if a.Tilt == b.Tilt && a.Height == b.Height && h.covers[i] == h.covers[j] && h.drawn[i] == h.drawn[j] &&
				!b.Kind.InGround() && !b.Party {
				twin[i] = j
				break
			}
		}
	}
	return twin
}

// solveEnclosure finds what the facets see of each other: each is solved with
// what it sees, what they send is taken as a straight line over what they see,
// its slope at first that of the cover with coefficients held, then that from
// round to round, and the lines are solved together.
func (h *House) solveEnclosure(dst *HouseLoss, k *HouseConditions, one *CoverConditions, air *roomAir) error {
	floor := standard.emission(k.radiant())
	start := standard.emission(k.Inside - firstDrop*(k.Inside-k.Outside))
	n := len(dst.Facets)
	near := len(dst.mutual) == n && dst.floor > 0
	if !near {
		dst.mutual = dst.mutual[:0]
	}
	for i := range n {
		w := h.room.warm[i]
		cold := mutual{seen: w*floor + (1-w)*start}
		if !near {
			dst.mutual = append(dst.mutual, cold)
			continue
		}
		x := &dst.mutual[i]
		seen := x.seen + w*(floor-dst.floor)
		cold.slope, cold.wet = x.slope, x.wet
		if *x = cold; seen > 0 && seen < mostSeen {
			x.seen = seen
		}
	}
	dst.floor = 0 // until solved
	m := dst.mutual
	damping := 1.0
	grows := air.grows
	for round := range mutualRounds {
		air.grows = grows && round == 0
		for i := range n {
			one.RadiantRise = math.Sqrt(math.Sqrt(m[i].seen/standard.sigma)) - constant.ZeroCelsius - k.Inside
			one.InnerFace = k.InnerFace
			if m[i].flips > mostFlips && k.InnerFace == InnerAuto {
				one.InnerFace = innerSoaked
			}
			if t := h.twinOf(k, dst.Facets[:i], dst.Facets[i].Facet); t >= 0 && (m[t].flips > mostFlips) == (m[i].flips > mostFlips) && math.Abs(m[t].seen-m[i].seen) <= twinLimit {
				h.same(&dst.Facets[i], &dst.Facets[t])
			} else if err := h.solveFacet(&dst.Facets[i], k, one, air, &dst.near[i]); err != nil {
				return err
			}
			s := &dst.Facets[i].Solution
			wet := s.WetShare > 0
			if round > 0 && wet != m[i].wet {
				m[i].flips++
			}
			if round == 0 {
				m[i].uptake = s.uptake
			}
			s.uptake = m[i].uptake
			m[i].sent = s.IrradianceIn - s.InRadiative
			slope := s.drive.radiosity[driveRoom]
			if round == 0 && wet == m[i].wet && m[i].slope > 0 {
				slope = m[i].slope // of the hour before, from two rounds
			}
			if d := m[i].seen - m[i].seenBefore; round > 0 && wet == m[i].wet && math.Abs(d) > 1e3*mutualLimit {
				if x := (m[i].sent - m[i].sentBefore) / d; x > 0 && x < 1 {
					slope = x
				}
			}
			m[i].slope, m[i].wet = slope, wet
			m[i].seenBefore, m[i].sentBefore = m[i].seen, m[i].sent
		}
		off := 0.0
		for i := range n {
			off = max(off, math.Abs(h.receives(m, i, floor)-m[i].seenBefore))
		}
		if off <= mutualLimit || round == mutualRounds-1 && off <= jumpLimit {
			dst.RadiantResidual, dst.floor = off, floor
			h.splitEnclosure(dst, k, floor)
			return nil
		}
		for range sweeps {
			moved := 0.0
			for i := range n {
				e := h.receives(m, i, floor)
				moved = max(moved, math.Abs(e-m[i].seen))
				m[i].seen = e
				m[i].sent = m[i].sentBefore + m[i].slope*(e-m[i].seenBefore)
			}
			if moved <= sweepLimit {
				break
			}
		}
		if round >= plainRounds {
			damping *= dampingStep
			for i := range n {
				m[i].seen = m[i].seenBefore + damping*(m[i].seen-m[i].seenBefore)
			}
		}
	}
	return fmt.Errorf("%w: the facets of a house that see each other, after %d rounds", ErrNotConverged, mutualRounds)
}

// receives returns what facet i sees in W/m².
func (h *House) receives(m []mutual, i int, floor float64) float64 {
	n := h.room.n
	e := h.room.warm[i] * floor
	for j, f := range h.room.share[i*n : i*n+n] {
		e += f * m[j].sent
	}
	return e
}

// splitEnclosure divides the flux of each facet among what drives the house:
// what the sky takes from one facet another feels.
func (h *House) splitEnclosure(dst *HouseLoss, k *HouseConditions, floor float64) {
	base := standard.emission(k.Outside)
	room := [splits]float64{splitInside: floor - base, splitUnit: standard.secant(k.radiant(), k.Outside)}
	n := h.room.n
	m := dst.mutual
	dt := k.Inside - k.Outside
	for i := range n {
		m[i].drive = [splits]float64{}
	}
	for range sweeps {
		moved := 0.0
		for i := range n {
			var e [splits]float64
			for d := range splits {
				e[d] = h.room.warm[i] * room[d]
			}
			for j, f := range h.room.share[i*n : i*n+n] {
				if f == 0 {
					continue
				}
				own := own(&dst.Facets[j].Solution.drive.radiosity, dt)
				back := dst.Facets[j].Solution.drive.radiosity[driveRoom]
				for d := range splits {
					e[d] += f * (own[d] + back*m[j].drive[d])
				}
			}
			for d := range splits {
				moved = max(moved, math.Abs(e[d]-m[i].drive[d]))
			}
			m[i].drive = e
		}
		if moved <= sweepLimit {
			break
		}
	}
	for i := range n {
		r := &dst.Facets[i]
		s := &r.Solution
		own := own(&s.drive.flux, dt)
		for d := range splits {
			own[d] += s.drive.flux[driveRoom] * m[i].drive[d]
		}
		s.AirDriven, s.SkyDriven, s.SunDriven, s.UAir = own[splitInside], own[splitSky], own[splitSun], own[splitUnit]
		r.scale(r.Facet, &h.plan.Shape.Facets[r.Facet], h.net[r.Facet])
	}
}

// own gathers a cover's own drives into those of the house, what it sees apart.
func own(r *[drives]float64, dt float64) [splits]float64 {
	return [splits]float64{
		splitInside: r[driveAir]*dt + r[driveVapour],
		splitSky:    r[driveSky], splitSun: r[driveSun], splitUnit: r[driveAir],
	}
}
