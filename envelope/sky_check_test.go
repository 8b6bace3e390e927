package envelope

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Irradiance on an upright pane under Swinbank's sky, ground at air
// temperature: unit test environment/OutdoorEnvironmentHCalcSwinbank of an open
// reference engine (LBNL-ETA/Windows-CalcEngine, revision bdbfd84).
func TestSwinbankAgainstTheReferenceEngine(t *testing.T) {
	check.Run(t, []check.Row{{Where: "CalcEngine.Swinbank/300K", Printed: "423.17235"}}, func(...float64) float64 {
		f := skyView(90)
		return f*swinbankIrradiance(26.85) + (1-f)*calcEngine.emission(26.85)
	})
	require.InEpsilon(t, swinbankIrradiance(10), standard.emission(Swinbank(10)), 0.01)
	require.InDelta(t, 0.0552*math.Pow(283.15, 1.5)-273.15, Swinbank(10), 1e-9)
	require.True(t, math.IsNaN(swinbankIrradiance(60)))
	// Gates 1980 writes the clear sky as 1.22 sigma T⁴ - 171, at 293 K 339.0856
	// W/m²: another fit.
	check.Run(t, []check.Row{{Where: "Gates 1980/293 K", Printed: "339.0856", Tol: 4, Why: "a rival fit of the clear sky, a per cent apart"}},
		func(...float64) float64 { return swinbankIrradiance(293 - 273.15) })
	check.Run(t, []check.Row{{Where: "open documentation/emissivity form", Printed: "9.36e-6", Tol: 1e-7, Why: "two published constants of one fit, 0.8 % apart"}},
		func(...float64) float64 { return math.Pow((Swinbank(26.85)+273.15)/300/math.Sqrt(300), 4) })
	require.True(t, math.IsNaN(Swinbank(60)))
}

func TestBerdahlAndMartin(t *testing.T) {
	// The arithmetic written out: dew point 10 °C, midnight, 950 mbar.
	require.InDelta(t, 0.711+0.056+0.0073+0.013-0.006, SkyEmissivity(10, 0, 95000), 1e-12)
	require.InDelta(t, 0.711-0.056+0.0073-0.013, SkyEmissivity(-10, 12*time.Hour, 100000), 1e-12)
	require.InDelta(t, 0.711, SkyEmissivity(0, 6*time.Hour, 100000), 1e-12)
	for _, v := range []float64{SkyEmissivity(50, 0, 1e5), SkyEmissivity(0, 25*time.Hour, 1e5), SkyEmissivity(0, 6, 1e5), SkyEmissivity(0, 0, 1013), CloudySky(0.8, Clouds{2, 1, 0}), CloudySky(0.8, Clouds{1, 1, -1})} {
		require.True(t, math.IsNaN(v))
	}
	require.InDelta(t, 0.8+0.2*0.5*math.Exp(-1000/8200.0), CloudySky(0.8, Clouds{0.5, 1, 1000}), 1e-12)
	require.Equal(t, 1.0, CloudySky(0.8, Clouds{1, 1, 0}))
	require.InDelta(t, math.Pow(0.8, 0.25)*283.15-273.15, SkyTemperatureOf(10, 0.8), 1e-9)
	require.InDelta(t, 10, SkyTemperatureOf(10, 1), 1e-9)
	require.True(t, math.IsNaN(SkyTemperatureOf(10, 1.1)))
	require.True(t, math.IsNaN(SkyTemperatureOf(100, 1)))
}

// Outside correlations, the arithmetic written out.
func TestOutsideCorrelations(t *testing.T) {
	require.InDelta(t, 4+4*5.5, OutsideISO6946.Coefficient(5.5), 1e-12)
	require.InDelta(t, 2.8+3.0*5.5, OutsideWatmuff.Coefficient(5.5), 1e-12)
	require.InDelta(t, 2.8+1.2*3, OutsideBot.Coefficient(3), 1e-12)
	require.InDelta(t, 2.5*math.Pow(5, 0.8), OutsideBot.Coefficient(5), 1e-12)
	require.InDelta(t, 2.5*math.Pow(4, 0.8), OutsideBot.Coefficient(4), 1e-12)
	require.InDelta(t, 0.95+6.76*math.Pow(5, 0.49), OutsidePapadakis.Coefficient(5), 1e-12)
	check.Run(t, []check.Row{{Where: "Vanthoor11 appendix table 2 computed apart/film tunnel, 4 m/s", In: []float64{4}, Printed: "14.28387"}},
		func(in ...float64) float64 { return OutsidePapadakis.Coefficient(in[0]) })
	require.True(t, math.IsNaN(OutsideISO6946.Coefficient(60)))
	require.True(t, math.IsNaN(OutsideGiven.Coefficient(5)))
	require.False(t, OutsideConvection(99).published().Contains(3))
	require.True(t, OutsideWatmuff.published().Contains(7))
}

// Inside correlations against a second writing of ISO 15099 and by hand.
func TestInsideCorrelations(t *testing.T) {
	for _, tilt := range []float64{0, 10, 15, 30, 60, 89, 90, 91, 120, 165, 170, 179.5, 180} {
		for _, surface := range []float64{-20, 5, 14.9, 15.2, 40} {
			for _, height := range []float64{0.3, 1, 5} {
				k := DefaultCoverConditions()
				k.Tilt, k.Height = tilt, height
				require.InEpsilon(t, plainInside(&k, 15+273.15, surface+273.15),
					InsideISO15099.Coefficient(InnerSurface{15, surface, tilt, height, 101325}), 1e-9, "%v %v %v", tilt, surface, height)
			}
		}
	}
	require.Equal(t, 5.0, InsideISO6946.Coefficient(InnerSurface{15, 5, 59, 1, 101325}))
	require.Equal(t, 2.5, InsideISO6946.Coefficient(InnerSurface{15, 5, 60, 1, 101325}))
	require.InDelta(t, 1.95*math.Pow(10, 0.3), InsidePapadakis.Coefficient(InnerSurface{15, 5, 30, 1, 101325}), 1e-12)
	require.InDelta(t, 2.2*math.Pow(10, 0.33), InsideBaille.Coefficient(InnerSurface{15, 5, 30, 1, 101325}), 1e-12)
	require.True(t, math.IsNaN(InsideGiven.Coefficient(InnerSurface{15, 5, 30, 1, 101325})))
	require.True(t, math.IsNaN(InsideISO6946.Coefficient(InnerSurface{15, 5, 30, 0, 101325})))
}
