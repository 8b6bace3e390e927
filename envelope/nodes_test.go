package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// holding is the steady heat to the air that keeps it at t, °C.
func holding(n Nodes, d Drive, t float64) float64 {
	soil := 0.0
	if n.SoilDeep > 0 {
		soil = 1 / (1/n.AirSoil + 1/n.SoilDeep)
	}
	return (n.Cover+n.Leakage)*(t-d.Outside) + n.CoverSky*(t-d.Outside+d.SkyDrop) + soil*(t-d.Deep)
}

// What holds the nodes is the house's loss, at the temperature held and, under
// a sky that can take it, at the level too.
func TestNodesLoseWhatTheHouseLoses(t *testing.T) {
	h := built(t, filmHouse(t))
	for _, outside := range []float64{-18, -6, 2} {
		for _, drop := range []float64{-3, 0, 5, 22} {
			for _, rh := range []float64{0.4, 0.9} {
				k := winterNight()
				k.Outside, k.SkyDrop, k.InsideHumidity = outside, drop, rh
				n, d, err := h.Nodes(k, 4, DefaultNodeStores())
				require.NoError(t, err)
				held := loss(t, h, k)
				require.InEpsilon(t, held.Total, holding(n, d, k.Inside), 1e-9)
				require.GreaterOrEqual(t, n.Cover, 0.0)
				require.GreaterOrEqual(t, n.CoverSky, 0.0)
			}
		}
	}
}

// air is the part of holding that goes through covers and leaks.
func air(n Nodes, d Drive, t float64) float64 {
	n.SoilDeep = 0
	return holding(n, d, t)
}

// Under a clear sky the line meets the house at both ends, vapour left aside.
func TestNodesMeetTheHouseAtBothEnds(t *testing.T) {
	h := built(t, filmHouse(t))
	k := winterNight()
	k.InnerFace = InnerDry
	n, d, err := h.Nodes(k, 0, DefaultNodeStores())
	require.NoError(t, err)
	require.Positive(t, n.CoverSky)
	k.Inside = 0
	low := loss(t, h, k)
	require.InEpsilon(t, low.Total-low.Ground.Total, air(n, d, 0), 1e-9)
	mid := k
	mid.Inside = 7
	m := loss(t, h, mid)
	require.InEpsilon(t, m.Total-m.Ground.Total, air(n, d, 7), 0.03)
}

func TestNodesHoldWhatTheHouseHolds(t *testing.T) {
	p := filmHouse(t)
	h := built(t, p)
	s := DefaultNodeStores()
	require.Equal(t, NodeStores{Structure: 120e3, SoilDepth: 0.2, AirStructure: 30, AirSoil: 5}, s)
	n, d, err := h.Nodes(winterNight(), 0, s)
	require.NoError(t, err)
	require.InEpsilon(t, 1.22*1020*p.Shape.Volume, n.AirCapacity, 0.02)
	require.Equal(t, 120e3*p.Shape.FloorArea, n.StructureCapacity)
	require.InEpsilon(t, 0.2*p.Ground.Soil.HeatCapacity*p.Shape.FloorArea, n.SoilCapacity, 1e-12)
	require.Equal(t, 30*p.Shape.FloorArea, n.AirStructure)
	require.InEpsilon(t, h.Ground().Total, 1/(1/n.AirSoil+1/n.SoilDeep), 1e-12)
	require.Equal(t, -14.0, d.Outside)
	require.Equal(t, 18.0, d.SkyDrop)
}

func TestNodesRefuse(t *testing.T) {
	h := built(t, filmHouse(t))
	_, _, err := h.Nodes(winterNight(), 99, NodeStores{Structure: -1})
	for _, f := range []string{"level", "Structure", "SoilDepth", "AirStructure", "AirSoil"} {
		require.ErrorContains(t, err, f)
	}
	k := winterNight()
	_, _, err = h.Nodes(k, k.Inside, DefaultNodeStores())
	require.ErrorContains(t, err, "another temperature than Inside")
	cold := k
	cold.Inside = cold.Outside
	_, _, err = h.Nodes(cold, 0, DefaultNodeStores())
	require.ErrorContains(t, err, "warmer than Outside")
	k.Wind = math.NaN()
	_, _, err = h.Nodes(k, 0, DefaultNodeStores())
	require.ErrorIs(t, err, ErrRange)
	none := House{}
	_, _, err = none.Nodes(winterNight(), 0, DefaultNodeStores())
	require.ErrorIs(t, err, ErrRange)
}
