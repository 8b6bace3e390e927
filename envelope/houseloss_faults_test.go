package envelope_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

func TestAllFaultsOfAHouse(t *testing.T) {
	p := filmHouse(t)
	p.Covers = map[FacetKind]Cover{Roof: {}, SideWall: SingleFilm(), DwarfWall: SingleFilm(), 99: SingleFilm()}
	p.Screened = map[FacetKind]Cover{Roof: {}}
	p.Single = map[int]Cover{2: {}}
	p.FrameAllowance = 4
	p.Doors = []Door{{Facet: 5, Area: 99, U: -1}, {Facet: 99, Area: 1}, {Facet: len(p.Shape.Facets) - 1, Area: 1, U: 1}}
	p.Bridges = []Bridge{{Length: -1, Psi: 20}}
	p.Ground.WallThickness = -1
	p.Climate.Coldest = 0
	p.Leakage.AirChanges = -1
	_, err := NewHouse(p)
	requireFields(t, err, "layers of Covers[roof]", "layers of Covers[end wall]", "kind in Covers", "layers of Screened[roof]", "layers of Single[2]", "FrameAllowance",
		"Doors[0].U", "Doors[0].Area", "Doors[1].Facet", "Doors[2].Area", "Bridges[0].Length", "Bridges[0].Psi",
		"Ground.WallThickness", "Climate.Coldest", "Leakage.AirChanges")
	_, err = NewHouse(HousePlan{})
	requireFields(t, err, "Shape.Facets")

	h := built(t, filmHouse(t))
	k := winterNight()
	k.Inside, k.OutsideHumidity, k.Month, k.Wind, k.SkyDrop = 99, 2, 0, -1, -30
	k.Sun = make([][MaxLayers]float64, 1)
	_, err = h.Loss(k)
	requireFields(t, err, "Inside", "SkyDrop", "Wind", "OutsideHumidity", "Month", "length of Sun")
	k = winterNight()
	k.Sun = make([][MaxLayers]float64, len(filmHouse(t).Shape.Facets))
	k.Sun[0][0] = -1
	_, err = h.Loss(k)
	require.ErrorContains(t, err, "facet 0 (roof, north).AbsorbedSun[0] is -1")
	_, err = (&House{}).Loss(winterNight())
	require.ErrorIs(t, err, ErrRange)
	_, err = OpaqueWall("bad", -1, 0.1)
	requireFields(t, err, "resistance")
	_, err = OpaqueWall("bad", 0, -0.1)
	requireFields(t, err, "resistance", "thickness")
	_, err = WithScreen(Cover{}, AluminisedScreen())
	requireFields(t, err, "number of layers of the cover")
}
