package psychro_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

func must(t testing.TB) func(psychro.State, error) psychro.State {
	return func(s psychro.State, err error) psychro.State {
		t.Helper()
		require.NoError(t, err)
		return s
	}
}

// Thermodynamics ties the properties of one mixture to each other: cp is
// dh/dT, T ds = dh at constant pressure, and ds/dp = -dv/dT (Maxwell).
func TestThermodynamicIdentities(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for _, at := range []float64{-30, -5, 10, 35, 60} {
			for _, rh := range []float64{0, 0.4, 0.9} {
				p := 95e3
				w := must(t)(m.FromRelativeHumidity(at, rh, p)).HumidityRatio()
				f := func(dt, dp float64) psychro.State { return must(t)(m.FromHumidityRatio(at+dt, w, p+dp)) }
				s := f(0, 0)
				const d = 0.01
				require.InEpsilon(t, s.HeatCapacity(), (f(d, 0).Enthalpy()-f(-d, 0).Enthalpy())/(2*d), 1e-7)
				require.InEpsilon(t, s.HeatCapacity()/(at+273.15), (f(d, 0).Entropy()-f(-d, 0).Entropy())/(2*d), 1e-6)
				dvdt := (f(d, 0).SpecificVolume() - f(-d, 0).SpecificVolume()) / (2 * d)
				require.InEpsilon(t, -dvdt, (f(0, 10).Entropy()-f(0, -10).Entropy())/20, 2e-5)
				require.InEpsilon(t, (1+w)/s.Density(), s.SpecificVolume(), 1e-12)
			}
		}
	}
}

// The slope of the saturation pressure by differences, and the inverse.
func TestSaturationSlopeAndInverse(t *testing.T) {
	for _, s := range []psychro.Surface{psychro.Liquid, psychro.Ice} {
		lo, hi := psychro.LiquidTemperatures.Min, psychro.LiquidTemperatures.Max
		if s == psychro.Ice {
			lo, hi = psychro.IceTemperatures.Min, psychro.TriplePoint
		}
		for k := 1; k < 400; k++ {
			at := lo + (hi-lo)*float64(k)/400
			e := psychro.SaturationPressureOver(s, at)
			require.InDelta(t, at, psychro.SaturationTemperatureOver(s, e), 1e-9)
			const d = 1e-3
			slope := (psychro.SaturationPressureOver(s, at+d) - psychro.SaturationPressureOver(s, at-d)) / (2 * d)
			if math.Abs(at+100) > 0.01 && at < hi-d {
				require.InEpsilon(t, slope, psychro.SaturationSlopeOver(s, at), 2e-5, "%v %g", s, at)
			}
		}
	}
	require.InEpsilon(t, psychro.SaturationPressureOver(psychro.Ice, psychro.TriplePoint), psychro.SaturationPressure(psychro.TriplePoint), 1e-6)
	require.InDelta(t, 0.01, psychro.SaturationTemperature(611.657), 1e-5)
	require.InDelta(t, 50-273.15, psychro.IceTemperatures.Min, 1e-12) // K, [IapwsIce11] eq. 6
	require.Equal(t, psychro.SaturationSlopeOver(psychro.Ice, -5), psychro.SaturationSlope(-5))
}

// Dry bulb, wet bulb and dew point stand in order, and each rises with the
// humidity.
func TestOrderAndMonotony(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for _, p := range []float64{60e3, 101325, 150e3} {
			for at := -60.0; at < 80; at += 3.7 {
				last := must(t)(m.FromRelativeHumidity(at, 0.01, p))
				for rh := 0.03; rh < 1; rh += 0.02 {
					s := must(t)(m.FromRelativeHumidity(at, rh, p))
					tw, td := s.WetBulb(), s.DewPoint()
					require.LessOrEqual(t, tw, at)
					if math.Abs(tw) > 1 {
						require.LessOrEqual(t, td, tw+1e-9)
					}
					require.Greater(t, td, last.DewPoint())
					require.Greater(t, s.Enthalpy(), last.Enthalpy())
					require.Greater(t, s.SpecificVolume(), last.SpecificVolume())
					require.GreaterOrEqual(t, s.DegreeOfSaturation(), 0.0)
					require.LessOrEqual(t, s.DegreeOfSaturation(), s.RelativeHumidity())
					last = s
				}
			}
		}
	}
}

