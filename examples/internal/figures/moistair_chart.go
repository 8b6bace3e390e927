package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func readChart() Figure {
	return Figure{
		Name: "reading-a-chart", Title: "Reading a moist-air chart", Subject: "moist air", Package: "psychro", Example: "Example_state",
		Question: "A thermometer reads 40 °C and its wet neighbour 20 °C. What else is known of the air?",
		Source:   "HoF17 ch. 1 example 1",
		Sketch:   "From the wet bulb on the saturation curve go up along the slanted line to the dry bulb, then read across.",
		Given:    readGiven(),
		Assumes:  []string{"The wet bulb has settled and is shielded from radiation."},
		Change:   []string{"Bring the wet bulb nearer to the dry one: the air is moister, and the dew point follows."},
		Code:     "solveReadChart",
		Solve:    solveReadChart,
	}
}

func readGiven() []Given {
	return []Given{
		{"t", "dry bulb", "°C", 40, 1, 60},
		{"t_w", "wet bulb", "°C", 20, 1, 40},
		{"p", "pressure", "Pa", 101325, 70e3, 110e3},
	}
}

func solveReadChart(v []float64) (r Result, err error) {
	t, tw, p := v[0], v[1], v[2]
	s, err := psychro.FromWetBulb(t, tw, p)
	if err != nil {
		return r, err
	}
	ideal, err := psychro.IdealGas.FromWetBulb(t, tw, p)
	if err != nil {
		return r, err
	}
	book := func(words string) string { return said(readGiven(), v, words) }
	r.Lines = []string{
		"                      real gas   ideal form" + book("  handbook"),
		fmt.Sprintf("humidity ratio kg/kg  %8.5f   %8.5f    %s", s.HumidityRatio(), ideal.HumidityRatio(), book("0.0065")),
		fmt.Sprintf("dew point °C          %8.2f   %8.2f    %s", s.DewPoint(), ideal.DewPoint(), book("7")),
		fmt.Sprintf("relative humidity     %8.4f   %8.4f    %s", s.RelativeHumidity(), ideal.RelativeHumidity(), book("0.14")),
		fmt.Sprintf("enthalpy kJ/kg        %8.2f   %8.2f    %s", s.Enthalpy()/1000, ideal.Enthalpy()/1000, book("56.7")),
		fmt.Sprintf("volume m³/kg          %8.4f   %8.4f    %s", s.SpecificVolume(), ideal.SpecificVolume(), book("0.896")),
	}
	ps := psychro.HylandWexler(psychro.Liquid, tw)
	at, err := psychro.IdealGas.FromRelativeHumidity(tw, 1, p)
	if err != nil {
		return r, err
	}
	w := ideal.HumidityRatio()
	const rounded = "the handbook rounds the constant"
	r.Steps = []Step{
		{Says: "Saturation pressure at the wet bulb.", Symbol: "p_s", Source: "HoF17 ch. 1 eq. 6", Value: ps, Unit: "Pa"},
		{Says: "Humidity ratio of air saturated there.", Formula: "W_s = 0.621945 p_s/(p - p_s)", Source: "HoF17 ch. 1 eq. 21", Values: numbers{"p_s": ps, "p": p}, Value: at.HumidityRatio(), Unit: "kg/kg", Figures: 5, Within: 1e-5, Why: rounded},
		{Says: "Humidity ratio of the air, along the line of the wet bulb.", Formula: "W = ((2501 - 2.326 t_w) W_s - 1.006 (t - t_w))/(2501 + 1.86 t - 4.186 t_w)", Source: "HoF17 ch. 1 eq. 33",
			Values: numbers{"t": t, "t_w": tw, "W_s": at.HumidityRatio()}, Value: w, Unit: "kg/kg", Figures: 5, Within: 2e-3, Why: "the handbook rounds the enthalpies in its equation"},
		{Says: "Enthalpy.", Formula: "h = 1.006 t + W (2501 + 1.86 t)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"t": t, "W": w}, Value: ideal.Enthalpy() / 1000, Unit: "kJ/kg"},
		{Says: "Volume, for a kilogram of dry air.", Formula: "v = 287.042 (t + 273.15) (1 + 1.607858 W)/p", Source: "HoF17 ch. 1 eq. 26", Values: numbers{"t": t, "W": w, "p": p}, Value: ideal.SpecificVolume(), Unit: "m³/kg", Within: 1e-5, Why: rounded},
		{Says: "Dew point: where this humidity ratio is saturated.", Symbol: "t_d", Source: "HoF17 ch. 1 eq. 6, solved", Value: ideal.DewPoint(), Unit: "°C"},
	}
	r.Printed = "humidity ratio 0.0065, dew point 7 °C, relative humidity 14 %, enthalpy 56.7 kJ/kg, volume 0.896 m³/kg, all read off its chart."
	r.Picture, err = airChart("The state on the chart", "From the wet bulb on the saturation curve down to the right to the air, then level to the left to the dew point.", "Wet bulb, state and dew point on one chart.", p, airPoint{"wet bulb", tw, psychro.SaturationHumidityRatio(tw, p)}, airOf("the air", s), airPoint{"dew point", s.DewPoint(), s.HumidityRatio()})
	return r, err
}
