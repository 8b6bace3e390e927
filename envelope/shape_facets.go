package envelope

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"cloche.example/internal/domain"
)

// closureLimitOfAreas is the largest vector sum of all facets, as a fraction
// of their area, that counts as closed: arches drawn as strips leave up to 2 %.
const closureLimitOfAreas = 0.02

// closure returns the length of the vector sum of all facets over the sum of
// their areas, a fraction. A closed surface has zero. Strips of an arch have
// the area of the arc and the tilt of its middle, which leaves a little, and a
// wall shared with an annex is open.
func (s *Shape) closure() float64 {
	var e, n, u, sum float64
	for i := range s.Facets {
		de, dn, du := s.Facets[i].normal()
		e, n, u, sum = e+de, n+dn, u+du, sum+s.Facets[i].Area
	}
	return math.Sqrt(e*e+n*n+u*u) / sum
}

// Surroundings are the measures of a house of any shape that its facets do not
// give.
type Surroundings struct {
	Volume      float64 // m³, 0.1 to 1e7, of air
	Perimeter   float64 // m, 0.5 to 1e5, of the floor, exposed to the outside
	Depth       float64 // m, 0 to 5, floor below grade
	RidgeHeight float64 // m, 0.3 to 30, above grade
	EaveHeight  float64 // m, 0 to 15, above grade; no higher than the ridge
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
	buried := 0.0
	for i := range s.Facets {
		f := &s.Facets[i]
		faults = append(faults, f.check(fmt.Sprintf("facets[%d]", i)))
		switch f.Kind {
		case Floor:
			s.FloorArea += f.Area
		case BuriedWall:
			buried += f.Area
		}
	}
	check(facetAreaRange, "sum of the floor's Area", s.FloorArea)
	check(shapeVolumeRange, "Volume", m.Volume)
	check(groundPerimeterRange, "Perimeter", m.Perimeter)
	check(depthRange, "Depth", m.Depth)
	check(ridgeRange, "RidgeHeight", m.RidgeHeight)
	check(domain.Range{Max: math.Min(eaveRange.Max, math.Max(0, m.RidgeHeight)), Unit: "m", Source: "no higher than the ridge"}, "EaveHeight", m.EaveHeight)
	if err := errors.Join(faults...); err != nil {
		return Shape{}, err
	}
	faults = nil
	most := m.Perimeter * m.Depth * (1 + closureLimitOfAreas)
	check(domain.Range{Max: most, Unit: "m²", Source: "Perimeter times Depth"}, "sum of the buried walls' Area", buried)
	check(domain.Range{Max: closureLimitOfAreas, Unit: "fraction", Source: "the facets must enclose the house"}, "closure of the areas", s.closure())
	if len(faults) > 0 {
		return Shape{}, errors.Join(faults...)
	}
	s.BelowGrade = s.FloorArea * m.Depth
	s.finish()
	return s, nil
}

// Ranges of a shape's measures.
var (
	facetAreaRange   = domain.Range{Min: domain.MoreThan(0), Max: 1e6, Unit: "m²", Source: "chosen"}
	shapeVolumeRange = domain.Range{Min: 0.1, Max: 1e7, Unit: "m³", Source: "chosen"}
)

// check returns nil, or the join of a *RangeError for each fault of the facet.
func (f *Facet) check(at string) error {
	height := facetHeightRange
	if f.Kind.InGround() {
		height = domain.Range{Max: 1e3, Unit: "m", Source: "chosen"}
	}
	return domain.Within(at, errors.Join(
		facetKindRange.Check("Kind", float64(f.Kind)),
		facetAreaRange.Check("Area", f.Area),
		gapTiltRange.Check("Tilt", f.Tilt),
		azimuthRange.Check("Azimuth", f.Azimuth),
		height.Check("Height", f.Height),
	))
}

// check returns nil, or the join of a *RangeError for each measure that no
// house has: a Shape has exported fields, and anyone may have written one.
func (s *Shape) check() error {
	if err := (domain.Range{Min: 1, Max: 1e5, Unit: "facets", Source: "made by NewShape or NewFacetShape"}).Check("Facets", float64(len(s.Facets))); err != nil {
		return err
	}
	faults := []error{
		shapeVolumeRange.Check("Volume", s.Volume),
		groundPerimeterRange.Check("Perimeter", s.Perimeter),
		depthRange.Check("Depth", s.Depth),
		ridgeRange.Check("RidgeHeight", s.RidgeHeight),
		eaveRange.Check("EaveHeight", s.EaveHeight),
	}
	floor := 0.0
	for i := range s.Facets {
		f := &s.Facets[i]
		if f.Kind == Floor {
			floor += f.Area
		}
		faults = append(faults, f.check(fmt.Sprintf("Facets[%d]", i)))
	}
	faults = append(faults, facetAreaRange.Check("FloorArea", s.FloorArea))
	if facetAreaRange.Contains(floor) && facetAreaRange.Contains(s.FloorArea) {
		faults = append(faults, domain.Range{Min: floor * (1 - 1e-9), Max: floor * (1 + 1e-9), Unit: "m²", Source: "sum of the floor's facets"}.Check("FloorArea", s.FloorArea))
	}
	for i := range s.Annexes {
		a := &s.Annexes[i]
		at := fmt.Sprintf("Annexes[%d]", i)
		faults = append(faults, domain.Within(at, errors.Join(
			shapeVolumeRange.Check("Volume", a.Volume), facetAreaRange.Check("FloorArea", a.FloorArea),
			groundPerimeterRange.Check("Perimeter", a.Perimeter), facetAreaRange.Check("Partition", a.Partition),
		)))
		for j := range a.Facets {
			faults = append(faults, a.Facets[j].check(fmt.Sprintf("%s.Facets[%d]", at, j)))
		}
	}
	return errors.Join(faults...)
}

// clone returns a copy that shares no slice with s.
func (s *Shape) clone() Shape {
	c := *s
	c.Facets, c.Annexes, c.Form.Annexes = slices.Clone(s.Facets), slices.Clone(s.Annexes), slices.Clone(s.Form.Annexes)
	for i := range c.Annexes {
		c.Annexes[i].Facets = slices.Clone(s.Annexes[i].Facets)
	}
	return c
}
