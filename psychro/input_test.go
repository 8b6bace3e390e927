package psychro_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// The slips that users of such libraries make, each refused by name.
func TestSlipsAreRefused(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for _, c := range []struct {
			name string
			f    func() (psychro.State, error)
			want []string
		}{
			{"per cent", func() (psychro.State, error) { return m.FromRelativeHumidity(20, 60, 101325) }, []string{"relative humidity is 60, allowed 0 to 1 (fraction)"}},
			{"sensor", func() (psychro.State, error) { return m.FromRelativeHumidity(20, 1.01, 101325) }, []string{"relative humidity is 1.01", "clip it before: min(rh, 1)"}},
			{"kPa", func() (psychro.State, error) { return m.FromRelativeHumidity(20, 0.6, 101.325) }, []string{"pressure is 101.325, allowed 30000 to 200000 Pa"}},
			{"hPa", func() (psychro.State, error) { return m.FromHumidityRatio(20, 0.006, 1013.25) }, []string{"pressure is 1013.25"}},
			{"kelvin", func() (psychro.State, error) { return m.FromRelativeHumidity(293.15, 0.6, 101325) }, []string{"temperature is 293.15, allowed -100 to 200 °C"}},
			{"g/kg", func() (psychro.State, error) { return m.FromHumidityRatio(20, 7.4, 101325) }, []string{"humidity ratio is 7.4, allowed 0 to 0.014"}},
			{"supersaturated", func() (psychro.State, error) { return m.FromHumidityRatio(20, 0.016, 101325) }, []string{"humidity ratio is 0.016, allowed 0 to 0.014"}},
			{"negative", func() (psychro.State, error) { return m.FromHumidityRatio(20, -0.001, 101325) }, []string{"humidity ratio is -0.001"}},
			{"dew point", func() (psychro.State, error) { return m.FromDewPoint(20, 21, 101325) }, []string{"dew point is 21, allowed -100 to 20 °C; at most the dry bulb"}},
			{"wet bulb", func() (psychro.State, error) { return m.FromWetBulb(20, 21, 101325) }, []string{"wet bulb is 21", "to 20 °C; at most the dry bulb"}},
			{"wet bulb below that of dry air", func() (psychro.State, error) { return m.FromWetBulb(20, 2, 101325) }, []string{"wet bulb is 2, allowed 5.8"}},
			{"iced bulb in warm air", func() (psychro.State, error) { return m.FromWetBulb(20, 0.005, 101325) }, []string{"wet bulb is 0.005, allowed 5.8", "to 20 °C"}},
			{"dew point over water, fog over ice", func() (psychro.State, error) { return m.FromDewPointOver(psychro.Liquid, -10, -10.5, 101325) }, []string{"dew point is -10.5, allowed -100 to -11.2"}},
			{"hot, too little air", func() (psychro.State, error) { return m.FromRelativeHumidity(150, 0.9, 101325) }, []string{"relative humidity is 0.9, allowed 0 to 0.21", "1000 kg/kg"}},
			{"hot, no air", func() (psychro.State, error) { return m.FromVapourPressure(150, 101325, 101325) }, []string{"vapour pressure is 101325, allowed 0 to 10126"}},
			{"hot, degree", func() (psychro.State, error) { return m.FromDegreeOfSaturation(101, 0.5, 101325) }, []string{"temperature is 101, allowed -100 to 99.9", "water boils"}},
			{"boiling dew point", func() (psychro.State, error) { return m.FromDewPoint(150, 101, 101325) }, []string{"dew point is 101, allowed -100 to 99.9", "water boils"}},
			{"boiling wet bulb at height", func() (psychro.State, error) { return m.FromWetBulb(150, 92, 70e3) }, []string{"wet bulb is 92, allowed -100 to 89.9"}},
			{"beyond the range", func() (psychro.State, error) { return m.FromHumidityRatio(201, 0.1, 70e3) }, []string{"temperature is 201, allowed -100 to 200 °C"}},
			{"all at once", func() (psychro.State, error) { return m.FromRelativeHumidity(293, 60, 101.3) }, []string{"temperature", "relative humidity", "pressure"}},
			{"all at once, wet bulb", func() (psychro.State, error) { return m.FromWetBulb(293, 400, 101.3) }, []string{"temperature", "wet bulb", "pressure"}},
			{"vapour pressure in kPa of another air", func() (psychro.State, error) { return m.FromVapourPressure(20, 2500, 101325) }, []string{"vapour pressure is 2500"}},
			{"deficit", func() (psychro.State, error) { return m.FromVapourPressureDeficit(20, 3000, 101325) }, []string{"vapour pressure deficit is 3000, allowed 0 to 23"}},
			{"enthalpy in kJ", func() (psychro.State, error) { return m.FromEnthalpy(20, 40, 101325) }, []string{"enthalpy is 40, allowed 20"}},
			{"volume", func() (psychro.State, error) { return m.FromSpecificVolume(20, 1.2, 101325) }, []string{"specific volume is 1.2, allowed 0.8"}},
			{"degree", func() (psychro.State, error) { return m.FromDegreeOfSaturation(20, 60, 101325) }, []string{"degree of saturation is 60"}},
			{"absolute humidity in g", func() (psychro.State, error) { return m.FromAbsoluteHumidity(20, 8, 101325) }, []string{"absolute humidity is 8, allowed 0 to 0.017"}},
			{"h and rh", func() (psychro.State, error) { return m.FromEnthalpyAndRelativeHumidity(-2e5, 0.5, 101325) }, []string{"enthalpy is -200000"}},
			{"h and w", func() (psychro.State, error) { return m.FromEnthalpyAndHumidityRatio(4e5, 0.01, 101325) }, []string{"enthalpy is 400000"}},
			{"h and w, fog", func() (psychro.State, error) { return m.FromEnthalpyAndHumidityRatio(1e4, 0.01, 101325) }, []string{"enthalpy is 10000, allowed 39"}},
			{"v and w", func() (psychro.State, error) { return m.FromSpecificVolumeAndHumidityRatio(3, 0.01, 101325) }, []string{"specific volume is 3"}},
			{"tw and w", func() (psychro.State, error) { return m.FromWetBulbAndHumidityRatio(10, 0.02, 101325) }, []string{"humidity ratio is 0.02", "saturation at the wet bulb"}},
			{"tw and w, too hot", func() (psychro.State, error) { return m.FromWetBulbAndHumidityRatio(50, 0.001, 101325) }, []string{"wet bulb is 50"}},
			{"tw and rh", func() (psychro.State, error) { return m.FromWetBulbAndRelativeHumidity(60, 0.001, 101325) }, []string{"relative humidity is 0.001"}},
			{"tw in kelvin", func() (psychro.State, error) { return m.FromWetBulbAndRelativeHumidity(290, 5, 101325) }, []string{"wet bulb is 290", "relative humidity is 5"}},
			{"w and rh", func() (psychro.State, error) { return m.FromHumidityRatioAndRelativeHumidity(0.5, 1e-3, 101325) }, []string{"humidity ratio is 0.5"}},
			{"td and rh", func() (psychro.State, error) { return m.FromDewPointAndRelativeHumidity(80, 1e-3, 101325) }, []string{"dew point is 80"}},
			{"td in kelvin", func() (psychro.State, error) { return m.FromDewPointAndRelativeHumidity(280, 0.5, 101) }, []string{"dew point is 280", "pressure is 101"}},
			{"over water", func() (psychro.State, error) { return m.FromRelativeHumidityOver(psychro.Liquid, -10, 0.99, 101325) }, []string{"relative humidity over liquid is 0.99, allowed 0 to 0.90"}},
		} {
			s, err := c.f()
			require.Error(t, err, c.name)
			require.ErrorIs(t, err, psychro.ErrRange, c.name)
			var re *psychro.RangeError
			require.ErrorAs(t, err, &re, c.name)
			require.False(t, re.Value >= re.Min && re.Value <= re.Max, "%s: %v", c.name, err)
			require.Equal(t, psychro.State{}, s, c.name)
			for _, w := range c.want {
				require.ErrorContains(t, err, w, c.name)
			}
		}
	}
	_, err := psychro.RealGas.FromHumidityRatioAndRelativeHumidity(0.01, 0, 101325)
	require.ErrorIs(t, err, psychro.ErrNoSolution)
}

