package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/atmosphere"
	"cloche.example/internal/check"
)

func TestTable1(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "HoF17.ch1.Table1/-500m", In: []float64{-500}, Printed: "107478"},
		{Where: "HoF17.ch1.Table1/0m", In: []float64{0}, Printed: "101325"},
		{Where: "HoF17.ch1.Table1/1000m", In: []float64{1000}, Printed: "89875"},
		{Where: "HoF17.ch1.Table1/4000m", In: []float64{4000}, Printed: "61640"},
		{Where: "HoF17.ch1.Table1/10000m", In: []float64{10000}, Printed: "26436"},
	}, func(in ...float64) float64 { return atmosphere.Pressure(in[0]) })
	check.Run(t, []check.Row{
		{Where: "HoF17.ch1.Table1/t,-500m", In: []float64{-500}, Printed: "18.2"},
		{Where: "HoF17.ch1.Table1/t,4000m", In: []float64{4000}, Printed: "-11.0"},
	}, func(in ...float64) float64 { return atmosphere.Temperature(in[0]) })
}

func TestInverseAndEnds(t *testing.T) {
	r := atmosphere.Altitudes()
	for z := r.Min; z <= r.Max; z += 250 {
		require.InDelta(t, z, atmosphere.Altitude(atmosphere.Pressure(z)), 1e-7)
	}
	for _, z := range []float64{-501, 11001, math.NaN(), math.Inf(1)} {
		require.True(t, math.IsNaN(atmosphere.Pressure(z)))
		require.True(t, math.IsNaN(atmosphere.Temperature(z)))
	}
	require.True(t, math.IsNaN(atmosphere.Altitude(101.325)))
	require.True(t, math.IsNaN(atmosphere.Altitude(-1)))
}
