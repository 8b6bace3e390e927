package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/jet"
)

// JetShape is the shape of the opening a jet leaves.
type JetShape uint8

// The shapes. A row of holes is a row of round jets until they meet, and then
// more like a plane one.
const (
	RoundJet JetShape = iota // round, square or any compact opening
	PlaneJet                 // a long slot
)

// String returns the name of the shape.
func (s JetShape) String() string {
	switch s {
	case RoundJet:
		return "round jet"
	case PlaneJet:
		return "plane jet"
	}
	return fmt.Sprintf("JetShape(%d)", uint8(s))
}

// Jet is a free air jet, blown level or at an angle into a house at rest. Its laws
// are those of small differences of density: by the momentum and the buoyancy that
// leave the opening, speed and excess far out are √(Th/T0) times what they say and
// the bend √(T0/Th) times, T0 and Th the absolute temperatures of supply and house.
// For air of 45 °C in a house of 15 °C that is 5 %; for air of 150 °C the jet is
// slower and cooler by 18 % and bends 21 % more.
type Jet struct {
	Shape    JetShape // of the opening
	Size     float64  // m, 0.001 to 3: the square root of a compact opening's free area, or a slot's height
	Speed    float64  // m/s, 0.05 to 50, at the opening
	Excess   float64  // K, -60 to 200, supply above house temperature; negative for a cool jet
	House    float64  // °C, -60 to 200
	Angle    float64  // degree above the horizontal, -60 to 60
	Velocity float64  // K, 1 to 10, the velocity decay factor, dimensionless
	Thermal  float64  // KT, the temperature decay factor, dimensionless, 1 to 10
}

// DefaultJet returns a level jet of the given shape with the decay factors of
// plain openings; Size, Speed, Excess and House are still to be set.
func DefaultJet(shape JetShape) Jet {
	if shape > PlaneJet {
		return Jet{Shape: shape}
	}
	l := jet.LawOf(jet.Shape(shape))
	return Jet{Shape: shape, Velocity: l.Velocity, Thermal: l.Thermal}
}

// The ranges of Jet's fields.
var (
	jetSizeRange   = domain.Range{Min: 0.001, Max: 3, Unit: "m", Source: "holes to vents"}
	jetSpeedRange  = domain.Range{Min: 0.05, Max: 50, Unit: "m/s", Source: "incompressible flow, above room draughts"}
	jetExcessRange = domain.Range{Min: -60, Max: 200, Unit: "K", Source: "cold air to air of the hottest heaters"}
	jetAngleRange  = domain.Range{Min: -60, Max: 60, Unit: "degree", Source: "the bend is small against the path"}
	jetPathRange   = domain.Range{Min: 0, Max: 1000, Unit: "m", Source: "no jet goes further"}
	jetHeightRange = domain.Range{Min: -1000, Max: 1000, Unit: "m", Source: "no jet goes further"}
	jetReachRange  = domain.Range{Min: 0, Max: 500, Unit: "m", Source: "a path at 60 degrees is twice as long"}
	jetFactorRange = domain.Range{Min: 1, Max: 10, Unit: "dimensionless", Source: "decay factors of openings"}
)

// Check returns every fault of the jet in one error, or nil. The methods hold
// for a jet without faults.
func (j Jet) Check() error {
	var shape error
	if j.Shape > PlaneJet {
		shape = &RangeError{Field: "Shape", Value: float64(j.Shape), Min: float64(RoundJet), Max: float64(PlaneJet), Source: "RoundJet or PlaneJet"}
	}
	return errors.Join(shape,
		jetSizeRange.Check("Size", j.Size),
		jetSpeedRange.Check("Speed", j.Speed),
		jetExcessRange.Check("Excess", j.Excess),
		airTemperatureRange.Check("House", j.House),
		jetAngleRange.Check("Angle", j.Angle),
		jetFactorRange.Check("Velocity", j.Velocity),
		jetFactorRange.Check("Thermal", j.Thermal),
	)
}

func (j Jet) free() jet.Jet {
	return jet.Jet{Shape: jet.Shape(j.Shape), Size: j.Size, Speed: j.Speed, Excess: j.Excess, House: j.House, Velocity: j.Velocity, Thermal: j.Thermal}
}

// AxisSpeed returns the largest speed, m/s, at the distance (m, 0 to 1000)
// along the jet: V0 K √A0/x of a round jet, V0 K √(h/x) of a plane one, and V0
// in the core. NaN outside. [HoF17] ch. 20.
func (j Jet) AxisSpeed(distance float64) float64 {
	if !jetPathRange.Contains(distance) {
		return math.NaN()
	}
	return j.free().AxisSpeed(distance)
}

// AxisExcess returns the largest temperature difference to the house, K, at
// the distance (m, 0 to 1000) along the jet, by the law of AxisSpeed with
// Thermal in place of Velocity. NaN outside.
func (j Jet) AxisExcess(distance float64) float64 {
	if !jetPathRange.Contains(distance) {
		return math.NaN()
	}
	return j.free().AxisExcess(distance)
}

