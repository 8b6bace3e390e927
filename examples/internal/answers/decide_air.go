package answers

import "fmt"

func (r *Result) ventDecision(code, ask string, n *Noon, needed *float64) *Decision {
	s := r.Summer
	d := &Decision{Code: code, Ask: ask}
	if n == nil {
		d.Verdict = fails
		d.Answer = fmt.Sprintf("%s m² of vents let it grow hotter than is computed for.", number(s.Vents, 1))
	} else {
		d.Verdict = verdict(n.Rise <= s.Allowed)
		d.Margin = some(s.Allowed/n.Rise - 1)
		d.Answer = fmt.Sprintf("%s °C inside, %s K over outside; %s K are allowed. %s m² of vents pass %s m³/s.", number(n.Inside, 1), number(n.Rise, 1), number(s.Allowed, 1), number(s.Vents, 1), number(n.Flow, 2))
	}
	if code == "vents_calm" && s.SidesAlone != nil {
		d.Answer += fmt.Sprintf(" The side vents alone: %s K.", number(s.SidesAlone.Rise, 1))
	}
	fog := s.Fog
	if code == "vents_wind" {
		fog = s.FogWindy
	}
	wet := ""
	if fog != nil {
		d.Answer += fmt.Sprintf(" With the plan's fog: %s K.", number(fog.Noon.Rise, 1))
		if fog.Noon.Rise <= s.Allowed {
			wet = "the plan's fog"
		}
	}
	if q := s.Pads; q != nil && code == "vents_calm" {
		d.Answer += fmt.Sprintf(" With the plan's pads and fans, vents shut: %s K.", number(q.Rise, 1))
		if q.Rise <= s.Allowed {
			wet = "the plan's pads and fans, with the vents shut"
		}
	}
	if d.Verdict == holds {
		return d
	}
	switch {
	case wet != "":
		d.Cure = sentence(wet)
	case needed != nil:
		d.Cure = either(fmt.Sprintf("%s m² of vents of the same kinds", number(*needed, 1)), "shade", "fans")
	case s.RidgeAlone == nil && s.SidesAlone == nil:
		d.Cure = either("vents at another height too, as a ridge vent beside side vents", "shade", "fans")
	default:
		d.Cure = either("shade", "fans", "evaporating water")
	}
	return d
}

func (r *Result) ductDecision() *Decision {
	c := r.Ducts
	if c == nil {
		return nil
	}
	d := &Decision{Code: "ducts", Ask: "Do fan and ducts move the air that the heater is stated for?", Margin: ratio(c.Flow, c.Stated)}
	d.Verdict = verdict(c.Flow >= 0.9*c.Stated && !c.Rising)
	d.Answer = fmt.Sprintf("%s m³/s at %s Pa; stated are %s.", number(c.Flow, 2), number(c.Pressure, 0), number(c.Stated, 2))
	if c.Rising {
		d.Answer += " The fan works where its pressure rises with the flow: it may hunt."
	}
	if d.Verdict == fails {
		worst, loss := "", 0.0
		for _, b := range c.Branches {
			if b.Loss > loss {
				worst, loss = b.Name, b.Loss
			}
		}
		d.Cure = either("a wider duct in place of \""+worst+"\", which takes "+number(loss, 0)+" Pa", "a stronger fan")
	}
	return d
}

func (r *Result) tubeDecision() *Decision {
	if r.Ducts == nil || r.Ducts.Tube == nil {
		return nil
	}
	t := r.Ducts.Tube
	d := &Decision{Code: "tube", Ask: "Does the perforated tube spread the air evenly?", Verdict: verdict(t.Evenness >= t.Wanted-0.005), Margin: ratio(t.Evenness, t.Wanted)}
	d.Answer = fmt.Sprintf("The weakest row gives %s of the strongest through holes of %s mm; %s are wanted. The air cools from %s to %s °C on its way.",
		percent(t.Evenness), number(1000*t.Hole, 1), percent(t.Wanted), number(t.First, 0), number(t.Last, 0))
	if d.Verdict == fails {
		d.Cure = either("smaller holes", "a wider tube")
	}
	return d
}
