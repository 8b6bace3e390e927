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
