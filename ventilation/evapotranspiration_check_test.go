package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Not run: how much water plants are given for what they transpire, with leaching, uneven
// drippers and the peak of a day for the mains (Rhoades; FAO 29, from memory; an extension
// sheet of 0.3 to 0.4 gal/(ft² d)), since irrigation is no part of this package; the
// share of the day's water that tomatoes lose by night (3 to 11 %, Functional Plant
// Biology 34:172, abstract), a range.
//
// Worked examples of FAO Irrigation and Drainage Paper 56 (1998), as in
// TestFAO56Radiation.
func TestFAO56Air(t *testing.T) {
	for name, f := range map[string]struct {
		rows []check.Row
		f    func(in ...float64) float64
	}{
		"pressure": {[]check.Row{{Where: "FAO56.ex2/P", In: []float64{1800}, Printed: "81.8"}},
			func(in ...float64) float64 { return psychro.FAO56Pressure(in[0]) / 1000 }},
		"psychrometric constant": {[]check.Row{
			{Where: "FAO56.ex2/gamma", In: []float64{81800}, Printed: "0.054"},
			{Where: "FAO56.ex17/gamma", In: []float64{101300}, Printed: "0.0674"},
			{Where: "FAO56.ex18/gamma", In: []float64{100100}, Printed: "0.0666"},
		}, func(in ...float64) float64 { return psychro.FAO56PsychrometricConstant(in[0]) / 1000 }},
		"mean saturation": {[]check.Row{
			{Where: "FAO56.ex3/es", In: []float64{15, 24.5}, Printed: "2.39"},
			{Where: "FAO56.ex17/es", In: []float64{25.6, 34.8}, Printed: "4.42"},
			{Where: "FAO56.ex18/es", In: []float64{12.3, 21.5}, Printed: "1.997"},
		}, func(in ...float64) float64 { return ventilation.FAO56MeanSaturation(in[0], in[1]) / 1000 }},
		"bulbs": {[]check.Row{{Where: "FAO56.ex4/ea", In: []float64{25.6, 19.5, 87900}, Printed: "1.91"}},
			func(in ...float64) float64 { return ventilation.FAO56VapourFromBulbs(in[0], in[1], in[2]) / 1000 }},
		"humidities": {[]check.Row{
			{Where: "FAO56.ex5/ea", In: []float64{18, 25, 0.82, 0.54}, Printed: "1.70"},
			{Where: "FAO56.ex18/ea", In: []float64{12.3, 21.5, 0.84, 0.63}, Printed: "1.409"},
		}, func(in ...float64) float64 { return ventilation.FAO56Vapour(in[0], in[1], in[2], in[3]) / 1000 }},
		"deficit": {[]check.Row{{Where: "FAO56.ex6/es-ea", In: []float64{15, 24.5, 1.70}, Printed: "0.69"}},
			func(in ...float64) float64 { return ventilation.FAO56MeanSaturation(in[0], in[1])/1000 - in[2] }},
		"slope": {[]check.Row{
			{Where: "FAO56.ex17/Delta", In: []float64{30.2}, Printed: "0.246"},
			{Where: "FAO56.ex18/Delta", In: []float64{16.9}, Printed: "0.122"},
			{Where: "FAO56.ex19/night", In: []float64{28}, Printed: "0.220"},
			{Where: "FAO56.ex19/day", In: []float64{38}, Printed: "0.358"},
		}, func(in ...float64) float64 { return psychro.FAO56Slope(in[0]) / 1000 }},
	} {
		t.Run(name, func(t *testing.T) { check.Run(t, f.rows, f.f) })
	}
}

