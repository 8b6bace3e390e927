package ventilation

import (
	"fmt"
	"math"

	"cloche.example/internal/solve"
)

// climateClosure is the residual of each balance, as a fraction of its terms,
// at which Newton's method ends: 1,000 times below what is promised.
const climateClosure = 1e-12

// start returns the state from which Newton's method sets out: somewhat warmer
// than the air that enters when the sun shines.
func (k *climateCase) start() climateNodes {
	h := &k.c.house
	rise := 0.1 * (k.canopySun + k.floorSun + k.heat) / (h.FloorArea * 10)
	rise = max(-8, min(8, rise))
	t := k.entering + rise
	x := climateNodes{air: t, canopy: t, floor: t + rise, lining: 0.5 * (t + k.outside)}
	es, _ := saturation(t)
	x.vapour = min(1.1*k.outsideVapour+50, 0.95*es)
	return x
}

// newton solves the first n balances (four: the inside temperature stays; five:
// it is sought) from x by Newton's method and returns the rate, W/K, at which
// the surplus of heat of the inside air grows with its temperature, all other
// balances kept. It reports false when it does not end at a closed balance.
func (k *climateCase) newton(x *climateNodes, n int) (slope float64, ok bool) {
	for range 60 {
		m := k.exchange(x)
		if math.IsNaN(m) {
			return 0, false
		}
		k.evaluate(x, m, k.exchangeRate(x, m), true)
		step, pivot := k.eliminate(n)
		if k.closed(n, climateClosure) {
			return pivot, true
		}
		if !k.advance(x, step, n) {
			return 0, false
		}
	}
	m := k.exchange(x)
	k.evaluate(x, m, k.exchangeRate(x, m), true)
	_, pivot := k.eliminate(n)
	return pivot, k.closed(n, 100*climateClosure)
}

func (k *climateCase) closed(n int, share float64) bool {
	for i := range n {
		if !(math.Abs(k.residual[i]) <= share*k.size[i]) {
			return false
		}
	}
	return true
}

// eliminate solves the Jacobian's first n rows for the step to the root. The
// nodes' balances are dominated by their diagonal, so that no rows need to be
// exchanged, and what is left of the last diagonal is the slope of the air's
// surplus. With four it returns that slope all the same.
func (k *climateCase) eliminate(n int) (step [5]float64, slope float64) {
	a, b := k.jacobian, k.residual
	for i := range 4 {
		inv := 1 / a[i][i]
		for r := i + 1; r < 5; r++ {
			f := a[r][i] * inv
			if f == 0 {
				continue
			}
			for c := i + 1; c < 5; c++ {
				a[r][c] -= f * a[i][c]
			}
			b[r] -= f * b[i]
		}
	}
	for i := n - 1; i >= 0; i-- {
		s := -b[i]
		for c := i + 1; c < n; c++ {
			s -= a[i][c] * step[c]
		}
		step[i] = s / a[i][i]
	}
	return step, a[4][4]
}

// advance takes the step from x, shortened where it is long, and changes
// between moist and saturated air. It reports false for a step that is no
// number.
func (k *climateCase) advance(x *climateNodes, step [5]float64, n int) bool {
	const longest = 15 // K
	most := 0.0
	for _, i := range [4]int{onCanopy, onFloor, onLining, onAir} {
		most = max(most, math.Abs(step[i]))
	}
	share := 1.0
	if most > longest {
		share = longest / most
	}
	if !(most < math.MaxFloat64) {
		return false
	}
	limit := func(t float64) float64 { return max(climateLow, min(climateHigh, t)) }
	x.canopy = limit(x.canopy + share*step[onCanopy])
	x.floor = limit(x.floor + share*step[onFloor])
	x.lining = limit(x.lining + share*step[onLining])
	if n == 5 {
		x.air = limit(x.air + share*step[onAir])
	}
	es, _ := saturation(x.air)
	if x.wet {
		x.vapour = es
		x.drip += share * step[onWater]
		if x.drip < 0 {
			x.drip, x.wet = 0, false
		}
		return true
	}
	e := x.vapour + share*step[onWater]
	switch {
	case e <= 0 && step[onWater] < 0:
		e = 0.25 * x.vapour
	case e > es:
		e, x.wet, x.drip = es, true, 0
	}
	x.vapour = e
	return !math.IsNaN(e)
}

// surplus returns the heat, W, that the inside air at the temperature t, °C,
// has left over when all other balances are closed; x holds the state found
// and serves as the guess.
func (k *climateCase) surplus(t float64, x *climateNodes) (float64, error) {
	y := *x
	y.air = t
	if es, _ := saturation(t); y.wet || y.vapour > es {
		y.vapour, y.wet, y.drip = 0.9*es, false, 0
	}
	if _, ok := k.newton(&y, 4); !ok {
		y = *x
		y.air = t
		if err := k.settle(&y); err != nil {
			return math.NaN(), err
		}
	}
	*x = y
	return k.residual[onAir], nil
}

