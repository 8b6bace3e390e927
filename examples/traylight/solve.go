package main

import (
	"errors"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/lighting"
)

// result is what the report prints.
type result struct {
	light    lighting.CosinePower
	bed      lighting.Bed // within the room, its plane at height 0
	layout   lighting.Layout
	points   *lighting.Points
	ppfd     []float64 // µmol/(m² s), first day, direct
	stats    lighting.Statistics
	shares   lighting.Shares
	bounces  float64 // µmol/(m² s), mean of the reflected light
	oneAlone float64 // µmol/(m² s), mean of its first bounce
	energy   lighting.Energy
	sweep    []height
}

// height is one line of the height sweep.
type height struct {
	z     float64 // m above the trays
	stats lighting.Statistics
	onBed float64 // fraction
}

// The ranges of the inputs that no constructor sees.
var (
	rangeCount       = domain.Range{Min: 1, Max: 60, Unit: "(count)"}
	rangeReflectance = domain.Range{Min: 0, Max: 0.98, Unit: "fraction"}
	rangeHours       = domain.Range{Min: 0, Max: 24, Unit: "h"}
	rangeMaintenance = domain.Range{Min: 0.1, Max: 1, Unit: "fraction"}
)

// photonsPerJoule is of a white and red LED spectrum, µmol/J; common practice,
// no source.
const photonsPerJoule = 4.9

func (in input) solve() (result, error) {
	var r result
	room := lighting.Room{Length: in.roomLength, Width: in.roomWidth, Height: in.roomHeight, Floor: in.reflectance, Ceiling: in.reflectance,
		WallX0: in.reflectance, WallX1: in.reflectance, WallY0: in.reflectance, WallY1: in.reflectance}
	err := errors.Join(rangeCount.Check("rows", float64(in.rows)), rangeCount.Check("per-row", float64(in.perRow)), rangeReflectance.Check("reflectance", in.reflectance))
	if err == nil {
		err = room.Check()
	}
	if err != nil {
		return r, err
	}
	var lightErr, energyErr error
	r.light, lightErr = lighting.FromBeamAngle(in.ppf, in.beam)
	r.bed = lighting.Bed{X: (in.roomLength - in.length) / 2, Y: (in.roomWidth - in.width) / 2, Length: in.length, Width: in.width}
	n := float64(in.rows * in.perRow)
	if lightErr == nil {
		r.energy, energyErr = lighting.EnergyInput{Power: n * in.watts, PPF: n * in.ppf, PerJoule: photonsPerJoule, Level: 1,
			Run: time.Duration(in.hours * float64(time.Hour)), Price: in.price}.Solve()
	}
	within := func(name string, v, room float64) error {
		return domain.Range{Min: (domain.Range{Min: 1e-3, Max: 2000, Unit: "m"}).Min, Max: room, Unit: "m", Source: "within the house"}.Check(name, v)
	}
	err = errors.Join(lightErr, within("length", in.length, in.roomLength), within("width", in.width, in.roomWidth),
		within("height", in.height, in.roomHeight*0.999), rangeHours.Check("hours", in.hours), rangeMaintenance.Check("maintenance", in.maintenance), energyErr)
	if err != nil {
		return r, err
	}
	if r.layout, r.points, r.ppfd, err = in.at(r.light, r.bed, in.height); err != nil {
		return r, err
	}
	if r.stats, err = lighting.Evenness(r.ppfd); err != nil {
		return r, err
	}
	if r.shares, err = room.Share(r.layout, r.bed); err != nil {
		return r, err
	}
	if err = r.reflect(room); err != nil {
		return r, err
	}
	for _, k := range []float64{0.5, 0.75, 1, 1.25, 1.5} {
		if z := k * in.height; (domain.Range{Min: 0.01, Max: 100, Unit: "m"}).Contains(z) {
			layout, _, ppfd, err := in.at(r.light, r.bed, z)
			if err != nil {
				return r, err
			}
			s, err := lighting.Evenness(ppfd)
			if err != nil {
				return r, err
			}
			r.sweep = append(r.sweep, height{z, s, share(layout, r.bed)})
		}
	}
	return r, nil
}

// patches along a side of each face of the house.
const patches = 8

// reflect adds what the house gives back.
func (r *result) reflect(room lighting.Room) error {
	s, err := room.Reflect(r.layout, patches)
	if err != nil {
		return err
	}
	points, err := r.bed.Grid(20, 8)
	if err != nil {
		return err
	}
	for _, m := range []struct {
		mean *float64
		of   func(*lighting.Points) ([]float64, error)
	}{{&r.bounces, s.Map}, {&r.oneAlone, s.MapOneBounce}} {
		ppfd, err := m.of(points)
		if err != nil {
			return err
		}
		stats, err := lighting.Evenness(ppfd)
		if err != nil {
			return err
		}
		*m.mean = stats.Mean
	}
	return nil
}

// at hangs the rows at a height, m, and maps them.
func (in input) at(light lighting.CosinePower, bed lighting.Bed, z float64) (lighting.Layout, *lighting.Points, []float64, error) {
	layout, err := lighting.Rows(lighting.Fixture{Light: light, Power: in.watts}, bed, z, in.perRow, in.rows)
	if err != nil {
		return nil, nil, nil, err
	}
	lights, err := lighting.NewLights(layout...)
	if err != nil {
		return nil, nil, nil, err
	}
	points, err := bed.GridFor(z)
	if err != nil {
		return nil, nil, nil, err
	}
	ppfd, err := lights.MapTo(nil, points)
	return layout, points, ppfd, err
}

// share is the fraction of all photons that falls on the bed directly.
func share(layout lighting.Layout, b lighting.Bed) float64 {
	flux := 0.0
	for _, f := range layout {
		flux += lighting.CosineFlux(f, lighting.Point{X: b.X, Y: b.Y}, lighting.Point{X: b.X + b.Length, Y: b.Y},
			lighting.Point{X: b.X + b.Length, Y: b.Y + b.Width}, lighting.Point{X: b.X, Y: b.Y + b.Width})
	}
	return flux / layout.PPF()
}
