package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func hotAir() Figure {
	return Figure{
		Name: "hot-air", Title: "Air from a heater", Subject: "moist air", Package: "psychro", Example: "Example_hotAir",
		Question: "What becomes of house air that a heater warms by 100, 150 and 200 kW?",
		Sketch:   "A heater draws air of the house and blows it out hot. Hot supply air can burn people and scorch film and plants: keep to the maker's distances.",
		Given: []Given{
			{"V", "volume flow at the inlet", "m³/s", 1.5, 0.6, 10},
			{"t", "temperature at the inlet", "°C", 12, -10, 30},
			{"φ", "relative humidity at the inlet", "fraction", 0.85, 0.05, 1},
			{"q", "the middle one of the heats", "W", 150e3, 1e3, 200e3},
		},
		Assumes: []string{"An altitude of 340 m; no water is added."},
		Change:  []string{"Watch the relative humidity: at the outlet it is next to nothing, while the dew point has not moved."},
		Code:    "solveHotAir",
		Solve:   solveHotAir,
	}
}

func solveHotAir(v []float64) (r Result, err error) {
	p := psychro.StandardPressure(340)
	in, err := psychro.FromRelativeHumidity(v[1], v[2], p)
	if err != nil {
		return r, err
	}
	stream := psychro.Stream{State: in, DryAir: v[0] / in.SpecificVolume()}
	r.Lines = []string{"   kW      °C   m³/s     rh  dew point  wet bulb  J/(kg K)"}
	path := []airPoint{}
	var last psychro.Stream
	q := v[3]
	for _, heat := range []float64{0, q / 1.5, q, q / 0.75} {
		out, err := stream.Heated(heat)
		if err != nil {
			return r, err
		}
		s := out.State
		last = out
		path = append(path, airOf(fmt.Sprintf("%.0f kW", heat/1000), s))
		r.Lines = append(r.Lines, fmt.Sprintf("%5.0f  %6.1f  %5.3f  %.3f  %9.2f  %8.2f  %8.1f", heat/1000, s.Temperature(), out.VolumeFlow(), s.RelativeHumidity(),
			s.DewPoint(), s.WetBulb(), s.HeatCapacity()))
	}
	if _, err := stream.Heated(q / 0.375); err != nil {
		r.Lines = append(r.Lines, err.Error())
	}
	most := q / 0.75
	r.Steps = []Step{
		{Says: "Dry air that flows.", Formula: "m = V/v", Values: numbers{"V": v[0], "v": in.SpecificVolume()}, Value: stream.DryAir, Unit: "kg/s"},
		{Says: "Heat capacity of the cold air, for a kilogram of dry air with its vapour.", Formula: "c = 1006 + 1860 W", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"W": in.HumidityRatio()}, Value: in.HeatCapacity(), Unit: "J/(kg K)", Figures: 5,
			Within: 5e-3, Why: "constant heat capacities; the library's grow with temperature"},
		{Says: "Temperature after the greatest heat.", Formula: "t_2 = t + q/(m c)", Values: numbers{"t": v[1], "q": most, "m": stream.DryAir, "c": in.HeatCapacity()}, Value: last.State.Temperature(), Unit: "°C",
			Within: 0.02, Why: "the heat capacity of the cold air is taken all the way"},
	}
	r.Picture, err = airChart("Hot air on the chart", "A level line far to the right of the saturation curve.", "The water stays, the dew point stays; the relative humidity falls to a few per cent.", p, path...)
	return r, err
}
