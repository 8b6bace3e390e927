package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func operatingPoint() Figure {
	return Figure{
		Name: "fan-and-duct", Title: "Where a fan and its duct agree", Subject: "ducts and fans", Package: "airheat", Example: "Example_operatingPoint",
		Question: "A hood, a duct with five elbows and a damper hang on a fan. What flow comes about?",
		Source:   "Y. A. Cengel, J. M. Cimbala, Fluid Mechanics, example 14-1, as an open companion works it",
		Sketch:   "The fan gives less pressure the more it moves; the duct asks for more. They meet in one point.",
		Given:    operatingGiven(),
		Assumes:  []string{"The fan's six tested points joined by straight lines, by a curve in the source; fan and motor of the efficiencies 0.5 and 0.75, the motor in the stream."},
		Change:   []string{"A duct of 0.15 m: the fan works near its peak and moves less than half.", "Twice the length costs little: the fittings are the greater part."},
		Code:     "solveOperatingPoint",
		Solve:    solveOperatingPoint,
	}
}

func operatingGiven() []Given {
	return []Given{
		{"D", "diameter of the duct", "m", 0.23, 0.1, 0.6},
		{"L", "its length", "m", 13.4, 1, 100},
		{"K", "sum of loss factors of the fittings", "", 1.3 + 5*0.21 + 1.8 + 1.05, 0.5, 30},
	}
}

func solveOperatingPoint(v []float64) (r Result, err error) {
	const cfm, inch = 0.3048 * 0.3048 * 0.3048 / 60, 249.0889
	air := airheat.AirProperties{Density: 1.184, Viscosity: 1.184 * 1.562e-5, HeatCapacity: 1006}
	flow := []float64{0, 250, 500, 750, 1000, 1200}
	pressure := []float64{0.90, 0.95, 0.90, 0.75, 0.40, 0}
	for i := range flow {
		flow[i] *= cfm
		pressure[i] *= inch * airheat.StandardDensity / air.Density // to 1.2 kg/m³
	}
	fan, err := airheat.NewFanTable(flow, pressure)
	if err != nil {
		return r, err
	}
	duct := airheat.Segment{Section: airheat.Round(v[0]), Length: v[1], Roughness: 0.15e-3, Fittings: v[2]}
	system, err := airheat.NewSystem(duct)
	if err != nil {
		return r, err
	}
	p, err := system.OperatingPoint(fan, airheat.DefaultFanDrive(), air)
	if err != nil {
		return r, err
	}
	l := duct.Loss(p.Flow, air)
	prints := func(words string) string { return said(operatingGiven(), v, words) }
	r.Lines = []string{
		fmt.Sprintf("velocity           %8.3f m/s", l.Velocity),
		fmt.Sprintf("Reynolds number    %8.0f", l.Reynolds),
		fmt.Sprintf("friction factor    %8.5f       Colebrook", l.Friction),
		fmt.Sprintf("wall loss          %8.1f Pa    f L/D ρV²/2", l.Wall),
		fmt.Sprintf("fittings           %8.1f Pa    K ρV²/2", l.Fittings),
		fmt.Sprintf("flow               %8.1f cfm   %s", p.Flow/cfm, prints("printed 650")),
		fmt.Sprintf("pressure           %8.3f inH2O %s", p.Pressure/inch, prints("printed 0.83")),
		fmt.Sprintf("crossings          %8d", p.Count),
		fmt.Sprintf("electric power     %8.1f W     efficiencies 0.5 and 0.75", p.ElectricPower),
		fmt.Sprintf("warming of the air %8.3f K     motor in the stream", p.Rise),
	}
	r.Printed = "650 cfm and 0.83 inch of water, read off its chart."
	r.Steps = []Step{
		{Says: "Speed in the duct at the point where both agree.", Formula: "v = 4 V/(π D^2)", Values: numbers{"V": p.Flow, "D": v[0]}, Value: l.Velocity, Unit: "m/s"},
		{Says: "Reynolds number.", Formula: "Re = v D/ν", Values: numbers{"v": l.Velocity, "D": v[0], "ν": 1.562e-5}, Value: l.Reynolds, Figures: 5, Within: 1e-6, Why: "rounding"},
		{Says: "Friction factor.", Symbol: "f", Source: "Cole39 eq. 12", Value: l.Friction},
		{Says: "Loss at the wall.", Formula: "Δp_w = f L/D ρ v^2/2", Source: "Darcy-Weisbach", Values: numbers{"f": l.Friction, "L": v[1], "D": v[0], "ρ": 1.184, "v": l.Velocity}, Value: l.Wall, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "Loss in the fittings.", Formula: "Δp_f = K ρ v^2/2", Values: numbers{"K": v[2], "ρ": 1.184, "v": l.Velocity}, Value: l.Fittings, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "Pressure that the fan gives there.", Formula: "Δp = Δp_w + Δp_f", Values: numbers{"Δp_w": l.Wall, "Δp_f": l.Fittings}, Value: p.Pressure, Unit: "Pa", Within: 1e-6, Why: "the crossing is found to 1e-9 of the flow"},
		{Says: "Electric power.", Formula: "P = V Δp/(0.5·0.75)", Values: numbers{"V": p.Flow, "Δp": p.Pressure}, Value: p.ElectricPower, Unit: "W"},
	}
	ratio := air.Density / airheat.StandardDensity
	at := func(q float64) float64 { // straight lines between the tested points
		for i := 1; i < len(flow); i++ {
			if q <= flow[i] {
				return ratio * (pressure[i-1] + (pressure[i]-pressure[i-1])*(q-flow[i-1])/(flow[i]-flow[i-1]))
			}
		}
		return math.NaN()
	}
	last := flow[len(flow)-1]
	most := 1.3 * ratio * pressure[1]
	r.Picture, err = chart{title: "Fan and duct", says: "The fan's curve falls, the duct's rises; a dot stands where they cross.", x: "flow, m³/s", y: "pressure, Pa", zero: true, curves: []curve{
		{"fan", along(0, last*0.9999, 60, at)},
		{"duct", along(0.001, last, 60, func(q float64) float64 {
			if loss := duct.Loss(q, air).Total; loss < most {
				return loss
			}
			return math.NaN()
		})},
	}, marks: []mark{{"they agree", p.Flow, p.Pressure}}}.picture("The duct asks for what the fan gives in one point alone.")
	return r, err
}
