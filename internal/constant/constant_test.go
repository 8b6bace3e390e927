package constant_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/constant"
)

// The molar gas constant is N k, and sigma = 2 pi^5 k^4/(15 h^3 c^2): the
// table must agree with itself.
func TestConstantsAgreeWithEachOther(t *testing.T) {
	require.InEpsilon(t, constant.Avogadro*constant.Boltzmann, constant.MolarGas, 1e-12)
	k, h, c := constant.Boltzmann, constant.Planck, constant.LightSpeed
	sigma := 2 * math.Pow(math.Pi, 5) * math.Pow(k, 4) / (15 * h * h * h * c * c)
	require.InEpsilon(t, sigma, constant.StefanBoltzmann, 1e-9)
}

func TestDefinedConstants(t *testing.T) {
	require.Equal(t, 273.15, constant.ZeroCelsius)
	require.Equal(t, 9.80665, constant.Gravity)
	require.Equal(t, 101325.0, constant.StandardPressure)
	require.Equal(t, 299792458.0, constant.LightSpeed)
	require.Equal(t, 6.02214076e23, constant.Avogadro)
	require.Equal(t, 6.62607015e-34, constant.Planck)
}

func TestMoistAir(t *testing.T) {
	require.Equal(t, [...]float64{287.042, 0.621945, 1006, 1860, 2501000, 4186, 1.458e-6, 110.4}, [...]float64{
		constant.GasDryAir, constant.MoleRatio, constant.HeatDryAir, constant.HeatVapour, constant.LatentZero, constant.HeatLiquid,
		constant.SutherlandFactor, constant.SutherlandReference,
	})
	require.InEpsilon(t, 18.015268/28.966, constant.MoleRatio, 2e-5) // molar masses of eq. 20
}
