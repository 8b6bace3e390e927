package ventilation

import (
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/constant"
)

// What drives the covers from inside, and what they take.
const (
	byAir    = iota // °C, inside air
	byGlow          // W/m², radiation of crop and floor as one black surface
	byVapour        // Pa, inside vapour pressure
	drives

	airHeat  = 0 // W, sensible heat out of the air
	glowHeat = 1 // W, heat radiation out of crop and floor
	water    = 2 // kg/s, what condenses
)

// skin is the covers of a house near one state of its inside: what they take
// there, solved facet by facet, and how that changes with what drives it. The
// balances are solved with this straight form, the covers again where they lead,
// until the two agree: each time the form learns from the difference (Broyden's
// rank-one correction), and starts afresh where that is slow.
type skin struct {
	real *RealCover
	k    envelope.HouseConditions
	loss envelope.HouseLoss
	sun  [][envelope.MaxLayers]float64 // W/m², where the weather has no sun by facets

	known  bool                    // slope is from covers of this house
	slope  [drives][drives]float64 // change of what the covers take with each drive
	near   taken                   // where the covers were last solved
	solved int                     // count of solutions of all covers

	// A film that lets heat radiation through takes another heat wet than dry:
	// where the balances are met by neither, the covers stand between the two.
	between   bool
	far       taken   // the covers on the other side
	share     float64 // fraction, of far
	low, high float64 // fraction, between which share lies
}

// taken is what the covers take at one state of the inside.
type taken struct {
	at     [drives]float64 // what drives them
	took   [drives]float64 // what they take
	latent float64         // W, set free by what condenses
	leak   float64         // kg/s of dry air through the leaks
	lining float64         // °C, mean of the inner faces
}

// Agreement of the straight form with the covers.
const (
	skinAgreement = 3e-7 // fraction of the heat; the last state lies closer still, since the form is straight there
	skinLeast     = 1e-7 // W/m² of floor, that counts as none
	skinPasses    = 60
	skinAfresh    = 3    // passes after which the slope is taken anew
	skinBetween   = 11   // passes after which the covers are taken to stand between two states
	skinShare     = 1e-9 // fraction, to which the share of the two is sought
)

// unitOf scales the drives to each other, about as much heat for each.
var unitOf = [drives]float64{byAir: 1, byGlow: 5, byVapour: 60}

// outside sets the weather and what is done to the covers.
func (s *skin) outside(r *RealCover, w *Weather, set *Setting, floor float64) {
	s.real, s.k = r, r.Conditions
	k := &s.k
	k.Outside, k.OutsideHumidity = w.Air.Temperature(), min(1, w.Air.RelativeHumidity())
	k.SkyDrop = k.Outside - w.Sky
	k.Wind, k.Pressure, k.ScreenDrawn = w.Wind, w.Air.Pressure(), set.Screen
	k.Sun = nil
	shape := r.House.Shape()
	if len(s.sun) != len(shape.Facets) {
		s.sun = make([][envelope.MaxLayers]float64, len(shape.Facets))
		s.known = false
	}
	lit := 1 - set.Shade
	switch {
	case w.Gain != nil && lit == 1:
		k.Sun = w.Gain.Sun
	case w.Gain != nil:
		for i := range s.sun {
			for j, v := range w.Gain.Sun[i] {
				s.sun[i][j] = lit * v
			}
		}
		k.Sun = s.sun
	case w.Sun*r.Absorptance > 0:
		even := lit * w.Sun * r.Absorptance * floor / shape.CoverArea
		for i := range s.sun {
			if f := &shape.Facets[i]; !f.Kind.InGround() && !f.Party {
				s.sun[i] = [envelope.MaxLayers]float64{even}
			}
		}
		k.Sun = s.sun
	}
}