// Throw returns the distance, m, at which the largest speed has fallen to the
// terminal speed (m/s, above 0 and below the jet's Speed; 0.25 and 0.5 are
// usual). NaN outside. The inverse of AxisSpeed.
func (j Jet) Throw(terminal float64) float64 {
	if !(terminal > 0 && terminal < j.Speed) {
		return math.NaN()
	}
	return j.free().Throw(terminal)
}

// Archimedes returns the ratio of buoyancy to momentum at the opening,
// dimensionless: g ΔT0 L/(T V0²) with the jet's Size and the house's absolute
// temperature; positive for a warm jet, negative for a cool one.
func (j Jet) Archimedes() float64 { return j.free().Archimedes() }

// How far inertia rules a jet, in the powers of F = 1/Ar: plane jets
// [VentGuide01] eq. 7.60, round ones [ChenRod80], from memory.
const (
	forcedShare = 0.5
	forcedPlane = 2.0 / 3
)

// ForcedLength returns the distance, m, from the opening up to which inertia
// governs the jet and its speed falls as AxisSpeed says; further on buoyancy
// drives or stops it. 0.5 F^(2/3) h of a plane jet of height h, 0.5 F^(1/2) D
// of a round one of the opening's diameter D, F = T V0²/(g ΔT0 h or D); +Inf
// without a temperature difference.
func (j Jet) ForcedLength() float64 {
	ar := math.Abs(j.Archimedes())
	if j.Shape == PlaneJet {
		return forcedShare * j.Size * math.Pow(1/ar, forcedPlane)
	}
	wide := 2 / math.Sqrt(math.Pi) // diameter over the root of the area
	return forcedShare * j.Size * wide * math.Sqrt(1/(ar*wide))
}

// JetBand is the height of the jet's axis, between the two extremes of the
// published bends.
type JetBand struct {
	Least float64 // m, above the opening, with the weakest bend
	Most  float64 // m, above the opening, with the strongest bend
}

// Height returns the band of heights, m, of the axis above the opening (below
// it: negative) at the horizontal distance (m, 0 to 1000), NaN outside. Warm jets
// rise, cool ones fall. It holds while the bend is small against the distance.
//
// Buoyancy adds vertical momentum along the jet: in a jet of flat profiles that
// gives 1/6 of (KT/K²) Ar X³ for a round jet and 4/15 of (KT/K²) Ar X^(5/2) for a
// plane one, the least bend. The most is 0.47 for round jets by Shepelev (from
// memory) and 0.4 for plane ones, both as in [Hagstrom99].
func (j Jet) Height(distance float64) JetBand {
	if !jetPathRange.Contains(distance) {
		return JetBand{math.NaN(), math.NaN()}
	}
	sin, cos := math.Sincos(j.Angle * math.Pi / 180)
	f := j.free()
	s := distance / cos
	straight, bend := s*sin, s*f.Shape.Power(s)
	l := jet.LawOf(f.Shape)
	return JetBand{straight + f.Bend(l.Least)*bend, straight + f.Bend(l.Most)*bend}
}

// JetImpact is where a jet's axis meets a level surface.
type JetImpact struct {
	Distance float64 // m, horizontal, from the opening; NaN if the axis never gets there
	Speed    float64 // m/s, on the axis there
	Excess   float64 // K, on the axis there, above the house
}

// Meets returns where the axis comes to the level height (m, -1000 to 1000, above
// the opening: a roof film; negative, below it: a crop) within reach (m, 0 to 500,
// horizontal), first by the strongest bend of the band and then by the
// weakest. Fields are NaN if it does not get there, and for arguments outside.
func (j Jet) Meets(height, reach float64) (strongest, weakest JetImpact) {
	if !jetHeightRange.Contains(height) || !jetReachRange.Contains(reach) {
		none := JetImpact{math.NaN(), math.NaN(), math.NaN()}
		return none, none
	}
	at := func(of func(JetBand) float64) JetImpact {
		const steps = 400
		g := func(x float64) float64 { return of(j.Height(x)) - height }
		for i := range steps {
			a, b := reach*float64(i)/steps, reach*float64(i+1)/steps
			if ga, gb := g(a), g(b); ga == 0 || ga < 0 != (gb < 0) || gb == 0 {
				for range 60 {
					if mid := 0.5 * (a + b); g(mid) < 0 == (ga < 0) {
						a = mid
					} else {
						b = mid
					}
				}
				path := b / math.Cos(j.Angle*math.Pi/180)
				return JetImpact{b, j.AxisSpeed(path), j.AxisExcess(path)}
			}
		}
		return JetImpact{math.NaN(), math.NaN(), math.NaN()}
	}
	return at(func(b JetBand) float64 { return b.Most }), at(func(b JetBand) float64 { return b.Least })
}
