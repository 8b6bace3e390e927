package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func supercooled() Figure {
	return Figure{
		Name: "supercooled", Title: "Humidity over liquid water below freezing", Subject: "moist air", Package: "psychro", Example: "Example_overLiquidWaterBelowFreezing",
		Question: "A weather service gives 80 % over liquid water at -10 °C. How near is that air to frost?",
		Sketch:   "Saturation over ice lies below saturation over supercooled water, so that the same air counts as moister over ice.",
		Given: []Given{
			{"t", "temperature of the air", "°C", -10, -30, -0.5},
			{"φ_l", "relative humidity over liquid water", "fraction", 0.80, 0.1, 0.9},
			{"p", "pressure", "Pa", 101325, 70e3, 110e3},
		},
		Assumes: []string{"The service states humidity over liquid water at all temperatures, as is the rule of [WMO08]."},
		Change:  []string{"Colder air: the two humidities draw apart, by a tenth for each 10 K."},
		Code:    "solveSupercooled",
		Solve:   solveSupercooled,
	}
}

func solveSupercooled(v []float64) (r Result, err error) {
	t, rh, p := v[0], v[1], v[2]
	s, err := psychro.RealGas.FromRelativeHumidityOver(psychro.Liquid, t, rh, p)
	if err != nil {
		return r, err
	}
	dew, err := psychro.RealGas.FromDewPointOver(psychro.Liquid, t, s.DewPointOver(psychro.Liquid), p)
	if err != nil {
		return r, err
	}
	bulb, err := psychro.RealGas.FromWetBulbOver(psychro.Liquid, t, s.WetBulbOver(psychro.Liquid), p)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("relative humidity  %.3f over liquid, %.3f over ice", s.RelativeHumidityOver(psychro.Liquid), s.RelativeHumidity()),
		fmt.Sprintf("dew point          %.2f °C, frost point %.2f °C", s.DewPointOver(psychro.Liquid), s.DewPoint()),
		fmt.Sprintf("wet bulb           %.2f °C supercooled, %.2f °C iced", s.WetBulbOver(psychro.Liquid), s.WetBulb()),
		fmt.Sprintf("humidity ratio     %.5f g/kg, %.5f by the dew point, %.5f by the wet bulb", 1000*s.HumidityRatio(), 1000*dew.HumidityRatio(), 1000*bulb.HumidityRatio()),
		fmt.Sprintf("heat to evaporate  %.0f kJ/kg from liquid, %.0f from ice", psychro.LatentHeatOver(psychro.Liquid, t)/1000, psychro.LatentHeat(t)/1000),
		fmt.Sprintf("260 Pa saturate at %.2f °C over liquid, %.2f over ice", psychro.SaturationTemperatureOver(psychro.Liquid, 260), psychro.SaturationTemperature(260)),
	}
	liquid, ice := psychro.SaturationPressureOver(psychro.Liquid, t), psychro.SaturationPressureOver(psychro.Ice, t)
	r.Steps = []Step{
		{Says: "Saturation pressure over supercooled water.", Symbol: "p_l", Source: "IapwsIF07 eq. 30", Value: liquid, Unit: "Pa"},
		{Says: "Saturation pressure over ice.", Symbol: "p_i", Source: "IapwsIce11 eq. 6", Value: ice, Unit: "Pa"},
		{Says: "The same vapour over ice.", Formula: "φ_i = φ_l p_l/p_i", Values: numbers{"φ_l": rh, "p_l": liquid, "p_i": ice}, Value: s.RelativeHumidity(), Within: 1e-4, Why: "the enhancement factors over water and ice differ"},
		{Says: "Frost point.", Symbol: "t_f", Source: "where f p_s over ice is the vapour pressure", Value: s.DewPoint(), Unit: "°C"},
	}
	r.Picture, err = chart{title: "Saturation over water and over ice", says: "Two rising curves of saturation pressure below freezing; the one over ice is the lower.", x: "temperature, °C", y: "pressure, Pa",
		curves: []curve{
			{"over liquid", along(-30, 0, 60, func(t float64) float64 { return psychro.SaturationPressureOver(psychro.Liquid, t) })},
			{"over ice", along(-30, 0, 60, func(t float64) float64 { return psychro.SaturationPressureOver(psychro.Ice, t) })},
		}, marks: []mark{{"the air", t, s.VapourPressure()}}}.picture("What is not yet saturated over water may already lay frost.")
	return r, err
}
