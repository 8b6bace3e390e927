package ventilation

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// The balance takes one figure for the Lewis relation; psychro's at room
// temperature is the same, and within 2 % of it from 0 to 40 °C.
func TestTheLewisFactorIsThatOfPsychro(t *testing.T) {
	for temperature, tol := range map[float64]float64{0: 0.02, 20: 0.002, 40: 0.02} {
		s, err := psychro.FromRelativeHumidity(temperature, 0.6, 101325)
		require.NoError(t, err)
		require.InEpsilon(t, s.LewisFactor(), lewisFactor, tol)
	}
}
