package figures

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

func frostHours() Figure {
	return Figure{
		Name: "hours-to-frost", Title: "Hours to frost, from the house itself", Subject: "warming and freezing", Package: "airheat", Example: "Example_embedFrost",
		Question: "The heater stops on a clear night. How long does a double-film house stay free of frost?",
		Sketch:   "A gable of 6 by 15 m under double film; what stores heat and what loses it both come from the house.",
		Given: []Given{
			{"t_i", "inside air when the heater stops", "°C", 12, 2, 25},
			{"t_o", "outside air", "°C", -5, -20, -2},
			{"v", "wind", "m/s", 2, 0, 12},
			{"b", "span", "m", 6, 4, 12},
		},
		Assumes: []string{"80 % inside, 85 % outside, a clear sky, the structure and the soil of an ordinary house; no water freezes or condenses."},
		Change:  []string{"A milder night of -2 °C: the house holds out for half as long again."},
		Code:    "solveFrostHours",
		Solve:   solveFrostHours,
	}
}

func solveFrostHours(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge = v[3], 15, 1.5, 3.2 // m
	plan, e1 := covered(form, envelope.DoubleFilm())
	house, e2 := envelope.NewHouse(plan)
	night, e3 := clearNight(98000, v[2], dampAir{v[0], 0.8}, dampAir{v[1], 0.85})
	if err := errors.Join(e1, e2, e3); err != nil {
		return r, err
	}
	nodes, drive, err := house.Nodes(night, 0, envelope.DefaultNodeStores())
	if err != nil {
		return r, err
	}
	transient, err := airheat.NewTransient(nodes)
	if err != nil {
		return r, err
	}
	frost, err := transient.CoolDown(transient, drive, airheat.HeatFailure{SetPoint: v[0], Level: 0, Limit: airheat.Forever})
	if err != nil {
		return r, err
	}
	if frost.Reached {
		r.Lines = []string{fmt.Sprintf("0 °C after %.1f h; the soil is then at %.1f °C", frost.Time.Hours(), frost.State.Soil)}
	} else {
		r.Lines = []string{fmt.Sprintf("never down to 0 °C; the air settles at %.1f °C", frost.Limiting)}
	}
	r.Lines = append(r.Lines, airheat.FrostCaution)
	_, held := transient.HoldingHeat(drive, v[0])
	tau := transient.TimeConstants()
	loss := nodes.Cover + nodes.CoverSky + nodes.Leakage
	r.Steps = []Step{
		{Says: "What the air loses for each kelvin, to air and sky.", Formula: "H = H_c + H_s + H_l", Source: "the house's linear loss", Values: numbers{"H_c": nodes.Cover, "H_s": nodes.CoverSky, "H_l": nodes.Leakage}, Value: loss, Unit: "W/K"},
		{Says: "The air alone would follow within minutes.", Formula: "τ_a = C_a/(H + H_b + H_g)", Values: numbers{"C_a": nodes.AirCapacity, "H": loss, "H_b": nodes.AirStructure, "H_g": nodes.AirSoil}, Value: nodes.AirCapacity / (loss + nodes.AirStructure + nodes.AirSoil), Unit: "s"},
		{Says: "The soil keeps it up; the slowest of the house's three time constants.", Symbol: "τ_3", Source: "eigenvalues of the three balances", Value: tau[2].Hours(), Unit: "h"},
		{Says: "Soil at the start.", Symbol: "t_g", Source: "steady balance", Value: held.Soil, Unit: "°C"},
		{Says: "When the air meets 0 °C, or the end of the search.", Symbol: "h", Source: "exact solution", Value: math.Min(frost.Time.Hours(), 1e4), Unit: "h"},
	}
	span := math.Min(24, math.Max(3, 2*frost.Time.Hours()))
	drive.Heat = 0
	at := func(pick func(airheat.Temperatures) float64) func(float64) float64 {
		return func(h float64) float64 {
			return pick(transient.After(held, drive, time.Duration(h*float64(time.Hour))))
		}
	}
	r.Picture, err = chart{title: "After the heater stops", says: "The air falls steeply and then slowly, the soil slowly; a level line marks frost.", x: "hours", y: "°C", curves: []curve{
		{"air", along(0, span, 120, at(func(t airheat.Temperatures) float64 { return t.Air }))},
		{"soil", along(0, span, 120, at(func(t airheat.Temperatures) float64 { return t.Soil }))},
		{"frost", straight(0, 0, span, 0)},
	}}.picture("A light house has no more than what its soil gives back.")
	return r, err
}
