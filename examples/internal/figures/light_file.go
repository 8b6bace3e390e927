package figures

import (
	"fmt"
	"math"
	"strings"

	"cloche.example/examples/internal/page"
	"cloche.example/lighting"
)

func photometricFile() Figure {
	return Figure{
		Name: "photometric-file", Title: "A photometric file, line by line", Subject: "photons and spectra", Package: "lighting", Example: "ExampleLM63_Write",
		Question: "What does each line of a photometric file say, and how many of the lamp's lumens leave the fixture?",
		Sketch:   "A file of LM-63 in its oldest edition: the lamp's tilt, ten numbers, angles and candela.",
		Given: []Given{
			{"Φ_l", "lumens of the lamp", "lm", 6200, 500, 200000},
			{"I_0", "candela straight down", "cd", 1900, 1, 100000},
			{"I_45", "candela at 45 degree", "cd", 1350, 0, 100000},
			{"f_90", "factor when the lamp is tilted by 90 degree", "", 0.9, 0.1, 1},
			{"α", "tilt to look at", "degree", 30, 0, 90},
		},
		Assumes: []string{"Invented numbers. No candela at 90 degree, the same all round, straight lines between the angles. The lamp's lumens scale nothing: the candela stand as they were measured."},
		Change:  []string{"More candela than the lamp's lumens allow: the efficiency passes 1, a sign that candela are for another lamp."},
		Code:    "solvePhotometricFile",
		Solve:   solvePhotometricFile,
	}
}

func solvePhotometricFile(v []float64) (r Result, err error) {
	f := &lighting.LM63{Edition: lighting.LM63of1986, Lamps: 1, LumensPerLamp: v[0], Multiplier: 1, BallastFactor: 1, Field12: 1, InputPower: 65,
		Tilt: &lighting.LampTilt{Geometry: 1, Angles: []float64{0, 90}, Factors: []float64{1, v[3]}},
		Web:  lighting.CandelaWeb{Vertical: []float64{0, 45, 90}, Horizontal: []float64{0}, Candela: [][]float64{{v[1], v[2], 0}}}}
	var text strings.Builder
	if err := f.Write(&text); err != nil {
		return r, err
	}
	table, err := f.Table()
	if err != nil {
		return r, err
	}
	file := strings.Split(strings.TrimSpace(strings.ReplaceAll(text.String(), "\r\n", "\n")), "\n") // files have both
	r.Lines = append(append(r.Lines, file...), fmt.Sprintf("tilted by %g degree the candela are %.3f of these", v[4], f.TiltFactor(v[4])))
	factor, lumens := f.TiltFactor(v[4]), table.Lumens()
	values := numbers{"I_0": v[1], "I_45": v[2]}
	r.Steps = []Step{
		{Says: "Factor on all candela at the tilt, on a straight line.", Formula: "f = 1 - (1 - f_90) α/90", Source: "IesLM02", Values: numbers{"f_90": v[3], "α": v[4]}, Value: factor},
		{Says: "Candela straight out of the fixture then.", Formula: "I_α = f I_0", Values: numbers{"f": factor, "I_0": v[1]}, Value: factor * v[1], Unit: "cd"},
		{Says: "Lumens from straight down to 45 degree: the straight line times the sine.", Formula: "Φ_1 = 2 π (I_0 - I_45 cos(45) - 4 (I_0 - I_45) sin(45)/π)", Values: values, Value: 2 * math.Pi * (v[1] - v[2]*math.Sqrt2/2 - 4*(v[1]-v[2])*math.Sqrt2/2/math.Pi), Unit: "lm"},
		{Says: "Lumens from there to 90 degree.", Formula: "Φ_2 = 2 π I_45 (cos(45) - 4 (1 - sin(45))/π)", Values: values, Value: 2 * math.Pi * v[2] * (math.Sqrt2/2 - 4*(1-math.Sqrt2/2)/math.Pi), Unit: "lm"},
		{Says: "Both, which is what the library integrates from the file.", Formula: "Φ = 2 π (I_0 - 4 (I_0 - I_45) sin(45)/π - 4 I_45 (1 - sin(45))/π)", Values: values, Value: lumens, Unit: "lm"},
		{Says: "What of the lamp's lumens leaves the fixture.", Formula: "η = Φ/Φ_l", Values: numbers{"Φ": lumens, "Φ_l": v[0]}, Value: lumens / v[0]},
	}
	r.Picture = annotated(file)
	return r, nil
}

// annotated draws the lines of a file, each with what it says beside it.
func annotated(file []string) Picture {
	says := []string{"the lamp's tilt follows", "the lamp stands upright", "two angles of tilt", "at these, degree", "factor at each",
		"lamps, lumens, factor, counts, type C, opening", "two factors (applied), watts", "angles from straight down", "planes: one, the same all round", "candela"}
	const line = 19.0
	d := page.NewDrawing(0, -line*float64(len(file))-6, 420, 4, 420)
	for i, l := range file {
		y := -line*float64(i) - 13
		if i%2 == 0 {
			d.Box(page.Stroke{Width: 0.1, Color: "var(--soft)", Fill: "var(--soft)"}, 0, y-6, 420, y+line-6)
		}
		d.Text(page.Start, 6, y, l)
		if i < len(says) {
			d.Text(page.End, 414, y, says[i])
		}
	}
	return drawn(d, "The file with what each line says", "The lines of the file on the left, their meaning on the right: tilt, counts and factors, angles, candela.", "Nothing in the file speaks of photons: a spectrum must come from elsewhere.")
}
