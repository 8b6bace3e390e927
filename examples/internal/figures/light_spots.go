package figures

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

func spots() Figure {
	return Figure{
		Name: "spots", Title: "Spots at the hanging height", Subject: "light on the bed", Package: "lighting", Example: "Example_spotsAtTheHangingHeight",
		Question: "Two downlights hang side by side over trays. Do their spots meet, and is the light flat between them?",
		Sketch:   "Two lamps that point straight down. The beam angle is where the intensity is half of that in the middle; on the tray, light falls sooner, since distance and slant count too.",
		Given: []Given{
			{"Φ", "photons of one lamp", "µmol/s", 220, 10, 2000},
			{"β", "beam angle, to half the intensity", "degree", 110, 20, 150},
			{"h", "height above the trays", "m", 1.15, 0.3, 4},
			{"s", "spacing", "m", 1.2, 0.2, 4},
		},
		Assumes: []string{"Lamps small beside the height; an intensity that falls as a power of the cosine; no reflection."},
		Change:  []string{"Hang the lamps at the height of line 5: the light between them is flat.", "Take a beam of 60 degree at the same spacing: a dark stripe opens between the spots."},
		Code:    "solveSpots",
		Solve:   solveSpots,
	}
}

func solveSpots(v []float64) (r Result, err error) {
	beam, height, spacing := v[1], v[2], v[3]
	light, err := lighting.FromBeamAngle(v[0], beam)
	if err != nil {
		return r, err
	}
	m := light.Exponent()
	d := light.SpotDiameter(height, 0.5)
	shared := lighting.SpotOverlap(d, spacing)
	r.Lines = []string{
		fmt.Sprintf("1  m = ln 0.5/ln cos(%g/2) = %.4f", beam, m),
		fmt.Sprintf("2  PPFD halves at acos 0.5^(1/(m+3)) = %.2f degree, not at %g: distance and the sensor's cosine count too", light.SpotAngle(0.5), beam/2),
		fmt.Sprintf("3  spot diameter 2 h tan = %.3f m, %.1f µmol/(m² s) in its middle", d, light.SpotPPFD(height, 0)),
		fmt.Sprintf("4  two spots share %.3f m², %.1f %% of one", shared, 100*shared/(math.Pi/4*d*d)),
		fmt.Sprintf("5  flat between two at a spacing of 2 h/√(m+4) = %.3f m, or from %.3f m up at this spacing", light.FlatPair(height), spacing/light.FlatPair(1)),
		fmt.Sprintf("6  flat within four at a side of %.3f m, within a ring at a radius of %.3f m", light.FlatSquare(height), light.FlatRing(height)),
		fmt.Sprintf("7  midway there is %.1f %% of the light under one", 100*light.Midway(height, spacing)),
		fmt.Sprintf("8  %.0f %% of the photons leave within the beam angle of %.0f degree", 100*light.ConeShare(beam/2), light.BeamAngle()),
	}
	r.Steps = []Step{
		{Says: "Exponent of the cosine that halves the intensity at half the beam angle.", Formula: "m = ln(0.5)/ln(cos(β/2))", Source: "Moreno06", Values: numbers{"β": beam}, Value: m, Within: 1e-8, Why: "rounding of the angle"},
		{Says: "Angle at which the light on the tray is half: the cosine counts three times more, twice for the distance and once for the slant.", Formula: "γ = acos(0.5^(1/(m + 3)))", Values: numbers{"m": m}, Value: light.SpotAngle(0.5), Unit: "degree"},
		{Says: "Diameter of that spot.", Formula: "d = 2 h tan(γ)", Values: numbers{"h": height, "γ": light.SpotAngle(0.5)}, Value: d, Unit: "m"},
		{Says: "Light in its middle.", Formula: "E = Φ (m + 1)/(2 π h^2)", Values: numbers{"Φ": v[0], "m": m, "h": height}, Value: light.SpotPPFD(height, 0), Unit: "µmol/(m² s)"},
		{Says: "Spacing at which two lamps give flat light between them.", Formula: "s_f = 2 h/sqrt(m + 4)", Source: "Moreno06, with the slant counted", Values: numbers{"h": height, "m": m}, Value: light.FlatPair(height), Unit: "m"},
	}
	one := func(x float64) float64 { return light.SpotPPFD(height, math.Abs(x)) }
	left, right := func(x float64) float64 { return one(x + spacing/2) }, func(x float64) float64 { return one(x - spacing/2) }
	reach := spacing/2 + d
	r.Picture, err = chart{title: "Light along the line under two lamps", says: "Two humps and their sum along the line from one lamp to the other.", x: "from the middle between the lamps, m", y: "PPFD, µmol/(m² s)", zero: true, curves: []curve{
		{"both", along(-reach, reach, 120, func(x float64) float64 { return left(x) + right(x) })},
		{"one", along(-reach, reach, 120, left)},
		{"the other", along(-reach, reach, 120, right)},
	}}.picture("Where the sum is level between the lamps, the spacing is that of the last step.")
	return r, err
}
