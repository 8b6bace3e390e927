package main

import (
	"context"
	"fmt"
	"io"
	"sync"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

// cure is one change tried over the same hours.
type cure struct {
	Code   string   `json:"code"`
	Name   string   `json:"name"`
	WhyNot string   `json:"why_not"`       // empty where it was tried
	Cost   *float64 `json:"cost_currency"` // null: no price in the plan
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

// lower is by how much the night is kept cooler for the comparison, K, and
// wider by how much longer the vents are made.
const (
	lower = 2
	wider = 1.5
)

// trials are the changes to be tried.
func (h *house) trials() []answers.Change {
	list := h.steady.House.Changes()
	vents := answers.Change{Code: "more_vents", Name: "vents half as long again", Plan: *h.plan}
	vents.Plan.Vents = append([]plan.Vent(nil), h.plan.Vents...)
	for i := range vents.Plan.Vents {
		vents.Plan.Vents[i].Length *= wider
	}
	if len(h.plan.Vents) == 0 {
		vents.WhyNot = "the plan has no vents"
	}
	night := answers.Change{Code: "cooler_night", Name: fmt.Sprintf("nights kept %d K cooler", lower), Plan: *h.plan}
	night.Plan.SetPoints.Night.Temperature -= lower
	if night.Plan.SetPoints.Night.Temperature < 1 {
		night.WhyNot = "nights are kept near frost"
	}
	return append(list, vents, night)
}

// tried is what became of a change.
type tried struct {
	account *account
	money   money
	fault   error
}

// years solves the house and each of the changed houses over the same hours, two
// at a time, and names on progress what is done.
func (h *house) years(ctx context.Context, trials []answers.Change, progress io.Writer) (*year, []tried, error) {
	var own *year
	var fault error
	list := make([]tried, len(trials))
	next := make(chan int)
	var all sync.WaitGroup
	var say sync.Mutex
	for range 2 {
		all.Go(func() {
			for i := range next {
				name := "the house as it is"
				if i < 0 {
					own, fault = h.solve(ctx)
				} else if name = trials[i].Name; trials[i].WhyNot == "" {
					list[i] = h.try(ctx, trials[i])
				}
				say.Lock()
				fmt.Fprintf(progress, "done: %s\n", name)
				say.Unlock()
			}
		})
	}
	for i := -1; i < len(trials); i++ {
		next <- i
	}
	close(next)
	all.Wait()
	if ctx.Err() != nil {
		return nil, nil, ctx.Err()
	}
	return own, list, fault
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
func (h *house) cures(a *answer, trials []answers.Change, list []tried) (cures []cure) {
	for i, t := range trials {
		c := cure{Code: t.Code, Name: t.Name, WhyNot: t.WhyNot}
		switch {
		case c.WhyNot != "":
		case list[i].fault != nil:
			c.WhyNot = "it cannot be computed: " + list[i].fault.Error()
		default:
			b := list[i].account
			c.Cold, c.Hot, c.Humid, c.Wet, c.Dark, c.Failed, c.Peak = b.Whole.Cold, b.Whole.Hot, b.Whole.Humid, b.Whole.Dripping, b.Whole.Dark, b.Whole.Failed, b.Peak.Heat
			if c.Code != "more_vents" {
				c.Cost = &t.Cost
			}
			c.saved(h, a, a.Account.Whole.Heater-b.Whole.Heater, a.Money.Total-list[i].money.Total)
		}
		cures = append(cures, c)
	}
	return append(cures, h.ridgeReturn(a))
}
