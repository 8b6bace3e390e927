package figures

import (
	"fmt"

	"cloche.example/examples/internal/page"
	"cloche.example/ventilation"
)

func twoLevelStack() Figure {
	return Figure{
		Name: "stack", Title: "Air through two openings in calm", Subject: "vents and wind", Package: "ventilation", Example: "Example_twoLevelStack",
		Question: "Warm air leaves at the ridge and cool air enters at the side. How much, and at what height do inside and outside pressure meet?",
		Sketch:   "One opening low, one high, the air inside warmer and lighter. At the neutral level there is no difference of pressure; below it air enters, above it leaves.",
		Given: []Given{
			{"t_i", "inside", "°C", 30, 5, 50},
			{"t_o", "outside", "°C", 22, -20, 45},
			{"A_1", "low opening", "m²", 1.2, 0.05, 50},
			{"A_2", "high opening", "m²", 0.8, 0.05, 50},
			{"H", "height between them", "m", 2.4, 0.3, 10},
		},
		Assumes: []string{"Dry air at 101,325 Pa; a discharge coefficient of 0.6 at both; openings small beside the height; no wind."},
		Change:  []string{"Double the smaller opening, then the larger: the smaller one rules.", "Four times the difference of temperature gives twice the flow."},
		Code:    "solveTwoLevelStack",
		Solve:   solveTwoLevelStack,
	}
}

func solveTwoLevelStack(v []float64) (r Result, err error) {
	c, err := ventilation.DrySides{Inside: v[0], Outside: v[1], Pressure: 101325}.Conditions()
	if err != nil {
		return r, err
	}
	f, err := ventilation.TwoLevels{LowArea: v[2], LowDischarge: 0.6, HighArea: v[3], HighDischarge: 0.6, Separation: v[4]}.Flow(c)
	if err != nil {
		return r, err
	}
	if f.Flow == 0 || v[0] <= v[1] {
		return r, fmt.Errorf("inside must be warmer than outside for air to rise")
	}
	r.Lines = []string{
		fmt.Sprintf("density outside  rho = p/(R T)            %.4f kg/m³", c.OutsideDensity),
		fmt.Sprintf("density inside                            %.4f kg/m³", c.InsideDensity),
		fmt.Sprintf("stack pressure   (rho_o - rho_i) g H      %.4f Pa", f.Total),
		fmt.Sprintf("neutral level    H/(1+(r_o/r_i)(A1/A2)²)  %.4f m above the low opening", f.Neutral),
		fmt.Sprintf("across the low opening                    %.4f Pa", f.AtLow),
		fmt.Sprintf("across the high opening                   %.4f Pa", f.AtHigh),
		fmt.Sprintf("flow             Cd A sqrt(2 rho dp)      %.4f kg/s", f.Flow),
		fmt.Sprintf("rival with one mean density               %.4f kg/s (%+.3f %%)", f.Boussinesq, 100*f.Discrepancy),
	}
	densities := numbers{"ρ_o": c.OutsideDensity, "ρ_i": c.InsideDensity, "H": v[4], "A_1": v[2], "A_2": v[3]}
	r.Steps = []Step{
		{Says: "Density of the air outside.", Formula: "ρ_o = 101325/(287.042 (t_o + 273.15))", Values: numbers{"t_o": v[1]}, Value: c.OutsideDensity, Unit: "kg/m³", Within: 1e-5, Why: "the gas constant of dry air in six digits"},
		{Says: "Pressure that drives the stack.", Formula: "P = (ρ_o - ρ_i) 9.80665 H", Values: densities, Value: f.Total, Unit: "Pa"},
		{Says: "Neutral level above the low opening, from equal mass in and out.", Formula: "h = H/(1 + ρ_o/ρ_i (A_1/A_2)^2)", Values: densities, Value: f.Neutral, Unit: "m"},
		{Says: "Pressure across the low opening.", Formula: "P_1 = P h/H", Values: numbers{"P": f.Total, "h": f.Neutral, "H": v[4]}, Value: f.AtLow, Unit: "Pa"},
		{Says: "Flow, the same at both openings.", Formula: "m = 0.6 A_1 sqrt(2 ρ_o P_1)", Values: numbers{"A_1": v[2], "ρ_o": c.OutsideDensity, "P_1": f.AtLow}, Value: f.Flow, Unit: "kg/s"},
	}
	low := 0.5
	top := low + v[4]
	wide := 1.4 * top
	d := page.NewDrawing(-0.9*top, -0.25*top, wide+1.3*top, 1.4*top, 420)
	d.Polygon(page.Stroke{}, 0, 0, wide, 0, wide, 0.6*top, wide/2, 1.1*top, 0, 0.6*top)
	d.Line(page.Stroke{Dash: "5 4"}, -0.3*top, low+f.Neutral, wide+0.2*top, low+f.Neutral)
	d.Text(page.Start, wide+0.22*top, low+f.Neutral, fmt.Sprintf("neutral, %.2f m", f.Neutral))
	blue, red := page.Stroke{Color: css(page.PenOf(0).Color), Width: 2.5, Arrow: true}, page.Stroke{Color: css(page.PenOf(1).Color), Width: 2.5, Arrow: true}
	d.Line(blue, -0.5*top, min(low, 0.3*top), 0.35*top, min(low, 0.3*top))
	d.Line(red, wide/2, 0.85*top, wide/2, 1.3*top)
	d.Text(page.Middle, wide/2, 0.68*top, fmt.Sprintf("%.2f kg/s", f.Flow))
	r.Picture = drawn(d, "Section with the flow", "A house in section: air enters low at the side, rises and leaves at the ridge; a dashed line marks the neutral level.", "The arrows show the way of the air. The section is a sketch; the neutral level stands above the low opening.")
	return r, nil
}

