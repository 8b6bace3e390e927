package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// What condenses follows from psychro's Lewis relation with the factor of the
// outside air, which is that of the film within 2 %.
func TestVapourBesideHeatByPsychro(t *testing.T) {
	h := summerHouse(t)
	h.Crop.LAI, h.Floor.Wet = 0, 0
	for _, outside := range []float64{-15, 2, 25} {
		w := ventilation.Weather{Air: air(t, outside, 0.9), Wind: 1, Sky: outside - 12, Ground: 20}
		x, err := climate(t, h).Solve(w, ventilation.Setting{Opening: 0.02, Moisture: 0.004, Heat: 15000})
		require.NoError(t, err)
		require.Greater(t, x.Condensed, 0.0)
		inside, err := psychro.FromHumidityRatio(x.Temperature, x.HumidityRatio, 101325)
		require.NoError(t, err)
		v, err := inside.VapourFlux(x.CoverTemperature, h.Cover.Convection)
		require.NoError(t, err)
		require.InEpsilon(t, v.Flux, x.Condensed/h.Cover.Area, 0.025, "by State.VapourFlux")

		// h (e - es)/(Rv T Lewis rho cp), rho cp of 1 m³ of moist air.
		dry := (101325 - x.VapourPressure) / (constant.GasDryAir * (x.Temperature + constant.ZeroCelsius))
		cp := constant.HeatDryAir + constant.HeatVapour*x.HumidityRatio
		vapourGas := constant.GasDryAir / constant.MoleRatio
		want := h.Cover.Area * h.Cover.Convection * (x.VapourPressure - psychro.SaturationPressure(x.CoverTemperature)) /
			(vapourGas * (x.Temperature + constant.ZeroCelsius) * w.Air.LewisFactor() * dry * cp)
		require.InEpsilon(t, want, x.Condensed, 1e-9, "at %g °C", outside)
		require.InDelta(t, 0, x.HeatResidual, 1e-9*x.HeatIn)
		require.InDelta(t, 0, x.WaterResidual, 1e-9*x.WaterIn)
	}
}
