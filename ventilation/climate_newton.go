package ventilation

import (
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/solve"
)

// newton closes the balances from x by Newton's method: all five, or the four
// without the air's when its temperature is held. With free set the flow is the
// one that the inside air drives; else it stays at lastFlow. It reports whether
// a small disturbance of the state dies out, and false when it does not end at
// closed balances.
func (k *climateCase) newton(x *climateNodes, free bool) (stable, ok bool) {
	for range 60 {
		m, rate, byPa := k.lastFlow, 0.0, 0.0
		if free {
			m, rate, byPa = k.exchangeAndRate(x)
		}
		if math.IsNaN(m) {
			return false, false
		}
		k.evaluate(x, m, rate, byPa, true)
		step, stable := k.eliminate()
		if k.closed(climateClosure) || k.standing(x, step) {
			return stable, true
		}
		if !k.advance(x, step) {
			return false, false
		}
	}
	return false, false
}

// sought returns the number of balances to close.
func (k *climateCase) sought() int {
	if k.held {
		return onAir
	}
	return onAir + 1
}

func (k *climateCase) closed(share float64) bool {
	for i := range k.sought() {
		if !(math.Abs(k.residual[i]) <= share*k.size[i]+k.noise(i)) {
			return false
		}
	}
	return true
}

// temperatureNoise is what float64 leaves uncertain of a temperature in kelvin
// that is the sum of a few, K.
const temperatureNoise = 3e-13

// vapourNoise is the fraction of a vapour pressure that float64 leaves uncertain in the
// sum of a few: where nearly all vapour that is set free condenses in a store, what
// does is a small difference of two.
const vapourNoise = 1e-15

// noise returns what the rounding of temperatures and of a store's vapour alone can
// leave of balance i, W or kg/s: in a house that is as warm as all about it the terms
// are differences of equal temperatures, and nothing else is left of them.
func (k *climateCase) noise(i int) float64 {
	switch i {
	case onWater:
		return vapourNoise * k.condensing * k.storeVapour
	case onAir:
		return temperatureNoise * (k.conductance[onAir] + k.lastFlow*k.enteringHeat)
	}
	return temperatureNoise * k.conductance[i]
}

// conductances fills in what each balance changes by per kelvin, W/K, in order
// of magnitude.
func (k *climateCase) conductances() {
	const leaf, room = 10.0, 300.0 // W/(m² K) of a leaf's two sides, K
	h := &k.c.house
	if s := k.skin; s != nil {
		canopy, floor := leaf*k.c.leaf, h.FloorArea*h.Floor.Convection
		longwave := 8 * constant.StefanBoltzmann * h.FloorArea * room * room * room
		k.conductance = [5]float64{onCanopy: canopy + longwave, onFloor: floor + longwave + k.floorConductance,
			onAir: canopy + floor + math.Abs(s.near.slope[airHeat][byAir]) + k.mass.conductance + k.store.conductance}
		return
	}
	longwave := 4 * k.c.radiation * room * room * room
	canopy, floor, lining := leaf*k.c.leaf, h.FloorArea*h.Floor.Convection, h.Cover.Area*h.Cover.Convection
	k.conductance = [5]float64{
		onCanopy: canopy + longwave,
		onFloor:  floor + longwave + k.floorConductance,
		onLining: lining + longwave + k.c.beyond,
		onAir:    canopy + floor + lining + k.mass.conductance + k.store.conductance,
	}
}

// standing reports whether the step from x is below what float64 resolves, as
// where terms of the balances are small differences.
func (k *climateCase) standing(x *climateNodes, step [5]float64) bool {
	const tiny = 2e-13 // K
	water := tiny * x.vapour
	if x.wet {
		water = tiny * k.size[onWater]
	}
	return math.Abs(step[onCanopy]) < tiny && math.Abs(step[onFloor]) < tiny && math.Abs(step[onLining]) < tiny &&
		math.Abs(step[onAir]) < tiny && math.Abs(step[onWater]) <= water && k.closed(100*climateClosure)
}

