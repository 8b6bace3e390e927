package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// DuctSection is the open cross-section of a duct: round, by its Diameter, or
// rectangular, by Width and Height. Make it with Round or Rectangular.
type DuctSection struct {
	Diameter float64 // m, 0.01 to 10, inside; only 0 in a rectangular duct
	Width    float64 // m, 0.01 to 10, inside; 0 for a round duct
	Height   float64 // m, 0.01 to 10, inside; 0 for a round duct
}

// Round is a round section of the given inside diameter, m.
func Round(diameter float64) DuctSection { return DuctSection{Diameter: diameter} }

// Rectangular is a rectangular section of the given inside width and height,
// m.
func Rectangular(width, height float64) DuctSection { return DuctSection{Width: width, Height: height} }

func (s DuctSection) round() bool { return s.Width == 0 && s.Height == 0 }

// Area returns the open area, m².
func (s DuctSection) Area() float64 {
	if s.round() {
		return math.Pi / 4 * s.Diameter * s.Diameter
	}
	return s.Width * s.Height
}

// perimeter returns the wetted perimeter, m.
func (s DuctSection) perimeter() float64 {
	if s.round() {
		return math.Pi * s.Diameter
	}
	return 2 * (s.Width + s.Height)
}

// hydraulic returns four times the area over the perimeter, m, which
// is the diameter of a round duct. Friction of a rectangular duct is computed
// with it and the true velocity.
func (s DuctSection) hydraulic() float64 {
	if s.round() {
		return s.Diameter
	}
	return 4 * s.Area() / s.perimeter()
}

// Huebscher's equivalent diameter [Hueb48], as duct handbooks print it.
const (
	huebscherFactor = 1.30
	huebscherArea   = 0.625
	huebscherSum    = 0.25
)

// EquivalentDiameter returns the diameter, m, of the round duct that has the
// same friction loss per metre at the same flow (not the same velocity):
// De = 1.30 (a b)^0.625/(a + b)^0.25 for a rectangular duct [Hueb48]. It is a
// size for catalogues; System computes with the hydraulic diameter.
func (s DuctSection) EquivalentDiameter() float64 {
	if s.round() {
		return s.Diameter
	}
	return huebscherFactor * math.Pow(s.Width*s.Height, huebscherArea) / math.Pow(s.Width+s.Height, huebscherSum) // [Hueb48]
}

// Segment is a length of duct of one section, with the fittings that see its
// velocity.
type Segment struct {
	Section   DuctSection // open cross-section
	Length    float64     // m, 0 to 10000
	Roughness float64     // m, 0 to 0.02, Colebrook's sand roughness of the wall
	Fittings  float64     // sum of the loss factors K of fittings, dampers, inlet and outlet, on this segment's velocity pressure, dimensionless, 0 to 1e6
}

// The ranges of a Segment's fields.
var (
	ductSizeRange      = domain.Range{Min: 0.01, Max: 10, Unit: "m", Source: "ducts of small houses"}
	ductLengthRange    = domain.Range{Min: 0, Max: 10000, Unit: "m", Source: "ducts of small houses"}
	ductRoughnessRange = domain.Range{Min: 0, Max: 0.02, Unit: "m", Source: "smooth plastic to corrugated and masonry ducts"}
	fittingsRange      = domain.Range{Min: 0, Max: 1e6, Unit: "dimensionless", Source: "open to nearly shut damper"}
	ductFlowRange      = domain.Range{Min: 0, Max: 1000, Unit: "m³/s", Source: "ducts of small houses"}
)

func (s DuctSection) check() error {
	if s.round() {
		return ductSizeRange.Check("Diameter", s.Diameter)
	}
	err := errors.Join(
		ductSizeRange.Check("Width", s.Width),
		ductSizeRange.Check("Height", s.Height),
	)
	if s.Diameter != 0 {
		err = errors.Join(err, domain.Range{Unit: "m", Source: "a section is round or rectangular, not both"}.Check("Diameter", s.Diameter))
	}
	return err
}

func (s Segment) check() error {
	err := domain.Within("Section", s.Section.check())
	if err == nil {
		err = relativeRoughnessRange.Check("Roughness over the diameter", s.Roughness/s.Section.hydraulic())
	}
	return errors.Join(
		err,
		ductLengthRange.Check("Length", s.Length),
		ductRoughnessRange.Check("Roughness", s.Roughness),
		fittingsRange.Check("Fittings", s.Fittings),
	)
}

// System is a row of duct segments that one flow passes, checked by NewSystem. It
// does not change: goroutines may share it.
type System struct {
	runs []run
}

// run is a segment made ready: what does not depend on flow or air.
type run struct {
	segment  Segment
	area     float64 // m²
	diameter float64 // m, hydraulic
	slender  float64 // length over diameter
	rough    float64 // Colebrook's first term
	f4000    float64 // friction factor at turbulentLimit
}

func (s Segment) ready() run {
	d := s.Section.hydraulic()
	return run{
		segment:  s,
		area:     s.Section.Area(),
		diameter: d,
		slender:  s.Length / d,
		rough:    s.Roughness / d / colebrookRough,
		f4000:    Colebrook(turbulentLimit, s.Roughness/d),
	}
}

