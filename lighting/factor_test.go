package lighting

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestExchangeSigns(t *testing.T) {
	require.InDelta(t, 0.199824896, OpposedPlatesFactor(Plates{1, 1, 1}), 1e-9)
	require.InDelta(t, 0.200043776, AdjacentPlatesFactor(AdjacentPlates{1, 1, 1}), 1e-9)
	require.InDelta(t, 1, OpposedPlatesFactor(Plates{1, 1, 1})+4*AdjacentPlatesFactor(AdjacentPlates{1, 1, 1}), 1e-14)
}

func TestPolygonAgainstCorner(t *testing.T) {
	f := PolygonFactor(Point{1, 2, 0}, up, Point{1, 2, 0.7}, Point{2.5, 2, 0.7}, Point{2.5, 5, 0.7}, Point{1, 5, 0.7})
	require.InDelta(t, CornerFactor(Plates{1.5, 3, 0.7}), f, 1e-15)
	// A wall that reaches below the point: only the part above counts.
	low := PolygonFactor(Point{0, 0, 0}, up, Point{1, -2, -1}, Point{1, 2, -1}, Point{1, 2, 1}, Point{1, -2, 1})
	cut := PolygonFactor(Point{0, 0, 0}, up, Point{1, -2, 0}, Point{1, 2, 0}, Point{1, 2, 1}, Point{1, -2, 1})
	require.InDelta(t, cut, low, 1e-15)
	require.True(t, math.IsNaN(PolygonFactor(Point{}, Vector{}, Point{1, 0, 0})))
}
