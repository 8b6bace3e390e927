package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// A flap 1 m deep on a roof of 30 degrees, opened by 30 degrees, is level with
// the hinge: the gap reaches 0.5 m down.
func TestRidgeVentGeometry(t *testing.T) {
	v := ventilation.RidgeVent{Length: 14, Depth: 1, Pitch: 30, Ridge: 3.1, Angle: 30}
	o, err := v.Opening(ventilation.FlapGeometry, 0.6, -0.4)
	require.NoError(t, err)
	require.InDelta(t, 0.5, o.Vertical, 1e-12)
	require.InDelta(t, 2.85, o.Height, 1e-12)
	require.InDelta(t, 14, o.Area, 1e-12)
	front := 2 * math.Sin(math.Pi/12)
	require.InDelta(t, 0.6/math.Hypot(1, 1/front), o.Discharge, 1e-12)
	require.Equal(t, -0.4, o.PressureCoefficient)
	// Wider is taller and passes more, whatever the model.
	for m := ventilation.AspectExponential; m <= ventilation.FlapGeometry; m++ {
		last := ventilation.Opening{}
		for v.Angle = 10; v.Angle <= 90; v.Angle += 20 {
			o, err := v.Opening(m, 0.6, 0)
			require.NoError(t, err)
			require.Greater(t, o.Discharge, last.Discharge)
			require.Greater(t, o.Vertical, last.Vertical)
			last = o
		}
	}
}

func TestRidgeVentFaultsComeTogether(t *testing.T) {
	_, err := ventilation.RidgeVent{Length: -1, Pitch: 90, Ridge: 99}.Opening(ventilation.FlapGeometry, 1.2, 5)
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"Length", "Depth", "Pitch", "Ridge", "coefficient", "closed vent"} {
		require.ErrorContains(t, err, field)
	}
	_, err = ventilation.RidgeVent{Length: 1, Depth: 1, Pitch: 20, Ridge: 3, Angle: 20}.Opening(ventilation.FlapGeometry, 1.2, 0)
	require.ErrorContains(t, err, "sharp")
}
