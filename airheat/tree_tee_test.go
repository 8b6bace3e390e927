package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Crane, Flow of Fluids, TP-410 (2009), Ex. 7-36: 1515 L/min go on straight and
// 950 L/min leave by a side branch of the same width at 45 degrees. Outside the
// example its constants are held by the branches of its own rules.
func TestTeesPublished(t *testing.T) {
	share := 0.01583 / (0.02525 + 0.01583) // m³/s as the source carries them
	check.Run(t, []check.Row{
		{Where: "Crane09.Ex7-36/branch", In: []float64{share, 1, 45}, Printed: "0.4640"},
	}, func(in ...float64) float64 { return DividingBranch(in[0], in[1], in[2]) })
	check.Run(t, []check.Row{
		{Where: "Crane09.Ex7-36/run", In: []float64{share, 1}, Printed: "-0.06809", Tol: 2e-5, Why: "the source carries more roundings"},
	}, func(in ...float64) float64 { return DividingRun(in[0], in[1]) })
	// Each rule by hand, on both sides of the edge it holds to.
	const root2 = math.Sqrt2 / 2
	for _, r := range []struct{ share, ratio, angle, want float64 }{
		{0.3, 0.3, 45, 0.89 * (1 + 1 - 2*root2)},
		{0.6, 0.3, 45, 0.85 * (1 + 4 - 4*root2)},
		{0.3, 0.3499, 45, 0.89 * (1 + math.Pow(0.3/0.3499, 2) - 0.6/0.3499*root2)},
		{0.3, 0.3501, 45, 0.82 * (1 + math.Pow(0.3/0.3501, 2) - 0.6/0.3501*root2)},
		{0.8, 0.8, 45, 0.6 * (1 + 1 - 2*root2)},
		{0.5, 0.5, 30, 0.7 * (2 - math.Sqrt(3))},
		{0.5, 0.5, 59.9, 0.7 * (2 - 2*math.Cos(59.9*math.Pi/180))},
		// The source's row of 0 to 60 degrees holds its end, whatever the width.
		{0.5, 1, 60, 0.525},
		{0.2, 0.4446, 60, 0.88 * (1 + math.Pow(0.2/0.4446, 2) - 0.2/0.4446)},
		{0.5, 0.5, 74.9, 0.7 * (2 - 2*math.Cos(74.9*math.Pi/180))},
		{0.2, 0.4444, 75.1, 1 + math.Pow(0.2/0.4444, 2) - 0.4/0.4444*math.Cos(75.1*math.Pi/180)},
		{0.2, 0.4446, 75.1, 1 + 0.3*math.Pow(0.2/0.4446, 2)},
		{0.5, 0.5, 75.1, 1.3},
		{0.5, 0.6665, 90, 1 + 0.3*math.Pow(0.5/0.6665, 2)},
		{0.5, 0.6668, 90, 1.075 * (1 + 0.3*math.Pow(0.5/0.6668, 2))},
		{0.5, 1, 90, 1.075 * (1 + 0.3*0.25)},
		{0.3, 0.4, 90, 1 + 9.0/16},
	} {
		require.InEpsilon(t, r.want, DividingBranch(r.share, r.ratio, r.angle), 1e-12, "%v", r)
	}
	for _, r := range [][3]float64{
		{0.3, 0.3999, 0.4 * 0.09}, {0.3, 0.4001, -0.8 * 0.09}, {0.499, 0.5, -0.004 * 0.499 * 0.499}, {0.501, 0.5, 0.3 * 0.002 * 0.501 * 0.501}, {0.7, 0.41, 0.3 * 0.4 * 0.49},
	} {
		require.InEpsilon(t, r[2], DividingRun(r[0], r[1]), 1e-9, "%v", r)
	}
	require.False(t, math.IsNaN(DividingRun(0.5, 0.01005)))
	require.True(t, math.IsNaN(DividingRun(0.5, 0.00995)))
	require.False(t, math.IsNaN(DividingBranch(0.5, 0.5, 30)))
	require.True(t, math.IsNaN(DividingBranch(0.5, 0.5, 29.9)))
	for _, v := range []float64{DividingRun(1.1, 0.5), DividingRun(0.5, 1.1), DividingBranch(-0.1, 0.5, 90), DividingBranch(0.5, 0.5, 95), DividingBranch(0.5, 0.005, 90)} {
		require.True(t, math.IsNaN(v))
	}
}

// The branch's factor does not jump as the flow shifts, or branches could not
// balance; it stays within 4 % of the source's own steps.
func TestBranchFactorIsContinuousInTheShare(t *testing.T) {
	for _, ratio := range []float64{0.2, 0.35, 0.5, 1} {
		last := DividingBranch(0, ratio, 45)
		for k := 1; k <= 10000; k++ {
			v := DividingBranch(float64(k)/10000, ratio, 45)
			require.InDelta(t, last, v, 0.01*math.Max(1, v))
			last = v
		}
	}
}

