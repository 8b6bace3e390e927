package airheat

import (
	"math"
	"testing"
	"time"

	"cloche.example/envelope"
	"github.com/stretchr/testify/require"
)

func testNodes() envelope.Nodes {
	return envelope.Nodes{AirCapacity: 4.2e5, StructureCapacity: 2.6e6, SoilCapacity: 3.1e7, Cover: 640, Leakage: 95, AirStructure: 780, AirSoil: 520, StructureOutside: 35, SoilDeep: 60}
}

func house(t testing.TB, n envelope.Nodes) Transient {
	h, err := NewTransient(n)
	require.NoError(t, err)
	return h
}

// rates are the equations as defined, written apart from the solution.
func rates(n envelope.Nodes, d envelope.Drive, y Temperatures, t float64) (a, s, g float64) {
	to := d.Outside + d.Ramp*t
	a = (d.Heat - (n.Cover+n.Leakage)*(y.Air-to) - n.CoverSky*(y.Air-to+d.SkyDrop) - n.AirStructure*(y.Air-y.Structure) - n.AirSoil*(y.Air-y.Soil)) / n.AirCapacity
	s = (d.StructureHeat + n.AirStructure*(y.Air-y.Structure) - n.StructureOutside*(y.Structure-to)) / n.StructureCapacity
	g = (d.SoilHeat + n.AirSoil*(y.Air-y.Soil) - n.SoilDeep*(y.Soil-d.Deep)) / n.SoilCapacity
	return a, s, g
}

// march solves the equations by the classical Runge-Kutta steps.
func march(n envelope.Nodes, d envelope.Drive, y Temperatures, span, dt float64) Temperatures {
	steps := int(math.Ceil(span / dt))
	dt = span / float64(steps)
	add := func(y Temperatures, a, s, g, f float64) Temperatures {
		return Temperatures{y.Air + f*a, y.Structure + f*s, y.Soil + f*g}
	}
	for i := range steps {
		t := float64(i) * dt
		a1, s1, g1 := rates(n, d, y, t)
		a2, s2, g2 := rates(n, d, add(y, a1, s1, g1, dt/2), t+dt/2)
		a3, s3, g3 := rates(n, d, add(y, a2, s2, g2, dt/2), t+dt/2)
		a4, s4, g4 := rates(n, d, add(y, a3, s3, g3, dt), t+dt)
		y = add(y, a1+2*a2+2*a3+a4, s1+2*s2+2*s3+s4, g1+2*g2+2*g3+g4, dt/6)
	}
	return y
}

func TestAfterAgreesWithMarching(t *testing.T) {
	sky := testNodes()
	sky.CoverSky = 150
	for _, n := range []envelope.Nodes{testNodes(), sky} {
		h := house(t, n)
		d := envelope.Drive{Heat: 21000, StructureHeat: 900, SoilHeat: 400, Outside: -9, Ramp: -2.0 / 3600, SkyDrop: 14, Deep: 7}
		start := Temperatures{12, 9, 11}
		for _, span := range []time.Duration{0, 90 * time.Second, 40 * time.Minute, 7 * time.Hour, 50 * time.Hour} {
			want := start
			if span > 0 {
				want = march(n, d, start, span.Seconds(), 5)
			}
			got := h.After(start, d, span)
			require.InDelta(t, want.Air, got.Air, 1e-7, "%v", span)
			require.InDelta(t, want.Structure, got.Structure, 1e-7)
			require.InDelta(t, want.Soil, got.Soil, 1e-7)
		}
	}
}

func TestReachFindsTheFirstCrossing(t *testing.T) {
	h := house(t, testNodes())
	d := envelope.Drive{Outside: -8, Ramp: 0.4 / 3600, Deep: 8}
	q, start := h.HoldingHeat(d, 16)
	require.Greater(t, q, 0.0)
	for _, level := range []float64{12, 8, 4, 0.5} {
		e, err := h.CoolDown(h, d, HeatFailure{16, 0, level, 100 * time.Hour})
		require.NoError(t, err)
		// The same on marched steps of a second, joined by straight lines.
		y, tm := start, 0.0
		for y.Air > level && tm < 4e5 {
			now := d
			now.Outside += d.Ramp * tm
			next := march(h.n, now, y, 1, 1)
			if next.Air <= level {
				tm += (y.Air - level) / (y.Air - next.Air)
				break
			}
			y, tm = next, tm+1
		}
		if !e.Reached {
			require.GreaterOrEqual(t, tm, 3.6e5)
			continue
		}
		require.InDelta(t, tm, e.Time.Seconds(), 0.01, "level %g", level)
		require.InDelta(t, level, e.State.Air, 1e-6)
		require.Less(t, e.Rate, 0.0)
	}
}

