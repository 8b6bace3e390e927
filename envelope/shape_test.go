package envelope_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

func shaped(t *testing.T, f Form) Shape {
	t.Helper()
	s, err := NewShape(f)
	require.NoError(t, err)
	return s
}

// area sums the facets of a kind.
func area(s Shape, kind FacetKind) float64 {
	sum := 0.0
	for _, f := range s.Facets {
		if f.Kind == kind {
			sum += f.Area
		}
	}
	return sum
}

// A gable of span 8 m and rise 3 m has slopes of 5 m.
func TestGableByHand(t *testing.T) {
	f := DefaultForm()
	f.Span, f.Length, f.Eave, f.Ridge, f.Depth, f.DwarfWall, f.Azimuth = 8, 10, 2, 5, 0.5, 0.4, 90
	s := shaped(t, f)
	tilt := math.Atan2(3, 4) * 180 / math.Pi
	want := []Facet{
		{Kind: Roof, Name: "roof, north", Area: 50, Tilt: tilt, Azimuth: 0, Height: 5},
		{Kind: Roof, Name: "roof, south", Area: 50, Tilt: tilt, Azimuth: 180, Height: 5},
		{Kind: SideWall, Name: "side wall, north", Area: 16, Tilt: 90, Azimuth: 0, Height: 1.6},
		{Kind: SideWall, Name: "side wall, south", Area: 16, Tilt: 90, Azimuth: 180, Height: 1.6},
		{Kind: EndWall, Name: "end wall, east", Area: 24.8, Tilt: 90, Azimuth: 90, Height: 3.1},
		{Kind: EndWall, Name: "end wall, west", Area: 24.8, Tilt: 90, Azimuth: 270, Height: 3.1},
		{Kind: DwarfWall, Name: "dwarf wall, north", Area: 4, Tilt: 90, Azimuth: 0, Height: 0.4},
		{Kind: DwarfWall, Name: "dwarf wall, south", Area: 4, Tilt: 90, Azimuth: 180, Height: 0.4},
		{Kind: DwarfWall, Name: "dwarf wall, east", Area: 3.2, Tilt: 90, Azimuth: 90, Height: 0.4},
		{Kind: DwarfWall, Name: "dwarf wall, west", Area: 3.2, Tilt: 90, Azimuth: 270, Height: 0.4},
		{Kind: BuriedWall, Name: "buried wall, north", Area: 5, Tilt: 90, Azimuth: 0, Height: 0.5},
		{Kind: BuriedWall, Name: "buried wall, south", Area: 5, Tilt: 90, Azimuth: 180, Height: 0.5},
		{Kind: BuriedWall, Name: "buried wall, east", Area: 4, Tilt: 90, Azimuth: 90, Height: 0.5},
		{Kind: BuriedWall, Name: "buried wall, west", Area: 4, Tilt: 90, Azimuth: 270, Height: 0.5},
		{Kind: Floor, Name: "floor", Area: 80, Tilt: 180, Height: 8},
	}
	if d := cmp.Diff(want, s.Facets, cmpopts.EquateApprox(1e-12, 1e-12)); d != "" {
		t.Error(d)
	}
	require.InDelta(t, 10*(8*2+12)+40, s.Volume, 1e-9)
	require.InDelta(t, 40, s.BelowGrade, 1e-12)
	require.InDelta(t, 36, s.Perimeter, 1e-12)
	require.InDelta(t, 196, s.CoverArea, 1e-9)
	require.InDelta(t, 196.0/80, s.CoverRatio, 1e-12)
}

func TestArchesByHand(t *testing.T) {
	f := DefaultForm()
	f.Section, f.Span, f.Length, f.Eave, f.Ridge, f.ArchStrips = RoundArch, 8, 10, 0.5, 4.5, 7
	s := shaped(t, f) // a half circle
	require.InDelta(t, math.Pi*4*10, area(s, Roof), 1e-9)
	require.InDelta(t, math.Pi*8+4, area(s, EndWall)/2, 1e-9)
	require.InDelta(t, 10*(math.Pi*8+4), s.Volume, 1e-9)
	f.Ridge = 0.5 + 4*math.Tan(15*math.Pi/180) // a sixth of a circle: radius 8
	s = shaped(t, f)
	require.InDelta(t, 8*math.Pi/3*10, area(s, Roof), 1e-9)
	require.InDelta(t, 64*(math.Pi/6-math.Sqrt(3)/4)+4, area(s, EndWall)/2, 1e-9)
	// Two sixths of a circle of radius 8 over 8 m: an equilateral pointed arch.
	f.Section, f.Ridge, f.RidgeTilt = PointedArch, 0.5+4*math.Sqrt(3), 30
	s = shaped(t, f)
	require.InDelta(t, 2*8*math.Pi/3*10, area(s, Roof), 1e-9)
	require.InDelta(t, 64*(math.Pi/3-math.Sqrt(3)/4)+4, area(s, EndWall)/2, 1e-9)
	f.RidgeTilt = 20 // springs leaning outward
	_, err := NewShape(f)
	require.ErrorContains(t, err, "RidgeTilt")
}

