package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Section is the cross-section of a house.
type Section uint8

// The cross-sections.
const (
	Gable       Section = iota // two equal slopes
	UnevenGable                // two slopes, the ridge off the middle
	RoundArch                  // one circular arc from eave to eave
	PointedArch                // two circular arcs that meet in a ridge
	LeanTo                     // one slope against a high back wall
	sections
)

var sectionNames = []string{"gable", "uneven gable", "round arch", "pointed arch", "lean-to"}

// Form is what a house's shape is made from. DefaultForm gives a complete one
// to change. The ridge runs in the direction Azimuth; its right side faces
// Azimuth + 90 degree. A lean-to slopes down to the right, from the back wall
// on its left.
type Form struct {
	Section      Section // cross-section of a bay
	Span         float64 // m, 0.5 to 60, eave to eave of one bay, or eave to back wall
	Length       float64 // m, 0.5 to 1000, along the ridge
	Eave         float64 // m, 0 to 15, above grade
	Ridge        float64 // m, 0.3 to 30, above grade; of a lean-to the top of the back wall
	Depth        float64 // m, 0 to 5, floor below grade
	DwarfWall    float64 // m, 0 to 15, above grade, height of an opaque upstand all round, below the eave
	Azimuth      float64 // degree, 0 to 360, direction of the ridge clockwise from north
	RidgeOffset  float64 // m, from the left eave to the ridge, a fiftieth of Span from either; read with UnevenGable alone
	RidgeTilt    float64 // degree, at least 0, slope of the arcs at the ridge, less than that of a straight line to the eave; read with PointedArch alone
	ArchStrips   int     // facets, 1 to 90, in each half of an arch; read with arches alone
	Bays         int     // bays, 1 to 200, side by side; only 1 of a lean-to
	GutterWidth  float64 // m, 0 to 1, of each gutter between two bays
	BackWallOpen bool    // the back wall of a lean-to stands free; false when it is the wall of a heated building
	Annexes      []Annex // lobby, plant room
}

// DefaultForm returns one gable bay of 6 by 12 m at grade, eave 1.8 m, ridge
// 3.2 m, running from north to south.
func DefaultForm() Form {
	return Form{Span: 6, Length: 12, Eave: 1.8, Ridge: 3.2, ArchStrips: 6, Bays: 1}
}

// Ranges of a form. The limits keep slips of unit out; those that depend on
// other fields are built where they are checked.
var (
	spanRange       = domain.Range{Min: 0.5, Max: 60, Unit: "m", Source: "chosen"}
	lengthRange     = domain.Range{Min: 0.5, Max: 1000, Unit: "m", Source: "chosen"}
	eaveRange       = domain.Range{Min: 0, Max: 15, Unit: "m", Source: "chosen"}
	ridgeRange      = domain.Range{Min: 0.3, Max: 30, Unit: "m", Source: "chosen"}
	depthRange      = domain.Range{Min: 0, Max: 5, Unit: "m", Source: "chosen"}
	azimuthRange    = domain.Range{Min: 0, Max: 360, Unit: "degree", Source: "definition"}
	archStripsRange = domain.Range{Min: 1, Max: 90, Unit: "facets", Source: "chosen"}
	baysRange       = domain.Range{Min: 1, Max: 200, Unit: "bays", Source: "chosen"}
	gutterRange     = domain.Range{Min: 0, Max: 1, Unit: "m", Source: "chosen"}
	sectionRange    = domain.Range{Min: 0, Max: float64(sections - 1), Unit: "number", Source: "constants of Section"}
)

// Shape is a house's geometry, exact for the form it was made from. Heights
// are above grade, lengths those of the inside air.
type Shape struct {
	Form        Form         // what it was made from; the zero Form for NewFacetShape
	Facets      []Facet      // all surfaces of the house itself, annexes apart
	Volume      float64      // m³, 0.1 to 1e7, of air, the part below grade included
	BelowGrade  float64      // m³, part of Volume below grade
	FloorArea   float64      // m², more than 0, at most 1e6
	Perimeter   float64      // m, 0.5 to 1e5, of the floor, exposed to the outside
	Depth       float64      // m, 0 to 5, floor below grade
	RidgeHeight float64      // m, 0.3 to 30, above grade
	EaveHeight  float64      // m, 0 to 15, above grade
	CoverArea   float64      // m², of all facets against the outside air, dwarf walls and gutters included
	CoverRatio  float64      // ratio of CoverArea to FloorArea
	Annexes     []AnnexShape // volumes of their own beside the house
}