// A rising outside turns a cooling house round: the level is passed twice, and
// the first time counts; a level below the turning point is never reached, and
// the answer tells how near it came.
func TestATurningCurveIsNotMissed(t *testing.T) {
	h := house(t, testNodes())
	d := envelope.Drive{Outside: -8, Ramp: 3.0 / 3600, Deep: 8}
	low := math.Inf(1)
	when := 0.0
	_, start := h.HoldingHeat(d, 16)
	for s := 0.0; s < 40000; s += 10 {
		if v := h.After(start, d, duration(s)).Air; v < low {
			low, when = v, s
		}
	}
	require.Greater(t, when, 1000.0)
	require.Less(t, when, 39000.0)
	e, err := h.CoolDown(h, d, HeatFailure{16, 0, low + 0.001, 300 * time.Hour})
	require.NoError(t, err)
	require.True(t, e.Reached)
	require.Less(t, e.Time.Seconds(), when)
	require.Greater(t, e.Time.Seconds(), when-2000)
	e, err = h.CoolDown(h, d, HeatFailure{16, 0, low - 0.01, 10 * time.Hour})
	require.NoError(t, err)
	require.False(t, e.Reached)
	require.InDelta(t, low, e.Nearest, 1e-3)
}

func TestOneNodeLimitInClosedForm(t *testing.T) {
	// Structure and soil all but cut off: T = Tinf + (T0-Tinf) exp(-H t/C).
	n := envelope.Nodes{AirCapacity: 5e5, StructureCapacity: 1, SoilCapacity: 1, Cover: 400, Leakage: 100, StructureOutside: 1, SoilDeep: 1}
	h := house(t, n)
	e, err := h.WarmUp(envelope.Drive{Heat: 20000, Outside: -5, Deep: 8}, 20, Forever)
	require.NoError(t, err)
	want := -5e5 / 500 * math.Log(1-25.0/40)
	require.InDelta(t, want, e.Time.Seconds(), 1e-5)
	require.InDelta(t, 35, e.Limiting, 1e-9)
}

func TestNeverReachedTellsWhereItSettles(t *testing.T) {
	h := house(t, testNodes())
	d := envelope.Drive{Heat: 5000, Outside: -10, Deep: 8}
	e, err := h.WarmUp(d, 20, Forever)
	require.NoError(t, err)
	require.False(t, e.Reached)
	require.InDelta(t, h.Steady(d).Air, e.Limiting, 1e-9)
	require.InDelta(t, e.Limiting, e.Nearest, 1e-9)
	// Exactly the settling temperature is never reached either.
	e, err = h.WarmUp(d, h.Steady(d).Air, Forever)
	require.NoError(t, err)
	require.False(t, e.Reached)
}

// A set-point that the unheated house exceeds, and a level that the house does
// not exceed when the heater fails, take no time.
func TestLevelsMetAtTheStartTakeNoTime(t *testing.T) {
	h := house(t, testNodes())
	d := envelope.Drive{Heat: 20000, Outside: 4, Deep: 10}
	cold := d
	cold.Heat = 0
	for _, below := range []float64{0, 1e-9, 3} {
		e, err := h.WarmUp(d, h.Steady(cold).Air-below, time.Hour)
		require.NoError(t, err)
		require.True(t, e.Reached)
		require.Zero(t, e.Time)
		require.InDelta(t, h.Steady(cold).Air, e.State.Air, 1e-12)
		e, err = h.CoolDown(h, d, HeatFailure{12, 0.3, 12 + below, time.Hour})
		require.NoError(t, err)
		require.True(t, e.Reached)
		require.Zero(t, e.Time)
		require.InDelta(t, 12, e.State.Air, 1e-12)
		require.Less(t, e.Rate, 0.0)
	}
	var none Transient
	_, err := none.WarmUp(d, 12, time.Hour)
	require.ErrorContains(t, err, "NewTransient")
	_, err = h.CoolDown(none, d, HeatFailure{12, 0, 2, time.Hour})
	require.ErrorContains(t, err, "NewTransient")
	_, err = none.NightSetBack(d, SetPoints{}, 100)
	require.ErrorContains(t, err, "NewTransient")
	_, err = none.PowerForWarmUp(d, 12, time.Hour)
	require.ErrorContains(t, err, "NewTransient")
}

