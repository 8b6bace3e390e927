package main

import (
	"errors"
	"slices"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// need is the area for one sun and one wind.
type need struct {
	sun, wind float64
	area      float64 // m²; read where possible
	possible  bool    // false: no area does
	stable    bool    // false: wind works against warm air, and the house would leave that state
	changes   float64 // 1/h
}

// table is the needs of the plan's house.
type table struct {
	plan        *plan.Plan
	floor, have float64   // m²
	assumed     bool      // the plan has no vents: a pair stands for them
	suns, winds []float64 // W/m², m/s; the plan's noon among them
	load        ventilation.Load
	rows        [][]need // by sun, then by wind
	calm, windy need     // at the plan's noon
}

// assumedVents stand for those of a plan that has none: half of the area along
// each side and half along the ridge. Their size cancels.
func assumedVents(h plan.House) []plan.Vent {
	v := plan.Vent{Kind: "plain opening", Length: 1, Height: 0.25, Centre: h.EaveHeight / 2, Discharge: 0.6}
	left, right, ridge := v, v, v
	left.Name, left.Place = "left side", "left side"
	right.Name, right.Place = "right side", "right side"
	ridge.Name, ridge.Place, ridge.Centre, ridge.Height = "ridge", "ridge", h.RidgeHeight, 0.5
	return []plan.Vent{left, right, ridge}
}

// needs computes all rows.
func needs(p *plan.Plan) (*table, error) {
	t := &table{plan: p, suns: []float64{200, 400, 600, 800, 1000}, winds: []float64{0, 1, 2, 4, 8}}
	q := *p
	if len(p.Vents) == 0 {
		t.assumed, q.Vents = true, assumedVents(p.House)
	}
	noon := p.Site.SummerNoon
	t.suns, t.winds = with(t.suns, noon.Sun), with(t.winds, noon.Wind)
	house, err := answers.NewHouse(&q)
	if err != nil {
		return nil, err
	}
	sun, err := house.Sun()
	if err != nil {
		return nil, err
	}
	openings, err := fromplan.Openings(&q, 1)
	if err != nil {
		return nil, err
	}
	network, err := ventilation.NewNetwork(openings, nil, fromplan.VentFans(&q))
	if err != nil {
		return nil, err
	}
	for _, v := range q.Vents {
		t.have += fromplan.FaceArea(v)
	}
	t.floor = house.Shape.FloorArea
	for _, s := range t.suns {
		load, err := house.NoonLoad(sun, s)
		if err != nil {
			return nil, err
		}
		if s == noon.Sun {
			t.load = load
		}
		var row []need
		for _, w := range t.winds {
			n := need{sun: s, wind: w}
			r, err := network.AreaForRise(load, ventilation.Outdoors{Temperature: noon.Temperature, Pressure: house.Pressure, Wind: w}, p.SetPoints.Limits.SummerRise)
			if err == nil {
				n.possible, n.stable, n.area, n.changes = true, r.Stable || r.Factor == 0, r.Factor*t.have, ventilation.AirChanges(r.Volume, house.Shape.Volume)
			} else if !errors.Is(err, ventilation.ErrNoSolution) {
				return nil, err
			}
			if s == noon.Sun && w == 0 {
				t.calm = n
			}
			if s == noon.Sun && w == noon.Wind {
				t.windy = n
			}
			row = append(row, n)
		}
		t.rows = append(t.rows, row)
	}
	return t, nil
}

// with puts a value among sorted ones.
func with(list []float64, v float64) []float64 {
	if !slices.Contains(list, v) {
		list = append(list, v)
		slices.Sort(list)
	}
	return list
}

// enough tells whether the plan's vents are as large.
func (t *table) enough(n need) bool { return !t.assumed && n.possible && n.stable && n.area <= t.have }
