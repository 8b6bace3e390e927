package envelope

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/internal/constant"
)

// The constants of the reference program of the check rows below: an open
// reference engine for ISO 15099 and EN 673 (LBNL-ETA/Windows-CalcEngine,
// BSD licence, revision bdbfd84), whose unit tests print the values.
var calcEngine = constants{sigma: 5.6697e-8, gravity: 9.807, molarGas: 8314.462175}

func pane() Layer {
	return Layer{EmittanceOut: 0.84, EmittanceIn: 0.84, Thickness: 0.003048, Conductivity: 1}
}

func mustCover(t testing.TB, layers []Layer, gaps ...Gap) Cover {
	t.Helper()
	c, err := NewCover(layers, gaps)
	require.NoError(t, err)
	return c
}

// Two panes, 12.7 mm of air, 1 m high, upright; inside 294.15 K, outside and
// sky 255.15 K; 5.5 m/s.
func doubleClear(t *testing.T, sun ...float64) Solution {
	c := mustCover(t, []Layer{pane(), pane()}, Gap{Width: 0.0127})
	k := DefaultCoverConditions()
	k.Inside, k.Outside = 21, -18
	k.Wind, k.Tilt, k.Height = 5.5, 90, 1
	copy(k.AbsorbedSun[:], sun)
	s, err := c.solve(&k, &calcEngine)
	require.NoError(t, err)
	return s
}

func TestDoubleClearAgainstTheReferenceEngine(t *testing.T) {
	s := doubleClear(t)
	lit := doubleClear(t, 0.09649835*789, 0.07226477*789)
	kelvin := func(c float64) float64 { return c + constant.ZeroCelsius }
	values := map[string]float64{
		"U": s.U, "T1f": kelvin(s.Outer[0].Temperature), "T1b": kelvin(s.Inner[0].Temperature),
		"T2f": kelvin(s.Outer[1].Temperature), "T2b": kelvin(s.Inner[1].Temperature),
		"J1f": s.Outer[0].Radiosity, "J1b": s.Inner[0].Radiosity, "J2f": s.Outer[1].Radiosity, "J2b": s.Inner[1].Radiosity,
		"sun T1f": kelvin(lit.Outer[0].Temperature), "sun T1b": kelvin(lit.Inner[0].Temperature),
		"sun T2f": kelvin(lit.Outer[1].Temperature), "sun T2b": kelvin(lit.Inner[1].Temperature),
		"SHGC": 0.703296 - (lit.FluxIn-s.FluxIn)/789,
	}
	for name, printed := range map[string]string{
		"U": "2.729619", "T1f": "258.791640", "T1b": "259.116115", "T2f": "279.323983", "T2b": "279.648458",
		"J1f": "252.066216", "J1b": "267.938384", "J2f": "332.786197", "J2b": "359.178924",
		"sun T1f": "261.920381", "sun T1b": "262.408833", "sun T2f": "284.753241", "sun T2b": "285.038766", "SHGC": "0.755625",
	} {
		check.Run(t, []check.Row{{Where: "CalcEngine.DoubleClear/" + name, Printed: printed, Tol: 1e-6,
			Why: "the engine stops its iteration at about 1e-6"}},
			func(...float64) float64 { return values[name] })
	}
}

func TestSingleClearAgainstTheReferenceEngine(t *testing.T) {
	c := mustCover(t, []Layer{pane()})
	k := DefaultCoverConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Sky = 21, 26.85, 30, SkyEven
	k.Wind, k.Tilt, k.Height = 5.5, 90, 1
	s, err := c.solve(&k, &calcEngine)
	require.NoError(t, err)
	kelvin := func(c float64) float64 { return c + constant.ZeroCelsius }
	values := map[string]float64{"T1f": kelvin(s.Outer[0].Temperature), "T1b": kelvin(s.Inner[0].Temperature),
		"J1f": s.Outer[0].Radiosity, "J1b": s.Inner[0].Radiosity, "q": s.FluxIn, "U ambient": s.UAmbient}
	for name, printed := range map[string]string{"T1f": "297.207035", "T1b": "297.144700", "J1f": "432.444545",
		"J1b": "439.201749", "q": "-20.450949", "U ambient": "5.493806"} {
		check.Run(t, []check.Row{{Where: "CalcEngine.SingleClear/" + name, Printed: printed, Tol: 1e-6,
			Why: "the engine stops its iteration at about 1e-6"}},
			func(...float64) float64 { return values[name] })
	}
}

// W. R. Murphy, G. A. McKay, Energy Management, example 9.6: inner face of a
// window of the given U-value between air at 21 and -1 °C, 0.123 m² K/W inside
// with radiation in it, so that the layer has no emittance of its own.
func TestGlazingSurfaceOfATextbook(t *testing.T) {
	const book = "Murphy and McKay example 9.6"
	check.Run(t, []check.Row{
		{Where: book + "/single", In: []float64{5.6}, Printed: "5.85"},
		{Where: book + "/double", In: []float64{2.8}, Printed: "13.42"},
	}, func(in ...float64) float64 {
		c := mustCover(t, []Layer{{Thickness: 0.01, Conductivity: 0.01 / (1/in[0] - 0.123 - 0.04)}})
		k := DefaultCoverConditions()
		k.Inside, k.Outside, k.Tilt = 21, -1, 90
		k.OutsideConvection, k.OutsideCoefficient = OutsideGiven, 25
		k.InsideConvection, k.InsideCoefficient = InsideGiven, 1/0.123
		s, err := c.Solve(k)
		require.NoError(t, err)
		return s.InnerTemperature
	})
}
