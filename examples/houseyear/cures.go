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

// cures tries each change over the same hours, two at a time.
func (h *house) cures(ctx context.Context, a *answer, progress io.Writer) ([]cure, error) {
	trials := h.trials()
	list := make([]cure, len(trials))
	faults := make([]error, len(trials))
	next := make(chan int)
	var all sync.WaitGroup
	var say sync.Mutex
	for range 2 {
		all.Add(1)
		go func() {
			defer all.Done()
			for i := range next {
				list[i], faults[i] = h.try(ctx, trials[i], a)
				say.Lock()
				fmt.Fprintf(progress, "tried: %s\n", trials[i].Name)
				say.Unlock()
			}
		}()
	}
	for i := range trials {
		next <- i
	}
	close(next)
	all.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return append(list, h.ridge(a)), nil
}

// try solves the changed house. One that cannot be computed is told as such.
func (h *house) try(ctx context.Context, t answers.Change, a *answer) (cure, error) {
	c := cure{Code: t.Code, Name: t.Name, WhyNot: t.WhyNot}
	if c.WhyNot != "" {
		return c, nil
	}
	other, err := newHouse(&t.Plan, h.weather)
	var y *year
	if err == nil {
		y, err = other.solve(ctx)
	}
	if ctx.Err() != nil {
		return c, ctx.Err()
	}
	if err != nil {
		c.WhyNot = "it cannot be computed: " + err.Error()
		return c, nil
	}
	b := y.account()
	c.Cold, c.Hot, c.Humid, c.Wet, c.Dark, c.Peak = b.Whole.Cold, b.Whole.Hot, b.Whole.Humid, b.Whole.Dripping, b.Whole.Dark, b.Peak.Heat
	if c.Code != "more_vents" {
		c.Cost = &t.Cost
	}
	c.saved(h, a, a.Account.Whole.Heater-b.Whole.Heater, a.Money.Total-other.money(&b.Whole).Total)
	return c, nil
}

func (c *cure) saved(h *house, a *answer, heat, money float64) {
	c.Heat, c.Money = heat, money
	if was := a.Account.Whole.Heater; was > 0 {
		c.Share = heat / was
	}
	if c.Cost != nil && money > 0 && h.weather.Whole() {
		if years := answers.PaidBack(*c.Cost, money, h.plan.Prices.Interest); years < 1000 {
			c.Years = &years
		}
	}
}

// ridge is air drawn from under the ridge: the share of heat that it saves in the
// mean of the heated months, since the hours know one air only.
func (h *house) ridge(a *answer) cure {
	r := h.steady.Ridge
	w := a.Account.Whole
	c := cure{Code: "ridge_return", Name: "air drawn from the ridge", Cost: &h.plan.Prices.RidgeReturn,
		Cold: w.Cold, Hot: w.Hot, Humid: w.Humid, Wet: w.Dripping, Dark: w.Dark, Peak: a.Account.Peak.Heat * (1 - r.Saving)}
	switch {
	case h.plan.Heater.TakesAirFrom == "the ridge":
		c.WhyNot = "the heater draws from the ridge"
	case r.Costs:
		c.WhyNot = "the air under the ridge is cooler than that at the crop"
	default:
		c.saved(h, a, w.Heater*r.Saving, (a.Money.Heat+a.Money.Fan)*r.Saving)
	}
	return c
}
