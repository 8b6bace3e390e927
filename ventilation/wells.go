package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Well feeds a vent at or below outside grade: a shaft or light well from the
// vent up to grade, open to the sky.
type Well struct {
	Vent      Opening // the vent in the wall, its Height below zero or zero
	Section   float64 // m², more than 0, at most 1e5; narrowest cross-section of the well
	Discharge float64 // dimensionless, more than 0, at most 1; discharge coefficient of the well on Section
}

// Opening returns the vent and its well as one opening: the same area and
// height, its discharge coefficient lowered by the well in series, 1/(Cd A)² =
// 1/(Cd A)²_vent + 1/(Cd A)²_well. The well counts as full of outside air,
// which holds while air goes in. When air leaves through it the well fills with
// inside air and the vent acts at grade: such a state, an outward flow at a
// height below zero, overstates the drive; DugIn.States covers both. The error
// joins every fault by field.
func (w Well) Opening() (Opening, error) {
	err := errors.Join(
		w.Vent.check("Vent"),
		openAreaRange.Check("Section", w.Section),
		openDischargeRange.Check("Discharge", w.Discharge),
		domain.Range{Min: heightRange.Min, Max: 0, Unit: "m", Source: "a vent above grade needs no well"}.Check("Vent.Height", w.Vent.Height),
	)
	if err != nil {
		return Opening{}, err
	}
	o := w.Vent
	o.Discharge = SeriesArea(o.Discharge*o.Area, w.Discharge*w.Section) / o.Area
	return o, nil
}

// Sunken says what a house dug into the ground leaves of the stack.
type Sunken struct {
	Lowest  float64 // m above grade, lower edge of the lowest opening
	Highest float64 // m above grade, middle of the highest opening
	Height  float64 // m, between the middles of lowest and highest opening, with wells
	Usable  float64 // m, the same where what lies below grade counts from grade: no wells
	Pool    float64 // m, depth of the air between the floor and the lowest opening, which no stack clears
	Volume  float64 // m³, of that pool
	Share   float64 // fraction of the height floor to highest opening that the pool takes
}

// StackOf returns what openings leave of the stack in a house with its floor
// at floor, m above grade, -10 to 50 (negative when dug in), of floorArea, m², more
// than 0, at most 1e5. Cold air
// stays in the pool below the lowest opening until it is mixed by a fan or
// warmed. The error joins every fault by field.
func StackOf(openings []Opening, floor, floorArea float64) (Sunken, error) {
	faults := []error{heightRange.Check("floor", floor), openAreaRange.Check("floorArea", floorArea)}
	if len(openings) == 0 {
		faults = append(faults, noOpening())
	}
	s := Sunken{Lowest: math.Inf(1), Highest: math.Inf(-1)}
	low := math.Inf(1)
	for i := range openings {
		o := &openings[i]
		where := place("openings", i, o.Name)
		edge := o.Height - 0.5*o.Vertical
		faults = append(faults, o.check(where), domain.Range{Min: floor, Max: heightRange.Max, Unit: "m", Source: "the floor"}.Check(where+".Height - Vertical/2", edge))
		s.Lowest = math.Min(s.Lowest, edge)
		s.Highest = math.Max(s.Highest, o.Height)
		low = math.Min(low, o.Height)
	}
	if err := errors.Join(faults...); err != nil {
		return Sunken{}, err
	}
	s.Height = s.Highest - low
	s.Usable = math.Max(0, s.Highest-math.Max(0, low))
	s.Pool = s.Lowest - floor
	s.Volume = s.Pool * floorArea
	if s.Highest > floor {
		s.Share = s.Pool / (s.Highest - floor)
	}
	return s, nil
}
