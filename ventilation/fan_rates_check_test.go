package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

const (
	foot      = 0.3048                  // m
	cubicFeet = foot * foot * foot / 60 // m³/s in a cfm
)

func fanFlows(t *testing.T, change func(*ventilation.FanRates)) ventilation.FanFlows {
	t.Helper()
	r := ventilation.DefaultFanRates(5000 * foot * foot)
	change(&r)
	f, err := r.Solve()
	require.NoError(t, err)
	return f
}

// The tables of practice are from memory; the laws agree with them.
func TestFanFactors(t *testing.T) {
	where := "fan practice, tables from memory/"
	row := func(name string, in float64, printed string) check.Row {
		return check.Row{Where: where + name, In: []float64{in}, Printed: printed, Tol: 0.0061, Why: "tables round, and the standard atmosphere has two forms"}
	}
	check.Run(t, []check.Row{
		row("1000 ft", 1000, "1.04"), row("2000 ft", 2000, "1.08"), row("3000 ft", 3000, "1.12"), row("4000 ft", 4000, "1.16"),
		row("5000 ft", 5000, "1.20"), row("6000 ft", 6000, "1.25"), row("7000 ft", 7000, "1.30"), row("0 ft", 0, "1.00"),
		{Where: where + "8000 ft", In: []float64{8000}, Printed: "1.36", Suspect: "the table lies a hundredth above the density", Right: "1.346"},
	}, func(in ...float64) float64 {
		return fanFlows(t, func(r *ventilation.FanRates) { r.Altitude = in[0] * foot }).ByAltitude
	})
	check.Run(t, []check.Row{row("10 F", 10, "0.70"), row("9 F", 9, "0.78"), row("8 F", 8, "0.88"), row("7 F", 7, "1.00"), row("6 F", 6, "1.17"), row("5 F", 5, "1.40"), row("4 F", 4, "1.75")},
		func(in ...float64) float64 {
			return fanFlows(t, func(r *ventilation.FanRates) { r.Rise = in[0] / 1.8 }).ByRise
		})
	check.Run(t, []check.Row{row("20 ft", 20, "2.24"), row("25 ft", 25, "2.00"), row("30 ft", 30, "1.83"), row("40 ft", 40, "1.58"), row("50 ft", 50, "1.41"), row("60 ft", 60, "1.29"), row("80 ft", 80, "1.12"), row("95 ft", 95, "1.02"), row("100 ft", 100, "1.00"), row("150 ft", 150, "1.00")},
		func(in ...float64) float64 {
			return fanFlows(t, func(r *ventilation.FanRates) { r.Distance = in[0] * foot }).Velocity
		})
	check.Run(t, []check.Row{row("4000 fc", 4000, "0.80"), row("8000 fc", 8000, "1.60")}, func(in ...float64) float64 {
		return fanFlows(t, func(r *ventilation.FanRates) { r.Light = in[0] * 10.76391 }).ByLight
	})
	check.Run(t, []check.Row{row("winter 18 F", 18, "0.83"), row("winter 15 F", 15, "1.00"), row("winter 12 F", 12, "1.25"), row("winter 9 F", 9, "1.67")},
		func(in ...float64) float64 {
			return fanFlows(t, func(r *ventilation.FanRates) { r.Cold = in[0] / 1.8 }).Winter / cubicFeet / (2 * 5000)
		})
}

func TestFansOfHouses(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Kessler, the rate", In: []float64{1 / (foot * foot), 0, 7, 5000, 100}, Printed: "0.04064"},
		{Where: "fan practice from memory/50 by 100 ft at 3000 ft, cfm", In: []float64{5000, 3000, 7, 5000, 100}, Printed: "21.14", Tol: 0.09, Why: "44,800 cfm with the table's 1.12 for 1.1158"},
		{Where: "fan practice, computed apart/40 by 80 ft at 5000 ft, 1.20", In: []float64{3200, 5000, 6, 4500, 80}, Printed: "15.22314", Tol: 0.03, Why: "1.20 for 1.2019"},
	}, func(in ...float64) float64 {
		f, err := ventilation.FanRates{Floor: in[0] * foot * foot, Altitude: in[1] * foot, Rise: in[2] / 1.8, Light: in[3] * 10.76391, Distance: in[4] * foot, Cold: 8}.Solve()
		require.NoError(t, err)
		return f.Summer
	})
	// The larger factor counts: of a short house with little light the velocity's.
	f := fanFlows(t, func(r *ventilation.FanRates) { r.Light /= 2; r.Distance /= 4 })
	require.InEpsilon(t, 2*8*5000*cubicFeet, f.Summer, 1e-9)
	require.InEpsilon(t, 0.5, f.House, 1e-9)
	_, err := ventilation.FanRates{Altitude: 9000, Light: 2e5, Rise: 30, Distance: 1}.Solve()
	requireFields(t, err, "Floor", "Altitude", "Light", "Rise", "Distance", "Cold")
}

