package ventilation

import "math"

// hand is what holds a temperature or a humidity.
type hand uint8

const (
	nothing hand = iota
	byHeater
	byVents
)

// course is how the last state under a rule was kept. While a house stays on it
// the state is one run of Newton's method over the balances together with the
// heater's power or the flow that the vents let pass, see keeping.glide.
type course struct {
	known  bool
	air    hand // what holds the inside temperature
	dry    hand // what holds the humidity
	top    bool // the vents stand as wide as the humidity lets them
	full   bool // the heater gives all it has
	lifted bool // the house is as warm as the humidity lets it be
	wide   bool // the vents stand as wide as they go, and the house is too warm
}

// Ends of a glide. It needs no more digits than covers and balances take to agree:
// keep finds the state to the last.
const (
	glideSteps  = 12
	glideClosed = 1e-10 // fraction of the terms of each balance
	glideDamp   = 1e-9  // fraction, of a humidity that is at its limit but for what such balances leave open
)

// mark notes the course of the state that was kept.
func (o *keeping) mark() {
	c := course{known: !o.x.wet && o.x.vapour > 0 && !o.forced && !o.k.air.fansAlone()}
	t := &o.t
	switch {
	case o.vented && o.dried == nothing && !o.short:
		c.air = byVents
	case o.vented && o.dried == nothing:
		c.known, c.wide = c.known && o.wide, true
	case o.heater > 0 && o.heater < t.Heater:
		c.air = byHeater
	case o.heater >= t.Heater:
		c.full = true
	}
	c.dry, c.top, c.lifted = o.dried, o.topped, o.lifted
	o.course = c
}

// remain finds the state that keep would on the course c of the last one where one
// solution tells that the others lead nowhere else, and reports whether it is that.
//
// Where air that enters is colder than the house, the wider vents stand and the
// less is heated the cooler it is: a house too warm with the vents wide open is
// so at any opening, and one that takes heat to be warm enough is too cold
// without. Where warmth or vents hold the humidity at its limit, it is above that
// with less of them.
func (o *keeping) remain(c course) bool {
	k, t := &o.k, &o.t
	warm := t.Warm
	switch {
	case c.wide && c.dry == nothing && t.Least < t.Most:
		k.heat, k.radiant, o.heater = o.base, o.beamed, 0
		o.open(c)
		k.guess = o.x
		var err error
		if o.x, o.stable, err = k.solve(); err != nil || !(o.x.air > max(t.Vent, k.entering)) {
			return false
		}
		o.vented, o.short, o.wide, o.dried, o.topped, o.lifted = true, true, true, nothing, false, false
		return o.humidity() <= t.Humidity
	case c.vented() || c.full || c.air != byHeater && c.dry != byVents:
		return false
	case c.dry != nothing && !o.glide():
		return false
	case c.dry == byHeater:
		if warm = o.drying.warm; !(warm > t.Warm && warm < min(t.Warm+t.Lift, t.Vent)) {
			return false
		}
	case c.lifted:
		warm = min(t.Warm+t.Lift, t.Vent)
	}
	o.open(c)
	if c.dry == byVents {
		k.opening, k.lastDrive = o.drying.opening, math.NaN()
	}
	k.heat, k.guess = o.base, o.x
	if c.air == byHeater {
		if err := o.held(warm); err != nil || !o.stable || !(o.heater > 0 && o.heater < t.Heater) || !(k.entering < warm) {
			return false
		}
	} else {
		var err error
		k.radiant, o.heater = o.beamed, 0
		if o.x, o.stable, err = k.solve(); err != nil || !(o.x.air >= warm && o.x.air <= t.Vent && k.entering < o.x.air) {
			return false
		}
	}
	over := o.humidity() - t.Humidity
	o.vented, o.short, o.wide, o.dried, o.topped, o.lifted = false, c.lifted, false, c.dry, c.top, c.lifted
	switch {
	case t.Humidity == 1:
		return c.dry == nothing && !c.top
	case c.dry == byHeater:
		return over <= 0 && over >= -humidWarm
	case c.dry == byVents:
		return over <= 0 && over >= -humidVented
	case c.lifted:
		return over > 0
	}
	return over <= 0 && !c.top
}

// By how much, fraction, the humidity may lie below its limit: what humidTolerance
// is worth of warmth at 0 °C, and of vents that dry the house in a tenth of their
// way.
const (
	humidWarm   = 8e-8
	humidVented = 1e-5
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

// vented reports whether the vents hold the temperature, or fall short of it.
func (c course) vented() bool { return c.air == byVents || c.wide }

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
	if flows && !(m > 0) {
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
		u := o.letting(x, m)
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

// letting returns the opening of the vents that lets the flow m, kg/s, pass in the
// state x, or NaN.
func (o *keeping) letting(x *climateNodes, m float64) float64 {
	f := o.k.flow(x.air, x.vapour)
	u, p := o.drying.opening, o.k.lastDrive
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
			return u
		}
		if !(u > 0 && u <= 1) {
			break
		}
	}
	return math.NaN()
}
