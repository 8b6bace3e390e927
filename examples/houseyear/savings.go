package main

import "cloche.example/examples/internal/answers"

// saved compares with the house as it is.
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

// ridgeReturn is air drawn from under the ridge, by what it would save in each
// hour; the heater then gives so much less.
func (h *house) ridgeReturn(a *answer) cure {
	w := a.Account.Whole
	c := cure{Code: "ridge_return", Name: "air drawn from the ridge", Cost: &h.plan.Prices.RidgeReturn,
		Cold: w.Cold, Hot: w.Hot, Humid: w.Humid, Wet: w.Dripping, Dark: w.Dark}
	if h.ridge.on {
		c.WhyNot = "the heater draws from the ridge"
		return c
	}
	saved := 0.0
	for i := range a.year.State {
		x := &a.year.State[i]
		less := h.drawn(x, h.weather.Temperature[i])
		saved += less / kWh
		c.Peak = max(c.Peak, h.heater(x)-less)
	}
	if saved < 0 {
		c.WhyNot = "the air under the ridge is mostly cooler than that at the crop"
		return c
	}
	c.saved(h, a, saved, (a.Money.Heat+a.Money.Fan)*saved/max(w.Heater, 1e-9))
	return c
}
