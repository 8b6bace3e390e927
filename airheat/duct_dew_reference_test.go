package airheat

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Ducts in cold air against numbers worked apart from the library on a hundred
// times as many cells: wet throughout, wet from some place on, below freezing and
// in mountain air.
func TestDuctDewWorkedApart(t *testing.T) {
	rows := check.Numbers(t, "dew.csv")
	require.Len(t, rows, 5)
	for _, r := range rows {
		in := idealAir(t, r[0], r[1], r[2])
		require.InEpsilon(t, r[9], in.LewisFactor(), 1e-9)
		d := Duct{Section: Round(r[3]), Length: r[4], HeatTransfer: r[5]}
		got, err := d.Dew(r[6], r[7], in, r[8])
		require.NoError(t, err)
		require.InDelta(t, r[10], got.Outlet, 2e-3)
		require.InEpsilon(t, r[11], got.HumidityRatio, 1e-4)
		require.InEpsilon(t, r[12], got.Water, 3e-4)
		require.InEpsilon(t, r[13], got.Loss, 1e-4)
		require.InDelta(t, r[14], got.WetFrom, d.Length/dewCells)
		require.InDelta(t, r[15], got.ColdestWall, 0.04) // the last cell is 0.1 m long
		require.Equal(t, r[15] < 0, got.Frost)
		// Of the heat, what water gives is the rest beside the cooling of the air.
		air := r[7] * (cpAir + cpVapour*0.5*(in.HumidityRatio()+got.HumidityRatio)) * (in.Temperature() - got.Outlet)
		require.InDelta(t, got.Loss-air, got.Latent, 2e-3*got.Loss)
	}
}

// Two soil stores in moist air, charged and emptied from the far end, against
// numbers worked apart from the library: on the same cells and steps, and on finer
// ones.
func TestMoistStoresWorkedApart(t *testing.T) {
	first, second := storesWorkedApart()
	a, err := NewSoilStore(first, 12)
	require.NoError(t, err)
	b, err := NewSoilStore(second, 16)
	require.NoError(t, err)
	stores := []*Store{a, b}
	rows := check.Numbers(t, "soilstore_moist.csv")
	require.Len(t, rows, 12)
	for _, r := range rows {
		in := idealAir(t, r[2], r[3], r[4])
		require.InEpsilon(t, r[5], in.LewisFactor(), 1e-9)
		got, err := stores[int(r[0])].StepMoist(r[1], in, DryAir(r[2], r[4]), time.Hour, r[6] == 1)
		require.NoError(t, err)
		require.InEpsilon(t, r[7], got.Heat, 3e-4)
		require.InEpsilon(t, r[8], got.Water, 5e-4)
		require.InDelta(t, r[9], got.Outlet, 5e-3)
		require.InEpsilon(t, r[10], got.HumidityRatio, 3e-4)
		require.InDelta(t, r[11], got.Up, 3e-4*r[7])
		// The cells and steps themselves cost this much.
		require.InEpsilon(t, r[12], got.Heat, 0.05)
		require.InEpsilon(t, r[13], got.Water, 0.06)
		require.InDelta(t, r[14], got.Outlet, 0.4)
	}
}
