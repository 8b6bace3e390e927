package ventilation

import (
	"math"

	"cloche.example/psychro"
)

// Unknowns and balances, in this order.
const (
	onCanopy = iota
	onFloor
	onLining
	onWater // vapour pressure, or the drip of saturated air
	onAir
)

// climateNodes is a state of the house: its unknowns.
type climateNodes struct {
	canopy, floor, lining float64 // °C
	vapour                float64 // Pa
	drip                  float64 // kg/s
	air                   float64 // °C
	wet                   bool    // the inside air is saturated and drip is sought in place of vapour
}

// saturation returns the saturation pressure, Pa, and its slope, Pa/K, at t, °C.
func saturation(t float64) (e, slope float64) {
	s := psychro.SurfaceAt(t)
	return psychro.SaturationPressureOver(s, t), psychro.SaturationSlopeOver(s, t)
}

// exchange returns the flow of dry air, kg/s, for the inside air of x.
func (k *climateCase) exchange(x *climateNodes) float64 {
	f := k.flow(x.air, x.vapour)
	m, p := f.solve(k.lastDrive)
	k.lastFlow, k.lastDrive = m, p
	return m
}

// The small step by which the rate of a flow with density is found where its elements
// tell none: a fraction of the difference of densities, and more, kg/m³, where there
// is none, far above the rounding of a density.
const (
	densityStep = 1e-4
	leastStep   = 1e-9
)

// exchangeAndRate is exchange with the rate of the flow with the inside density,
// m³/s, by a small step of that where the elements have none, as with drives of
// zero, and with that with the inside vapour pressure at a given density, kg/(s
// Pa): moister air leaves with less dry air in it.
func (k *climateCase) exchangeAndRate(x *climateNodes) (m, rate, byPa float64) {
	f := k.flow(x.air, x.vapour)
	driven, p := f.driven(k.lastDrive)
	all := f.turbulence()
	m = driven + f.exchange.more(driven, all)
	k.lastFlow, k.lastDrive = m, p
	rate, byPa = f.byDensity(p)
	part := f.exchange.share(driven, all)
	dry := k.pressure - x.vapour
	rate, byPa = rate*part, -byPa*part*driven*f.dryIn*vapourRatio*k.pressure/(dry*dry)
	if !(math.Abs(rate) < math.MaxFloat64) {
		step := densityStep*math.Abs(f.inside.rho-f.outside.rho) + leastStep
		f.at(f.inside.rho + step)
		n, _ := f.solve(p)
		rate, byPa = (n-m)/step, 0
	}
	k.lastRate = rate
	return m, rate, byPa
}

// evaluate fills the five residuals at x, with m the flow of dry air, kg/s, the
// size of the terms of each (of water: of what passes each surface both ways),
// and with derivatives their Jacobian, for which rate and byPa are the derivatives
// of m with the inside density and with the vapour pressure at that density.
//
//	canopy: sun + long-wave = sensible + latent
//	floor:  sun + long-wave = sensible + latent + ground
//	lining: convection + long-wave + condensation = to the sol-air temperature
//	water:  transpiration + soil + mist + moisture = condensation + drip + into the store + m (W - W_in)
//	air:    sensible of canopy and floor + heat + drip = convection to the cover + mist + m c (T - T_in)
//
// The balance of the air is that of its enthalpy less h_g(T) times that of
// water.
func (k *climateCase) evaluate(x *climateNodes, m, rate, byPa float64, derivatives bool) {
	k.residual, k.size, k.jacobian = [5]float64{}, [5]float64{}, [5][5]float64{}
	a := k.airTerms(x)
	if k.skin != nil {
		k.covered(x, &a)
	} else {
		k.longwave(x)
		k.lining(x, &a, derivatives)
	}
	k.canopy(x, &a, derivatives)
	k.floor(x, &a, derivatives)
	k.carried(x, &a, m, rate, byPa, derivatives)
	if derivatives && x.wet {
		k.followSaturation(x)
	}
}

