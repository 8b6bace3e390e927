package main

import (
	"context"
	"fmt"
	"math"

	"cloche.example/examples/internal/answers"
)

// cure is one change tried over the same hours.
type cure struct {
	Code   string   `json:"code"`
	Name   string   `json:"name"`
	WhyNot string   `json:"why_not"`       // empty where it was tried
	Cost   *float64 `json:"cost_currency"` // null: not tried, or no price in the plan
	Heat   float64  `json:"heat_saved_kwh"`
	Share  float64  `json:"heat_saved_fraction"`
	Money  float64  `json:"saved_currency"` // of heat, fan, lamps and water together
	Years  *float64 `json:"payback_years"`  // null: never, or no price
	Cold   int      `json:"cold_hours_count"`
	Hot    int      `json:"hot_hours_count"`
	Humid  int      `json:"humid_hours_count"`
	Wet    int      `json:"dripping_hours_count"`
	Dark   int      `json:"dark_days_count"`
	Failed int      `json:"without_state_hours_count"`
	Peak   float64  `json:"peak_w"`
}

// lower is by how much the night is kept cooler for the comparison, K.
const lower = 2

// trials are the changes to be tried whatever the year brings.
func (h *house) trials() []answers.Change {
	night := answers.Change{Code: "cooler_night", Name: fmt.Sprintf("nights kept %d K cooler", lower), Plan: *h.plan}
	night.Plan.SetPoints.Night.Temperature -= lower
	if night.Plan.SetPoints.Night.Temperature < 1 {
		night.WhyNot = "nights are kept near frost"
	}
	return append(h.steady.House.Changes(), night)
}

// tried is what became of a change.
type tried struct {
	account *account
	money   money
	fault   error
}

// try solves the changed house.
func (h *house) try(ctx context.Context, t answers.Change) tried {
	other, err := newHouse(&t.Plan, h.weather)
	if err != nil {
		return tried{fault: err}
	}
	y, err := other.solve(ctx)
	if err != nil {
		return tried{fault: err}
	}
	b := y.account()
	return tried{account: b, money: other.money(&b.Whole)}
}

// cures compares each change with the house as it is. One that cannot be computed
// is told as such.
func (h *house) cures(a *answer, r *trialYears) (cures []cure) {
	for i, t := range r.trials {
		c := cure{Code: t.Code, Name: t.Name, WhyNot: t.WhyNot}
		switch {
		case c.WhyNot != "":
		case r.tried[i].fault != nil:
			c.WhyNot = "it cannot be computed: " + r.tried[i].fault.Error()
		default:
			b := r.tried[i].account
			c.Cold, c.Hot, c.Humid, c.Wet, c.Dark, c.Failed, c.Peak = b.Whole.Cold, b.Whole.Hot, b.Whole.Humid, b.Whole.Dripping, b.Whole.Dark, b.Whole.Failed, b.Peak.Heat
			if !math.IsNaN(t.Cost) {
				c.Cost = &t.Cost
			}
			c.saved(h, a, a.Account.Whole.Heater-b.Whole.Heater, a.Money.Total-r.tried[i].money.Total)
		}
		cures = append(cures, c)
	}
	return append(cures, h.ridgeReturn(a))
}
