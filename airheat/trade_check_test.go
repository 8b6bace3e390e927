package airheat

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/internal/check"
)

// Figures of the trade, common practice without a source. They are rounded as
// such figures are; each row says how far the exact answer may lie from it.
const trade = "common practice, no source/"

// 60 kW into 2,000 m³/h of air entering at 20 °C lift it by about 100 K: that
// lies between the flow stated at the inlet and at the outlet.
func TestTradeFigureOfTheRise(t *testing.T) {
	in := idealAir(t, 20, 0.5, 101325)
	rise := func(v ...float64) float64 {
		d, err := RiseFor(in, Flow{2000.0 / 3600, FlowBasis(v[0])}, 60000)
		require.NoError(t, err)
		return d.Rise
	}
	inlet, outlet := float64(FanInlet), float64(Outlet)
	check.Run(t, []check.Row{
		{Where: trade + "60 kW in 2000 m³/h/inlet", In: []float64{inlet}, Printed: "100", Tol: 12, Why: "said as about 100 K; 88.6 K for a flow at the inlet"},
		{Where: trade + "60 kW in 2000 m³/h/outlet", In: []float64{outlet}, Printed: "100", Tol: 28, Why: "said as about 100 K; 127 K for a flow at the outlet"},
	}, rise)
	require.Less(t, rise(inlet), 100.0)
	require.Greater(t, rise(outlet), 100.0)
	require.InDelta(t, 88.6, rise(inlet), 0.5)
	// At the outlet the same flow is less air: rise = r T1/(T1 - r).
	require.InDelta(t, rise(inlet)*293.15/(293.15-rise(inlet)), rise(outlet), 1e-9)
	require.InDelta(t, 1.2*1005*2000/3600*100, ruleOfThumb(2000.0/3600, 100), 1e-9)
}

// At a rise of 100 K, air returned 10 K warmer asks 10 % less of the heater:
// the view of the coil. What the house saves is another number, and smaller.
func TestTradeFigureOfTheWarmerReturn(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: trade + "return 10 K warmer at 100 K", In: []float64{10, 100}, Printed: "10"},
	}, func(v ...float64) float64 { return 100 * coilView(v[0], v[1]) })
	// A house in which the heater's rise is 100 K and the ridge 10 K warmer.
	l := TwoLayers{LowerLoss: 200, UpperLoss: 400, Lower: 16, Outside: -10, Mixing: 0.15, HeatCapacity: 1220}
	// phi Q = Hu (Tu-To) + c M (Tu-Tl) at Tu = Tl + 10.
	q := 200*26.0 + 400*36
	l.RisingShare = (400*36 + 1220*0.15*10) / q
	l.HeaterFlow = q / (1220 * 100)
	r, err := l.RidgeReturn()
	require.NoError(t, err)
	require.InDelta(t, 10, r.Floor.Upper-l.Lower, 1e-9)
	require.InDelta(t, 0.10, r.CoilView, 1e-12)
	require.Greater(t, r.Saving, 0.0)
	require.Less(t, r.Saving, 0.9*r.CoilView)
	require.Less(t, r.Saving, r.Bound)
}

// A house of this kind warms from 5 to 20 °C in about half an hour: 200 m² of
// floor, 480 m³ of air, a double film, light benches, 60 kW.
func TestTradeFigureOfTheWarmUp(t *testing.T) {
	h := house(t, envelope.Nodes{AirCapacity: 6e5, StructureCapacity: 4e6, SoilCapacity: 2.5e7, Cover: 1300, Leakage: 160, AirStructure: 2000, AirSoil: 600, StructureOutside: 20, SoilDeep: 100})
	check.Run(t, []check.Row{
		{Where: trade + "warm-up from 5 to 20 °C", In: []float64{60000}, Printed: "30", Tol: 10, Why: "said as about half an hour"},
	}, func(v ...float64) float64 {
		e, err := h.reachFrom(Temperatures{5, 5, 5}, envelope.Drive{Heat: v[0], Outside: -5, Deep: 8}, airNode, [2]string{"level", "limit"}, 20, false, 3*time.Hour)
		require.NoError(t, err)
		require.True(t, e.Reached)
		return e.Time.Minutes()
	})
}

// A heater that warms air directly reaches about 93 %: gas with 5 % of oxygen
// in a flue of 140 °C, and a hundredth lost from the casing.
func TestTradeFigureOfTheEfficiency(t *testing.T) {
	f := naturalGas()
	check.Run(t, []check.Row{
		{Where: trade + "efficiency of a direct air heater", In: []float64{140, 0.05, 0.01}, Printed: "93"},
	}, func(v ...float64) float64 {
		ratio, err := f.AirRatioFromO2(DefaultCombustionAir(), v[1])
		require.NoError(t, err)
		l, err := f.FlueLoss(FlueState{Drawn: DefaultCombustionAir(), AirRatio: ratio, AirTemperature: 20, FlueTemperature: v[0], Pressure: 101325})
		require.NoError(t, err)
		return 100 * Losses{Flue: l.OfLower, Casing: v[2]}.Efficiency()
	})
}
