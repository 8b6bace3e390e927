package main

import (
	"time"

	"cloche.example/airheat"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// tubes are the plan's air tubes in the soil, through which a fan blows house
// air: by day to store heat, and back when the heater would work. Water that
// condenses in them is not counted.
type tubes struct {
	store *airheat.Store
	flow  float64 // m³/s
	air   airheat.AirProperties
	fan   []float64 // W, electricity by the hour
	up    []float64 // W, from it into the floor by the hour
	runs  bool      // in the hour that is solved
	back  bool      // and blows backward, to give heat
}

// Limits of when the fan runs, K: the house over its set-point, and over or under
// what the air meets in the soil (chosen).
const (
	spare = 2
	worth = 3
)

// newTubes has the soil at the house's mean temperature; nil without tubes.
func newTubes(p *plan.Plan, pressure float64) (*tubes, error) {
	if p.SoilStore == nil {
		return nil, nil
	}
	s, at := fromplan.SoilStore(p), answers.MeanSetPoint(p)
	s.Above = at
	store, err := airheat.NewSoilStore(s, at)
	return &tubes{store: store, flow: p.SoilStore.Flow, air: airheat.DryAir(at, pressure)}, err
}

// meets is what an hour's air would meet: a conductance, W/K, to a temperature,
// °C. The store answers linearly to the air that comes in.
func (u *tubes) meets(back bool) (conductance, at float64, err error) {
	const cold, warm = 0.0, 20.0
	a, err := u.store.Clone().Step(u.flow, cold, u.air, time.Hour, back)
	if err != nil {
		return 0, 0, err
	}
	b, err := u.store.Clone().Step(u.flow, warm, u.air, time.Hour, back)
	conductance = (b.Heat - a.Heat) / (warm - cold)
	return conductance, cold - a.Heat/conductance, err
}

// end passes the hour that was solved, with the house's air as it came out.
func (u *tubes) end(x *ventilation.ClimateState) error {
	if x.DryAir == 0 && x.Temperature == 0 { // without a state the stores stand still
		u.fan, u.up = append(u.fan, 0), append(u.up, 0)
		return nil
	}
	flow := 0.0
	if u.runs {
		flow = u.flow
	}
	r, err := u.store.Step(flow, x.Temperature, u.air, time.Hour, u.back)
	u.fan, u.up = append(u.fan, r.FanPower), append(u.up, r.Up)
	return err
}

// tubesOff is by what the heat that the house gave its tubes outdoes that which they
// keep or sent up, W over an hour of the whole time.
func (y *year) tubesOff() float64 {
	sum := -y.tubes.store.Stored() / 3600
	for i, up := range y.tubes.up {
		sum += y.State[i].ToStore - up
	}
	return sum
}

// begin decides whether the fan runs in the hour that comes, by what the house was
// in the hour before.
func (u *tubes) begin(t *ventilation.Targets, before *ventilation.ClimateState) error {
	u.runs, u.back = false, before.Heat > 0
	if !u.back && before.Temperature < t.Warm+spare {
		return nil
	}
	g, at, err := u.meets(u.back)
	if err != nil {
		return err
	}
	if u.runs = before.Temperature > at+worth; u.back {
		u.runs = at > t.Warm+worth
	}
	if u.runs {
		t.Exchange, t.Store = g, at
	}
	return nil
}
