package envelope

import (
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// noArea is what rounding leaves of a wall that an annex covers whole, m².
const noArea = 1e-9

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
	Place Place   // wall it stands at; not the back wall of a lean-to that is a heated building's
	Width float64 // m, at least 0.3, along that wall; at most what the wall has where it is as high as High
	Reach float64 // m, 0.3 to 1000, away from it
	High  float64 // m, at least 0.3, above grade, roof at the house; no higher than the wall
	Low   float64 // m, at least 0.3, above grade, roof at the outer wall; no higher than High
	Depth float64 // m, at least 0, floor below grade; no deeper than the house
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

// wall returns the width and the greatest height above grade, m, of the house's
// wall at the annex: an end wall reaches up to the ridge.
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

// across returns the breadth in m of one bay at the height in m above grade.
func (f *Form) across(height float64) float64 {
	if height <= f.Eave {
		return f.Span
	}
	down := max(0, f.Ridge-height)
	left, right := f.sides()
	sum := 0.0
	for _, d := range [2]side{left, right} {
		switch {
		case d.length == 0:
		case d.curved:
			radius := d.length / ((d.low - d.high) * degree)
			cos := math.Cos(d.high*degree) - down/radius
			sum += radius * (math.Sqrt(max(0, 1-cos*cos)) - math.Sin(d.high*degree))
		default:
			sum += d.run() * down / (f.Ridge - f.Eave)
		}
	}
	return min(f.Span, sum)
}

// stretch returns the length in m of the wall at p that is as high as height in
// m, in one piece and in all.
func (f *Form) stretch(p Place, height float64) (one, all float64) {
	width, _ := f.wall(p)
	if p != AtFarEnd && p != AtNearEnd || height <= f.Eave {
		return width, width
	}
	one = f.across(height)
	return one, one * float64(f.Bays)
}

func (a *Annex) check(f *Form, i int) (faults []error) {
	check := func(r domain.Range, field string, v float64) bool {
		err := r.Check(fmt.Sprintf("Annexes[%d].%s", i, field), v)
		if err != nil {
			faults = append(faults, err)
		}
		return err == nil
	}
	if !check(placeRange, "Place", float64(a.Place)) {
		return faults
	}
	if f.Section == LeanTo && !f.BackWallOpen && a.Place == AtLeftSide {
		check(domain.Range{Max: float64(AtRightSide), Unit: "number", Source: "the back wall is that of a heated building; BackWallOpen frees it"}, "Place", float64(a.Place))
		return faults
	}
	one, height := f.wall(a.Place)
	check(domain.Range{Min: 0.3, Max: lengthRange.Max, Unit: "m", Source: "chosen"}, "Reach", a.Reach)
	high := check(domain.Range{Min: 0.3, Max: height, Unit: "m", Source: "no higher than the wall it stands at"}, "High", a.High)
	check(domain.Range{Min: 0.3, Max: math.Max(0.3, a.High), Unit: "m", Source: "no higher than at the house"}, "Low", a.Low)
	check(domain.Range{Max: f.Depth, Unit: "m", Source: "no deeper than the house"}, "Depth", a.Depth)
	if high {
		one, _ = f.stretch(a.Place, a.High)
	}
	if !check(domain.Range{Min: 0.3, Max: math.Max(0.3, one), Unit: "m", Source: "along the wall it stands at, where that is as high as High"}, "Width", a.Width) || !high {
		return faults
	}
	// Side by side they fit when at each height those that reach it do.
	for _, level := range f.Annexes[:i+1] {
		if level.Place != a.Place {
			continue
		}
		taken := 0.0
		for _, b := range f.Annexes[:i+1] {
			if b.Place == a.Place && b.High >= level.High {
				taken += b.Width
			}
		}
		if _, all := f.stretch(a.Place, level.High); taken > a.Width && a.High >= level.High {
			if !check(domain.Range{Max: all, Unit: "m", Source: "all annexes at one wall side by side, where it is as high as they are"}, "Width and its neighbours", taken) {
				break
			}
		}
	}
	return faults
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
		if w.Tilt == 90 && math.Abs(w.Azimuth-out) < sameAzimuth {
			switch w.Kind {
			case SideWall, EndWall, BackWall:
				w.Area -= x.Partition - dwarf
			case DwarfWall:
				w.Area -= dwarf
			case BuriedWall:
				w.Area -= x.Sunken
			}
		}
		if w.Area > noArea {
			kept = append(kept, w)
		}
	}
	s.Facets = kept
}
