package sun

import (
	"math"

	"cloche.example/internal/domain"
)

// The diffuse part of the radiation of an hour, [Erbs82], the
// coefficients as pvlib-python and others quote them; the paper was not at hand.
const (
	erbsDull, erbsClear               = 0.22, 0.80 // clearness between which the polynomial holds
	erbsSlope                         = 0.09       // below
	erbs0, erbs1, erbs2, erbs3, erbs4 = 0.9511, -0.1604, 4.388, -16.638, 12.336
	erbsAbove                         = 0.165
)

// clearnessRange leaves room for hours that clouds beside the sun make
// brighter than the sky above the atmosphere.
var clearnessRange = domain.Range{Min: 0, Max: 2, Unit: "fraction", Source: "chosen; hours above 1 are rare"}

// Erbs returns the fraction of the global radiation on level ground that comes
// from the sky and not from the sun's disc, for an hour of the given
// clearness, fraction, 0 to 2, which is that global radiation over what falls
// on a level plane outside the atmosphere: [Erbs82], fitted to four stations of
// the United States (from memory). It is a mean: single hours scatter widely
// about it. NaN outside.
func Erbs(clearness float64) float64 {
	k := clearness
	switch {
	case !clearnessRange.Contains(k):
		return math.NaN()
	case k <= erbsDull:
		return 1 - erbsSlope*k // [Erbs82] eq. 1
	case k <= erbsClear:
		return erbs0 + k*(erbs1+k*(erbs2+k*(erbs3+k*erbs4))) // [Erbs82] eq. 1
	}
	return erbsAbove
}

// LowSun is the mean elevation of an hour, degree, below which its global
// radiation is taken as diffuse: so low, hourly data say little of the beam
// (chosen).
const LowSun = 3.0

// Split returns the beam across itself and the diffuse radiation on level ground
// of an hour, both W/m², whose mean global radiation on level ground is global,
// W/m², at least 0: by [Erbs82], all of it diffuse below LowSun, and no beam
// brighter than above the atmosphere. NaN for a negative global.
func (h HourSun) Split(global float64) (direct, diffuse float64) {
	switch {
	case !(global >= 0):
		return none, none
	case !(h.Sine > 0) || h.Elevation < LowSun:
		return 0, global
	}
	sinE := h.Sine / h.Lit
	diffuse = global * Erbs(math.Min(clearnessRange.Max, global/(h.Extraterrestrial*h.Sine)))
	direct = math.Min(h.Extraterrestrial, (global-diffuse)/sinE)
	return direct, global - direct*sinE
}
