package airheat

import (
	"math"

	"cloche.example/internal/domain"
)

// Loss factors of openings, dimensionless, on the velocity pressure of the
// duct they end: a sharp-edged entry flush with a wall, and an outlet, where
// all velocity pressure is lost. The entry is common practice, no source.
const (
	SharpEntry = 0.5
	FreeOutlet = 1.0
)

// SuddenExpansion returns the loss factor, dimensionless, on the velocity
// pressure of the narrow duct, where it widens abruptly; areaRatio is narrow
// over wide area, 0 to 1. NaN outside. Borda and Carnot's momentum balance: (1
// − areaRatio)².
func SuddenExpansion(areaRatio float64) float64 {
	if !(areaRatio >= 0 && areaRatio <= 1) {
		return math.NaN()
	}
	return (1 - areaRatio) * (1 - areaRatio)
}

// StaticRegain returns the static pressure, Pa, regained where the air slows
// from the speed fast to the speed slow (m/s, both -100 to 100) in a fitting
// that turns the share efficiency (0 to 1, a fraction) of the velocity pressure
// into static pressure. NaN outside those ranges and for air outside its own.
func StaticRegain(fast, slow, efficiency float64, air AirProperties) float64 {
	if !shareRange.Contains(efficiency) || !ductSpeedRange.Contains(fast) || !ductSpeedRange.Contains(slow) || !densityRange.Contains(air.Density) {
		return math.NaN()
	}
	return efficiency * air.Density / 2 * (fast*fast - slow*slow)
}

var ductSpeedRange = domain.Range{Min: -100, Max: 100, Unit: "m/s", Source: "incompressible flow"}

// A fitting's table: argument, loss factor.
type fittingRow struct{ at, factor float64 }

// Round elbows of smooth radius, 90 degrees, by centre-line radius over
// diameter, and the factor for other angles; round mitred elbows by angle
// [SmaDuct06] table A-7, A to C.
var (
	smoothElbow = [...]fittingRow{{0.5, 0.71}, {0.75, 0.33}, {1, 0.22}, {1.5, 0.15}, {2, 0.13}, {2.5, 0.12}}
	elbowAngle  = [...]fittingRow{{0, 0}, {20, 0.31}, {30, 0.45}, {45, 0.60}, {60, 0.78}, {75, 0.90}, {90, 1}, {110, 1.13}, {130, 1.20}, {150, 1.28}, {180, 1.40}}
	mitredElbow = [...]fittingRow{{0, 0}, {20, 0.08}, {30, 0.16}, {45, 0.34}, {60, 0.55}, {75, 0.81}, {90, 1.2}}
)

// A disc that turns in a round duct, by its angle from fully open: Weisbach's
// throttle valve as handbooks print it.
var disc = [...]fittingRow{{5, 0.24}, {10, 0.52}, {20, 1.54}, {40, 10.8}, {60, 118}}

// SmoothElbow returns the loss factor, dimensionless, of a round elbow of
// smooth radius for the ratio radiusRatio of the centre line's radius to the
// diameter (0.5 to 2.5, dimensionless) and the angle it turns (0 to 180
// degree). NaN outside. [SmaDuct06] table A-7, linear between its points.
func SmoothElbow(radiusRatio, angle float64) float64 {
	return interpolate(smoothElbow[:], radiusRatio) * interpolate(elbowAngle[:], angle)
}

// MitredElbow returns the loss factor, dimensionless, of a round elbow cut
// and joined at one edge, for the angle it turns (0 to 90 degree), at Reynolds
// numbers above 1.4e5; 40 % more at 1e4. NaN outside. [SmaDuct06] table A-7,
// linear between its points.
func MitredElbow(angle float64) float64 { return interpolate(mitredElbow[:], angle) }

// DiscDamper returns the loss factor, dimensionless, of a round damper whose
// disc stands at the angle from fully open (5 to 60 degree). NaN outside.
// Weisbach's measurements as handbooks print them at 5, 10, 20, 40 and 60
// degrees, linear in the logarithm between them. Dampers differ: take the
// maker's own where there is one.
func DiscDamper(angle float64) float64 {
	logs := disc
	for i := range logs {
		logs[i].factor = math.Log(logs[i].factor)
	}
	return math.Exp(interpolate(logs[:], angle))
}

// interpolate is linear between the rows and NaN outside them.
func interpolate(rows []fittingRow, at float64) float64 {
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		if at >= a.at && at <= b.at {
			return a.factor + (b.factor-a.factor)*(at-a.at)/(b.at-a.at)
		}
	}
	return math.NaN()
}
