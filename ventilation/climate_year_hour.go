package ventilation

import (
	"errors"
	"time"
)

// hour solves hour i and stores it.
func (y *yearRun) hour(i int) error {
	w, err := y.weather(i)
	if err != nil {
		return err
	}
	s := y.hours.Settings[0]
	if len(y.hours.Settings) > 1 {
		s = y.hours.Settings[i]
	}
	o := &y.keeping
	rule := y.hours.Rule
	if rule != nil {
		o.t = rule.At(HourMoment{Hour: i, Clock: time.Duration(i%24) * time.Hour, Weather: w, Setting: s, Before: y.state})
		if err = outOfRange(&o.t); err != nil {
			return err
		}
	}
	y.burner = burner{given: y.burner.given}
	if !(o.t.CO2 > 0) || rule == nil {
		y.burner.given = 0
	}
	for turn := 1; ; turn++ {
		if err = y.solve(&w, s); err != nil {
			return err
		}
		again, err := y.again(turn)
		if err != nil {
			return err
		}
		if !again {
			break
		}
	}
	if y.hours.Rule != nil && o.short {
		y.dst.Short++
	}
	if y.state.CoversBetween {
		y.dst.Between++
	}
	y.store(i)
	return y.breathe(i)
}

// ruleTurns ends the turns in which a RefiningRule sets targets anew.
const ruleTurns = 20

// again reports whether what follows the state that was solved asks for another.
func (y *yearRun) again(turn int) (bool, error) {
	again := false
	if r, ok := y.hours.Rule.(RefiningRule); ok && turn <= ruleTurns {
		if again = r.Refine(&y.state, &y.keeping.t); again {
			if err := outOfRange(&y.keeping.t); err != nil {
				return false, err
			}
		}
	}
	if h := y.hours.CO2; h.burns() && y.burner.turns < burnerTurns {
		var one CO2Case
		r := y.air(&one)
		again = y.burner.again(y.dose(&r), h.Doser) || again
	}
	return again, nil
}

// solve finds the state of the hour under its targets.
func (y *yearRun) solve(w *Weather, s Setting) error {
	o := &y.keeping
	if y.hours.Rule != nil {
		o.t.on(&s, y.c.house.Air)
	}
	if h := y.hours.CO2; h.burns() {
		s.Heat += y.burner.given * h.Heat
		s.Moisture += y.burner.given * h.Vapour
	}
	o.forced, o.cooled, o.outside = false, false, w.Air
	k := &o.k
	if err := y.c.prepare(k, w, &s); err != nil {
		return err
	}
	floor := y.c.house.FloorArea
	y.lamps = s.Lamps.Radiant
	k.floorConductance, k.ground = floor*y.soil.seen.conductance, y.soil.seen.temperature
	y.structure.join(k, floor)
	k.conductances()
	o.base, o.beamed = k.heat, k.radiant
	o.x = k.guess
	if !k.warm {
		o.x = k.start()
	}
	var glide func() bool
	if y.hours.Rule != nil {
		glide = o.turn
	}
	err := k.meet(y.find, glide)
	if errors.Is(err, ErrNotConverged) && k.skin != nil && y.hours.Rule != nil {
		y.stood = k.opening
		if k.meet(y.stand, nil) == nil {
			o.short, err = true, nil
		}
	}
	if err != nil {
		return err
	}
	k.guess, k.warm = k.found, true
	return nil
}

// stand solves an hour in which covers and rule take turns, each on the other side of a
// jump of the other: the house is kept at its temperatures, with the vents open at least
// as they last stood, and its humidity is let go.
func (y *yearRun) stand() error {
	o := &y.keeping
	o.dried, o.topped, o.lifted, o.wide, o.course.known, o.k.held = nothing, false, false, false, false, false
	if err := o.tempered(max(o.t.Least, y.stood), max(o.t.Most, y.stood)); err != nil {
		return err
	}
	o.k.state(&y.state, &o.x, o.stable)
	y.state.Forced = o.forced
	return nil
}

// find solves the hour with the covers as they are.
func (y *yearRun) find() error {
	o := &y.keeping
	if y.hours.Rule != nil {
		return o.keep(&y.state)
	}
	x, stable, err := o.k.solve()
	if err == nil {
		o.k.state(&y.state, &x, stable)
	}
	return err
}

// store writes the state of hour i, and ends it for the stores.
func (y *yearRun) store(i int) {
	d, s := y.dst, &y.state
	d.Temperature[i], d.HumidityRatio[i], d.RelativeHumidity[i] = s.Temperature, s.HumidityRatio, s.RelativeHumidity
	d.Deficit[i], d.CanopyTemperature[i], d.DryAir[i] = s.Deficit, s.CanopyTemperature, s.DryAir
	d.Opening[i], d.Heat[i] = y.keeping.k.opening, s.Heat+s.Radiant-y.lamps
	d.Transpired[i], d.Condensed[i], d.CoverLoss[i] = s.Transpired, s.Condensed, s.CoverLoss
	d.SoilTemperature[i] = y.soil.step(s.FloorTemperature)
	d.StructureTemperature[i] = y.structure.step(s.Temperature, s.SunStructure/y.c.house.FloorArea)
}
