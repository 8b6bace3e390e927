package ventilation

import (
	"math"

	"cloche.example/internal/constant"
)

// drivesOf returns what drives the covers in the state x.
func (k *climateCase) drivesOf(x *climateNodes) [drives]float64 {
	tc, tf := x.canopy+kelvin, x.floor+kelvin
	f := k.c.longwave
	return [drives]float64{x.air, constant.StefanBoltzmann * (f*tc*tc*tc*tc + (1-f)*tf*tf*tf*tf), x.vapour}
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
	took, g := s.takes(&z)
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
	bC, bF := 4*area*f*(2-f)*c3, 4*area*f*(2-f)*f3
	j[onCanopy] = [5]float64{-f*g[glowHeat][byGlow]*byC - bC, -f*g[glowHeat][byGlow]*byF + bF, 0, -f * g[glowHeat][byVapour], -f * g[glowHeat][byAir]}
	j[onFloor] = [5]float64{bC - (1-f)*g[glowHeat][byGlow]*byC, -bF - (1-f)*g[glowHeat][byGlow]*byF, 0, -(1 - f) * g[glowHeat][byVapour], -(1 - f) * g[glowHeat][byAir]}
	j[onLining] = [5]float64{onLining: -1, onAir: 1}
	j[onWater] = [5]float64{-g[water][byGlow] * byC, -g[water][byGlow] * byF, 0, -g[water][byVapour], -g[water][byAir]}
	j[onAir] = [5]float64{-g[airHeat][byGlow] * byC, -g[airHeat][byGlow] * byF, 0, -g[airHeat][byVapour], -g[airHeat][byAir]}
}

// prepareSkin sets what drives the covers from outside; meet solves them.
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
	s.milder = s.covers.Milder(&s.k)
	k.coverSun, k.skyLoss, k.solAir = 0, 0, math.NaN()
	return nil
}

// set solves the covers at the drives z, where the balances set out from.
func (k *climateCase) set(z [drives]float64) error {
	s := k.skin
	if err := s.begin(z); err != nil {
		return err
	}
	k.coverSun = s.covers.Sun
	k.conductances()
	return nil
}

// setOut solves the covers where the balances will set out from: where a glide or
// find leads that takes them as they were, in the weather as it is, where they
// were, or at first where a house begins.
func (k *climateCase) setOut(find func() error, glide func() bool) error {
	s := k.skin
	s.straighten()
	if !s.known {
		x := k.moist()
		return k.set(k.drivesOf(&x))
	}
	z := s.near.at
	if glide != nil {
		was := s.near
		s.near.shift(s.milder)
		if k.conductances(); glide() || find() == nil {
			z = k.drivesOf(&k.found)
		}
		s.near = was
	}
	return k.set(z)
}

// moist returns a state from which covers begin: that of start, in damp air, so
// that of two states of a film the one under water is found.
func (k *climateCase) moist() climateNodes {
	x := k.start()
	es, _ := saturation(x.air)
	x.vapour = damp * es
	return x
}

// damp is the relative humidity of that air, fraction.
const damp = 0.97

// coveredState fills in what real covers take in the state x, and returns the
// enthalpy, W, of the water that runs off them: what the vapour brought less
// what it gave to the faces.
func (k *climateCase) coveredState(out *ClimateState, x *climateNodes) float64 {
	s := k.skin
	z := k.drivesOf(x)
	took, _ := s.takes(&z)
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
	out.SkyLoss = s.mean(s.near.sky, s.far.sky)
	out.CoverTemperature = s.mean(s.near.lining, s.far.lining)
	out.CoversBetween = s.between
	return out.Condensed*vapourEnthalpy(x.air) - out.CoverLatent
}

// leakAt returns the dry air, kg/s, through the leaks at the inside temperature
// air, °C, and vapour pressure, Pa, by the straight form, of which no less than
// leastLeak is taken, and its changes with the two.
func (t *taken) leakAt(air, vapour float64) (leak, byK, byPa float64) {
	leak = t.leak + t.leakByK*(air-t.at[byAir]) + t.leakByPa*(vapour-t.at[byVapour])
	if least := leastLeak * t.leak; leak < least {
		return least, 0, 0
	}
	return leak, t.leakByK, t.leakByPa
}

// leastLeak is the fraction of a leak that far states keep of it.
const leastLeak = 0.2

// mean returns the value of the covers as they stand.
func (s *skin) mean(near, far float64) float64 {
	if s.between {
		return near + s.share*(far-near)
	}
	return near
}
