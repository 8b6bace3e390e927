package ventilation

import (
	"math"

	"cloche.example/internal/solve"
)

// Limits of the slow way of covers and balances to each other.
const (
	relaxPasses = 120  // steps
	relaxDone   = 1e-8 // K, from a place to where it leads, that makes it the state; a rule may hold a humidity less closely
	relaxSame   = 3e-8 // fraction of the heat, by which what covers take at two places in a row may differ there
	relaxStep   = 0.5  // of the way, at first
	relaxLonger = 1.5  // of the share before, after a step that goes on
	relaxEdge   = 1e-5 // K, to which an edge between two states of the covers is found, and the place on it
	relaxCross  = 4.0  // times the way along an edge, as far as a step goes to cross it again
	relaxAhead  = 8.0  // times a way along an edge that grows shorter by little each time
	relaxNear   = 0.05 // of the way along an edge, to which it is found before
	relaxTurns  = 8    // solutions of the covers at one place, until what they see agrees
	relaxHalved = 60   // halves of a step, more than an edge takes
)

// stop is where the covers were solved, and how far from there the balances lead
// with what they take.
type stop struct {
	taken
	moved [drives]float64
}

// relax brings covers and balances together step by step, with no slope of the
// covers but tame ones. Where a step turns back, it looks for the edge that was
// crossed, between two states of the covers, and goes on along it. It ends at a state
// or at a place on an edge, where the house stands with a share of each.
func (k *climateCase) relax(find func() error) error {
	step := relaxStep
	var last stop
	var before [drives]float64 // the way along an edge
	full := false              // the last step was one all the way
	now, err := k.placed(find, k.skin.near.at)
	for range relaxPasses {
		if err != nil {
			return err
		}
		size := math.Sqrt(along(&now.moved, &now.moved))
		same := full && missed(now.took, last.took) <= relaxSame*missed(now.took, [drives]float64{}) // as where the last step led to
		if (size <= relaxDone || same) && now.open <= skinOpen {
			return nil
		}
		if step == 0 { // from an edge
			step = min(relaxStep, relaxCross*math.Sqrt(along(&before, &before))/size)
		}
		z, way := now.at, step
		if along(&now.moved, &last.moved) < 0 {
			var slide [drives]float64
			if slide, err = k.crossing(find, last, &now); err != nil {
				return err
			}
			if math.Sqrt(along(&slide, &slide)) <= k.skin.least() && now.open <= skinOpen {
				return nil
			}
			z, last, step, way = now.at, stop{}, 0, 1
			if r, one := alike(&slide, &before); one && r > 0 {
				way = min(relaxAhead, 1/max(0, 1-r))
			}
			if !k.skin.between { // a bend, that is gone on from as before
				step, way = relaxStep, relaxStep
			}
			now.moved, before = slide, slide
		} else {
			if r, one := alike(&now.moved, &last.moved); step == 1 && full && one && r < creepMost {
				way = 1 / (1 - r)
			}
			full = step == 1 && way == 1
			last, step = now, min(1, step*relaxLonger)
		}
		for i := range z {
			z[i] += way * now.moved[i]
		}
		now, err = k.placed(find, z)
	}
	return errLost
}

// placed solves the covers at z until what they see agrees, and the house with what
// they take.
func (k *climateCase) placed(find func() error, z [drives]float64) (p stop, err error) {
	s := k.skin
	s.straighten()
	for range relaxTurns {
		if s.near, err = s.solve(&z); err != nil {
			return p, err
		}
		if s.near.open <= skinOpen {
			break
		}
	}
	p.moved, err = k.led(find, &z)
	p.taken = s.near
	return p, err
}

// led returns how far from z the balances lead with what the covers take there.
func (k *climateCase) led(find func() error, z *[drives]float64) (moved [drives]float64, err error) {
	s := k.skin
	area := s.real.House.Shape().CoverArea
	s.near.tame(area)
	s.far.tame(area)
	if err = find(); err != nil {
		return moved, err
	}
	moved = k.drivesOf(&k.found)
	for i := range moved {
		moved[i] -= z[i]
	}
	return moved, nil
}

// crossing finds the edge between the places from and to, each of which leads towards
// the other, and leaves to there. It returns how far along the edge the balances
// lead with the share of the covers' two states that keeps to it.
func (k *climateCase) crossing(find func() error, from stop, to *stop) (slide [drives]float64, err error) {
	across := from.moved
	near := relaxNear
	for range relaxHalved {
		var apart [drives]float64
		mid := to.at
		for i := range mid {
			apart[i] = to.at[i] - from.at[i]
			mid[i] -= apart[i] / 2
		}
		if gap := math.Sqrt(along(&apart, &apart)); gap <= near {
			if slide, err = k.stand(find, &from, to, &across); err != nil {
				return slide, err
			}
			if near = max(k.skin.least(), relaxNear*math.Sqrt(along(&slide, &slide))); gap <= near {
				return slide, nil
			}
		}
		p, err := k.placed(find, mid)
		if err != nil {
			return slide, err
		}
		if along(&p.moved, &across) > 0 {
			from = p
		} else {
			*to = p
		}
	}
	return slide, nil
}

// least is how near, K, to the place on an edge, or to the state on a bend, a search
// ends.
func (s *skin) least() float64 {
	if s.between {
		return relaxEdge
	}
	return relaxDone
}

// stand finds the share of the covers' states at from and to with which the balances
// lead neither way across the edge between the two, and returns where along it they
// lead.
func (k *climateCase) stand(find func() error, from, to *stop, across *[drives]float64) (slide [drives]float64, err error) {
	s := k.skin
	s.between, s.near, s.far = true, to.taken, from.taken
	s.far.at = s.near.at
	leads := func(share float64) float64 {
		s.share = share
		if slide, err = k.led(find, &to.at); err != nil {
			return math.NaN()
		}
		return along(&slide, across)
	}
	if missed(s.near.took, s.far.took) <= skinAgreement*missed(s.near.took, [drives]float64{}) || !(leads(0) < 0 && leads(1) > 0) { // no edge, but a bend
		s.straighten()
		leads(0)
		return slide, err
	}
	share, bad := solve.Root(leads, 0, 1, shareFound)
	if bad != nil {
		return slide, errLost
	}
	leads(share)
	return slide, err
}

// tame leaves the straight form no slope but those by which each balance falls with
// its own unknown: with these a house has a state.
func (t *taken) tame(area float64) {
	s := [drives][drives]float64{}
	s[airHeat][byAir] = max(tameAir*area, t.slope[airHeat][byAir])
	s[glowHeat][byGlow] = max(tameGlow*area, t.slope[glowHeat][byGlow])
	s[water][byVapour] = max(0, t.slope[water][byVapour])
	t.slope, t.margin, t.smooth = s, 0, 0
}

// The least slopes of a tame form, for each m² of cover: those of a well insulated
// one.
const (
	tameAir  = 1.0 // W/(m² K)
	tameGlow = 0.2 // W/(m² K) for each of what the faces would radiate
)
