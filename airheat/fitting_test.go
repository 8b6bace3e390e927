package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func TestFittingsPublished(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "SmaDuct06.A-7A/0.5", In: []float64{0.5, 90}, Printed: "0.71", Tol: 1e-4},
		{Where: "SmaDuct06.A-7A/0.75", In: []float64{0.75, 90}, Printed: "0.33", Tol: 1e-4},
		{Where: "SmaDuct06.A-7A/1.0", In: []float64{1, 90}, Printed: "0.22", Tol: 1e-4},
		{Where: "SmaDuct06.A-7A/1.5", In: []float64{1.5, 90}, Printed: "0.15", Tol: 1e-4},
		{Where: "SmaDuct06.A-7A/2.0", In: []float64{2, 90}, Printed: "0.13", Tol: 1e-4},
		{Where: "SmaDuct06.A-7A/2.5", In: []float64{2.5, 90}, Printed: "0.12", Tol: 1e-4},
		{Where: "SmaDuct06.A-7A/20-degrees", In: []float64{1, 20}, Printed: "0.0682"},
		{Where: "SmaDuct06.A-7A/30-degrees", In: []float64{1, 30}, Printed: "0.0990"},
		{Where: "SmaDuct06.A-7A/45-degrees", In: []float64{1, 45}, Printed: "0.132"},
		{Where: "SmaDuct06.A-7A/60-degrees", In: []float64{1, 60}, Printed: "0.1716"},
		{Where: "SmaDuct06.A-7A/75-degrees", In: []float64{1, 75}, Printed: "0.198"},
		{Where: "SmaDuct06.A-7A/110-degrees", In: []float64{1, 110}, Printed: "0.2486"},
		{Where: "SmaDuct06.A-7A/130-degrees", In: []float64{1, 130}, Printed: "0.264"},
		{Where: "SmaDuct06.A-7A/150-degrees", In: []float64{1, 150}, Printed: "0.2816"},
		{Where: "SmaDuct06.A-7A/180-degrees", In: []float64{1, 180}, Printed: "0.308"},
	}, func(in ...float64) float64 { return SmoothElbow(in[0], in[1]) })
	check.Run(t, []check.Row{
		{Where: "SmaDuct06.A-7C/20", In: []float64{20}, Printed: "0.0800"},
		{Where: "SmaDuct06.A-7C/30", In: []float64{30}, Printed: "0.160"},
		{Where: "SmaDuct06.A-7C/45", In: []float64{45}, Printed: "0.340"},
		{Where: "SmaDuct06.A-7C/60", In: []float64{60}, Printed: "0.550"},
		{Where: "SmaDuct06.A-7C/75", In: []float64{75}, Printed: "0.810"},
		{Where: "SmaDuct06.A-7C/90", In: []float64{90}, Printed: "1.20"},
	}, func(in ...float64) float64 { return MitredElbow(in[0]) })
	check.Run(t, []check.Row{
		{Where: "Weisbach.throttle/5", In: []float64{5}, Printed: "0.240"},
		{Where: "Weisbach.throttle/10", In: []float64{10}, Printed: "0.520"},
		{Where: "Weisbach.throttle/20", In: []float64{20}, Printed: "1.54"},
		{Where: "Weisbach.throttle/40", In: []float64{40}, Printed: "10.8"},
		{Where: "Weisbach.throttle/60", In: []float64{60}, Printed: "118"},
	}, func(in ...float64) float64 { return DiscDamper(in[0]) })
	// G. F. Hundy et al., Ex. 24.3: 8 to 5.5 m/s with a fifth lost.
	check.Run(t, []check.Row{
		{Where: "Hundy.Ex24.3/regain", In: []float64{8, 5.5, 1.2, 0.8}, Printed: "16.2"},
	}, func(in ...float64) float64 { return StaticRegain(in[0], in[1], in[3], AirProperties{Density: in[2]}) })
}

func TestFittingLaws(t *testing.T) {
	// Into the open all is lost, without a step nothing.
	require.Equal(t, FreeOutlet, SuddenExpansion(0))
	require.Zero(t, SuddenExpansion(1))
	// Borda and Carnot by momentum: loss is the velocity pressure of the
	// difference of the speeds.
	v1, v2 := 9.0, 4.0
	require.InEpsilon(t, (v1-v2)*(v1-v2)/2, SuddenExpansion(v2/v1)*v1*v1/2, 1e-14)
	require.Equal(t, 0.5, SharpEntry)
	for _, v := range []float64{SmoothElbow(0.4, 90), SmoothElbow(1, 181), MitredElbow(91), DiscDamper(3), DiscDamper(75), SuddenExpansion(1.1), StaticRegain(8, 5, 80, AirProperties{Density: 1.2}), MitredElbow(math.NaN())} {
		require.True(t, math.IsNaN(v))
	}
	for a := 6.0; a <= 60; a++ {
		require.Greater(t, DiscDamper(a), DiscDamper(a-1))
	}
}
