package answers

import (
	"fmt"
	"math"
)

func (r *Result) lightDecision() *Decision {
	l := r.Light
	if l == nil {
		return nil
	}
	asked := l.asked()
	d := &Decision{Code: "light", Ask: "Is there light enough for " + l.Crop + " in the month of the design night?", Verdict: verdict(l.Both >= asked)}
	d.Margin = ratio(l.Both, asked)
	d.Answer = fmt.Sprintf("%s mol/(m² d) with daylight, %s by lamps alone; %s are wanted", number(l.Both, 1), number(l.DLI, 1), number(asked, 1))
	if l.Most != nil && l.Both > *l.Most {
		d.Answer += fmt.Sprintf(", and more than %s brings nothing", number(*l.Most, 1))
	}
	d.Answer += "."
	if asked == 0 {
		d.Verdict, d.Margin = told, nil
	}
	if d.Verdict != fails {
		if l.HoursWanted != nil && asked > 0 && *l.HoursWanted < 0.9*r.House.Plan.Lights.Photoperiod {
			d.Cure = sentence(fmt.Sprintf("%s h of lamps would do", number(math.Ceil(10**l.HoursWanted)/10, 1)))
		}
		return d
	}
	longer := ""
	if l.HoursWanted != nil {
		longer = fmt.Sprintf("lamps for %s h a day, if the crop bears it", number(*l.HoursWanted, 1))
	}
	more := ""
	if l.DLI > 0 {
		more = fmt.Sprintf("%d lamps in place of %d", int(math.Ceil(float64(l.Lamps)*(asked-l.Daylight)/l.DLI)), l.Lamps)
	}
	d.Cure = either(longer, more)
	return d
}

func (r *Result) evenDecision() *Decision {
	l := r.Light
	if l == nil {
		return nil
	}
	want := r.House.Plan.Lights.Evenness
	d := &Decision{Code: "light_even", Ask: "Is the lamps' light even on the trays?", Verdict: verdict(l.Even >= want), Margin: ratio(l.Even, want)}
	d.Answer = fmt.Sprintf("The darkest place has %s of the mean; %s are wanted.", percent(l.Even), percent(want))
	if l.Spot != nil {
		meet := "meet"
		if *l.Spot < l.Along || *l.Spot < l.Across {
			meet = "do not meet"
		}
		d.Answer += fmt.Sprintf(" Spots of %s m %s at spacings of %s and %s m.", number(*l.Spot, 2), meet, number(l.Along, 2), number(l.Across, 2))
	}
	if d.Verdict == fails {
		d.Cure = either("lamps that reach beyond the bed's edge", "hang them higher", "more and weaker ones") + " traylight -design looks for rows that do."
	}
	return d
}

func (r *Result) waterDecision() *Decision {
	w := r.Water
	d := &Decision{Code: "water", Ask: "How much water does a summer's day take?", Verdict: told}
	d.Answer = fmt.Sprintf("%s L a day in month %d (%s L/m²): %s L for the crop, %s drained.", number(w.Given, 0), w.Month, number(w.PerFloor, 1), number(w.Crop, 0), number(w.Drained, 0))
	if w.Tank > 0 {
		d.Margin, d.Verdict = ratio(w.TankDays, 1), verdict(w.TankDays >= 1)
		d.Answer += fmt.Sprintf(" The tank lasts %s days.", number(w.TankDays, 1))
		if d.Verdict == fails {
			d.Cure = sentence("a tank of " + number(math.Ceil(w.Given/100)/10, 1) + " m³ for each day to be bridged")
		}
	}
	return d
}

func (r *Result) powerDecision() *Decision {
	p := r.Power
	d := &Decision{Code: "electricity", Ask: "What electricity does it draw with everything on?", Verdict: told}
	if p.Total == 0 {
		d.Answer = "None: the plan gives no lamps, no fan's curve and no heater.electric_w."
		return d
	}
	wires := "the live wire"
	if p.Phases > 1 {
		wires = fmt.Sprintf("each of %d live wires", p.Phases)
	}
	d.Answer = fmt.Sprintf("%s, %s A in %s.", kilo(p.Total), number(p.Current, 1), wires)
	if p.Fuse > 0 {
		d.Answer += fmt.Sprintf(" The next of the common fuses is %s A; which one, and its kind, is the electrician's to say.", number(p.Fuse, 0))
	} else {
		d.Answer += " That is beyond the common fuses: the electrician and the network's owner say how."
	}
	return d
}

func (r *Result) yearDecision() *Decision {
	y := r.Year
	d := &Decision{Code: "year", Ask: "What does a year cost?", Verdict: told}
	d.Answer = fmt.Sprintf("%s: heating %s (%s %s), lamps %s, fan and controls %s.", r.money(y.Total), number(y.HeatCost, 0), number(y.Amount, 0), y.Unit, number(y.LampCost, 0), number(y.FanCost, 0))
	return d
}

func (r *Result) savingDecision() *Decision {
	if r.Savings == nil {
		return nil
	}
	d := &Decision{Code: "savings", Ask: "What pays back?", Verdict: told}
	for _, s := range r.Savings {
		if d.Answer != "" {
			d.Answer += "; "
		}
		d.Answer += s.Name + ": "
		switch {
		case !s.Possible:
			d.Answer += "not here (" + s.Why + ")"
		case s.Years == nil:
			d.Answer += "it saves nothing"
		case s.Interest == nil:
			d.Answer += fmt.Sprintf("%s years, and never with interest", number(*s.Years, 0))
		default:
			d.Answer += fmt.Sprintf("%s years", number(*s.Interest, 1))
		}
	}
	d.Answer = sentence(d.Answer)
	return d
}
