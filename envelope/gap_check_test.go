package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Nusselt numbers printed by the unit tests of an open reference engine
// (LBNL-ETA/Windows-CalcEngine, revision bdbfd84, misc/NusseltNumber). The
// engine writes the exponent 1/7 as 0.1428571.
func TestGapNusseltAgainstTheReferenceEngine(t *testing.T) {
	row := func(tilt string, ra, aspect, deg float64, printed string) check.Row {
		return check.Row{Where: "CalcEngine.NusseltNumber/" + tilt, In: []float64{ra, aspect, deg}, Printed: printed,
			Tol: 1.2e-5, Why: "the engine writes 1/7 as 0.1428571"}
	}
	check.Run(t, []check.Row{
		row("30", 3638.21667064528, 83.3333333333333, 30, "1.40474349200254"),
		row("60", 3638.21667064528, 83.3333333333333, 60, "1.08005742342789"),
		row("73", 3638.21667064528, 83.3333333333333, 73, "1.05703042079892"),
		row("90", 3638.21667064528, 83.3333333333333, 90, "1.02691818659179"),
		row("134", 3638.21667064528, 83.3333333333333, 134, "1.01936332296842"),
		row("30low", 140.779077041012, 200, 30, "1.0"),
		row("60low", 140.779077041012, 200, 60, "1.00002777439094"),
		row("90low", 140.779077041012, 200, 90, "1.00001526837795"),
		row("30high", 4633340.8866717, 10, 30, "10.2680981545288"),
		row("60high", 4633340.8866717, 10, 60, "11.5975502261096"),
		row("73high", 4633340.8866717, 10, 73, "11.4398529673101"),
		row("90high", 4633340.8866717, 10, 90, "11.233633475034"),
		row("134high", 4633340.8866717, 10, 134, "8.36146"),
	}, func(in ...float64) float64 { return GapNusselt(in[0], in[1], in[2]) })
}

// gaps/GapLayerStandardPressure of the same engine: the flux by convection
// across 12 mm of air, 1 m high, upright.
func TestGapFluxAgainstTheReferenceEngine(t *testing.T) {
	check.Run(t, []check.Row{{Where: "CalcEngine.GapLayer/flux", In: []float64{262.756296539528, 276.349093518906}, Printed: "27.673789",
		Tol: 1e-6, Why: "the engine's last digits"}}, func(in ...float64) float64 {
		mean, d := (in[0]+in[1])/2, in[1]-in[0]
		a := calcEngine.air(mean, 101325)
		b, _ := calcEngine.buoyancy(mean, a)
		return GapNusselt(b*d*0.012*0.012*0.012, 1/0.012, 90) * a.Conductivity / 0.012 * d
	})
}

// Each branch once, the arithmetic written out, so that no coefficient can
// change unseen.
func TestGapBranches(t *testing.T) {
	wright := func(ra, aspect float64) float64 {
		n1 := 0.0673838 * math.Pow(ra, 1.0/3)
		if ra <= 5e4 {
			n1 = 0.028154 * math.Pow(ra, 0.4134)
		}
		if ra <= 1e4 {
			n1 = 1 + 1.7596678e-10*math.Pow(ra, 2.2984755)
		}
		return math.Max(n1, 0.242*math.Pow(ra/aspect, 0.272))
	}
	elsher := func(ra, aspect float64) float64 {
		g := 0.5 / math.Pow(1+math.Pow(ra/3160, 20.6), 0.1)
		return math.Max(math.Pow(1+math.Pow(0.0936*math.Pow(ra, 0.314)/(1+g), 7), 1.0/7), (0.104+0.175/aspect)*math.Pow(ra, 0.283))
	}
	for _, ra := range []float64{50, 2000, 3000, 3300, 5e3, 1e4, 1.0001e4, 3e4, 5e4, 5.0001e4, 1e6} {
		for _, aspect := range []float64{2, 10, 80} {
			require.InEpsilon(t, wright(ra, aspect), GapNusselt(ra, aspect, 90), 1e-12)
			require.InEpsilon(t, elsher(ra, aspect), GapNusselt(ra, aspect, 60), 1e-12)
			require.InEpsilon(t, (wright(ra, aspect)+elsher(ra, aspect))/2, GapNusselt(ra, aspect, 75), 1e-12)
		}
	}
	require.InEpsilon(t, 1+1.44*(1-0.854)*(1-0.854*math.Pow(math.Sin(54*degree), 1.6)),
		GapNusselt(2000/math.Cos(30*degree), 5, 30), 1e-12)
	x := 1708.0 / 9000
	require.InEpsilon(t, 1+1.44*(1-x)+math.Cbrt(9000.0/5830)-1, GapNusselt(9000, 5, 0), 1e-12)
}

func TestAirByTheLinearFits(t *testing.T) {
	a := airAt(26.85, 101325) // 300 K
	require.InDelta(t, 2.8733e-3+7.76e-5*300, a.Conductivity, 1e-12)
	require.InDelta(t, 3.7233e-6+4.94e-8*300, a.Viscosity, 1e-15)
	require.InDelta(t, 1002.737+1.2324e-2*300, a.HeatCapacity, 1e-9)
	require.InDelta(t, 101325*28.97/(8314.46261815324*300), a.Density, 1e-9)
	require.True(t, math.IsNaN(GapNusselt(-1, 10, 90)))
	require.True(t, math.IsNaN(GapNusselt(1e4, 0, 90)))
	require.True(t, math.IsNaN(GapNusselt(1e4, 10, 181)))
	// Ra of 20 mm at 0 and 18 °C: the solution manual of Cengel and Ghajar, problem 9-97 gets 18309 with
	// tabulated air.
	require.InEpsilon(t, 18309, rayleigh(0, 18, 0.02, 101325), 0.02)
	mean := 9 + 273.15
	k, mu, cp, rho := plainAir(mean)
	require.InEpsilon(t, 9.80665*8e-6*18*rho*rho*cp/(mean*mu*k), rayleigh(0, 18, 0.02, 101325), 1e-9)
}

func pow(a, b float64) float64 { return math.Pow(a, b) }
