package plan_test

import (
	"fmt"

	"cloche.example/examples/internal/plan"
)

// A short plan suffices, the rest takes its defaults. A change, and a single
// figure of a flag, are checked as a whole plan is.
func Example() {
	short, err := plan.Parse([]byte(`{
	  "name": "mine",
	  "house": {"shape": "round arch", "span_m": 8, "length_m": 30},
	  "lights": {}
	}`))
	if err != nil {
		panic(err)
	}
	fmt.Println(short.Name, short.House.RidgeHeight, "m high,", short.Heater.Power, "W,", len(short.Vents), "vents")
	for _, d := range short.Defaults {
		if d.Path == "cover.roof" || d.Path == "house.depth_m" || d.Path == "lights.bed_length_m" {
			fmt.Println("default:", d)
		}
	}
	dug, err := short.Change([]byte(`{"house": {"depth_m": 0.8}, "lights": null}`))
	fmt.Println(dug.House.Depth, dug.Lights == nil, err)
	_, err = short.With(plan.Figure{Path: "lights.height_above_trays_m", Value: 4.2})
	fmt.Println(err)
	_, err = short.Change([]byte(`{"house": {"lenght_m": 20, "span_m": 800}}`))
	fmt.Println(err)
	// Output:
	// mine 4.3 m high, 86400 W, 0 vents
	// default: house.depth_m 0 m
	// default: cover.roof "double film"
	// default: lights.bed_length_m 22.5 m
	// 0.8 true <nil>
	// the lamps would hang above the roof: lights.height_above_trays_m is 4.2 m, lights.trays_above_floor_m is 0.8 m by default, lights.tiers_count is 1 by default, lights.tier_rise_m is 1 m by default, house.ridge_height_m is 4.3 m by default, house.depth_m is 0 m by default
	// house.span_m is 800, allowed 1 to 60 m
	// house.lenght_m is not a key of a plan (its value is 20); perhaps house.length_m
}
