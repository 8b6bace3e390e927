package main

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/airheat"
	"cloche.example/internal/constant"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/internal/report"
)

// report plans the tube and writes it up, or names every fault.
func (w wish) report() (*report.Report, error) {
	tube := airheat.DefaultPerforatedTube()
	tube.Diameter, tube.LeadIn, tube.Pitch = w.diameter, w.lead, w.pitch
	tube.Positions, tube.HolesPerRow, tube.HoleDiameter = w.rows, w.holes, w.hole
	if w.rows > 500 {
		return nil, fmt.Errorf("rows is %d, allowed 1 to 500", w.rows)
	}
	if !(w.drop > 0 && w.drop <= 20) {
		return nil, fmt.Errorf("crop is %g m, allowed above 0 to 20 m", w.drop)
	}
	if err := (domain.Range{Min: -60, Max: 200, Unit: "°C", Source: "Sutherland's law, ideal gas"}).Check("supply", w.supply); err != nil {
		return nil, err
	}
	supply := airheat.TubeSupply{
		Flow: w.flow, Temperature: w.supply, House: w.house,
		Air: airheat.DryAir(w.supply, constant.StandardPressure),
	}
	var flow airheat.TubeFlow
	var err error
	if w.hole == 0 {
		tube, flow, err = tube.HolesFor(w.evenness, supply)
	} else {
		flow, err = tube.Solve(supply)
	}
	if err != nil {
		return nil, err
	}
	jet := airheat.DefaultJet(airheat.RoundJet)
	jet.Size = tube.HoleDiameter * math.Sqrt(math.Pi/4*tube.Discharge) // of the jet where it is narrowest
	jet.Speed = flow.Positions[len(flow.Positions)-1].JetSpeed
	jet.Excess, jet.House = flow.Positions[0].Temperature-w.house, w.house
	if err := jet.Check(); err != nil {
		return nil, fmt.Errorf("jet of a hole: %w", err)
	}
	r := new(report.Report)
	r.Title("Perforated tube: %.2f m wide, %.1f m long, %d rows of %d holes", tube.Diameter, tube.Length(), tube.Positions, tube.HolesPerRow)
	w.tube(r, tube, flow)
	w.rowTable(r, flow)
	jets(r, jet, w.drop)
	if err := w.fan(r, flow, supply); err != nil {
		return nil, err
	}
	r.Section("Notes")
	r.Note("%s", demo.Note)
	for _, s := range tube.Warnings(flow) {
		r.Note("%s", s)
	}
	r.Note("Flow that is even is not heat that is even: the air cools on its way, most in the last, slow metres.")
	for _, s := range airheat.DefaultSupplyLimits().Warnings(w.supply) {
		r.Note("Warning: %s; a jet is cooler further on.", s)
	}
	r.Note("%s", airheat.SupplyCaution)
	return r, nil
}

func (w wish) tube(r *report.Report, t airheat.PerforatedTube, f airheat.TubeFlow) {
	r.Section("Holes")
	r.Value("hole diameter", 1000*t.HoleDiameter, 1, "mm")
	r.Value("all holes over the tube's section", f.AreaRatio, 3, "ratio")
	r.Value("discharge coefficient", t.Discharge, 2, "")
	r.Value("weakest row over strongest, flow", f.Evenness, 4, "ratio")
	r.Value("weakest row over strongest, heat", f.HeatEven, 4, "ratio")
	r.Value("first row over last", f.FanToEnd, 4, "ratio")
	r.Value("the same without friction, cos(Cd a/A)", airheat.FrictionlessRatio(t.Discharge, f.AreaRatio), 4, "ratio")
	r.Section("Pressure and heat")
	r.Value("static pressure at the closed end", f.EndPressure, 1, "Pa")
	r.Value("static pressure at the fan", f.FanPressure, 1, "Pa")
	r.Value("total pressure at the fan", f.FanTotal, 1, "Pa")
	r.Value("heat out of the holes", f.HolesHeat/1000, 2, "kW above house air")
	r.Value("heat through the wall", f.WallHeat/1000, 2, "kW")
	r.Value("rows that draw house air in", float64(f.Reversed), 0, "")
}

