package figures

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

func inverseSquare() Figure {
	return Figure{
		Name: "inverse-square", Title: "Where the inverse square fails", Subject: "light on the bed", Package: "lighting", Example: "Example_discByPointsAndByFactor",
		Question: "A glowing disc hangs over a tray. How far off does it count as one point?",
		Sketch:   "A disc that is bright evenly, and a tray under its middle: once as many points, once by its factor, once as a single point.",
		Given: []Given{
			{"R", "radius of the disc", "m", 0.5, 0.05, 2},
			{"h", "height", "m", 1, 0.2, 10},
			{"M", "what the disc emits", "µmol/(m² s)", 300, 1, 3000},
		},
		Assumes: []string{"A disc as bright from every side, as a diffuser is."},
		Change:  []string{"At five diameters the single point errs by 1 %."},
		Code:    "solveInverseSquare",
		Solve:   solveInverseSquare,
	}
}

func solveInverseSquare(v []float64) (r Result, err error) {
	radius, height, emitted := v[0], v[1], v[2]
	total := emitted * math.Pi * radius * radius
	var fixtures lighting.Layout
	const rings = 40
	for i := range rings {
		n := 2*i + 1 // so that every point has the same area
		for k := range n {
			ring := radius * (float64(i) + 0.5) / rings
			s, c := math.Sincos(2 * math.Pi * float64(k) / float64(n))
			light, err := lighting.NewCosinePower(total/(rings*rings), 1)
			if err != nil {
				return r, err
			}
			fixtures = append(fixtures, lighting.Fixture{Light: light, At: lighting.Point{X: ring * c, Y: ring * s, Z: height}})
		}
	}
	lights, err := lighting.NewLights(fixtures...)
	if err != nil {
		return r, err
	}
	below, err := lighting.NewPoints(lighting.Receiver{Normal: lighting.Up()})
	if err != nil {
		return r, err
	}
	ppfd, err := lights.MapTo(nil, below)
	if err != nil {
		return r, err
	}
	factor := lighting.DiscFactor(radius, height)
	point := total / math.Pi / (height * height)
	off := "far enough off"
	if height < 10*radius {
		off = fmt.Sprintf("the disc is only %s away", diameters(height/(2*radius)))
	}
	r.Lines = []string{
		fmt.Sprintf("photon flux of the disc     π R² M = %.1f µmol/s", total),
		fmt.Sprintf("%d points, Σ I cos φ/r²   E = %.2f µmol/(m² s)", len(fixtures), ppfd[0]),
		fmt.Sprintf("factor R²/(R²+h²) = %.2f    E = %.2f µmol/(m² s)", factor, emitted*factor),
		fmt.Sprintf("as one point, I0/h²         E = %.2f µmol/(m² s), %.0f %% too much: %s", point, 100*(point/(emitted*factor)-1), off),
	}
	r.Steps = []Step{
		{Says: "Photons of the whole disc.", Formula: "Φ = π R^2 M", Values: numbers{"R": radius, "M": emitted}, Value: total, Unit: "µmol/s"},
		{Says: "The disc's factor, exact.", Formula: "F = R^2/(R^2 + h^2)", Source: "Howell10", Values: numbers{"R": radius, "h": height}, Value: factor},
		{Says: "Light on the tray.", Formula: "E = M F", Values: numbers{"M": emitted, "F": factor}, Value: emitted * factor, Unit: "µmol/(m² s)"},
		{Says: "The same by 1,600 points, the library's sum over fixtures.", Symbol: "E_Σ", Value: ppfd[0], Unit: "µmol/(m² s)"},
		{Says: "As a single point, by the inverse square.", Formula: "E_1 = Φ/(π h^2)", Values: numbers{"Φ": total, "h": height}, Value: point, Unit: "µmol/(m² s)"},
	}
	share := func(h float64) float64 {
		return 100 * (total/math.Pi/(h*h)/(emitted*lighting.DiscFactor(radius, h)) - 1)
	}
	at := math.Min(math.Max(height/(2*radius), 0.8), 8)
	r.Picture, err = chart{title: "Error of the single point", says: "A curve that falls from large errors near the disc towards nothing.", x: "distance, diameters", y: "too much, %", zero: true, curves: []curve{
		{"", along(0.8, 8, 100, func(x float64) float64 { return share(2 * radius * x) })},
	}, marks: []mark{{"", at, share(2 * radius * at)}}}.picture("The error is 25 % at one diameter and falls with the square of the distance.")
	return r, err
}

// diameters says a count in words where it is one.
func diameters(n float64) string {
	if n == 1 {
		return "one diameter"
	}
	return fmt.Sprintf("%.2g diameters", n)
}
