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

// exchangeRate returns the rate of that flow, m, with the inside density, by a
// small step of that.
func (k *climateCase) exchangeRate(x *climateNodes, m float64) float64 {
	f := k.flow(x.air, x.vapour)
	step := 1e-4*math.Abs(f.inside.rho-f.outside.rho) + 1e-9
	f.at(f.inside.rho + step)
	n, _ := f.solve(k.lastDrive)
	return (n - m) / step
}

// evaluate fills the five residuals at x, with m the flow of dry air, kg/s, the
// size of the terms of each (of water: of what passes each surface both ways),
// and with derivatives their Jacobian, for which rate is the derivative of m
// with the inside density.
//
//	canopy: sun + long-wave = sensible + latent
//	floor:  sun + long-wave = sensible + latent + ground
//	lining: convection + long-wave + condensation = to the sol-air temperature
//	water:  transpiration + soil + mist + moisture = condensation + drip + m (W - W_in)
//	air:    sensible of canopy and floor + heat + drip = convection to the cover + mist + m c (T - T_in)
//
// The balance of the air is that of its enthalpy less h_g(T) times that of
// water.
func (k *climateCase) evaluate(x *climateNodes, m, rate float64, derivatives bool) {
	c := k.c
	h := &c.house
	p, t, e := k.pressure, x.air, x.vapour
	tk := t + kelvin
	dry := p - e
	w := vapourRatio * e / dry
	byW := vapourRatio * p / (dry * dry) // dW/de
	cp := heatCapacityAir + vapourHeat*w
	rc := dry / (gasConstantDryAir * tk) * cp // rho cp, J/(m³ K)
	rcT, rcE := -rc/tk, -rc/dry+rc/cp*vapourHeat*byW
	const rv = gasConstantDryAir / vapourRatio // J/(kg K), gas constant of vapour

	var j [5][5]float64
	var r, size [5]float64

	// Long-wave exchange, gray with one effective emissivity.
	tc, tf, tv := x.canopy+kelvin, x.floor+kelvin, x.lining+kelvin
	q := c.radiation
	c2, f2, v2 := tc*tc, tf*tf, tv*tv
	c4, f4, v4 := c2*c2, f2*f2, v2*v2
	up, down, bare := q*c.longwave*(c4-v4), q*c.longwave*(c4-f4), q*(1-c.longwave)*(f4-v4)
	dc, df, dv := 4*q*c2*tc, 4*q*f2*tf, 4*q*v2*tv

	// Canopy.
	if c.leaf > 0 {
		d := x.canopy - t
		a := h.Crop.LeafSize*math.Abs(d) + c.forced
		re := c.boundary / math.Sqrt(math.Sqrt(a))
		bend := -re / 4 * h.Crop.LeafSize / a // d re/d|d|
		if d < 0 {
			bend = -bend
		}
		heat := c.leaf * rc * d / re
		heatC := c.leaf*rc/re - heat/re*bend
		heatT := -c.leaf*rc/re + heat/re*bend + heat/rc*rcT
		es, slope := saturation(x.canopy)
		gap := es - e
		ri, riC, riD := 0.0, 0.0, 0.0
		if gap > 0 {
			f, fC, fD := h.Crop.Stomata.factor(x.canopy, gap)
			ri, riC, riD = k.stomata*f, k.stomata*fC, k.stomata*fD
		}
		y := c.leaf / (rv * tk * (re + ri))
		vap := y * gap // kg/s
		vapC := y * (slope - gap/(re+ri)*(bend+riC+riD*slope))
		vapE := y * (-1 + gap/(re+ri)*riD)
		vapT := y * gap * (-1/tk + bend/(re+ri))
		latent, latentC, latentT := vapourEnthalpy(x.canopy)-liquidHeat*x.canopy, vapourHeat-liquidHeat, 0.0
		if vap < 0 {
			latent, latentC, latentT = vapourEnthalpy(t)-liquidHeat*x.canopy, -liquidHeat, vapourHeat
		}
		r[onCanopy] = k.canopySun - heat - latent*vap - up - down
		size[onCanopy] = k.canopySun + math.Abs(heat) + math.Abs(latent*vap) + math.Abs(up) + math.Abs(down)
		r[onWater] += vap
		r[onAir] += heat
		size[onWater] += y * (es + e)
		size[onAir] += math.Abs(heat)
		if derivatives {
			j[onCanopy][onCanopy] = -heatC - latent*vapC - latentC*vap - 2*c.longwave*dc
			j[onCanopy][onFloor] = c.longwave * df
			j[onCanopy][onLining] = c.longwave * dv
			j[onCanopy][onWater] = -heat/rc*rcE - latent*vapE
			j[onCanopy][onAir] = -heatT - latent*vapT - latentT*vap
			j[onWater][onCanopy] += vapC
			j[onWater][onWater] += vapE
			j[onWater][onAir] += vapT
			j[onAir][onCanopy] += heatC
			j[onAir][onWater] += heat / rc * rcE
			j[onAir][onAir] += heatT
		}
		if vap > 0 {
			extra := vapourHeat * vap * d
			r[onAir] += extra
			if derivatives {
				j[onAir][onCanopy] += vapourHeat * (vap + vapC*d)
				j[onAir][onWater] += vapourHeat * vapE * d
				j[onAir][onAir] += vapourHeat * (vapT*d - vap)
			}
		}
	} else {
		r[onCanopy], size[onCanopy] = t-x.canopy, 100
		j[onCanopy][onCanopy], j[onCanopy][onAir] = -1, 1
	}

	// Floor.
	{
		d := x.floor - t
		heat := h.FloorArea * h.Floor.Convection * d
		es, slope := saturation(x.floor)
		gap := es - e
		ra, area, rs := lewisFactor*rc/h.Floor.Convection, h.FloorArea, 0.0
		if gap > 0 {
			area *= h.Floor.Wet
			rs = h.Floor.Resistance
		}
		y := area / (rv * tk * (ra + rs))
		vap := y * gap
		vapE := -y - vap/(ra+rs)*ra/rc*rcE
		vapT := -vap/tk - vap/(ra+rs)*ra/rc*rcT
		latent, latentF, latentT := vapourEnthalpy(x.floor)-liquidHeat*x.floor, vapourHeat-liquidHeat, 0.0
		if vap < 0 {
			latent, latentF, latentT = vapourEnthalpy(t)-liquidHeat*x.floor, -liquidHeat, vapourHeat
		}
		ground := k.floorConductance
		r[onFloor] = k.floorSun - heat - latent*vap - ground*(x.floor-k.ground) + down - bare
		size[onFloor] = k.floorSun + math.Abs(heat) + math.Abs(latent*vap) + math.Abs(ground*(x.floor-k.ground)) + math.Abs(down) + math.Abs(bare)
		r[onWater] += vap
		r[onAir] += heat
		size[onWater] += y * (es + e)
		size[onAir] += math.Abs(heat)
		if derivatives {
			hf := h.FloorArea * h.Floor.Convection
			j[onFloor][onCanopy] = c.longwave * dc
			j[onFloor][onFloor] = -hf - latent*y*slope - latentF*vap - ground - df
			j[onFloor][onLining] = (1 - c.longwave) * dv
			j[onFloor][onWater] = -latent * vapE
			j[onFloor][onAir] = hf - latent*vapT - latentT*vap
			j[onWater][onFloor] += y * slope
			j[onWater][onWater] += vapE
			j[onWater][onAir] += vapT
			j[onAir][onFloor] += hf
			j[onAir][onAir] -= hf
		}
		if vap > 0 {
			r[onAir] += vapourHeat * vap * d
			if derivatives {
				j[onAir][onFloor] += vapourHeat * (vap + y*slope*d)
				j[onAir][onWater] += vapourHeat * vapE * d
				j[onAir][onAir] += vapourHeat * (vapT*d - vap)
			}
		}
	}

	// Inner surface of the cover.
	{
		conv := h.Cover.Area * h.Cover.Convection
		heat := conv * (t - x.lining)
		beyond := c.beyond * (x.lining - k.solAir)
		r[onLining] = heat + up + bare - beyond
		size[onLining] = math.Abs(heat) + math.Abs(up) + math.Abs(bare) + math.Abs(beyond)
		j[onLining][onCanopy] = c.longwave * dc
		j[onLining][onFloor] = (1 - c.longwave) * df
		j[onLining][onLining] = -conv - dv - c.beyond
		j[onLining][onAir] = conv
		es, slope := saturation(x.lining)
		if gap := e - es; gap > 0 {
			y := conv * vapourRatio / (lewisFactor * dry * cp)
			vap := y * gap
			vapE := y + vap/dry - vap/cp*vapourHeat*byW
			latent := vapourEnthalpy(t) - liquidHeat*x.lining
			r[onLining] += latent * vap
			size[onLining] += latent * vap
			r[onWater] -= vap
			size[onWater] += y * (es + e)
			if derivatives {
				j[onLining][onLining] -= latent*y*slope + liquidHeat*vap
				j[onLining][onWater] += latent * vapE
				j[onLining][onAir] += vapourHeat * vap
				j[onWater][onLining] += y * slope
				j[onWater][onWater] -= vapE
			}
		}
		r[onAir] -= heat
		size[onAir] += math.Abs(heat)
		j[onAir][onLining] += conv
		j[onAir][onAir] -= conv
	}

	// Air and water carried by the flow, and what is set free.
	latent := evaporationHeat + (vapourHeat-liquidHeat)*t
	rise := t - k.entering
	gain := w - k.enteringRatio
	r[onWater] += k.moisture + k.mist - x.drip - m*gain
	size[onWater] += k.moisture + k.mist + x.drip + m*(w+k.enteringRatio)
	r[onAir] += k.heat + latent*(x.drip-k.mist) - m*k.enteringHeat*rise
	size[onAir] += math.Abs(k.heat) + latent*(x.drip+k.mist) + math.Abs(m*k.enteringHeat*rise)
	if derivatives {
		rho := moistDensity(t, e, p)
		mT, mE := -rate*rho/tk, -rate*(1-vapourRatio)/(gasConstantDryAir*tk)
		j[onWater][onWater] -= m*byW + mE*gain
		j[onWater][onAir] -= mT * gain
		j[onAir][onWater] -= mE * k.enteringHeat * rise
		j[onAir][onAir] += (vapourHeat-liquidHeat)*(x.drip-k.mist) - (m+mT*rise)*k.enteringHeat
		if x.wet {
			// The vapour follows the air; the drip takes its column.
			_, slope := saturation(t)
			for i := range j {
				j[i][onAir] += slope * j[i][onWater]
				j[i][onWater] = 0
			}
			j[onWater][onWater] = -1
			j[onAir][onWater] = latent
		}
	}
	k.residual, k.size, k.jacobian = r, size, j
}