// settle closes the balances of water and of the three surfaces at the inside
// temperature of x by brackets alone: the surfaces by turns, each of which
// rises strictly with the others from the cold end, inside a bracket on the
// vapour pressure from dry to saturated air.
func (k *climateCase) settle(x *climateNodes) error {
	x.wet, x.drip = false, 0
	es, _ := saturation(x.air)
	var failed error
	water := func(e float64) float64 {
		x.vapour = e
		if err := k.surfaces(x); err != nil {
			failed = err
			return math.NaN()
		}
		k.evaluate(x, k.exchange(x), 0, false)
		return k.residual[onWater]
	}
	if left := water(es); left >= 0 {
		x.wet, x.drip = true, left
		k.evaluate(x, k.exchange(x), 0, false)
		return failed
	}
	if failed == nil {
		e, err := solve.Root(water, 0, es, 1e-13)
		if err != nil && failed == nil {
			return fmt.Errorf("balance of water: %w", err)
		}
		water(e)
	}
	return failed
}

// surfaces closes the balances of canopy, floor and lining at the inside air of
// x.
func (k *climateCase) surfaces(x *climateNodes) error {
	nodes := [3]*float64{&x.canopy, &x.floor, &x.lining}
	for _, n := range nodes {
		*n = climateLow
	}
	m := k.exchange(x)
	for range maxSteps {
		moved := 0.0
		for i, n := range nodes {
			before := *n
			f := func(t float64) float64 {
				*n = t
				k.evaluate(x, m, 0, false)
				return k.residual[i]
			}
			t, err := solve.Root(f, climateLow, climateHigh, 1e-13)
			if err != nil {
				return fmt.Errorf("surfaces: %w", err)
			}
			*n = t
			moved = max(moved, math.Abs(t-before))
		}
		if moved < 1e-12 {
			return nil
		}
	}
	return fmt.Errorf("surfaces: %w", ErrNotConverged)
}

// solve returns the steady state that a house reaches which starts with the air
// that enters it, and the slope of its surplus.
func (k *climateCase) solve() (climateNodes, float64, error) {
	x := k.start()
	if slope, ok := k.newton(&x, 5); ok && slope < 0 && k.nearest(&x) && TemperatureRange.Contains(x.air) {
		return x, slope, nil
	}
	return k.search()
}

// nearest reports whether no other state can lie between x and the temperature
// of the air that enters. None does when the flow is nowhere on the way
// stronger than at x: the flow goes through one minimum at most between no
// difference of density and that of x, so its two ends tell. None does either
// while the difference of density still weakens the flow, as the stack that
// works against the wind does before it takes over: on that side the heat
// carried away bends down only once.
func (k *climateCase) nearest(x *climateNodes) bool {
	if k.wind == 0 && !k.c.fans {
		return true
	}
	m := k.lastFlow
	f := k.flow(k.entering, k.outsideVapour)
	still, _ := f.solve(k.lastDrive)
	if still <= m {
		return true
	}
	rate := k.exchangeRate(x, m)
	return (x.air > k.entering) == (rate > 0)
}

// search finds the same state by steps from the air that enters to the first
// change of sign of the surplus of heat, and a bracket.
func (k *climateCase) search() (climateNodes, float64, error) {
	x := k.start()
	a := k.entering
	fa, err := k.surplus(a, &x)
	if err != nil {
		return x, 0, err
	}
	way, end := 1.0, TemperatureRange.Max
	if fa < 0 {
		way, end = -1, TemperatureRange.Min
	}
	step := 0.02
	for fa != 0 {
		b := a + way*step
		if (b-end)*way > 0 {
			b = end
		}
		fb, err := k.surplus(b, &x)
		if err != nil {
			return x, 0, err
		}
		if (fa > 0) != (fb > 0) {
			return k.between(a, b, x)
		}
		if b == end {
			return x, 0, fmt.Errorf("balance of heat and water: %w: at %g °C inside %.4g W are still left over", ErrNoSolution, end, fb)
		}
		a, fa = b, fb
		step = min(1.2*step, 2)
	}
	return k.between(a, a, x)
}

// between returns the state between the inside temperatures a and b, °C, at
// which the surplus of heat changes its sign.
func (k *climateCase) between(a, b float64, x climateNodes) (climateNodes, float64, error) {
	var failed error
	t := a
	if a != b {
		f := func(t float64) float64 {
			v, err := k.surplus(t, &x)
			if err != nil {
				failed = err
			}
			return v
		}
		var err error
		if t, err = solve.Root(f, a, b, 1e-13); err != nil {
			if failed != nil {
				err = failed
			}
			return x, 0, err
		}
	}
	if _, err := k.surplus(t, &x); err != nil {
		return x, 0, err
	}
	// The last digits, and the slope.
	y := x
	if slope, ok := k.newton(&y, 5); ok && math.Abs(y.air-t) < 1e-6 {
		return y, slope, nil
	}
	m := k.exchange(&x)
	k.evaluate(&x, m, k.exchangeRate(&x, m), true)
	_, slope := k.eliminate(5)
	if !k.closed(5, 1e-9) {
		return x, slope, fmt.Errorf("balance of heat and water: %w: near %g °C inside, residuals %.3g W canopy, %.3g W floor, %.3g W cover, %.3g kg/s water, %.3g W air",
			ErrNotConverged, t, k.residual[onCanopy], k.residual[onFloor], k.residual[onLining], k.residual[onWater], k.residual[onAir])
	}
	return x, slope, nil
}