// eliminate solves the Jacobian for the step to the root. At a given flow the
// balances are dominated by their diagonal, so that no rows need to be
// exchanged, and their determinant is negative; with the flow's own response it
// turns positive where F - m of climateCase.strongest rises with m: there a
// disturbance of the flow grows.
func (k *climateCase) eliminate() (step [5]float64, stable bool) {
	a, b := &k.jacobian, k.residual
	n := k.sought()
	sign := 1.0
	for i := range n {
		sign = math.Copysign(sign, sign*a[i][i])
		inv := 1 / a[i][i]
		for r := i + 1; r < n; r++ {
			f := a[r][i] * inv
			if f == 0 {
				continue
			}
			for c := i + 1; c < n; c++ {
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
	return step, (sign < 0) == (n&1 == 1)
}

// advance takes the step from x, shortened where it is long, and changes
// between moist and saturated air. It reports false for a step that is not
// finite.
func (k *climateCase) advance(x *climateNodes, step [5]float64) bool {
	const longest = 15 // K
	most := max(math.Abs(step[onCanopy]), math.Abs(step[onFloor]), math.Abs(step[onLining]), math.Abs(step[onAir]))
	if !(most < math.MaxFloat64) {
		return false
	}
	share := 1.0
	if most > longest {
		share = longest / most
	}
	x.canopy = withinNodes(x.canopy + share*step[onCanopy])
	x.floor = withinNodes(x.floor + share*step[onFloor])
	x.lining = withinNodes(x.lining + share*step[onLining])
	x.air = withinNodes(x.air + share*step[onAir]) // no step when held
	es, _ := saturation(x.air)
	if x.wet {
		x.vapour = es
		x.drip += share * step[onWater]
		if x.drip < 0 {
			x.drip, x.wet = 0, false
		}
		return !math.IsNaN(x.drip)
	}
	e := x.vapour + share*step[onWater]
	switch {
	case e <= 0 && step[onWater] < 0:
		e = leftVapour * x.vapour
	case e > es:
		e, x.wet, x.drip = es, true, 0
	}
	if e < noVapour {
		e = 0
	}
	x.vapour = e
	return !math.IsNaN(e)
}

// leftVapour is the fraction of its vapour that air keeps in a step that would take more
// than all, so that the next has a slope to go by.
const leftVapour = 0.25

// noVapour is a vapour pressure, Pa, that counts as none: dry air that Newton's
// steps approach by quarters.
const noVapour = 1e-200

func withinNodes(t float64) float64 { return max(climateLow, min(climateHigh, t)) }

// settle closes the balances at the flow lastFlow by brackets alone, each
// inside the next: surfaces in turn, vapour pressure from dry to saturated
// air, inside temperature. At a given flow each balance falls strictly with its
// own unknown.
func (k *climateCase) settle(x *climateNodes) error {
	if k.held {
		return k.settleWater(x)
	}
	if k.tooHot(x) {
		return errHot
	}
	var failed error
	air := func(t float64) float64 {
		x.air = t
		if err := k.settleWater(x); err != nil {
			failed = err
			return math.NaN()
		}
		return k.residual[onAir]
	}
	const low, high = climateLow + 20, 90.0
	t, err := solve.Root(air, low, high, 1e-13)
	if failed != nil || err != nil {
		return errHot
	}
	air(t)
	return failed
}

// tooHot reports whether the house would pass 80 °C: heat is left
// over at its end, where four balances are quickly closed.
func (k *climateCase) tooHot(x *climateNodes) bool {
	y := *x
	y.air = temperatureRange.Max
	y.canopy, y.floor, y.lining = y.air+2, y.air+2, y.air-2
	k.held = true // at y.air, which Newton's method leaves
	_, ok := k.newton(&y, false)
	k.held = false
	return ok && k.residual[onAir] > 0
}

// settleWater does it at the inside temperature of x.
func (k *climateCase) settleWater(x *climateNodes) error {
	x.wet, x.drip = false, 0
	es, _ := saturation(x.air)
	var failed error
	water := func(e float64) float64 {
		x.vapour = e
		if err := k.settleSurfaces(x); err != nil {
			failed = err
			return math.NaN()
		}
		return k.residual[onWater]
	}
	// A sealed dry house keeps the humidity it was filled with.
	if k.enteringVapour <= es && water(k.enteringVapour) == 0 {
		return nil
	}
	if left := water(es); left >= 0 {
		x.wet, x.drip = true, left
		k.evaluate(x, k.lastFlow, 0, 0, false)
		return nil
	}
	if failed != nil {
		return failed
	}
	e, err := solve.Root(water, 0, es, 1e-13)
	if failed != nil {
		return failed
	}
	if err != nil {
		return fmt.Errorf("balance of water: %w", err)
	}
	water(e)
	return failed
}

// surfaceTurn is the largest move, K, of a surface in a turn that counts as none.
const surfaceTurn = 1e-12

// settleSurfaces closes the balances of canopy, floor and lining at the inside
// air of x: each rises strictly with the others, so that taking turns from the
// cold end climbs to the one solution.
func (k *climateCase) settleSurfaces(x *climateNodes) error {
	nodes := [3]*float64{&x.canopy, &x.floor, &x.lining}
	for _, n := range nodes {
		*n = climateLow
	}
	for range maxSteps {
		moved := 0.0
		for i, n := range nodes {
			before := *n
			f := func(t float64) float64 {
				*n = t
				k.evaluate(x, k.lastFlow, 0, 0, false)
				return k.residual[i]
			}
			t, err := solve.Root(f, climateLow, climateHigh, 1e-13)
			if err != nil {
				return fmt.Errorf("a surface leaves %g to %g °C: %w", climateLow, climateHigh, err)
			}
			*n = t
			moved = max(moved, math.Abs(t-before))
		}
		if moved < surfaceTurn {
			k.evaluate(x, k.lastFlow, 0, 0, false)
			return nil
		}
	}
	return fmt.Errorf("surfaces: %w", ErrNotConverged)
}
