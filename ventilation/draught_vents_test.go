package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// cold is a house with side vents, ridge vents and leaks on a cold day.
func cold(t testing.TB) ventilation.ColdVents {
	t.Helper()
	n, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.8, Vertical: 0.4, Area: 2.4, Discharge: 0.6, PressureCoefficient: 0.1},
		{Name: "ridge", Height: 2.9, Vertical: 0.4, Area: 2.4, Discharge: 0.6, PressureCoefficient: -0.4},
	}, []ventilation.Leak{{Height: 0.5, Flow: 0.02, Exponent: 0.65}, {Height: 2.5, Flow: 0.02, Exponent: 0.65}}, nil)
	require.NoError(t, err)
	side := ventilation.DefaultInletJet(ventilation.SlotInlet)
	side.Length, side.Reach = 6, 6.4
	ridge := side
	ridge.Angle, ridge.Reach = -45, 3.2
	return ventilation.ColdVents{
		Network: n, Jets: []ventilation.InletJet{side, ridge},
		Inside: 15, Outside: 0, Pressure: hill, Crop: 0.3, Limit: 10,
	}
}

var ridgeFirst, sideFirst = [][]int{{1}, {0}}, [][]int{{0}, {1}}

func TestColdVentsTakeTheFlowOfTheNetwork(t *testing.T) {
	v := cold(t)
	v.Wind = 2
	a, err := v.At([]float64{0.3, 0.7})
	require.NoError(t, err)
	o := v.Network.Openings()
	o[0].Area *= 0.3
	o[1].Area *= 0.7
	n, err := ventilation.NewNetwork(o, []ventilation.Leak{{Height: 0.5, Flow: 0.02, Exponent: 0.65}, {Height: 2.5, Flow: 0.02, Exponent: 0.65}}, nil)
	require.NoError(t, err)
	c, err := ventilation.DrySides{Inside: 15, Outside: 0, Pressure: hill, Wind: 2}.Conditions()
	require.NoError(t, err)
	b := solveNet(t, pressures(t, n), c)
	require.InDelta(t, b.Pressure, a.Air.Pressure, 1e-12)
	require.Equal(t, b.Flow, a.Air.Flow)
	require.Equal(t, b.Paths, a.Air.Paths)
	require.Equal(t, []float64{0.3, 0.7}, a.Fractions)

	// The side vents let air in alone: the jet carries their flow.
	require.Zero(t, a.Air.Paths[0].Out)
	in := a.Inlets[0]
	require.Equal(t, a.Air.Paths[0].In, in.Flow)
	require.InEpsilon(t, 0.6*2.4*0.3/6, in.Jet.Size, 1e-12)
	require.InEpsilon(t, in.Flow, in.Jet.Speed*c.OutsideDensity*0.6*2.4*0.3, 1e-12)
	require.InDelta(t, 0.5, in.Drop, 1e-12)
	require.Equal(t, in.Jet.Fall(in.Drop, 6.4), in.Fall)
	require.Equal(t, -15.0, in.Jet.Excess)
	require.Equal(t, 15.0, in.Jet.House)
	require.Zero(t, a.Inlets[1].Flow) // air leaves by the ridge alone
	require.Equal(t, in.Fall.Coldest, a.Coldest)
	require.Zero(t, a.By)
	require.Equal(t, a.Coldest < 10, a.Chill)

	// Compact vents, three of them: each takes its share.
	v.Jets[0].Shape, v.Jets[0].Count, v.Jets[0].Velocity, v.Jets[0].Thermal = ventilation.CompactInlet, 3, 6, 5
	a, err = v.At([]float64{0.3, 0.7})
	require.NoError(t, err)
	require.InEpsilon(t, math.Sqrt(0.6*2.4*0.3/3), a.Inlets[0].Jet.Size, 1e-12)
	require.Equal(t, in.Jet.Speed, a.Inlets[0].Jet.Speed)
}

