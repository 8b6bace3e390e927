package main

import (
	"fmt"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/report"
)

const joulesPerKWh = 3.6e6

// answer says what the deepest floor and the insulation bring.
func (c comparison) answer() []string {
	half := len(c.rows) / 2
	now, deepest := c.planned(), c.rows[half-1]
	better := c.rows[half]
	for _, r := range c.rows[half:] {
		if r.depth == now.depth {
			better = r
		}
	}
	of := func(r row) string {
		return fmt.Sprintf("%s W on the design night (%s %%) and %s kWh a year (%s %%)", report.Number(now.design.Total-r.design.Total, 0), saved(r.design.Total, now.design.Total), report.Number((now.year-r.year)/joulesPerKWh, 0), saved(r.year, now.year))
	}
	all := []string{fmt.Sprintf("The floor of the plan lies %g m below the ground outside. With %g m² K/W of insulation it saves %s.", now.depth, c.insulation, of(better))}
	if deepest.depth > now.depth {
		all = append(all, fmt.Sprintf("Dug in to %g m without more insulation it saves %s; with it, %s.", deepest.depth, of(deepest), of(c.rows[len(c.rows)-1])))
	}
	return all
}

// write prints the rows.
func write(c comparison) string {
	var r report.Report
	p := c.plan
	r.Title("Digging the house in: %s", p.Name)
	r.Note("%s", p.Note)
	r.Section("Answer")
	for _, s := range c.answer() {
		r.Note("%s", s)
	}
	r.Section("House and site")
	r.Value("floor", c.rows[0].floor, 1, "m²")
	r.Value("eave above the floor", p.House.EaveHeight+p.House.Depth, 2, "m at every depth")
	r.Text("cover", p.Cover.Roof, "roof, "+p.Cover.SideWalls+" and "+p.Cover.EndWalls+" walls")
	r.Value("inside on the design night", p.SetPoints.WinterNight.Temperature, 1, "°C")
	r.Value("outside", p.Site.WinterNight.Temperature, 1, "°C")
	r.Value("sky", c.sky, 1, "°C")
	r.Value("inside over the year", answers.MeanSetPoint(p), 1, "°C, mean of the set-points")
	s := fromplan.Soil(p)
	note := ""
	if s.ConductivityHigh > 0 {
		note = ", from " + report.Number(s.ConductivityLow, 1) + " dry to " + report.Number(s.ConductivityHigh, 1) + " wet"
	}
	r.Text("soil", p.Ground.Soil, "")
	r.Value("its conductivity", s.Conductivity, 1, "W/(m K)"+note)
	half := len(c.rows) / 2
	rows(&r, "With the walls of the plan", c.rows[:half], c.planned())
	rows(&r, "Insulated with "+report.Number(c.insulation, 1)+" m² K/W", c.rows[half:], c.planned())
	r.Note("At 0 m the insulation runs %.1f m down the edge; deeper, it covers the buried wall. Savings are against the row marked plan.", edgeDepth)
	r.Section("How it was computed")
	r.Note("Ground by ISO 13370 with its yearly part: on the design night the mean flow of its month, which is more than the annual mean. The standard's total is good to some per cent; its split into wall and floor is not shown, being a convention.")
	r.Note("Cover, frame, doors and leakage as the plan has them; facets below the dew point drip.")
	r.Note("The year is the sum of the months that are colder than the mean set-point, at their means, with the season's wind and cloud. Sun, lamps and set-back are left out, so the year compares depths and does not foretell a fuel bill.")
	r.Section("Cautions")
	r.Note("Sides of a pit collapse without warning: depth, slope and shoring, retaining walls, footings, drainage, the water table and frost heave are matters of local codes and of a licensed engineer. Heavy gases, carbon monoxide among them, and cold air gather in a sunken floor: an unflued heater does not belong there, and propane is heavier than air.")
	return r.String()
}

func saved(v, of float64) string { return report.Number(100*(1-v/of), 1) }

