package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/solve"
	"cloche.example/psychro"
)

// keeping is the search for what keeps one house at its targets in one hour.
type keeping struct {
	openings
	t       Targets
	base    float64      // W, heat to the air without the heater
	beamed  float64      // W, heat radiation without the heater
	heater  float64      // W, of the heater, as air and radiation
	x       climateNodes // the state found
	stable  bool
	drying  drying
	short   bool          // the targets could not be kept
	vented  bool          // the vents keep the house at Vent, or as near as they can
	forced  bool          // the fans run, for the whole hour
	outside psychro.State // air, for a pad

	course course // of the last state
	dried  hand   // what holds the humidity
	topped bool   // the vents stand as wide as the humidity lets them
	lifted bool   // the house is as warm as that lets it be
	wide   bool   // the vents stand as wide as they go, and the house is too warm
	cooled bool   // it was let cool from where it was lifted in this hour: a cooler house may be drier, but that is told from afar
}

// sensibleShare is the share of sun and heat that air carries off as warmth, of
// the size that it has with plants: the search for a flow begins there.
const sensibleShare = 0.3

// noFlow is a flow, kg/s per m³ of the house, that is none: a change in ten years.
const noFlow = 1e-9

// Where trim goes: leastLead is by how much the entering air is colder than Vent at
// least, K, or the flow that takes the heat grows without bound; shortest is the
// fraction of a flow that one step of the search leaves at least.
const (
	leastLead = 0.01
	shortest  = 0.1
)

// Tolerances of what a rule holds.
const (
	ventTolerance  = 1e-9  // fraction, of the opening of the vents that holds a temperature
	humidTolerance = 1e-6  // fraction, of the opening of the vents that holds a humidity, and K of the heat for it
	shareTolerance = 1e-10 // fraction of the heater's power, to which the share that radiates is met
)

// keep finds the vents and the heat that keep the house at its targets, and
// writes the state to out.
func (o *keeping) keep(out *ClimateState) error {
	k := &o.k
	for _, c := range o.course.beside() {
		if !c.known || o.forced {
			break
		}
		if o.course = c; o.remain(c) {
			k.state(out, &o.x, o.stable)
			out.Forced = false
			o.mark()
			return nil
		}
	}
	lifted := o.lifted
	o.dried, o.topped, o.lifted, o.wide, o.course.known = nothing, false, false, false, false
	least, most := o.t.Least, o.t.Most
	if k.air.fansAlone() && least == 0 {
		least = most
	}
	err := o.tempered(least, most)
	if o.t.Forced != nil && !o.forced && (errors.Is(err, errHot) || err == nil && o.vented && o.x.air > o.t.Vent+tooWarm) {
		if err = o.force(); err == nil {
			if k.air.fansAlone() && least == 0 {
				least = most
			}
			err = o.tempered(least, most)
		}
	}
	if err != nil {
		return err
	}
	if o.t.Humidity < 1 && o.humidity() > o.t.Humidity {
		if err := o.dry(most); err != nil {
			return err
		}
	}
	o.cooled = o.cooled || lifted && !o.lifted
	k.state(out, &o.x, o.stable)
	out.Forced = o.forced
	o.mark()
	return nil
}

// tooWarm is by how much vents alone leave the house above Vent where the fans
// start, K.
const tooWarm = 1e-3

// force lets the fans run.
func (o *keeping) force() error {
	k := &o.k
	o.forced, k.lastDrive = true, math.NaN()
	return k.through(o.t.Forced, o.outside, o.t.Pad)
}

// tempered finds the state that Warm and Vent ask for. Where the vents stood open
// an hour ago they mostly do now, and a shut house in the sun takes long to find.
func (o *keeping) tempered(least, most float64) error {
	o.short = false
	if o.vented && o.trim(least, most) {
		return nil
	}
	return o.temper(least, most)
}

// temper finds the state that Warm and Vent ask for.
func (o *keeping) temper(least, most float64) error {
	near := o.x
	err := o.warmed(least, o.t.Warm)
	hot := errors.Is(err, errHot)
	if o.vented = hot || err == nil && o.x.air > o.t.Vent; !o.vented {
		return err
	}
	if hot {
		o.x = near
	} else if least == most { // the vents have no choice
		o.short = true
		return nil
	}
	return o.vent(least, most)
}

// humidity is the relative humidity of the state found.
func (o *keeping) humidity() float64 {
	es, _ := saturation(o.x.air)
	return o.x.vapour / es
}

// warmed finds the state with the vents at u, no colder than warm as far as the
// heater's power goes.
func (o *keeping) warmed(u, warm float64) (err error) {
	k := &o.k
	if k.opening != u {
		k.opening, k.lastDrive = u, math.NaN()
	}
	if u == 0 && k.air.fansAlone() {
		return errShut
	}
	k.heat, k.radiant, o.heater = o.base, o.beamed, 0
	k.guess = o.x
	if o.x, o.stable, err = k.solve(); err != nil || o.x.air >= warm {
		return err
	}
	if err = o.held(warm); err != nil && o.t.Radiant > 0 {
		return o.radiate(warm)
	}
	if err != nil {
		return err
	}
	if o.heater > o.t.Heater {
		o.heater, o.short = o.t.Heater, true
		k.heat, k.radiant = o.base+(1-o.t.Radiant)*o.heater, o.beamed+o.t.Radiant*o.heater
		o.x, o.stable, err = k.solve()
	}
	return err
}

