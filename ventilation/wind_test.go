package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

func TestWindToTwoMetres(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Fao98.ex14", In: []float64{3.2, 10}, Printed: "2.4"},
		{Where: "Fao98.eq47/hand", In: []float64{1, 10}, Printed: "0.7480"},
		{Where: "Fao98.eq47/hand low", In: []float64{1, 0.5}, Printed: "1.4541"},
	}, func(in ...float64) float64 { return ventilation.WindAtTwoMetres(in[0], in[1]) })
	require.InDelta(t, 1, ventilation.WindAtTwoMetres(1, 2), 0.002)
}

func TestWindProfile(t *testing.T) {
	// The station's own terrain and height give back what it measured.
	for _, terrain := range []ventilation.Terrain{ventilation.CityTerrain, ventilation.SuburbTerrain, ventilation.OpenTerrain, ventilation.FlatTerrain} {
		u, err := ventilation.WindAt(10, terrain, 4, 10, terrain)
		require.NoError(t, err)
		require.InEpsilon(t, 4, u, 1e-12)
	}
	// [AshHoF17] ch. 24 (from memory): 4 m/s at 10 m in open country, at 3 m
	// among houses: 4 (270/10)^0.14 (3/370)^0.22.
	want := map[ventilation.Terrain]float64{
		ventilation.CityTerrain:   4 * math.Pow(27, 0.14) * math.Pow(3.0/460, 0.33),
		ventilation.SuburbTerrain: 4 * math.Pow(27, 0.14) * math.Pow(3.0/370, 0.22),
		ventilation.OpenTerrain:   4 * math.Pow(0.3, 0.14),
		ventilation.FlatTerrain:   4 * math.Pow(27, 0.14) * math.Pow(3.0/210, 0.10),
	}
	for terrain, w := range want {
		u, err := ventilation.WindAt(3, terrain, 4, 10, ventilation.OpenTerrain)
		require.NoError(t, err)
		require.InEpsilon(t, w, u, 1e-12)
	}
	require.InEpsilon(t, 4*math.Log(3/0.03)/math.Log(10/0.03), ventilation.LogWind(3, 4, 10, 0.03, 0), 1e-12)
	require.True(t, math.IsNaN(ventilation.LogWind(0.5, 4, 10, 0.03, 0.6)))
	_, err := ventilation.WindAt(-1, ventilation.Terrain{}, -4, 1000, ventilation.OpenTerrain)
	for _, field := range []string{"height", "measured", "station", "terrain.Exponent", "terrain.Layer"} {
		require.ErrorContains(t, err, field)
	}
}

// The sum of each face's row, and of the table, pins the transcription.
func TestPressureTables(t *testing.T) {
	sums := map[ventilation.Shelter][4]float64{
		ventilation.Exposed:       {-0.05, -3.0, -2.4, -1.6},
		ventilation.SemiSheltered: {-0.35, -2.6, -2.4, -1.6},
		ventilation.Sheltered:     {-0.55, -2.4, -1.9, -1.25},
	}
	for s, want := range sums {
		table := s.Coefficients()
		require.NotEmpty(t, table.Source)
		require.NotEmpty(t, table.Reference)
		for face, w := range want {
			sum := 0.0
			for i, v := range table.Values[face] {
				sum += v
				require.Equal(t, v, table.At(ventilation.Face(face), 45*float64(i)))
			}
			require.InDelta(t, w, sum, 1e-9, "%v %v", s, face)
		}
		require.Greater(t, table.At(ventilation.Wall, 0), table.At(ventilation.Wall, 90))
	}
	semi := ventilation.SemiSheltered.Coefficients()
	require.InDelta(t, 0.25, semi.At(ventilation.Wall, 22.5), 1e-12)
	require.True(t, math.IsNaN(semi.At(ventilation.Wall, 181)))
	require.Empty(t, ventilation.Shelter(9).Coefficients().Source)
}

// [SwaChan88], worked by hand at angles where terms vanish.
func TestWallCoefficient(t *testing.T) {
	require.InDelta(t, 0.6*math.Log(1.248+0.769+0.717), ventilation.WallCoefficient(0, 1, 0.6), 1e-12)
	require.InDelta(t, 0.6*math.Log(1.248-0.703), ventilation.WallCoefficient(180, 1, 0.6), 1e-12)
	r := math.Sqrt(0.5)
	require.InDelta(t, 0.6*math.Log(1.248-0.703*r-1.175+0.769*r+0.717*0.5), ventilation.WallCoefficient(90, 1, 0.6), 1e-12)
	g := math.Log(2)
	s := math.Sin(math.Pi * g)
	require.InDelta(t, 0.6*math.Log(1.248-0.703*r-1.175+0.131*s*s*s+0.769*r+0.07*g*g*0.5+0.717*0.5), ventilation.WallCoefficient(90, 2, 0.6), 1e-12)
	require.True(t, math.IsNaN(ventilation.WallCoefficient(90, 9, 0.6)))
}
