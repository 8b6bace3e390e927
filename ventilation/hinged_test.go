package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

// [Bb18] sec. 8.3 as tested by CAiMIRA, whose tests allow 1 %: the opening is
// 0.6 m of a flap 1.6 m high.
func TestAspectDischargePublished(t *testing.T) {
	const why = "the published test allows 1 %"
	check.Run(t, []check.Row{
		{Where: "Bb18.8.3/w0.5", In: []float64{0.5}, Printed: "0.447", Tol: 0.00447, Why: why},
		{Where: "Bb18.8.3/w1.0", In: []float64{1.0}, Printed: "0.379", Tol: 0.00379, Why: why},
		{Where: "Bb18.8.3/w2.0", In: []float64{2.0}, Printed: "0.328", Tol: 0.00328, Why: why},
		{Where: "Bb18.8.3/w4.0", In: []float64{4.0}, Printed: "0.308", Tol: 0.00308, Why: why},
	}, func(in ...float64) float64 {
		return ventilation.AspectDischarge(in[0], 1.6, ventilation.FlapAngle(0.6, 1.6))
	})
}

// Each class by its two coefficients: a small angle gives their product, and
// 90 degrees the limit, both worked with the exponential series.
func TestAspectClasses(t *testing.T) {
	for _, c := range []struct{ ratio, m, limit float64 }{{0.3, 0.060, 0.612}, {0.8, 0.048, 0.589}, {1.5, 0.040, 0.563}, {2.5, 0.038, 0.548}} {
		require.InEpsilon(t, c.m*c.limit*0.01, ventilation.AspectDischarge(c.ratio, 1, 0.01), 4e-4)
		require.InEpsilon(t, c.limit, ventilation.AspectDischarge(c.ratio, 1, 90), 0.035)
		for _, a := range []float64{5, 20, 60} {
			require.InEpsilon(t, -c.limit*math.Expm1(-c.m*a), ventilation.AspectDischarge(c.ratio, 1, a), 1e-12)
		}
	}
	// A ratio on the border belongs to the class above it.
	require.InEpsilon(t, 0.589*(1-math.Exp(-0.048*30)), ventilation.AspectDischarge(0.5, 1, 30), 1e-12)
	require.InEpsilon(t, 0.548*(1-math.Exp(-0.038*30)), ventilation.AspectDischarge(2, 1, 30), 1e-12)
	require.True(t, math.IsNaN(ventilation.AspectDischarge(1, 1, 91)))
}

// The cubic of [EnVent17], worked by hand from its coefficients.
func TestEnAreaRatio(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "EnVent17/90deg", In: []float64{90}, Printed: "0.8996"},
		{Where: "EnVent17/10deg", In: []float64{10}, Printed: "0.17436"},
		{Where: "EnVent17/45deg", In: []float64{45}, Printed: "0.6197175"},
	}, func(in ...float64) float64 { return ventilation.EnAreaRatio(in[0]) })
	require.True(t, math.IsNaN(ventilation.EnAreaRatio(-1)))
}

func TestFlapGeometry(t *testing.T) {
	h := ventilation.Hinged{Along: 2, Depth: 1, Angle: 60}
	a, err := h.Area()
	require.NoError(t, err)
	require.InDelta(t, 2, a.Front, 1e-12)              // stroke 1 m
	require.InDelta(t, math.Sqrt(3)/2, a.Sides, 1e-12) // two equilateral halves
	require.InDelta(t, 1/math.Hypot(0.5, 1/a.Front*2/2.8660254037844384), a.Free, 1e-9)
	require.InDelta(t, 2, a.Smaller, 1e-12)
	h.Blocked = 2
	a, err = h.Area()
	require.NoError(t, err)
	require.Zero(t, a.Sides)
	require.InDelta(t, math.Sqrt2, a.Free, 1e-12)
	require.InDelta(t, 60, ventilation.FlapAngle(ventilation.FlapStroke(60, 1.3), 1.3), 1e-12)
	h.Angle = 0
	a, err = h.Area()
	require.NoError(t, err)
	require.Zero(t, a.Free)
}

func TestHingedModelsRiseWithTheAngleAndLieTogether(t *testing.T) {
	last := [3]float64{}
	for angle := 5.0; angle <= 90; angle += 5 {
		h := ventilation.Hinged{Along: 1, Depth: 1.6, Angle: angle}
		for m := ventilation.AspectExponential; m <= ventilation.FlapGeometry; m++ {
			cd, err := m.Discharge(h, 0.6)
			require.NoError(t, err)
			require.Greater(t, cd, last[m])
			require.LessOrEqual(t, cd, 0.62)
			last[m] = cd
		}
	}
}

func TestFlapFaultsComeTogether(t *testing.T) {
	_, err := ventilation.EnPolynomial.Discharge(ventilation.Hinged{Hinge: ventilation.SideHinged, Along: 0, Depth: -1, Angle: 120, Blocked: 3}, 1.2)
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"Along", "Depth", "Angle", "Blocked", "sharp", "Hinge is 2"} {
		require.ErrorContains(t, err, field)
	}
}
