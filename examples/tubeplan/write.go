package main

import (
	"fmt"
	"io"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/airheat"
	"cloche.example/examples/internal/frame"
	"cloche.example/internal/report"
)

// answer says what the tube does.
func (t tube) answer() []string {
	b, f := t.blown, t.blown.TubeFlow
	all := []string{}
	if t.agreed {
		all = append(all, fmt.Sprintf("Fan, ducts and tube agree at %s m³/s through the fan and %s m³/s of air at %s °C in the ducts, against %s Pa; the plan states %s m³/s of warm air for a tube.",
			report.Number(b.Inlet, 3), report.Number(b.Outlet, 3), report.Number(b.Supply, 1), report.Number(b.Pressure, 0), report.Number(t.wanted, 3)))
	} else {
		all = append(all, fmt.Sprintf("The plan gives no fan with ducts that end in the tube: it is solved alone, at %s m³/s of air at %s °C, and its fan must give %s Pa.", report.Number(b.Outlet, 3), report.Number(b.Supply, 1), report.Number(f.FanTotal, 0)))
	}
	word := "as even as wanted"
	if !t.even() {
		word = "less even than wanted"
	}
	return append(all, fmt.Sprintf("Holes of %s mm: the weakest row gives %s of the strongest, %s (%s).", report.Number(1000*b.Tube.HoleDiameter, 1), report.Number(f.Evenness, 3), word, report.Number(t.plan.PerforatedTube.Evenness, 3)))
}

func (t tube) write() *report.Report {
	r := new(report.Report)
	b, tb, f := t.blown, t.blown.Tube, t.blown.TubeFlow
	r.Title("Perforated tube: %.2f m wide, %.1f m long, %d rows of %d holes: %s", tb.Diameter, tb.Length(), tb.Positions, tb.HolesPerRow, t.plan.Name)
	r.Note("%s", t.plan.Note)
	r.Section("Answer")
	if t.assumed {
		r.Note("The plan has no tube; one of usual measures stands for it.")
	}
	for _, s := range t.answer() {
		r.Note("%s", s)
	}
	for _, w := range t.warnings() {
		r.Note("Warning: %s", w)
	}
	if t.agreed {
		r.Section("Fan and ducts")
		r.Value("flow through the fan, house air", b.Inlet, 3, "m³/s")
		r.Value("flow in the ducts, warm air", b.Outlet, 3, "m³/s")
		r.Value("supply air", b.Supply, 1, "°C")
		r.Value("pressure of the fan", b.Pressure, 1, "Pa")
		r.Value("operating points", float64(b.Crossing), 0, "")
		r.Value("tubes", float64(b.Tubes), 0, "")
		r.Value("electric power", b.Electric, 0, "W")
		r.Value("specific fan power", b.Electric/b.Inlet, 0, "W/(m³/s)")
		r.Value("of it into the air", b.Warming, 0, "W")
	}
	r.Section("Holes")
	r.Value("hole diameter", 1000*tb.HoleDiameter, 1, "mm")
	r.Value("all holes over the tube's section", f.AreaRatio, 3, "ratio")
	r.Value("weakest row over strongest, flow", f.Evenness, 4, "ratio")
	r.Value("weakest row over strongest, heat", f.HeatEven, 4, "ratio")
	r.Value("first row over last", f.FanToEnd, 4, "ratio")
	r.Value("the same without friction, cos(Cd a/A)", airheat.FrictionlessRatio(tb.Discharge, f.AreaRatio), 4, "ratio")
	r.Section("Pressure and heat of one tube")
	r.Value("static pressure at the closed end", f.EndPressure, 1, "Pa")
	r.Value("static pressure at its beginning", f.FanPressure, 1, "Pa")
	r.Value("total pressure at its beginning", f.FanTotal, 1, "Pa")
	r.Value("heat out of the holes", f.HolesHeat/1000, 2, "kW above house air")
	r.Value("heat through the wall", f.WallHeat/1000, 2, "kW")
	r.Value("rows that draw house air in", float64(f.Reversed), 0, "")
	t.along(r)
	t.jets(r)
	r.Section("Notes")
	r.Note("Flow that is even is not heat that is even: the air cools on its way, most in the last, slow metres. Air has the density of the site's pressure. Holes without a diameter are sized for the flow that the plan states.")
	r.Section("Cautions")
	r.Note("%s", airheat.SupplyCaution)
	r.Note("A fan draws in hair, sleeves and fingers and starts without warning: guard it on both sides, and switch it off at an isolator before reaching in. Film near a hot outlet burns. Wiring in wet rooms is left to a licensed electrician, by local codes.")
	return r
}

