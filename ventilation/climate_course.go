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

// beside returns the courses on which the next state is looked for first: c, and
// those to which a house turns from it.
func (c course) beside() [4]course {
	heated, aired := course{known: c.known, air: byHeater}, course{known: c.known, air: byVents}
	dried, warmed := heated, heated
	dried.dry = byVents
	warmed.dry, warmed.top = byHeater, true
	loose := course{known: c.known, dry: byVents}
	switch c {
	case heated:
		return [4]course{c, dried, warmed}
	case dried:
		return [4]course{c, loose, heated, warmed}
	case warmed:
		return [4]course{c, dried, heated}
	case aired:
		return [4]course{c, loose, heated}
	case loose:
		return [4]course{c, aired, dried}
	}
	return [4]course{c}
}

// turn glides on the course of the last state, or on one beside it.
func (o *keeping) turn() bool {
	last := o.course
	for _, c := range last.beside() {
		if o.course = c; o.glide() {
			return true
		}
	}
	o.course = last
	return false
}

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
	case c.air == byVents && c.dry == nothing && !c.wide:
		return o.glide() && o.aired()
	case c.vented() || c.full || c.lifted && !o.cooled || c.air != byHeater && c.dry != byVents:
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

// aired finds the state near that of a glide which the vents keep at Vent, and
// reports whether it is what trim would leave.
func (o *keeping) aired() bool {
	k, t := &o.k, &o.t
	x := o.x
	u := o.letting(&x, k.lastFlow, k.opening)
	if !(u > t.Least && u < t.Most) {
		return false
	}
	k.opening = u
	if !o.atVent(x) || o.humidity() > t.Humidity {
		return false
	}
	o.vented, o.short, o.wide, o.dried, o.topped, o.lifted = true, false, false, nothing, false, false
	return true
}

// By how much, fraction, the humidity may lie below its limit: what humidTolerance
// is worth of warmth at 0 °C, and of vents that dry the house in a tenth of their
// way.
const (
	humidWarm   = 8e-8
	humidVented = 1e-5
)

// vented reports whether the vents hold the temperature, or fall short of it.
func (c course) vented() bool { return c.air == byVents || c.wide }
