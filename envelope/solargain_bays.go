package envelope

import "math"

// bayShade is what the bays of a house take of the sun's beam from each other.
type bayShade struct {
	bays    int
	right   float64 // degree, azimuth across the ridges
	pitch   float64 // m, from bay to bay
	profile []planar
	edges   []edge // of each facet in a bay's section above its eaves; without length where nothing shades
	gutter  []bool // which of them lie between bays
}

// newBayShade returns the shade of the bays of the shape's form, nothing for
// one bay or for facets that are not the form's.
func newBayShade(s *Shape) bayShade {
	f := &s.Form
	if f.Bays < 2 || f.check() != nil {
		return bayShade{}
	}
	b := bayShade{bays: f.Bays, right: f.Azimuth + 90, pitch: f.Span + f.GutterWidth,
		edges: make([]edge, len(s.Facets)), gutter: make([]bool, len(s.Facets))}
	roof := f.roofEdges()
	for _, l := range roof {
		b.profile = append(b.profile, l.edge.a, l.edge.b)
	}
	for i, p := range f.partsOf(s.Facets) {
		if b.gutter[i] = p.kind == Gutter; b.gutter[i] {
			b.edges[i] = edge{planar{f.Span, 0}, planar{b.pitch, 0}}
		}
		for _, l := range roof {
			if l.part == p {
				b.edges[i] = l.edge
			}
		}
	}
	return b
}

// alongRidges is the part of the sun's direction across the ridges below which it
// shines along them: in the section its rays are then all but upright, so that no
// bay shades another.
const alongRidges = 1e-9

// lit returns the share of facet i that other bays leave in the sun.
func (b *bayShade) lit(i int, s *Sunlight) float64 {
	if b.bays < 2 || b.edges[i] == (edge{}) {
		return 1
	}
	se, ce := math.Sincos(s.Elevation * degree)
	across := ce * math.Cos((s.Azimuth-b.right)*degree)
	if !(se > 0) || math.Abs(across) < alongRidges {
		return 1
	}
	// Along a ray to the sun z - x slope does not change: what lies lower than
	// the highest ray over the next bay towards the sun is in its shade.
	slope := se / across
	next := math.Copysign(b.pitch, across)
	if b.gutter[i] && across < 0 {
		next = 0
	}
	edge := math.Inf(-1)
	for _, v := range b.profile {
		edge = math.Max(edge, v.z-(v.x+next)*slope)
	}
	p, q := b.edges[i].a, b.edges[i].b
	low, high := p.z-p.x*slope, q.z-q.x*slope
	if low > high {
		low, high = high, low
	}
	share := 0.0
	switch {
	case edge <= low:
		share = 1
	case edge < high:
		share = (high - edge) / (high - low)
	}
	if b.gutter[i] {
		return share
	}
	return (1 + float64(b.bays-1)*share) / float64(b.bays) // the first has none before it
}
