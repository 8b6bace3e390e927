package figures

import (
	"fmt"

	"gonum.org/v1/plot/plotter"

	"cloche.example/examples/internal/page"
	"cloche.example/psychro"
)

func altitude() Figure {
	return Figure{
		Name: "altitude", Title: "The same heater higher up", Subject: "moist air", Package: "psychro",
		Question: "A fan moves the same volume everywhere. How much less air, by mass, does it move on a mountain?",
		Sketch:   "One fan, two places: sea level and the site. Pressure falls with height, and with it the mass of a cubic metre.",
		Given: []Given{
			{"z", "altitude of the site", "m", 1500, -500, 5000},
			{"t", "temperature of the air", "°C", 20, -40, 60},
			{"φ", "relative humidity", "fraction", 0.5, 0, 1},
		},
		Assumes: []string{"The standard atmosphere; weather moves the pressure by two or three per cent either way."},
		Change:  []string{"Warm the air to 50 °C: a heater's outlet loses as much density as 900 m of height."},
		Code:    "solveAltitude",
		Solve:   solveAltitude,
	}
}

func solveAltitude(v []float64) (r Result, err error) {
	z, t, rh := v[0], v[1], v[2]
	p := psychro.StandardPressure(z)
	sea, err := psychro.FromRelativeHumidity(t, rh, psychro.StandardPressure(0))
	if err != nil {
		return r, err
	}
	site, err := psychro.FromRelativeHumidity(t, rh, p)
	if err != nil {
		return r, err
	}
	share := site.Density() / sea.Density()
	r.Steps = []Step{
		{Says: "Pressure of the standard atmosphere at the site.", Formula: "p = 101325 (1 - 2.25577e-5 z)^5.2559", Source: "HoF17 ch. 1 eq. 3",
			Values: map[string]float64{"z": z}, Value: p, Unit: "Pa", Figures: 5, Within: 2e-4, Why: "the handbook rounds the exponent and the factor"},
		{Says: "Density of the moist air at sea level.", Symbol: "ρ_0", Source: "HoF17 ch. 1 eq. 11, real gas", Value: sea.Density(), Unit: "kg/m³"},
		{Says: "Density at the site.", Symbol: "ρ_z", Source: "HoF17 ch. 1 eq. 11, real gas", Value: site.Density(), Unit: "kg/m³"},
		{Says: "The share of the mass that the same fan moves.", Formula: "s = ρ_z/ρ_0", Values: map[string]float64{"ρ_z": site.Density(), "ρ_0": sea.Density()}, Value: share},
	}
	r.Lines = []string{fmt.Sprintf("at %.0f m: %.0f Pa, %.4f kg/m³, %.1f %% of the mass at sea level", z, p, site.Density(), 100*share)}
	plot := page.NewPlot("altitude, m", "mass moved, % of sea level")
	var line plotter.XYs
	for h := 0.0; h <= 5000; h += 100 {
		s, err := psychro.FromRelativeHumidity(t, rh, psychro.StandardPressure(h))
		if err != nil {
			return r, err
		}
		line = append(line, plotter.XY{X: h, Y: 100 * s.Density() / sea.Density()})
	}
	curve, err := plotter.NewLine(line)
	if err != nil {
		return r, err
	}
	here, err := plotter.NewScatter(plotter.XYs{{X: z, Y: 100 * share}})
	if err != nil {
		return r, err
	}
	curve.Color, here.Color = page.PenOf(0).Color, page.PenOf(1).Color
	plot.Add(curve, here)
	plot.Y.Min = 40
	r.Picture = Picture{SVG: page.Chart("Mass moved against altitude", fmt.Sprintf("A curve that falls from 100 %% at sea level; at %.0f m it stands at %.1f %%.", z, 100*share), 420, 240, plot)}
	return r, nil
}
