package lighting

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestShares(t *testing.T) {
	r := Room{Length: 5, Width: 4, Height: 3}
	bed := Bed{X: 1, Y: 1, Z: 0.8, Length: 3, Width: 1.2}
	f := Fixture{Light: cosine(t, 100, 1), At: Point{2.5, 1.6, 2}}
	s, err := r.Share(Layout{f}, bed)
	require.NoError(t, err)
	// Four corner factors by reciprocity.
	require.InDelta(t, 4*CornerFactor(Plates{1.5, 0.6, 1.2}), s.Bed, 1e-12)
	require.InDelta(t, 1, s.Bed+s.Aisle+s.Walls, 1e-15)
	walls := 0.0
	for _, w := range [][4]Point{
		{{0, 0, 0.8}, {5, 0, 0.8}, {5, 0, 3}, {0, 0, 3}}, {{0, 4, 0.8}, {5, 4, 0.8}, {5, 4, 3}, {0, 4, 3}},
		{{0, 0, 0.8}, {0, 4, 0.8}, {0, 4, 3}, {0, 0, 3}}, {{5, 0, 0.8}, {5, 4, 0.8}, {5, 4, 3}, {5, 0, 3}},
	} {
		walls += rectangleFlux(f, w)
	}
	require.InDelta(t, walls/100, s.Walls, 1e-10)
	_, err = r.Share(Layout{{Light: cosine(t, 0, 1), At: Point{1, 1, 2}}}, bed)
	require.ErrorIs(t, err, ErrRange)
	_, err = r.Share(Layout{{Light: cosine(t, 1, 1), At: Point{1, 1, 0.5}}}, Bed{X: 3, Y: -1, Z: 0.8, Length: 3, Width: 1})
	for _, want := range []string{"bed.X", "bed.Y", "layout[0].At.Z"} {
		require.ErrorContains(t, err, want)
	}
	_, err = r.Share(nil, Bed{})
	require.ErrorIs(t, err, ErrRange)
}
