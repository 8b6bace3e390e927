package figures

import (
	"fmt"
	"math"
	"time"

	"cloche.example/lighting"
)

func hourSplit() Figure {
	return Figure{
		Name: "beam-and-sky", Title: "An hour's radiation in beam and sky", Subject: "sun and daylight", Package: "lighting", Example: "ExampleSunHour_Split",
		Question: "A pyranometer gives one number for an hour. How much of it is beam, how much sky, and what falls on a slope?",
		Sketch:   "Three hours of a day of March: early, bright, and overcast; a slope to the south.",
		Given: []Given{
			{"G_6", "global radiation from 6 to 7 h", "W/m²", 12, 0, 100},
			{"G", "from 9 to 10 h", "W/m²", 310, 0, 700},
			{"G_12", "from 12 to 13 h", "W/m²", 190, 0, 900},
			{"β", "slope", "degree", 27, 0, 90},
			{"ρ", "reflectance of the ground", "fraction", 0.2, 0, 0.8},
		},
		Assumes: []string{"An invented site at 50.6 degree north; an average hour of its clearness, about which single hours scatter widely; part of the sky's light along the beam."},
		Change:  []string{"500 W/m² at nine: a clear hour, mostly beam, and the slope takes far more than level ground.", "Fresh snow, 0.8, before a wall of 90 degree: the ground gives nearly as much as the sky."},
		Code:    "solveHourSplit",
		Solve:   solveHourSplit,
	}
}

func solveHourSplit(v []float64) (r Result, err error) {
	site, err := lighting.NewSite(50.6, 14.1, 340)
	if err != nil {
		return r, err
	}
	zone := time.FixedZone("CET", 3600)
	var marks []mark
	for i, hour := range []int{6, 9, 12} {
		sun := site.SunHour(time.Date(2025, 3, 11, hour, 0, 0, 0, zone))
		clearness := v[i] / (sun.Extraterrestrial * sun.Sine)
		light := sun.Split(v[i], v[4])
		slope := light.OnPlane(v[3], 180)
		r.Lines = append(r.Lines, fmt.Sprintf("%2d h  sun %4.1f degree, clearness %.2f, diffuse %.2f: beam %3.0f, sky %3.0f W/m²; slope %3.0f + %2.0f + %3.0f + %.0f = %3.0f",
			hour, sun.Elevation, clearness, lighting.DiffuseFraction(clearness), light.Direct, light.Diffuse,
			slope.Beam, slope.Circumsolar, slope.Isotropic, slope.Reflected, slope.Total()))
		if clearness <= 1.2 {
			marks = append(marks, mark{fmt.Sprintf("%d h", hour), clearness, 100 * lighting.DiffuseFraction(clearness)})
		}
		if hour == 9 {
			r.Steps = hourSteps(v, clearness, sun, light, slope)
		}
	}
	r.Picture, err = chart{title: "What of the light comes from the sky", says: "A curve: all of the light under thick cloud, a sixth of it under a clear sky.", x: "clearness, of the light above the atmosphere", y: "from the sky, %", zero: true,
		curves: []curve{{"", along(0, 1.2, 120, func(k float64) float64 { return 100 * lighting.DiffuseFraction(k) })}}, marks: marks}.picture("The three hours on the curve of averages: below a clearness of 0.2 there is hardly any beam. At 6 h the sun is too low for a beam.")
	return r, err
}

// hourSteps works the hour of nine by hand.
func hourSteps(v []float64, k float64, sun lighting.SunHour, light lighting.SunAndSky, slope lighting.TiltedSun) []Step {
	fraction := Step{Says: "Of which the sky's part, by the mean of many hours.", Source: "Erbs82 eq. 1", Values: numbers{"k": k}, Value: lighting.DiffuseFraction(k)}
	switch {
	case k <= 0.22:
		fraction.Formula = "f = 1 - 0.09 k"
	case k <= 0.8:
		fraction.Formula = "f = 0.9511 - 0.1604 k + 4.388 k^2 - 16.638 k^3 + 12.336 k^4"
	default:
		fraction.Symbol = "f"
	}
	sinH := sun.Sine / sun.Lit
	haze := light.Direct / light.Extraterrestrial
	share := math.Max(0, slope.Incidence) / sinH
	return []Step{
		{Says: "Clearness from 9 to 10 h: what arrives over what would without an atmosphere.", Formula: "k = G/(I_0 sin(h))", Values: numbers{"G": v[1], "I_0": sun.Extraterrestrial, "h": sun.Elevation}, Value: k},
		fraction,
		{Says: "Light of the sky on level ground.", Formula: "D = f G", Values: numbers{"f": fraction.Value, "G": v[1]}, Value: light.Diffuse, Unit: "W/m²"},
		{Says: "Beam across itself.", Formula: "B = (G - D)/sin(h)", Values: numbers{"G": v[1], "D": light.Diffuse, "h": sun.Elevation}, Value: light.Direct, Unit: "W/m²", Within: 1e-6, Why: "rounding of a small difference"},
		{Says: "Beam on the slope.", Formula: "B_s = B c", Values: numbers{"B": light.Direct, "c": math.Max(0, slope.Incidence)}, Value: slope.Beam, Unit: "W/m²"},
		{Says: "Sky's light from around the disc, in the proportion that the air lets through.", Formula: "D_c = D a s", Source: "Hay80", Values: numbers{"D": light.Diffuse, "a": haze, "s": share}, Value: slope.Circumsolar, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "The rest of the sky, as far as the slope sees it.", Formula: "D_i = D (1 - a) (1 + cos(β))/2", Source: "Hay80", Values: numbers{"D": light.Diffuse, "a": haze, "β": v[3]}, Value: slope.Isotropic, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "The ground.", Formula: "R = ρ G (1 - cos(β))/2", Values: numbers{"ρ": v[4], "G": v[1], "β": v[3]}, Value: slope.Reflected, Unit: "W/m²", Within: 1e-6, Why: "rounding of a small difference"},
		{Says: "All of it on the slope.", Formula: "S = B_s + D_c + D_i + R", Values: numbers{"B_s": slope.Beam, "D_c": slope.Circumsolar, "D_i": slope.Isotropic, "R": slope.Reflected}, Value: slope.Total(), Unit: "W/m²"},
	}
}
