package figures

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/plotter"

	"cloche.example/psychro"
)

func hours() Figure {
	return Figure{
		Name: "hours", Title: "Six hours of a day, one of them wrong", Subject: "moist air", Package: "psychro", Example: "Example_columnsOfHours",
		Question: "A record of hours gives temperature and relative humidity. How dry is each hour, and what becomes of a slip in the record?",
		Sketch:   "Six hours from dawn to dusk at 340 m. The fourth hour's humidity was written in per cent: it is refused and stays a gap.",
		Given: []Given{
			{"φ_4", "humidity written for the fourth hour", "fraction", 62, 0, 100},
			{"z", "altitude", "m", 340, 0, 4000},
		},
		Assumes: []string{"One pressure for all hours, that of the standard atmosphere."},
		Change:  []string{"Write 0.62 for the fourth hour: the gap closes."},
		Code:    "solveHours",
		Solve:   solveHours,
	}
}

func solveHours(v []float64) (r Result, err error) {
	temperature := []float64{-4, 2, 9, 14, 11, 5}             // °C
	humidity := []float64{0.95, 0.88, 0.70, v[0], 0.66, 0.81} // fraction
	pressure := psychro.StandardPressure(v[1])                // Pa, one for the column
	ratio := psychro.HumidityRatioFromRelativeHumidityTo(nil, temperature, humidity, pressure)
	deficit := psychro.VapourPressureDeficitFromRelativeHumidityTo(nil, temperature, humidity, pressure)
	dew := psychro.DewPointFromHumidityRatioTo(nil, temperature, ratio, pressure)
	bulb := psychro.WetBulbFromHumidityRatioTo(nil, temperature, ratio, pressure)
	back := psychro.RelativeHumidityFromHumidityRatioTo(nil, temperature, ratio, pressure)
	r.Lines = []string{"   °C   g/kg  deficit Pa  dew point  wet bulb     rh"}
	var dry, wet, point plotter.XYs
	for i := range temperature {
		r.Lines = append(r.Lines, fmt.Sprintf("%5.0f  %5.2f  %10.0f  %9.2f  %8.2f  %5.2f", temperature[i], 1000*ratio[i], deficit[i], dew[i], bulb[i], back[i]))
		hour := float64(i + 1)
		dry = append(dry, plotter.XY{X: hour, Y: temperature[i]})
		if !math.IsNaN(dew[i]) && !math.IsNaN(bulb[i]) {
			wet, point = append(wet, plotter.XY{X: hour, Y: bulb[i]}), append(point, plotter.XY{X: hour, Y: dew[i]})
		}
	}
	states, err := psychro.StatesFromRelativeHumidityTo(nil, temperature, humidity, pressure)
	r.Lines = append(r.Lines, fmt.Sprintf("last hour %.1f kJ/kg", states[5].Enthalpy()/1000))
	if err != nil || v[0] == 62 {
		r.Lines = append(r.Lines, fmt.Sprint(err))
	}
	t, s := temperature[5], states[5]
	es, e := s.SaturationVapourPressure(), s.VapourPressure()
	r.Steps = []Step{
		{Says: "Pressure at the altitude.", Formula: "p = 101325 (1 - 2.25577e-5 z)^5.2559", Source: "HoF17 ch. 1 eq. 3", Values: numbers{"z": v[1]}, Value: pressure, Unit: "Pa", Figures: 5, Within: 2e-4, Why: "the handbook rounds the exponent and the factor"},
		{Says: fmt.Sprintf("Vapour pressure of the last hour, at %g °C.", t), Formula: "e = φ e_s", Values: numbers{"φ": humidity[5], "e_s": es}, Value: e, Unit: "Pa"},
		{Says: "Its deficit.", Formula: "D = e_s - e", Values: numbers{"e_s": es, "e": e}, Value: deficit[5], Unit: "Pa", Within: 1e-7, Why: "rounding"},
		{Says: "Its humidity ratio.", Formula: "W = 0.621945 e/(p - e)", Source: "HoF17 ch. 1 eq. 20", Values: numbers{"e": e, "p": pressure}, Value: ratio[5], Unit: "kg/kg", Within: 1e-5, Why: "the factor is rounded"},
	}
	r.Picture, err = chart{title: "The day's three temperatures", says: "Dry bulb, wet bulb and dew point over six hours; the lines of the last two skip an hour that was refused.", x: "hour of the record", y: "°C",
		curves: []curve{{"dry bulb", dry}, {"wet bulb", wet}, {"dew point", point}}}.picture("A refused hour is a gap, not a guess.")
	return r, err
}
