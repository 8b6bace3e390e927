package envelope

import (
	"math"

	"cloche.example/internal/domain"
)

// Ranges of the free-standing correlations.
var (
	platePrandtlRange   = domain.Range{Min: 0.5, Max: 2e4, Unit: "number", Source: "chosen: gases and liquids"}
	plateRayleighRange  = domain.Range{Min: 0, Max: 1e12, Unit: "number", Source: "Churchill and Chu 1975 (limit from memory)"}
	slotRayleighRange   = domain.Range{Min: 1e4, Max: 1e7, Unit: "number", Source: "MacGregor and Emery 1969, from memory"}
	slotAspectRange     = domain.Range{Min: 10, Max: 100, Unit: "ratio", Source: "MacGregor and Emery 1969 give 10 to 40 (from memory); their users go on to 75"}
	mitchellVolumeRange = domain.Range{Min: 1, Max: 1e5, Unit: "m³", Source: "chosen: houses"}
	mcAdamsPublished    = domain.Range{Min: 0, Max: 30, Unit: "m/s", Source: "McAdams 1954 (from memory)"}
)

// Coefficients of the plate and slot correlations.
const (
	plate0, plate1, plateN = 0.825, 0.387, 1.0 / 6 // [ChuChu75]
	platePr, platePrN      = 0.492, 9.0 / 16       // [ChuChu75]
	platePrOuter           = 8.0 / 27              // [ChuChu75]
	slotFactor             = 0.42                  // [MacEme69]
	slotRa, slotPr, slotHL = 0.25, 0.012, -0.3     // [MacEme69]
)

// ChurchillChu returns the dimensionless Nusselt number of free convection at
// an upright plate for the dimensionless Rayleigh number ra, 0 to 1e12, over its
// height and the Prandtl number pr, 0.5 to 2e4: [ChuChu75] for laminar and
// turbulent flow together. NaN outside these.
func ChurchillChu(ra, pr float64) float64 {
	if !plateRayleighRange.Contains(ra) || !platePrandtlRange.Contains(pr) {
		return nan
	}
	nu, _ := plateNusselt(ra, pr)
	return nu
}

// plateNusselt returns [ChuChu75] and its derivative over ln(ra).
func plateNusselt(ra, pr float64) (nu, slope float64) {
	x := plate1 * math.Pow(ra, plateN) / math.Pow(1+math.Pow(platePr/pr, platePrN), platePrOuter)
	root := plate0 + x
	return root * root, 2 * root * x * plateN
}

// MacGregorEmery returns the dimensionless Nusselt number across an upright
// slot for the dimensionless Rayleigh number ra, 1e4 to 1e7, over its width,
// the Prandtl number pr, 0.5 to 2e4, and the aspect, ratio, 10 to 100, of
// height to width: [MacEme69], as handbooks of heat transfer print it for gaps
// of windows. NaN outside these. Covers are solved with GapNusselt; this is an
// alternative to it.
func MacGregorEmery(ra, pr, aspect float64) float64 {
	if !slotRayleighRange.Contains(ra) || !platePrandtlRange.Contains(pr) || !slotAspectRange.Contains(aspect) {
		return nan
	}
	return slotFactor * math.Pow(ra, slotRa) * math.Pow(pr, slotPr) * math.Pow(aspect, slotHL)
}

// Coefficients of the wind correlations that OutsideConvection does not hold.
const (
	mcAdamsStill, mcAdamsWind      = 5.7, 3.8   // [McAdams54]
	mcAdamsFast, mcAdamsPower      = 6.47, 0.78 // [McAdams54]
	mcAdamsLimit                   = 5.0        // m/s, [McAdams54]
	mitchellLeast, mitchellFactor  = 5.0, 8.6   // [Mitchell76]
	mitchellPower, mitchellByScale = 0.6, 0.4   // [Mitchell76]
)

// McAdams returns the surface coefficient in W/(m² K) for the wind v at the
// surface, m/s, 0 to 30, 5.7 + 3.8 v below 5 m/s and 6.47 v^0.78 above [McAdams54]
// (from memory). It holds radiation to surroundings at air temperature, so
// that it is no OutsideConvection: with a cover that radiates by itself it
// would count radiation twice. NaN outside.
func McAdams(v float64) float64 {
	if !mcAdamsPublished.Contains(v) {
		return nan
	}
	if v < mcAdamsLimit {
		return mcAdamsStill + mcAdamsWind*v // [McAdams54]
	}
	return mcAdamsFast * math.Pow(v, mcAdamsPower) // [McAdams54]
}

// Mitchell returns the convection coefficient in W/(m² K) of a whole building
// in the wind v, m/s, 0 to 40, and of the volume, m³, 1 to 1e5: the larger of 5
// and 8.6 v^0.6 / L^0.4 with the length L of the cube root of the volume
// [Mitchell76] (from memory). It holds no radiation: give it to OutsideGiven.
// NaN outside these.
func Mitchell(v, volume float64) float64 {
	if !localWindRange.Contains(v) || !mitchellVolumeRange.Contains(volume) {
		return nan
	}
	l := math.Cbrt(volume)
	return math.Max(mitchellLeast, mitchellFactor*math.Pow(v, mitchellPower)/math.Pow(l, mitchellByScale)) // [Mitchell76]
}
