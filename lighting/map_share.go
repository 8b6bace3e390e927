package lighting

import (
	"errors"
	"fmt"

	"cloche.example/internal/domain"
)

// Shares say where the photons of a layout first land.
type Shares struct {
	Bed   float64 // fraction on the bed
	Aisle float64 // fraction on the rest of the bed's plane within the room
	Walls float64 // fraction on walls and ceiling above the plane
}

// Share returns where the photons of the layout first land in a room whose
// bed lies at the height bed.Z, by the exact flux of each cosine-power
// fixture; tables and bars take quadrature. The bed must lie within the room's
// plan and below every fixture, and the fixtures within the room; all faults
// are reported together. The room's reflectances do not matter.
func (r Room) Share(layout Layout, bed Bed) (Shares, error) {
	err := errors.Join(domain.Within("Room", r.Check()), domain.Within("bed", bed.check()))
	if err == nil {
		err = errors.Join(r.inside(layout), r.holds(layout, bed))
	}
	if err != nil {
		return Shares{}, err
	}
	rectangle := func(x0, y0, x1, y1 float64) (flux float64) {
		for _, f := range layout {
			flux += rectangleFlux(f, [4]Point{{x0, y0, bed.Z}, {x1, y0, bed.Z}, {x1, y1, bed.Z}, {x0, y1, bed.Z}})
		}
		return flux
	}
	all := layout.PPF()
	if all == 0 {
		return Shares{}, fmt.Errorf("fixtures without light: %w", ErrRange)
	}
	s := Shares{Bed: rectangle(bed.X, bed.Y, bed.X+bed.Length, bed.Y+bed.Width) / all}
	plane := rectangle(0, 0, r.Length, r.Width) / all
	s.Aisle = plane - s.Bed
	s.Walls = 1 - plane
	return s, nil
}

// holds wants the bed within the room and below the fixtures.
func (r Room) holds(layout Layout, bed Bed) error {
	const within = "bed within the room"
	along := func(name, start string, length, at, side float64) error {
		if length > side {
			return domain.Range{Min: sideRange.Min, Max: side, Unit: "m", Source: within}.Check(name, length)
		}
		return domain.Range{Min: 0, Max: side - length, Unit: "m", Source: within}.Check(start, at)
	}
	errs := []error{
		along("bed.Length", "bed.X", bed.Length, bed.X, r.Length),
		along("bed.Width", "bed.Y", bed.Width, bed.Y, r.Width),
		domain.Range{Min: 0, Max: r.Height, Unit: "m", Source: within}.Check("bed.Z", bed.Z),
	}
	for i, f := range layout {
		a, b := f.ends()
		if low := min(a.Z, b.Z); !(low > bed.Z) {
			errs = append(errs, &RangeError{Field: fmt.Sprintf("layout[%d].At.Z", i), Value: low, Min: bed.Z, Max: r.Height, Unit: "m", Source: "above the bed"})
		}
	}
	return errors.Join(errs...)
}
