package ventilation

import "math"

// stronger returns x, a stable state, unless there is one with a stronger flow.
func (k *climateCase) stronger(x climateNodes) (climateNodes, bool, error) {
	m := k.lastFlow
	if m == 0 { // air at rest, as light as that outside: where it moves it may not be
		if top := k.most(); top > 0 {
			return k.search(top)
		}
		return x, true, nil
	}
	top, none := k.strongest(&x)
	if none {
		return x, true, nil
	}
	y := x
	over, err := k.excess(aboveMost*top, &y)
	if err != nil || over > 0 {
		return k.search(k.most())
	}
	if z, stable, found, err := k.descend(aboveMost*top, y, m*(1+sameFlow)); found && err == nil {
		return z, stable, nil
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
// has not taken over: there F - m is concave in m and falls at x. Without wind and
// fans F grows with the difference of density, and is most at x. The way may
// lead past the entering air and back to it from the other side (turns); then F
// is looked at there, too. The strongest flow seen is returned.
func (k *climateCase) strongest(x *climateNodes) (top float64, none bool) {
	m, p := k.lastFlow, k.lastDrive
	at := moistDensity(x.air, x.vapour, k.pressure)
	still := moistDensity(k.entering, k.enteringVapour, k.pressure)
	f := k.flow(x.air, x.vapour)
	grows := false
	if top = m; k.wind > 0 || k.fans {
		top, grows = k.onTheWay(&f, at, still)
	}
	dried := x.vapour < k.enteringVapour // by the cover, so that it is denser than its warmth leaves it
	if m > 0 && (dried || k.mayTurn()) {
		side := k.otherSide()
		f.at(still + side)
		beyond, _ := f.solve(p)
		if at > still {
			f.at(still - side)
			lighter, _ := f.solve(p)
			beyond = max(beyond, lighter)
		}
		if beyond > m && k.turns(x, at-still) {
			top, grows = max(top, beyond), false
		}
	}
	return top, top <= m || grows && k.wind > 0
}

// onTheWay returns the strongest flow, kg/s, that densities of the inside air from
// at, that of a state, to still drive, and whether it grows all the way. Where
// stack and wind work against each other F falls and then rises: its end and its
// slope at the state tell the rest, but where they contradict that form; there
// it is looked at in four places.
func (k *climateCase) onTheWay(f *dryFlow, at, still float64) (top float64, grows bool) {
	const places = 4
	m, p := k.lastFlow, k.lastDrive
	g := *f
	g.at(still)
	end, _ := g.solve(p)
	rises := k.lastRate*(still-at) >= 0
	switch {
	case end <= m && !rises:
		return m, false
	case end > m && rises:
		return end, true
	}
	top, grows = max(m, end), true
	last := m
	for i := 1; i < places; i++ {
		g.at(at + (still-at)*float64(i)/places)
		flow, drive := g.solve(p)
		top = max(top, flow)
		grows = grows && flow >= last
		last, p = flow, drive
	}
	return top, grows && end >= last
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
	return k.outsideAir.rho * (cooling/(k.entering+kelvin) + (1-vapourRatio)*gain/k.pressure)
}

// plenty is how many times the flow of a state makes one in which the inside
// air is the entering air but for a little. outgrown is how many times what a
// state carries of lighter or denser air it must carry then for a stronger state
// of the same sign: flow grows with the root of the difference of density at
// most, so that twice the flow takes eight times as much.
const (
	plenty   = 30
	outgrown = 8
)

// mayTurn reports whether there is water that can cool the air.
func (k *climateCase) mayTurn() bool {
	return k.c.leaf > 0 || k.c.house.Floor.Wet > 0 || k.mist > 0
}

// turns reports whether the inside air lies on the other side of the entering
// air's density when it is plenty, of which it has the difference here in the
// state x, or is denser by far more than a plain heat load leaves it: as in a dark
// house whose crop, in the drier air of a strong flow, cools it by more than a
// weak one leaves warm.
func (k *climateCase) turns(x *climateNodes, here float64) bool {
	m, drive, y := k.lastFlow, k.lastDrive, *x
	_, err := k.excess(plenty*m, &y)
	k.lastFlow, k.lastDrive = m, drive
	there := moistDensity(y.air, y.vapour, k.pressure) - moistDensity(k.entering, k.enteringVapour, k.pressure)
	return err == nil && (here*there < 0 || here > 0 && plenty*there > outgrown*here)
}

// Steps of the search for a peak: more are not worth it where it stays below zero by
// nearPeak of the flow, nor nearer to each other than peakSame.
const (
	peakSteps = 5
	nearPeak  = 0.02
	peakSame  = 1e-3 // of scanStep
)

// peak looks for a flow near b, kg/s, that drives more than itself, at the peaks of
// parabolas through three excesses as fractions of their flows, of which the middle
// one, at b, is the highest; x is a state there.
func (k *climateCase) peak(b float64, x climateNodes, f [3]float64) (c float64, found bool) {
	at := [3]float64{-1, 0, 1} // steps down from b
	for range peakSteps {
		left, right := (at[1]-at[0])*(f[1]-f[2]), (at[1]-at[2])*(f[1]-f[0])
		top := at[1] - 0.5*((at[1]-at[0])*left-(at[1]-at[2])*right)/(left-right)
		if !(top > at[0] && top < at[2]) || math.Abs(top-at[1]) < peakSame {
			return c, false
		}
		c = b * math.Pow(scanStep, top)
		y := x
		over, err := k.excess(c, &y)
		if err != nil || over > 0 {
			return c, err == nil
		}
		share := over / c
		switch low := top < at[1]; {
		case share > f[1] && low:
			at, f = [3]float64{at[0], top, at[1]}, [3]float64{f[0], share, f[1]}
		case share > f[1]:
			at, f = [3]float64{at[1], top, at[2]}, [3]float64{f[1], share, f[2]}
		case low:
			at[0], f[0] = top, share
		default:
			at[2], f[2] = top, share
		}
		if f[1] < -nearPeak {
			return c, false
		}
	}
	return c, false
}