// NewSystem checks the segments and joins them in series. The error lists
// every fault, each named as Segment[i].Field.
func NewSystem(segments ...Segment) (System, error) {
	var faults []error
	if len(segments) == 0 {
		faults = append(faults, fmt.Errorf("%w: a duct system needs at least one segment", ErrRange))
	}
	s := System{runs: make([]run, len(segments))}
	for i, g := range segments {
		faults = append(faults, domain.Within(fmt.Sprintf("Segment[%d]", i), g.check()))
		s.runs[i] = g.ready()
	}
	if err := errors.Join(faults...); err != nil {
		return System{}, err
	}
	return s, nil
}

// SegmentLoss is the pressure loss of one segment with the terms it is made
// of.
type SegmentLoss struct {
	Velocity         float64 // m/s, flow over open area
	Reynolds         float64 // dimensionless
	Friction         float64 // Darcy friction factor, dimensionless
	VelocityPressure float64 // Pa, density times velocity squared over two
	Wall             float64 // Pa, loss by friction at the wall
	Fittings         float64 // Pa, loss in the fittings
	Total            float64 // Pa
}

// Loss returns the loss of one segment at the flow (m³/s, either sign) of the
// air: (f L/D + K) ρ V²/2, Darcy and Weisbach's law, f by Friction. The
// segment is not checked; use NewSystem for that.
func (s Segment) Loss(flow float64, air AirProperties) SegmentLoss {
	d := s.Section.hydraulic()
	v := flow / s.Section.Area()
	l := SegmentLoss{
		Velocity:         v,
		Reynolds:         math.Abs(v) * d * air.Density / air.Viscosity,
		VelocityPressure: air.Density * v * math.Abs(v) / 2,
	}
	if v == 0 {
		return l
	}
	l.Friction = Friction(l.Reynolds, s.Roughness/d)
	l.Wall = l.Friction * s.Length / d * l.VelocityPressure
	l.Fittings = s.Fittings * l.VelocityPressure
	l.Total = l.Wall + l.Fittings
	return l
}

// Loss returns the pressure, Pa, that the flow (m³/s, either sign) of the air
// loses in all segments.
func (s System) Loss(flow float64, air AirProperties) float64 {
	loss, _ := s.loss(flow, air)
	return loss
}

// LossesTo writes the loss of each segment at the flow (m³/s) of the air into
// dst and returns it; a nil dst allocates, otherwise its length must be the
// number of segments.
func (s System) LossesTo(dst []SegmentLoss, flow float64, air AirProperties) []SegmentLoss {
	if dst == nil {
		dst = make([]SegmentLoss, len(s.runs))
	}
	if len(dst) != len(s.runs) {
		panic("airheat: dst has not the length of the system")
	}
	for i, r := range s.runs {
		dst[i] = r.segment.Loss(flow, air)
	}
	return dst
}

// loss returns the loss, Pa, and its slope by flow, Pa s/m³.
func (s System) loss(flow float64, air AirProperties) (loss, slope float64) {
	nu := air.Viscosity / air.Density
	for i := range s.runs {
		l, ds := s.runs[i].loss(flow, nu)
		loss += l
		slope += ds
	}
	return loss * air.Density / 2, slope * air.Density / 2
}

// loss returns (f L/D + K) V|V| and its slope by flow, for the kinematic
// viscosity nu. Laminar friction is linear in V, so nothing divides by zero.
func (r *run) loss(flow, nu float64) (loss, slope float64) {
	v := flow / r.area
	speed := math.Abs(v)
	re := speed * r.diameter / nu
	f, df := 0.0, 0.0 // f and Re df/dRe
	switch {
	case r.slender == 0:
	case re <= laminarLimit:
		linear := laminar * nu / r.diameter * r.slender // f V = 64 ν/D
		return linear*v + r.segment.Fittings*v*speed, (linear + 2*r.segment.Fittings*speed) / r.area
	case re < turbulentLimit:
		f = between(re, r.f4000)
		df = (r.f4000 - laminar/laminarLimit) * (re / (turbulentLimit - laminarLimit))
	default:
		// colebrookRoot without the call: every duct of a network comes by here.
		b := colebrookSmooth / re
		x, k := colebrookFrom(colebrookStart(colebrookMiddle, b, r.rough), b, r.rough)
		f = 1 / (x * x)
		df = -2 * f * k / (1 + k)
	}
	c := f*r.slender + r.segment.Fittings
	return c * v * speed, (2*c + df*r.slender) * speed / r.area
}

// FlowAt returns the flow, m³/s, that the pressure (0 to 1e6 Pa) drives
// through the system. The error is a *RangeError, or ErrNoSolution for a
// system without any resistance.
func (s System) FlowAt(pressure float64, air AirProperties) (float64, error) {
	if err := errors.Join(ductPressureRange.Check("pressure", pressure), domain.Within("air", air.check())); err != nil {
		return math.NaN(), err
	}
	q, err := flowAt(func(q float64) (float64, float64) { return s.loss(q, air) }, pressure)
	if err != nil {
		return math.NaN(), fmt.Errorf("flow at %g Pa: %w", pressure, err)
	}
	return q, nil
}

// ductPressureRange is the range of a pressure that drives a flow.
var ductPressureRange = domain.Range{Min: 0, Max: 1e6, Unit: "Pa", Source: "ducts of small houses"}
