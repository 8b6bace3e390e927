package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func tubeEvenness() Figure {
	return Figure{
		Name: "film-tube", Title: "A film tube with holes", Subject: "ducts and fans", Package: "airheat", Example: "Example_tubeEvenness",
		Question: "How even are the jets of a perforated tube, and how even is its heat?",
		Sketch:   "A tube of 0.40 m with 30 rows of two 45 mm holes, closed at the far end. Where air leaves, the rest slows down and its pressure rises.",
		Given: []Given{
			{"V", "flow at the fan", "m³/s", 0.75, 0.1, 2},
			{"d", "diameter of a hole", "m", 0.045, 0.01, 0.05},
			{"D", "diameter of the tube", "m", 0.40, 0.30, 1},
			{"t", "supply air", "°C", 45, 16, 60},
		},
		Assumes: []string{"The house at 15 °C; steady flow with the usual regain of pressure at each row."},
		Change:  []string{"Holes of 30 mm: the jets become even, at more pressure.", "The heat is less even than the flow: the air cools on its way."},
		Code:    "solveTube",
		Solve:   solveTube,
	}
}

func solveTube(v []float64) (r Result, err error) {
	tube := airheat.DefaultPerforatedTube()
	tube.Diameter, tube.LeadIn, tube.Pitch = v[2], 1.5, 0.45
	tube.Positions, tube.HolesPerRow, tube.HoleDiameter = 30, 2, v[1]
	supply := airheat.TubeSupply{Flow: v[0], Temperature: v[3], House: 15, Properties: airheat.DryAir(v[3], 101325)}
	f, err := tube.Solve(supply)
	if err != nil {
		return r, err
	}
	ideal := airheat.FrictionlessRatio(tube.Discharge, f.AreaRatio)
	r.Lines = []string{
		fmt.Sprintf("holes over section           %7.3f", f.AreaRatio),
		fmt.Sprintf("static pressure, closed end  %7.2f Pa", f.EndPressure),
		fmt.Sprintf("static pressure, fan         %7.2f Pa", f.FanPressure),
		fmt.Sprintf("total pressure, fan          %7.2f Pa", f.FanTotal),
		fmt.Sprintf("first row over last          %7.4f", f.FanToEnd),
		fmt.Sprintf("the same without friction    %7.4f cos(Cd a/A)", ideal),
		fmt.Sprintf("least row over most, flow    %7.4f", f.Evenness),
		fmt.Sprintf("least row over most, heat    %7.4f", f.HeatEven),
	}
	for _, i := range []int{0, 14, 29} {
		p := f.Positions[i]
		r.Lines = append(r.Lines, fmt.Sprintf("row %2d at %5.2f m: %6.4f m³/s, jet %5.2f m/s, %5.2f °C", i+1, p.Distance, p.Flow, p.JetSpeed, p.Temperature))
	}
	r.Lines = append(r.Lines, airheat.SupplyCaution)
	last := f.Positions[29]
	r.Steps = []Step{
		{Says: "Area of all holes over that of the tube.", Formula: "a = 60 d^2/D^2", Values: numbers{"d": v[1], "D": v[2]}, Value: f.AreaRatio},
		{Says: "Without friction the first row falls behind the last by this ratio, the angle in degree.", Formula: "r = cos(180/π C_d a)", Source: "ElM97", Values: numbers{"C_d": tube.Discharge, "a": f.AreaRatio}, Value: ideal},
		{Says: "The last jet, from the static pressure at the closed end.", Formula: "v = sqrt(2 p/ρ)", Values: numbers{"p": f.EndPressure, "ρ": supply.Properties.Density}, Value: last.JetSpeed, Unit: "m/s", Within: 0.02, Why: "the air's density is that at the supply temperature in one and at the row's in the other"},
		{Says: "The first row over the last, friction and regain together.", Symbol: "r_f", Source: "marched row by row", Value: f.FanToEnd},
	}
	var flow, heat curve
	var at, jets, warm []float64
	for _, p := range f.Positions {
		at, jets, warm = append(at, p.Distance), append(jets, 100*p.Flow/last.Flow), append(warm, 100*p.Heat/f.Positions[0].Heat)
	}
	flow, heat = curve{"flow, of the last row", points(at, jets)}, curve{"heat, of the first row", points(at, warm)}
	r.Picture, err = chart{title: "Flow and heat along the tube", says: "The flow of the rows rises slightly towards the closed end, their heat falls.", x: "distance from the fan, m", y: "%", curves: []curve{flow, heat}}.picture("Even jets are not yet even heat.")
	return r, err
}
