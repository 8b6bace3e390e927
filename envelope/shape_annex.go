package envelope

import (
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Place is where an annex stands against the house.
type Place uint8

// The places of an annex.
const (
	AtFarEnd    Place = iota // the end wall in the direction of the ridge's azimuth
	AtNearEnd                // the other end wall
	AtRightSide              // the side wall on the right
	AtLeftSide               // the side wall on the left, of a lean-to the back wall
	places
)

// Annex is a room against a wall of the house, such as a lobby or a plant
// room, with a roof that falls away from the house. It is a volume of its own.
type Annex struct {
	Name  string  // for reports
	Place Place   // wall it stands at
	Width float64 // m, along that wall
	Reach float64 // m, 0.3 to 1000, away from it
	High  float64 // m above grade, roof at the house
	Low   float64 // m above grade, roof at the outer wall
	Depth float64 // m, floor below grade, no deeper than the house
}

// AnnexShape is the geometry of an annex.
type AnnexShape struct {
	Annex     Annex   // what it was made from
	Facets    []Facet // without the wall shared with the house
	Volume    float64 // m³, 0.1 to 1e7
	FloorArea float64 // m², more than 0, at most 1e6
	Perimeter float64 // m, 0.5 to 1e5, of its floor, exposed to the outside
	Partition float64 // m², more than 0, at most 1e6, wall shared with the house above grade
	Sunken    float64 // m², wall shared with the house below grade
}

var placeRange = domain.Range{Min: 0, Max: float64(places - 1), Unit: "number", Source: "constants of Place"}

// wall returns the width and the height above grade of the house's wall at
// the annex: of an end wall the eave, the least height along it.
func (f *Form) wall(p Place) (width, height float64) {
	switch p {
	case AtFarEnd, AtNearEnd:
		bays := float64(f.Bays)
		return bays*f.Span + (bays-1)*f.GutterWidth, f.Ridge
	case AtLeftSide:
		if f.Section == LeanTo {
			return f.Length, f.Ridge
		}
	}
	return f.Length, f.Eave
}

func (a *Annex) check(f *Form, i int) (faults []error) {
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(fmt.Sprintf("Annexes[%d].%s", i, field), v); err != nil {
			faults = append(faults, err)
		}
	}
	check(placeRange, "Place", float64(a.Place))
	if a.Place >= places {
		return faults
	}
	width, height := f.wall(a.Place)
	check(domain.Range{Min: 0.3, Max: width, Unit: "m", Source: "along the wall it stands at"}, "Width", a.Width)
	check(domain.Range{Min: 0.3, Max: lengthRange.Max, Unit: "m", Source: "chosen"}, "Reach", a.Reach)
	check(domain.Range{Min: 0.3, Max: height, Unit: "m", Source: "no higher than the wall it stands at"}, "High", a.High)
	check(domain.Range{Min: 0.3, Max: math.Max(0.3, a.High), Unit: "m", Source: "no higher than at the house"}, "Low", a.Low)
	check(domain.Range{Max: f.Depth, Unit: "m", Source: "no deeper than the house"}, "Depth", a.Depth)
	taken := 0.0
	for _, b := range f.Annexes[:i+1] {
		if b.Place == a.Place {
			taken += b.Width
		}
	}
	if taken != a.Width {
		check(domain.Range{Max: width, Unit: "m", Source: "all annexes at one wall side by side"}, "Width and its neighbours", taken)
	}
	if area := f.wallArea(a.Place); len(faults) == 0 {
		shared := 0.0
		for _, b := range f.Annexes[:i+1] {
			if b.Place == a.Place {
				shared += b.Width * math.Max(0, b.High-f.DwarfWall)
			}
		}
		check(domain.Range{Max: area, Unit: "m²", Source: "the wall's area above the dwarf wall"}, "Width times High", shared)
	}
	return faults
}

// wallArea returns the area in m² above the dwarf wall of the wall at p.
func (f *Form) wallArea(p Place) float64 {
	width, height := f.wall(p)
	if p == AtFarEnd || p == AtNearEnd {
		left, right := f.sides()
		bays := float64(f.Bays)
		return bays*(left.area+right.area) + width*(f.Eave-f.DwarfWall)
	}
	return width * (height - f.DwarfWall)
}

// attach adds the annex and takes the shared wall from the house.
func (s *Shape) attach(a *Annex) {
	f := &s.Form
	out := map[Place]float64{AtFarEnd: f.Azimuth, AtNearEnd: f.Azimuth + 180, AtRightSide: f.Azimuth + 90, AtLeftSide: f.Azimuth + 270}[a.Place]
	out = wrap(out)
	x := AnnexShape{
		Annex: *a, FloorArea: a.Width * a.Reach, Perimeter: a.Width + 2*a.Reach,
		Partition: a.Width * a.High, Sunken: a.Width * a.Depth,
	}
	x.Volume = x.FloorArea * ((a.High+a.Low)/2 + a.Depth)
	room := Shape{}
	fall := straight(a.High-a.Low, a.Reach)
	room.add(Roof, fall.length*a.Width, fall.low, out, fall.length)
	room.add(SideWall, a.Width*a.Low, 90, out, a.Low)
	cheek := a.Reach * (a.High + a.Low) / 2
	room.add(EndWall, cheek, 90, wrap(out+90), cheek/a.Reach)
	room.add(EndWall, cheek, 90, wrap(out+270), cheek/a.Reach)
	room.add(BuriedWall, a.Width*a.Depth, 90, out, a.Depth)
	room.add(BuriedWall, a.Reach*a.Depth, 90, wrap(out+90), a.Depth)
	room.add(BuriedWall, a.Reach*a.Depth, 90, wrap(out+270), a.Depth)
	room.add(Floor, x.FloorArea, 180, 0, a.Reach)
	x.Facets = room.Facets
	s.Annexes = append(s.Annexes, x)

	dwarf := a.Width * math.Min(a.High, f.DwarfWall)
	kept := s.Facets[:0]
	for _, w := range s.Facets {
		if w.Tilt == 90 && math.Abs(w.Azimuth-out) < 1e-9 {
			switch w.Kind {
			case SideWall, EndWall, BackWall:
				w.Area -= x.Partition - dwarf
			case DwarfWall:
				w.Area -= dwarf
			case BuriedWall:
				w.Area -= x.Sunken
			}
		}
		if w.Area > 1e-9 {
			kept = append(kept, w)
		}
	}
	s.Facets = kept
}
