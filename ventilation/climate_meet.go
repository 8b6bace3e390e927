package ventilation

import (
	"errors"
	"fmt"
	"math"
)

// Agreement of the straight form with the covers.
const (
	skinAgreement = 3e-7 // fraction of the heat; the last state lies closer still, since the form is straight there
	skinLeast     = 1e-7 // W/m² of floor, that counts as none
	skinOpen      = 1e-5 // W/m², by which what the facets see and their balances may be off: it counts by its square, since what they take is corrected for it
	skinBend      = 2e-6 // fraction of the heat that may be missed where no face is near another state: of what the slopes there then miss, a thousandth is left as a rule and a third at worst
	skinBendOpen  = 3e-4 // W/m², for skinOpen there
	skinMargin    = 10   // times as far as the missed heat moves the inside are the faces from another state there
	skinCurveOpen = 1e-2 // W/m², for skinOpen where no coefficient is near another course, either
	skinOpenShare = 3e-4 // fraction of the heat that this may be over all facets, of which slopes correct all but some hundredths
	skinTurn      = 4    // times as much may it miss in another direction
	skinLeft      = 3e-7 // fraction of the heat that the form may then miss: by no more than it missed the last change by, and than a move has of the way to where a coefficient changes its course
	skinMoved     = 20   // K for each W/m² that is open: more than a hundred times what moves a face, since convection bends most where face and air are alike
	skinSteady    = 20   // for skinMargin there: from another course
	skinCold      = 1    // W/m², for skinOpen where the covers begin cold
	skinColdTurns = 8    // turns in which a cold start comes to that, or the balances set out from what it has
	skinPasses    = 60   // passes; three or four are usual, some twenty more between two states
	skinSlower    = 0.5  // of the difference before, that a pass leaves where covers bend
	skinBetween   = 3    // such passes after which the covers are taken to stand between two states
	skinWithin    = 30   // times as far as the last state is from there are the faces from another state
	skinBent      = 1e-4 // K, taken for that distance where slopes are held, so that straight lines miss more
	skinShare     = 1e-6 // fraction, to which the share of the two is sought
	skinApart     = 1e-5 // K, between the two states, of which there is an edge then
	skinEdge      = 1e-5 // fraction, of a share that is as good as one state alone
)

// begin solves the covers at z, where the balances will set out from.
func (s *skin) begin(z [drives]float64) (err error) {
	s.straighten()
	turns := 1
	if s.cold = !s.known; s.cold {
		turns = skinColdTurns
	}
	for range turns {
		if s.near, err = s.solve(&z); err != nil {
			s.known = false
			return err
		}
		if s.near.open <= skinCold {
			break
		}
	}
	s.known = true
	return nil
}

// skinSteepest bounds the slopes, per m² of cover, least and most: of the signs
// that warm air, warm surroundings and vapour have on any cover, some times what
// a face in moving air has. A step across the edge between wet and dry would
// else leave a slope with which the balances have no state. Warmer air may
// condense more, by the stronger convection.
var skinSteepest = [drives][drives][2]float64{
	airHeat:  {byAir: {0, 40}, byGlow: {-1, 0}, byVapour: {-3, 1}},
	glowHeat: {byAir: {-20, 0}, byGlow: {0, 1}, byVapour: {-3, 1}},
	water:    {byAir: {-2e-5, 2e-6}, byGlow: {-3e-6, 0}, byVapour: {0, 3e-7}},
}

// bound holds the slopes within skinSteepest. Under drops that keep a film at the
// dew point covers may go beyond it: straight lines with other slopes do not reach
// anywhere.
func (s *skin) bound(t *taken) {
	area := s.real.House.Shape().CoverArea
	for i := range t.slope {
		for j := range t.slope[i] {
			end := skinSteepest[i][j]
			if held := max(area*end[0], min(area*end[1], t.slope[i][j])); held != t.slope[i][j] {
				t.slope[i][j], t.margin, t.smooth, t.edge = held, 0, 0, skinBent
			}
		}
	}
}

// missed returns the heat, W, by which a and b differ.
func missed(a, b [drives]float64) float64 {
	return math.Abs(a[airHeat]-b[airHeat]) + math.Abs(a[glowHeat]-b[glowHeat]) + evaporationHeat*math.Abs(a[water]-b[water])
}

