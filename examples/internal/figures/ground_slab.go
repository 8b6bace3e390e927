package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
)

func slab() Figure {
	return Figure{
		Name: "slab-and-pit", Title: "A slab, and a house dug in", Subject: "ground and walls", Package: "envelope", Example: "Example_slabAndDugInWall",
		Question: "What does the ground take from a house at grade, with its edge insulated, and dug in?",
		Sketch:   "The same floor four times: bare at grade, 60 mm of insulation down its edge, dug in with bare walls, dug in with insulated walls.",
		Given: []Given{
			{"b", "width of the floor", "m", 6.4, 2, 20},
			{"l", "its length", "m", 14.8, 4, 60},
			{"z", "depth when dug in", "m", 0.7, 0.1, 2},
			{"D", "depth of the edge insulation", "m", 0.6, 0.1, 1.5},
		},
		Assumes: []string{"ISO 13370: clay, inside 16 °C, outside 9 °C with a swing of 10 K over the year."},
		Change:  []string{"Insulate the buried wall: the pit then takes less than the bare slab.", "Deeper insulation at the edge gains less with each decimetre."},
		Code:    "solveSlab",
		Solve:   solveSlab,
	}
}

func solveSlab(v []float64) (res Result, err error) {
	g := envelope.DefaultGround(envelope.ClaySoil())
	g.Area, g.Perimeter = v[0]*v[1], 2*(v[0]+v[1])
	climate := envelope.DefaultGroundClimate()
	var rows []bar
	add := func(format string, a ...any) { res.Lines = append(res.Lines, fmt.Sprintf(format, a...)) }
	show := func(title, short string) (envelope.GroundCoefficients, error) {
		r, err := g.Solve()
		if err != nil {
			return r, err
		}
		add("%s", title)
		add("  B = A/(P/2)                       eq. 2   %7.3f m", r.CharacteristicWidth)
		add("  d = w + lambda (Rsi+R+Rse)        eq. 3   %7.3f m", r.FloorThickness)
		add("  U of the floor                    eq. 4   %7.3f W/(m² K)", r.UFloor)
		if g.Edge != envelope.EdgeBare {
			add("  psi of the edge insulation        D.6     %7.3f W/(m K)", r.EdgePsi)
		}
		if g.Depth > 0 {
			add("  d of the wall                     eq. 15  %7.3f m", r.WallThickness)
			add("  U of the buried wall              eq. 16  %7.3f W/(m² K)", r.UWall)
		}
		add("  steady coefficient                        %7.1f W/K", r.Total)
		add("  penetration depth                 H.1     %7.3f m", r.PenetrationDepth)
		add("  coefficient of the outside's year         %7.1f W/K", r.Outside)
		january, worst := r.Flow(climate, 1), r.Worst(climate)
		add("  annual mean                       C.8     %7.0f W", january.Steady)
		add("  January                           C.3     %7.0f W", january.Total)
		add("  most, in month %.0f                  C.9     %7.0f W", worst.Month, worst.Total)
		rows = append(rows, bar{short, january.Total})
		return r, nil
	}
	add("ISO 13370: clay, inside 16 °C, outside 9 °C with a swing of 10 K")
	bare, err := show("Slab at grade, bare", "bare slab")
	if err != nil {
		return res, err
	}
	g.Edge, g.EdgeWidth, g.EdgeThickness = envelope.EdgeVertical, v[3], 0.06
	edge, err := show(fmt.Sprintf("Slab at grade, 60 mm of insulation %g m down the edge", v[3]), "edge insulated")
	if err != nil {
		return res, err
	}
	g.Edge, g.Depth = envelope.EdgeBare, v[2]
	pit, err := show(fmt.Sprintf("Dug in by %g m, bare walls", v[2]), "dug in, bare")
	if err != nil {
		return res, err
	}
	g.WallResistance = 0.06 / 0.036
	if _, err = show(fmt.Sprintf("Dug in by %g m, walls with 60 mm of insulation", v[2]), "dug in, insulated"); err != nil {
		return res, err
	}
	lambda, b, d, dw, z := g.Soil.Conductivity, bare.CharacteristicWidth, bare.FloorThickness, pit.WallThickness, v[2]
	values := numbers{"λ": lambda, "B": b, "d": d, "z": z, "d_w": dw, "d_f": math.Min(d, dw), "D": v[3], "d_e": (0.06/g.EdgeConductivity - 0.06/lambda) * lambda}
	floor := "U_f = 2 λ/(π B + d) ln(π B/d + 1)"
	if d >= b {
		floor = "U_f = λ/(0.457 B + d)"
	}
	res.Steps = []Step{
		{Says: "Characteristic width.", Formula: "B = A/(P/2)", Source: "IsoGround17 eq. 2", Values: numbers{"A": g.Area, "P": g.Perimeter}, Value: b, Unit: "m"},
		{Says: "The floor at grade.", Formula: floor, Source: "IsoGround17 eq. 4", Values: values, Value: bare.UFloor, Unit: "W/(m² K)"},
		{Says: "What the insulated edge takes off for each metre of it.", Formula: "ψ = -λ/π (ln(2 D/d + 1) - ln(2 D/(d + d_e) + 1))", Source: "IsoGround17 eq. D.6", Values: values, Value: edge.EdgePsi, Unit: "W/(m K)"},
		{Says: "The buried wall, bare.", Formula: "U_w = 2 λ/(π z) (1 + 0.5 d_f/(d_f + z)) ln(z/d_w + 1)", Source: "IsoGround17 eq. 16", Values: values, Value: pit.UWall, Unit: "W/(m² K)"},
		{Says: "The pit as a whole: floor and wall.", Formula: "H = A U_p + z P U_w", Source: "IsoGround17 eq. 18", Values: numbers{"A": g.Area, "U_p": pit.UFloor, "z": z, "P": g.Perimeter, "U_w": pit.UWall}, Value: pit.Total, Unit: "W/K", Within: 1e-6, Why: "rounding"},
	}
	res.Picture = bars("Into the ground in January", "Four bars of heat into the ground in January.", "%.0f W", "January's heat: an insulated edge saves, bare buried walls cost.", rows...)
	return res, nil
}
