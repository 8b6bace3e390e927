package main

import (
	"fmt"
	"slices"

	"cloche.example/airheat"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

// comparison is the plan's two layers of air, and what follows over how layered
// they are.
type comparison struct {
	plan    *plan.Plan
	house   *answers.House
	layers  airheat.TwoLayers
	from    string // what the heater's flow is taken from
	planned row
	rows    []row // the planned one among them
}

// row is one degree of layering.
type row struct {
	share float64
	ridge airheat.RidgeReturn
	fans  airheat.FansCompared
}

// compare computes the house on its design night. With stated the flow is that
// of the plan and not that of its fan and ducts.
func compare(p *plan.Plan, stated bool) (comparison, error) {
	c := comparison{plan: p}
	in, out := p.SetPoints.WinterNight.Temperature, p.Site.WinterNight.Temperature
	if !(in > out) {
		return c, fmt.Errorf("set_points.winter_night.temperature_c is %g and site.winter_night.temperature_c is %g: there is nothing to heat", in, out)
	}
	house, err := answers.NewHouse(p)
	if err != nil {
		return c, err
	}
	loss, err := house.Loss(house.Night, float64(p.Site.WinterNight.Month))
	if err != nil {
		return c, err
	}
	var ducts *answers.Ducts
	if !stated {
		if ducts, err = house.Blow(); err != nil {
			return c, err
		}
	}
	night, _, err := house.Nights()
	if err != nil {
		return c, err
	}
	heater, err := house.Heater(loss.Total, night, ducts)
	if err != nil {
		return c, err
	}
	c.from = heater.FlowFrom
	c.house = house
	c.layers = house.Layers(loss, house.Night, heater.Inlet)
	shares := []float64{0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8}
	if !slices.Contains(shares, c.layers.RisingShare) {
		shares = append(shares, c.layers.RisingShare)
		slices.Sort(shares)
	}
	for _, share := range shares {
		r, err := c.one(share)
		if err != nil {
			return c, err
		}
		if share == c.layers.RisingShare {
			c.planned = r
		}
		c.rows = append(c.rows, r)
	}
	return c, nil
}

func (c comparison) one(share float64) (r row, err error) {
	r.share = share
	t, q := c.layers, c.plan.Heater.MixingFans
	t.RisingShare = share
	if r.ridge, err = t.RidgeReturn(); err != nil {
		return r, c.house.LayersFault(t, err)
	}
	if q.Power > r.ridge.Floor.Heat {
		return r, fmt.Errorf("heater.mixing_fans.power_w is %g W: the house loses only %.0f W where %.0f %% of the heat rises", q.Power, r.ridge.Floor.Heat, 100*share)
	}
	r.fans, err = t.Fans(airheat.MixingFans{Flow: q.Flow, Power: q.Power, FilmFactor: q.Film}, q.WorthOfElectricity)
	return r, err
}

// warmer is by how much the ridge is warmer than the crop, K, with the heater's
// air drawn low.
func (c comparison) warmer(r row) float64 { return r.ridge.Floor.Upper - c.layers.Lower }

// warnings are those of the planned layering: a return that costs, and supply
// air that is too hot.
func (c comparison) warnings() (all []string) {
	if c.planned.ridge.Costs {
		all = append(all, "The return from the ridge costs heat: the ridge is the cooler layer.")
	}
	for _, w := range airheat.DefaultSupplyLimits().Warnings(max(c.planned.ridge.Ridge.Supply, c.planned.ridge.Floor.Supply)) {
		all = append(all, w+".")
	}
	return all
}