// Thin air and dry air are ideal: the two models meet, up to their constants.
func TestModelsMeetInDryAir(t *testing.T) {
	a := must(t)(psychro.RealGas.FromHumidityRatio(20, 0, 101325))
	b := must(t)(psychro.IdealGas.FromHumidityRatio(20, 0, 101325))
	require.InEpsilon(t, b.SpecificVolume(), a.SpecificVolume(), 5e-4)
	require.InDelta(t, b.Enthalpy(), a.Enthalpy(), 20)
	require.Equal(t, psychro.RealGas, a.Model())
	require.Equal(t, "ideal gas, real gas, ice, liquid", b.Model().String()+", "+a.Model().String()+", "+psychro.Ice.String()+", "+psychro.Liquid.String())
}

func TestStandardAtmosphereInverse(t *testing.T) {
	for z := -500.0; z <= 11000; z += 250 {
		require.InDelta(t, z, psychro.StandardAltitude(psychro.StandardPressure(z)), 1e-7)
	}
	for _, z := range []float64{-501, 11001, math.NaN(), math.Inf(1)} {
		require.True(t, math.IsNaN(psychro.StandardPressure(z)))
		require.True(t, math.IsNaN(psychro.StandardTemperature(z)))
		require.True(t, math.IsNaN(psychro.FAO56Pressure(z)))
	}
	require.True(t, math.IsNaN(psychro.StandardAltitude(101.325)))
	require.True(t, math.IsNaN(psychro.StandardAltitude(-1)))
	// The rivals lie within 0.2 % to 3 km.
	require.InEpsilon(t, psychro.StandardPressure(3000), psychro.FAO56Pressure(3000), 0.01)
}

// [UsStd76] at 15 °C: 1.7894e-5 kg/(m s) and 2.5326e-2 W/(m K) as the standard
// prints them, and [Massman98] at 0 °C.
func TestTransport(t *testing.T) {
	require.InDelta(t, 1.7894e-5, psychro.Viscosity(15), 0.5e-9)
	require.InDelta(t, 2.5326e-2, psychro.Conductivity(15), 0.5e-6)
	require.InEpsilon(t, 0.2178e-4, psychro.VapourDiffusivity(0, 101325), 1e-12)
	require.InEpsilon(t, 0.2178e-4*math.Pow(313.15/273.15, 1.81)*2, psychro.VapourDiffusivity(40, 101325/2.0), 1e-12)
	dry := must(t)(psychro.FromHumidityRatio(25, 0, 101325))
	require.Equal(t, psychro.Viscosity(25), dry.Viscosity())
	require.Equal(t, psychro.Conductivity(25), dry.Conductivity())
	require.InDelta(t, 0.71, dry.Properties().PrandtlNumber, 0.01)
	require.InDelta(t, 0.60, dry.Properties().SchmidtNumber, 0.04)
	require.InDelta(t, 0.86, dry.LewisNumber(), 0.04)
	wet := must(t)(psychro.FromRelativeHumidity(80, 1, 101325))
	require.Less(t, wet.Viscosity(), psychro.Viscosity(80))
	require.Less(t, wet.Conductivity(), psychro.Conductivity(80))
}

// [FAO56] states 0.665e-3 p for one latent heat; at 20 °C that lies within 1 %.
func TestPsychrometricConstant(t *testing.T) {
	s := must(t)(psychro.FromRelativeHumidity(20, 0.5, 101325))
	q := s.Properties()
	require.InEpsilon(t, psychro.FAO56PsychrometricConstant(101325), q.PsychrometricConstant, 0.01)
	require.InEpsilon(t, s.HeatCapacity()/(1+s.HumidityRatio())*101325/(0.621945*q.LatentHeat), q.PsychrometricConstant, 1e-5)
	require.InEpsilon(t, q.LatentHeat, psychro.LatentHeat(20), 1e-15)
}