// follow solves the covers at z, to which the balances have led, and reports
// whether they take what the straight form took there.
func (s *skin) follow(z [drives]float64, floor float64) (agreed bool, err error) {
	now, err := s.solve(&z)
	if err != nil {
		return false, err
	}
	if s.between {
		for turn := 1; now.open > skinOpen && turn < relaxTurns; turn++ { // films keep what they were until then
			if now, err = s.solve(&z); err != nil {
				return false, err
			}
		}
		return s.narrow(&now)
	}
	foreseen, _ := s.near.from(&z)
	miss := missed(now.took, foreseen)
	if math.IsNaN(miss) {
		return false, fmt.Errorf("covers: %w", ErrNotConverged)
	}
	leak, _, _ := s.near.leakAt(z[byAir], z[byVapour])
	s.bend = miss / s.near.stretch(&z)
	size, leaks := missed(now.took, [drives]float64{}), math.Abs(now.leak-leak)
	agreed = miss <= skinAgreement*size+skinLeast*floor && leaks <= skinAgreement*now.leak && now.open <= skinOpen || !s.cold && s.slow == 0 && now.reaches(miss, leaks, miss/now.slope[airHeat][byAir], s.bend, s.real.House.Shape().CoverArea)
	last := s.near
	s.near = now
	if miss > skinSlower*s.miss {
		s.slow++
	}
	s.miss = miss
	if !agreed && s.slow >= skinBetween {
		s.between, s.far, s.low, s.high, s.share = true, last, 0, 1, 0.5
	}
	return agreed, nil
}

// stretch returns the heat, W, by which what the covers take changes from t to z,
// each drive by itself.
func (t *taken) stretch(z *[drives]float64) (heat float64) {
	for j := range z {
		move := z[j] - t.at[j]
		heat += missed([drives]float64{t.slope[airHeat][j] * move, t.slope[glowHeat][j] * move, t.slope[water][j] * move}, [drives]float64{})
	}
	return heat
}

// reaches reports whether the straight form through t holds where the covers would
// take another heat by miss, W, and let through another leak, kg/s, after a move by
// far, K; bend is the fraction by which such a form missed the last change.
func (t *taken) reaches(miss, leaks, far, bend, area float64) bool {
	size := missed(t.took, [drives]float64{})
	if miss <= skinBend*size && leaks <= skinBend*t.leak && t.open <= skinBendOpen && skinMargin*far <= t.margin {
		return true
	}
	most := skinLeft / max(skinTurn*bend, far/t.smooth)
	return miss <= most*size && leaks <= most*t.leak && t.open <= skinCurveOpen && t.open*area <= skinOpenShare*size && skinSteady*far <= t.smooth && skinMoved*t.open <= t.smooth
}

// narrow halves the share in which the covers stand between their two states:
// it is too large while the balances lead to the near one. It reports whether
// the share is known. A share of none or all is no state between two: the balances
// go on from that one.
func (s *skin) narrow(now *taken) (known bool, err error) {
	near, _ := s.near.from(&now.at)
	far, _ := s.far.from(&now.at)
	if missed(now.took, near) < missed(now.took, far) {
		s.near, s.high = *now, s.share
	} else {
		s.far, s.low = *now, s.share
	}
	s.share = (s.low + s.high) / 2
	if s.high-s.low >= skinShare {
		return false, nil
	}
	if s.apart() > skinApart {
		return false, errLost
	}
	if missed(s.near.took, s.far.took) <= skinAgreement*missed(s.near.took, [drives]float64{}) { // no edge, but a bend
		s.straighten()
		return false, nil
	}
	if s.share > 1-skinEdge {
		s.near, s.share = s.far, 0
	}
	if s.share < skinEdge {
		s.straighten()
		return false, nil
	}
	return true, nil
}

// apart returns how far from each other, K, the covers' two states lie that they are
// taken to stand between.
func (s *skin) apart() float64 {
	var apart [drives]float64
	for i := range apart {
		apart[i] = s.near.at[i] - s.far.at[i]
	}
	return math.Sqrt(along(&apart, &apart))
}

// straighten lets the covers stand in one state.
func (s *skin) straighten() {
	s.between, s.slow, s.miss = false, 0, math.Inf(1)
}