// all are the constructors with three numbers, by what they take.
var all = []struct {
	name string
	of   func(m psychro.Model, a, b, p float64) (psychro.State, error)
}{
	{"t rh", psychro.Model.FromRelativeHumidity},
	{"t w", psychro.Model.FromHumidityRatio},
	{"t td", psychro.Model.FromDewPoint},
	{"t tw", psychro.Model.FromWetBulb},
	{"t e", psychro.Model.FromVapourPressure},
	{"t vpd", psychro.Model.FromVapourPressureDeficit},
	{"t h", psychro.Model.FromEnthalpy},
	{"t v", psychro.Model.FromSpecificVolume},
	{"t mu", psychro.Model.FromDegreeOfSaturation},
	{"t d", psychro.Model.FromAbsoluteHumidity},
	{"h rh", psychro.Model.FromEnthalpyAndRelativeHumidity},
	{"h w", psychro.Model.FromEnthalpyAndHumidityRatio},
	{"v w", psychro.Model.FromSpecificVolumeAndHumidityRatio},
	{"tw w", psychro.Model.FromWetBulbAndHumidityRatio},
	{"tw rh", psychro.Model.FromWetBulbAndRelativeHumidity},
	{"w rh", psychro.Model.FromHumidityRatioAndRelativeHumidity},
	{"td rh", psychro.Model.FromDewPointAndRelativeHumidity},
}

