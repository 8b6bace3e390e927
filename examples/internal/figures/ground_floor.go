package figures

import (
	"fmt"

	"gonum.org/v1/plot/plotter"

	"cloche.example/envelope"
)

func bareFloor() Figure {
	return Figure{
		Name: "bare-floor", Title: "A bare floor by five methods", Subject: "ground and walls", Package: "envelope", Example: "Example_bareFloor",
		Question: "How much heat goes into the ground below a floor, and how far do the rules for it lie apart?",
		Sketch:   "A rectangular floor on clay, walls round it. Heat flows in bows to the ground outside, most of it near the edge.",
		Given: []Given{
			{"l", "length", "m", 14.8, 10, 60},
			{"b", "width", "m", 6.4, 2, 10},
			{"w", "thickness of the walls", "m", 0.3, 0.1, 0.6},
		},
		Assumes: []string{"Clay; the year of an invented site. The exact solutions leave the surfaces' resistances out and therefore stand above the others or near them."},
		Change:  []string{"A wider floor: its middle is far from the cold, and the U-value falls."},
		Code:    "solveBareFloor",
		Solve:   solveBareFloor,
	}
}

func solveBareFloor(v []float64) (res Result, err error) {
	floor := envelope.BareFloor{Length: v[0], Width: v[1], Wall: v[2], Conductivity: 1.5}
	area, perimeter := floor.Length*floor.Width, 2*(floor.Length+floor.Width)
	g := envelope.DefaultGround(envelope.ClaySoil())
	g.Area, g.Perimeter, g.WallThickness = area, perimeter, floor.Wall
	r, err := g.Solve()
	if err != nil {
		return res, err
	}
	rows := []bar{
		{"ISO 13370", r.UFloor}, {"Macey", envelope.MaceyFloor(floor)}, {"Anderson", envelope.AndersonFloor(perimeter / area)},
		{"exact, rectangle", envelope.BoxFlow(floor, 1) / area}, {"exact, endless", envelope.StripFlow(floor, 1) / floor.Width},
	}
	res.Lines = []string{fmt.Sprintf("U of a floor of %g by %g m, W/(m² K)", v[1], v[0])}
	for _, b := range rows {
		res.Lines = append(res.Lines, fmt.Sprintf("  %-19s %.3f", b.name, b.value))
	}
	months := envelope.GroundMonths{
		Inside:  [12]float64{16, 16, 16, 17, 18, 20, 21, 21, 18, 17, 16, 16},
		Outside: [12]float64{-1, 0, 4, 9, 14, 17, 19, 18, 14, 9, 4, 0},
	}
	flow, err := r.MonthlyFlow(months)
	if err != nil {
		return res, err
	}
	res.Lines = append(res.Lines, fmt.Sprintf("into the ground in January %.0f W, in July %.0f W", flow[0], flow[6]))
	for _, s := range envelope.Soils() {
		res.Lines = append(res.Lines, fmt.Sprintf("  %-17s %.2f to %.2f W/(m K)", s.Name, s.ConductivityLow, s.ConductivityHigh))
	}
	lambda := g.Soil.Conductivity
	resist := g.FloorSurface + g.FloorResistance + g.OutsideSurface
	g.Soil, _ = envelope.FindSoil("dry loam")
	dry, err := g.Solve()
	if err != nil {
		return res, err
	}
	res.Lines = append(res.Lines, fmt.Sprintf("on dry loam: U %.3f W/(m² K)", dry.UFloor))
	res.Steps = []Step{
		{Says: "The characteristic width: that of an endless strip which loses as much.", Formula: "B = A/(P/2)", Source: "IsoGround17 eq. 2", Values: numbers{"A": area, "P": perimeter}, Value: r.CharacteristicWidth, Unit: "m"},
		{Says: "The walls and the surfaces, as if they were soil.", Formula: "d = w + λ R", Source: "IsoGround17 eq. 3", Values: numbers{"w": v[2], "λ": lambda, "R": resist}, Value: r.FloorThickness, Unit: "m"},
		{Says: "The U-value of the floor.", Formula: "U = 2 λ/(π B + d) ln(π B/d + 1)", Source: "IsoGround17 eq. 4", Values: numbers{"λ": lambda, "B": r.CharacteristicWidth, "d": r.FloorThickness}, Value: r.UFloor, Unit: "W/(m² K)"},
	}
	var into plotter.XYs
	for m, q := range flow {
		into = append(into, plotter.XY{X: float64(m + 1), Y: q})
	}
	res.Picture, err = chart{title: "Heat into the ground by month", says: "A wave over the months, highest in winter and lowest in late summer.", x: "month", y: "into the ground, W", zero: true, curves: []curve{{"", into}}}.picture("The ground follows the year slowly: it still takes heat in July.")
	return res, err
}
