package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/solve"
)

// climateClosure is the residual of each balance, as a fraction of its terms,
// at which Newton's method ends: 1,000 times below what is promised.
const climateClosure = 1e-12

// climatePromise is the residual of each balance, as a fraction of its terms, that
// Solve promises.
const climatePromise = 1e-9

// Flows and temperatures that count as the same while states are sought.
const (
	sameState = 1e-5 // K, that Newton's last steps may move a state that is already closed
	sameFlow  = 1e-6 // fraction, of two flows between which no other state is sought
	aboveMost = 1.05 // of the strongest flow seen, where nothing should drive as much
)

// weakest is the least flow, as a fraction of the strongest, below which the
// house counts as sealed while states are sought.
const weakest = 1e-7

// errHot marks a flow too weak to keep the house within -60 to 80 °C.
var errHot = fmt.Errorf("balance of heat and water: %w: the house would leave %g to %g °C", ErrNoSolution, temperatureRange.Min, temperatureRange.Max)

// How the house stands at first, in the order of magnitude of houses: any start near
// by ends at the same state.
const (
	firstShare  = 0.1  // fraction of sun and heat that warms the air
	firstFilm   = 10.0 // W/(m² K) of floor, through which it leaves
	firstRise   = 8.0  // K, at most, of the inside over the entering air
	firstVapour = 1.1  // of the outside vapour pressure, and
	firstGain   = 50.0 // Pa, more
	firstDamp   = 0.95 // relative humidity, at most
)

// start returns the state from which Newton's method sets out: somewhat warmer
// than the air that enters when the sun shines.
func (k *climateCase) start() climateNodes {
	h := &k.c.house
	rise := firstShare * (k.canopySun + k.floorSun + k.heat) / (h.FloorArea * firstFilm)
	rise = max(-firstRise, min(firstRise, rise))
	t := min(temperatureRange.Max, k.entering+rise)
	if k.held {
		t = k.target
	}
	x := climateNodes{air: t, canopy: t, floor: t + rise, lining: 0.5 * (t + k.outside)}
	es, _ := saturation(t)
	x.vapour = min(firstVapour*k.outsideVapour+firstGain, firstDamp*es)
	return x
}

// solve returns the steady state with the strongest flow of air, and reports
// whether it is stable.
func (k *climateCase) solve() (climateNodes, bool, error) {
	if k.warm {
		x := k.guess
		if stable, ok := k.newton(&x, true); ok && stable && temperatureRange.Contains(x.air) {
			return k.stronger(x)
		}
	}
	x := k.start()
	if stable, ok := k.newton(&x, true); !ok || !stable || !temperatureRange.Contains(x.air) {
		return k.search(k.most())
	}
	return k.stronger(x)
}

// mostVapour is the greatest share of vapour in the pressure of the inside air where
// the strongest flow is sought: at 80 °C on a mountain four fifths of the pressure
// saturate it at most.
const mostVapour = 0.9

// most returns a flow, kg/s of dry air, that no inside air of
// -60 to 80 °C drives: each element with all the pressure that wind, stack
// and fans can leave across it.
func (k *climateCase) most() float64 {
	es, _ := saturation(temperatureRange.Max)
	sum := 0.0
	for _, f := range [2]dryFlow{k.flow(temperatureRange.Min, 0), k.flow(temperatureRange.Max, min(es, mostVapour*k.pressure))} {
		low, high, open := f.bracket()
		if !open {
			continue
		}
		w := high - low
		for i := range f.paths {
			if e := f.paths[i]; f.stands(&e) {
				in, _, _ := e.flows(w, w, f.outside, f.inside)
				_, out, _ := e.flows(-w, -w, f.outside, f.inside)
				sum += max(in, out)
			}
		}
		sum += f.turbulence()
	}
	return sum
}

// search finds the state with the strongest flow from the flow top down: F - m
// is negative at the top, not negative at m = 0, and continuous in m but for a
// jump where hot leaves shut their stomata, so that it always ends.
func (k *climateCase) search(top float64) (climateNodes, bool, error) {
	x := k.start()
	if _, err := k.excess(top, &x); err != nil {
		return x, false, err
	}
	y, stable, found, err := k.descend(top, x, 0)
	if !found && err == nil {
		return k.between(0, 0, y)
	}
	return y, stable, err
}

// scanStep is the ratio of the flows that descend looks at one after the other,
// closePeak how near to zero the excess, as a fraction of the flow, must come on
// the way for a pair of states to be sought between them.
const (
	scanStep  = 0.85
	closePeak = 0.1
)

