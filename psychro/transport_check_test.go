package psychro

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func vapourViscosity(T float64) float64 {
	return vapourViscosityOf(criticalKelvin/T, math.Sqrt(T))
}

func vapourConductivity(T float64) float64 {
	return vapourConductivityOf(criticalKelvin/T, math.Sqrt(T))
}

// Dilute water vapour. [IapwsCon11] table 4 gives 18.4341883 mW/(m K) at
// 298.15 K and zero density (constants and value from memory; they agree with
// each other to all places).
func TestDiluteVapour(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "IapwsCon11.Table4/298.15K", In: []float64{298.15}, Printed: "18.4341883"},
	}, func(in ...float64) float64 { return 1000 * vapourConductivity(in[0]) })
	// [IapwsVis08] eq. 11 written as printed.
	for T := 260.0; T < 390; T += 10 {
		b := T / 647.096
		mu := 100 * math.Sqrt(b) / (1.67752 + 2.20462/b + 0.6366564/(b*b) - 0.241605/(b*b*b))
		require.InEpsilon(t, mu*1e-6, vapourViscosity(T), 1e-12)
	}
	// Steam at 100 °C has about 12.3 µPa s and 24.8 mW/(m K) (steam tables,
	// from memory).
	require.InDelta(t, 12.3e-6, vapourViscosity(373.15), 0.1e-6)
	require.InDelta(t, 24.8e-3, vapourConductivity(373.15), 1e-3) // at saturation; the dilute gas lies below
}

// The mixture rule of [Wilke50] with its square roots and powers written out.
func TestWilke(t *testing.T) {
	phi := func(mi, mj, Mi, Mj float64) float64 {
		s := 1 + math.Sqrt(mi/mj)*math.Pow(Mj/Mi, 0.25)
		return s * s / math.Sqrt(8*(1+Mi/Mj))
	}
	const air, vapour = 1.85e-5, 0.99e-5
	a, v := wilke(air, vapour)
	require.InEpsilon(t, phi(air, vapour, molarAir, molarWater), a, 1e-12)
	require.InEpsilon(t, phi(vapour, air, molarWater, molarAir), v, 1e-12)
	s := State{t: 60, p: 1e5, x: 0.15, w: ratioOf(0.15), xs: 0.2}
	mu, k := s.transport()
	ma, mv, ka, kv := Viscosity(60), vapourViscosity(333.15), Conductivity(60), vapourConductivity(333.15)
	av, va := phi(ma, mv, molarAir, molarWater), phi(mv, ma, molarWater, molarAir)
	require.InEpsilon(t, ma/(1+0.15/0.85*av)+mv/(1+0.85/0.15*va), mu, 1e-12)
	require.InEpsilon(t, ka/(1+0.15/0.85*av)+kv/(1+0.85/0.15*va), k, 1e-12)
}

// The series in place of exponentials, to what their comments say.
func TestSeries(t *testing.T) {
	for y := -0.07; y <= -0.03; y += 0.0005 {
		require.InEpsilon(t, math.Pow(10, y), tenTo(y), 1.5e-14)
	}
	for y := -0.025; y <= 0.025; y += 0.0005 {
		require.InEpsilon(t, math.Exp(-y), expMinus(y), 9e-11)
	}
}
