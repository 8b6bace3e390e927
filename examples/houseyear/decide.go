package main

import (
	"fmt"
	"math"

	"cloche.example/internal/report"
)

// decision is a line that a builder decides by.
type decision struct {
	Code    string `json:"code"`
	Verdict string `json:"verdict"` // holds, fails, or told where nothing is asked for
	Ask     string `json:"question"`
	Answer  string `json:"answer"`
	Cure    string `json:"cure"` // empty where nothing needs one
}

func verdict(ok bool) string {
	if ok {
		return "holds"
	}
	return "fails"
}

func num(v float64, decimals int) string { return report.Number(v, decimals) }

// hours words a count of hours.
func hours(n int) string {
	if n == 1 {
		return "1 hour"
	}
	return fmt.Sprintf("%d hours", n)
}

// decide gathers the decisions.
func (a *answer) decide() []decision {
	w, p := &a.Account.Whole, &a.filled.Plan
	list := []decision{a.heater()}
	hot := a.hot()
	drip := decision{Code: "drip", Ask: "Do the covers run with water?", Verdict: "told",
		Answer: fmt.Sprintf("%s with more than 1 g/h for each m² of floor; %s L condense.", hours(w.Dripping), num(w.Condensed, 0))}
	humid := decision{Code: "humid", Ask: fmt.Sprintf("Does the humidity stay below %s %%?", num(100*p.SetPoints.Limits.RelativeHumidity, 0)), Verdict: verdict(w.Humid == 0),
		Answer: fmt.Sprintf("%s above it, vents and up to 3 K more heat having done what they can.", hours(w.Humid))}
	humid.Cure = a.cureFor(w.Humid, func(c cure) int { return c.Humid }, "more_vents", "screen", "second_film")
	list = append(list, hot, drip, humid)
	if l := a.year.house.steady.Light; l != nil && l.Least != nil {
		dark := decision{Code: "light", Ask: fmt.Sprintf("Does %s have its %s mol/(m² d)?", l.Crop, num(*l.Least, 0)), Verdict: verdict(w.Dark == 0),
			Answer: fmt.Sprintf("%d of %d days fall short; the lamps add %s mol/m² to %s of daylight on the trays.", w.Dark, w.Days, num(w.LampLight, 0), num(w.DayLight, 0))}
		if w.Dark > 0 {
			dark.Cure = "lamps that burn longer, or more of them"
		}
		list = append(list, dark)
	}
	cost := decision{Code: "cost", Verdict: "told", Ask: "What does the time cost?"}
	m := a.Money
	cost.Answer = fmt.Sprintf("%s %s: %s for %s %s, %s for %s kWh of lamps, %s for %s kWh of heater fan and controls, %s for %s m³ of water", num(m.Total, 0), p.Currency,
		num(m.Heat, 0), num(a.Amount, 0), a.Unit+" of "+a.burns(), num(m.Lamps, 0), num(w.LampPower, 0), num(m.Fan, 0), num(w.FanPower, 0), num(m.Water, 0), num((w.Given+w.Sprayed+w.Pads)/1000, 1))
	if w.VentPower+w.TubePower > 0 {
		cost.Answer += fmt.Sprintf(", %s for %s kWh of the other fans", num(m.Vents, 0), num(w.VentPower+w.TubePower, 0))
	}
	if m.CO2 > 0 {
		cost.Answer += fmt.Sprintf(", %s for %s kg of carbon dioxide", num(m.CO2, 0), num(w.Dosed, 0))
		if w.BurnerFuel > 0 {
			cost.Answer += fmt.Sprintf(" from %s kWh of %s", num(w.BurnerFuel, 0), p.CO2.BurnerFuel)
		}
	}
	cost.Answer += "."
	list = append(list, cost)
	if best := a.best(); best != nil {
		list = append(list, decision{Code: "savings", Verdict: "told", Ask: "What pays back first?", Answer: fmt.Sprintf("%s: %s %s a year, paid back in %s years.", best.Name, num(best.Money, 0), p.Currency, num(*best.Years, 1))})
	}
	return list
}

// burns is what the heater takes.
func (a *answer) burns() string {
	h := a.filled.Heater
	switch {
	case h.Kind != "burner":
		return "electricity for heat"
	case h.Fuel.Name == "own":
		return "fuel"
	}
	return h.Fuel.Name
}

// heater tells whether the set-point was held.
func (a *answer) heater() decision {
	w := &a.Account.Whole
	k, c := a.Account.Peak, a.Account.Coldest
	d := decision{Code: "heater", Ask: "Does the heater hold the set-point in all hours?", Verdict: verdict(w.Cold == 0)}
	power := a.filled.Heater.Power
	if k.Heat == 0 {
		d.Answer = "It is never asked."
		return d
	}
	d.Answer = fmt.Sprintf("%s colder than %s K below it. Of %s kW the peak asks %s kW, %s: %s °C outside, wind %s m/s, sky %s °C, %s kW of it through vents.", hours(w.Cold), num(chilly, 1),
		num(power/1000, 1), num(k.Heat/1000, 1), k.At.Time, num(k.At.Outside, 1), num(k.Wind, 1), num(k.Sky, 0), num(math.Max(0, k.Vent)/1000, 1))
	if k.Rise > 0 {
		d.Answer += fmt.Sprintf(" The set-point rises by %s K in that hour: %s kW go into structure and ground.", num(k.Rise, 0), num(k.Kept/1000, 1))
	}
	if w.Cold > 0 {
		d.Answer += fmt.Sprintf(" The worst hour, %s, has %s °C inside.", c.Time, num(c.Inside, 1))
		d.Cure = a.cureFor(w.Cold, func(c cure) int { return c.Cold }, "second_film", "screen", "digging_in")
		if d.Cure == noneLessens {
			d.Cure = "a heater of more power; " + noneLessens
		}
	}
	return d
}

// noneLessens is the cure where no change helps.
const noneLessens = "none of the changes tried lessens it"

// cureFor words what changes leave of a count of hours.
func (a *answer) cureFor(was int, left func(cure) int, codes ...string) string {
	said := ""
	for _, c := range a.Cures {
		for _, code := range codes {
			if c.Code == code && c.WhyNot == "" && left(c) < was {
				if said != "" {
					said += "; "
				}
				said += fmt.Sprintf("%s: %s left", c.Name, hours(left(c)))
			}
		}
	}
	if said == "" && was > 0 && len(a.Cures) > 0 {
		return noneLessens
	}
	return said
}

// best is the cure that pays back first.
func (a *answer) best() *cure {
	var best *cure
	for i, c := range a.Cures {
		if c.Years != nil && *c.Cost > 0 && (best == nil || *c.Years < *best.Years) {
			best = &a.Cures[i]
		}
	}
	return best
}
