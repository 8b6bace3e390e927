package main

import "cloche.example/ventilation"

// refused notes the hours before i of which no next hour told: the last that has a
// state, and those that were refused.
func (r *rule) refused(i int) {
	for r.noted < i {
		x := new(ventilation.ClimateState)
		if r.noted == r.hour && r.seen != nil {
			x = r.seen
		}
		r.note(r.noted, x)
	}
}

// note keeps the state of an hour that is over.
func (r *rule) note(i int, x *ventilation.ClimateState) {
	y := r.year
	y.State[i], r.noted = *x, i+1
	if u := y.tubes; u != nil && r.fault == nil {
		r.fault = u.end(x)
		if area := r.house.steady.House.Shape.FloorArea; r.house.soil.Deep > 0 && r.next < len(y.Deep) {
			u.owed += u.up[i] / (r.house.soil.Deep * area) // it rises into the floor's soil
			to := max(coldestDeep, min(warmestDeep, y.Deep[r.next]+u.owed))
			u.owed, y.Deep[r.next] = u.owed-(to-y.Deep[r.next]), to
		}
	}
}