func teeTree(t *testing.T) (Tree, []Branch) {
	_, b := demoTree(t)
	b[1].Junction, b[1].Angle = SideBranch, 60
	b[2].Junction = StraightRun
	b[3].Junction, b[3].Angle = SideBranch, 90
	b[4].Junction = StraightRun
	b[1].Segments[0].Fittings, b[3].Segments[0].Fittings, b[4].Segments[0].Fittings = 1, 1, 1
	b[2].Segments[0].Fittings = 0
	tree, err := NewTree(b...)
	require.NoError(t, err)
	return tree, b
}

func TestTeesBalanceWithTheBranches(t *testing.T) {
	tree, b := teeTree(t)
	air := DryAir(20, 101325)
	area := func(i int) float64 { return b[i].Segments[0].Section.Area() }
	for _, q := range []float64{0.02, 0.5, 3} {
		f, err := tree.Solve(q, air)
		require.NoError(t, err)
		flow := func(i int) float64 { return f.Branches[i].Flow }
		require.InEpsilon(t, q, flow(1)+flow(3)+flow(4), 1e-12)
		require.InEpsilon(t, flow(2), flow(3)+flow(4), 1e-12)
		head := func(i int) float64 { v := flow(i) / area(i); return air.Density / 2 * v * v }
		loss := func(i int) float64 { return b[i].Segments[0].Loss(flow(i), air).Total }
		left := DividingBranch(flow(1)/flow(0), area(1)/area(0), 60) * head(0)
		right := DividingRun(flow(1)/flow(0), area(1)/area(0)) * head(0)
		near := DividingBranch(flow(3)/flow(2), area(3)/area(2), 90) * head(2)
		far := DividingRun(flow(3)/flow(2), area(3)/area(2)) * head(2)
		require.InEpsilon(t, f.Pressure, loss(0)+left+loss(1), 1e-9)
		require.InEpsilon(t, f.Pressure, loss(0)+right+loss(2)+near+loss(3), 1e-9)
		require.InEpsilon(t, f.Pressure, loss(0)+right+loss(2)+far+loss(4), 1e-9)
		require.InEpsilon(t, near, f.Branches[3].Tee, 1e-9)
		require.InEpsilon(t, loss(3)+near, f.Branches[3].Loss, 1e-9)
	}
}

// Dampers set for the wanted flows give them, tees included.
func TestDampersBehindTees(t *testing.T) {
	tree, b := teeTree(t)
	air := DryAir(20, 101325)
	k, p, err := tree.Dampers([]float64{0, 0.25, 0, 0.12, 0.12}, air)
	require.NoError(t, err)
	for i := range b {
		b[i].Segments[0].Fittings += k[i]
	}
	tree, err = NewTree(b...)
	require.NoError(t, err)
	f, err := tree.Solve(0.49, air)
	require.NoError(t, err)
	require.InEpsilon(t, 0.25, f.Branches[1].Flow, 1e-9)
	require.InEpsilon(t, 0.12, f.Branches[4].Flow, 1e-9)
	require.InEpsilon(t, p, f.Pressure, 1e-9)
	fan, err := NewFanTable([]float64{0, 0.3, 0.6, 0.9}, []float64{250, 240, 170, 0})
	require.NoError(t, err)
	o, flows, err := tree.OperatingPoint(fan, DefaultFanDrive(), air)
	require.NoError(t, err)
	require.InEpsilon(t, fan.Pressure(o.Flow, 1, air.Density), flows.Pressure, 1e-9)
}

func TestTeesRefuse(t *testing.T) {
	_, b := teeTree(t)
	b[2].Junction = SideBranch
	b[2].Angle = 20
	b[3].Segments[0].Section = Round(0.5)
	b[4].Angle = 45
	_, err := NewTree(b...)
	for _, s := range []string{"Branch[2].Angle", "Branch[3]: its area over its parent's", "Branch[4].Angle", "a tee at the end of Branch[0] has 0 straight runs and 2"} {
		require.ErrorContains(t, err, s)
	}
	_, b = demoTree(t)
	b[1].Junction, b[0].Junction, b[3].Angle = 9, StraightRun, 45
	_, err = NewTree(b...)
	for _, s := range []string{"Branch[0].Junction", "Branch[1].Junction", "Branch[3].Angle"} {
		require.ErrorContains(t, err, s)
	}
	// A room at a high pressure blows back through its tee.
	_, b = teeTree(t)
	b[1].Static = 400
	tree, err := NewTree(b...)
	require.NoError(t, err)
	_, err = tree.Solve(0.3, DryAir(20, 101325))
	require.ErrorIs(t, err, ErrNoSolution)
	require.ErrorContains(t, err, "turns round")
}
