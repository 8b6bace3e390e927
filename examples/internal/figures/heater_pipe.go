package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func heatingPipe() Figure {
	return Figure{
		Name: "heating-pipe", Title: "What a metre of heating pipe gives", Subject: "heater and fuel", Package: "airheat", Example: "Example_heatingPipe",
		Question: "Hot water runs through a pipe in a house. How much heat does a metre give, and how much of it is radiation?",
		Sketch:   "A level pipe of painted steel: its air rises, and it shines on crop, floor and cover.",
		Given: []Given{
			{"t_p", "surface of the pipe for the steps", "°C", 60, 25, 150},
			{"t_a", "air, and all that the pipe sees", "°C", 20, -10, 24},
			{"d", "diameter", "m", 0.051, 0.02, 0.3},
			{"ε", "emissivity", "fraction", 0.88, 0.05, 0.98},
		},
		Assumes: []string{"One level pipe in still air; 98 per cent of what it radiates reaches other surfaces."},
		Change:  []string{"Bare copper (0.4): the radiation falls by half and the air's part stays.", "A thin pipe gives more to the air for its surface."},
		Code:    "solveHeatingPipe",
		Solve:   solveHeatingPipe,
	}
}

func solveHeatingPipe(v []float64) (r Result, err error) {
	at := func(surface float64) (airheat.HeatPipe, airheat.PipeHeat, error) {
		p := airheat.DefaultHeatPipe(surface, v[1])
		p.Diameter, p.Emissivity = v[2], v[3]
		h, err := p.Heat()
		return p, h, err
	}
	for _, surface := range []float64{40, 60, 80} {
		_, h, err := at(surface)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%.0f °C: %5.1f W/m by convection (%.1f by the law of 51 mm), %4.1f by radiation, %5.1f in all, %.2f radiant",
			surface, h.Convection, h.VanthoorConvection, h.Radiation, h.Total, h.Radiant))
	}
	p, h, err := at(v[0])
	if err != nil {
		return r, err
	}
	values := numbers{"d": v[2], "t_p": v[0], "t_a": v[1], "ε": v[3], "F": p.View, "σ": 5.670374419e-8}
	r.Steps = []Step{
		{Says: "To the air, by free convection.", Formula: "q_c = 1.28 π d^0.75 (t_p - t_a)^1.25", Source: "Righini20", Values: values, Value: h.Convection, Unit: "W/m"},
		{Says: "A rival, measured on pipes of 51 mm.", Formula: "q_v = 1.99 π d (t_p - t_a)^1.32", Source: "Vanthoor11 appendix table 4", Values: values, Value: h.VanthoorConvection, Unit: "W/m"},
		{Says: "By radiation to what the pipe sees.", Formula: "q_r = π d ε F σ ((t_p + 273.15)^4 - (t_a + 273.15)^4)", Source: "Vanthoor11", Values: values, Value: h.Radiation, Unit: "W/m"},
		{Says: "Share of it that is radiation.", Formula: "x = q_r/(q_c + q_r)", Values: numbers{"q_r": h.Radiation, "q_c": h.Convection}, Value: h.Radiant},
	}
	part := func(pick func(airheat.PipeHeat) float64) func(float64) float64 {
		return func(t float64) float64 {
			_, h, err := at(t)
			if err != nil {
				return math.NaN()
			}
			return pick(h)
		}
	}
	r.Picture, err = chart{title: "Heat of a metre of pipe", says: "Three curves that rise with the temperature of the pipe: in all, by convection, by radiation.", x: "surface of the pipe, °C", y: "W/m", zero: true, curves: []curve{
		{"in all", along(v[1], 100, 60, part(func(h airheat.PipeHeat) float64 { return h.Total }))},
		{"convection", along(v[1], 100, 60, part(func(h airheat.PipeHeat) float64 { return h.Convection }))},
		{"radiation", along(v[1], 100, 60, part(func(h airheat.PipeHeat) float64 { return h.Radiation }))},
	}, marks: []mark{{"", math.Min(v[0], 100), part(func(h airheat.PipeHeat) float64 { return h.Total })(math.Min(v[0], 100))}}}.picture("What a metre gives to the air, what it radiates, and both.")
	return r, err
}
