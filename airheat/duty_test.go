package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

func idealAir(t testing.TB, c, rh, p float64) psychro.State {
	s, err := psychro.IdealGas.FromRelativeHumidity(c, rh, p)
	require.NoError(t, err)
	return s
}

var everyBasis = []FlowBasis{FanInlet, StandardAir, Outlet, MoistMass}

func TestDutyRoundTrips(t *testing.T) {
	ideal := idealAir(t, 14, 0.7, 95000)
	real, err := psychro.FromRelativeHumidity(14, 0.7, 95000)
	require.NoError(t, err)
	for _, in := range []psychro.State{ideal, real} {
		for _, b := range everyBasis {
			d, err := PowerFor(in, Flow{0.8, b}, 55)
			require.NoError(t, err)
			require.InEpsilon(t, d.Power, d.DryAir*d.Enthalpy, 1e-12)
			back, err := RiseFor(in, Flow{0.8, b}, d.Power)
			require.NoError(t, err)
			require.InDelta(t, 55, back.Outlet, 1e-9, "%v", b)
			f, err := FlowFor(in, d.Power, 55)
			require.NoError(t, err)
			stated := map[FlowBasis]float64{FanInlet: f.InletFlow, StandardAir: f.Standard, Outlet: f.OutletFlow, MoistMass: f.MoistAir}[b]
			require.InEpsilon(t, 0.8, stated, 1e-12, "%v", b)
		}
	}
}

// TestDutyIdealByHand solves the handbook's ideal form by its own equations.
func TestDutyIdealByHand(t *testing.T) {
	in := idealAir(t, 20, 0.6, 101325)
	// Hyland and Wexler's saturation over liquid, [HoF17] ch. 1 eq. 6.
	T := 293.15
	ps := math.Exp(-5.8002206e3/T + 1.3914993 - 4.8640239e-2*T + 4.1764768e-5*T*T - 1.4452093e-8*T*T*T + 6.5459673*math.Log(T))
	w := 0.621945 * 0.6 * ps / (101325 - 0.6*ps)
	require.InEpsilon(t, w, in.HumidityRatio(), 1e-9)
	h := func(t float64) float64 { return 1006*t + w*(2501000+1860*t) }
	v := func(t float64) float64 { return 287.042 * (t + 273.15) * (1 + 1.607858*w) / 101325 }
	flow := 2000.0 / 3600
	for b, da := range map[FlowBasis]float64{FanInlet: flow / v(20), StandardAir: 1.2 * flow / (1 + w), Outlet: flow / v(75), MoistMass: flow / (1 + w)} {
		d, err := PowerFor(in, Flow{flow, b}, 75)
		require.NoError(t, err)
		require.InEpsilon(t, da*(h(75)-h(20)), d.Power, 1e-9, "%v", b)
	}
}

func TestRealGasEndsAt200(t *testing.T) {
	in, err := psychro.FromRelativeHumidity(20, 0.5, 101325)
	require.NoError(t, err)
	_, err = PowerFor(in, Flow{1, FanInlet}, 201)
	require.ErrorIs(t, err, ErrRange)
	require.ErrorContains(t, err, "psychro.IdealGas")
	for _, outlet := range []float64{60, 120, 200} {
		real, err := PowerFor(in, Flow{1, FanInlet}, outlet)
		require.NoError(t, err)
		ideal, err := PowerFor(idealAir(t, 20, 0.5, 101325), Flow{1, FanInlet}, outlet)
		require.NoError(t, err)
		require.InEpsilon(t, ideal.Power, real.Power, 0.01)
		require.NotEqual(t, ideal.Power, real.Power)
	}
	// And up to there a power has its rise, in whatever air and flow.
	for _, c := range []float64{-20, 0, 35} {
		for _, outlet := range []float64{150, 197, 199, 199.99, 200} {
			for _, basis := range []FlowBasis{FanInlet, StandardAir, Outlet, MoistMass} {
				in, err := psychro.FromRelativeHumidity(c, 0.9, 101325)
				require.NoError(t, err)
				d, err := PowerFor(in, Flow{2, basis}, outlet)
				require.NoError(t, err)
				r, err := RiseFor(in, Flow{2, basis}, d.Power)
				require.NoError(t, err, "%g °C to %g, %v", c, outlet, basis)
				require.InDelta(t, outlet, r.Outlet, 1e-6)
			}
		}
	}
	_, err = RiseFor(in, Flow{1, FanInlet}, 250e3)
	require.ErrorContains(t, err, "psychro.IdealGas")
}

func TestDutyRefuses(t *testing.T) {
	in := idealAir(t, 20, 0.5, 101325)
	_, err := PowerFor(in, Flow{Value: 1}, 400)
	require.ErrorContains(t, err, "Flow.Basis")
	require.ErrorContains(t, err, "outlet")
	_, err = RiseFor(in, Flow{-1, FanInlet}, math.NaN())
	require.ErrorContains(t, err, "Flow.Value")
	require.ErrorContains(t, err, "power")
	_, err = RiseFor(in, Flow{1, Outlet}, 400000)
	require.ErrorIs(t, err, ErrNoSolution)
	_, err = FlowFor(in, 1000, 15)
	require.ErrorIs(t, err, ErrRange)
	_, err = PowerFor(psychro.State{}, Flow{1, FanInlet}, 40)
	require.ErrorIs(t, err, ErrRange)
	require.Equal(t, "no basis", FlowBasis(0).String())
}

// TestCoolingEndsAtTheDewPoint: cooling is answered as far as the air stays dry.
func TestCoolingEndsAtTheDewPoint(t *testing.T) {
	real, err := psychro.FromRelativeHumidity(20, 0.5, 101325)
	require.NoError(t, err)
	for _, in := range []psychro.State{idealAir(t, 20, 0.5, 101325), real} {
		dew := in.DewPoint()
		d, err := PowerFor(in, Flow{1, FanInlet}, dew+0.01)
		require.NoError(t, err)
		require.Negative(t, d.Power)
		_, err = PowerFor(in, Flow{1, FanInlet}, dew-0.01)
		require.ErrorIs(t, err, ErrRange)
		require.ErrorContains(t, err, "dew point")
	}
	// In the real gas too a flow at the outlet carries so much and no more.
	_, err = RiseFor(real, Flow{1, Outlet}, 400000)
	require.ErrorIs(t, err, ErrNoSolution)
}

func TestDutyAllocatesNothing(t *testing.T) {
	in := idealAir(t, 20, 0.5, 101325)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		for _, b := range everyBasis {
			d, _ := RiseFor(in, Flow{1, b}, 30000)
			sinkHeat += d.Rise
		}
	}))
}

// Small and no powers converge with the real gas too.
func TestRiseForSmallPowers(t *testing.T) {
	for _, c := range []float64{-20, 0, 15, 40} {
		for _, power := range []float64{0, 0.01, 1, 3, 10, 77, 500} {
			for _, flow := range []float64{0.01, 0.5, 3, 40} {
				for _, basis := range []FlowBasis{FanInlet, StandardAir, Outlet, MoistMass} {
					in, err := psychro.RealGas.FromRelativeHumidity(c, 0.6, 98000)
					require.NoError(t, err)
					d, err := RiseFor(in, Flow{flow, basis}, power)
					require.NoError(t, err, "%g °C, %g W, %g", c, power, flow)
					require.InDelta(t, power, d.Power, 1e-6)
				}
			}
		}
	}
}