// solve solves the covers at the drives z.
func (s *skin) solve(z *[drives]float64) (t taken, err error) {
	k := &s.k
	k.Inside = max(realAirRange.Min, min(realAirRange.Max, z[byAir]))
	glow := math.Sqrt(math.Sqrt(z[byGlow]/constant.StefanBoltzmann)) - kelvin
	k.RadiantRise = max(-60, min(100, glow-k.Inside))
	es, _ := saturation(k.Inside)
	k.InsideHumidity = max(0, min(1, z[byVapour]/es))
	s.solved++
	if err = s.real.House.LossTo(&s.loss, k); err != nil {
		return t, fmt.Errorf("covers: %w", err)
	}
	r := &s.loss
	area, glowing := 0.0, 0.0
	for i := range r.Facets {
		f := &r.Facets[i]
		glowing += f.Area * f.Solution.InRadiative
		t.lining += f.Area * f.InnerTemperature
		area += f.Area
	}
	t.at = *z
	t.lining /= area
	t.latent = r.Latent - r.Leakage.Latent
	t.leak = r.Leakage.DryAir
	t.took = [drives]float64{airHeat: r.Total - r.Ground.Total - r.Leakage.Total - glowing - t.latent, glowHeat: glowing, water: r.Condensate}
	return t, nil
}

const secondsPerHour = 3600.0

// from returns what the straight form through t takes at z. What condenses is
// held between none and what would condense on a face so cold that it has no
// vapour pressure: far from t, in colder and drier air, the line would take more
// than there is.
func (s *skin) from(t *taken, z *[drives]float64) (took [drives]float64) {
	for i := range took {
		took[i] = t.took[i]
		for j := range z {
			took[i] += s.slope[i][j] * (z[j] - t.at[j])
		}
	}
	took[water] = max(0, min(took[water], s.most(t)*z[byVapour]))
	return took
}

// most returns what condenses at most for each pascal of vapour, kg/(s Pa).
func (s *skin) most(t *taken) float64 {
	return max(s.slope[water][byVapour], t.took[water]/max(t.at[byVapour], 1))
}

// takes returns what the covers take at z by the straight form.
func (s *skin) takes(z *[drives]float64) [drives]float64 {
	took := s.from(&s.near, z)
	if s.between {
		far := s.from(&s.far, z)
		for i := range took {
			took[i] += s.share * (far[i] - took[i])
		}
	}
	return took
}

// wets returns how what condenses changes with each drive at z.
func (s *skin) wets(z *[drives]float64) (slope [drives]float64) {
	add := func(t *taken, share float64) {
		switch g, cap := s.from(t, z)[water], s.most(t); {
		case g == 0:
		case g == cap*z[byVapour]:
			slope[byVapour] += share * cap
		default:
			for j := range slope {
				slope[j] += share * s.slope[water][j]
			}
		}
	}
	if !s.between {
		add(&s.near, 1)
		return slope
	}
	add(&s.near, 1-s.share)
	add(&s.far, s.share)
	return slope
}

// begin solves the covers where the balances will set out from: where they were
// last met, or at z.
func (s *skin) begin(z [drives]float64) (err error) {
	s.between = false
	if s.known {
		z = s.near.at
	}
	if s.near, err = s.solve(&z); err != nil {
		return err
	}
	if !s.known {
		return s.afresh()
	}
	return nil
}

// afresh takes the slope anew by small steps of each drive.
func (s *skin) afresh() error {
	const step = 0.01
	for j := range s.near.at {
		z, d := s.near.at, step*unitOf[j]
		if j == byVapour && z[j] > 2*d {
			d = -d
		}
		z[j] += d
		t, err := s.solve(&z)
		if err != nil {
			return err
		}
		for i := range t.took {
			s.slope[i][j] = (t.took[i] - s.near.took[i]) / d
		}
	}
	s.known = true
	s.bound()
	return nil
}

// skinSteepest bounds the slopes, per m² of cover: of the signs that warm air, warm
// surroundings and vapour have on any cover, some times what a face in moving
// air has. A step across the edge between wet and dry would else leave a slope
// with which the balances have no state.
var skinSteepest = [drives][drives]float64{
	airHeat:  {byAir: 30, byGlow: -1, byVapour: -0.3},
	glowHeat: {byAir: -20, byGlow: 1, byVapour: -0.3},
	water:    {byAir: -2e-5, byGlow: -3e-6, byVapour: 2e-7},
}

// bound holds the slopes within skinSteepest.
func (s *skin) bound() {
	area := s.real.House.Shape().CoverArea
	for i := range s.slope {
		for j := range s.slope[i] {
			end := area * skinSteepest[i][j]
			s.slope[i][j] = max(min(end, 0), min(max(end, 0), s.slope[i][j]))
		}
	}
}

// missed returns the heat, W, by which a and b differ.
func missed(a, b [drives]float64) float64 {
	return math.Abs(a[airHeat]-b[airHeat]) + math.Abs(a[glowHeat]-b[glowHeat]) + evaporationHeat*math.Abs(a[water]-b[water])
}

