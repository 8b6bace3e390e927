package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Across the ridges the beam on all facets is what the outline of the house
// takes from the sun: its length times the breadth of its shadow. Without shade
// 20 bays would catch 1.8 times that at 8 degree.
func TestBaysShadeEachOther(t *testing.T) {
	pane, err := NewLightLayers(Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004})
	require.NoError(t, err)
	for _, section := range []Section{Gable, UnevenGable, RoundArch, PointedArch} {
		for _, bays := range []int{2, 20} {
			for _, gutter := range []float64{0, 0.4} {
				f := DefaultForm()
				f.Section, f.Bays, f.GutterWidth, f.RidgeOffset, f.RidgeTilt, f.ArchStrips, f.Azimuth = section, bays, gutter, 2, 12, 20, 30
				s, err := NewShape(f)
				require.NoError(t, err)
				lights := make([]FacetLight, len(s.Facets))
				for i := range lights {
					lights[i] = FacetLight{Sheets: pane, Factors: LightFactors{Dirt: 1, Condensation: 1, Frame: 1}}
				}
				g, err := NewGlazing(s, lights, 0.8)
				require.NoError(t, err)
				for _, elevation := range []float64{2, 8, 15, 25, 40, 80} {
					for _, from := range []float64{120, 300} { // right and left
						sun := Sunlight{BeamNormal: 500, Elevation: elevation, Azimuth: from}
						r, err := g.Gain(sun)
						require.NoError(t, err)
						// Far end of the shadow on the ground, seen from the near wall.
						tan := math.Tan(elevation * math.Pi / 180)
						width := float64(bays)*f.Span + float64(bays-1)*gutter
						far := width + f.Eave/tan
						roof := f.roofEdges()
						for _, l := range roof {
							for _, p := range []planar{l.edge.a, l.edge.b} {
								x := p.x + float64(bays-1)*(f.Span+gutter)
								if from == 120 { // the sun on the right: the far bay is the left one
									x = width - p.x
								}
								far = math.Max(far, x+(f.Eave+p.z)/tan)
							}
						}
						outline := 500 * f.Length * far * math.Sin(elevation*math.Pi/180)
						tol := 1e-9
						if section == RoundArch || section == PointedArch {
							tol = 0.02 // strips have the area of the arc and the tilt of its middle
						}
						require.InEpsilon(t, outline, r.Incident, tol, "%v, %d bays, gutter %g, sun at %g from %g", section, bays, gutter, elevation, from)
					}
				}
				// Along the ridges no bay stands before another.
				along := Sunlight{BeamNormal: 500, Elevation: 20, Azimuth: 30}
				r, err := g.Gain(along)
				require.NoError(t, err)
				for i, x := range r.Facets {
					require.Equal(t, s.Facets[i].Sun(along).Beam, x.Plane.Beam)
				}
			}
		}
	}
}