// NewShape returns the shape of the form. The error joins a *RangeError for
// each fault of the form, by field.
func NewShape(f Form) (Shape, error) {
	if err := f.check(); err != nil {
		return Shape{}, err
	}
	f.Annexes = append([]Annex(nil), f.Annexes...)
	bays := float64(f.Bays)
	width := bays*f.Span + (bays-1)*f.GutterWidth
	s := Shape{Form: f, Depth: f.Depth, RidgeHeight: f.Ridge, EaveHeight: f.Eave}
	left, right := f.sides()
	section := bays*(left.area+right.area+f.Span*f.Eave) + (bays-1)*f.GutterWidth*f.Eave
	s.FloorArea = width * f.Length
	s.BelowGrade = s.FloorArea * f.Depth
	s.Volume = section*f.Length + s.BelowGrade
	s.Perimeter = 2 * (width + f.Length)
	if f.Section == LeanTo && !f.BackWallOpen {
		s.Perimeter -= f.Length
	}

	toRight, toLeft := wrap(f.Azimuth+90), wrap(f.Azimuth+270)
	ahead, behind := wrap(f.Azimuth), wrap(f.Azimuth+180)
	s.slope(&left, f, bays, toLeft)
	s.slope(&right, f, bays, toRight)
	wall := f.Eave - f.DwarfWall
	if f.Section == LeanTo {
		s.add(BackWall, f.Length*(f.Ridge-f.DwarfWall), 90, toLeft, f.Ridge-f.DwarfWall)
	} else {
		s.add(SideWall, f.Length*wall, 90, toLeft, wall)
	}
	s.add(SideWall, f.Length*wall, 90, toRight, wall)
	end := section - width*f.DwarfWall
	s.add(EndWall, end, 90, ahead, end/width)
	s.add(EndWall, end, 90, behind, end/width)
	s.add(Gutter, (bays-1)*f.GutterWidth*f.Length, 0, 0, f.GutterWidth)
	around := [4]struct{ length, azimuth float64 }{{f.Length, toLeft}, {f.Length, toRight}, {width, ahead}, {width, behind}}
	for _, w := range around {
		s.add(DwarfWall, w.length*f.DwarfWall, 90, w.azimuth, f.DwarfWall)
	}
	for _, w := range around {
		s.add(BuriedWall, w.length*f.Depth, 90, w.azimuth, f.Depth)
	}
	s.add(Floor, s.FloorArea, 180, 0, f.Span)
	if f.Section == LeanTo && !f.BackWallOpen {
		for i := range s.Facets {
			w := &s.Facets[i]
			w.Party = w.Kind == BackWall || w.Kind == DwarfWall && w.Azimuth == toLeft
		}
	}
	for i := range f.Annexes {
		s.attach(&f.Annexes[i])
	}
	s.finish()
	return s, nil
}

// add appends a facet unless it has no area.
func (s *Shape) add(kind FacetKind, area, tilt, azimuth, height float64) {
	if area <= 0 {
		return
	}
	name := kind.String()
	if kind != Floor && kind != Gutter {
		name += ", " + compass(azimuth)
	}
	s.Facets = append(s.Facets, Facet{Kind: kind, Name: name, Area: area, Tilt: tilt, Azimuth: azimuth, Height: height})
}

// finish sums what the facets give.
func (s *Shape) finish() {
	s.CoverArea = 0
	for i := range s.Facets {
		if f := &s.Facets[i]; !f.Kind.InGround() && !f.Party {
			s.CoverArea += s.Facets[i].Area
		}
	}
	s.CoverRatio = s.CoverArea / s.FloorArea
}

// side is one half of a roof's cross-section above the level of the eaves: a
// straight slope or a circular arc of tilts from low at the eave to high at
// the ridge.
type side struct {
	length    float64 // m, along the slope
	area      float64 // m², of the cross-section below it and above the eaves
	low, high float64 // degree, tilt at the eave and at the ridge
	curved    bool
}

// arc is the side of rise and run in m whose tilt at the ridge is tilt in
// degree. Chord and tangents make the same angle at both ends of an arc.
func arc(rise, run, tilt float64) side {
	chord := math.Hypot(rise, run)
	gamma := math.Atan2(rise, run)
	delta := gamma - tilt*degree // half of the angle at the centre
	low := 2*gamma/degree - tilt
	radius := chord / (2 * math.Sin(delta))
	segment := radius * radius * (delta - math.Sin(delta)*math.Cos(delta))
	return side{length: 2 * radius * delta, area: rise*run/2 + segment, low: low, high: tilt, curved: true}
}