// held finds the state at the inside temperature t, °C, and the heater's power
// for it: what it gives to the air is found for what it radiates, until the two
// have their shares.
func (o *keeping) held(t float64) (err error) {
	k := &o.k
	share := o.t.Radiant
	miss := func(q float64) (float64, error) {
		k.radiant = o.beamed + share*q
		if o.x, o.stable, err = k.hold(t); err != nil {
			return math.NaN(), err
		}
		return k.heat - o.base - (1-share)*q, nil
	}
	q := o.heater
	f, err := miss(q)
	if share == 0 {
		o.heater = k.heat - o.base
		return err
	}
	next := q + f
	for range 30 {
		if err != nil {
			return err
		}
		if math.Abs(f) <= shareTolerance*(math.Abs(q)+k.c.house.FloorArea) {
			o.heater = q
			return nil
		}
		last, before := q, f
		q = next
		if f, err = miss(q); f != before {
			next = q - f*(q-last)/(f-before)
		}
	}
	return fmt.Errorf("balance of heat and water: %w: a heater's power whose share in the air leaves %g W", ErrNotConverged, f)
}

// vent finds the opening of the vents between least and most that keeps the
// house at Vent, or the coolest.
func (o *keeping) vent(least, most float64) error {
	k := &o.k
	if o.trim(least, most) {
		return nil
	}
	k.opening, k.lastDrive, k.guess = most, math.NaN(), o.x
	var err error
	if o.x, o.stable, err = k.solve(); err == nil && o.x.air > max(o.t.Vent, k.entering) {
		o.short, o.wide = true, true // wide open is the best there is
		return nil
	}
	p, err := o.coolest(o.t.Vent, least, most)
	if err != nil {
		return err
	}
	o.x, k.opening = k.found, p.Opening
	o.stable, o.short = p.State.Stable, !p.Met
	return nil
}

// trim finds the opening that leaves the house at Vent by the flow that this
// takes: at that temperature the heat left over falls with the flow. It reports
// false where that does not end at a state, the strongest at its opening.
func (o *keeping) trim(least, most float64) bool {
	k := &o.k
	k.heat, k.radiant, o.heater = o.base, o.beamed, 0
	limit, last := o.t.Vent, k.lastFlow
	if limit <= k.entering+leastLead {
		return false
	}
	// The flow that surely takes the heat, and the last one: with drops on covers
	// no other may leave balances that close.
	m := max(last, sensibleShare*(k.canopySun+k.floorSun+max(0, k.heat))/(k.enteringHeat*(limit-k.entering)))
	return o.trimFrom(m, least, most) || last > 0 && last < m && o.trimFrom(last, least, most)
}

// trimFrom is trim from the flow m, kg/s.
func (o *keeping) trimFrom(m, least, most float64) bool {
	k, limit := &o.k, o.t.Vent
	x := o.x
	k.held, k.target = true, limit
	x.air = limit
	defer func() { k.held = false }()
	// The flow that takes the heat, kg/s, by Newton's method on its slope.
	var over, slope, last, before float64
	found := false
	for range 30 {
		k.lastFlow = m
		if es, _ := saturation(x.air); x.wet || x.vapour > es {
			x.vapour, x.wet, x.drip = nearlySaturated*es, false, 0
		}
		if _, ok := k.newton(&x, false); !ok {
			return false
		}
		over = k.residual[onAir]
		if found = math.Abs(over) <= climatePromise*k.size[onAir]; found {
			break
		}
		slope = -k.enteringHeat * (limit - k.entering)
		if last > 0 && m != last {
			slope = (over - before) / (m - last)
		}
		if !(slope < 0) {
			return false
		}
		if over < 0 && m < noFlow*k.c.house.Volume {
			return false // colder than Vent without any flow
		}
		last, before = m, over
		m = max(shortest*m, m-over/slope)
	}
	if !found {
		return false
	}
	// The opening that drives it.
	drive := func(u float64) float64 {
		f := k.flow(x.air, x.vapour)
		f.opening = u
		driven, p := f.solve(k.lastDrive)
		k.lastDrive = p
		return driven - m
	}
	if !(drive(least) < 0 && drive(most) > 0) {
		return false
	}
	u, err := solve.Root(drive, least, most, ventTolerance)
	if err != nil {
		return false
	}
	k.held, k.opening = false, u
	return o.atVent(x)
}

// atVent closes the balances from x with the vents as they are, and reports whether
// that is a stable state at Vent with no stronger flow beside it.
func (o *keeping) atVent(x climateNodes) bool {
	stable, ok := o.k.newton(&x, true)
	if !ok || !stable || math.Abs(x.air-o.t.Vent) > sameState {
		return false
	}
	if y, _, err := o.k.stronger(x); err != nil || y.air != x.air {
		return false
	}
	o.x, o.stable = x, stable
	return true
}
