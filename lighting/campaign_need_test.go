package lighting

import (
	"errors"
	"flag"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

var needs = flag.Int("needs", 0, "how many random needs TestNeedCampaign plans")

// TestNeedCampaign, run with -needs N, plans N random needs, with and without a
// room, of point lights and bars, and asks of each plan that it holds on a far
// finer grid and keeps its bounds, and of each count below it that no spacing and
// height of a coarse search reaches the need by a margin.
func TestNeedCampaign(t *testing.T) {
	if *needs == 0 {
		t.Skip("only with -needs N")
	}
	rng := rand.New(rand.NewSource(1))
	solved, none, stuck, lacking, wasteful := 0, 0, 0, 0, 0
	least := 0.0
	for k := range *needs {
		n := anyNeed(rng)
		p, err := n.Solve()
		switch {
		case errors.Is(err, ErrNoSolution):
			none++
			continue
		case errors.Is(err, ErrNotConverged):
			stuck++
			t.Logf("need %d: %v", k, err)
			continue
		}
		require.NoError(t, err, "need %d", k)
		solved++
		require.LessOrEqual(t, len(p.Layout), n.MaxCount)
		require.Len(t, p.Layout, p.Columns*p.Rows)
		require.True(t, p.Height >= n.MinHeight*(1-1e-9) && p.Height <= n.MaxHeight*(1+1e-9), "need %d", k)
		mean, u0 := held(t, n, p)
		if short := math.Max(1-mean/n.PPFD, n.U0-u0); short > 0.01 {
			lacking++
			t.Logf("need %d: mean %.4g of %.4g, U0 %.3g of %.3g", k, mean, n.PPFD, u0, n.U0)
		} else {
			least = math.Max(least, short)
		}
		if n.Room == nil && fewer(t, n, len(p.Layout)-1) {
			wasteful++
			t.Logf("need %d: %d fixtures, and one less would do", k, len(p.Layout))
		}
	}
	t.Logf("%d needs: %d planned, %d without a plan, %d not converged; %d short by more than 0.01, the others by %.2g at most; %d with a fixture too many",
		*needs, solved, none, stuck, lacking, least, wasteful)
	if lacking+wasteful > 0 || stuck*1000 > *needs {
		t.Error("too many")
	}
}

func anyNeed(rng *rand.Rand) Need {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	n := Need{PPFD: between(30, 400), U0: between(0, 0.85), Maintenance: Maintenance{between(0.8, 1), 1, between(0.9, 1), between(0.9, 1)},
		Fixture: Fixture{Light: CosinePower{between(80, 900), between(0.5, 4)}, Power: 100},
		Bed:     Bed{X: between(0, 1), Y: between(0, 1), Z: between(0, 1), Length: between(1, 12), Width: between(0.6, 5)}, MaxCount: 5 + rng.Intn(60)}
	n.MinHeight = between(0.3, 1.2)
	n.MaxHeight = n.MinHeight + between(0, 2)
	if rng.Intn(4) == 0 {
		n.Fixture.Length = between(0.3, 1.5)
	}
	if rng.Intn(3) == 0 {
		n.Room = &Room{Length: n.Bed.X + n.Bed.Length + between(0.1, 2), Width: n.Bed.Y + n.Bed.Width + between(0.1, 2), Height: n.Bed.Z + n.MaxHeight + between(0.05, 1),
			Floor: between(0, 0.5), Ceiling: between(0, 0.8), WallX0: between(0, 0.9), WallX1: between(0, 0.9), WallY0: between(0, 0.9), WallY1: between(0, 0.9)}
	}
	return n
}

// held returns mean and evenness of a plan at harvest on a grid of 160 by 80.
func held(t *testing.T, n Need, p Plan) (mean, u0 float64) {
	fine, err := n.Bed.Grid(160, 80)
	require.NoError(t, err)
	lights, err := NewLights(p.Layout...)
	require.NoError(t, err)
	ppfd, err := lights.MapTo(nil, fine)
	require.NoError(t, err)
	if n.Room != nil {
		r, err := n.Room.Reflect(p.Layout, planPatches)
		require.NoError(t, err)
		more, err := r.Map(fine)
		require.NoError(t, err)
		for i, v := range more {
			ppfd[i] += v
		}
	}
	s, err := Evenness(ppfd)
	require.NoError(t, err)
	return s.Mean * n.Maintenance.Factor(), s.U0
}

// fewer reports whether count fixtures, in any way of rows, at one of eight
// heights and of ten spacings, reach the need with 0.01 to spare.
func fewer(t *testing.T, n Need, count int) bool {
	if count < 1 {
		return false
	}
	grid, err := n.Bed.Grid(40, 20)
	require.NoError(t, err)
	for rows := 1; rows <= count; rows++ {
		if count%rows != 0 {
			continue
		}
		columns := count / rows
		for h := range 8 {
			height := n.MinHeight + (n.MaxHeight-n.MinHeight)*float64(h)/7
			for k := range 10 {
				wide := 0.55 + 0.06*float64(k) // of equal shares
				layout, err := Spaced(n.Fixture, n.Bed, Spacing{Height: height, X: wide * n.Bed.Length / float64(columns), Y: wide * n.Bed.Width / float64(rows), Columns: columns, Rows: rows})
				if err != nil {
					continue
				}
				lights, err := NewLights(layout...)
				require.NoError(t, err)
				ppfd, err := lights.MapTo(nil, grid)
				require.NoError(t, err)
				s, err := Evenness(ppfd)
				require.NoError(t, err)
				if s.Mean*n.Maintenance.Factor() >= n.PPFD*1.01 && s.U0 >= n.U0+0.02 {
					return true
				}
			}
		}
	}
	return false
}
