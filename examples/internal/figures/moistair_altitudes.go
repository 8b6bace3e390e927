package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func altitudes() Figure {
	return Figure{
		Name: "altitudes", Title: "Air of one humidity at six heights", Subject: "moist air", Package: "psychro", Example: "Example_altitude",
		Question: "Air of one temperature and relative humidity: what does height above the sea change in it?",
		Given: []Given{
			{"t", "temperature of the air", "°C", 20, -40, 60},
			{"φ", "relative humidity", "fraction", 0.6, 0.05, 1},
		},
		Assumes: []string{"The standard atmosphere. The last column is the pressure by the shorter formula of FAO56."},
		Change:  []string{"Compare two temperatures: the dew point does not move with height, the water in a kilogram of air does."},
		Code:    "solveAltitudes",
		Solve:   solveAltitudes,
	}
}

func solveAltitudes(v []float64) (r Result, err error) {
	t, rh := v[0], v[1]
	r.Lines = []string{"    m      Pa   g/kg   kJ/kg  m³/kg  kg/m³  wet bulb  dew point  standard °C   FAO56"}
	var ratio, density curve
	for z := 0.0; z <= 5000; z += 1000 {
		p := psychro.StandardPressure(z)
		s, err := psychro.FromRelativeHumidity(t, rh, p)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%5.0f  %6.0f  %5.2f  %6.2f  %.3f  %.3f  %8.2f  %9.2f  %11.1f  %6.0f", psychro.StandardAltitude(p), p,
			1000*s.HumidityRatio(), s.Enthalpy()/1000, s.SpecificVolume(), s.Density(), s.WetBulb(), s.DewPoint(),
			psychro.StandardTemperature(z), psychro.FAO56Pressure(z)))
	}
	water := func(z float64) float64 {
		s, err := psychro.FromRelativeHumidity(t, rh, psychro.StandardPressure(z))
		if err != nil {
			return 0
		}
		return 1000 * s.HumidityRatio()
	}
	ratio.at = along(0, 5000, 50, water)
	density.at = along(0, 5000, 50, func(z float64) float64 {
		s, _ := psychro.FromRelativeHumidity(t, rh, psychro.StandardPressure(z))
		return s.Density()
	})
	top, _ := psychro.FromRelativeHumidity(t, rh, psychro.StandardPressure(5000))
	pw := top.VapourPressure()
	p := psychro.StandardPressure(5000)
	r.Steps = []Step{
		{Says: "Pressure of the standard atmosphere at 5000 m.", Formula: "p = 101325 (1 - 2.25577e-5 z)^5.2559", Source: "HoF17 ch. 1 eq. 3",
			Values: numbers{"z": 5000}, Value: p, Unit: "Pa", Figures: 5, Within: 2e-4, Why: "the handbook rounds the exponent and the factor"},
		{Says: "The same by the shorter formula.", Formula: "p = 101.3e3 ((293 - 0.0065 z)/293)^5.26", Source: "FAO56 eq. 7",
			Values: numbers{"z": 5000}, Value: psychro.FAO56Pressure(5000), Unit: "Pa", Figures: 5},
		{Says: "Vapour pressure of the air, nearly the same at every height.", Symbol: "p_w", Source: "IAPWS saturation, enhancement factor", Value: pw, Unit: "Pa"},
		{Says: "What a kilogram of dry air holds at 5000 m.", Formula: "W = 0.621945 p_w/(p - p_w)", Source: "HoF17 ch. 1 eq. 20",
			Values: numbers{"p_w": pw, "p": p}, Value: top.HumidityRatio(), Unit: "kg/kg", Within: 1e-5, Why: "the factor is rounded"},
	}
	r.Picture, err = charts("Air by height", "Two charts over altitude: the humidity ratio rises and the density falls with height.", "The same air by height: more water in each kilogram, fewer kilograms in each cubic metre.",
		chart{title: "humidity ratio", x: "altitude, m", y: "humidity ratio, g/kg", curves: []curve{ratio}, high: 200},
		chart{title: "density", x: "altitude, m", y: "density, kg/m³", curves: []curve{density}, high: 200})
	return r, err
}
