package envelope_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// glazed returns the house of the form whose facets of the kinds have the sheet,
// all but the floor and the gutters when no kind is given.
func glazed(t testing.TB, f Form, sheet Sheet, kinds ...FacetKind) (Shape, Glazing) {
	t.Helper()
	s, err := NewShape(f)
	require.NoError(t, err)
	layers, err := NewLightLayers(sheet)
	require.NoError(t, err)
	lights := make([]FacetLight, len(s.Facets))
	for i, x := range s.Facets {
		clear := len(kinds) == 0 && x.Kind != Floor
		for _, k := range kinds {
			clear = clear || x.Kind == k
		}
		if clear {
			lights[i] = FacetLight{Sheets: layers, Factors: DefaultLightFactors()}
		}
	}
	g, err := NewGlazing(s, lights, 0.8)
	require.NoError(t, err)
	return s, g
}

// nothing is a sheet that light does not notice.
var nothing = Sheet{Index: 1, Thickness: 0.004}

func bedLight(t testing.TB, g Glazing, b BedPlace) BedLight {
	t.Helper()
	l, err := NewBedLight(g, b)
	require.NoError(t, err)
	return l
}

func wholeFloor(f Form) BedPlace { return BedPlace{Width: f.Span, Length: f.Length} }

// anyForm draws a house of one bay.
func anyForm(rng *rand.Rand) Form {
	f := DefaultForm()
	f.Section = Section(rng.Intn(5))
	f.Span, f.Length, f.Eave = 3+9*rng.Float64(), 3+30*rng.Float64(), 3*rng.Float64()
	f.Ridge = f.Eave + f.Span*(0.1+0.35*rng.Float64())
	f.Azimuth = 360 * rng.Float64()
	f.RidgeOffset = f.Span * (0.2 + 0.6*rng.Float64())
	if f.Section == PointedArch {
		f.RidgeTilt = math.Max(5, 2*math.Atan2(f.Ridge-f.Eave, f.Span/2)*180/math.Pi-85)
	}
	f.BackWallOpen = true
	if rng.Intn(2) == 0 {
		f.DwarfWall = 0.5 * f.Eave
	}
	return f
}

// Sun straight above: each slope lights its half of the floor, and lets through
// what the sheet does at the angle of its tilt.
func TestBedUnderTheZenith(t *testing.T) {
	f := DefaultForm()
	pane := Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004}
	s, g := glazed(t, f, pane)
	b := bedLight(t, g, wholeFloor(f)).Beam(90, 0)
	layers, err := NewLightLayers(pane)
	require.NoError(t, err)
	for i, x := range s.Facets {
		if x.Kind == Roof {
			require.InDelta(t, 0.5, b.Facets[i], 1e-12)
		} else {
			require.InDelta(t, 0, b.Facets[i], 1e-12)
		}
	}
	require.InDelta(t, 1, b.Lit, 1e-12)
	require.InEpsilon(t, layers.At(s.Facets[0].Tilt).Transmittance, b.Transmittance, 1e-12)
	// A bed of the right half alone lies under the right slope.
	b = bedLight(t, g, BedPlace{Left: 3, Width: 3, Near: 1, Length: 5, Height: 0.8}).Beam(90, 0)
	right := 0
	for i, x := range s.Facets {
		if x.Kind == Roof && x.Azimuth == 90 {
			right = i
		}
	}
	require.InDelta(t, 1, b.Facets[right], 1e-12)
}

// One clear wall: the sun stands square to it and lights the strip of floor that
// its height throws, less the part of the wall that lies below the bed.
func TestBedBehindOneClearWall(t *testing.T) {
	f := DefaultForm()
	_, g := glazed(t, f, nothing, SideWall)
	strip := f.Eave / math.Tan(math.Pi/4)
	require.InEpsilon(t, strip/f.Span, bedLight(t, g, wholeFloor(f)).Beam(45, 90).Lit, 1e-12)
	require.InEpsilon(t, strip/f.Span, bedLight(t, g, wholeFloor(f)).Beam(45, 270).Lit, 1e-12)
	high := wholeFloor(f)
	high.Height = 0.8
	require.InEpsilon(t, (f.Eave-0.8)/f.Span, bedLight(t, g, high).Beam(45, 90).Lit, 1e-12)
	// From 30 degree beside the wall's normal the strip is narrower and lies
	// askew: half of what leaves it at the end is shadow of the end wall.
	depth := strip * math.Cos(math.Pi/6)
	along := strip * math.Sin(math.Pi/6)
	require.InEpsilon(t, (depth*f.Length-depth*along/2)/(f.Span*f.Length), bedLight(t, g, wholeFloor(f)).Beam(45, 120).Lit, 1e-12)
	require.Zero(t, bedLight(t, g, wholeFloor(f)).Beam(45, 0).Lit, "along the walls")
}

