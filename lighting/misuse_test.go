package lighting

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// What NewTable did not make is no light: refused by place, never a panic.
func TestTablesWithoutValuesAreRefused(t *testing.T) {
	var missing *Table
	for _, empty := range []*Table{missing, {}} {
		f := Fixture{Light: empty, At: Point{1, 1, 2}}
		require.Zero(t, f.ppf())
		_, err := NewLights(f)
		require.ErrorContains(t, err, "fixtures[0]: Light is missing")
		_, err = Room{4, 3, 3, 0.2, 0.7, 0.5, 0.5, 0.5, 0.5}.Reflect(Layout{f}, 2)
		require.ErrorContains(t, err, "layout[0]: Light is missing")
	}
	for _, empty := range []*CandelaTable{nil, {}} {
		_, err := PhotonTable(empty, IlluminantA(), PAR())
		require.ErrorIs(t, err, ErrRange)
		_, err = ChannelTables(empty, []Channel{{"white", IlluminantA(), 1}}, PAR())
		require.ErrorIs(t, err, ErrRange)
	}
}

func TestMapsToDimAreChecked(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), -1, 1.001e5} {
		_, err := Dim([]GroupMap{{Group: "red", PPFD: []float64{1, v}}}, []float64{1, 2}, []float64{0}, []float64{1})
		require.ErrorContains(t, err, "maps[0].PPFD[1] is")
	}
	same := GroupMap{PPFD: []float64{1, 2}}
	d, err := Dim([]GroupMap{same, same}, []float64{1.5, 3}, []float64{0, 0}, []float64{1, 1})
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{1, 0.5}, d.Levels, 1e-12)
}

func TestBedsLargerThanTheRoomSaySo(t *testing.T) {
	l := Layout{{Light: cosine(t, 100, 1), At: Point{1, 1, 2}}}
	_, err := Room{Length: 4, Width: 3, Height: 3}.Share(l, Bed{Length: 20, Width: 1})
	require.ErrorContains(t, err, "bed.Length is 20, allowed 0.001 to 4 m; bed within the room")
}