// rows prints rows beside the reference.
func rows(r *report.Report, title string, of []row, reference row) {
	r.Section("%s", title)
	lines := [][]string{{"m", "m²", "W", "mean W", "then W", "most W", "W", "W", "%", "kWh", "kWh", "%", ""}}
	for _, x := range of {
		n, mark := report.Number, ""
		if x.planned {
			mark = "plan"
		}
		lines = append(lines, []string{
			n(x.depth, 2), n(x.cover, 1), n(x.design.Cover+x.design.Frame, 0), n(x.design.Ground.Steady, 0), n(x.design.Ground.Total, 0), n(x.ground.Total, 0),
			n(x.design.Leakage.Total, 0), n(x.design.Total, 0), saved(x.design.Total, reference.design.Total),
			n(x.year/joulesPerKWh, 0), n(x.intoYear/joulesPerKWh, 0), saved(x.year, reference.year), mark,
		})
	}
	r.Table([]string{"depth", "cover", "covers", "ground,", "ground,", "ground,", "air", "design", "saves", "year", "ground", "saves", ""}, lines)
}

// found is one depth in JSON.
type found struct {
	Depth     float64 `json:"depth_m"`
	Insulated bool    `json:"insulated"`
	Cover     float64 `json:"cover_m2"`
	Loss      float64 `json:"design_night_w"`
	Ground    float64 `json:"ground_design_night_w"`
	Mean      float64 `json:"ground_annual_mean_w"`
	Most      float64 `json:"ground_worst_month_w"`
	Year      float64 `json:"year_kwh"`
	IntoYear  float64 `json:"ground_year_kwh"`
}

func data(c comparison) any {
	of := func(r row) found {
		return found{r.depth, r.insulated, r.cover, r.design.Total, r.design.Ground.Total, r.design.Ground.Steady, r.ground.Total, r.year / joulesPerKWh, r.intoYear / joulesPerKWh}
	}
	d := struct {
		Insulation float64 `json:"insulation_m2_k_w"`
		Plan       found   `json:"as_planned"`
		Rows       []found `json:"rows"`
	}{Insulation: c.insulation, Plan: of(c.planned())}
	for _, r := range c.rows {
		d.Rows = append(d.Rows, of(r))
	}
	return d
}

// draw shows the design night's loss above the heat of the year, over the depth.
func draw(format string, c comparison) (io.WriterTo, error) {
	var plots []*plot.Plot
	half := len(c.rows) / 2
	for _, k := range []struct {
		label string
		of    func(row) float64
	}{{"design night, kW", func(r row) float64 { return r.design.Total / 1000 }}, {"year, MWh", func(r row) float64 { return r.year / joulesPerKWh / 1000 }}} {
		p := plot.New()
		p.X.Label.Text, p.Y.Label.Text = "floor below the ground outside, m", k.label
		p.Add(plotter.NewGrid())
		top := 0.0
		for i, name := range []string{"walls of the plan", fmt.Sprintf("insulated, %g m² K/W", c.insulation)} {
			var xy plotter.XYs
			for _, r := range c.rows[i*half : (i+1)*half] {
				xy = append(xy, plotter.XY{X: r.depth, Y: k.of(r)})
				top = max(top, k.of(r))
			}
			if err := frame.Line(p, i, name, xy); err != nil {
				return nil, err
			}
		}
		here, err := plotter.NewScatter(plotter.XYs{{X: c.planned().depth, Y: k.of(c.planned())}})
		if err != nil {
			return nil, err
		}
		here.Radius = vg.Points(4)
		p.Add(here)
		p.Legend.Add("as planned", here)
		p.Y.Min, p.Y.Max, p.Legend.Left = 0, 1.05*top, true
		plots = append(plots, p)
	}
	plots[0].Title.Text = "Digging the house in: " + c.plan.Name
	return frame.Plots(format, 18*vg.Centimeter, 20*vg.Centimeter, plots...)
}