// Shut vents leave the others' flows where they stand, fans and screens too.
func TestShutVentsKeepTheOrder(t *testing.T) {
	v := cold(t)
	side := ventilation.Opening{Name: "side", Height: 0.8, Area: 2.4, Discharge: 0.6}
	ridge := ventilation.Opening{Name: "ridge", Height: 2.9, Area: 2.4, Discharge: 0.6, Viscous: 0.5}
	leak := []ventilation.Leak{{Height: 0.5, Flow: 0.02, Exponent: 0.65}}
	fan := []ventilation.FixedFan{{Height: 2.5, Flow: -0.4}}
	n, err := ventilation.NewNetwork([]ventilation.Opening{side, ridge}, leak, fan)
	require.NoError(t, err)
	v.Network = n
	a, err := v.At([]float64{0, 0.5})
	require.NoError(t, err)
	ridge.Area, ridge.Viscous = 1.2, 1 // half the screen, twice its resistance
	n, err = ventilation.NewNetwork([]ventilation.Opening{ridge}, leak, fan)
	require.NoError(t, err)
	c, err := ventilation.DrySides{Inside: 15, Outside: 0, Pressure: hill}.Conditions()
	require.NoError(t, err)
	b := solveNet(t, n, c)
	require.Zero(t, a.Air.Paths[0])
	require.Equal(t, b.Paths, a.Air.Paths[1:])
	require.InEpsilon(t, 0.4*c.InsideDensity, a.Air.Paths[3].Out, 1e-9)
	require.Equal(t, 1, a.By) // the fan draws air in by the ridge
}

// A ridge vent alone breathes both ways: cold air enters by the part below its
// neutral level.
func TestTallVentAloneLetsAirInBelow(t *testing.T) {
	v := cold(t)
	n, err := ventilation.NewNetwork([]ventilation.Opening{{Height: 2.9, Vertical: 0.4, Area: 2, Discharge: 0.6}}, nil, nil)
	require.NoError(t, err)
	v.Network, v.Jets = n, v.Jets[1:]
	a, err := v.At([]float64{0.5})
	require.NoError(t, err)
	c, err := ventilation.DrySides{Inside: 15, Outside: 0, Pressure: hill}.Conditions()
	require.NoError(t, err)
	two, err := ventilation.SingleOpening(ventilation.TallVent{Width: 2.5, Top: 0.4, Discharge: 0.6}, c)
	require.NoError(t, err)
	require.InEpsilon(t, two.Flow, a.Inlets[0].Flow, 1e-9)
	require.InDelta(t, 2.7+0.5*two.Neutral-0.3, a.Inlets[0].Drop, 1e-9)
	require.InEpsilon(t, 0.6*1*two.Neutral/0.4/6, a.Inlets[0].Jet.Size, 1e-9)
	require.InEpsilon(t, two.Flow, a.Inlets[0].Jet.Speed*a.Inlets[0].Jet.Size*6*c.OutsideDensity, 1e-9)

	shut, err := v.At([]float64{0})
	require.NoError(t, err)
	require.Equal(t, 15.0, shut.Coldest)
	require.Equal(t, -1, shut.By)
	require.Zero(t, shut.Air.Flow)
	require.False(t, shut.Chill)
}

func TestOpenedGroupAfterGroup(t *testing.T) {
	v := cold(t)
	for opened, want := range map[float64][]float64{0: {0, 0}, 0.25: {0, 0.25}, 1: {0, 1}, 1.4: {0.4, 1}, 2: {1, 1}} {
		a, err := v.Opened(ridgeFirst, opened)
		require.NoError(t, err)
		require.InDeltaSlice(t, want, a.Fractions, 1e-12)
	}
	a, err := v.Opened([][]int{{0, 1}}, 0.3)
	require.NoError(t, err)
	require.Equal(t, []float64{0.3, 0.3}, a.Fractions)
	last := -1.0
	for k := range 41 { // flow grows
		a, err := v.Opened(sideFirst, float64(k)/20)
		require.NoError(t, err)
		require.Greater(t, a.Air.Flow, last)
		last = a.Air.Flow
	}
}

func TestForFlow(t *testing.T) {
	v := cold(t)
	for _, order := range [][][]int{ridgeFirst, sideFirst, {{0, 1}}} {
		for _, flow := range []float64{0.1, 0.3, 1} {
			a, err := v.ForFlow(order, flow)
			require.NoError(t, err)
			require.InEpsilon(t, flow, a.Air.Flow, 1e-9)
		}
		a, err := v.ForFlow(order, 0)
		require.NoError(t, err)
		require.Equal(t, []float64{0, 0}, a.Fractions)
		_, err = v.ForFlow(order, 5)
		require.ErrorIs(t, err, ventilation.ErrNoSolution)
		require.ErrorContains(t, err, "1.84")
	}
	// The same air by the ridge alone reaches the crop warmer.
	high, err := v.ForFlow(ridgeFirst, 0.2)
	require.NoError(t, err)
	low, err := v.ForFlow(sideFirst, 0.2)
	require.NoError(t, err)
	require.Greater(t, high.Coldest, low.Coldest+3)
}

