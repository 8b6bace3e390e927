package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// closureLimitOfAreas is the largest vector sum of all facets, as a fraction
// of their area, that counts as closed: arches drawn as strips leave up to 2 %.
const closureLimitOfAreas = 0.02

// Closure returns the length of the vector sum of all facets over the sum of
// their areas, a fraction. A closed surface has zero. Strips of an arch have
// the area of the arc and the tilt of its middle, which leaves a little, and a
// wall shared with an annex is open.
func (s *Shape) Closure() float64 {
	var e, n, u, sum float64
	for i := range s.Facets {
		de, dn, du := s.Facets[i].normal()
		e, n, u, sum = e+de, n+dn, u+du, sum+s.Facets[i].Area
	}
	return math.Sqrt(e*e+n*n+u*u) / sum
}

// Surroundings are the measures of a house of any shape that its facets do not
// tell.
type Surroundings struct {
	Volume      float64 // m³, of air
	Perimeter   float64 // m, of the floor, exposed to the outside
	Depth       float64 // m, floor below grade
	RidgeHeight float64 // m above grade
	EaveHeight  float64 // m above grade
}

// NewFacetShape returns the shape made of the caller's own facets, which must
// hold a Floor and close: the error joins a *RangeError for each fault, with
// Field as in "facets[2].Area", and one for the closure when the facets do not
// close within 2 %.
func NewFacetShape(facets []Facet, m Surroundings) (Shape, error) {
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	s := Shape{Facets: append([]Facet(nil), facets...), Volume: m.Volume, Perimeter: m.Perimeter, Depth: m.Depth,
		RidgeHeight: m.RidgeHeight, EaveHeight: m.EaveHeight}
	areas := domain.Range{Min: 1e-6, Max: 1e6, Unit: "m²", Source: "chosen"}
	buried := 0.0
	for i := range s.Facets {
		f := &s.Facets[i]
		at := func(field string) string { return fmt.Sprintf("facets[%d].%s", i, field) }
		check(domain.Range{Max: float64(facetKinds - 1), Unit: "number of a kind", Source: "constants of FacetKind"}, at("Kind"), float64(f.Kind))
		check(areas, at("Area"), f.Area)
		check(gapTiltRange, at("Tilt"), f.Tilt)
		check(azimuthRange, at("Azimuth"), f.Azimuth)
		check(facetHeightRange, at("Height"), f.Height)
		switch f.Kind {
		case Floor:
			s.FloorArea += f.Area
		case BuriedWall:
			buried += f.Area
		}
	}
	check(areas, "sum of the floor's Area", s.FloorArea)
	check(domain.Range{Min: 0.1, Max: 1e6, Unit: "m³", Source: "chosen"}, "Volume", m.Volume)
	check(domain.Range{Min: 1, Max: 1e5, Unit: "m", Source: "chosen"}, "Perimeter", m.Perimeter)
	check(depthRange, "Depth", m.Depth)
	check(ridgeRange, "RidgeHeight", m.RidgeHeight)
	check(domain.Range{Max: math.Min(eaveRange.Max, math.Max(0, m.RidgeHeight)), Unit: "m", Source: "no higher than the ridge"}, "EaveHeight", m.EaveHeight)
	if len(faults) > 0 {
		return Shape{}, errors.Join(faults...)
	}
	most := m.Perimeter * m.Depth * (1 + closureLimitOfAreas)
	check(domain.Range{Max: most, Unit: "m²", Source: "Perimeter times Depth"}, "sum of the buried walls' Area", buried)
	check(domain.Range{Max: closureLimitOfAreas, Unit: "fraction", Source: "the facets must enclose the house"}, "closure of the areas", s.Closure())
	if len(faults) > 0 {
		return Shape{}, errors.Join(faults...)
	}
	s.BelowGrade = s.FloorArea * m.Depth
	s.finish()
	return s, nil
}

// VentHeights returns the mean heights in m above grade of a side vent that
// hangs below the eave, opening over the height side in m, and of a ridge vent
// that lies below the ridge, ridge in m along the slope; their difference
// drives the stack. NaN when an opening is negative, or larger than the wall
// above the dwarf wall or than the slope.
func (s *Shape) VentHeights(side, ridge float64) (sideHeight, ridgeHeight float64) {
	sideHeight, ridgeHeight = nan, nan
	if side >= 0 && side <= s.EaveHeight-s.Form.DwarfWall {
		sideHeight = s.EaveHeight - side/2
	}
	tilt, length := nan, nan // flattest roof facet, at the ridge
	for i := range s.Facets {
		if f := &s.Facets[i]; f.Kind == Roof && !(f.Tilt >= tilt) {
			tilt, length = f.Tilt, f.Height
		}
	}
	if ridge >= 0 && ridge <= length {
		ridgeHeight = s.RidgeHeight - ridge/2*math.Sin(tilt*degree)
	}
	return sideHeight, ridgeHeight
}

// CoversByKind returns one cover for each facet of the shape, for NewHouse:
// that of its kind. A kind not in the map gets no cover, which NewHouse
// refuses for facets against the air.
func (s *Shape) CoversByKind(covers map[FacetKind]Cover) []Cover {
	list := make([]Cover, len(s.Facets))
	for i := range s.Facets {
		list[i] = covers[s.Facets[i].Kind]
	}
	return list
}