// insideAir is what the balances need of the inside air.
type insideAir struct {
	t, e     float64 // °C, Pa
	tk       float64 // K
	dry      float64 // Pa, partial pressure of dry air
	w        float64 // kg/kg
	byW      float64 // 1/Pa, dw/de
	cp       float64 // J/(kg K), per kg of dry air
	rc       float64 // J/(m³ K), rho cp
	rcT, rcE float64 // its derivatives with temperature and vapour pressure
	lewis    float64 // dimensionless, heat over vapour transfer at a surface
}

func (k *climateCase) airTerms(x *climateNodes) insideAir {
	p := k.pressure
	a := insideAir{t: x.air, e: x.vapour, tk: x.air + kelvin, dry: p - x.vapour, lewis: k.lewis}
	a.w = vapourRatio * a.e / a.dry
	a.byW = vapourRatio * p / (a.dry * a.dry)
	a.cp = heatCapacityAir + vapourHeat*a.w
	a.rc = a.dry / (gasConstantDryAir * a.tk) * a.cp
	a.rcT, a.rcE = -a.rc/a.tk, -a.rc/a.dry+a.rc/a.cp*vapourHeat*a.byW
	return a
}

// vapourGas is the gas constant of vapour, J/(kg K).
const vapourGas = gasConstantDryAir / vapourRatio

// longwave adds the exchange of heat radiation between canopy, floor and lining,
// gray with one effective emissivity.
func (k *climateCase) longwave(x *climateNodes) {
	c := k.c
	q, share := c.radiation, c.longwave
	tc, tf, tv := x.canopy+kelvin, x.floor+kelvin, x.lining+kelvin
	c3, f3, v3 := tc*tc*tc, tf*tf*tf, tv*tv*tv
	up, down, bare := q*share*(c3*tc-v3*tv), q*share*(c3*tc-f3*tf), q*(1-share)*(f3*tf-v3*tv)
	dc, df, dv := 4*q*c3, 4*q*f3, 4*q*v3
	r, size, j := &k.residual, &k.size, &k.jacobian
	r[onCanopy], size[onCanopy] = -up-down, math.Abs(up)+math.Abs(down)
	r[onFloor], size[onFloor] = down-bare, math.Abs(down)+math.Abs(bare)
	r[onLining], size[onLining] = up+bare, math.Abs(up)+math.Abs(bare)
	j[onCanopy][onCanopy], j[onCanopy][onFloor], j[onCanopy][onLining] = -2*share*dc, share*df, share*dv
	j[onFloor][onCanopy], j[onFloor][onFloor], j[onFloor][onLining] = share*dc, -df, (1-share)*dv
	j[onLining][onCanopy], j[onLining][onFloor], j[onLining][onLining] = share*dc, (1-share)*df, -dv
}

// given is what a surface gives to the air, with its derivatives by the
// surface's own temperature, the vapour pressure and the air's temperature.
type given struct {
	heat, heatOwn, heatE, heatT float64 // W
	vap, vapOwn, vapE, vapT     float64 // kg/s; negative is taken
	passes                      float64 // kg/s, vapour that passes both ways
}

// take adds what the surface of temperature own, °C, at node gives to the air to
// the balances of both and of water.
func (k *climateCase) take(node int, own float64, g *given, a *insideAir, derivatives bool) {
	r, size := &k.residual, &k.size
	source, byOwn, byAir := own, vapourHeat-liquidHeat, 0.0 // the vapour's temperature as it passes
	if g.vap < 0 {
		source, byOwn, byAir = a.t, -liquidHeat, vapourHeat
	}
	latent := vapourEnthalpy(source) - liquidHeat*own
	d := own - a.t
	r[node] -= g.heat + latent*g.vap
	size[node] += math.Abs(g.heat) + math.Abs(latent*g.vap)
	r[onWater] += g.vap
	size[onWater] += g.passes
	r[onAir] += g.heat
	size[onAir] += math.Abs(g.heat)
	if g.vap > 0 {
		r[onAir] += vapourHeat * g.vap * d
	}
	if !derivatives {
		return
	}
	j := &k.jacobian
	j[node][node] -= g.heatOwn + latent*g.vapOwn + byOwn*g.vap
	j[node][onWater] -= g.heatE + latent*g.vapE
	j[node][onAir] -= g.heatT + latent*g.vapT + byAir*g.vap
	j[onWater][node] += g.vapOwn
	j[onWater][onWater] += g.vapE
	j[onWater][onAir] += g.vapT
	j[onAir][node] += g.heatOwn
	j[onAir][onWater] += g.heatE
	j[onAir][onAir] += g.heatT
	if g.vap > 0 {
		j[onAir][node] += vapourHeat * (g.vap + g.vapOwn*d)
		j[onAir][onWater] += vapourHeat * g.vapE * d
		j[onAir][onAir] += vapourHeat * (g.vapT*d - g.vap)
	}
}

