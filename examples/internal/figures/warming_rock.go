package figures

import (
	"fmt"
	"time"

	"gonum.org/v1/plot/plotter"

	"cloche.example/airheat"
)

func rockBed() Figure {
	return Figure{
		Name: "rock-bed", Title: "Warm air through a bed of stones", Subject: "warming and freezing", Package: "airheat", Example: "Example_rockBed",
		Question: "How much heat do six hours of warm air leave in a bed of stones?",
		Sketch:   "Air enters one face, stones take its heat row by row, and the warm front moves through the bed.",
		Given: []Given{
			{"V", "flow", "m³/s", 0.5, 0.1, 2},
			{"t", "air by day", "°C", 28, 16, 50},
			{"A", "face of the bed", "m²", 4, 1, 20},
			{"L", "depth along the air", "m", 1.5, 0.5, 4},
		},
		Assumes: []string{"Stones at 14 °C to begin with, each of one temperature; nothing is lost to the sides."},
		Change:  []string{"A deeper bed: the air leaves as cool as it can for longer."},
		Code:    "solveRockBed",
		Solve:   solveRockBed,
	}
}

func solveRockBed(v []float64) (r Result, err error) {
	bed := airheat.DefaultRockBed()
	bed.Area, bed.Depth, bed.DesignFlow = v[2], v[3], v[0]
	air := airheat.DryAir(v[1], 101325)
	store, err := airheat.NewRockBedStore(bed, 14, air)
	if err != nil {
		return r, err
	}
	var in float64
	var out plotter.XYs
	for hour := range 12 {
		s, err := store.Step(v[0], v[1], air, time.Hour, false)
		if err != nil {
			return r, err
		}
		if hour < 6 {
			in += s.Heat * 3600
		}
		out = append(out, plotter.XY{X: float64(hour + 1), Y: s.Outlet})
	}
	r.Lines = []string{fmt.Sprintf("%.1f kWh in six hours of %g °C into stones of %.1f kWh/K", in/3.6e6, v[1], store.Capacity()/3.6e6)}
	most := air.Density * air.HeatCapacity * v[0] * (v[1] - 14) * 6 * 3600
	r.Steps = []Step{
		{Says: "Heat that the stones hold for each kelvin.", Formula: "C = A L (1 - e) c/3.6e6", Values: numbers{"A": v[2], "L": v[3], "e": bed.Void, "c": bed.StoneCapacity}, Value: store.Capacity() / 3.6e6, Unit: "kWh/K"},
		{Says: "All that the air could leave in six hours.", Formula: "E_m = 6·3600 ρ c_p V (t - 14)/3.6e6", Values: numbers{"ρ": air.Density, "c_p": air.HeatCapacity, "V": v[0], "t": v[1]}, Value: most / 3.6e6, Unit: "kWh"},
		{Says: "What it left, hour by hour.", Symbol: "E", Source: "balances of air and stone, row by row", Value: in / 3.6e6, Unit: "kWh"},
		{Says: "The share caught.", Formula: "x = E/E_m", Values: numbers{"E": in / 3.6e6, "E_m": most / 3.6e6}, Value: in / most},
	}
	r.Picture, err = chart{title: "Air out of the bed", says: "The air leaves at the stones' temperature until the warm front comes through, then warms to the inlet's.", x: "hour", y: "air out, °C", curves: []curve{{"", out}}}.picture("While the front is inside the bed, the air leaves cool.")
	return r, err
}
