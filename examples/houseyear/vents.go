package main

import (
	"fmt"
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// vents are the plan's vents and fans in the wind of each hour.
type vents struct {
	winds []wind  // by whence it blows, in equal sectors from north; one where the weather has no direction
	pad   float64 // fraction, of the way to the wet bulb, while the fans run
	salt  float64 // ratio, of pads: in the sump over the supply
	power float64 // W, electricity of all fans
}

// wind is what the openings are in one wind, nil for none.
type wind struct{ open, forced *ventilation.Network }

// sectors is how many directions of the wind are told apart.
const sectors = 16

// newVents makes the openings in each wind. A wind without a known direction
// blows across the house from the left.
func newVents(p *plan.Plan, directed bool) (v vents, err error) {
	n := 1
	if directed {
		n = sectors + 1
	}
	for k := range n {
		from := fromplan.Across(p)
		if k > 0 {
			from = 360 / sectors * float64(k-1)
		}
		w, err := newWind(p, from)
		if err != nil {
			return v, fmt.Errorf("vents: %w", err)
		}
		v.winds = append(v.winds, w)
	}
	for _, f := range p.VentFans {
		v.power += f.Power
	}
	if q := p.Pads; q != nil && v.winds[0].forced != nil {
		v.salt = q.Salt
		if v.pad, err = fromplan.PadEfficiency(p); err != nil {
			return v, err
		}
	}
	return v, nil
}

// newWind makes the openings in a wind from an azimuth, degree.
func newWind(p *plan.Plan, from float64) (w wind, err error) {
	openings, err := fromplan.OpeningsIn(p, 1, from)
	if err != nil || len(openings) == 0 {
		return w, err
	}
	if w.open, err = ventilation.NewNetwork(openings, nil, nil); err != nil {
		return w, err
	}
	if fans := fromplan.VentFansIn(p, from); len(fans) > 0 {
		w.forced, err = ventilation.NewNetwork(openings, nil, fans)
	}
	return w, err
}

// in is the wind of hour i.
func (v *vents) in(from []float64, i int) wind {
	if len(v.winds) == 1 || math.IsNaN(from[i]) {
		return v.winds[0]
	}
	return v.winds[1+int(math.Round(from[i]*sectors/360))%sectors]
}

// coolest is the outside air, °C, below which pads are kept dry.
const coolest = 15

// turn lets the wind of the hour in, and has fans and pads stand by under a bright
// sun.
func (v *vents) turn(t *ventilation.Targets, w wind, outside, sun float64) {
	t.Air = w.open
	if w.forced == nil || t.Most == 0 || sun < bright {
		return
	}
	t.Forced = w.forced
	if outside > coolest {
		t.Pad = v.pad
	}
}