func TestSectionsMeetInTheirLimits(t *testing.T) {
	f := DefaultForm()
	plain := shaped(t, f)
	f.Section, f.RidgeOffset = UnevenGable, f.Span/2
	if d := cmp.Diff(plain.Facets, shaped(t, f).Facets, cmpopts.EquateApprox(1e-12, 0)); d != "" {
		t.Error(d)
	}
	f.Section, f.RidgeTilt = PointedArch, 0
	pointed := shaped(t, f)
	f.Section = RoundArch
	round := shaped(t, f)
	require.InDelta(t, round.Volume, pointed.Volume, 1e-9)
	require.InDelta(t, area(round, Roof), area(pointed, Roof), 1e-9)
	f.Section = PointedArch
	f.RidgeTilt = math.Atan2(f.Ridge-f.Eave, f.Span/2) * 180 / math.Pi * (1 - 2e-4)
	almost := shaped(t, f) // nearly straight slopes
	require.InDelta(t, area(plain, Roof), area(almost, Roof), 1e-4)
	require.InDelta(t, plain.Volume, almost.Volume, 0.05)
}

func TestShapesClose(t *testing.T) {
	for section := Gable; section <= LeanTo; section++ {
		for _, depth := range []float64{0, 0.9} {
			f := DefaultForm()
			f.Section, f.Depth, f.DwarfWall, f.Azimuth, f.RidgeOffset, f.RidgeTilt, f.ArchStrips = section, depth, 0.3, 37, 2, 15, 8
			limit := 1e-12
			if section == RoundArch || section == PointedArch {
				limit = 1e-3
			}
			s := shaped(t, f)
			require.Less(t, Closure(s), limit, section.String())
			if section != LeanTo {
				f.Bays, f.GutterWidth = 3, 0.2
				s = shaped(t, f)
				require.Less(t, Closure(s), limit, section.String())
			}
		}
	}
}

// Strips of an arch close ever better, as the square of their width.
func TestStripsConverge(t *testing.T) {
	f := DefaultForm()
	f.Section = RoundArch
	f.ArchStrips = 4
	a := shaped(t, f)
	f.ArchStrips = 8
	b := shaped(t, f)
	require.InDelta(t, 4, Closure(a)/Closure(b), 0.05)
	require.InDelta(t, area(a, Roof), area(b, Roof), 1e-9)
}

func TestTwoBaysAreTwiceOne(t *testing.T) {
	f := DefaultForm()
	one := shaped(t, f)
	f.Bays, f.GutterWidth = 2, 0.25
	two := shaped(t, f)
	require.InDelta(t, 2*area(one, Roof), area(two, Roof), 1e-9)
	require.InDelta(t, 0.25*f.Length, area(two, Gutter), 1e-12)
	require.InDelta(t, 2*one.Volume+0.25*f.Length*f.Eave, two.Volume, 1e-9)
	require.InDelta(t, area(one, SideWall), area(two, SideWall), 1e-9)
}

func TestLeanToAgainstAHeatedBuilding(t *testing.T) {
	f := DefaultForm()
	f.Section, f.DwarfWall = LeanTo, 0.2
	s := shaped(t, f)
	require.InDelta(t, 2*f.Span+f.Length, s.Perimeter, 1e-12)
	party := 0.0
	for _, x := range s.Facets {
		if x.Party {
			party += x.Area
		}
	}
	require.InDelta(t, f.Length*f.Ridge, party, 1e-9)
	f.BackWallOpen = true
	open := shaped(t, f)
	require.InDelta(t, s.CoverArea+party, open.CoverArea, 1e-9)
	require.InDelta(t, s.Perimeter+f.Length, open.Perimeter, 1e-12)
}

func TestAnnexTakesItsWallFromTheHouse(t *testing.T) {
	f := DefaultForm()
	f.Depth, f.DwarfWall = 0.6, 0.3
	plain := shaped(t, f)
	f.Annexes = []Annex{{Name: "lobby", Place: AtNearEnd, Width: 2, Reach: 1.5, High: 2.2, Low: 2, Depth: 0.6}}
	s := shaped(t, f)
	a := s.Annexes[0]
	require.InDelta(t, 4.4, a.Partition, 1e-12)
	require.InDelta(t, 1.2, a.Sunken, 1e-12)
	require.InDelta(t, 3*(2.1+0.6), a.Volume, 1e-12)
	require.InDelta(t, plain.CoverArea-a.Partition, s.CoverArea, 1e-9)
	require.InDelta(t, area(plain, BuriedWall)-a.Sunken, area(s, BuriedWall), 1e-9)
	require.Equal(t, plain.Volume, s.Volume)
	// The annex closes with the shared wall put back, above and below grade.
	facets := append([]Facet{{Kind: EndWall, Area: a.Partition + a.Sunken, Tilt: 90, Azimuth: 0, Height: 2}}, a.Facets...)
	x, err := NewFacetShape(facets, Surroundings{Volume: a.Volume, Perimeter: 7, Depth: 0.6, RidgeHeight: 2.2, EaveHeight: 2})
	require.NoError(t, err)
	require.Less(t, Closure(x), 1e-12)
}