func straight(rise, run float64) side {
	t := math.Atan2(rise, run) / degree
	return side{length: math.Hypot(rise, run), area: rise * run / 2, low: t, high: t}
}

// sides returns the left and right half of one bay.
func (f *Form) sides() (left, right side) {
	rise, half := f.Ridge-f.Eave, f.Span/2
	switch f.Section {
	case UnevenGable:
		return straight(rise, f.RidgeOffset), straight(rise, f.Span-f.RidgeOffset)
	case RoundArch:
		a := arc(rise, half, 0)
		return a, a
	case PointedArch:
		a := arc(rise, half, f.RidgeTilt)
		return a, a
	case LeanTo:
		return side{}, straight(rise, f.Span)
	}
	a := straight(rise, half)
	return a, a
}

// slope adds the facets of one half of the roof of all bays.
func (s *Shape) slope(d *side, f Form, bays, azimuth float64) {
	if !d.curved {
		s.add(Roof, bays*d.length*f.Length, d.low, azimuth, d.length)
		return
	}
	n := f.ArchStrips
	step := (d.low - d.high) / float64(n)
	for i := range n {
		tilt := d.low - (float64(i)+0.5)*step
		s.add(Roof, bays*d.length*f.Length/float64(n), tilt, azimuth, d.length)
		s.Facets[len(s.Facets)-1].Name += fmt.Sprintf(", strip %d", i+1)
	}
}

// check returns the join of all faults of the form.
func (f *Form) check() error {
	var faults []error
	check := func(r domain.Range, field string, v float64) bool {
		err := r.Check(field, v)
		if err != nil {
			faults = append(faults, err)
		}
		return err == nil
	}
	check(sectionRange, "Section", float64(f.Section))
	span := check(spanRange, "Span", f.Span)
	length := check(lengthRange, "Length", f.Length)
	eave := check(eaveRange, "Eave", f.Eave)
	ridge := check(ridgeRange, "Ridge", f.Ridge)
	if span {
		check(domain.Range{Max: math.Min(depthRange.Max, f.Span), Unit: "m", Source: "no deeper than 5 m or the span"}, "Depth", f.Depth)
	} else {
		check(depthRange, "Depth", f.Depth)
	}
	check(azimuthRange, "Azimuth", f.Azimuth)
	check(baysRange, "Bays", float64(f.Bays))
	check(gutterRange, "GutterWidth", f.GutterWidth)
	if eave {
		check(domain.Range{Max: f.Eave, Unit: "m", Source: "no higher than the eave"}, "DwarfWall", f.DwarfWall)
	} else {
		check(eaveRange, "DwarfWall", f.DwarfWall)
	}
	if eave && ridge {
		top := domain.Range{Min: f.Eave + 0.05, Max: ridgeRange.Max, Unit: "m", Source: "above the eave"}
		if span && f.Section == RoundArch {
			top.Max, top.Source = f.Eave+f.Span/2*(1+slack), "above the eave by at most half the span, a half circle"
		}
		ridge = check(top, "Ridge", f.Ridge)
	}
	if f.Section == LeanTo && f.Bays > 1 {
		check(domain.Range{Min: 1, Max: 1, Unit: "bays", Source: "a lean-to has one"}, "Bays", float64(f.Bays))
	}
	if f.Section == UnevenGable && span {
		check(domain.Range{Min: 0.02 * f.Span, Max: 0.98 * f.Span, Unit: "m", Source: "within the span"}, "RidgeOffset", f.RidgeOffset)
	}
	if f.Section == PointedArch && span && eave && ridge {
		gamma := math.Atan2(f.Ridge-f.Eave, f.Span/2) / degree
		check(domain.Range{Min: math.Max(0, 2*gamma-90-1e-9), Max: gamma * (1 - 1e-4), Unit: "degree", Source: "less than the chord's tilt, and upright at most at the eave"}, "RidgeTilt", f.RidgeTilt)
	}
	if f.Section == RoundArch || f.Section == PointedArch {
		check(archStripsRange, "ArchStrips", float64(f.ArchStrips))
	}
	if span && length && eave && ridge {
		for i := range f.Annexes {
			faults = append(faults, f.Annexes[i].check(f, i)...)
		}
	}
	return errors.Join(faults...)
}
