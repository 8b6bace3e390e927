package envelope

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// BedPlace is a level rectangle inside a house of one bay, along its walls.
type BedPlace struct {
	Left   float64 // m, 0 to 60; from the left wall to the bed
	Near   float64 // m, 0 to 1000; from the near end wall to the bed
	Width  float64 // m, 0.01 to 60; across the house
	Length float64 // m, 0.01 to 1000; along the house
	Height float64 // m, 0 to 15; above the floor
}

// Ranges of a bed.
var (
	bedLeftRange   = domain.Range{Min: 0, Max: 60, Unit: "m"}
	bedNearRange   = domain.Range{Min: 0, Max: 1000, Unit: "m"}
	bedWidthRange  = domain.Range{Min: 0.01, Max: 60, Unit: "m"}
	bedLengthRange = domain.Range{Min: 0.01, Max: 1000, Unit: "m"}
	bedHeightRange = domain.Range{Min: 0, Max: 15, Unit: "m"}
)

func (b BedPlace) check() error {
	return errors.Join(bedLeftRange.Check("Left", b.Left), bedNearRange.Check("Near", b.Near), bedWidthRange.Check("Width", b.Width),
		bedLengthRange.Check("Length", b.Length), bedHeightRange.Check("Height", b.Height))
}

// BedLight is the daylight of a bed: where the sun's beam through each facet of
// the cover falls, and how much of the sky's light comes down. It follows
// straight rays through clear covers, each ray through one facet. What walls,
// floor and cover throw back inside, what a scattering cover spreads, and what
// stands about or hangs in the house are left out, bars and gutters but for the
// factor of the frame. A wall shared with an annex counts as free. It is made by
// NewBedLight and may be used by several goroutines at once.
type BedLight struct {
	glazing Glazing
	faces   []face
	bed     solid
	area    float64 // m²
	diffuse float64
}

// face is a flat part of the inside of a house.
type face struct {
	facet   int // in the shape
	outline solid
}

// NewBedLight returns the daylight of the bed in the glazed house, which is one
// of NewShape with one bay: several bays shade each other. The error joins a
// *RangeError for each fault.
func NewBedLight(g Glazing, b BedPlace) (BedLight, error) {
	f := g.form
	one := domain.Range{Min: 1, Max: 1, Unit: "bays", Source: "a shape made by NewShape with one bay"}
	if err := errors.Join(one.Check("Form.Bays", float64(f.Bays)), b.check()); err != nil {
		return BedLight{}, err
	}
	body := f.body()
	z := b.Height - f.Depth
	if err := errors.Join(
		bedWithin(b.Near+b.Length, f.Length).Check("Near + Length", b.Near+b.Length),
		bedWithin(b.Left+b.Width, body.width).Check("Left + Width", b.Left+b.Width),
	); err != nil {
		return BedLight{}, err
	}
	for _, x := range [2]float64{b.Left, b.Left + b.Width} {
		if !body.holds(planar{x, z}) {
			return BedLight{}, &domain.RangeError{Field: "Height", Value: b.Height, Min: 0, Max: body.clearAt(x) + f.Depth, Unit: "m", Source: "the roof over the bed's edge"}
		}
	}
	x0, x1, y0, y1 := b.Left, b.Left+b.Width, b.Near, b.Near+b.Length
	l := BedLight{glazing: g, area: b.Width * b.Length, faces: body.faces(g, f.partsOf(g.facets)),
		bed: solid{{x0, y0, z}, {x1, y0, z}, {x1, y1, z}, {x0, y1, z}}}
	l.diffuse = l.sky()
	return l, nil
}

// bedWithin is the range of the far side of a bed in a house of the size room in
// m; a bed that fills the house may miss it by rounding.
func bedWithin(far, room float64) domain.Range {
	return domain.Range{Max: math.Max(room, math.Min(far, room*(1+1e-9))), Unit: "m", Source: "within the house"}
}

// Diffuse returns the fraction of the light of an evenly bright sky on open level
// ground that falls on the bed, in the mean over it.
func (l BedLight) Diffuse() float64 { return l.diffuse }