func TestNaNAndInfinitiesAreRefused(t *testing.T) {
	for _, c := range all {
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			for i := range 3 {
				in := [3]float64{10, 0.005, 101325}
				in[i] = bad
				for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
					_, err := c.of(m, in[0], in[1], in[2])
					require.ErrorIs(t, err, psychro.ErrRange, "%s, %v", c.name, in)
				}
			}
			_, err := c.of(psychro.RealGas, bad, bad, bad)
			var re *psychro.RangeError
			require.ErrorAs(t, err, &re, c.name)
		}
	}
}

func TestBareFunctionsReturnNaNOutside(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for i, v := range []float64{
		psychro.SaturationPressure(298.15), psychro.SaturationPressure(-230), psychro.SaturationPressure(nan),
		psychro.SaturationPressureOver(psychro.Ice, 1), psychro.SaturationPressureOver(psychro.Liquid, -41),
		psychro.SaturationTemperature(-1), psychro.SaturationTemperature(nan), psychro.SaturationTemperature(inf), psychro.SaturationTemperature(0),
		psychro.SaturationTemperatureOver(psychro.Ice, 700), psychro.SaturationTemperatureOver(psychro.Liquid, 1),
		psychro.SaturationTemperatureOver(psychro.Ice, 1e-60),
		psychro.SaturationSlope(298), psychro.SaturationSlopeOver(psychro.Ice, 1),
		psychro.SaturationHumidityRatio(101, 101325), psychro.SaturationHumidityRatio(20, 101.325), psychro.SaturationHumidityRatio(293, 101325),
		psychro.EnhancementFactor(101, 101325), psychro.EnhancementFactor(20, 101), psychro.EnhancementFactor(293, 101325),
		psychro.LatentHeat(293), psychro.LatentHeatOver(psychro.Ice, 3), psychro.LatentHeatOver(psychro.Liquid, -50),
		psychro.Viscosity(293), psychro.Conductivity(nan), psychro.VapourDiffusivity(20, 101), psychro.VapourDiffusivity(293, 101325),
		psychro.LiquidEnthalpy(-50), psychro.SteamEnthalpy(-1),
	} {
		require.True(t, math.IsNaN(v), "number %d is %g", i, v)
	}
}

// Numbers that are no Model and no Surface.
func TestUnknownModelsAndSurfaces(t *testing.T) {
	for _, c := range all {
		_, err := c.of(psychro.Model(9), 10, 0.005, 101325)
		require.ErrorContains(t, err, "Model is 9, allowed 0 to 1", c.name)
	}
	for _, f := range []func() (psychro.State, error){
		func() (psychro.State, error) { return psychro.RealGas.FromRelativeHumidityOver(9, 10, 0.5, 101325) },
		func() (psychro.State, error) { return psychro.RealGas.FromDewPointOver(9, 10, 5, 101325) },
		func() (psychro.State, error) { return psychro.RealGas.FromWetBulbOver(9, 10, 5, 101325) },
	} {
		_, err := f()
		require.ErrorContains(t, err, "Surface is 9, allowed 0 to 1")
	}
	s := must(t)(psychro.FromRelativeHumidity(10, 0.5, 101325))
	for _, v := range []float64{psychro.Model(9).SaturationHumidityRatio(10, 101325), psychro.SaturationPressureOver(9, 10), psychro.SaturationTemperatureOver(9, 1000),
		psychro.SaturationSlopeOver(9, 10), psychro.LatentHeatOver(9, 10), psychro.HylandWexler(9, 10), psychro.WMOMagnus(9, 10),
		s.WetBulbOver(9), s.DewPointOver(9), s.RelativeHumidityOver(9)} {
		require.True(t, math.IsNaN(v))
	}
	require.Equal(t, "Model(9), Surface(7)", psychro.Model(9).String()+", "+psychro.Surface(7).String())
}
