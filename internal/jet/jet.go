// Package jet holds the laws of a free air jet into air at rest, for warm jets
// of heaters and cold ones of vents alike: decay of speed and temperature,
// Archimedes number, bend of the axis, and what buoyancy does to a jet straight
// up or down.
//
// Sources, as in the packages that show them:
//
//	HoF17       ASHRAE Handbook of Fundamentals 2017, ch. 20; from memory
//	Hagstrom99  K. Hagström, K. Sirén, A. M. Zhivov, Calculation Methods for Air
//	            Supply Design in Industrial Facilities, 1999
package jet

import (
	"math"

	"cloche.example/internal/constant"
)

// Shape is the shape of the opening.
type Shape uint8

// The shapes.
const (
	Round Shape = iota // any compact opening
	Plane              // a long slot
)

// Law holds the dimensionless numbers of a shape.
type Law struct {
	Velocity, Thermal float64 // decay factors K and KT of plain openings
	Least, Most       float64 // ends of the published band of psi, the bend's factor
	Buoyant           float64 // factor of (KT/K²) Ar X^(n-1) in a jet straight up or down
	Power             float64 // n, power of the distance in the bend
}

// laws by shape. Decay factors: round from memory of [HoF17] ch. 20, which
// gives 5 to 7; plane of [Hagstrom99]. Temperature decays faster than speed
// because heat spreads wider. Bend: buoyancy adds vertical momentum along the
// jet, which for flat profiles gives the least factors; the most are 0.47 of
// Shepelev (from memory) and 0.4, both as in [Hagstrom99], and so are the
// factors of a jet straight up or down.
var laws = [...]Law{
	Round: {Velocity: 6, Thermal: 5, Least: 1.0 / 6, Most: 0.47, Buoyant: 2.5, Power: 3},
	Plane: {Velocity: 2.43, Thermal: 2.0, Least: 4.0 / 15, Most: 0.4, Buoyant: 1.8, Power: 2.5},
}

// LawOf returns the law of a shape.
func LawOf(s Shape) Law { return laws[s] }

// Jet is a free jet. The caller has checked it.
type Jet struct {
	Shape    Shape
	Size     float64 // m: the square root of a compact opening's area, or a slot's height
	Speed    float64 // m/s, at the opening
	Excess   float64 // K, jet over house; negative for a cold one
	House    float64 // °C
	Velocity float64 // K, decay factor of the speed, dimensionless
	Thermal  float64 // KT, decay factor of the temperature difference, dimensionless
}

// Archimedes returns the ratio of buoyancy to momentum at the opening, with
// the sign of Excess: positive for a warm jet, which rises.
func (j Jet) Archimedes() float64 {
	return constant.Gravity * j.Excess * j.Size / ((j.House + constant.ZeroCelsius) * j.Speed * j.Speed)
}

// AxisSpeed returns the largest speed, m/s, at the distance path, m, along a
// jet that buoyancy does not speed: V0 K L/s of a round jet, V0 K sqrt(L/s) of a
// plane one, V0 in the core before that. NaN for a negative path.
func (j Jet) AxisSpeed(path float64) float64 { return j.Speed * j.decay(j.Velocity, path) }

// AxisExcess returns the temperature difference on the axis to the house, K,
// by the law of AxisSpeed with KT in place of K.
func (j Jet) AxisExcess(path float64) float64 { return j.Excess * j.decay(j.Thermal, path) }

// MildExcess is AxisExcess of a jet straight up or down, which draws in more
// air by the factor Buoyant.
func (j Jet) MildExcess(path float64) float64 {
	return j.Excess * j.decay(j.Thermal/j.Buoyant(path), path)
}

// decay is the fall of the axis value for the decay factor k.
func (j Jet) decay(k, path float64) float64 {
	if !(path >= 0) {
		return math.NaN()
	}
	x := path / j.Size
	if j.Shape == Plane {
		x = math.Sqrt(x)
	}
	if x <= k {
		return 1
	}
	return k / x
}

// Throw returns the distance, m, at which AxisSpeed has fallen to terminal,
// m/s, below Speed.
func (j Jet) Throw(terminal float64) float64 {
	x := j.Velocity * j.Speed / terminal
	if j.Shape == Plane {
		x *= x
	}
	return j.Size * x
}

// Buoyant returns the factor, 1 or more, by which buoyancy speeds a warm jet
// straight up, or a cold one straight down, over the distance path, m:
// (1 + a (KT/K²) |Ar| X^(n-1))^(1/3) with X = s/L [Hagstrom99]. A level jet has
// less of it at first. NaN for a negative path.
func (j Jet) Buoyant(path float64) float64 {
	if !(path >= 0) {
		return math.NaN()
	}
	return math.Cbrt(1 + laws[j.Shape].Buoyant*j.Thermal/(j.Velocity*j.Velocity)*math.Abs(j.Archimedes())*j.Shape.Power(path/j.Size))
}

// Bend returns the factor c, 1/m^(n-1) with the sign of Excess, of the height
// c s^n by which the axis lies above its straight line after s along that line:
// psi (KT/K²) Ar (s/L)^n L.
func (j Jet) Bend(psi float64) float64 {
	return psi * j.Thermal / (j.Velocity * j.Velocity) * j.Archimedes() / j.Shape.Power(j.Size)
}

// Power returns s^(n-1) of the bend.
func (s Shape) Power(x float64) float64 {
	if s == Plane {
		return x * math.Sqrt(x)
	}
	return x * x
}
