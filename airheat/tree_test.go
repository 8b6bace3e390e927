package airheat

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func demoTree(t *testing.T) (Tree, []Branch) {
	round := func(d, l, k float64) []Segment {
		return []Segment{{Section: Round(d), Length: l, Roughness: 0.15e-3, Fittings: k}}
	}
	b := []Branch{
		{Name: "main", Parent: -1, Segments: round(0.4, 3, 0.5)},
		{Name: "left", Parent: 0, Segments: round(0.25, 8, 1.9)},
		{Name: "right", Parent: 0, Segments: round(0.3, 5, 0.8)},
		{Name: "right near", Parent: 2, Segments: round(0.2, 4, 1.5)},
		{Name: "right far", Parent: 2, Segments: round(0.2, 12, 1.5)},
	}
	tree, err := NewTree(b...)
	require.NoError(t, err)
	return tree, b
}

func TestBranchesBalanceFlowAndPressure(t *testing.T) {
	tree, b := demoTree(t)
	air := DryAir(20, 101325)
	for _, q := range []float64{1e-4, 0.01, 0.5, 3} {
		f, err := tree.Solve(q, air)
		require.NoError(t, err)
		require.InEpsilon(t, q, f.Branches[1].Flow+f.Branches[3].Flow+f.Branches[4].Flow, 1e-12)
		require.InEpsilon(t, f.Branches[2].Flow, f.Branches[3].Flow+f.Branches[4].Flow, 1e-12)
		loss := func(i int) float64 { return b[i].Segments[0].Loss(f.Branches[i].Flow, air).Total }
		require.InEpsilon(t, f.Pressure, loss(0)+loss(1), 1e-11)
		require.InEpsilon(t, f.Pressure, loss(0)+loss(2)+loss(3), 1e-11)
		require.InEpsilon(t, f.Pressure, loss(0)+loss(2)+loss(4), 1e-11)
		require.Less(t, f.Residual, 1e-11*f.Pressure)
	}
}

func TestTwinBranchesShareAlike(t *testing.T) {
	_, b := demoTree(t)
	b[4].Segments = b[3].Segments
	tree, err := NewTree(b...)
	require.NoError(t, err)
	f, err := tree.Solve(0.7, DryAir(20, 101325))
	require.NoError(t, err)
	require.InEpsilon(t, f.Branches[3].Flow, f.Branches[4].Flow, 1e-13)
}

func TestDampersGiveTheWantedFlows(t *testing.T) {
	tree, b := demoTree(t)
	air := DryAir(20, 101325)
	want := []float64{0, 0.25, 0, 0.12, 0.12}
	k, p, err := tree.Dampers(want, air)
	require.NoError(t, err)
	for i := range b {
		require.GreaterOrEqual(t, k[i], 0.0)
		b[i].Segments[0].Fittings += k[i]
	}
	tree, err = NewTree(b...)
	require.NoError(t, err)
	f, err := tree.Solve(0.49, air)
	require.NoError(t, err)
	for _, i := range []int{1, 3, 4} {
		require.InEpsilon(t, want[i], f.Branches[i].Flow, 1e-11)
	}
	require.InEpsilon(t, p, f.Pressure, 1e-11)
}

func TestFanOnATree(t *testing.T) {
	tree, _ := demoTree(t)
	air := DryAir(20, 101325)
	fan, err := NewFanTable([]float64{0, 0.3, 0.6, 0.9}, []float64{250, 240, 170, 0})
	require.NoError(t, err)
	d := DefaultFanDrive()
	p, f, err := tree.OperatingPoint(fan, d, air)
	require.NoError(t, err)
	require.InEpsilon(t, fan.Pressure(p.Flow, 1, air.Density), f.Pressure, 1e-9)
	require.InEpsilon(t, p.Pressure, f.Pressure, 1e-9)
}

func TestNewTreeListsAllFaults(t *testing.T) {
	_, err := NewTree(Branch{Parent: 0}, Branch{Parent: 5, Segments: []Segment{{Section: Round(-1)}}})
	require.ErrorIs(t, err, ErrRange)
	for _, s := range []string{"Branch[0].Parent", "at least one segment", "Branch[1].Parent", "Section.Diameter"} {
		require.ErrorContains(t, err, s)
	}
	_, err = NewTree()
	require.ErrorIs(t, err, ErrRange)
	_, err = Tree{}.Solve(1, DryAir(20, 101325))
	require.ErrorIs(t, err, ErrRange)
}
