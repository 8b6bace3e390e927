package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

func TestLeavesShareOutTheSun(t *testing.T) {
	c := ventilation.DefaultCanopy(3)
	s := c.Sun(500)
	require.InDelta(t, 500, s.Canopy+s.Floor+s.Reflected, 1e-12)
	require.InDelta(t, 500*math.Exp(-0.48*3), s.Floor, 1e-12)
	require.InDelta(t, 0.2, s.Reflected/(s.Reflected+s.Canopy), 1e-12)
	require.InDelta(t, s.Canopy/6, s.Leaf, 1e-12)
	require.Equal(t, ventilation.CanopySun{Floor: 500}, ventilation.DefaultCanopy(0).Sun(500))
	require.InDelta(t, 1-math.Exp(-0.64*3), ventilation.Interception(3, 0.64), 1e-15)
}

// Half of the sun photosynthetic and half near infrared, each with the coefficients of
// [Vanthoor11] tables 1 and 2 and with what the floor sends back: the one
// extinction here catches less under few leaves and as much under many.
func TestSunCaughtAgainstTwoBands(t *testing.T) {
	const why = "one extinction for all of the sun here"
	check.Run(t, []check.Row{
		{Where: "Vanthoor11 eq. 26 to 32 computed apart/LAI 1", In: []float64{1}, Printed: "0.3865485", Tol: 0.085, Why: why},
		{Where: "Vanthoor11 eq. 26 to 32 computed apart/LAI 2", In: []float64{2}, Printed: "0.5420933", Tol: 0.05, Why: why},
		{Where: "Vanthoor11 eq. 26 to 32 computed apart/LAI 3", In: []float64{3}, Printed: "0.6209589", Tol: 0.015, Why: why},
		{Where: "Vanthoor11 eq. 26 to 32 computed apart/LAI 4", In: []float64{4}, Printed: "0.6686169", Tol: 0.015, Why: why},
	}, func(in ...float64) float64 { return ventilation.DefaultCanopy(in[0]).Sun(1).Canopy })
}

// The default crop has the published coefficients.
func TestTheDefaultCropIsTheTomatoOfTheThesis(t *testing.T) {
	c := ventilation.DefaultCanopy(3)
	require.Equal(t, ventilation.Canopy{LAI: 3, Extinction: 0.48, LongwaveExtinction: 0.64, Reflectance: 0.2,
		LeafSize: 0.05, AirSpeed: 0.09, CO2: 420}, c)
}

// By hand: 1174 sqrt(0.05)/(0.05*3 + 207*0.09²)^0.25 = 262.514/(0.15 + 1.6767)^0.25
// = 262.514/1.162560 = 225.807 s/m.
func TestLeafBoundaryByHand(t *testing.T) {
	require.InDelta(t, 262.5144, 1174*math.Sqrt(0.05), 1e-4)
	require.InDelta(t, 225.807, ventilation.LeafBoundary(0.05, 3, 0.09), 0.01)
	require.InDelta(t, ventilation.LeafBoundary(0.05, 3, 0.09), ventilation.LeafBoundary(0.05, -3, 0.09), 1e-12)
}

// By hand at 30 W/m², 28 °C, 600 Pa and 420 µmol/mol:
//
//	f(I) = 34.30/30.54 = 1.123117, f(T) = 1 + 0.022593*3.488² = 1.274870,
//	f(C) = 1 + 6.08e-7*220² = 1.029427, f(D) = 1 + 4.3*0.36 = 2.548,
//	r = 82.003 times the product 3.755656 = 307.975 s/m
func TestTomatoStomataByHand(t *testing.T) {
	r := ventilation.TomatoStomata.Response(30, 28, 600, 420)
	require.InDelta(t, 82.003, r.Least, 1e-9)
	require.InDelta(t, 1.123117, r.Light, 1e-6)
	require.InDelta(t, 1.274870, r.Warmth, 1e-6)
	require.InDelta(t, 1.029427, r.Carbon, 1e-6)
	require.InDelta(t, 2.548, r.Deficit, 1e-9)
	require.InDelta(t, 307.975, r.Resistance, 1e-3)
	require.InDelta(t, 1.49, ventilation.TomatoStomata.Response(30, 28, 600, 2000).Carbon, 1e-12, "shut no further")
	require.InDelta(t, 3.8, ventilation.TomatoStomata.Response(30, 28, 2000, 420).Deficit, 1e-12, "shut no further")
	require.InDelta(t, 4.30/0.54, ventilation.TomatoStomata.Response(0, 28, 600, 420).Light, 1e-12, "in the dark")
}