// Rules of supply houses, as their pages print them: 12 cfm/ft², which is a rise of 7 °F
// times 8/12 here, half of it under half shade, half as much again for houses of 26 to 50
// ft; a change of air to 8 ft in a minute. Ours beside them for the same houses: of 24 and
// 36 ft from pads to fans, air that must move over the crop asks for 1.36 and, where the
// other rule halves it for shade, 2.22 times as much.
//
// Not run: the pads' face, which is flow over speed (PadDesign.Area); the 183 W/m² that 8
// cfm/ft² carry, which no source prints; the share of air that a screen against aphids
// cost a measured house (33 %, Katsoulas and others 2006, abstract), whose pores are not
// told; how much of the sun's heat plants took up in houses with and without pads (Willits
// 2003, abstract), a range of climates.
func TestFansOfSupplyHouses(t *testing.T) {
	rate := func(length, shade float64) (asked, ours float64) { // cfm/ft²
		f := fanFlows(t, func(r *ventilation.FanRates) {
			r.Rise *= 8.0 / 12
			r.Light *= shade
		})
		own := fanFlows(t, func(r *ventilation.FanRates) { r.Distance = length * foot })
		return f.House * 8, own.Summer / cubicFeet / 5000
	}
	check.Run(t, []check.Row{
		{Where: "fans, a supplier's page/12 by 24 ft, cfm", In: []float64{12, 24, 1, 1}, Printed: "3456"},
		{Where: "fans, a supplier's page/12 by 36 ft, shade, cfm", In: []float64{12, 36, 0.5, 1}, Printed: "2592"},
		{Where: "fans, a supplier's page/12 by 36 ft, shade and length, cfm", In: []float64{12, 36, 0.5, 1.5}, Printed: "3888"},
	}, func(in ...float64) float64 {
		asked, _ := rate(in[1], in[2])
		return in[3] * asked * in[0] * in[1]
	})
	for _, c := range []struct{ length, shade, times float64 }{{24, 1, 1.36}, {36, 0.5, 2.22}} {
		asked, ours := rate(c.length, c.shade)
		require.InDelta(t, c.times, ours/asked, 0.01)
	}
	check.Run(t, []check.Row{{Where: "fans, a society's page/20 by 50 ft, cfm", In: []float64{20, 50}, Printed: "8000"}}, func(in ...float64) float64 {
		return fanFlows(t, func(r *ventilation.FanRates) { r.Floor = in[0] * in[1] * foot * foot }).Summer / cubicFeet
	})
}

// Noons in May in two houses with pads and fans in Arizona, of more than 33 °C outside
// (CEA Open Data collection, read and averaged here): 35.1 °C, 9 % and 92.8 kPa, 25.1 and
// 26.3 °C at the sensors, whose place is not told. Pads of 0.75 to 0.85 would send in 18
// to 20 °C: the sensors lie 5 to 8.3 K behind them.
func TestPadsInTheDesert(t *testing.T) {
	out, err := psychro.FromRelativeHumidity(35.1, 0.09, 92.8e3)
	require.NoError(t, err)
	check.Run(t, []check.Row{{Where: "Arizona 2013/wet bulb", Printed: "15.3", Tol: 0.3, Why: "the mean of wet bulbs is not that of the mean air, whose 9 % is rounded"}}, func(...float64) float64 { return out.WetBulb() })
	for _, efficiency := range []float64{0.75, 0.85} {
		s, err := ventilation.PadDesign{Outside: out, Sensible: 300 * 100, Rise: 6.5, Efficiency: efficiency, Speed: 1.25}.Size()
		require.NoError(t, err)
		for _, measured := range []float64{25.1, 26.3} {
			require.InDelta(t, 6.7, measured-s.Supply.Temperature(), 1.7)
		}
	}
}

func TestCirculatingFans(t *testing.T) {
	lay := func(floor, flow, diameter float64) ventilation.CirculatingLayout {
		l, err := ventilation.CirculatingFans{Floor: floor * foot * foot, Flow: flow * cubicFeet, Diameter: diameter * foot / 12}.Solve()
		require.NoError(t, err)
		return l
	}
	check.Run(t, []check.Row{{Where: "HafPage/30 by 100 ft, cfm", In: []float64{3000, 1600, 20}, Printed: "6000"}},
		func(in ...float64) float64 { return lay(in[0], in[1], in[2]).Total / cubicFeet })
	check.Run(t, []check.Row{{Where: "HafPage/fans of 1600 cfm", In: []float64{3000, 1600, 20}, Printed: "4"}, {Where: "HafPage/fans that just do", In: []float64{3000, 1500, 20}, Printed: "4"}},
		func(in ...float64) float64 { return float64(lay(in[0], in[1], in[2]).Count) })
	check.Run(t, []check.Row{{Where: "HafPage/throw of 20 in, ft", In: []float64{3000, 1600, 20}, Printed: "50"}},
		func(in ...float64) float64 { return lay(in[0], in[1], in[2]).Throw / foot })
	require.InEpsilon(t, 30*20*foot/12, lay(3000, 1600, 20).Throw, 1e-9)
	_, err := ventilation.CirculatingFans{Flow: -1, Diameter: 9}.Solve()
	requireFields(t, err, "Floor", "Flow", "Diameter")
}
