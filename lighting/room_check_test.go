package lighting

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// An independent solution of one room, in plain Python 3 with its math module
// alone: factors by the Hamilton-Morgan forms for opposed and adjacent
// rectangles (each row sums to 1 within 4e-16), direct light and gather by
// 24-point Gauss-Legendre in 60 by 60 panels a face, whose own error at the edge
// of the tilted beams is below 3e-7.
func sixFaces(t *testing.T) (Room, Layout) {
	beam, err := FromBeamAngle(180, 60)
	require.NoError(t, err)
	return Room{Length: 4.2, Width: 2.6, Height: 2.9, WallX0: 0.5, WallX1: 0.4, WallY0: 0.6, WallY1: 0.2, Floor: 0.3, Ceiling: 0.7},
		Layout{
			{Light: cosine(t, 300, 1.7), At: Point{1.1, 0.8, 2.2}, Aim: Aim(25, 40, 0)},
			{Light: cosine(t, 250, 1), At: Point{3, 1.9, 1.9}},
			{Light: beam, At: Point{2.2, 1.3, 2.5}, Aim: Aim(310, 15, 0)},
		}
}

func TestSixFaceModelAgreesWithAnotherSolution(t *testing.T) {
	r, layout := sixFaces(t)
	s, err := r.Reflect(layout, 1)
	require.NoError(t, err)
	for face, want := range []float64{2.2726851395810668, 13.173727589741652, 10.047001778199295, 12.992019402809909, 29.93461144477284, 0.5524662272050768} {
		require.InEpsilon(t, want, s.Direct[face], 1e-6, "direct, face %d", face)
	}
	for face, want := range []float64{10.112867805749653, 20.669587160644298, 16.81188232302132, 21.386710677041872, 36.67540693559593, 8.46122834823022} {
		require.InEpsilon(t, want, s.FaceMean(face), 1e-6, "face %d", face)
	}
	p, err := NewPoints(Receiver{Point{1, 1, 0.7}, Up}, Receiver{Point{2.1, 1.3, 0.7}, Up}, Receiver{Point{3.9, 0.3, 0.7}, Up})
	require.NoError(t, err)
	got, err := s.Map(p)
	require.NoError(t, err)
	l, err := NewLights(layout...)
	require.NoError(t, err)
	direct, err := l.Map(p)
	require.NoError(t, err)
	for i, want := range []struct{ reflected, direct float64 }{
		{6.57041305490071, 43.72183564073748}, {6.586867611865262, 87.32892600691537}, {7.971618999838902, 15.593884291127408},
	} {
		require.InEpsilon(t, want.reflected, got[i], 1e-6)
		require.InEpsilon(t, want.direct, direct[i], 1e-12)
	}
}

func TestSixteenPatchesAreEnough(t *testing.T) {
	r, layout := sixFaces(t)
	p, err := Bed{X: 0.4, Y: 0.3, Z: 0.7, Length: 3.4, Width: 2}.Grid(6, 4)
	require.NoError(t, err)
	var maps [][]float64
	for _, n := range []int{8, 16, 24} {
		s, err := r.Reflect(layout, n)
		require.NoError(t, err)
		m, err := s.Map(p)
		require.NoError(t, err)
		maps = append(maps, m)
	}
	for i := range maps[0] {
		// The error falls with the square of the patch: against the
		// extrapolated value. A beam aimed at a near wall makes this room
		// harder than most.
		best := maps[2][i] + (maps[2][i]-maps[1][i])/(1.5*1.5-1)
		require.InEpsilon(t, best, maps[1][i], 5e-3, "point %d", i)
		require.InEpsilon(t, best, maps[0][i], 2e-2, "point %d", i)
	}
}