// descend finds the state with the strongest flow below b, kg/s, where nothing
// drives as much as flows and the state is x, and above least. Where the excess
// of what is driven has a peak just below zero, it is looked at there, too.
func (k *climateCase) descend(b float64, x climateNodes, least float64) (y climateNodes, stable, found bool, err error) {
	top := b
	above, upper, state := math.NaN(), math.NaN(), x // the last two shares of excess, and the state at the first
	for a := scanStep * b; a > least || least == 0; a *= scanStep {
		if a < weakest*top {
			a = 0
		}
		y = x
		over, err := k.excess(a, &y)
		if errors.Is(err, errHot) {
			// The last flow that the house stands may lie between.
			y, stable, err = k.edge(a, b, x)
			return y, stable, true, err
		}
		if err != nil {
			return y, false, false, err
		}
		if over >= 0 {
			y, stable, err = k.between(a, b, x)
			return y, stable, true, err
		}
		if a == 0 {
			break
		}
		share := over / a
		if upper > above && upper >= share && upper > -closePeak {
			if c, found := k.peak(b, state, [3]float64{above, upper, share}); found {
				y, stable, err = k.between(c, b/scanStep, state)
				return y, stable, true, err
			}
		}
		above, upper, state = upper, share, x
		b, x = a, y
	}
	return x, false, false, nil
}

// edge looks for a state between the flow a, kg/s, at which the house is too
// hot, and b, at which it is not.
func (k *climateCase) edge(a, b float64, x climateNodes) (climateNodes, bool, error) {
	for range 40 {
		m := 0.5 * (a + b)
		y := x
		f, err := k.excess(m, &y)
		switch {
		case err != nil:
			a = m
		case f >= 0:
			return k.between(m, b, x)
		default:
			b, x = m, y
		}
	}
	return x, false, errHot
}

// excess closes all balances of heat and water for the flow m, kg/s of dry air,
// and returns by how much the flow that the inside air then drives exceeds it.
// x holds the state found and serves as the guess.
func (k *climateCase) excess(m float64, x *climateNodes) (float64, error) {
	k.lastFlow = m
	y := *x
	if y.wet {
		es, _ := saturation(y.air)
		y.vapour, y.wet, y.drip = nearlySaturated*es, false, 0
	}
	if _, ok := k.newton(&y, false); !ok {
		y = *x
		if err := k.settle(&y); err != nil {
			return math.NaN(), err
		}
	}
	if !temperatureRange.Contains(y.air) {
		return math.NaN(), errHot
	}
	*x = y
	f := k.flow(y.air, y.vapour)
	driven, p := f.solve(k.lastDrive)
	k.lastDrive = p
	return driven - m, nil
}

// between returns the state between the flows a and b, kg/s, at which the flow
// driven exceeds the flow by nothing; x is the state at b. Each flow is tried
// from x, so that of two states of the leaves, hot with shut stomata and cool
// with open ones, the one is followed as far as it goes.
func (k *climateCase) between(a, b float64, x climateNodes) (climateNodes, bool, error) {
	m := a
	if a != b {
		var err, failed error
		f := func(m float64) float64 {
			y := x
			v, err := k.excess(m, &y)
			if err != nil {
				failed = err
			}
			return v
		}
		if m, err = solve.Root(f, a, b, flowFound*b); err != nil {
			if failed != nil {
				err = failed
			}
			return x, false, err
		}
	}
	if _, err := k.excess(m, &x); err != nil {
		return x, false, err
	}
	// The last digits, and the stability.
	y := x
	if stable, ok := k.newton(&y, true); ok && math.Abs(y.air-x.air) < sameState {
		return y, stable, nil
	}
	stable := k.judge(&x)
	if !k.closed(climatePromise) {
		// A jump of the leaves between the two: a state of either side.
		for _, side := range [2]float64{1 - sameFlow, 1 + sameFlow} {
			y := x
			if _, err := k.excess(side*m, &y); err != nil {
				continue
			}
			if stable, ok := k.newton(&y, true); ok && stable {
				return y, true, nil
			}
		}
		k.judge(&x)
		return x, false, fmt.Errorf("balance of heat and water: %w: near %g °C inside, residuals %.3g W canopy, %.3g W floor, %.3g W cover, %.3g kg/s water, %.3g W air",
			ErrNotConverged, x.air, k.residual[onCanopy], k.residual[onFloor], k.residual[onLining], k.residual[onWater], k.residual[onAir])
	}
	return x, stable, nil
}

// judge evaluates the balances at x with the flow that x drives and reports
// whether a small disturbance dies out.
func (k *climateCase) judge(x *climateNodes) bool {
	m, rate, byPa := k.exchangeAndRate(x)
	k.evaluate(x, m, rate, byPa, true)
	_, stable := k.eliminate()
	return stable
}