// Kelvin for °C, or a house that nobody made, is no answer.
func TestPlainAnswersAreNaNOutOfRange(t *testing.T) {
	h := house(t, testNodes())
	good, bad := envelope.Drive{Outside: 4, Deep: 10}, envelope.Drive{Outside: 268, Deep: 10}
	start := Temperatures{12, 11, 10}
	nan := func(t Temperatures) bool {
		return math.IsNaN(t.Air) && math.IsNaN(t.Structure) && math.IsNaN(t.Soil)
	}
	require.False(t, nan(h.After(start, good, time.Hour)))
	require.True(t, nan(h.After(start, bad, time.Hour)))
	require.True(t, nan(h.After(Temperatures{285, 11, 10}, good, time.Hour)))
	require.True(t, nan(h.Steady(bad)))
	require.True(t, nan(Transient{}.Steady(good)))
	require.True(t, nan(Transient{}.After(start, good, time.Hour)))
	for _, air := range []float64{285, math.NaN()} {
		q, at := h.HoldingHeat(good, air)
		require.True(t, math.IsNaN(q) && nan(at))
	}
	q, _ := h.HoldingHeat(bad, 12)
	require.True(t, math.IsNaN(q))
	q, _ = Transient{}.HoldingHeat(good, 12)
	require.True(t, math.IsNaN(q))
}

func TestTimeConstantsAreTheEigenvalues(t *testing.T) {
	n := testNodes()
	h := house(t, n)
	var sum, product float64 = 0, 1
	for _, tau := range h.TimeConstants() {
		sum += 1 / tau.Seconds()
		product /= tau.Seconds()
		// An eigenvector decays by e in its own time.
	}
	a := [3][3]float64{
		{(n.Cover + n.Leakage + n.AirStructure + n.AirSoil) / n.AirCapacity, -n.AirStructure / n.AirCapacity, -n.AirSoil / n.AirCapacity},
		{-n.AirStructure / n.StructureCapacity, (n.AirStructure + n.StructureOutside) / n.StructureCapacity, 0},
		{-n.AirSoil / n.SoilCapacity, 0, (n.AirSoil + n.SoilDeep) / n.SoilCapacity},
	}
	trace := a[0][0] + a[1][1] + a[2][2]
	det := a[0][0]*a[1][1]*a[2][2] - a[0][1]*a[1][0]*a[2][2] - a[0][2]*a[2][0]*a[1][1]
	require.InEpsilon(t, trace, sum, 1e-9)
	require.InEpsilon(t, det, product, 1e-9)
	for k, lambda := range h.s.Rates {
		require.InDelta(t, 0, det3(a, lambda)/det, 1e-9, "eigenvalue %d", k)
	}
}

func det3(a [3][3]float64, l float64) float64 {
	p, q, r := a[0][0]-l, a[1][1]-l, a[2][2]-l
	return p*q*r - a[0][1]*a[1][0]*r - a[0][2]*a[2][0]*q
}

func TestPowerForWarmUpIsTheInverse(t *testing.T) {
	h := house(t, testNodes())
	d := envelope.Drive{Outside: -6, Ramp: -0.5 / 3600, Deep: 9}
	q, err := h.PowerForWarmUp(d, 18, 45*time.Minute)
	require.NoError(t, err)
	d.Heat = q
	e, err := h.WarmUp(d, 18, Forever)
	require.NoError(t, err)
	require.InDelta(t, 45*60, e.Time.Seconds(), 1e-3)
	_, err = h.PowerForWarmUp(d, -7, time.Hour)
	require.ErrorIs(t, err, ErrNoSolution)
}

func TestNodesReportAllFaults(t *testing.T) {
	_, err := NewTransient(envelope.Nodes{AirCapacity: -1, Cover: math.NaN()})
	require.ErrorIs(t, err, ErrRange)
	for _, f := range []string{"AirCapacity", "StructureCapacity", "SoilCapacity", "Cover"} {
		require.ErrorContains(t, err, f)
	}
	_, err = NewTransient(envelope.Nodes{AirCapacity: 1e5, StructureCapacity: 1e5, SoilCapacity: 1e5, AirStructure: 5, AirSoil: 5})
	require.ErrorContains(t, err, "must lose heat")
	h := house(t, testNodes())
	_, err = h.reachFrom(Temperatures{Air: 500}, envelope.Drive{Outside: math.Inf(1)}, airNode, [2]string{"level", "limit"}, 3, false, -1)
	for _, f := range []string{"air in the steady state before", "Outside", "limit"} {
		require.ErrorContains(t, err, f)
	}
}

func TestTransientsAllocateNothing(t *testing.T) {
	n := testNodes()
	require.Zero(t, testing.AllocsPerRun(100, func() {
		h, _ := NewTransient(n)
		_, _ = h.WarmUp(envelope.Drive{Heat: 40000, Outside: -8, Deep: 8}, 18, Forever)
		_, _ = h.CoolDown(h, envelope.Drive{Outside: -8, Ramp: 1e-4, Deep: 8}, HeatFailure{18, 0, 1, 90 * time.Hour})
	}))
}