// Reference evapotranspiration of examples 17 (a month), 18 (a day) and 19
// (two hours), from the printed intermediate figures.
func TestFAO56ReferenceEvapotranspiration(t *testing.T) {
	for _, c := range []struct {
		row  check.Row
		g    ventilation.Grass
		hour bool
	}{
		{check.Row{Where: "FAO56.ex17/ETo", Printed: "5.72", Tol: 0.01, Why: "the example sums rounded figures: 3.97 + 1.75"},
			ventilation.Grass{Temperature: 30.2, Saturation: 4420, Vapour: 2850, Wind: 2, Net: 14.33e6, Soil: 0.14e6, Pressure: 101300}, false},
		{check.Row{Where: "FAO56.ex18/ETo", Printed: "3.88"},
			ventilation.Grass{Temperature: 16.9, Saturation: 1997, Vapour: 1409, Wind: 2.078, Net: 13.28e6, Pressure: 100100}, false},
		{check.Row{Where: "FAO56.ex19/night", Printed: "0.00"},
			ventilation.Grass{Temperature: 28, Saturation: 3780, Vapour: 3402, Wind: 1.9, Net: -0.100e6, Soil: -0.050e6, Pressure: 101200}, true},
		{check.Row{Where: "FAO56.ex19/day", Printed: "0.63"},
			ventilation.Grass{Temperature: 38, Saturation: 6625, Vapour: 3445, Wind: 3.3, Net: 1.749e6, Soil: 0.175e6, Pressure: 101200}, true},
	} {
		t.Run(c.row.Where, func(t *testing.T) {
			f := c.g.Day
			if c.hour {
				f = c.g.Hour
			}
			e, err := f()
			require.NoError(t, err)
			require.NoError(t, c.row.Verify(e.ETo))
			require.InDelta(t, e.ETo, e.Radiation+e.Dryness, 1e-12)
		})
	}
	g := ventilation.Grass{Temperature: 30.2, Saturation: 4420, Vapour: 2850, Wind: 2, Net: 14.33e6, Soil: 0.14e6, Pressure: 101300}
	e, err := g.Day()
	require.NoError(t, err)
	require.NoError(t, check.Row{Where: "FAO56.ex17/factor", Printed: "1.68"}.Verify(e.Factor))
	require.NoError(t, check.Row{Where: "FAO56.ex17/radiation", Printed: "3.97", Tol: 0.01, Why: "the example multiplies the rounded 0.685 and 5.79"}.Verify(e.Radiation))
	require.NoError(t, check.Row{Where: "FAO56.ex17/dryness", Printed: "1.75"}.Verify(e.Dryness))
}

// Examples 18 and 19 from the weather, as a station measures it.
func TestFAO56FromTheWeather(t *testing.T) {
	day, err := ventilation.GrassDay{Lowest: 12.3, Highest: 21.5, LeastHumidity: 0.63, MostHumidity: 0.84, Solar: 22.07e6, ClearSky: 30.90e6, Wind: 2.078, Pressure: 100100}.Grass()
	require.NoError(t, err)
	require.NoError(t, check.Row{Where: "FAO56.ex18/es", Printed: "1.997"}.Verify(day.Saturation/1000))
	require.NoError(t, check.Row{Where: "FAO56.ex18/ea", Printed: "1.409"}.Verify(day.Vapour/1000))
	require.NoError(t, check.Row{Where: "FAO56.ex18/Rn", Printed: "13.28"}.Verify(day.Net/1e6))
	e, err := day.Day()
	require.NoError(t, err)
	require.NoError(t, check.Row{Where: "FAO56.ex18/ETo", Printed: "3.88"}.Verify(e.ETo))
	for _, c := range []struct {
		h                ventilation.GrassHour
		where            string
		net, soil, wants string
	}{
		{ventilation.GrassHour{Temperature: 28, Humidity: 0.90, Clearness: 0.8, Wind: 1.9, Pressure: 101200}, "FAO56.ex19/night", "-0.100", "-0.050", "0.00"},
		{ventilation.GrassHour{Temperature: 38, Humidity: 0.52, Solar: 2.450e6, Clearness: 0.922, Daylight: true, Wind: 3.3, Pressure: 101200}, "FAO56.ex19/day", "1.749", "0.175", "0.63"},
	} {
		g, err := c.h.Grass()
		require.NoError(t, err)
		e, err := g.Hour()
		require.NoError(t, err)
		require.NoError(t, check.Row{Where: c.where + "/Rn", Printed: c.net}.Verify(g.Net/1e6))
		require.NoError(t, check.Row{Where: c.where + "/G", Printed: c.soil}.Verify(g.Soil/1e6))
		require.NoError(t, check.Row{Where: c.where + "/ETo", Printed: c.wants}.Verify(e.ETo))
	}
}
