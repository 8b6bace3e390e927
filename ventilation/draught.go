package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/jet"
)

// InletShape is the shape of the opening that cold air enters by.
type InletShape uint8

// The shapes.
const (
	CompactInlet InletShape = iota // a vent about as long as high
	SlotInlet                      // a long vent, many times longer than open
)

// Ranges of a cold jet.
var (
	inletSizeRange   = domain.Range{Min: 1e-4, Max: 10, Unit: "m", Source: "gaps to wide-open vents"}
	inletSpeedRange  = domain.Range{Min: 1e-4, Max: 40, Unit: "m/s", Source: "air through vents"}
	inletExcessRange = domain.Range{Min: -80, Max: 0, Unit: "K", Source: "cold air; small differences of density"}
	inletAngleRange  = domain.Range{Min: -90, Max: 60, Unit: "degree", Source: "straight down to steeply up"}
	inletFactorRange = domain.Range{Min: 1, Max: 10, Source: "decay factors of openings"}
	dropRange        = domain.Range{Min: 0, Max: 50, Unit: "m", Source: "houses"}
	reachRange       = domain.Range{Min: 0.01, Max: 500, Unit: "m", Source: "houses"}
	openRange        = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "shut to wholly open"}
)

var inletShapeNames = []string{"compact", "slot"}

// String names the shape.
func (i InletShape) String() string { return enumName("InletShape", inletShapeNames, uint8(i)) }

// ColdJet is a jet of cold air that enters a warm house at rest.
type ColdJet struct {
	Shape    InletShape // of the opening
	Size     float64    // m, 0.0001 to 10, the square root of a compact opening's effective area (discharge coefficient times area), or a slot's effective height
	Speed    float64    // m/s, 0.0001 to 40, through the effective area
	Excess   float64    // K, -80 to 0, entering air over house air, zero or less
	House    float64    // °C, -60 to 80
	Angle    float64    // degree, -90 to 60, above the horizontal; -90 is straight down
	Velocity float64    // dimensionless, 1 to 10, decay factor K of the speed
	Thermal  float64    // dimensionless, 1 to 10, decay factor KT of the temperature difference
}

// DefaultColdJet returns a level jet of the given shape with the decay factors
// of plain openings; Size, Speed, Excess and House are still to be set.
func defaultColdJet(shape InletShape) ColdJet {
	if shape > SlotInlet {
		return ColdJet{Shape: shape}
	}
	l := jet.LawOf(jet.Shape(shape))
	return ColdJet{Shape: shape, Velocity: l.Velocity, Thermal: l.Thermal}
}

// Check joins every fault of j, by field.
func (j ColdJet) check() error {
	return errors.Join(
		enumFault("Shape", "InletShape", inletShapeNames, uint8(j.Shape)),
		inletSizeRange.Check("Size", j.Size),
		inletSpeedRange.Check("Speed", j.Speed),
		inletExcessRange.Check("Excess", j.Excess),
		temperatureRange.Check("House", j.House),
		inletAngleRange.Check("Angle", j.Angle),
		inletFactorRange.Check("Velocity", j.Velocity),
		inletFactorRange.Check("Thermal", j.Thermal),
	)
}

func (j ColdJet) free() jet.Jet {
	return jet.Jet{Shape: jet.Shape(j.Shape), Size: j.Size, Speed: j.Speed, Excess: j.Excess, House: j.House, Velocity: j.Velocity, Thermal: j.Thermal}
}

// Archimedes returns the ratio of buoyancy to momentum at the opening,
// dimensionless, zero or less for cold air, which falls: g dT0 L/(T V0²), with
// the house's absolute temperature.
func (j ColdJet) Archimedes() float64 { return j.free().Archimedes() }

// axisSpeed returns the largest speed, m/s, at the distance path, m, along a
// jet that its weight does not speed: V0 K L/s of a compact jet, V0 K sqrt(L/s)
// of a slot, V0 in the core before that [HoF17] ch. 20. Times Falling it is
// that of a jet straight down. NaN for a negative path.
func (j ColdJet) axisSpeed(path float64) float64 { return j.free().AxisSpeed(path) }

// axisExcess returns the temperature difference on the axis to the house, K,
// zero or less, at the distance path, m, along the jet: dT0 KT L/s of a compact
// jet, dT0 KT sqrt(L/s) of a slot, dT0 in the core [HoF17] ch. 20. It is the
// colder answer. NaN for a negative path.
func (j ColdJet) axisExcess(path float64) float64 { return j.free().AxisExcess(path) }

// mildExcess returns the same, K at path, m, over Falling: a slow cold jet soon
// falls as a plume, and draws in more air than the law of axisExcess knows.
func (j ColdJet) mildExcess(path float64) float64 { return j.free().MildExcess(path) }

// falling returns the factor, dimensionless and 1 or more, by which its weight
// speeds a jet straight down over the distance path, m, and by which it dilutes
// the more: (1 + a (KT/K²) |Ar| X^(n-1))^(1/3) with X = s/L, a 2.5 and n 3 of a
// compact jet, 1.8 and 5/2 of a slot [Hagstrom99]. A level jet has less of it at
// first. NaN for a negative path.
func (j ColdJet) falling(path float64) float64 { return j.free().Buoyant(path) }

// Landing is where the axis of a cold jet comes down to a height.
type Landing struct {
	Distance    float64 // m, level distance from the opening; the reach if the far wall stops it
	Path        float64 // m, along the jet
	Speed       float64 // m/s, on the axis, AxisSpeed times Falling: the faster answer
	Temperature float64 // °C, on the axis, by the decay of a jet: the colder answer
	Mild        float64 // °C, on the axis, by that of a falling jet: the milder
	Struck      bool    // the far wall stops the jet, the air runs down it
}

// Fall is the fall of a cold jet to a height, by both ends of the published
// band: the two differ threefold in the drop at a given distance.
type Fall struct {
	Steep   Landing // with the strongest bend
	Shallow Landing // with the weakest
	Coldest float64 // °C, the lowest of both
}

// Fall returns where the jet comes down by drop, m, 0 to 50, below the
// opening, with the far wall at the level distance reach, m, 0.01 to 500. The
// axis drops below its straight line by
//
//	y = psi (KT/K²) Ar (s/L)^n L, n 3 of a compact jet, 5/2 of a slot,
//
// with s the distance along that line; dilution counts along the bent axis.
// At a drop of zero the air has its outside temperature. The fields are NaN
// where a field, drop or reach lies outside its range.
func (j ColdJet) Fall(drop, reach float64) Fall {
	nan := math.NaN()
	if !(dropRange.Contains(drop) && reachRange.Contains(reach)) || j.check() != nil {
		none := Landing{nan, nan, nan, nan, nan, false}
		return Fall{none, none, nan}
	}
	law := jet.LawOf(jet.Shape(j.Shape))
	f := Fall{Steep: j.land(law.Most, drop, reach), Shallow: j.land(law.Least, drop, reach)}
	f.Coldest = math.Min(f.Steep.Temperature, f.Shallow.Temperature)
	return f
}

// Drop returns how far the axis lies below the opening, m, at the level
// distance, m, with the bend steep or else shallow, for a path to be drawn;
// NaN outside and for a jet straight down.
func (j ColdJet) Drop(distance float64, steep bool) float64 {
	if !(distance >= 0) || j.check() != nil || j.Angle == inletAngleRange.Min {
		return math.NaN()
	}
	law := jet.LawOf(jet.Shape(j.Shape))
	psi := law.Least
	if steep {
		psi = law.Most
	}
	b := j.bend(psi)
	return b.drop(distance / b.cos)
}
