package ventilation

import (
	"math"

	"cloche.example/internal/solve"
)

// radiantHalvings ends the search for a power with which the house has a state.
const radiantHalvings = 40

// radiate is warmed where no power is known that holds the temperature warm: floor
// and crop would have to be hotter than any for what they pass on to do so. It asks
// from the other end: what the heater's power makes of the house, or, where even
// that is too hot for a state, the most with which it has one.
func (o *keeping) radiate(warm float64) error {
	k := &o.k
	var failed error
	lacks := func(q float64) float64 {
		k.heat, k.radiant = o.base+(1-o.t.Radiant)*q, o.beamed+o.t.Radiant*q
		k.guess = o.x
		x, stable, err := k.solve()
		if err != nil {
			failed = err
			return math.NaN()
		}
		o.x, o.stable, o.heater = x, stable, q
		return warm - x.air
	}
	most, full := o.t.Heater, lacks(o.t.Heater)
	for range radiantHalvings {
		if !math.IsNaN(full) {
			break
		}
		most /= 2
		full = lacks(most)
	}
	if math.IsNaN(full) {
		return failed
	}
	if o.short = full > 0; o.short {
		return nil
	}
	q, err := solve.Root(lacks, 0, most, shareTolerance*most)
	if err != nil {
		return err
	}
	if math.IsNaN(lacks(q)) {
		return failed
	}
	return nil
}
