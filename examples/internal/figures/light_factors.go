package figures

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

func lightFactors() Figure {
	return Figure{
		Name: "shape-factors", Title: "What a bright surface gives a point", Subject: "light on the bed", Package: "lighting", Example: "Example_configurationFactors",
		Question: "What part of the light of an evenly bright disc, strip or ceiling reaches a point or a surface below it?",
		Sketch:   "Bright surfaces above a point, level with it. The factor is the point's light over that of a sky as bright all over.",
		Given: []Given{
			{"R", "radius of the disc", "m", 0.5, 0.05, 5},
			{"h", "height of disc and strip above the point", "m", 1, 0.1, 10},
			{"a", "half the strip's width", "m", 0.5, 0.05, 5},
			{"L", "height of the ceiling of 3 by 1.2 m", "m", 1.2, 0.2, 10},
		},
		Assumes: []string{"Surfaces evenly bright, and as bright from every side. Two discs, a cube, a lamp over a square and a sphere beside it have numbers of their own."},
		Change:  []string{"Go twice as far from the disc: near it the light hardly falls, far off it falls to a quarter."},
		Code:    "solveLightFactors",
		Solve:   solveLightFactors,
	}
}

func solveLightFactors(v []float64) (r Result, err error) {
	disc, strip := lighting.DiscFactor(v[0], v[1]), lighting.StripFactor(v[2], v[1])
	quarter := lighting.CornerFactor(lighting.Plates{A: 1.5, B: 0.6, Distance: v[3]})
	tilted := lighting.PolygonFactor(lighting.Point{}, lighting.Vector{X: 1, Z: 1}, lighting.Point{X: -1.5, Y: -0.6, Z: v[3]},
		lighting.Point{X: 1.5, Y: -0.6, Z: v[3]}, lighting.Point{X: 1.5, Y: 0.6, Z: v[3]}, lighting.Point{X: -1.5, Y: 0.6, Z: v[3]})
	opposed := lighting.OpposedPlatesFactor(lighting.Plates{A: 1, B: 1, Distance: 1})
	adjacent := lighting.AdjacentPlatesFactor(lighting.AdjacentPlates{Common: 1, From: 1, To: 1})
	light, err := lighting.NewCosinePower(100, 2.4)
	if err != nil {
		return r, err
	}
	f := lighting.Fixture{Light: light, At: lighting.Point{X: 1, Y: 1, Z: 1.5}}
	flux := lighting.CosineFlux(f, lighting.Point{}, lighting.Point{X: 2}, lighting.Point{X: 2, Y: 2}, lighting.Point{Y: 2})
	r.Lines = []string{
		fmt.Sprintf("point under a disc, radius %g m, %g m off: R²/(R²+h²) = %.3f", v[0], v[1], disc),
		fmt.Sprintf("point under a strip %g m wide, %g m off: sin of the half angle = %.3f", 2*v[2], v[1], strip),
		fmt.Sprintf("point under the middle of 3 by 1.2 m, %g m off: four corners of %.4f = %.3f", v[3], quarter, 4*quarter),
		fmt.Sprintf("the same for a sensor tilted by 45 degree: %.3f", tilted),
		fmt.Sprintf("disc of 0.5 m to one of 1 m, 2 m off: %.3f", lighting.CoaxialDiscsFactor(lighting.CoaxialDiscs{From: 0.5, To: 1, Distance: 2})),
		fmt.Sprintf("faces of a cube: %.6f opposite, %.6f beside; one and four of them make %.6f", opposed, adjacent, opposed+4*adjacent),
		fmt.Sprintf("of 100 µmol/s a square of 2 m catches %.1f, 1.5 m below", flux),
		fmt.Sprintf("a sphere of 12 m² that reflects 0.8 has %.1f µmol/(m² s) all round", lighting.EnclosureMean(100, 12, 0.8)),
	}
	r.Steps = []Step{
		{Says: "A point on the axis of the disc.", Formula: "F_d = R^2/(R^2 + h^2)", Source: "Howell10", Values: numbers{"R": v[0], "h": v[1]}, Value: disc},
		{Says: "A point under the middle of a strip without end.", Formula: "F_s = a/sqrt(a^2 + h^2)", Source: "Howell10", Values: numbers{"a": v[2], "h": v[1]}, Value: strip},
		{Says: "A quarter of the ceiling, its corner straight above the point; p and q are the slant ways to its two far sides.", Formula: "F_q = (1.5/p atan(0.6/p) + 0.6/q atan(1.5/q))/360", Source: "Howell10", Values: numbers{"p": math.Hypot(1.5, v[3]), "q": math.Hypot(0.6, v[3])}, Value: quarter},
		{Says: "The whole ceiling.", Formula: "F_c = 4 F_q", Values: numbers{"F_q": quarter}, Value: 4 * quarter},
		{Says: "The mean in a closed sphere: light comes back until it is absorbed.", Formula: "E = 100/(12 (1 - 0.8))", Value: lighting.EnclosureMean(100, 12, 0.8), Unit: "µmol/(m² s)"},
	}
	r.Picture, err = chart{title: "Factor of the disc against the distance", says: "A curve that begins level at one and falls ever more like the inverse square, which is drawn beside it.", x: "distance, m", y: "factor", zero: true, curves: []curve{
		{"disc", along(0.05*v[0], 6*v[0], 100, func(h float64) float64 { return lighting.DiscFactor(v[0], h) })},
		{"inverse square", along(v[0], 6*v[0], 100, func(h float64) float64 { return v[0] * v[0] / (h * h) })},
	}, marks: []mark{{"here", min(v[1], 6*v[0]), lighting.DiscFactor(v[0], min(v[1], 6*v[0]))}}}.picture("The inverse square holds from about five radii on.")
	return r, err
}
