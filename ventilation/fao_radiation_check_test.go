package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/internal/sun"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Worked examples of FAO Irrigation and Drainage Paper 56 (1998). Results of
// examples 2 to 5, 8 to 18 as printed, by way of the tests of PyETo and the NCL
// pages on radsol2_fao56 and radsol_clrsky_fao56; intermediate figures and
// example 19 from memory.
func TestFAO56Radiation(t *testing.T) {
	for name, f := range map[string]struct {
		rows []check.Row
		f    func(in ...float64) float64
	}{
		"sunshine": {[]check.Row{
			{Where: "FAO56.ex17/Rs", In: []float64{8.5, 13 + 44.0/60, 105}, Printed: "22.65"},
			{Where: "FAO56.ex18/Rs", In: []float64{9.25, 50.8, 187}, Printed: "22.07"},
		}, func(in ...float64) float64 {
			return sun.GlobalFromSunshine(sun.ExtraterrestrialDay(in[1], int(in[2])), in[0]/sun.DayLength(in[1], int(in[2]))) / 1e6
		}},
		"temperature": {[]check.Row{{Where: "FAO56.ex15/Rs", In: []float64{14.8, 26.6, 40.6}, Printed: "22.3"}},
			func(in ...float64) float64 {
				return ventilation.FAO56SolarFromTemperature(in[0], in[1], in[2]*1e6, false) / 1e6
			}},
		"shortwave": {[]check.Row{
			{Where: "FAO56.ex12/Rns", In: []float64{14.45}, Printed: "11.1"},
			{Where: "FAO56.ex17/Rns", In: []float64{22.65}, Printed: "17.44"},
			{Where: "FAO56.ex19/Rns", In: []float64{2.450}, Printed: "1.887"},
		}, func(in ...float64) float64 { return ventilation.NetShortwave(in[0]*1e6) / 1e6 }},
		"longwave": {[]check.Row{
			{Where: "FAO56.ex11/Rnl", In: []float64{19.1, 25.1, 2100, 14.5 / 18.8}, Printed: "3.5"},
			{Where: "FAO56.ex17/Rnl", In: []float64{25.6, 34.8, 2850, 22.65 / 28.54}, Printed: "3.11"},
			{Where: "FAO56.ex18/Rnl", In: []float64{12.3, 21.5, 1409, 22.07 / 30.90}, Printed: "3.71"},
		}, func(in ...float64) float64 { return ventilation.NetLongwaveDay(in[0], in[1], in[2], in[3]) / 1e6 }},
		"longwave of an hour": {[]check.Row{
			{Where: "FAO56.ex19/night", In: []float64{28, 3402, 0.8}, Printed: "0.100"},
			{Where: "FAO56.ex19/day", In: []float64{38, 3445, 0.922}, Printed: "0.137"},
		}, func(in ...float64) float64 { return ventilation.NetLongwaveHour(in[0], in[1], in[2]) / 1e6 }},
		"soil": {[]check.Row{{Where: "FAO56.ex13/G", In: []float64{14.1, 18.8}, Printed: "0.33"}},
			func(in ...float64) float64 { return ventilation.FAO56SoilHeatMonth(in[0], in[1]) / 1e6 }},
		"soil so far": {[]check.Row{{Where: "FAO56.ex17/G", In: []float64{29.2, 30.2}, Printed: "0.14"}},
			func(in ...float64) float64 { return ventilation.FAO56SoilHeatMonthSoFar(in[0], in[1]) / 1e6 }},
		"soil of an hour": {[]check.Row{
			{Where: "FAO56.ex19/night", In: []float64{-0.100, 0}, Printed: "-0.050"},
			{Where: "FAO56.ex19/day", In: []float64{1.749, 1}, Printed: "0.175"},
		}, func(in ...float64) float64 { return ventilation.SoilHeatHour(in[0]*1e6, in[1] > 0) / 1e6 }},
	} {
		t.Run(name, func(t *testing.T) { check.Run(t, f.rows, f.f) })
	}
}

// Net radiation of the examples from what was measured.
func TestFAO56NetRadiation(t *testing.T) {
	// Example 18: Rn = Rns - Rnl = 13.28 MJ/(m² d).
	ra := sun.ExtraterrestrialDay(50.8, 187)
	rs := sun.GlobalFromSunshine(ra, 9.25/sun.DayLength(50.8, 187))
	rso := sun.ClearSkyDay(ra, 100)
	ea := ventilation.FAO56Vapour(12.3, 21.5, 0.84, 0.63)
	require.NoError(t, check.Row{Where: "FAO56.ex18/Rn", Printed: "13.28"}.Verify((ventilation.NetShortwave(rs)-ventilation.NetLongwaveDay(12.3, 21.5, ea, rs/rso))/1e6))
	// Example 19, 14 to 15 h: 1.749 MJ/(m² h).
	require.NoError(t, check.Row{Where: "FAO56.ex19/Rn", Printed: "1.749"}.Verify((ventilation.NetShortwave(2.450e6)-ventilation.NetLongwaveHour(38, psychro.FAO56Saturation(38)*0.52, 2.450/2.658))/1e6))
}

// fao56.csv holds the same equations typed a second time: every coefficient
// counts.
func TestFAO56AgainstASecondTyping(t *testing.T) {
	rows := check.Numbers(t, "fao56.csv")
	for _, r := range rows {
		near := func(want, got float64) { t.Helper(); require.InDelta(t, want, got, 1e-9*(1+want)) }
		day := int(r[1])
		ra := sun.ExtraterrestrialDay(r[0], day)
		near(r[13], ra/1e6)
		near(r[14], sun.DayLength(r[0], day))
		near(r[15], sun.SeasonalCorrection(day))
		middle := sun.ClockHourAngle(r[5], day, r[3], r[4]/15)
		near(r[16], middle*math.Pi/180)
		near(r[17], sun.ExtraterrestrialSpan(r[0], day, middle-7.5, middle+7.5)/1e6)
		rs := sun.GlobalFromSunshine(ra, r[6]/sun.DayLength(r[0], day))
		near(r[18], rs/1e6)
		near(r[19], sun.ClearSkyDay(ra, r[2])/1e6)
		ea, es := ventilation.FAO56Vapour(r[7], r[8], r[9], r[10]), ventilation.FAO56MeanSaturation(r[7], r[8])
		near(r[20], ea)
		near(r[21], es)
		net := ventilation.NetLongwaveDay(r[7], r[8], ea, r[23])
		near(r[22], net/1e6)
		p := psychro.FAO56Pressure(r[2])
		near(r[24], p)
		g := ventilation.Grass{Temperature: (r[7] + r[8]) / 2, Saturation: es, Vapour: ea, Wind: ventilation.FAO56WindAtTwoMetres(r[11], 10),
			Net: ventilation.NetShortwave(rs) - net, Soil: r[12] * 1e6, Pressure: p}
		d, err := g.Day()
		require.NoError(t, err)
		near(r[25], d.ETo)
		near(r[26], ventilation.NetLongwaveHour(g.Temperature, ea, min(1, r[23]))/1e6)
		g.Net, g.Soil = 0.8e6, ventilation.SoilHeatHour(0.8e6, true)
		d, err = g.Hour()
		require.NoError(t, err)
		near(r[27], d.ETo)
	}
	require.Len(t, rows, 24)
}
