package answers

import "fmt"

// spare is the share that a heater is sized above the need; common practice, no
// source.
const spare = 0.1

func (r *Result) heaterDecision() *Decision {
	h := r.Heater
	d := &Decision{Code: "heater", Ask: "Is the heater enough on the design night?", Verdict: verdict(h.Margin >= 0), Margin: some(h.Margin)}
	d.Answer = fmt.Sprintf("%s needed, %s there: %s. A wet night (%s inside, %s kg/h evaporating) takes %s, a dry one (nothing evaporates) %s; the %s night counts.",
		kilo(h.Needed), kilo(h.Power), over(h.Margin), percent(r.Wet.Humidity), number(r.Wet.Evaporation, 1), kilo(r.Wet.Total), kilo(r.Dry.Total), h.Worse)
	if h.Margin >= 0 {
		return d
	}
	parts := []string{"a heater of " + kilo(h.Needed*(1+spare)), "hold " + number(r.heldInside(), 0) + " °C on that night"}
	for _, code := range []string{"screen", "second_film"} {
		if s := r.saving(code); s != nil {
			parts = append(parts, s.Name+", which brings the need to "+kilo(s.Needed))
		}
	}
	d.Cure = either(parts...)
	return d
}

func over(margin float64) string {
	if margin < 0 {
		return percent(-margin) + " short"
	}
	return percent(margin) + " to spare"
}

// heldInside is the temperature that the heater would hold, by the loss per
// kelvin of the night, °C.
func (r *Result) heldInside() float64 {
	n, _, _ := worse(r.Wet, r.Dry)
	return r.Air.Inside - (r.Heater.Needed-r.Heater.Power)/n.Coefficient
}

func (r *Result) supplyDecision() *Decision {
	h := r.Heater
	d := &Decision{Code: "supply_air", Ask: "Is the air that leaves the heater too hot?"}
	leaves, where := h.Supply, "at the outlet"
	if r.Ducts != nil && r.Ducts.Tube != nil {
		leaves, where = r.Air.Inside, "from the tube's holes"
		if t := r.Ducts.Tube.AtCrop; t != nil {
			leaves = *t
		}
	}
	hot := ""
	for _, who := range []struct {
		name        string
		at, allowed float64
	}{{"film", h.Supply, h.FilmBears}, {"leaves", leaves, h.PlantsBear}, {"people", h.Supply, h.PeopleBear}} {
		if who.at > who.allowed {
			if hot != "" {
				hot += ", "
			}
			hot += fmt.Sprintf("%s (%s °C, bear %s)", who.name, number(who.at, 0), number(who.allowed, 0))
		}
	}
	d.Verdict = verdict(hot == "")
	d.Margin = ratio(min(h.FilmBears, h.PeopleBear)-r.Air.Inside, h.Rise)
	d.Answer = fmt.Sprintf("%s °C at full heat, %s °C at the leaves %s.", number(h.Supply, 0), number(leaves, 0), where)
	if hot != "" {
		d.Answer += " Too hot for " + hot + "."
		flow := ""
		if h.PlantsFlow != nil {
			flow = fmt.Sprintf("a flow of %s m³/s in place of %s brings it to %s °C", number(*h.PlantsFlow, 2), number(h.Inlet, 2), number(h.PlantsBear, 0))
		}
		d.Cure = either(flow, "keep outlets clear of film, leaves and people")
	}
	return d
}

func (r *Result) dripDecision() *Decision {
	first := firstDrip(r.Wet)
	d := &Decision{Code: "drip", Ask: "Does the cover drip on the design night?"}
	where, most := "", 0.0
	for _, f := range r.Wet.Facets {
		if f.Drips && f.Condensate > most*(1+1e-6) { // of two alike the first, whatever their rounding
			where, most = f.Name, f.Condensate
		}
	}
	drips := where != ""
	d.Verdict = verdict(!drips)
	if first == nil {
		d.Answer = "Its inner face stays above the dew point at any humidity."
		return d
	}
	d.Margin = ratio(*first, r.Wet.Humidity)
	if !drips {
		d.Answer = fmt.Sprintf("Not at %s inside; the first part drips above %s.", percent(r.Wet.Humidity), percent(*first))
		return d
	}
	d.Answer = fmt.Sprintf("At %s inside %s L condense in an hour, most of it at %s; the first part drips above %s.", percent(r.Wet.Humidity), number(r.Wet.Condensate, 1), where, percent(*first))
	parts := []string{"film that spreads drops, with gutters at its lower edge"}
	for _, code := range []string{"second_film", "screen"} {
		if s := r.saving(code); s != nil && s.Drips != nil && *s.Drips > *first+0.02 {
			parts = append(parts, s.Name+", which begins to drip at "+percent(*s.Drips))
		}
	}
	d.Cure = either(append(parts, "no more than "+percent(*first)+" inside")...)
	return d
}

func (r *Result) frostDecision() *Decision {
	f := r.Frost
	d := &Decision{Code: "frost", Ask: "Does the house outlast a power failure on the design night?", Margin: ratio(f.Emergency, f.EmergencyNeed)}
	long := f.Bridged == nil || *f.Bridged >= 60*f.NightLength
	d.Verdict = verdict(long && (f.PowerFails == nil || f.Lasts >= f.NightLength))
	d.Answer = fmt.Sprintf("%s °C is reached %s after the heater stops and %s after the power fails.", number(f.Frost, 0), Minutes(f.HeaterStops, "never"), Minutes(f.PowerFails, "never"))
	d.Answer += fmt.Sprintf(" Houses differ in what they store: count on %s and %s.", Minutes(f.StopsBetween[0], "never"), Minutes(f.FailsBetween[0], "never"))
	if f.Emergency > 0 {
		d.Answer += fmt.Sprintf(" With the plan's %s of emergency heat: %s; its fuel lasts %s h.", kilo(f.Emergency), Minutes(f.Bridged, "never"), number(f.Lasts, 0))
	}
	d.Answer += fmt.Sprintf(" %s hold it off without power, through a night of %s h.", kilo(f.EmergencyNeed), number(f.NightLength, 0))
	if d.Verdict == fails {
		d.Cure = either(fmt.Sprintf("emergency heat of %s that needs no mains, with fuel for %s h", kilo(f.EmergencyNeed*(1+spare)), number(f.NightLength, 0)))
		d.Cure += " And an alarm that needs none either."
	}
	return d
}