// The rivals against ours, as far apart as the package comment of each says.
func TestRivalsLieAsFarApartAsStated(t *testing.T) {
	spread := func(from, to float64, s psychro.Surface, f func(float64) float64) (worst float64) {
		for at := from; at <= to; at += 0.5 {
			worst = max(worst, math.Abs(f(at)/psychro.SaturationPressureOver(s, at)-1))
		}
		return worst
	}
	hw := func(s psychro.Surface) func(float64) float64 {
		return func(at float64) float64 { return psychro.HylandWexler(s, at) }
	}
	wmo := func(s psychro.Surface) func(float64) float64 {
		return func(at float64) float64 { return psychro.WMOMagnus(s, at) }
	}
	require.InDelta(t, 0.00018, spread(0.5, 60, psychro.Liquid, hw(psychro.Liquid)), 2e-5)
	require.InDelta(t, 0.00032, spread(-40, 0, psychro.Ice, hw(psychro.Ice)), 2e-5)
	require.InDelta(t, 0.0013, spread(0.5, 60, psychro.Liquid, psychro.FAO56Saturation), 1e-4)
	require.InDelta(t, 0.0031, spread(0.5, 60, psychro.Liquid, wmo(psychro.Liquid)), 1e-4)
	require.InDelta(t, 0.00068, spread(-40, 0, psychro.Ice, wmo(psychro.Ice)), 1e-4)
	for _, p := range []float64{300, 700, 1000, 2000} { // hPa, as [WMO08] prints it
		require.InEpsilon(t, 1.0016+3.15e-6*p-0.074/p, psychro.WMOEnhancement(100*p), 1e-12)
	}
	for _, v := range []float64{psychro.HylandWexler(psychro.Ice, 1), psychro.FAO56Saturation(298), psychro.FAO56Slope(298),
		psychro.WMOMagnus(psychro.Ice, 5), psychro.WMOMagnus(psychro.Liquid, 70), psychro.WMOEnhancement(101), psychro.FAO56PsychrometricConstant(101)} {
		require.True(t, math.IsNaN(v))
	}
}

func TestDeficitAtALeaf(t *testing.T) {
	s := must(t)(psychro.FromRelativeHumidity(24, 0.7, 101325))
	require.InEpsilon(t, s.VapourPressureDeficit(), s.VapourPressureDeficitAt(24), 1e-12)
	require.Less(t, s.VapourPressureDeficitAt(22), s.VapourPressureDeficit())
	require.InDelta(t, 0, s.VapourPressureDeficitAt(s.DewPoint()), 1e-6)
	require.True(t, s.Condenses(s.DewPoint()-0.01))
	require.False(t, s.Condenses(s.DewPoint()+0.01))
	require.True(t, math.IsNaN(s.VapourPressureDeficitAt(298)))
	require.True(t, math.IsNaN(s.VapourPressureDeficitAt(100)))
}

// Properties tells what the methods tell.
func TestPropertiesAgreeWithTheMethods(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		s := must(t)(m.FromRelativeHumidity(23, 0.61, 97e3))
		q := s.Properties()
		for _, c := range []struct{ a, b float64 }{
			{q.Temperature, s.Temperature()}, {q.Pressure, s.Pressure()}, {q.HumidityRatio, s.HumidityRatio()},
			{q.SpecificHumidity, s.HumidityRatio() / (1 + s.HumidityRatio())}, {q.MoleFraction, s.MoleFraction()}, {q.AbsoluteHumidity, s.AbsoluteHumidity()},
			{q.VapourPressure, s.VapourPressure()}, {q.SaturationVapourPressure, s.SaturationVapourPressure()},
			{q.VapourPressureDeficit, s.VapourPressureDeficit()}, {q.RelativeHumidity, s.RelativeHumidity()},
			{q.DegreeOfSaturation, s.DegreeOfSaturation()}, {q.DewPoint, s.DewPoint()}, {q.WetBulb, s.WetBulb()},
			{q.Enthalpy, s.Enthalpy()}, {q.Entropy, s.Entropy()}, {q.SpecificVolume, s.SpecificVolume()}, {q.Density, s.Density()},
			{q.HeatCapacity, s.HeatCapacity()}, {q.LatentHeat, psychro.LatentHeat(23)}, {q.Viscosity, s.Viscosity()},
			{q.Conductivity, s.Conductivity()}, {q.VapourDiffusivity, psychro.VapourDiffusivity(23, 97e3)}, {q.LewisNumber, s.LewisNumber()},
			{q.PrandtlNumber, s.Viscosity() * s.HeatCapacity() / (1 + s.HumidityRatio()) / s.Conductivity()},
			{q.SchmidtNumber, s.Viscosity() / s.Density() / q.VapourDiffusivity}, {math.Pow(q.LewisNumber, 2.0/3), s.LewisFactor()},
		} {
			require.InEpsilon(t, c.b, c.a, 1e-12)
		}
	}
}