// Not run: the transpiration at a given resistance and deficit, which is the vapour that
// y of the balances gives, at a leaf temperature that Solve finds and does not take;
// and bands of measured leaf resistances and nights, which hold no single number.
//
// The night's response and the day's in the dark, computed apart from the formulas
// as they stand in memory.
func TestTomatoStomataByNight(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Stanghellini87 from memory/night, 18 °C", In: []float64{18, 300}, Printed: "2142.933"},
		{Where: "Stanghellini87 from memory/night, 16 °C", In: []float64{16, 200}, Printed: "2027.490"},
		{Where: "Stanghellini87 from memory/night, 20 °C", In: []float64{20, 500}, Printed: "2915.207"},
	}, func(in ...float64) float64 {
		return ventilation.TomatoStomata.Response(0, in[0], in[1], 400).Night
	})
	// The day's branch alone, in the dark and in the sun.
	check.Run(t, []check.Row{
		{Where: "Stanghellini87 from memory/day, dark, 18 °C", In: []float64{0, 18, 300}, Printed: "1829.306", Tol: 14, Why: "the row has 0.023 (T - 24.5)²"},
		{Where: "Stanghellini87 from memory/day, 100 W/m², 24 °C", In: []float64{100, 24, 1000}, Printed: "333.0447", Tol: 0.1, Why: "the row's coefficients have fewer digits"},
	}, func(in ...float64) float64 {
		r := ventilation.TomatoStomata.Response(in[0], in[1], in[2], 400)
		return r.Least * r.Light * r.Warmth * r.Carbon * r.Deficit
	})
	dark := ventilation.TomatoStomata.Response(0, 18, 300, 400)
	require.InEpsilon(t, 1829.3, dark.Least*dark.Light*dark.Warmth*dark.Carbon*dark.Deficit, 1e-2) // the row rounds the coefficients
	require.InDelta(t, 1/(1+math.Exp(5)), dark.Day, 1e-12)
	require.InEpsilon(t, 2142.933, dark.Resistance, 2e-3)
	require.Equal(t, 1.0, ventilation.TomatoStomata.Response(30, 28, 600, 420).Day)
	require.InEpsilon(t, 3.8, ventilation.TomatoStomata.Response(0, 33.6, 5000, 200).Night/658.5, 1e-12, "shut no further")
	// 8,000 µmol/mol off: 1 + 1.1e-11 8000².
	require.InEpsilon(t, 658.5*(1+1.1e-11*64e6), ventilation.TomatoStomata.Response(0, 33.6, 0, 8200).Night, 1e-9)

	// Nothing jumps at dusk.
	c := ventilation.DefaultCanopy(3)
	last := math.NaN()
	for sun := 12.0; sun >= 0; sun -= 0.01 {
		s, err := c.Solve(air(t, 14, 0.7), sun, 12, 0.8)
		require.NoError(t, err)
		if !math.IsNaN(last) {
			require.InDelta(t, last, s.Transpired, 2e-3*last)
		}
		last = s.Transpired
	}
}

// Grass: 100 s/m over half the LAI is 200/LAI on floor area, 400 s/m on 2 LAI.
func TestGrassStomata(t *testing.T) {
	r := ventilation.GrassStomata.Response(30, 28, 600, 420)
	require.Equal(t, ventilation.Response{Least: 400, Light: 1, Warmth: 1, Carbon: 1, Deficit: 1, Night: 400, Day: 1, Resistance: 400}, r)
	// The paper's 70 s/m of grass with a LAI of 24 times 0.12 m.
	require.InDelta(t, 70, r.Resistance/(2*24*0.12), 0.6)
}

