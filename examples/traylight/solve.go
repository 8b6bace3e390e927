package main

import (
	"context"
	"math"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/program"
	"cloche.example/lighting"
)

// result is what the report prints.
type result struct {
	plan     *plan.Plan // with its lamps counted
	assumed  bool       // the plan has no lamps: those of the defaults stand for them
	light    *answers.Light
	stats    lighting.Statistics // at harvest, direct light
	points   *lighting.Points
	room     lighting.Room
	layout   lighting.Layout // within the room, the trays at height 0
	bed      lighting.Bed    // the same
	shares   lighting.Shares
	bounces  float64 // µmol/(m² s), mean of the reflected light
	oneAlone float64 // µmol/(m² s), mean of its first bounce
	heights  []variant
	others   []variant // other rows
	design   *design   // nil: not asked for
}

// variant is another height or other rows.
type variant struct {
	height       float64 // m above the trays
	rows, perRow int
	stats        lighting.Statistics
	power        float64 // W
}

// solve maps the plan's lamps, and those of other heights and rows.
func solve(ctx context.Context, p *plan.Plan, meter *program.Meter) (*result, error) {
	house, err := answers.NewHouse(p)
	if err != nil {
		return nil, err
	}
	sun, err := house.Sun()
	if err != nil {
		return nil, err
	}
	r := &result{}
	if r.light, err = house.Light(sun); err != nil {
		return nil, err
	}
	var m answers.LampMap
	if r.plan, m, err = answers.Counted(p); err != nil {
		return nil, err
	}
	r.stats, r.points = m.Statistics, m.Points
	if err = r.inRoom(); err != nil {
		return nil, err
	}
	if err = r.reflect(ctx, meter); err != nil {
		return nil, err
	}
	return r, r.vary(ctx, meter)
}

// inRoom puts the bed into the house as a box above the trays, as high as eave and
// ridge in the mean, or as the lamps ask.
func (r *result) inRoom() (err error) {
	h, l := r.plan.House, r.plan.Lights
	x := l.Reflectance
	r.room = lighting.Room{Length: h.Length, Width: max(float64(h.Bays)*h.Span, l.BedWidth), Floor: x, Ceiling: x, WallX0: x, WallX1: x, WallY0: x, WallY1: x}
	r.room.Length = max(r.room.Length, l.BedLength)
	r.room.Height = max((h.EaveHeight+h.RidgeHeight)/2+h.Depth-l.TraysAboveFloor, 1.02*l.HeightAboveTrays)
	if r.layout, err = fromplan.LitLamps(r.plan); err != nil {
		return err
	}
	r.bed = lighting.Bed{X: (r.room.Length - l.BedLength) / 2, Y: (r.room.Width - l.BedWidth) / 2, Length: l.BedLength, Width: l.BedWidth}
	was := fromplan.Bed(r.plan)
	for i := range r.layout {
		at := &r.layout[i].At
		at.X, at.Y, at.Z = at.X+r.bed.X-was.X, at.Y+r.bed.Y-was.Y, at.Z-was.Z
	}
	r.shares, err = r.room.Share(r.layout, r.bed)
	return err
}

// patches along a side of each face of the house: most of them, and fewer where
// lamps are so many that each patch takes long.
func patches(lamps int) int {
	return max(2, min(8, int(8*math.Sqrt(500/float64(lamps)))))
}

// reflect adds what the house gives back.
func (r *result) reflect(ctx context.Context, meter *program.Meter) error {
	var s *lighting.Reflections
	err := program.Wait(ctx, meter, func() (err error) {
		s, err = r.room.Reflect(r.layout, patches(len(r.layout)))
		return err
	})
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
	return ctx.Err()
}

// vary maps other heights and other rows.
func (r *result) vary(ctx context.Context, meter *program.Meter) error {
	l := r.plan.Lights
	most := r.plan.House.RidgeHeight + r.plan.House.Depth - l.TraysAboveFloor
	if l.Tiers > 1 {
		most = l.TierRise
	}
	var list []variant
	for _, k := range []float64{0.5, 0.75, 1, 1.25, 1.5} {
		if z := k * l.HeightAboveTrays; z >= 0.05 && (k == 1 || z < most) {
			list = append(list, variant{height: z, rows: l.Rows, perRow: l.PerRow})
		}
	}
	n := len(list)
	if len(l.Groups) == 0 { // groups name the rows that there are
		for _, k := range [][2]int{{-1, 0}, {0, -1}, {0, 0}, {0, 1}, {1, 0}, {1, 1}} {
			if rows, perRow := l.Rows+k[0], l.PerRow+k[1]; rows >= 1 && perRow >= 1 && rows <= 50 && perRow <= 500 {
				list = append(list, variant{height: l.HeightAboveTrays, rows: rows, perRow: perRow})
			}
		}
	}
	for i := range list {
		if err := ctx.Err(); err != nil {
			return err
		}
		v := &list[i]
		of, q := *r.plan, *l
		of.Lights = &q
		q.HeightAboveTrays, q.Rows, q.PerRow = v.height, v.rows, v.perRow
		m, err := answers.MapLamps(&of)
		if err != nil {
			return err
		}
		v.stats, v.power = m.Statistics, r.light.Power*float64(v.rows*v.perRow)/float64(l.Rows*l.PerRow)
		meter.At(0.3 + 0.7*float64(i+1)/float64(len(list)))
	}
	r.heights, r.others = list[:n], list[n:]
	return nil
}

// enough tells whether a map has the evenness, and the light where it is a
// target.
func (r *result) enough(s lighting.Statistics) bool {
	l := r.plan.Lights
	return s.U0 >= l.Evenness && (r.wanted() == 0 || s.Mean >= r.wanted())
}

// wanted is the mean light that the plan asks for, µmol/(m² s): its target, or
// what the crop asks in the plan's hours beside the daylight of the design month; 0
// for none.
func (r *result) wanted() float64 {
	if t := r.plan.Lights; t.Target > 0 && r.light.Targeted {
		return t.Target
	}
	asked := r.light.Wanted
	if asked == nil {
		asked = r.light.Least
	}
	if asked == nil || r.plan.Lights.Photoperiod == 0 {
		return 0
	}
	v := max(0, *asked-r.light.Daylight) * 1e6 / 3600 / r.plan.Lights.Photoperiod
	if math.IsInf(v, 0) {
		return 0
	}
	return v
}
