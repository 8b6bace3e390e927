package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

// The air a square metre of floor needs at 4 K above the outside, of 900 W/m² of
// sun a cover of 0.8 lets through, with half and four fifths of it spent on
// evaporation, 6 W/(m² K) over 1.8 m² of cover, and air of 1.2 kg/m³ and
// 1005 J/(kg K).
func TestHeatBalanceByFloor(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "heat balance computed apart/half evaporated", In: []float64{0.5}, Printed: "0.06567164"},
		{Where: "heat balance computed apart/four fifths evaporated", In: []float64{0.8}, Printed: "0.02089552"},
	}, func(in ...float64) float64 {
		n := build(t, point(0, 0.1, 0), point(3, 0.1, 0))
		a, err := n.AreaForRise(ventilation.Load{Solar: 0.8 * 900, Transpired: in[0], Loss: 6 * 1.8},
			ventilation.Outdoors{Temperature: 25, Pressure: 101325}, 4)
		require.NoError(t, err)
		require.InEpsilon(t, a.ByAir, a.Flow*ventilation.HeatCapacityAir*4, 1e-12)
		return a.ByAir / (1.2 * 1005 * 4)
	})
}