// meet solves the house by find, which leaves its state in found, with real
// covers as often as it takes for these and the balances to agree. Where the
// straight form leads astray, it goes on step by step, and begins anew where a house
// begins.
func (k *climateCase) meet(find func() error, glide func() bool) error {
	s := k.skin
	if s == nil {
		return find()
	}
	opening, heat := k.opening, k.heat
	if err := k.setOut(find, glide); err != nil {
		return err
	}
	err := k.agree(find, glide)
	if err != nil {
		k.opening, k.heat, k.lastDrive = opening, heat, math.NaN()
		err = k.relax(find)
	}
	for try := 0; err != nil && try < 2; try++ {
		k.opening, k.heat, k.lastDrive, s.known = opening, heat, math.NaN(), false
		x := k.moist()
		switch err = k.set(k.drivesOf(&x)); {
		case err != nil:
		case try == 0:
			err = k.agree(find, nil)
		default:
			err = k.relax(find)
		}
	}
	if (err == nil || errors.Is(err, errLost)) && k.found.air > realAirRange.Max {
		err = errHot
	}
	if err != nil {
		s.known = false
	}
	if errors.Is(err, errLost) {
		err = fmt.Errorf("%w near %g °C", err, k.found.air)
	}
	return err
}

// errLost is the fault of covers and balances that do not agree.
var errLost = fmt.Errorf("balance of heat and water: %w: covers and inside do not agree", ErrNotConverged)

// agree is meet from where the covers are. While glide leads on, find is spared but
// for the last.
func (k *climateCase) agree(find func() error, glide func() bool) error {
	s := k.skin
	s.straighten()
	way := creeping{at: s.near.at}
	glides := glide != nil
	for range skinPasses {
		glided := glides && !s.between && glide()
		if !glided {
			if err := k.tamed(find); err != nil {
				return err
			}
		}
		z := k.drivesOf(&k.found)
		if s.between {
			way = creeping{at: z}
		} else {
			z = way.to(z)
		}
		agreed, err := s.follow(z, k.c.house.FloorArea)
		if err != nil {
			return err
		}
		if !agreed || way.beyond {
			continue
		}
		if err = k.tamed(find); err != nil {
			return err
		}
		if !s.between && k.strayed(&z) {
			glides = glides && !glided
			continue
		}
		switch off := k.off(&z); {
		case s.between && off > skinApart:
			return errLost
		case s.between || skinWithin*off <= s.near.edge || s.near.edge == 0:
			return nil
		}
	}
	return errLost
}

// tamed is find, with tame covers where it finds no state.
func (k *climateCase) tamed(find func() error) error {
	err := find()
	if err == nil {
		return nil
	}
	area := k.skin.real.House.Shape().CoverArea
	k.skin.near.tame(area)
	k.skin.far.tame(area)
	if find() == nil {
		return nil
	}
	return err
}

// off returns how far, K, the state found is from the drives z.
func (k *climateCase) off(z *[drives]float64) float64 {
	moved := k.drivesOf(&k.found)
	for i := range moved {
		moved[i] -= z[i]
	}
	return math.Sqrt(along(&moved, &moved))
}

// strayed reports whether the state found is farther from that with the drives z,
// where the covers were solved, than their straight form reaches.
func (k *climateCase) strayed(z *[drives]float64) bool {
	s := k.skin
	to := k.drivesOf(&k.found)
	leak, _, _ := s.near.leakAt(to[byAir], to[byVapour])
	near, far := true, 0.0
	for i, v := range to {
		move := math.Abs(v - z[i])
		near, far = near && move <= glideLand[i], max(far, move/perKelvin[i])
	}
	return !near && !s.near.reaches(s.near.stretch(&to), math.Abs(leak-s.near.leak), far, s.bend, s.real.House.Shape().CoverArea)
}

// perKelvin is what makes up for a kelvin of a face, about: K, W/m² and, at 10 °C,
// Pa.
var perKelvin = [drives]float64{byAir: 1, byGlow: 5, byVapour: 80}

// glideLand is what counts as one state, K, W/m² and Pa: the straight form of the
// covers leaves the square of it over some hundred.
var glideLand = [drives]float64{byAir: 1e-4, byGlow: 1e-3, byVapour: 2e-2}