// follow solves the covers at z, to which the balances have led, and reports
// whether they take what the straight form took there.
func (s *skin) follow(z [drives]float64, floor float64, pass int) (agreed bool, err error) {
	now, err := s.solve(&z)
	if err != nil {
		return false, err
	}
	if s.between {
		return s.narrow(&now), nil
	}
	before := s.from(&s.near, &z)
	miss := missed(now.took, before)
	if math.IsNaN(miss) {
		return false, fmt.Errorf("covers: %w", ErrNotConverged)
	}
	agreed = miss <= skinAgreement*missed(now.took, [drives]float64{})+skinLeast*floor &&
		math.Abs(now.leak-s.near.leak) <= skinAgreement*now.leak
	last := s.near
	s.near = now
	switch {
	case agreed:
	case pass >= skinBetween:
		s.between, s.far, s.low, s.high, s.share = true, last, 0, 1, 0.5
	case pass%skinAfresh == skinAfresh-1:
		err = s.afresh()
	default:
		s.learn(&last, &now, before)
	}
	return agreed, err
}

// learn corrects the slope by what the covers take now beyond what was foreseen
// before, along the way from last, in units of each drive.
func (s *skin) learn(last, now *taken, before [drives]float64) {
	var way [drives]float64
	long := 0.0
	for j := range way {
		way[j] = (now.at[j] - last.at[j]) / unitOf[j]
		long += way[j] * way[j]
	}
	if long < 1e-12 {
		return
	}
	for i := range before {
		for j := range way {
			s.slope[i][j] += (now.took[i] - before[i]) * way[j] / (long * unitOf[j])
		}
	}
	s.bound()
}

// narrow halves the share in which the covers stand between their two states:
// it is too large while the balances lead to the near one. It reports whether
// the share is known.
func (s *skin) narrow(now *taken) bool {
	near, far := s.from(&s.near, &now.at), s.from(&s.far, &now.at)
	if missed(now.took, near) < missed(now.took, far) {
		s.near, s.high = *now, s.share
	} else {
		s.far, s.low = *now, s.share
	}
	s.share = 0.5 * (s.low + s.high)
	return s.high-s.low < skinShare
}

// drivesOf returns what drives the covers in the state x.
func (k *climateCase) drivesOf(x *climateNodes) [drives]float64 {
	tc, tf := x.canopy+kelvin, x.floor+kelvin
	f := k.c.longwave
	return [drives]float64{x.air, constant.StefanBoltzmann * (f*tc*tc*tc*tc + (1-f)*tf*tf*tf*tf), x.vapour}
}

// meet solves the house by find, which leaves its state in found, with real
// covers as often as it takes for these and the balances to agree.
func (k *climateCase) meet(find func() error) error {
	s := k.skin
	if s == nil {
		return find()
	}
	cold := false
	for pass := range skinPasses {
		if err := find(); err != nil {
			if cold {
				return err
			}
			// The form leads astray: begin where a house begins.
			cold, s.known = true, false
			x := k.start()
			if err = s.begin(k.drivesOf(&x)); err != nil {
				return err
			}
			continue
		}
		agreed, err := s.follow(k.drivesOf(&k.found), k.c.house.FloorArea, pass)
		if err != nil {
			return err
		}
		if agreed {
			if err = find(); err == nil && k.found.air > realAirRange.Max {
				err = errHot
			}
			return err
		}
	}
	return fmt.Errorf("balance of heat and water: %w: covers and inside do not agree near %g °C", ErrNotConverged, k.found.air)
}

