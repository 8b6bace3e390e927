package lighting

import (
	"math"

	"cloche.example/internal/domain"
)

// daylightPARShare is the fraction of the energy of global radiation from 400 to
// 700 nm: 0.45 by [Faust18]; the clear sky of [AstmSun03] has 0.430.
const daylightPARShare = 0.45

// Photons of PAR in a joule of global radiation, µmol/J. Authors differ by
// 4 %; a site's own sensors beat all three.
const (
	// DaylightFaust has 0.45 of the energy in PAR, at 4.48 µmol/J [Faust18].
	DaylightFaust = daylightPARShare * 4.48
	// DaylightThimijan has 0.45 of the energy in PAR, at the 4.57 µmol/J of sun
	// and sky of [Thimijan83].
	DaylightThimijan = daylightPARShare * 4.57
	// DaylightClear is the ratio in the spectrum AM1.5 global under a clear sky
	// [AstmSun03], µmol/J.
	DaylightClear = 1.977
)

// daylightRatioRange is where the photons of PAR in a joule of daylight lie.
var daylightRatioRange = domain.Range{Min: 1.7, Max: 2.5, Unit: "µmol/J", Source: "clear and dry to overcast and moist"}

// OutdoorDLI returns the daily light outside in mol/(m² d) of the global
// radiation, J/(m² d), at least 0, with perJoule, µmol/J, 1.7 to 2.5, photons of
// PAR in each joule, such as DaylightFaust. NaN outside.
func OutdoorDLI(global, perJoule float64) float64 {
	if !(global >= 0) || !daylightRatioRange.Contains(perJoule) {
		return math.NaN()
	}
	return global * perJoule * micromole
}

// InsideDLI returns the daily light on the bed, mol/(m² d), of the light
// outdoor, mol/(m² d), 0 to 80, of which the fraction transmittance, 0 to 1,
// reaches the bed: cover, frame, dirt and shade together. NaN outside.
func InsideDLI(outdoor, transmittance float64) float64 {
	if !dliRange.Contains(outdoor) || !shareRange.Contains(transmittance) {
		return math.NaN()
	}
	return outdoor * transmittance
}

// Deficit returns the daily light that is missing, mol/(m² d): target less
// daylight, both mol/(m² d), 0 to 80, and never below 0. NaN outside.
func Deficit(target, daylight float64) float64 {
	if !dliRange.Contains(target) || !dliRange.Contains(daylight) {
		return math.NaN()
	}
	return max(0, target-daylight)
}
