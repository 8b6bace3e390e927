package main

import "fmt"

// hot tells how often the house is too hot, and what cures it.
func (a *answer) hot() decision {
	w, limit := &a.Account.Whole, a.filled.SetPoints.Limits.Hot
	d := decision{Code: "hot", Ask: fmt.Sprintf("Does the house stay below %s °C?", num(limit, 0)), Verdict: verdict(w.Hot+w.Failed == 0)}
	x := a.Account.Hottest
	d.Answer = fmt.Sprintf("%s above it; the hottest, %s, has %s °C inside, %s outside and a sun of %s W/m².", hours(w.Hot), x.Time, num(x.Inside, 1), num(x.Outside, 1), num(x.Sun, 0))
	if w.Failed > 0 {
		d.Answer += fmt.Sprintf(" Beside them, %s without a state, as where a house passes 80 °C.", hours(w.Failed))
	}
	if v := a.Vents; v != nil {
		d.Answer += " " + v.words()
	}
	if w.Hot+w.Failed > 0 && len(a.Cures) > 0 {
		d.Cure = a.cureFor(w.Hot+w.Failed, func(c cure) int { return c.Hot + c.Failed }, "vents_by_temperature", "more_vents", "shade", "fog", "pads")
	}
	return d
}

// words tells what vents can do about the hot hours.
func (v *hotVents) words() string {
	if v.All {
		return fmt.Sprintf("Vents cure all of them from %s m² on.", num(v.Factor*v.Had, 1))
	}
	said := "No size of vents cures them all: "
	if v.Outside > 0 {
		said += fmt.Sprintf("in %s the outside air itself is above it, and ", hours(v.Outside))
	}
	said += fmt.Sprintf("%s remain with %s m².", hours(v.Never), num(v.Sizes[len(v.Sizes)-1].Area, 1))
	if v.Factor > 0 {
		said += fmt.Sprintf(" Of the others, %s m² cure %s %%.", num(v.Factor*v.Had, 1), num(100*enough, 0))
	}
	return said
}