func (t tube) along(r *report.Report) {
	r.Section("Along the tube")
	var rows [][]string
	n := len(t.blown.TubeFlow.Positions)
	for i := range min(n, 9) {
		k := i
		if n > 9 {
			k = i * (n - 1) / 8
		}
		p := t.blown.TubeFlow.Positions[k]
		rows = append(rows, []string{
			fmt.Sprint(k + 1), report.Number(p.Distance, 2), report.Number(p.Pressure, 1), report.Number(p.Velocity, 2),
			report.Number(1000*p.Flow, 2), report.Number(p.JetSpeed, 2), report.Number(p.Temperature, 1), report.Number(p.Heat, 0),
		})
	}
	r.Table([]string{"row", "m", "Pa", "m/s tube", "L/s row", "m/s jet", "°C", "W row"}, rows)
}

func (t tube) jets(r *report.Report) {
	j, drop := t.jet(), t.plan.PerforatedTube.AboveCrop
	r.Section("Jet of one hole, level")
	r.Value("throw to 0.5 m/s", j.Throw(math.Min(0.5, 0.999*j.Speed)), 2, "m")
	r.Value("temperature above the house at 1 m", j.AxisExcess(1), 2, "K")
	h := j.Height(1)
	r.Text("rise of its axis at 1 m, published band", report.Number(h.Least, 3)+" to "+report.Number(h.Most, 3), "m")
	j.Angle = -45
	near, _ := j.Meets(-drop, 10*drop)
	if math.IsNaN(near.Distance) {
		r.Text("blown down at 45 degrees, it reaches the crop", "no", "")
		return
	}
	r.Value("blown down at 45 degrees, at the crop", near.Speed, 2, "m/s")
	r.Value("above house temperature there", near.Excess, 2, "K")
}

// found is a row of holes in JSON.
type found struct {
	Distance    float64 `json:"distance_m"`
	Pressure    float64 `json:"pressure_pa"`
	Flow        float64 `json:"flow_m3_s"`
	Jet         float64 `json:"jet_m_s"`
	Temperature float64 `json:"temperature_c"`
	Heat        float64 `json:"heat_w"`
}

// point is where fan, ducts and tube agree.
type point struct {
	Inlet     float64 `json:"flow_at_fan_m3_s"`
	Outlet    float64 `json:"flow_in_ducts_m3_s"`
	Pressure  float64 `json:"pressure_pa"`
	Crossings int     `json:"operating_points_count"`
	Electric  float64 `json:"electric_w"`
}

func (t tube) data() any {
	b, f := t.blown, t.blown.TubeFlow
	d := struct {
		Point    *point  `json:"operating_point"` // null: the plan gives no fan with ducts to the tube
		Supply   float64 `json:"supply_c"`
		Wanted   float64 `json:"stated_flow_of_a_tube_m3_s"`
		Hole     float64 `json:"hole_diameter_m"`
		Evenness float64 `json:"evenness_fraction"`
		HeatEven float64 `json:"evenness_of_heat_fraction"`
		Total    float64 `json:"total_pressure_at_beginning_pa"`
		Reversed int     `json:"rows_that_draw_in_count"`
		Rows     []found `json:"rows"`
	}{nil, b.Supply, t.wanted, b.Tube.HoleDiameter, f.Evenness, f.HeatEven, f.FanTotal, f.Reversed, nil}
	if t.agreed {
		d.Point = &point{b.Inlet, b.Outlet, b.Pressure, b.Crossing, b.Electric}
	}
	for _, p := range f.Positions {
		d.Rows = append(d.Rows, found{p.Distance, p.Pressure, p.Flow, p.JetSpeed, p.Temperature, p.Heat})
	}
	return d
}

// draw shows each row's flow above the temperature of the air there.
func (t tube) draw(format string) (io.WriterTo, error) {
	var flow, warm plotter.XYs
	most := 0.0
	for _, p := range t.blown.TubeFlow.Positions {
		flow = append(flow, plotter.XY{X: p.Distance, Y: 1000 * p.Flow})
		warm = append(warm, plotter.XY{X: p.Distance, Y: p.Temperature})
		most = max(most, 1000*p.Flow)
	}
	var plots []*plot.Plot
	for i, k := range []struct {
		label string
		xy    plotter.XYs
	}{{"flow of a row, L/s", flow}, {"air in the tube, °C", warm}} {
		p := plot.New()
		p.X.Label.Text, p.Y.Label.Text = "along the tube, m", k.label
		p.Add(plotter.NewGrid())
		if err := frame.Line(p, i, "", k.xy); err != nil {
			return nil, err
		}
		plots = append(plots, p)
	}
	plots[0].Title.Text = "Perforated tube: " + t.plan.Name
	plots[0].Y.Min, plots[0].Y.Max = min(0, plots[0].Y.Min), 1.1*most
	return frame.Plots(format, 18*vg.Centimeter, 18*vg.Centimeter, plots...)
}