// covered adds the heat radiation of canopy and floor, and what real covers
// take. With f the share of radiation that the crop takes, the covers see one
// black surface that radiates E = sigma (f Tc⁴ + (1 - f) Tf⁴); the heat R that
// they take of it comes from crop and floor by what each sends beyond the
// other:
//
//	canopy: f R + A f (2 - f) sigma (Tc⁴ - Tf⁴)
//	floor:  (1 - f) R - the same
func (k *climateCase) covered(x *climateNodes, a *insideAir) {
	c, s := k.c, k.skin
	f, area := c.longwave, c.house.FloorArea
	tc, tf := x.canopy+kelvin, x.floor+kelvin
	c3, f3 := constant.StefanBoltzmann*tc*tc*tc, constant.StefanBoltzmann*tf*tf*tf
	z := k.drivesOf(x)
	took := s.takes(&z)
	between := area * f * (2 - f) * (c3*tc - f3*tf)
	r, size, j := &k.residual, &k.size, &k.jacobian
	glow := took[glowHeat]
	r[onCanopy], size[onCanopy] = -f*glow-between, f*math.Abs(glow)+math.Abs(between)
	r[onFloor], size[onFloor] = between-(1-f)*glow, (1-f)*math.Abs(glow)+math.Abs(between)
	r[onLining], size[onLining] = a.t-x.lining, 100
	r[onWater] -= took[water]
	size[onWater] += took[water]
	r[onAir] -= took[airHeat]
	size[onAir] += math.Abs(took[airHeat])

	byC, byF := 4*f*c3, 4*(1-f)*f3 // slopes of E
	g := &s.slope
	bC, bF := 4*area*f*(2-f)*c3, 4*area*f*(2-f)*f3
	j[onCanopy] = [5]float64{-f*g[glowHeat][byGlow]*byC - bC, -f*g[glowHeat][byGlow]*byF + bF, 0, -f * g[glowHeat][byVapour], -f * g[glowHeat][byAir]}
	j[onFloor] = [5]float64{bC - (1-f)*g[glowHeat][byGlow]*byC, -bF - (1-f)*g[glowHeat][byGlow]*byF, 0, -(1 - f) * g[glowHeat][byVapour], -(1 - f) * g[glowHeat][byAir]}
	j[onLining] = [5]float64{onLining: -1, onAir: 1}
	w := s.wets(&z)
	j[onWater] = [5]float64{-w[byGlow] * byC, -w[byGlow] * byF, 0, -w[byVapour], -w[byAir]}
	j[onAir] = [5]float64{-g[airHeat][byGlow] * byC, -g[airHeat][byGlow] * byF, 0, -g[airHeat][byVapour], -g[airHeat][byAir]}
}

// prepareSkin solves the covers where the balances will set out from.
func (k *climateCase) prepareSkin(w *Weather, set *Setting) error {
	r := k.c.house.Real
	if err := w.checkReal(r.House); err != nil {
		return err
	}
	if k.skin == nil {
		k.skin = new(skin)
	}
	s := k.skin
	s.outside(r, w, set, k.c.house.FloorArea)
	k.coverSun, k.skyLoss, k.solAir = 0, 0, math.NaN()
	x := k.start()
	if err := s.begin(k.drivesOf(&x)); err != nil {
		return err
	}
	for i := range s.loss.Facets {
		f := &s.loss.Facets[i]
		if s.k.Sun == nil {
			break
		}
		for _, v := range s.k.Sun[f.Facet] {
			k.coverSun += f.Area * v
		}
	}
	k.conductances()
	return nil
}

// coveredState fills in what real covers take in the state x, and returns the
// enthalpy, W, of the water that runs off them: what the vapour brought less
// what it gave to the faces.
func (k *climateCase) coveredState(out *ClimateState, x *climateNodes) float64 {
	s := k.skin
	z := k.drivesOf(x)
	took := s.takes(&z)
	f := k.c.longwave
	tc, tf := x.canopy+kelvin, x.floor+kelvin
	between := constant.StefanBoltzmann * k.c.house.FloorArea * f * (1 - f) * (tc*tc*tc*tc - tf*tf*tf*tf)
	if f > 0 {
		out.CanopyUp = f*took[glowHeat] + between
	}
	out.FloorUp = (1-f)*took[glowHeat] - between
	out.CoverHeat, out.Condensed = took[airHeat], took[water]
	latent, condensed := s.mean(s.near.latent, s.far.latent), s.mean(s.near.took[water], s.far.took[water])
	if condensed > 0 {
		out.CoverLatent = latent * took[water] / condensed
	}
	out.CoverLoss = took[airHeat] + took[glowHeat] + out.CoverLatent
	out.SkyLoss = s.loss.CoverSky
	out.Lining = s.mean(s.near.lining, s.far.lining)
	out.CoversBetween = s.between
	return out.Condensed*vapourEnthalpy(x.air) - out.CoverLatent
}

// mean returns the value of the covers as they stand.
func (s *skin) mean(near, far float64) float64 {
	if s.between {
		return near + s.share*(far-near)
	}
	return near
}
