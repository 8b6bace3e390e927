package envelope

import (
	"math"

	"cloche.example/internal/domain"
)

// FacetKind says which part of a house a facet is.
type FacetKind uint8

// The kinds of facet. Floor and BuriedWall lie against the ground, the others
// against the air.
const (
	Roof       FacetKind = iota // slope of a gable or lean-to, strip of an arch
	SideWall                    // along the ridge, from the dwarf wall or grade to the eave
	EndWall                     // across the ridge, with the gable end
	BackWall                    // the high wall of a lean-to
	DwarfWall                   // opaque upstand between grade and the cover
	Gutter                      // between two bays
	BuriedWall                  // below grade
	Floor                       // against the ground
	facetKinds
)

var facetNames = []string{"roof", "side wall", "end wall", "back wall", "dwarf wall", "gutter", "buried wall", "floor"}

// InGround reports whether a facet of this kind lies against the ground.
func (k FacetKind) InGround() bool { return k == BuriedWall || k == Floor }

// Facet is a plane part of the surface of a house, or several of one kind,
// tilt and azimuth taken together.
type Facet struct {
	Kind    FacetKind // part of the house
	Name    string    // kind and compass direction, for reports
	Area    float64   // m², more than 0, at most 1e6, exact
	Tilt    float64   // degree, 0 to 180, of the outer face: 0 upward, 90 upright, 180 downward
	Azimuth float64   // degree, 0 to 360, direction of the outer face clockwise from north; 0 for a level facet
	Height  float64   // m, 0.01 to 100, in the ground to 1000, length along the slope; of an end wall its mean height, of an arch the whole side
	Party   bool      // adjoins a heated building: no loss and no cover
}

// normal returns the area-weighted outward normal: east, north, up, m².
func (f *Facet) normal() (e, n, u float64) {
	s := f.Area * math.Sin(f.Tilt*degree)
	return s * math.Sin(f.Azimuth*degree), s * math.Cos(f.Azimuth*degree), f.Area * math.Cos(f.Tilt*degree)
}

// Incidence returns the angle in degree between the sun's rays and the
// facet's normal, for the sun's elevation above the horizon and its azimuth
// clockwise from north, both in degree: [DufBec13] eq. 1.6.3 in other words.
// Beyond 90 the sun stands behind the facet. NaN for an elevation outside -90
// to 90 or an infinite azimuth.
func (f Facet) Incidence(elevation, azimuth float64) float64 {
	c := f.cosIncidence(elevation, azimuth)
	return math.Acos(math.Max(-1, math.Min(1, c))) / degree
}

func (f *Facet) cosIncidence(elevation, azimuth float64) float64 {
	if !sunElevationRange.Contains(elevation) || math.IsInf(azimuth, 0) {
		return nan
	}
	se, ce := math.Sincos(elevation * degree)
	st, ct := math.Sincos(f.Tilt * degree)
	return ct*se + st*ce*math.Cos((azimuth-f.Azimuth)*degree)
}

// sunElevationRange is the accepted elevation of the sun in degree; below the
// horizon there is no beam.
var sunElevationRange = domain.Range{Min: -90, Max: 90, Unit: "degree", Source: "definition"}

// compass names the nearest of eight directions of an azimuth in degree.
func compass(azimuth float64) string {
	names := [8]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}
	return names[int(math.Round(wrap(azimuth)/45))%8]
}

// wrap brings an azimuth in degree into 0 to below 360.
func wrap(azimuth float64) float64 {
	a := math.Mod(azimuth, 360)
	if a < 0 {
		a += 360
	}
	if a >= 360 { // a tiny negative angle rounds up
		a = 0
	}
	return a
}
