package sun

import (
	"math"
	"testing"
	"time"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// Haurwitz at elevations of the sun, [Kasten89] at zenith angles and
// [Ineichen02] at one state, as in the tests of the library pvlib.
func TestHaurwitzTable(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Haurwitz45/pvlib/5", In: []float64{5}, Printed: "48.62986879"},
		{Where: "Haurwitz45/pvlib/10", In: []float64{10}, Printed: "135.7417481"},
		{Where: "Haurwitz45/pvlib/30", In: []float64{30}, Printed: "487.8941329"},
		{Where: "Haurwitz45/pvlib/90", In: []float64{90}, Printed: "1035.092033"},
	}, func(in ...float64) float64 { return Haurwitz(90 - in[0]) })
}

func TestAirMassTable(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Kasten89/pvlib/0", In: []float64{0}, Printed: "1.000"},
		{Where: "Kasten89/pvlib/80", In: []float64{80}, Printed: "5.586"},
		{Where: "Kasten89/pvlib/89.9", In: []float64{89.9}, Printed: "36.467"},
	}, func(in ...float64) float64 { return AirMass(in[0]) })
}

func TestIneichenPerezTable(t *testing.T) {
	sky, err := ClearSkyInput{Zenith: 10, AirMass: 1, Turbidity: 3, Extraterrestrial: 1364}.IneichenPerez()
	require.NoError(t, err)
	row := func(what, printed string, got float64) check.Got {
		return check.Got{Row: check.Row{Where: "Ineichen02/pvlib/" + what, Printed: printed}, Value: got}
	}
	check.Verify(t, []check.Got{row("global", "1038.159219", sky.Global), row("direct", "942.208186", sky.Direct), row("diffuse", "110.2652929", sky.Diffuse)})
	// The formulas again at another altitude and turbidity, worked by hand, so
	// that each coefficient of the altitude is held.
	high, err := ClearSkyInput{Zenith: 60, AirMass: 1.6, Turbidity: 5, Altitude: 2000, Extraterrestrial: 1400}.IneichenPerez()
	require.NoError(t, err)
	fh1, fh2 := 0.778800783071405, 0.201896517994655 // exp(-1/4), exp(-8/5)
	require.InEpsilon(t, 0.9698*1400*0.5*math.Exp(-0.1171*1.6*(fh1+4*fh2)), high.Global, 1e-12)
	beam := (0.664 + 0.163/fh1) * 1400 * math.Exp(-0.09*1.6*4)
	least := high.Global / 0.5 * (1 - (0.1-0.2*math.Exp(-5))/(0.1+0.882/fh1))
	require.InEpsilon(t, min(beam, least), high.Direct, 1e-12)
	require.InEpsilon(t, high.Global, high.Diffuse+high.Direct*0.5, 1e-12)
	low, err := ClearSkyInput{Zenith: 10, AirMass: 1, Turbidity: 1, Altitude: 1000, Extraterrestrial: 1400}.IneichenPerez()
	require.NoError(t, err)
	fh1 = math.Exp(-0.125)
	require.InEpsilon(t, low.Global/math.Cos(10*radian)*(1-(0.1-0.2*math.Exp(-1))/(0.1+0.882/fh1)), low.Direct, 1e-12, "the least diffuse part holds")
}