// What the sun sends through all facets lands on floor and walls, nothing twice:
// both sums hold for every facet of random houses.
func TestBeamThroughAllFacetsLandsInside(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 60 {
		f := anyForm(rng)
		s, g := glazed(t, f, nothing)
		l := bedLight(t, g, wholeFloor(f))
		elevation, azimuth := 90*rng.Float64(), 360*rng.Float64()
		section, area := Landing(l, elevation, azimuth)
		for i, x := range s.Facets {
			if f.Section != RoundArch && f.Section != PointedArch { // whose strips stand for arcs
				require.InEpsilon(t, x.Area, area[i], 1e-9, "%v of %+v", x, f)
			}
			c := math.Cos(x.Incidence(elevation, azimuth) * math.Pi / 180)
			in, out := 0.0, 0.0
			for j := range section {
				in += section[i][j]
				out += section[j][i]
			}
			require.InDelta(t, math.Max(0, c)*area[i], in, 1e-8*area[i], "through %v of %+v", x, f)
			require.InDelta(t, math.Max(0, -c)*area[i], out, 1e-8*area[i], "on %v of %+v", x, f)
		}
	}
}

// Sheets that light does not notice leave no shadow and take nothing from the
// sky; opaque upstands take what the sun behind them takes.
func TestBedInTheOpen(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 20 {
		f := anyForm(rng)
		f.DwarfWall = 0
		_, g := glazed(t, f, nothing)
		bed := BedPlace{Left: 0.3 * f.Span, Near: 0.2 * f.Length, Width: 0.4 * f.Span, Length: 0.5 * f.Length, Height: 0.02 * f.Span}
		l := bedLight(t, g, bed)
		require.InDelta(t, 1, l.Diffuse(), 1e-9, "%+v", f)
		for range 10 {
			b := l.Beam(0.1+89*rng.Float64(), 360*rng.Float64())
			require.InDelta(t, 1, b.Lit, 1e-9, "%+v", f)
			require.InDelta(t, 1, b.Transmittance, 1e-9)
		}
	}
}

// Turning house and sun together changes nothing; the mirrored sun lights the
// other slope.
func TestBedTurnsWithTheHouse(t *testing.T) {
	f := DefaultForm()
	pane := Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004}
	s, g := glazed(t, f, pane)
	bed := BedPlace{Left: 1, Near: 2, Width: 4, Length: 8, Height: 0.7}
	one := bedLight(t, g, bed)
	f.Azimuth = 75
	_, g = glazed(t, f, pane)
	turned := bedLight(t, g, bed)
	require.InDelta(t, one.Diffuse(), turned.Diffuse(), 2e-3, "directions of the sum lie elsewhere")
	for _, at := range [][2]float64{{10, 20}, {35, 140}, {60, 250}} {
		a, b := one.Beam(at[0], at[1]), turned.Beam(at[0], math.Mod(at[1]+75, 360))
		require.InDeltaSlice(t, a.Facets, b.Facets, 1e-9)
		mirrored := one.Beam(at[0], 360-at[1])
		require.InDelta(t, a.Transmittance, mirrored.Transmittance, 1e-9)
	}
	// Diffuse light comes through worse than the beam from above, better than
	// the wetted mean of grazing light.
	require.Less(t, one.Diffuse(), one.Beam(90, 0).Transmittance)
	require.Greater(t, one.Diffuse(), 0.7)
	require.Len(t, one.Beam(30, 0).Facets, len(s.Facets))
}

func TestBedHours(t *testing.T) {
	f := DefaultForm()
	_, g := glazed(t, f, Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004})
	l := bedLight(t, g, wholeFloor(f))
	h, err := l.Light(Sunlight{BeamNormal: 500, DiffuseHorizontal: 120, Elevation: 30, Azimuth: 200})
	require.NoError(t, err)
	require.InEpsilon(t, 250*l.Beam(30, 200).Transmittance, h.Beam, 1e-12)
	require.InEpsilon(t, 120*l.Diffuse(), h.Diffuse, 1e-12)
	require.InEpsilon(t, h.Diffuse/(h.Beam+h.Diffuse), h.DiffuseShare, 1e-12)
	night, err := l.Light(Sunlight{BeamNormal: 500, Elevation: -3, Azimuth: 10})
	require.NoError(t, err)
	require.Zero(t, night.Beam+night.Sun.Lit+night.DiffuseShare)
	_, err = l.Light(Sunlight{BeamNormal: -1})
	requireFields(t, err, "BeamNormal")
	for _, at := range [][2]float64{{91, 0}, {0, 400}, {math.NaN(), 0}} {
		b := l.Beam(at[0], at[1])
		require.True(t, math.IsNaN(b.Lit) && math.IsNaN(b.Transmittance) && math.IsNaN(b.Facets[0]))
	}
}

func TestAllFaultsOfABed(t *testing.T) {
	f := DefaultForm()
	_, g := glazed(t, f, nothing)
	_, err := NewBedLight(g, BedPlace{Left: -1, Near: 2000, Width: 0, Length: math.NaN(), Height: 20})
	requireFields(t, err, "Left", "Near", "Width", "Length", "Height")
	_, err = NewBedLight(g, BedPlace{Left: 3, Near: 8, Width: 4, Length: 5})
	requireFields(t, err, "Left + Width", "Near + Length")
	_, err = NewBedLight(g, BedPlace{Width: 6, Length: 12, Height: 2})
	require.ErrorContains(t, err, "Height is 2, allowed 0 to 1.8 m")
	f.Bays = 2
	_, g = glazed(t, f, nothing)
	_, err = NewBedLight(g, wholeFloor(f))
	require.ErrorContains(t, err, "Form.Bays is 2, allowed only 1 bays")
	_, err = NewBedLight(Glazing{}, wholeFloor(f))
	require.ErrorContains(t, err, "Form.Bays is 0")
}
