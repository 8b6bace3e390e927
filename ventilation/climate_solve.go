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

// weakest is the least flow, as a fraction of the strongest, below which the
// house counts as sealed while states are sought.
const weakest = 1e-7

// errHot marks a flow too weak to keep the house within -60 to 80 °C.
var errHot = fmt.Errorf("balance of heat and water: %w: the house would leave %g to %g °C", ErrNoSolution, temperatureRange.Min, temperatureRange.Max)

// start returns the state from which Newton's method sets out: somewhat warmer
// than the air that enters when the sun shines.
func (k *climateCase) start() climateNodes {
	h := &k.c.house
	rise := 0.1 * (k.canopySun + k.floorSun + k.heat) / (h.FloorArea * 10)
	rise = max(-8, min(8, rise))
	t := min(temperatureRange.Max, k.entering+rise)
	if k.held {
		t = k.target
	}
	x := climateNodes{air: t, canopy: t, floor: t + rise, lining: 0.5 * (t + k.outside)}
	es, _ := saturation(t)
	x.vapour = min(1.1*k.outsideVapour+50, 0.95*es)
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

// stronger returns x, a stable state, unless there is one with a stronger flow.
func (k *climateCase) stronger(x climateNodes) (climateNodes, bool, error) {
	m := k.lastFlow
	top, none := k.strongest(&x)
	if none {
		return x, true, nil
	}
	y := x
	over, err := k.excess(1.05*top, &y)
	if err != nil || over > 0 {
		return k.search(k.most())
	}
	for a := top; a > max(m*(1+1e-6), weakest*top); a *= 0.9 {
		if over, err = k.excess(a, &y); err != nil || over > 0 {
			return k.search(1.05 * top)
		}
	}
	k.lastFlow = m
	return x, true, nil
}

// strongest reports whether no state can have a stronger flow of dry air than
// the stable state x. With F the flow that a density of the inside air drives
// and m the flow that, by heat and water, leaves that density, a state is a
// zero of F - m, and as m grows the inside air goes from that of x to what
// enters. None is stronger where F is nowhere on the way more than at x; nor
// where F falls all the way to x, as while the stack works against the wind but
// has not taken over: there F - m is concave in m and falls at x. F is looked at
// in four places; without wind and fans it grows with the difference of
// density, so that one will do. The way may lead past the entering air and back
// to it from the other side (turns); then F is looked at there, too. The
// strongest flow seen is returned.
func (k *climateCase) strongest(x *climateNodes) (top float64, none bool) {
	m, p := k.lastFlow, k.lastDrive
	at := moistDensity(x.air, x.vapour, k.pressure)
	still := moistDensity(k.entering, k.enteringVapour, k.pressure)
	f := k.flow(x.air, x.vapour)
	top, falling := k.driven(&f, at, still, m, p)
	if m == 0 {
		return top, top <= m || falling && k.wind > 0
	}
	beyond := still - math.Copysign(k.otherSide(), at-still)
	if other, _ := k.driven(&f, still, beyond, 0, p); other > m && k.turns(x, at-still) {
		top, falling = max(top, other), false
	}
	return top, top <= m || falling && k.wind > 0
}

// driven returns the strongest flow, kg/s, that densities of the inside air from
// a to b drive, a itself left out, at least m, and whether it grows all the way
// from m.
func (k *climateCase) driven(f *dryFlow, a, b, m, drive float64) (top float64, grows bool) {
	const places = 4
	step := 1
	if k.wind == 0 && !k.fans {
		step = places
	}
	top, grows = m, true
	last := m
	for i := step; i <= places; i += step {
		g := *f
		g.at(a + (b-a)*float64(i)/places)
		flow, p := g.solve(drive)
		top = max(top, flow)
		grows = grows && flow >= last
		last, drive = flow, p
	}
	return top, grows
}

// otherSide bounds how far, kg/m³, the inside air of a strong flow lies beyond
// the entering air: as far as water that evaporates in it until it is
// saturated leaves it denser by cold, less light by vapour, along the wet bulb's
// line e - e' = gamma (T' - T).
func (k *climateCase) otherSide() float64 {
	es, slope := saturation(k.entering)
	gamma := k.pressure * k.enteringHeat / (vapourRatio * vapourEnthalpy(k.entering))
	gain := max(0, es-k.enteringVapour) / (1 + slope/gamma)
	cooling := gain / gamma
	return k.density * (cooling/(k.entering+kelvin) + (1-vapourRatio)*gain/k.pressure)
}

// plenty is how many times the flow of a state makes one in which the inside
// air is the entering air but for a little.
const plenty = 30

// turns reports whether the inside air lies on the other side of the entering
// air's density when it is plenty, of which it has the difference here in the
// state x: as in a dark house whose crop, in the drier air of a strong flow,
// cools it by more than a weak one leaves warm.
func (k *climateCase) turns(x *climateNodes, here float64) bool {
	if k.c.leaf == 0 && k.c.house.Floor.Wet == 0 && k.mist == 0 {
		return false
	}
	m, drive, y := k.lastFlow, k.lastDrive, *x
	_, err := k.excess(plenty*m, &y)
	k.lastFlow, k.lastDrive = m, drive
	return err == nil && here*(moistDensity(y.air, y.vapour, k.pressure)-moistDensity(k.entering, k.enteringVapour, k.pressure)) < 0
}

// most returns a flow, kg/s of dry air, that no inside air of
// -60 to 80 °C drives: each element with all the pressure that wind, stack
// and fans can leave across it.
func (k *climateCase) most() float64 {
	es, _ := saturation(temperatureRange.Max)
	sum := 0.0
	for _, f := range [2]dryFlow{k.flow(temperatureRange.Min, 0), k.flow(temperatureRange.Max, min(es, 0.9*k.pressure))} {
		low, high, open := f.bracket()
		if !open {
			continue
		}
		w := high - low
		for i := range f.paths {
			if e, open := f.element(i); open {
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
	b := top
	if _, err := k.excess(b, &x); err != nil {
		return x, false, err
	}
	for a := b; a > 0; {
		a *= 0.85
		if a < weakest*top {
			a = 0
		}
		y := x
		fa, err := k.excess(a, &y)
		if errors.Is(err, errHot) {
			// The last flow that the house stands may lie between.
			return k.edge(a, b, x)
		}
		if err != nil {
			return x, false, err
		}
		if fa >= 0 {
			return k.between(a, b, x)
		}
		b, x = a, y
	}
	return k.between(b, b, x)
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
		y.vapour, y.wet, y.drip = 0.99*es, false, 0
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
		if m, err = solve.Root(f, a, b, 1e-14*b); err != nil {
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
	if stable, ok := k.newton(&y, true); ok && math.Abs(y.air-x.air) < 1e-5 {
		return y, stable, nil
	}
	stable := k.judge(&x)
	if !k.closed(1e-9) {
		return x, false, fmt.Errorf("balance of heat and water: %w: near %g °C inside, residuals %.3g W canopy, %.3g W floor, %.3g W cover, %.3g kg/s water, %.3g W air",
			ErrNotConverged, x.air, k.residual[onCanopy], k.residual[onFloor], k.residual[onLining], k.residual[onWater], k.residual[onAir])
	}
	return x, stable, nil
}

// judge evaluates the balances at x with the flow that x drives and reports
// whether a small disturbance dies out.
func (k *climateCase) judge(x *climateNodes) bool {
	m, rate := k.exchangeAndRate(x)
	k.evaluate(x, m, rate, true)
	_, stable := k.eliminate()
	return stable
}