func TestClearSkyOfASite(t *testing.T) {
	site, err := NewSite(50, 0, 500)
	require.NoError(t, err)
	at := time.Date(2023, 6, 21, 12, 0, 0, 0, time.UTC)
	sky, err := site.ClearSky(at, 3)
	require.NoError(t, err)
	sun := site.Sun(at)
	p := 95461.0 // Pa at 500 m in the standard atmosphere, from memory
	require.InDelta(t, 1361/sun.Distance/sun.Distance, sun.Extraterrestrial(), 1e-9)
	z := sun.Zenith() - Refraction(sun.Elevation, p, 10)
	by, err := ClearSkyInput{Zenith: z, AirMass: AirMass(z) * p / 101325, Turbidity: 3, Altitude: 500, Extraterrestrial: sun.Extraterrestrial()}.IneichenPerez()
	require.NoError(t, err)
	require.InEpsilon(t, by.Global, sky.Global, 1e-6)
	require.InEpsilon(t, Haurwitz(z), sky.Global, 0.06, "two models of one sky")
	night, err := site.ClearSky(at.Add(12*time.Hour), 3)
	require.NoError(t, err)
	require.Zero(t, night)
	_, err = site.ClearSky(at, 0.5)
	require.ErrorContains(t, err, "turbidity")
	_, err = ClearSkyInput{Zenith: -1, AirMass: math.NaN(), Turbidity: 11, Altitude: 1e5, Extraterrestrial: 1}.IneichenPerez()
	for _, want := range []string{"zenith", "air mass", "turbidity", "altitude", "extraterrestrial"} {
		require.ErrorContains(t, err, want)
	}
	// The altitude's limit: above it, the clearest sky would outshine the sun.
	mountain, err := NewSite(-23, 179.5, 4000)
	require.NoError(t, err)
	noon := time.Date(2023, 1, 3, 0, 6, 0, 0, time.UTC)
	clearest, err := mountain.ClearSky(noon, 1)
	require.NoError(t, err)
	require.InEpsilon(t, mountain.Sun(noon).Extraterrestrial(), clearest.Global, 0.01)
	require.Less(t, clearest.Global, mountain.Sun(noon).Extraterrestrial())
	summit, err := NewSite(-23, 179.5, 4001)
	require.NoError(t, err)
	_, err = summit.ClearSky(noon, 1)
	require.ErrorContains(t, err, "altitude is 4001, allowed -500 to 4000 m")
	thin := ClearSkyInput{Zenith: 10, AirMass: 0.3, Turbidity: 3, Extraterrestrial: 1361}
	_, err = thin.IneichenPerez()
	require.NoError(t, err)
	thin.AirMass = 0.2999
	_, err = thin.IneichenPerez()
	require.ErrorContains(t, err, "allowed 0.3 to 40")
	require.Zero(t, Haurwitz(95))
	for _, z := range []float64{-1, 181, math.NaN()} {
		require.True(t, math.IsNaN(Haurwitz(z)))
		require.True(t, math.IsNaN(AirMass(z)))
	}
}

// Three models of a cloudless day at 36 degree, summed over its hours: Haurwitz
// and Ineichen and Perez at a turbidity of 3 agree within 5 %, and 0.75 of what
// falls on the atmosphere, which knows no air mass, within 15 %.
func TestClearDaysByThreeModels(t *testing.T) {
	site, err := NewSite(36, 0, 0)
	require.NoError(t, err)
	for _, day := range []int{15, 105, 196, 288} {
		haurwitz, perez, outside := 0.0, 0.0, 0.0
		for m := 0; m < 1440; m += 10 {
			at := time.Date(2023, 1, day, 0, m, 0, 0, time.UTC)
			sun := site.Sun(at)
			sky, err := site.ClearSky(at, 3)
			require.NoError(t, err)
			haurwitz += 600 * Haurwitz(sun.Zenith())
			perez += 600 * sky.Global
			outside += 600 * sun.Extraterrestrial() * max(0, math.Cos(sun.Zenith()*radian))
		}
		fao := ClearSkyDay(outside, 0)
		t.Logf("day %3d: %.2f, %.2f and %.2f MJ/m²", day, haurwitz/1e6, perez/1e6, fao/1e6)
		require.InEpsilon(t, haurwitz, perez, 0.05)
		require.InEpsilon(t, fao, perez, 0.15)
	}
}

// The bounds of the model's inputs: a value at each is taken, one beyond is not.
func TestClearSkyBounds(t *testing.T) {
	for name, c := range map[string]struct {
		low, high float64
		set       func(in *ClearSkyInput, v float64)
	}{
		"zenith":           {0, 180, func(in *ClearSkyInput, v float64) { in.Zenith = v }},
		"air mass":         {0.3, 40, func(in *ClearSkyInput, v float64) { in.AirMass = v }},
		"turbidity":        {1, 10, func(in *ClearSkyInput, v float64) { in.Turbidity = v }},
		"altitude":         {-500, 4000, func(in *ClearSkyInput, v float64) { in.Altitude = v }},
		"extraterrestrial": {1300, 1430, func(in *ClearSkyInput, v float64) { in.Extraterrestrial = v }},
	} {
		for _, v := range []float64{c.low, c.high, c.low - 0.005*(c.high-c.low), c.high + 0.005*(c.high-c.low)} {
			in := ClearSkyInput{Zenith: 30, AirMass: 1.15, Turbidity: 3, Extraterrestrial: 1361}
			c.set(&in, v)
			_, err := in.IneichenPerez()
			if v >= c.low && v <= c.high {
				require.NoError(t, err, "%s %g", name, v)
			} else {
				require.ErrorContains(t, err, name, "%g", v)
			}
		}
	}
	for _, c := range [][3]float64{{-90, -180, -500}, {90, 180, 9000}} {
		_, err := NewSite(c[0], c[1], c[2])
		require.NoError(t, err)
		_, err = NewSite(1.005*c[0], 1.005*c[1], 1.005*c[2])
		for _, want := range []string{"latitude", "longitude", "altitude"} {
			require.ErrorContains(t, err, want)
		}
	}
}
