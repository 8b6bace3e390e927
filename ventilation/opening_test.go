package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func TestFreeAreas(t *testing.T) {
	l := ventilation.Louvre{Width: 1, Height: 1, Slats: 10, Thickness: 0.01, Angle: 90}
	require.InDelta(t, 0.9, l.FreeArea(), 1e-12)
	l.Angle = 30
	require.InDelta(t, 0.4, l.FreeArea(), 1e-12)
	l.Angle = 2
	require.Zero(t, l.FreeArea())
	l.Slats, l.Width = 0, -1
	require.True(t, math.IsNaN(l.FreeArea()))
	require.ErrorContains(t, l.Check(), "Slats")
	require.ErrorContains(t, l.Check(), "Width")
}

func TestOpeningFaultsComeTogether(t *testing.T) {
	_, err := ventilation.NewNetwork(nil, nil, nil)
	require.ErrorIs(t, err, ventilation.ErrRange)
	require.ErrorContains(t, err, "number of openings")
	_, err = ventilation.NewNetwork([]ventilation.Opening{
		{Name: "ridge", Height: math.NaN(), Area: 0, Discharge: 1.2, PressureCoefficient: 4, Vertical: 1, Viscous: 3}},
		[]ventilation.Leak{{Exponent: 2, Height: 99, PressureCoefficient: 9}}, []ventilation.FixedFan{{Flow: math.Inf(1), Slope: -1}})
	for _, field := range []string{`openings[0] "ridge".Height`, ".Area", ".Discharge", ".PressureCoefficient", ".Viscous", "leaks[0].Exponent", "leaks[0].Flow", "leaks[0].Height", "leaks[0].PressureCoefficient", "fans[0].Flow", "fans[0].Slope"} {
		require.ErrorContains(t, err, field)
	}
	_, err = ventilation.DrySides{Inside: 293, Outside: 20, Pressure: 101.3, Wind: -3}.Conditions()
	for _, field := range []string{"Inside", "Wind", "Pressure is"} {
		require.ErrorContains(t, err, field)
	}
}

func TestOpeningsOfAHouse(t *testing.T) {
	err := ventilation.CheckOpenings([]ventilation.Opening{point(4, 1, 0), point(-2, 1, 0), {Height: 2.5, Vertical: 2, Area: 1, Discharge: 0.6}}, -0.7, 3.1, 2)
	for _, text := range []string{"openings[0].Height is 4, allowed -0.7 to 3.1 m", "openings[1].Height", "openings[2].Height + Vertical/2"} {
		require.ErrorContains(t, err, text)
	}
	err = ventilation.CheckOpenings([]ventilation.Opening{point(1, 1, 0)}, 2, -1, 1)
	require.ErrorContains(t, err, "ridge is -1, allowed 2 to 50 m")
	require.NotContains(t, err.Error(), "openings[0]")
	level := []ventilation.Opening{point(2, 1, 0), point(2, 3, 0)}
	require.ErrorIs(t, ventilation.CheckOpenings(level, 0, 3, 0), ventilation.ErrNoSolution)
	require.ErrorContains(t, ventilation.CheckOpenings(level, 0, 3, 0), "only through a tall opening")
	require.NoError(t, ventilation.CheckOpenings(level, 0, 3, 1))
	level[0].Vertical = 1
	require.NoError(t, ventilation.CheckOpenings(level, 0, 3, 0))
	require.ErrorContains(t, ventilation.CheckOpenings(nil, 0, 3, -1), "number of openings")
	require.ErrorContains(t, ventilation.CheckOpenings(nil, 0, 3, -1), "wind")
}

// More area anywhere never lets less air through.
func TestMoreAreaPassesMoreAir(t *testing.T) {
	o := []ventilation.Opening{point(0.3, 1, 0.4), point(3, 1, -0.5), point(2, 0.4, -0.3)}
	for i := range o {
		last := 0.0
		for _, area := range []float64{0.2, 0.5, 1, 2, 5} {
			p := append([]ventilation.Opening(nil), o...)
			p[i].Area = area
			b := solveNet(t, build(t, p...), dry(t, 30, 22, 2))
			require.Greater(t, b.Flow, last)
			last = b.Flow
		}
	}
}

