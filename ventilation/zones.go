package ventilation

import (
	"errors"
	"fmt"
)

// OutsideZone is the outdoors as an end of a Link.
const OutsideZone = -1

// Element is what a Link may be: an Opening, a Leak or a FixedFan.
type Element interface {
	check(where string) error
	path() path
}

// Link joins two zones, or a zone and the outdoors, by an element. Its flow
// inward is from A to B; a fan with positive flow blows from A to B. The wind
// pressure coefficient acts on the end that is OutsideZone.
type Link struct {
	A, B    int     // zone index, or OutsideZone
	Element Element // Opening, Leak or FixedFan
}

// Zones is a house of several air spaces, as lobby, plant room and house. It
// never changes after NewZones.
type Zones struct {
	count int
	links []zoneLink
}

type zoneLink struct {
	path
	a, b int
}

// ZoneConditions drive the flow between zones.
type ZoneConditions struct {
	ZoneDensities  []float64 // kg/m³, 0.5 to 2, density of each zone's air, uniform
	OutsideDensity float64   // kg/m³, 0.5 to 2, density of the outside air
	Wind           float64   // m/s, 0 to 45, at the height to which the pressure coefficients refer
}

// ZoneBalance is the state in which the air of every zone balances.
type ZoneBalance struct {
	Pressure []float64  // Pa, of each zone at the datum less the outside static pressure there
	Residual []float64  // kg/s, what the computed flows fail to balance in each zone
	Links    []PathFlow // flow of each link, In from A to B, Out from B to A
	Steps    int        // count of Newton steps
}

// NewZones returns the network of count zones and links. The error joins every
// fault by field: element values outside their ranges, ends that are no zone, a
// link from a zone to itself, and zones that no chain of openings and leaks
// joins to the outdoors.
func NewZones(count int, links []Link) (*Zones, error) {
	var faults []error
	if count < 1 || count > 100 {
		return nil, &RangeError{Field: "count", Value: float64(count), Min: 1, Max: 100, Unit: "count"}
	}
	z := &Zones{count: count}
	open := make([]bool, count) // joined to the outdoors
	for i, l := range links {
		where := fmt.Sprintf("links[%d]", i)
		for _, end := range []struct {
			name string
			zone int
		}{{".A", l.A}, {".B", l.B}} {
			if end.zone < OutsideZone || end.zone >= count {
				faults = append(faults, &RangeError{Field: where + end.name, Value: float64(end.zone), Min: OutsideZone, Max: float64(count - 1), Unit: "zone index"})
			}
		}
		if l.A == l.B {
			faults = append(faults, fmt.Errorf("%s: A and B are both %d: %w", where, l.A, ErrRange))
		}
		if l.Element == nil {
			faults = append(faults, fmt.Errorf("%s: no element: %w", where, ErrRange))
			continue
		}
		faults = append(faults, l.Element.check(where))
		z.links = append(z.links, zoneLink{l.Element.path(), l.A, l.B})
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	for range count {
		for i := range z.links {
			l := &z.links[i]
			if l.kind == fanPath {
				continue
			}
			if l.a == OutsideZone || l.b != OutsideZone && open[l.a] {
				open[l.b] = true
			}
			if l.b == OutsideZone || open[l.b] && l.a != OutsideZone {
				open[l.a] = true
			}
		}
	}
	for i, ok := range open {
		if !ok {
			faults = append(faults, fmt.Errorf("zone %d: %w: no opening or leak joins it to the outdoors, its pressure is not determined", i, ErrNoSolution))
		}
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return z, nil
}

func (z *Zones) checkConditions(c ZoneConditions) error {
	faults := []error{densityRange.Check("OutsideDensity", c.OutsideDensity), windRange.Check("Wind", c.Wind)}
	if len(c.ZoneDensities) != z.count {
		faults = append(faults, &RangeError{Field: "number of ZoneDensities", Value: float64(len(c.ZoneDensities)), Min: float64(z.count), Max: float64(z.count), Unit: "count"})
	}
	for i, rho := range c.ZoneDensities {
		faults = append(faults, densityRange.Check(fmt.Sprintf("ZoneDensities[%d]", i), rho))
	}
	return errors.Join(faults...)
}
