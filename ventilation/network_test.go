package ventilation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func point(z, area, cp float64) ventilation.Opening {
	return ventilation.Opening{Height: z, Area: area, Discharge: 0.6, PressureCoefficient: cp}
}

// build returns a network of pressures alone.
func build(t testing.TB, openings ...ventilation.Opening) *ventilation.Network {
	t.Helper()
	n, err := ventilation.NewNetwork(openings, nil, nil)
	require.NoError(t, err)
	return pressures(t, n)
}

// pressures returns n without the exchange by wind.
func pressures(t testing.TB, n *ventilation.Network) *ventilation.Network {
	t.Helper()
	n, err := n.WithExchange(ventilation.WindExchange{})
	require.NoError(t, err)
	return n
}

func dry(t testing.TB, inside, outside, wind float64) ventilation.FlowConditions {
	t.Helper()
	c, err := ventilation.DrySides{Inside: inside, Outside: outside, Pressure: 101325, Wind: wind}.Conditions()
	require.NoError(t, err)
	return c
}

func solveNet(t testing.TB, n *ventilation.Network, c ventilation.FlowConditions) ventilation.Balance {
	t.Helper()
	b, err := n.Solve(c)
	require.NoError(t, err)
	return b
}

func TestMassCloses(t *testing.T) {
	n := build(t, point(0.4, 1.2, 0.6), point(0.5, 0.8, -0.3), point(3, 2, -0.6), point(2.8, 0.1, -0.4))
	for _, ti := range []float64{-10, 15, 20, 20.0001, 28, 45} {
		for _, u := range []float64{0, 0.1, 1, 3, 12} {
			b := solveNet(t, n, dry(t, ti, 20, u))
			require.InDelta(t, 0, b.Residual, 1e-9*b.Flow+1e-12, "%v %v", ti, u)
		}
	}
}

func TestNoDriveNoFlow(t *testing.T) {
	b := solveNet(t, build(t, point(0.5, 1, 0), point(3, 1, 0)), dry(t, 20, 20, 0))
	require.Zero(t, b.Flow)
	require.Zero(t, b.Pressure)
	require.True(t, math.IsNaN(b.Neutral))
	tall := ventilation.Opening{Height: 1, Vertical: 2, Area: 2, Discharge: 0.6}
	require.Zero(t, solveNet(t, build(t, tall), dry(t, 20, 20, 0)).Flow)
}

// Openings of one drive pass nothing: not even the root of a rounding error,
// with whatever instructions the processor multiplies and adds.
func TestOneDrivePassesNothing(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(3, 1))}
	for range 2000 {
		o := point(d.from(-2, 5), d.from(0.01, 10), d.from(-2, 1))
		screened := o
		screened.Viscous = d.from(0, 10)
		n, err := ventilation.NewNetwork([]ventilation.Opening{o, screened}, []ventilation.Leak{{Height: o.Height, Flow: 0.1, Exponent: 0.65, PressureCoefficient: o.PressureCoefficient}}, nil)
		require.NoError(t, err)
		for _, n := range []*ventilation.Network{build(t, o), pressures(t, n)} {
			b := solveNet(t, n, dry(t, d.from(-20, 40), d.from(-20, 40), d.from(0, 20)))
			require.Zero(t, b.Flow)
			for _, p := range b.Paths {
				require.Zero(t, p)
			}
		}
	}
}

// A two-level stack solved by hand: h1 = H/(1 + (rho_o/rho_i)(C1A1/C2A2)²).
func TestTwoLevelsAgreeWithTheClosedForm(t *testing.T) {
	for _, ti := range []float64{5, 28, 40} {
		c := dry(t, ti, 20, 0)
		b := solveNet(t, build(t, point(0.5, 1.2, 0), point(3.5, 0.7, 0)), c)
		ratio := 1.2 / 0.7
		up, down := c.OutsideDensity, c.InsideDensity
		if ti < 20 {
			up, down = down, up
		}
		z := 0.5 + 3/(1+up/down*ratio*ratio)
		require.InDelta(t, z, b.Neutral, 1e-10)
		require.InEpsilon(t, 0.6*1.2*math.Sqrt(2*up*math.Abs(c.OutsideDensity-c.InsideDensity)*9.80665*(z-0.5)), b.Flow, 1e-12)
	}
}

// Exchanging the two airs sends the same masses the other way.
func TestExchangingTheAirsReversesTheFlow(t *testing.T) {
	n := build(t, point(1, 1, 0), point(4, 0.5, 0), point(2, 0.2, 0))
	a := solveNet(t, n, ventilation.FlowConditions{InsideDensity: 1.1, OutsideDensity: 1.2})
	b := solveNet(t, n, ventilation.FlowConditions{InsideDensity: 1.2, OutsideDensity: 1.1})
	for i := range b.Paths {
		p := &b.Paths[i]
		p.Drive, p.In, p.Out = -p.Drive, p.Out, p.In
	}
	require.Empty(t, cmp.Diff(a.Paths, b.Paths, cmpopts.EquateApprox(1e-12, 1e-12)))
}

// The flow through a small opening and one 1e7 times as large is that of the
// small one, though the pressure has no digits left for the large one's drive.
func TestVeryUnequalOpenings(t *testing.T) {
	for _, ratio := range []float64{1e3, 1e5, 1e6, 1e7} {
		for _, swap := range []bool{false, true} {
			low, high := 1e-3, 1e-3*ratio
			if swap {
				low, high = high, low
			}
			c := dry(t, 28, 20, 0)
			two, err := ventilation.TwoLevels{LowArea: low, LowDischarge: 0.6, HighArea: high, HighDischarge: 0.6, Separation: 3}.Flow(c)
			require.NoError(t, err)
			b := solveNet(t, build(t, point(0.5, low, 0), point(3.5, high, 0)), c)
			require.InEpsilon(t, two.Flow, b.Flow, 1e-9, "%v %v", ratio, swap)
		}
	}
}

// No fan takes a house below a vacuum.
func TestFanAgainstASmallOpening(t *testing.T) {
	n, err := ventilation.NewNetwork([]ventilation.Opening{point(1, 0.01, 0)}, nil, []ventilation.FixedFan{{Height: 1, Flow: -5}})
	require.NoError(t, err)
	_, err = n.Solve(dry(t, 25, 20, 0))
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	n, err = ventilation.NewNetwork([]ventilation.Opening{point(1, 0.01, 0)}, nil, []ventilation.FixedFan{{Height: 1, Flow: -5, Slope: 0.05}})
	require.NoError(t, err)
	require.InDelta(t, -100, solveNet(t, n, dry(t, 25, 20, 0)).Pressure, 2)
}
