package main

import (
	"cmp"
	"fmt"
	"slices"
)

// duration is how long the heater gives at least a power, and what part of its heat a
// heater of that power would give.
type duration struct {
	Power float64 `json:"at_least_w"`
	Hours int     `json:"hours_count"`
	Share float64 `json:"heat_up_to_it_fraction"`
}

// durationSteps are the parts of the heater's power that are told.
const durationSteps = 10

// heats are the hours in which the heater works, W, the greatest first.
func (y *year) heats() (list []float64) {
	for i := range y.State {
		if q := y.heat(i); q > 0 {
			list = append(list, q)
		}
	}
	slices.SortFunc(list, func(a, b float64) int { return cmp.Compare(b, a) })
	return list
}

// durations are those of tenths of the heater's power, none for a heater that never
// works.
func (y *year) durations() (list []duration) {
	heats := y.heats()
	all := 0.0
	for _, q := range heats {
		all += q
	}
	for k := 1; k <= durationSteps && all > 0; k++ {
		d := duration{Power: y.house.plan.Heater.Power * float64(k) / durationSteps}
		for _, q := range heats {
			if q >= d.Power-full {
				d.Hours++
			}
			d.Share += min(q, d.Power) / all
		}
		list = append(list, d)
	}
	return list
}

var durationHeads = []string{"at least kW", "hours", "% of the heat by a heater of that power"}

func (a *answer) durationRows() (rows [][]string) {
	for _, d := range a.Durations {
		rows = append(rows, []string{num(d.Power/1000, 1), fmt.Sprint(d.Hours), num(100*d.Share, 1)})
	}
	return rows
}