func (w wish) rowTable(r *report.Report, f airheat.TubeFlow) {
	r.Section("Along the tube")
	var rows [][]string
	n := len(f.Positions)
	for i := range min(n, 9) {
		k := i
		if n > 9 {
			k = i * (n - 1) / 8
		}
		p := f.Positions[k]
		rows = append(rows, []string{
			fmt.Sprint(k + 1), report.Number(p.Distance, 2), report.Number(p.Pressure, 1), report.Number(p.Velocity, 2),
			report.Number(1000*p.Flow, 2), report.Number(p.JetSpeed, 2), report.Number(p.Temperature, 1), report.Number(p.Heat, 0),
		})
	}
	r.Table([]string{"row", "m", "Pa", "m/s tube", "L/s row", "m/s jet", "°C", "W row"}, rows)
}

func jets(r *report.Report, j airheat.Jet, drop float64) {
	r.Section("Jet of one hole, level")
	r.Value("throw to 0.5 m/s", j.Throw(math.Min(0.5, 0.999*j.Speed)), 2, "m")
	r.Value("temperature above the house at 1 m", j.AxisExcess(1), 2, "K")
	h := j.Height(1)
	r.Text("rise of its axis at 1 m, published band", report.Number(h.Least, 3)+" to "+report.Number(h.Most, 3), "m")
	down := j
	down.Angle = -45
	near, _ := down.Meets(-drop, 10*drop)
	if math.IsNaN(near.Distance) {
		r.Text("blown down at 45 degrees, it reaches the crop", "no", "")
		return
	}
	r.Value("blown down at 45 degrees, at the crop", near.Speed, 2, "m/s")
	r.Value("above house temperature there", near.Excess, 2, "K")
}

// fan sets an invented fan on a short duct and the tube, taken as a loss that
// goes with the square of the flow.
func (w wish) fan(r *report.Report, f airheat.TubeFlow, s airheat.TubeSupply) error {
	fan, err := airheat.NewFanTable([]float64{0, 0.25, 0.5, 0.75, 1.0, 1.25}, []float64{310, 285, 295, 250, 150, 0})
	if err != nil {
		return err
	}
	duct := airheat.Segment{Section: airheat.Round(w.diameter), Length: 3, Roughness: 0.15e-3, Fittings: 1.5}
	l := duct.Loss(s.Flow, s.Air)
	duct.Fittings += f.FanTotal / l.VelocityPressure
	system, err := airheat.NewSystem(duct)
	if err != nil {
		return err
	}
	r.Section("An invented fan of 310 Pa on 3 m of duct and the tube")
	drive := airheat.DefaultFanDrive()
	drive.Inlet = airheat.DryAir(s.House, constant.StandardPressure) // the heater stands behind the fan
	p, err := system.OperatingPoint(fan, drive, s.Air)
	if errors.Is(err, airheat.ErrNoSolution) {
		r.Text("operating point", "none", "")
		r.Note("%v", err)
		return nil
	} else if err != nil {
		return err
	}
	r.Value("wanted flow", s.Flow, 3, "m³/s")
	r.Value("flow in the tube", p.DuctFlow, 3, "m³/s")
	r.Value("  at the fan, in cold air", p.Flow, 3, "m³/s")
	r.Value("pressure", p.Pressure, 1, "Pa")
	r.Value("crossings of fan and ducts", float64(p.Count), 0, "")
	r.Value("electric power", p.ElectricPower, 0, "W")
	r.Value("specific fan power", p.SpecificFanPower, 0, "W/(m³/s)")
	r.Value("warming of the air by the fan", p.Rise, 2, "K")
	for _, s := range p.Warnings() {
		r.Note("%s", s)
	}
	return nil
}
