package answers

import "cloche.example/examples/internal/plan"

// Change makes the house another one, as the savings try it.
type Change struct {
	Code, Name string
	Plan       plan.Plan
	Cost       float64 // in the plan's currency
	WhyNot     string  // empty where it can be done
}

// Changes are those of the savings that change the house itself.
func (h *House) Changes() []Change {
	var list []Change
	for _, c := range changes {
		one := Change{Code: c.code, Name: c.name, Plan: *h.Plan}
		one.Cost, one.WhyNot = c.apply(h, &one.Plan)
		list = append(list, one)
	}
	return list
}
