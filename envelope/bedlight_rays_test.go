package envelope_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/internal/check"
)

// An evenly bright sky through one clear wall is that wall's view from the bed:
// in a cube 0.2000 of the floor's for each wall, as textbooks print for two faces
// with a common edge, and by the formula for two rectangles at a right angle in
// other houses.
func TestSkyThroughClearWallsIsTheirViewFactor(t *testing.T) {
	views := func(span, length, eave float64) float64 { // two side walls from the floor
		h, w := eave/length, span/length
		a, b, c := h*h, w*w, h*h+w*w
		f := w*math.Atan(1/w) + h*math.Atan(1/h) - math.Sqrt(c)*math.Atan(1/math.Sqrt(c)) + 0.25*math.Log((1+b)*(1+a)/(1+c)*
			math.Pow(b*(1+c)/((1+b)*c), b)*math.Pow(a*(1+c)/((1+a)*c), a))
		return 2 * f / (math.Pi * w)
	}
	sky := func(in ...float64) float64 {
		f := DefaultForm()
		f.Span, f.Length, f.Eave = in[0], in[1], in[2]
		f.Ridge = f.Eave + 1
		_, g := glazed(t, f, nothing, SideWall)
		return bedLight(t, g, wholeFloor(f)).Diffuse()
	}
	const why = "directions of the sky are summed, not integrated"
	check.Run(t, []check.Row{
		{Where: "view factors, textbook value from memory/cube, two walls", In: []float64{4, 4, 4}, Printed: "0.4000", Tol: 2e-3, Why: why},
	}, sky)
	for _, r := range [][3]float64{{6, 12, 2.4}, {8, 30, 3}, {3, 3, 2}} {
		require.InDelta(t, views(r[0], r[1], r[2]), sky(r[:]...), 2e-3, "%v", r)
	}
}

// Rays from points of the bed to the sun, each followed to the plane that it
// leaves a gabled house by, against the figures of all sun positions: every facet
// by itself and what the sheets let through at its angle.
func TestBeamOnABedFollowsRays(t *testing.T) {
	f := DefaultForm()
	f.Azimuth = 0
	pane := Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004}
	s, g := glazed(t, f, pane)
	layers, err := NewLightLayers(pane)
	require.NoError(t, err)
	bed := BedPlace{Left: 0.7, Near: 1.1, Width: 3.9, Length: f.Length - 4, Height: 0.8}
	l := bedLight(t, g, bed)
	rng := rand.New(rand.NewSource(3))
	rise := f.Ridge - f.Eave
	for range 40 {
		elevation, azimuth := 3+85*rng.Float64(), 360*rng.Float64()
		e, a := elevation*math.Pi/180, azimuth*math.Pi/180
		d := [3]float64{math.Sin(a) * math.Cos(e), math.Cos(a) * math.Cos(e), math.Sin(e)}
		lit := make([]float64, len(s.Facets))
		const n = 120
		for i := range n {
			for j := range n {
				p := [3]float64{bed.Left + bed.Width*(float64(i)+0.5)/n, bed.Near + bed.Length*(float64(j)+0.5)/n, bed.Height}
				lit[leaves(s, f, rise, p, d)] += 1.0 / (n * n)
			}
		}
		got := l.Beam(elevation, azimuth)
		through := 0.0
		for k, x := range s.Facets {
			require.InDelta(t, lit[k], got.Facets[k], 0.02, "%v at %g, %g", x, elevation, azimuth)
			if lit[k] == 0 {
				continue
			}
			through += lit[k] * layers.At(x.Incidence(elevation, azimuth)).Transmittance
		}
		require.InDelta(t, through*DefaultLightFactors().Total(), got.Transmittance, 0.01, "%g, %g", elevation, azimuth)
	}
}

// leaves is the facet of the gabled house by which the ray from p along d leaves.
func leaves(s Shape, f Form, rise float64, p, d [3]float64) int {
	slope := rise / (f.Span / 2)
	far := math.Inf(1)
	var kind FacetKind
	var azimuth float64
	try := func(distance, falls float64, k FacetKind, to float64) { // falls: speed towards the plane
		if falls > 0 && distance/falls < far {
			far, kind, azimuth = distance/falls, k, to
		}
	}
	try(p[0], -d[0], SideWall, 270)
	try(f.Span-p[0], d[0], SideWall, 90)
	try(p[1], -d[1], EndWall, 180)
	try(f.Length-p[1], d[1], EndWall, 0)
	try(f.Eave+slope*p[0]-p[2], d[2]-slope*d[0], Roof, 270)
	try(f.Eave+slope*(f.Span-p[0])-p[2], d[2]+slope*d[0], Roof, 90)
	for i, x := range s.Facets {
		if x.Kind == kind && math.Mod(x.Azimuth, 360) == azimuth {
			return i
		}
	}
	return -1
}

// A bed along the wall that the sun stands behind sees it through one slope alone, here
// at 60 degree to the pane: what lands is what a textbook's pane lets through there, 32
// 1/m by 2.3 mm, in clean and unframed glazing.
func TestBeamThroughOneSlopeIsThePane(t *testing.T) {
	f := DefaultForm()
	f.Azimuth, f.Span, f.Length, f.Eave, f.Ridge = 90, 16, 60, 2, 2+8*math.Tan(20*math.Pi/180)
	_, g := glazed(t, f, Sheet{Index: 1.526, Extinction: 32, Thickness: 0.0023}, Roof)
	l := bedLight(t, g, BedPlace{Left: 0, Near: 20, Width: 1, Length: 20})
	// The left slope looks north, its normal 110 degree round from the south.
	check.Run(t, []check.Row{{Where: "DufBec13 from memory/ex 5.3.1 over a bed", In: []float64{50, 180}, Printed: "0.768"}}, func(in ...float64) float64 {
		return l.Beam(in[0], in[1]).Transmittance / DefaultLightFactors().Total()
	})
}