func TestIncidence(t *testing.T) {
	roof := Facet{Tilt: 30, Azimuth: 180}
	require.InDelta(t, 0, roof.Incidence(60, 180), 1e-5)
	require.InDelta(t, 90, roof.Incidence(0, 90), 1e-9)
	require.InDelta(t, 60, Facet{Tilt: 90, Azimuth: 180}.Incidence(0, 120), 1e-9)
	require.InDelta(t, 180, Facet{Tilt: 90, Azimuth: 180}.Incidence(0, 0), 1e-5)
	require.True(t, math.IsNaN(roof.Incidence(91, 0)))
}

func TestFacetShapeMustClose(t *testing.T) {
	f := DefaultForm()
	s := shaped(t, f)
	m := Surroundings{Volume: s.Volume, Perimeter: s.Perimeter, RidgeHeight: f.Ridge, EaveHeight: f.Eave}
	again, err := NewFacetShape(s.Facets, m)
	require.NoError(t, err)
	require.InDelta(t, s.CoverRatio, again.CoverRatio, 1e-12)
	_, err = NewFacetShape(s.Facets[1:], m)
	require.ErrorContains(t, err, "closure of the areas")
	m.Depth = 0.5
	buried := append([]Facet{{Kind: BuriedWall, Area: 60, Tilt: 90, Height: 0.5}}, s.Facets...)
	_, err = NewFacetShape(buried, m)
	require.ErrorContains(t, err, "buried walls")
	require.ErrorContains(t, err, "closure of the areas")
	_, err = NewFacetShape([]Facet{{Kind: 9, Area: -1, Tilt: 200, Azimuth: math.NaN(), Height: 0}}, Surroundings{Volume: -1})
	requireFields(t, err, "facets[0].Kind", "facets[0].Area", "facets[0].Tilt", "facets[0].Azimuth", "facets[0].Height",
		"sum of the floor's Area", "Volume", "Perimeter", "RidgeHeight")
}

// requireFields demands a *RangeError for each field named.
func requireFields(t *testing.T, err error, fields ...string) {
	t.Helper()
	require.ErrorIs(t, err, ErrRange)
	var re *RangeError
	require.True(t, errors.As(err, &re))
	for _, f := range fields {
		require.Contains(t, "\n"+err.Error(), f+" is ")
	}
	require.Len(t, strings.Split(err.Error(), "\n"), len(fields), err.Error())
}

func TestAllFaultsOfAForm(t *testing.T) {
	nan := math.NaN()
	_, err := NewShape(Form{Section: 9, Span: -1, Length: nan, Eave: -1, Ridge: 99, Depth: 6, Azimuth: 400, GutterWidth: 2})
	requireFields(t, err, "Section", "Span", "Length", "Eave", "Ridge", "Depth", "Azimuth", "Bays", "GutterWidth")
	f := DefaultForm()
	f.Ridge, f.DwarfWall, f.Depth, f.Span = 1, 2, 3, 2
	_, err = NewShape(f)
	requireFields(t, err, "Depth", "DwarfWall", "Ridge")
	f = DefaultForm()
	f.Section, f.RidgeOffset = UnevenGable, 6
	_, err = NewShape(f)
	requireFields(t, err, "RidgeOffset")
	f.Section, f.Ridge, f.ArchStrips = RoundArch, 5, 0
	_, err = NewShape(f)
	requireFields(t, err, "Ridge", "ArchStrips")
	f = DefaultForm()
	f.Section, f.Bays = LeanTo, 2
	_, err = NewShape(f)
	requireFields(t, err, "Bays")
	f = DefaultForm()
	f.Annexes = []Annex{{Place: 7}, {Place: AtFarEnd, Width: 7, Reach: 0, High: 4, Low: 5, Depth: 1}}
	_, err = NewShape(f)
	requireFields(t, err, "Annexes[0].Place", "Annexes[1].Width", "Annexes[1].Reach", "Annexes[1].High", "Annexes[1].Low", "Annexes[1].Depth")
	f.Annexes = []Annex{{Place: AtFarEnd, Width: 4, Reach: 1, High: 2, Low: 2}, {Place: AtFarEnd, Width: 3, Reach: 1, High: 2, Low: 2}}
	_, err = NewShape(f)
	requireFields(t, err, "Annexes[1].Width and its neighbours")
	f.Annexes = []Annex{{Place: AtFarEnd, Width: 6, Reach: 1, High: 3.1, Low: 2}}
	_, err = NewShape(f)
	requireFields(t, err, "Annexes[0].Width")
}
