package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func bulbs() Figure {
	return Figure{
		Name: "bulbs", Title: "A wick of water or of ice", Subject: "moist air", Package: "psychro", Example: "Example_waterOrIceBulb",
		Question: "Near freezing, which wet bulb does a psychrometer read?",
		Sketch:   "A thermometer in a wet wick, air blown past it. Below 0 °C the wick may be frozen or still liquid, and the two read differently.",
		Given: []Given{
			{"t", "temperature of the air", "°C", 3, 0.5, 8},
			{"p", "pressure", "Pa", 101325, 70e3, 110e3},
		},
		Assumes: []string{"Equilibrium of the wick with the air, no radiation upon it."},
		Change:  []string{"Colder air: the band of humidities in which both bulbs can stand grows."},
		Code:    "solveBulbs",
		Solve:   solveBulbs,
	}
}

func solveBulbs(v []float64) (r Result, err error) {
	t, p := v[0], v[1]
	r.Lines = []string{fmt.Sprintf("air of %.3g °C   liquid bulb  iced bulb  chosen", t)}
	bulb := func(rh float64, read func(psychro.State) float64) float64 {
		s, _ := psychro.FromRelativeHumidity(t, rh, p)
		return read(s)
	}
	liquid := func(s psychro.State) float64 { return s.WetBulbOver(psychro.Liquid) }
	ice := func(s psychro.State) float64 { return s.WetBulbOver(psychro.Ice) }
	for _, rh := range []float64{0.40, 0.50, 0.54, 0.58, 0.62, 0.70} {
		s, err := psychro.FromRelativeHumidity(t, rh, p)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%7.0f %%     %8.2f     %8.2f  %7.2f", 100*rh, liquid(s), ice(s), s.WetBulb()))
	}
	r.Lines = append(r.Lines, "A liquid bulb below 0 °C is supercooled; NaN: the ice would melt.")
	s, err := psychro.IdealGas.FromRelativeHumidity(t, 0.5, p)
	if err != nil {
		return r, err
	}
	tw := s.WetBulbOver(psychro.Liquid)
	ps := psychro.HylandWexler(psychro.Liquid, tw)
	r.Steps = []Step{
		{Says: "At 50 %, by the ideal form: the liquid bulb that balances heat and vapour.", Symbol: "t_w", Source: "HoF17 ch. 1 eq. 33, solved", Value: tw, Unit: "°C"},
		{Says: "Saturation pressure over liquid water at the bulb.", Symbol: "p_s", Source: "HoF17 ch. 1 eq. 6", Value: ps, Unit: "Pa"},
		{Says: "Humidity ratio of air saturated at the bulb.", Formula: "W_s = 0.621945 p_s/(p - p_s)", Source: "HoF17 ch. 1 eq. 21", Values: numbers{"p_s": ps, "p": p}, Value: 0.621945 * ps / (p - ps), Unit: "kg/kg", Figures: 5},
		{Says: "The humidity ratio that such a bulb means is that of the air.", Formula: "W = ((2501 - 2.326 t_w) W_s - 1.006 (t - t_w))/(2501 + 1.86 t - 4.186 t_w)", Source: "HoF17 ch. 1 eq. 33",
			Values: numbers{"t": t, "t_w": tw, "W_s": 0.621945 * ps / (p - ps)}, Value: s.HumidityRatio(), Unit: "kg/kg", Within: 1e-3, Why: "the handbook rounds the enthalpies in its equation"},
	}
	r.Picture, err = chart{title: "Wet bulb against humidity", says: "Two lines of wet bulb over relative humidity; the iced bulb stands below the liquid one and ends at 0 °C.",
		x: "relative humidity, %", y: "wet bulb, °C", curves: []curve{
			{"liquid bulb", along(30, 80, 100, func(rh float64) float64 { return bulb(rh/100, liquid) })},
			{"iced bulb", along(30, 80, 100, func(rh float64) float64 { return bulb(rh/100, ice) })},
		}}.picture("Where both lines stand, both bulbs are in equilibrium.")
	return r, err
}
