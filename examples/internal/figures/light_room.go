package figures

import (
	"fmt"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/plot/plotter"

	"cloche.example/lighting"
)

func roomLight() Figure {
	return Figure{
		Name: "room-light", Title: "Light that the room gives back", Subject: "light on the bed", Package: "lighting", Example: "Example_lightThatTheRoomGivesBack",
		Question: "A germination room has white walls. What do they add to the light on a bench?",
		Sketch:   "A room of 5 by 3 m and 2.6 m height, a bench of 4 by 1.8 m at 0.8 m, eight lamps above it. Walls, ceiling and floor throw light to and fro.",
		Given: []Given{
			{"ρ_w", "reflectance of the walls", "fraction", 0.65, 0, 0.9},
			{"ρ_c", "reflectance of the ceiling", "fraction", 0.75, 0, 0.9},
			{"ρ_f", "reflectance of the floor", "fraction", 0.2, 0, 0.9},
			{"Φ", "photons of one lamp", "µmol/s", 220, 20, 1000},
			{"h", "height of the lamps above the bench", "m", 1.2, 0.5, 1.6},
		},
		Assumes: []string{"An empty room: bench and lamps hide nothing. Surfaces reflect evenly to all sides."},
		Change:  []string{"All black: a sixth of the light goes, and the bench is less even.", "Hang the lamps lower: less lands on the walls, and the room matters less."},
		Code:    "solveRoomLight",
		Solve:   solveRoomLight,
	}
}

func solveRoomLight(v []float64) (r Result, err error) {
	room := lighting.Room{Length: 5, Width: 3, Height: 2.6, Floor: v[2], Ceiling: v[1], WallX0: v[0], WallX1: v[0], WallY0: v[0], WallY1: v[0]}
	bench := lighting.Bed{X: 0.5, Y: 0.6, Z: 0.8, Length: 4, Width: 1.8}
	light, err := lighting.FromBeamAngle(v[3], 115)
	if err != nil {
		return r, err
	}
	layout, err := lighting.Rows(lighting.Fixture{Light: light, Power: 84}, bench, v[4], 4, 2)
	if err != nil {
		return r, err
	}
	direct, err := bench.Map(layout)
	if err != nil {
		return r, err
	}
	mean := func(ppfd []float64, e error) float64 {
		if e != nil {
			err = e
			return 0
		}
		return floats.Sum(ppfd) / float64(len(ppfd))
	}
	shares, err := room.Share(layout, bench)
	if err != nil {
		return r, err
	}
	faces, err := room.Reflect(layout, 1)
	if err != nil {
		return r, err
	}
	mesh, err := room.Reflect(layout, 8)
	if err != nil {
		return r, err
	}
	within, err := room.ReflectWithin(layout, direct.Points, 0.003)
	if err != nil {
		return r, err
	}
	once, six, many, fine := mean(mesh.MapOneBounce(direct.Points)), mean(faces.Map(direct.Points)), mean(mesh.Map(direct.Points)), mean(within.PPFD, nil)
	if err != nil {
		return r, err
	}
	all := append([]float64(nil), direct.PPFD...)
	floats.Add(all, within.PPFD)
	both, err := lighting.Evenness(all)
	if err != nil {
		return r, err
	}
	floor, kept := mesh.FaceMean(lighting.FaceFloor), mesh.Absorbed(lighting.FaceFloor)
	r.Lines = []string{
		fmt.Sprintf("1  first landing: bench %.1f %%, beside it %.1f %%, walls %.1f %%", 100*shares.Bed, 100*shares.Aisle, 100*shares.Walls),
		fmt.Sprintf("2  direct, Σ I cos φ/r²: mean %.1f µmol/(m² s)", direct.Evenness.Mean),
		fmt.Sprintf("3  reflected once, a lower bound: %.2f", once),
		fmt.Sprintf("4  reflected, six whole faces: %.2f", six),
		fmt.Sprintf("5  reflected, 8 x 8 patches a face: %.2f", many),
		fmt.Sprintf("6  reflected, each point to 0.3 %%: %.2f with %d patches a side", fine, within.Patches),
		fmt.Sprintf("7  both, in one call: mean %.1f, least/mean %.2f", both.Mean, both.U0),
		fmt.Sprintf("8  the %s has %.1f µmol/(m² s) and keeps %.0f of %.0f µmol/s", lighting.FaceFloor, floor, kept, layout.PPF()),
	}
	d := direct.Evenness.Mean
	r.Steps = []Step{
		{Says: "The exact flux of every lamp through the bench.", Symbol: "s", Source: "∮ G dφ along the edges", Value: shares.Bed},
		{Says: "Direct light on the bench by that flux; the mean of the map's points is near it.", Formula: "E_d = 8 s Φ/A", Values: numbers{"s": shares.Bed, "Φ": v[3], "A": bench.Area()}, Value: d, Unit: "µmol/(m² s)", Within: 0.02, Why: "the mean of points against the exact flux"},
		{Says: "Light once reflected.", Symbol: "E_1", Source: "exact factors of 8 by 8 patches a face", Value: once, Unit: "µmol/(m² s)"},
		{Says: "All reflected light: every patch gets what all others give off, E = E_0 + Σ F ρ E.", Symbol: "E_r", Source: "Howell10, factors by Sparrow63", Value: fine, Unit: "µmol/(m² s)"},
		{Says: "What the room adds.", Formula: "g = E_r/E_d", Values: numbers{"E_r": fine, "E_d": d}, Value: fine / d},
		{Says: "Both.", Formula: "E = E_d + E_r", Values: numbers{"E_d": d, "E_r": fine}, Value: both.Mean, Unit: "µmol/(m² s)"},
		{Says: "The floor keeps what it does not reflect.", Formula: "Φ_f = (1 - ρ_f) A_f E_f", Values: numbers{"ρ_f": v[2], "A_f": room.Length * room.Width, "E_f": floor}, Value: kept, Unit: "µmol/s"},
	}
	r.Picture, err = alongTheBench(direct.Points, all, direct.PPFD, within.PPFD)
	return r, err
}

// alongTheBench draws three maps along the middle row of their points.
func alongTheBench(p *lighting.Points, both, direct, back []float64) (Picture, error) {
	n := p.Columns()
	row := func(name string, ppfd []float64) curve {
		c := curve{name: name}
		middle := len(ppfd) / n / 2 * n
		for i := range n {
			c.at = append(c.at, plotter.XY{X: p.At(middle + i).X, Y: ppfd[middle+i]})
		}
		return c
	}
	return chart{title: "Light along the middle of the bench", says: "The direct light falls towards the ends of the bench; the reflected light is nearly level.", x: "along the room, m", y: "PPFD, µmol/(m² s)", zero: true,
		curves: []curve{row("both", both), row("direct", direct), row("given back by the room", back)}}.picture("The room's light is nearly level: it makes the bench more even as well as brighter.")
}
