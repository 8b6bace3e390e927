package figures

import (
	"fmt"
	"time"

	"gonum.org/v1/plot/plotter"

	"cloche.example/airheat"
	"cloche.example/psychro"
)

func soilStore() Figure {
	return Figure{
		Name: "soil-store", Title: "A day's warmth under the beds", Subject: "warming and freezing", Package: "airheat", Example: "Example_soilStore",
		Question: "Tubes under the beds take warm ridge air by day. How much heat comes back at night, and what does the water in the air add?",
		Sketch:   "Eight tubes of 12 m; eight sunny hours one way, ten hours of night the other way.",
		Given: []Given{
			{"V", "flow", "m³/s", 0.4, 0.05, 2},
			{"t_r", "ridge air by day", "°C", 28, 18, 45},
			{"φ", "its relative humidity", "fraction", 0.75, 0.1, 0.95},
			{"t_n", "house air by night", "°C", 9, 0, 14},
		},
		Assumes: []string{"Soil at 14 °C to begin with; each tube has its own square of soil; nothing is lost to the sides or below."},
		Change:  []string{"Dry ridge air: the store takes about half. The rest of the heat of warm humid air is in its water."},
		Code:    "solveSoilStore",
		Solve:   solveSoilStore,
	}
}

func solveSoilStore(v []float64) (r Result, err error) {
	s := airheat.DefaultSoilStore()
	s.Tubes, s.Diameter, s.Length, s.Spacing = 8, 0.16, 12, 0.5
	store, err := airheat.NewSoilStore(s, 14)
	if err != nil {
		return r, err
	}
	capacity := store.Capacity()
	r.Lines = []string{fmt.Sprintf("soil around the tubes %.1f kWh/K, at 14 °C", capacity/3.6e6)}
	ridge, err := psychro.IdealGas.FromRelativeHumidity(v[1], v[2], 101325)
	if err != nil {
		return r, err
	}
	flow := v[0]
	day, night := airheat.DryAir(v[1], 101325), airheat.DryAir(v[3], 101325)
	var curves []curve
	var inDry, inWet, outWet, fan float64
	for _, moist := range []bool{false, true} {
		store, _ = airheat.NewSoilStore(s, 14)
		var in, out, up, water float64
		fan = 0
		var last airheat.StoreStep
		outlet := curve{name: "water not counted"}
		if moist {
			outlet.name = "water counted"
		}
		hour := 0.0
		for range 8 {
			if moist {
				m, err := store.StepMoist(flow, ridge, day, time.Hour, false)
				if err != nil {
					return r, err
				}
				water += m.Water * 3600
				last = m.StoreStep
			} else if last, err = store.Step(flow, v[1], day, time.Hour, false); err != nil {
				return r, err
			}
			in += last.Heat * 3600
			up += last.Up * 3600
			fan += last.FanPower * 3600
			hour++
			outlet.at = append(outlet.at, plotter.XY{X: hour, Y: last.Outlet})
		}
		evening := last.Outlet
		for range 10 {
			if last, err = store.Step(flow, v[3], night, time.Hour, true); err != nil {
				return r, err
			}
			out -= last.Heat * 3600
			up += last.Up * 3600
			fan += last.FanPower * 3600
			hour++
			outlet.at = append(outlet.at, plotter.XY{X: hour, Y: last.Outlet})
		}
		curves = append(curves, outlet)
		if moist {
			inWet, outWet = in, out
		} else {
			inDry = in
		}
		r.Lines = append(r.Lines,
			fmt.Sprintf("water counted: %t", moist),
			fmt.Sprintf("  day    %5.1f kWh in, %4.1f kg of water to drain, air at last out at %4.1f °C", in/3.6e6, water, evening),
			fmt.Sprintf("  night  %5.1f kWh back, air at last out at %4.1f °C", out/3.6e6, last.Outlet),
			fmt.Sprintf("  floor  %5.1f kWh up into the house", up/3.6e6),
			fmt.Sprintf("  fan    %5.2f kWh of electricity", fan/3.6e6))
	}
	r.Steps = []Step{
		{Says: "Heat that the soil holds for each kelvin: around each tube a square of the spacing.", Formula: "C = n L c (s^2 - π D^2/4)/3.6e6", Values: numbers{"n": 8, "L": 12, "c": s.SoilCapacity, "s": 0.5, "D": 0.16}, Value: capacity / 3.6e6, Unit: "kWh/K"},
		{Says: "Heat of the day as the air cools, its water left out.", Symbol: "E_1", Source: "conduction in rings of soil, hour by hour", Value: inDry / 3.6e6, Unit: "kWh"},
		{Says: "With the water that condenses in the tubes.", Symbol: "E_2", Source: "Lewis number 1", Value: inWet / 3.6e6, Unit: "kWh"},
		{Says: "Of that, back in the night.", Formula: "x = E_n/E_2", Values: numbers{"E_n": outWet / 3.6e6, "E_2": inWet / 3.6e6}, Value: outWet / inWet},
	}
	r.Picture, err = chart{title: "Air out of the tubes", says: "Eight hours warm air that cools less and less, then ten hours of night air that is warmed less and less.", x: "hour", y: "air out, °C", curves: curves}.picture("Condensing water fills the store faster than dry air could.")
	return r, err
}