func windAndStack() Figure {
	return Figure{
		Name: "wind-and-stack", Title: "Wind with the stack and against it", Subject: "vents and wind", Package: "ventilation", Example: "Example_windAndStack",
		Question: "The same openings in rising wind: what flows if the wind sucks at the ridge, and what if it presses there?",
		Sketch:   "A side vent and a ridge vent. Wind that sucks at the ridge helps the warm air out; wind that presses there stops it, and then turns it.",
		Given: []Given{
			{"t_i", "inside", "°C", 30, 10, 50},
			{"t_o", "outside", "°C", 22, -20, 45},
			{"A_1", "side vent", "m²", 1.2, 0.05, 50},
			{"A_2", "ridge vent", "m²", 0.8, 0.05, 50},
		},
		Assumes: []string{"Pressures alone, without the turbulence of wind; pressure coefficients of 0.4 and -0.6 with the stack, -0.2 and 0.3 against it; dry air."},
		Change:  []string{"Warm the house: the wind that stops the flow rises with the root of the difference."},
		Code:    "solveWindAndStack",
		Solve:   solveWindAndStack,
	}
}

func solveWindAndStack(v []float64) (r Result, err error) {
	if v[0] <= v[1] {
		return r, fmt.Errorf("inside must be warmer than outside for a stack")
	}
	var curves []curve
	for _, side := range []struct {
		name      string
		low, high float64
	}{{"together", 0.4, -0.6}, {"opposed", -0.2, 0.3}} {
		n, err := ventilation.NewNetwork([]ventilation.Opening{
			{Name: "side", Height: 0.5, Area: v[2], Discharge: 0.6, PressureCoefficient: side.low},
			{Name: "ridge", Height: 2.9, Area: v[3], Discharge: 0.6, PressureCoefficient: side.high},
		}, nil, nil)
		if err != nil {
			return r, err
		}
		if n, err = n.WithExchange(ventilation.WindExchange{}); err != nil { // pressures alone
			return r, err
		}
		at := func(wind float64) (b ventilation.Balance, c ventilation.FlowConditions, err error) {
			if c, err = (ventilation.DrySides{Inside: v[0], Outside: v[1], Pressure: 101325, Wind: wind}).Conditions(); err == nil {
				b, err = n.Solve(c)
			}
			return b, c, err
		}
		r.Lines = append(r.Lines, side.name)
		for _, wind := range []float64{0, 1, 1.5, 3} {
			b, c, err := at(wind)
			if err != nil {
				return r, err
			}
			way, signed := "up", 1.0
			if b.Paths[1].In > 0 {
				way, signed = "down", -1
			}
			r.Lines = append(r.Lines, fmt.Sprintf("  %.1f m/s  inside %+.3f Pa  flow %.3f kg/s %s", wind, b.Pressure, b.Flow, way))
			if wind == 3 {
				drive := (c.OutsideDensity-c.InsideDensity)*9.80665*2.4 + c.OutsideDensity*9/2*(side.low-side.high)
				r.Steps = append(r.Steps, Step{Says: "Wind and stack " + side.name + " at 3 m/s: what drives the air up.", Formula: "P = (ρ_o - ρ_i) 9.80665 · 2.4 + ρ_o 3^2 (C_1 - C_2)/2",
					Values: numbers{"ρ_o": c.OutsideDensity, "ρ_i": c.InsideDensity, "C_1": side.low, "C_2": side.high}, Value: drive, Unit: "Pa"},
					Step{Says: "Flow up, by equal mass in and out; less than zero is down.", Symbol: "m", Value: signed * b.Flow, Unit: "kg/s"})
			}
		}
		curves = append(curves, curve{side.name, along(0, 4, 80, func(wind float64) float64 {
			b, _, err := at(wind)
			if err == nil && b.Paths[1].In > 0 {
				return -b.Flow
			}
			return b.Flow
		})})
	}
	curves = append(curves, curve{"", straight(0, 0, 4, 0)})
	r.Picture, err = chart{title: "Flow against wind", says: "Two curves from the same flow in calm: one rises with the wind, one falls through zero and turns.", x: "wind, m/s", y: "flow up, kg/s", curves: curves}.picture("Against the wind the house stands still at one speed.")
	return r, err
}
