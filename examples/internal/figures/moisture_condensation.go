package figures

import (
	"fmt"
	"math"

	"cloche.example/psychro"
)

func condensation() Figure {
	return Figure{
		Name: "condensation", Title: "Water on a cold film", Subject: "moisture and crop", Package: "psychro", Example: "Example_condensation",
		Question: "Moist house air touches a cold film. How much water settles on it in an hour, and what heat does it bring?",
		Sketch:   "The inner face of a film at night, air passing it by free convection. A litre is a kilogram.",
		Given: []Given{
			{"t", "temperature of the air", "°C", 15, 1, 35},
			{"φ", "relative humidity", "fraction", 0.9, 0.1, 1},
			{"t_f", "temperature of the face", "°C", 4, 0.5, 35},
			{"h_c", "convection at the face", "W/(m² K)", 3.5, 0.5, 25},
		},
		Assumes: []string{"The Lewis relation ties vapour to heat; the deposit covers the face."},
		Change:  []string{"Warm the face above the dew point: the flux turns round, and a wet face dries."},
		Code:    "solveCondensation",
		Solve:   solveCondensation,
	}
}

func solveCondensation(x []float64) (r Result, err error) {
	t, face, hc := x[0], x[2], x[3]
	s, err := psychro.FromRelativeHumidity(t, x[1], 101325)
	if err != nil {
		return r, err
	}
	v, err := s.VapourFlux(face, hc)
	if err != nil {
		return r, err
	}
	convected := hc * (t - face)
	r.Lines = []string{
		fmt.Sprintf("dew point            %7.2f °C, face at %g °C", s.DewPoint(), face),
		fmt.Sprintf("humidity ratios      %7.5f in the air, %.5f at the face", s.HumidityRatio(), v.Saturation),
		fmt.Sprintf("Lewis number         %7.3f at %.1f °C", v.Lewis, v.Film),
		fmt.Sprintf("coefficient          %7.5f kg/(m² s)", v.Coefficient),
		fmt.Sprintf("flux                 %7.1f g/(m² h)", v.Flux*3.6e6),
		fmt.Sprintf("heat                 %7.1f W/m² latent, %.1f W/m² by convection", v.Latent, convected),
	}
	c := hc / v.Coefficient / math.Pow(v.Lewis, 2.0/3)
	r.Steps = []Step{
		{Says: "Humidity ratio of air saturated at the face.", Symbol: "W_f", Source: "IAPWS saturation, enhancement factor", Value: v.Saturation, Unit: "kg/kg"},
		{Says: "Lewis number at the mean of air and face.", Symbol: "Le", Source: "Massman98, UsStd76", Value: v.Lewis},
		{Says: "Heat capacity of the air in the film.", Symbol: "c", Source: "for a kilogram of dry air", Value: c, Unit: "J/(kg K)", Figures: 5},
		{Says: "Coefficient of vapour transfer.", Formula: "k = h_c/(c Le^(2/3))", Source: "ChiCol34", Values: numbers{"h_c": hc, "c": c, "Le": v.Lewis}, Value: v.Coefficient, Unit: "kg/(m² s)"},
		{Says: "Water that settles.", Formula: "m = k (W - W_f)", Values: numbers{"k": v.Coefficient, "W": s.HumidityRatio(), "W_f": v.Saturation}, Value: v.Flux, Unit: "kg/(m² s)"},
		{Says: "Latent heat that it brings.", Formula: "q = m L", Values: numbers{"m": v.Flux, "L": psychro.LatentHeat(face)}, Value: v.Latent, Unit: "W/m²"},
	}
	r.Picture, err = chart{title: "Water against the temperature of the face", says: "A line that falls with the temperature of the face and crosses nought at the dew point.", x: "temperature of the face, °C", y: "water, g/(m² h)",
		curves: []curve{{"", along(math.Max(0.5, t-15), t+3, 60, func(f float64) float64 {
			v, err := s.VapourFlux(f, hc)
			if err != nil {
				return math.NaN()
			}
			return v.Flux * 3.6e6
		})}}, marks: []mark{{"the film", face, v.Flux * 3.6e6}, {"dew point", s.DewPoint(), 0}}}.picture("Below the dew point water settles, above it a wet face dries.")
	return r, err
}
