package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func convection() Figure {
	return Figure{
		Name: "convection", Title: "Rival formulas for convection", Subject: "covers", Package: "envelope", Example: "Example_convection",
		Question: "How far apart are the published coefficients of convection at the two faces of a cover?",
		Sketch:   "Outside over the wind, inside over the difference of air and face, and across an upright gap of 20 mm by 1 m.",
		Given: []Given{
			{"v", "the stronger wind", "m/s", 5, 1, 30},
			{"t_i", "inside air", "°C", 15, 5, 35},
			{"β", "tilt of the roof", "degree", 30, 0, 89},
			{"Ra", "Rayleigh number of the gap", "", 2e4, 1e4, 1e6},
		},
		Assumes: []string{"Each formula as published; some of them were measured on other things than houses, and the last of the outside list holds radiation and never goes into a cover."},
		Change:  []string{"No wind: the formulas part by a factor of two, and free convection, which some leave out, decides."},
		Code:    "solveConvection",
		Solve:   solveConvection,
	}
}

func solveConvection(v []float64) (r Result, err error) {
	wind, inside, tilt, ra := v[0], v[1], v[2], v[3]
	r.Lines = []string{fmt.Sprintf("outside, W/(m² K), in wind of     1 m/s %2.0f m/s", wind)}
	outside := []envelope.OutsideConvection{envelope.OutsideISO6946, envelope.OutsideWatmuff, envelope.OutsideBot, envelope.OutsidePapadakis}
	var curves []curve
	for _, m := range outside {
		r.Lines = append(r.Lines, fmt.Sprintf("  %-30v  %5.1f  %5.1f", m, m.Coefficient(1), m.Coefficient(wind)))
		curves = append(curves, curve{m.String(), along(0, 10, 40, m.Coefficient)})
	}
	r.Lines = append(r.Lines,
		fmt.Sprintf("  %-30s  %5.1f  %5.1f", "Mitchell, building of 300 m³", envelope.Mitchell(1, 300), envelope.Mitchell(wind, 300)),
		fmt.Sprintf("  %-30s  %5.1f  %5.1f", "McAdams, with radiation in it", envelope.McAdams(1), envelope.McAdams(wind)),
		fmt.Sprintf("inside, W/(m² K), roof of %g degree, face colder by  5 K   15 K", tilt))
	face := envelope.InnerSurface{Air: inside, Tilt: tilt, Height: 4, Pressure: 101325}
	for _, m := range []envelope.InsideConvection{envelope.InsideISO15099, envelope.InsideISO6946, envelope.InsidePapadakis, envelope.InsideBaille, envelope.InsidePlate} {
		near, far := face, face
		near.Surface, far.Surface = inside-5, inside-15
		r.Lines = append(r.Lines, fmt.Sprintf("  %-46v  %5.2f  %5.2f", m, m.Coefficient(near), m.Coefficient(far)))
	}
	const pr, aspect = 0.71, 50.0
	nu := envelope.GapNusselt(ra, aspect, 90)
	r.Lines = append(r.Lines,
		fmt.Sprintf("Nusselt number of the gap at Ra %.0f: %.2f by ISO 15099, %.2f by MacGregor and Emery", ra, nu, envelope.MacGregorEmery(ra, pr, aspect)),
		fmt.Sprintf("and of one plate at Ra 1e9: %.0f by Churchill and Chu", envelope.ChurchillChu(1e9, pr)))
	r.Steps = []Step{
		{Says: "Outside, the standard for walls.", Formula: "h_o = 4 + 4 v", Source: "IsoWall17 eq. C.5", Values: numbers{"v": wind}, Value: envelope.OutsideISO6946.Coefficient(wind), Unit: "W/(m² K)"},
		{Says: "Outside, measured on solar collectors.", Formula: "h_o = 2.8 + 3 v", Source: "Watmuff77", Values: numbers{"v": wind}, Value: envelope.OutsideWatmuff.Coefficient(wind), Unit: "W/(m² K)"},
		{Says: "Outside, an old line with radiation in it.", Formula: "h_o = 5.7 + 3.8 v", Source: "McAdams54 (from memory), to 5 m/s", Values: numbers{"v": 1}, Value: envelope.McAdams(1), Unit: "W/(m² K)", Within: 0.01, Why: "the line is rounded from British units"},
		{Says: "The upright gap.", Symbol: "Nu", Source: "IsoWin03 eq. 49-53", Value: nu},
	}
	r.Picture, err = chart{title: "Outside coefficients over the wind", says: "Four lines that rise with the wind and fan out: at 10 m/s the highest is more than twice the lowest.", x: "wind, m/s", y: "W/(m² K)", curves: curves, zero: true}.picture("Nobody knows the outside coefficient of a house better than this fan is wide.")
	return r, err
}
