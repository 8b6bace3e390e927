package fromplan

import (
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
)

// HousePlan is what the library makes a house of. The ground sees a house that
// is kept at inside, °C, all year.
func HousePlan(p *plan.Plan, inside float64) (envelope.HousePlan, error) {
	shape, err := Shape(p)
	if err != nil {
		return envelope.HousePlan{}, err
	}
	h := envelope.HousePlan{Shape: shape, FrameAllowance: p.Cover.Frame, Ground: Ground(p), Climate: Climate(p, inside), Leakage: Leakage(p)}
	if h.Covers, h.Screened, err = covers(p); err != nil {
		return h, err
	}
	if h.Doors, err = doors(p, shape); err != nil {
		return h, err
	}
	if p.Assumptions.NoFrame {
		h.FrameAllowance, h.Doors = 0, nil
	}
	h.Doors = append(h.Doors, fixed(p, shape, h.Doors)...)
	if u := p.Assumptions.EdgeLoss; u != nil {
		h.Bridges = []envelope.Bridge{{Name: "edge of the floor", Length: shape.Perimeter, Psi: *u}}
	}
	for _, a := range p.House.Annexes {
		c, err := Cover(p, a.Cover)
		if err != nil {
			return h, err
		}
		of := envelope.AnnexPlan{PartitionU: a.PartitionU, AirChanges: a.AirChanges, Humidity: a.RelativeHumidity, Ground: Ground(p)}
		of.Covers = map[envelope.FacetKind]envelope.Cover{envelope.Roof: c, envelope.SideWall: c, envelope.EndWall: c}
		if a.HeatedTo != nil {
			of.Heated, of.Temperature = true, *a.HeatedTo
		}
		of.Ground.Edge = envelope.EdgeBare
		h.Annexes = append(h.Annexes, of)
	}
	return h, nil
}

// House is the house of the plan, as HousePlan has it.
func House(p *plan.Plan, inside float64) (*envelope.House, error) {
	h, err := HousePlan(p, inside)
	if err != nil {
		return nil, err
	}
	return envelope.NewHouse(h)
}

// Leakage is how the closed house leaks.
func Leakage(p *plan.Plan) envelope.Leakage {
	l := envelope.DefaultLeakage()
	q := p.Leakage
	l.Model, l.AirChanges = envelope.LeakageGiven, q.AirChanges
	if q.KnownFrom == "pressure test" {
		l.Model = envelope.LeakagePressure
	}
	l.At50, l.Exponent, l.Horizontal = q.At50, q.Flow, q.RoofAndFloor
	l.Shelter = 1 // the plan's wind is that at the cover
	l.RoofLessFloor = math.Min(l.RoofLessFloor, l.Horizontal)
	return l
}

// doors are the closed doors; one that opens into an annex is a part of the
// wall shared with it.
func doors(p *plan.Plan, s envelope.Shape) (list []envelope.Door, err error) {
	taken := map[int]float64{}
	for i, d := range p.House.Doors {
		if d.Lobby != "none" {
			continue
		}
		at := wall(s, d.Place)
		if at < 0 {
			return nil, fmt.Errorf("house.doors[%d].place is %q, but no wall against the air stands there", i, d.Place)
		}
		if taken[at] += d.Width * d.Height; taken[at] > s.Facets[at].Area {
			return nil, fmt.Errorf("house.doors[%d]: the doors at the %s take %.2f m², and there are %.2f m² of wall", i, d.Place, taken[at], s.Facets[at].Area)
		}
		list = append(list, envelope.Door{Name: d.Name, Facet: at, Area: d.Width * d.Height, U: d.U})
	}
	return list, nil
}

// fixed makes what the doors leave of a facet a part of a given U, as published
// examples have it.
func fixed(p *plan.Plan, s envelope.Shape, doors []envelope.Door) (list []envelope.Door) {
	a := p.Assumptions
	for i, f := range s.Facets {
		u := map[envelope.FacetKind]*float64{envelope.Roof: a.RoofU, envelope.SideWall: a.SideWallsU, envelope.EndWall: a.EndWallsU}[f.Kind]
		if u == nil || f.Party {
			continue
		}
		area := f.Area
		for _, d := range doors {
			if d.Facet == i {
				area = math.Max(0, area-d.Area)
			}
		}
		if area > 0 {
			list = append(list, envelope.Door{Name: f.Name, Facet: i, Area: area, U: *u})
		}
	}
	return list
}
