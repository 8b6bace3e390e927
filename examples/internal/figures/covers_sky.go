package figures

import (
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

func nightSky() Figure {
	return Figure{
		Name: "night-sky", Title: "How cold is the night sky?", Subject: "covers", Package: "envelope", Example: "Example_nightSky",
		Question: "A film sees the sky. Of what temperature is a black body that sends down as little as the sky does?",
		Sketch:   "Dry air lets the cold of space through, vapour and clouds close the window.",
		Given: []Given{
			{"t", "temperature of the air", "°C", -5, -25, 30},
			{"φ", "relative humidity", "fraction", 0.80, 0.1, 1},
		},
		Assumes: []string{"Three models for a clear sky; low clouds of the emittance 1 with their underside at 1000 m."},
		Change:  []string{"Damp air of 15 °C: the clear sky is warmer, nearer to the air.", "The difference of two models counts for less than half a sky of cloud."},
		Code:    "solveNightSky",
		Solve:   solveNightSky,
	}
}

func solveNightSky(v []float64) (r Result, err error) {
	t, p := v[0], 101325.0
	air, err := psychro.FromRelativeHumidity(t, v[1], p)
	if err != nil {
		return r, err
	}
	dew := air.DewPoint()
	r.Lines = []string{fmt.Sprintf("air %.0f °C, dew point %.1f °C, midnight", t, dew), "clear sky              emissivity    °C"}
	show := func(name string, emissivity float64) {
		r.Lines = append(r.Lines, fmt.Sprintf("  %-20s %10.3f %5.1f", name, emissivity, envelope.SkyTemperatureOf(t, emissivity)))
	}
	clear := envelope.SkyEmissivity(dew, 0, p)
	show("Berdahl and Martin", clear)
	show("Clark and Allen", envelope.ClarkAllen(dew, 0))
	swinbank := envelope.Swinbank(t) // knows no humidity
	show("Swinbank", math.Pow((swinbank+273.15)/(t+273.15), 4))
	r.Lines = append(r.Lines, "SkyTemperature")
	for _, cloud := range []float64{0, 0.5, 1} {
		midnight, err := envelope.SkyTemperature(air, 0, cloud)
		if err != nil {
			return r, err
		}
		noon, err := envelope.SkyTemperature(air, 12*time.Hour, cloud)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("  cloud %.1f: %5.1f °C at midnight, %5.1f °C at noon", cloud, midnight, noon))
	}
	half := envelope.CloudySky(clear, envelope.Clouds{Cover: 0.5, Emittance: 1, Base: 1000})
	r.Steps = []Step{
		{Says: "Dew point of the air.", Symbol: "t_d", Value: dew, Unit: "°C", Figures: 3},
		{Says: "Emissivity of the clear sky at midnight, 15 degree of the sun's circle to an hour.", Formula: "ε = 0.711 + 0.56 t_d/100 + 0.73 (t_d/100)^2 + 0.013 cos(15 h) + 0.00012 (p/100 - 1000)", Source: "BerMar84", Values: numbers{"t_d": dew, "h": 0, "p": p}, Value: clear},
		{Says: "Its temperature.", Formula: "t_s = (t + 273.15) ε^0.25 - 273.15", Values: numbers{"t": t, "ε": clear}, Value: envelope.SkyTemperatureOf(t, clear), Unit: "°C", Within: 1e-6, Why: "rounding"},
		{Says: "With half of the sky under low cloud.", Formula: "ε_c = ε + (1 - ε) n exp(-z/8200)", Source: "Martin and Berdahl 1984 (from memory)", Values: numbers{"ε": clear, "n": 0.5, "z": 1000}, Value: half},
		{Says: "Its temperature then.", Formula: "t_c = (t + 273.15) ε_c^0.25 - 273.15", Values: numbers{"t": t, "ε_c": half}, Value: envelope.SkyTemperatureOf(t, half), Unit: "°C", Within: 1e-6, Why: "rounding"},
	}
	r.Picture, err = chart{title: "Sky against cloud", says: "Two lines of sky temperature that rise with the cloud cover, from far below the air to just below it.", x: "share of the sky under cloud, %", y: "sky, °C", curves: []curve{
		{"midnight", along(0, 100, 50, func(c float64) float64 { s, _ := envelope.SkyTemperature(air, 0, c/100); return s })},
		{"noon", along(0, 100, 50, func(c float64) float64 { s, _ := envelope.SkyTemperature(air, 12*time.Hour, c/100); return s })},
		{"the air", straight(0, t, 100, t)},
	}}.picture("Each cloud brings the sky nearer to the air.")
	return r, err
}