func TestWidestStopsAtTheLimit(t *testing.T) {
	v := cold(t)
	last := -1.0
	for _, out := range []float64{-12, -6, -3, 0} { // milder: wider
		v.Outside = out
		high, err := v.Widest(ridgeFirst)
		require.NoError(t, err)
		require.InDelta(t, 10, high.Coldest, 1e-6)
		require.False(t, high.Chill)
		low, err := v.Widest(sideFirst)
		require.NoError(t, err)
		require.InDelta(t, 10, low.Coldest, 1e-6)
		require.Greater(t, high.Air.Flow, low.Air.Flow)
		require.Greater(t, high.Fractions[1], last)
		last = high.Fractions[1]
		// A little farther it is too cold.
		a, err := v.At([]float64{0, high.Fractions[1] + 1e-4})
		require.NoError(t, err)
		require.True(t, a.Chill)
	}
	v.Outside = 12
	all, err := v.Widest(ridgeFirst)
	require.NoError(t, err)
	require.Equal(t, []float64{1, 1}, all.Fractions)
	v.Outside, v.Crop = 0, 0.9 // the crop stands before the side vents
	none, err := v.Widest(sideFirst)
	require.NoError(t, err)
	require.Less(t, none.Fractions[0], 1e-8)
	a, err := v.Opened(sideFirst, 0.5)
	require.NoError(t, err)
	require.Equal(t, 0.0, a.Coldest)
	require.True(t, a.Chill)
}

func TestColdVentFaults(t *testing.T) {
	v := cold(t)
	v.Inside, v.Outside, v.Pressure, v.Wind, v.Crop, v.Limit = 15, 20, 97, -1, 90, 16
	v.Jets[0].Count, v.Jets[0].Length, v.Jets[0].Angle = 0, 0, 89
	v.Jets[1].Reach, v.Jets[1].Velocity, v.Jets[1].Thermal, v.Jets[1].Shape = 0, 0, 20, 5
	fields := []string{
		"Outside", "Pressure", "Wind", "Crop", "Limit", `Jets[0] "side".Count`, `Jets[0] "side".Length`, `Jets[0] "side".Angle`,
		`Jets[1] "ridge".Shape`, `Jets[1] "ridge".Reach`, `Jets[1] "ridge".Velocity`, `Jets[1] "ridge".Thermal`,
	}
	requireFields(t, v.Check(), fields...)
	require.ErrorContains(t, v.Check(), "Shape")
	_, err := v.At([]float64{2, -1, 0})
	requireFields(t, err, append([]string{"number of fractions", "fractions[0]", "fractions[1]"}, fields...)...)
	_, err = v.Opened([][]int{{0, 3}, {-1}}, 4)
	requireFields(t, err, append([]string{"order[0][1]", "order[1][0]", "opened"}, fields...)...)

	v = cold(t)
	_, err = v.Widest(nil)
	requireFields(t, err, "number of groups in order")
	_, err = v.ForFlow([][]int{{0, 0}}, -1)
	requireFields(t, err, "flow")
	require.ErrorContains(t, err, "twice")
	v.Jets = v.Jets[:1]
	requireFields(t, v.Check(), "number of Jets")
	v.Network = nil
	_, err = v.Opened(ridgeFirst, 1)
	require.ErrorContains(t, err, "Network")
	_, err = v.At(nil)
	require.ErrorContains(t, err, "Network")

	v = cold(t)
	v.Inside, v.Outside = 40, -40
	require.NoError(t, v.Check())
	v.Outside = -41
	requireFields(t, v.Check(), "Outside")

	v = cold(t) // one compact vent of 400 m² is no jet
	o := v.Network.Openings()
	o[0].Area = 400
	v.Network, err = ventilation.NewNetwork(o, nil, nil)
	require.NoError(t, err)
	v.Jets[0].Shape = ventilation.CompactInlet
	_, err = v.At([]float64{1, 1})
	requireFields(t, err, "Size")
	require.ErrorContains(t, err, `openings[0] "side"`)
}
