package lighting

import (
	"context"

	"cloche.example/internal/domain"
	"gonum.org/v1/gonum/floats"
)

// BedMap is the light on a bed.
type BedMap struct {
	Points    *Points    // the middles of equal cells, in rows along x
	PPFD      []float64  // µmol/(m² s) at each point, reflected light included
	Direct    []float64  // µmol/(m² s) at each point, from the fixtures alone
	Reflected []float64  // µmol/(m² s) at each point, from the room's faces; nil without a room
	Evenness  Statistics // of PPFD
}

// Map returns the direct light of the layout on the bed, on the coarsest grid
// that catches the extremes (GridFor). All faults are reported together.
func (b Bed) Map(layout Layout) (BedMap, error) {
	lights, err := NewLights(layout...)
	if err != nil {
		return BedMap{}, err
	}
	points, err := b.GridFor(lights.lowest - b.Z)
	if err != nil {
		return BedMap{}, err
	}
	ppfd, err := lights.MapParallelTo(context.Background(), nil, points, nil)
	if err != nil {
		return BedMap{}, err
	}
	m := BedMap{Points: points, PPFD: ppfd, Direct: ppfd}
	m.Evenness, err = Evenness(ppfd)
	return m, err
}

// Map returns the direct and the reflected light of the layout on a bed in the
// room, the reflected light to the fraction tol, 1e-5 to 0.1, of itself
// (ReflectWithin): 0.01 is enough for a plan. The bed must lie within the room
// and below every fixture.
func (r Room) Map(layout Layout, bed Bed, tol float64) (BedMap, error) {
	if err := domain.Within("Room", r.Check()); err != nil {
		return BedMap{}, err
	}
	m, err := bed.Map(layout)
	if err != nil {
		return BedMap{}, err
	}
	reflected, err := r.ReflectWithin(layout, m.Points, tol)
	if err != nil {
		return BedMap{}, err
	}
	m.Reflected = reflected.PPFD
	m.PPFD = floats.AddTo(make([]float64, len(m.Direct)), m.Direct, m.Reflected)
	m.Evenness, err = Evenness(m.PPFD)
	return m, err
}