// canopy adds the leaves: sun, and what they give to the air.
func (k *climateCase) canopy(x *climateNodes, a *insideAir, derivatives bool) {
	c := k.c
	if c.leaf == 0 {
		k.residual[onCanopy], k.size[onCanopy] = a.t-x.canopy, 100
		k.jacobian[onCanopy] = [5]float64{onCanopy: -1, onAir: 1}
		return
	}
	crop := &c.house.Crop
	d := x.canopy - a.t
	mixed := crop.LeafSize*math.Abs(d) + c.forced
	re := c.boundary / math.Sqrt(math.Sqrt(mixed))
	bend := -re / 4 * crop.LeafSize / mixed // d re/d|d|
	if d < 0 {
		bend = -bend
	}
	var g given
	g.heat = c.leaf * a.rc * d / re
	g.heatOwn = c.leaf*a.rc/re - g.heat/re*bend
	g.heatE = g.heat / a.rc * a.rcE
	g.heatT = -g.heatOwn + g.heat/a.rc*a.rcT
	es, slope := saturation(x.canopy)
	gap := es - a.e
	ri, riC, riD := 0.0, 0.0, 0.0
	if gap > 0 {
		ri, riC, riD = k.stomata.resistance(crop.Stomata, x.canopy, gap)
	}
	y := c.leaf / (vapourGas * a.tk * (re + ri))
	g.vap = y * gap
	g.vapOwn = y * (slope - gap/(re+ri)*(bend+riC+riD*slope))
	g.vapE = y * (-1 + gap/(re+ri)*riD)
	g.vapT = y * gap * (-1/a.tk + bend/(re+ri))
	g.passes = y * (es + a.e)
	in := k.canopySun + c.longwave*k.radiant
	k.residual[onCanopy] += in
	k.size[onCanopy] += in
	k.take(onCanopy, x.canopy, &g, a, derivatives)
}

// film returns what a surface of temperature own, °C, and area, m², gives to the
// air through the convection, W/(m² K), of its film. All of it takes dew; the
// share wet of it evaporates, behind the resistance, s/m.
func film(own, area, convection, wet, resistance float64, a *insideAir) given {
	g := given{heatOwn: area * convection, heatT: -area * convection}
	g.heat = g.heatOwn * (own - a.t)
	es, slope := saturation(own)
	gap := es - a.e
	if gap > 0 {
		if wet == 0 {
			return g
		}
		area *= wet
	} else {
		resistance = 0
	}
	ra := a.lewis * a.rc / convection
	y := area / (vapourGas * a.tk * (ra + resistance))
	g.vap, g.vapOwn, g.passes = y*gap, y*slope, y*(es+a.e)
	byFilm := g.vap / (ra + resistance) * ra / a.rc
	g.vapE = -y - byFilm*a.rcE
	g.vapT = -g.vap/a.tk - byFilm*a.rcT
	return g
}

// floor adds the floor: sun, heat into the ground, and what it gives to the air.
func (k *climateCase) floor(x *climateNodes, a *insideAir, derivatives bool) {
	f := &k.c.house.Floor
	into := k.floorConductance * (x.floor - k.ground)
	in := k.floorSun + (1-k.c.longwave)*k.radiant + k.floorHeat
	k.residual[onFloor] += in - into
	k.size[onFloor] += in + math.Abs(into)
	k.jacobian[onFloor][onFloor] -= k.floorConductance
	g := film(x.floor, k.c.house.FloorArea, f.Convection, f.Wet, f.Resistance, a)
	k.take(onFloor, x.floor, &g, a, derivatives)
}

