package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func TestATallVentIsAnOpeningFromBottomToTop(t *testing.T) {
	o, err := ventilation.TallVent{Name: "side", Bottom: 0.4, Top: 1.6, Width: 10, Discharge: 0.6, PressureCoefficient: -0.2}.Opening()
	require.NoError(t, err)
	require.InDelta(t, 1.0, o.Height, 1e-12)
	require.InDelta(t, 1.2, o.Vertical, 1e-12)
	require.InDelta(t, 12, o.Area, 1e-12)
	require.Equal(t, ventilation.Opening{Name: "side", Height: o.Height, Vertical: o.Vertical, Area: o.Area, Discharge: 0.6, PressureCoefficient: -0.2}, o)
	_, err = ventilation.TallVent{Bottom: 1, Top: 1, Discharge: 2, PressureCoefficient: 9}.Opening()
	requireFields(t, err, "Top", "Width", "Discharge", "PressureCoefficient")
	_, err = ventilation.TallVent{Bottom: -11, Top: 60, Width: 500, Discharge: 0.6}.Opening()
	requireFields(t, err, "Bottom", "Top", "Width")
}