func TestStomataShutWithDrynessDarkAndCarbon(t *testing.T) {
	r := func(sun, leaf, deficit, co2 float64) float64 {
		return ventilation.TomatoStomata.Response(sun, leaf, deficit, co2).Resistance
	}
	base := r(50, 24, 800, 420)
	require.Greater(t, r(5, 24, 800, 420), base)
	require.Greater(t, r(50, 34, 800, 420), base)
	require.Greater(t, r(50, 14, 800, 420), base)
	require.Greater(t, r(50, 24, 850, 420), base)
	require.Greater(t, r(50, 24, 800, 900), base)
}

func TestCanopyCloses(t *testing.T) {
	for _, lai := range []float64{0.1, 1, 3, 8} {
		for _, sun := range []float64{0, 80, 600} {
			for _, ta := range []float64{5, 20, 35} {
				for _, rh := range []float64{0.2, 0.6, 0.99} {
					for _, st := range []ventilation.Stomata{ventilation.TomatoStomata, ventilation.GrassStomata} {
						c := ventilation.DefaultCanopy(lai)
						c.Stomata = st
						s, err := c.Solve(air(t, ta, rh), sun, ta-6, 0.8)
						require.NoError(t, err)
						size := s.Sun.Canopy + math.Abs(s.Heat) + math.Abs(s.Latent) + math.Abs(s.Longwave)
						require.InDelta(t, 0, s.Residual, 1e-9*size)
						require.InDelta(t, s.Sun.Canopy, s.Heat+s.Latent+s.Longwave, 1e-9*size)
						if s.Transpired < 0 {
							require.Zero(t, s.Stomata.Resistance)
							require.Less(t, s.Temperature, ta)
						}
					}
				}
			}
		}
	}
}

// Without stomata and radiation the leaf is a wet bulb, up to its equal
// resistances for heat and vapour.
func TestAWetLeafInTheDarkIsAWetBulb(t *testing.T) {
	a := air(t, 30, 0.9)
	b, err := ventilation.PenmanMonteith(a, 0, 50, 0)
	require.NoError(t, err)
	require.InDelta(t, a.WetBulb(), b.Temperature, 0.15)
	require.InDelta(t, 0, b.Radiation, 1e-12)
	require.InDelta(t, -b.Heat, b.Latent, 1e-9)
}

// Given the full balance's own resistances and radiation, the rival with the
// straight saturation line comes within some per cent.
func TestPenmanMonteithNearTheFullBalance(t *testing.T) {
	for _, sun := range []float64{100, 300, 600} {
		c := ventilation.DefaultCanopy(3)
		a := air(t, 25, 0.6)
		s, err := c.Solve(a, sun, 22, 0.8)
		require.NoError(t, err)
		b, err := ventilation.PenmanMonteith(a, s.Sun.Canopy-s.Longwave, s.Boundary/6, s.Stomata.Resistance/6)
		require.NoError(t, err)
		require.InEpsilon(t, s.Latent, b.Latent, 0.04)
		require.InDelta(t, s.Temperature, b.Temperature, 0.4)
		// FAO56's own coefficient: gamma 66.5 Pa/K at 100 kPa.
		require.InEpsilon(t, 0.665e-3*101325, b.Psychro, 0.02)
	}
}

func TestFaultsOfACropAreListedTogether(t *testing.T) {
	c := ventilation.Canopy{LAI: 30, Extinction: 5, LongwaveExtinction: -1, Reflectance: 0.9, LeafSize: 0, AirSpeed: 0, CO2: 0.0004, Stomata: 9}
	err := c.Check()
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, f := range []string{"LAI", "Extinction", "LongwaveExtinction", "Reflectance", "LeafSize", "AirSpeed", "CO2", "Stomata"} {
		require.ErrorContains(t, err, f)
	}
	_, err = ventilation.DefaultCanopy(0).Solve(air(t, 20, 0.5), -1, 300, 2)
	for _, f := range []string{"LAI", "sun", "radiant", "emissivity"} {
		require.ErrorContains(t, err, f)
	}
	_, err = ventilation.PenmanMonteith(air(t, 20, 0.5), 5000, 0, -1)
	for _, f := range []string{"available", "aerodynamic", "surface"} {
		require.ErrorContains(t, err, f)
	}
}