// lining adds the inner surface of the cover: what goes to the sol-air
// temperature, and what it takes from the air. What condenses on it runs off, so
// that it never evaporates.
func (k *climateCase) lining(x *climateNodes, a *insideAir, derivatives bool) {
	c := &k.c.house.Cover
	beyond := k.c.beyond * (x.lining - k.solAir)
	k.residual[onLining] -= beyond
	k.size[onLining] += math.Abs(beyond)
	k.jacobian[onLining][onLining] -= k.c.beyond
	g := film(x.lining, c.Area, c.Convection, 0, 0, a)
	k.take(onLining, x.lining, &g, a, derivatives)
}

// carried adds the air and water carried by the flow, and what is set free.
func (k *climateCase) carried(x *climateNodes, a *insideAir, m, rate, byPa float64, derivatives bool) {
	latent := evaporationHeat + (vapourHeat-liquidHeat)*a.t
	rise, gain := a.t-k.entering, a.w-k.enteringRatio
	k.residual[onWater] += k.moisture + k.mist - x.drip - m*gain
	k.size[onWater] += k.moisture + k.mist + x.drip + m*(a.w+k.enteringRatio)
	k.residual[onAir] += k.heat + k.lampAir + latent*(x.drip-k.mist) - m*k.enteringHeat*rise
	k.size[onAir] += math.Abs(k.heat) + k.lampAir + latent*(x.drip+k.mist) + math.Abs(m*k.enteringHeat*rise)
	toMass := k.mass.conductance*(a.t-k.mass.temperature) - k.massGives + k.store.conductance*(a.t-k.store.temperature)
	k.residual[onAir] -= toMass
	k.size[onAir] += math.Abs(toMass)
	if over := a.e - k.storeVapour; k.condensing > 0 && over > 0 {
		k.residual[onWater] -= k.condensing * over
		k.size[onWater] += k.condensing * over
		k.jacobian[onWater][onWater] -= k.condensing
	}
	leak, leakHeat, leakByK, leakByPa := 0.0, 0.0, 0.0, 0.0
	if k.skin != nil {
		leak, leakByK, leakByPa = k.skin.near.leakAt(a.t, a.e)
		leakHeat = leak * (heatCapacityAir + vapourHeat*k.outsideRatio)
		k.residual[onWater] -= leak * (a.w - k.outsideRatio)
		k.size[onWater] += leak * (a.w + k.outsideRatio)
		k.residual[onAir] -= leakHeat * (a.t - k.outside)
		k.size[onAir] += math.Abs(leakHeat * (a.t - k.outside))
	}
	if !derivatives {
		return
	}
	if k.skin != nil {
		gains, warms := a.w-k.outsideRatio, (heatCapacityAir+vapourHeat*k.outsideRatio)*(a.t-k.outside)
		k.jacobian[onWater][onAir] -= leakByK * gains
		k.jacobian[onWater][onWater] -= leakByPa * gains
		k.jacobian[onAir][onAir] -= leakByK * warms
		k.jacobian[onAir][onWater] -= leakByPa * warms
	}
	rho := moistDensity(a.t, a.e, k.pressure)
	mT, mE := -rate*rho/a.tk, byPa-rate*(1-vapourRatio)/(gasConstantDryAir*a.tk)
	j := &k.jacobian
	j[onWater][onWater] -= (m+leak)*a.byW + mE*gain
	j[onWater][onAir] -= mT * gain
	j[onAir][onWater] -= mE * k.enteringHeat * rise
	j[onAir][onAir] += (vapourHeat-liquidHeat)*(x.drip-k.mist) - (m+mT*rise)*k.enteringHeat - leakHeat - k.mass.conductance - k.store.conductance
}

// followSaturation lets the vapour pressure follow the temperature of saturated
// air, so that the drip takes its column.
func (k *climateCase) followSaturation(x *climateNodes) {
	_, slope := saturation(x.air)
	j := &k.jacobian
	for i := range j {
		j[i][onAir] += slope * j[i][onWater]
		j[i][onWater] = 0
	}
	j[onWater][onWater] = -1
	j[onAir][onWater] = evaporationHeat + (vapourHeat-liquidHeat)*x.air
}