// sky is the mean of the beam's transmittance over the hemisphere, weighted with
// the sine of the elevation.
func (l BedLight) sky() float64 {
	const panels, around = 3, 48
	sum := 0.0
	shares := make([]float64, len(l.glazing.facets))
	for p := range panels {
		for i, x := range gaussNodes {
			u := (float64(p) + x) / panels // the square of the sine of the elevation
			elevation := math.Asin(math.Sqrt(u)) / degree
			for a := range around {
				azimuth := (float64(a) + 0.5) * 360 / around
				l.share(shares, elevation, azimuth)
				sum += gaussWeights[i] / panels / around * l.passed(shares, elevation, azimuth)
			}
		}
	}
	return sum
}

// BedBeam is the sun's beam on a bed.
type BedBeam struct {
	Facets        []float64 // fraction of the bed that lies in the beam through each facet, in the order of the shape
	Lit           float64   // fraction of the bed in the sun, through whichever facet
	Transmittance float64   // fraction, beam on the bed over beam on level ground outside, mean over the bed
}

// Beam returns where the sun's beam through each facet falls, for the sun's
// elevation above the horizon, degree, -90 to 90, and its azimuth clockwise from
// north, degree, -180 to 360. All is 0 while the sun is down, NaN outside these.
func (l BedLight) Beam(elevation, azimuth float64) BedBeam {
	b := BedBeam{Facets: make([]float64, len(l.glazing.facets))}
	if !sunElevationRange.Contains(elevation) || !sunAzimuthRange.Contains(azimuth) {
		b.Lit, b.Transmittance = nan, nan
		for i := range b.Facets {
			b.Facets[i] = nan
		}
		return b
	}
	l.share(b.Facets, elevation, azimuth)
	for i := range b.Facets {
		b.Lit += b.Facets[i]
	}
	b.Transmittance = l.passed(b.Facets, elevation, azimuth)
	return b
}

// share fills in the fraction of the bed that lies in the beam of each facet
// that lets light through.
func (l *BedLight) share(dst []float64, elevation, azimuth float64) {
	clear(dst)
	if elevation <= 0 {
		return
	}
	v := l.view(elevation, azimuth)
	for i := range l.faces {
		f := &l.faces[i]
		if l.glazing.lights[f.facet].Sheets.n == 0 || l.glazing.facets[f.facet].cosIncidence(elevation, azimuth) <= 0 {
			continue
		}
		above := f.outline.above(l.bed[0][2])
		dst[f.facet] += v.common(above, l.bed) / (l.area * math.Sin(elevation*degree))
	}
}

// passed is what the facets let through of the beam on the bed.
func (l *BedLight) passed(shares []float64, elevation, azimuth float64) float64 {
	sum := 0.0
	for i, s := range shares {
		if s > 0 {
			angle := math.Min(90, l.glazing.facets[i].Incidence(elevation, azimuth))
			sum += s * l.glazing.factor[i] * l.glazing.lights[i].Sheets.At(angle).Transmittance
		}
	}
	return sum
}

// BedHour is the daylight of one hour on a bed.
type BedHour struct {
	Sun          BedBeam // where the beam falls
	Beam         float64 // W/m², on the bed, in the mean over it
	Diffuse      float64 // W/m², from the sky on the bed
	DiffuseShare float64 // fraction of the two that is diffuse; 0 in the dark
}

// Light returns the daylight on the bed in the sunlight s, under a sky of even
// radiance. The ground's light goes upwards inside and is left out. The error
// joins a *RangeError for each field out of range.
func (l BedLight) Light(s Sunlight) (BedHour, error) {
	if err := s.check(); err != nil {
		return BedHour{}, err
	}
	h := BedHour{Sun: l.Beam(s.Elevation, s.Azimuth), Diffuse: l.diffuse * s.DiffuseHorizontal}
	if s.Elevation > 0 {
		h.Beam = s.BeamNormal * math.Sin(s.Elevation*degree) * h.Sun.Transmittance
	}
	if h.Beam+h.Diffuse > 0 {
		h.DiffuseShare = h.Diffuse / (h.Beam + h.Diffuse)
	}
	return h, nil
}
