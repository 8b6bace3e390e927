package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// freeAreaRange limits a side of a vent.
var freeAreaRange = domain.Range{Min: 0, Max: 200, Unit: "m", Source: "vents of protected-cropping houses, continuous ones included"}
var openFreeAreaRange = domain.Range{Min: domain.MoreThan(0), Max: 200, Unit: "m", Source: "vents of protected-cropping houses, continuous ones included"}

// Louvre is a vent of parallel turning slats that close edge to edge.
type Louvre struct {
	Width     float64 // m, more than 0, at most 200; length of a slat
	Height    float64 // m, more than 0, at most 200; of the whole vent
	Slats     int     // count of slats, at least 1
	Thickness float64 // m, of a slat, 0 to half the spacing of the slats
	Angle     float64 // degree, opened from the closed plane, 0 to 90
}

// check joins every fault of l, by field.
func (l Louvre) check() error {
	err := errors.Join(
		openFreeAreaRange.Check("Width", l.Width),
		openFreeAreaRange.Check("Height", l.Height),
		flapAngleRange.Check("Angle", l.Angle),
	)
	if l.Slats < 1 {
		return errors.Join(err, &RangeError{Field: "Slats", Value: float64(l.Slats), Min: 1, Max: math.Inf(1), Unit: "count"})
	}
	return errors.Join(err, domain.Range{Min: 0, Max: 0.5 * l.Height / float64(l.Slats), Unit: "m", Source: "half the spacing of the slats"}.Check("Thickness", l.Thickness))
}

// FreeArea returns the free area, m², between the slats, square to them: slats
// times width times (spacing sin(angle) - thickness), and zero while the slats
// still touch. NaN for a field outside its range.
func (l Louvre) FreeArea() float64 {
	if l.check() != nil {
		return math.NaN()
	}
	gap := l.Height/float64(l.Slats)*math.Sin(l.Angle*math.Pi/180) - l.Thickness
	return float64(l.Slats) * l.Width * math.Max(gap, 0)
}

// Points returns o cut into count openings that are points, one above the
// other, each with its share of the area at its middle: so that a tall opening
// can have a screen (Screen.Over, with the same share of its face). The two-way
// flow through ten of them is within 1 % of the exact one. A point gives count
// points at one height. It returns nil unless count is 1 to 1000.
func (o Opening) Points(count int) []Opening {
	if count < 1 || count > 1000 {
		return nil
	}
	points := make([]Opening, count)
	for i := range points {
		points[i] = o
		points[i].Height = o.Height + o.Vertical*((float64(i)+0.5)/float64(count)-0.5)
		points[i].Vertical = 0
		points[i].Area = o.Area / float64(count)
		points[i].Viscous = o.Viscous * float64(count)
	}
	return points
}

// CheckOpenings looks at openings as a whole in a house with its floor at
// floor and its ridge at ridge, m above the datum, -10 to 50, for the wind, m/s, 0
// to 45. It joins
// every fault by field: a vent above the ridge or below the floor, a tall one
// that sticks out, and no way for air to move: all points at one height
// without wind (air then passes two ways only through a tall opening). The
// last matches ErrNoSolution, the others ErrRange.
func CheckOpenings(openings []Opening, floor, ridge, wind float64) error {
	var faults []error
	faults = append(faults, windRange.Check("wind", wind), heightRange.Check("floor", floor), heightRange.Check("ridge", ridge))
	house := domain.Range{Min: floor, Max: ridge, Unit: "m", Source: "from the floor to the ridge"}
	if ridge < floor {
		faults = append(faults, domain.Range{Min: floor, Max: heightRange.Max, Unit: "m", Source: "above the floor"}.Check("ridge", ridge))
		house = heightRange
	}
	level, tall := true, false
	for i := range openings {
		o := &openings[i]
		where := place("openings", i, o.Name)
		faults = append(faults, o.check(where))
		if o.Vertical > 0 {
			tall = true
			faults = append(faults, house.Check(where+".Height - Vertical/2", o.Height-o.Vertical/2), house.Check(where+".Height + Vertical/2", o.Height+o.Vertical/2))
		} else {
			faults = append(faults, house.Check(where+".Height", o.Height))
		}
		level = level && o.Height == openings[0].Height
	}
	if len(openings) == 0 {
		faults = append(faults, noOpening())
	} else if level && !tall && wind == 0 {
		faults = append(faults, errLevel)
	}
	return errors.Join(faults...)
}
