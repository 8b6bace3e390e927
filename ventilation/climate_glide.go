package ventilation

import "math"

// Ends of a glide. It needs no more digits than covers and balances take to agree:
// keep finds the state to the last.
const (
	glideSteps  = 12
	glideClosed = 1e-10 // fraction of the terms of each balance
	glideDamp   = 1e-9  // fraction, of a humidity that is at its limit but for what such balances leave open
)

// open sets the vents as the course has them where they are not sought.
func (o *keeping) open(c course) {
	t, u := &o.t, o.t.Least
	switch {
	case c.wide:
		u = t.Most
	case c.top:
		u = max(t.Least, min(t.Dry, t.Most))
	}
	if u != o.k.opening {
		o.k.opening, o.k.lastDrive = u, math.NaN()
	}
}

// glide finds the state on the course of the last one, with the covers as straight
// as they are, and reports whether it keeps to it. What it finds is where the
// covers are solved next; the state that counts is that of keep.
func (o *keeping) glide() bool {
	k, c, t := &o.k, o.course, &o.t
	if !c.known || o.forced {
		return false
	}
	x := o.x
	q, m := 0.0, k.lastFlow
	o.open(c)
	warm := t.Warm
	if c.lifted {
		warm = min(t.Warm+t.Lift, t.Vent)
	}
	switch {
	case c.full:
		q = t.Heater
	case c.air == byHeater && c.dry != byHeater:
		q, x.air = o.heater, warm
	case c.air == byVents:
		x.air = t.Vent
	}
	flows := c.air == byVents || c.dry == byVents // the flow is sought
	if flows && !(m >= 0) {
		return false
	}
	damp := t.Humidity
	for range glideSteps {
		es, slope := saturation(x.air)
		if c.dry != nothing {
			x.vapour = damp * es
		} else if x.vapour > es {
			return false
		}
		k.heat, k.radiant = o.base+(1-t.Radiant)*q, o.beamed+t.Radiant*q
		rate, byPa := 0.0, 0.0
		if !flows {
			m, rate, byPa = k.exchangeAndRate(&x)
		}
		k.evaluate(&x, m, rate, byPa, true)
		if k.closed(glideClosed) {
			return o.landed(&x, q, m)
		}
		o.steer(&x, c, damp*slope)
		step, _ := k.eliminate()
		dq, dm := 0.0, 0.0
		switch {
		case c.dry == byHeater: // and the temperature in the place of the vapour
			x.air, dq = x.air+step[onWater], step[onAir]
		case c.dry == byVents:
			dm = step[onWater]
			if c.air == byHeater {
				dq = step[onAir]
			} else {
				x.air += step[onAir]
			}
		default:
			x.vapour += step[onWater]
			switch c.air {
			case byHeater:
				dq = step[onAir]
			case byVents:
				dm = step[onAir]
			default:
				x.air += step[onAir]
			}
		}
		x.canopy, x.floor, x.lining = x.canopy+step[onCanopy], x.floor+step[onFloor], x.lining+step[onLining]
		q, m = q+dq, m+dm
		if !(x.vapour > 0 && m >= 0 && temperatureRange.Contains(x.air) && temperatureRange.Contains(x.canopy) && temperatureRange.Contains(x.floor)) {
			return false
		}
	}
	return false
}

// steer puts what the hands do into the columns of the Jacobian in the places of
// what they hold; damp is the slope of the vapour pressure, Pa/K, at the humidity
// that is held.
func (o *keeping) steer(x *climateNodes, c course, damp float64) {
	k := &o.k
	j := &k.jacobian
	f, r := k.c.longwave, o.t.Radiant
	heat := [5]float64{onCanopy: r * f, onFloor: r * (1 - f), onAir: 1 - r}
	w := vapourRatio * x.vapour / (k.pressure - x.vapour)
	flow := [5]float64{onWater: k.enteringRatio - w, onAir: k.enteringHeat * (k.entering - x.air)}
	for i := range j {
		row := &j[i]
		switch {
		case c.dry == byHeater:
			row[onWater], row[onAir] = row[onAir]+damp*row[onWater], heat[i]
		case c.dry == byVents && c.air == byHeater:
			row[onWater], row[onAir] = flow[i], heat[i]
		case c.dry == byVents:
			row[onWater], row[onAir] = flow[i], row[onAir]+damp*row[onWater]
		case c.air == byHeater:
			row[onAir] = heat[i]
		case c.air == byVents:
			row[onAir] = flow[i]
		}
	}
}

// landed takes the state x with the heater at q, W, and the flow m, kg/s, if it is
// one that the course leads to.
func (o *keeping) landed(x *climateNodes, q, m float64) bool {
	k, c, t := &o.k, o.course, &o.t
	if q < 0 || q > t.Heater || c.wide != (x.air > t.Vent+sameState) || q < t.Heater && x.air < t.Warm-sameState {
		return false
	}
	if es, _ := saturation(x.air); c.dry == nothing && !c.lifted && x.vapour > t.Humidity*es*(1+glideDamp) {
		return false
	}
	if c.dry == byVents {
		u := o.letting(x, m, o.drying.opening)
		if !(u > t.Least && u < min(t.Dry, t.Most)) {
			return false
		}
		o.drying.opening = u + humidTolerance/2
	}
	if c.dry == byHeater {
		o.drying.warm = x.air + humidTolerance/2
	}
	o.heater, o.x, k.found, k.lastFlow = q, *x, *x, m
	return true
}

// lettingFound is the last step, fraction of the opening, of letting: a thousandth of
// what a humidity is held to, since the flow must be that of the state.
const lettingFound = humidTolerance / 1000

// letting returns the opening of the vents, near u, that lets the flow m, kg/s, pass
// in the state x, or NaN.
func (o *keeping) letting(x *climateNodes, m, u float64) float64 {
	f := o.k.flow(x.air, x.vapour)
	p := o.k.lastDrive
	if !(u > 0) {
		u = o.t.Dry / 2 // the middle of where it may lie
	}
	last, before := 0.0, math.NaN()
	for range glideSteps {
		f.opening = u
		var driven float64
		driven, p = f.solve(p)
		over := driven - m
		slope := driven / u // leaks and fans apart
		if !math.IsNaN(before) {
			slope = (over - before) / (u - last)
		}
		last, before = u, over
		step := over / slope
		if u -= step; math.Abs(step) <= lettingFound {
			o.k.lastDrive = p
			return u
		}
		if !(u > 0 && u <= 1) {
			break
		}
	}
	return math.NaN()
}