func TestWellsAndPool(t *testing.T) {
	vent := point(-0.3, 0.5, 0.1)
	o, err := ventilation.Well{Vent: vent, Section: 0.5, Discharge: 0.6}.Opening()
	require.NoError(t, err)
	require.InEpsilon(t, 0.6/math.Sqrt2, o.Discharge, 1e-12)
	_, err = ventilation.Well{Vent: point(1, 1, 0)}.Opening()
	for _, field := range []string{"Section", "Discharge", "Vent.Height"} {
		require.ErrorContains(t, err, field)
	}
	s, err := ventilation.StackOf([]ventilation.Opening{vent, {Height: 3, Vertical: 0.4, Area: 1, Discharge: 0.6}}, -0.7, 90)
	require.NoError(t, err)
	require.InDelta(t, 3.3, s.Height, 1e-12)
	require.InDelta(t, 3.0, s.Usable, 1e-12)
	require.InDelta(t, 0.4, s.Pool, 1e-12)
	require.InDelta(t, 36, s.Volume, 1e-9)
	require.InDelta(t, 0.4/3.7, s.Share, 1e-12)
	_, err = ventilation.StackOf([]ventilation.Opening{point(-2, 1, 0)}, -0.7, 0)
	require.ErrorContains(t, err, "openings[0].Height")
	require.ErrorContains(t, err, "floorArea")
}

func TestAirChanges(t *testing.T) {
	require.InDelta(t, 36, ventilation.AirChanges(2, 200), 1e-12)
	require.InDelta(t, 5, ventilation.AirChanges(2000.0/3600, 400), 1e-12) // a heater's flow in a house of 400 m³: common practice, no source
	require.True(t, math.IsNaN(ventilation.AirChanges(2, 0)))
	// Bare formulas answer within their ranges alone.
	huge := 1e308
	o := ventilation.Opening{Area: 1, Discharge: 0.6}
	sc := ventilation.Screen{Thickness: 3e-4, Permeability: 1e-9, Inertia: 0.2, Porosity: 0.4}
	require.False(t, math.IsNaN(sc.PressureDrop(1, 1.2, 1.8e-5)))
	for _, v := range []float64{
		ventilation.AirChanges(huge, 1), ventilation.AirChanges(1, huge), ventilation.FlapAngle(1, huge), ventilation.FlapStroke(30, huge), ventilation.FlapStroke(30, -1),
		ventilation.SeriesArea(huge, 1), ventilation.SeriesArea(-1), o.MassFlow(huge, 1.2), o.MassFlow(-1, 1.2), sc.PressureDrop(huge, 1.2, 1.8e-5), sc.PressureDrop(-1, 1.2, 1.8e-5),
	} {
		require.True(t, math.IsNaN(v))
	}
}

// Ten points stand for a tall opening to 1 %, many for it exactly.
func TestPointsOfATallOpening(t *testing.T) {
	o := ventilation.Opening{Name: "door", Height: 1.1, Vertical: 2.2, Area: 2, Discharge: 0.6, PressureCoefficient: 0.2}
	c := dry(t, 25, 15, 0)
	exact := solveNet(t, build(t, o), c)
	for count, tol := range map[int]float64{10: 0.01, 1000: 1e-4} {
		points := o.Points(count)
		require.Len(t, points, count)
		b := solveNet(t, build(t, points...), c)
		require.InEpsilon(t, exact.Flow, b.Flow, tol)
		require.InDelta(t, exact.Neutral, b.Neutral, 0.06)
		area := 0.0
		for _, p := range points {
			area += p.Area
			require.Zero(t, p.Vertical)
		}
		require.InDelta(t, 2, area, 1e-12)
	}
	require.InDelta(t, 0.55, o.Points(2)[0].Height, 1e-12)
	require.InDelta(t, 1.65, o.Points(2)[1].Height, 1e-12)
	screened := point(1, 2, 0)
	screened.Viscous = 3
	require.InDelta(t, 6, screened.Points(2)[0].Viscous, 1e-12) // two beside each other pass as much
	require.Nil(t, o.Points(0))
	require.Nil(t, o.Points(1001))
	// A screen over all of them.
	var all []ventilation.Opening
	for _, p := range o.Points(10) {
		s, err := screen().Over(p, 0.2, 1.8e-5)
		require.NoError(t, err)
		all = append(all, s)
	}
	require.Less(t, solveNet(t, build(t, all...), c).Flow, 0.7*exact.Flow)
}
