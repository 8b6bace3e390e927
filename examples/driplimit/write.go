package main

import (
	"fmt"
	"io"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/report"
)

// answer says in one line what the held humidity does on a night.
func (r *roof) answer(n night) string {
	switch {
	case n.limit > 1:
		return fmt.Sprintf("At %g °C outside it never drips: its inner face is warmer than the air.", n.outside)
	case n.limit < r.held:
		return fmt.Sprintf("At %g °C outside it drips: from %.0f %% inside, and the plan holds %.0f %%.", n.outside, 100*n.limit, 100*r.held)
	}
	return fmt.Sprintf("At %g °C outside it stays dry up to %.0f %% inside; the plan holds %.0f %%.", n.outside, 100*n.limit, 100*r.held)
}

func (r *roof) write(nights []night) io.WriterTo {
	text := new(report.Report)
	text.Title("When the roof drips: %s, %g °C inside", r.name, r.inside)
	text.Note("%s", r.plan.Note)
	text.Section("Answer")
	for _, n := range nights {
		text.Note("%s", r.answer(n))
	}
	text.Section("Water on the inner face, g/(m² h), by inside relative humidity")
	header := []string{"outside °C", "sky °C", "dry face °C", "begins at"}
	if r.plan.Screen != nil {
		header = append(header, "screen")
	}
	for _, rh := range r.humidity {
		header = append(header, fmt.Sprintf("%g %%", math.Round(1000*rh)/10))
	}
	var rows [][]string
	for _, n := range nights {
		row := []string{report.Number(n.outside, 1), report.Number(n.sky, 1), report.Number(n.face, 1), "never"}
		if n.limit <= 1 {
			row[3] = report.Number(100*n.limit, 1) + " %"
		}
		if r.plan.Screen != nil {
			row = append(row, map[bool]string{true: "drawn", false: "open"}[n.drawn])
		}
		for _, w := range n.water {
			if w == 0 {
				row = append(row, "dry")
			} else {
				row = append(row, report.Number(w, 1))
			}
		}
		rows = append(rows, row)
	}
	text.Table(header, rows)
	text.Section("What it assumes")
	text.Value("wind at the cover", r.plan.Site.WinterNight.Wind, 1, "m/s")
	text.Value("cloud cover", r.plan.Site.WinterNight.Cloud, 2, "fraction")
	text.Value("tilt of the cover", r.tilt, 0, "degree")
	text.Value("its length along the slope", r.slope, 2, "m")
	text.Value("air pressure", fromplan.Pressure(r.plan), 0, "Pa")
	text.Value("relative humidity outside", 100*r.outsideHumidity, 0, "%")
	text.Note("Night, steady, the inside as warm for radiation as its air. The face condenses from the humidity in the column \"begins at\"; the water is that of the wet face, which its latent heat warms. A face below 0 °C takes frost. Where the cover is too flat, or too dirty, for its water to run to the eave, it drips.")
	if r.plan.Screen != nil {
		text.Note("With the screen drawn the face is that of the screen; vapour that passes it can condense on the cover above, which is not counted.")
	}
	if r.outOfRange {
		text.Note("%s", skyGuessed)
	}
	text.Section("Cautions")
	text.Note("Water that drips on lamps, fans and cables can kill: fixtures and wiring for wet rooms, by local code and a licensed electrician.")
	return text
}

const skyGuessed = "Some air outside is drier or damper than the sky's emissivity is known for; that at a dew point of -40 or 30 °C stands for it."

func (r *roof) warnings(nights []night) (all []string) {
	for _, n := range nights {
		if n.limit < r.held {
			all = append(all, r.answer(n))
		}
	}
	if r.outOfRange {
		all = append(all, skyGuessed)
	}
	return all
}

// found is one night in JSON.
type found struct {
	Outside float64  `json:"outside_c"`
	Sky     float64  `json:"sky_c"`
	Drawn   bool     `json:"screen_drawn"`
	Face    float64  `json:"dry_face_c"`
	Limit   *float64 `json:"drips_above_relative_humidity"` // null: it never drips
	Water   []water  `json:"water"`
}

type water struct {
	Humidity float64 `json:"relative_humidity"`
	Rate     float64 `json:"condensate_g_m2_h"`
}

func (r *roof) data(nights []night) any {
	d := struct {
		Cover  string  `json:"cover"`
		Tilt   float64 `json:"tilt_deg"`
		Slope  float64 `json:"slope_m"`
		Nights []found `json:"nights"`
	}{Cover: r.name, Tilt: r.tilt, Slope: r.slope}
	for _, n := range nights {
		f := found{Outside: n.outside, Sky: n.sky, Drawn: n.drawn, Face: n.face}
		if n.limit <= 1 {
			f.Limit = &n.limit
		}
		for i, w := range n.water {
			f.Water = append(f.Water, water{r.humidity[i], w})
		}
		d.Nights = append(d.Nights, f)
	}
	return d
}

// points of the curve.
const points = 60

// draw shows the humidity at which dripping begins over the outside
// temperature, and the humidity that the plan holds.
func (r *roof) draw(format string) (io.WriterTo, error) {
	low, high := r.plan.Site.WinterNight.Temperature, 15.0
	for _, t := range r.outside {
		low, high = min(low, t), max(high, t)
	}
	if high = min(high, r.inside); high <= low {
		high = low + 5
	}
	p := plot.New()
	p.Title.Text = fmt.Sprintf("Humidity at which the roof drips: %s, %g °C inside", r.name, r.inside)
	p.X.Label.Text, p.Y.Label.Text = "outside, °C", "relative humidity inside, %"
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = low, high, 0, 100
	p.Add(plotter.NewGrid())
	var begins plotter.XYs
	for i := range points + 1 {
		n, err := r.solve(low + (high-low)*float64(i)/points)
		if err != nil {
			return nil, err
		}
		begins = append(begins, plotter.XY{X: n.outside, Y: 100 * min(1, n.limit)})
	}
	if err := frame.Line(p, 0, "dripping begins; it is dry below", begins); err != nil {
		return nil, err
	}
	if err := frame.Line(p, 1, "held by the plan", plotter.XYs{{X: low, Y: 100 * r.held}, {X: high, Y: 100 * r.held}}); err != nil {
		return nil, err
	}
	p.Legend.Left, p.Legend.Top = true, true
	return frame.Plots(format, 20*vg.Centimeter, 13*vg.Centimeter, p)
}
