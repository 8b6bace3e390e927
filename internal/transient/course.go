package transient

import (
	"fmt"
	"math"

	"cloche.example/internal/solve"
)

// Course is the exact solution from one start: node i is
// Base[i] + Slope[i] t + sum over k of amp[i][k] exp(-rates[k] t).
type Course struct {
	Base  [3]float64 // °C
	Slope [3]float64 // K/s

	rates [3]float64
	amp   [3][3]float64
}

// Course solves the equations from start, °C, with the heat f + ramp t to each
// node, W and W/s, where temperatures are counted from datum, °C. In the
// eigenvectors each component obeys y' = -r y + g0 + g1 t, so that
// y = p0 + p1 t + (y0 - p0) exp(-r t), p1 = g1/r, p0 = (g0 - p1)/r.
func (s *System) Course(start [3]float64, datum float64, f, ramp [3]float64) Course {
	c := Course{rates: s.Rates, Base: [3]float64{datum, datum, datum}}
	var y0, inverse [3]float64 // divided once, not in every eigenvector
	for i := range 3 {
		inverse[i] = 1 / s.scale[i]
		y0[i] = (start[i] - datum) * s.scale[i]
		f[i] *= inverse[i]
		ramp[i] *= inverse[i]
	}
	for k := range 3 {
		var y, g0, g1 float64
		for i := range 3 {
			y += s.vec[i][k] * y0[i]
			g0 += s.vec[i][k] * f[i]
			g1 += s.vec[i][k] * ramp[i]
		}
		p1 := g1 / s.Rates[k]
		p0 := (g0 - p1) / s.Rates[k]
		for i := range 3 {
			v := s.vec[i][k] * inverse[i]
			c.Base[i] += v * p0
			c.Slope[i] += v * p1
			c.amp[i][k] = v * (y - p0)
		}
	}
	return c
}

// At returns the temperatures after t seconds, °C.
func (c *Course) At(t float64) [3]float64 {
	e0, e1, e2 := math.Exp(-c.rates[0]*t), math.Exp(-c.rates[1]*t), math.Exp(-c.rates[2]*t)
	var out [3]float64
	for i := range out {
		out[i] = c.Base[i] + c.Slope[i]*t + c.amp[i][0]*e0 + c.amp[i][1]*e1 + c.amp[i][2]*e2
	}
	return out
}

// AtWithRate is At with how fast node i then changes, K/s.
func (c *Course) AtWithRate(i int, t float64) (temperatures [3]float64, rate float64) {
	rate = c.Slope[i]
	for j := range temperatures {
		temperatures[j] = c.Base[j] + c.Slope[j]*t
	}
	for k, r := range c.rates {
		e := math.Exp(-r * t)
		rate -= r * c.amp[i][k] * e
		for j := range temperatures {
			temperatures[j] += c.amp[j][k] * e
		}
	}
	return temperatures, rate
}

// above is node i less level.
func (c *Course) above(i int, level float64) expSum {
	return expSum{n: 3, c: c.amp[i], mu: c.rates, base: c.Base[i] - level, slope: c.Slope[i]}
}

// Crossing is the first time at which a node reaches a level.
type Crossing struct {
	Reached bool    // whether it does within the limit
	Time    float64 // s, when; the limit if it does not
	Nearest float64 // °C, the node's temperature nearest to the level up to Time
}

// settled is the distance, relative to the way from the start to the level,
// within which a level that a node only creeps up to counts as never reached.
const settled = 1e-9

// timeFound is how near a time is sought, s.
const timeFound = 1e-6

// First returns the first crossing of level, °C, by node i, which starts at
// start, °C, within limit, s. The curve is cut at its turning points, of which
// there are at most three, so that no crossing is missed, and the first piece
// that changes sides is searched in a bracket.
func (c *Course) First(i int, start, level, limit float64) (Crossing, error) {
	f := c.above(i, level)
	side := level - start // positive: the level lies above the start
	if side == 0 {
		return Crossing{Reached: true, Nearest: start}, nil
	}
	e := Crossing{Time: limit, Nearest: start}
	var turns [4]float64
	count := f.turns(limit, &turns)
	turns[count] = limit
	from := 0.0
	for k := 0; k <= count; k++ {
		to := turns[k]
		v := f.at(to)
		if last := k == count; !last && v*side >= 0 || last && v*side > settled*math.Abs(side) {
			if last {
				to = f.shorten(from, to, side)
			}
			t := from
			if f.at(from)*side < 0 { // else the start lies at the level but for rounding
				var err error
				if t, err = solve.Root(f.at, from, to, timeFound); err != nil {
					return Crossing{}, fmt.Errorf("time to %g °C: %w", level, err)
				}
			}
			return Crossing{Reached: true, Time: t, Nearest: level}, nil
		}
		if math.Abs(v) < math.Abs(e.Nearest-level) {
			e.Nearest = v + level
		}
		from = to
	}
	return e, nil
}
