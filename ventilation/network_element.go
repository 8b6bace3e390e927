package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Ranges of the elements of a network.
var (
	heightRange        = domain.Range{Min: -10, Max: 50, Unit: "m", Source: "protected-cropping houses"}
	openHeightRange    = domain.Range{Min: domain.MoreThan(0), Max: 50, Unit: "m", Source: "protected-cropping houses"}
	areaRange          = domain.Range{Min: 0, Max: 1e5, Unit: "m²", Source: "protected-cropping houses"}
	openAreaRange      = domain.Range{Min: domain.MoreThan(0), Max: 1e5, Unit: "m²", Source: "protected-cropping houses"}
	dischargeRange     = domain.Range{Min: 0, Max: 1, Source: "a jet carries at most the area times the ideal speed"}
	openDischargeRange = domain.Range{Min: domain.MoreThan(0), Max: 1, Source: "a jet carries at most the area times the ideal speed"}
	pressureCoefRange  = domain.Range{Min: -3, Max: 2, Source: "stagnation is 1, suction peaks reach about -3; above 1 where the reference wind is that of a lower level"}
	verticalRange      = domain.Range{Min: 0, Max: 20, Unit: "m", Source: "protected-cropping houses"}
	openVerticalRange  = domain.Range{Min: domain.MoreThan(0), Max: 20, Unit: "m", Source: "protected-cropping houses"}
	viscousRange       = domain.Range{Min: 0, Max: 1e6, Unit: "Pa s/m³", Source: "screens on vents of protected-cropping houses"}
	exponentRange      = domain.Range{Min: 0.5, Max: 1, Source: "turbulent to laminar flow"}
	leakageRange       = domain.Range{Min: domain.MoreThan(0), Max: 100, Unit: "m³/(s Pa^n)", Source: "protected-cropping houses"}
	changesFlowRange   = domain.Range{Min: -1e6, Max: 1e6, Unit: "m³/s", Source: "far above any house"}
	driveRange         = domain.Range{Min: 0, Max: 1e5, Unit: "Pa", Source: "up to a vacuum"}
	fanFlowRange       = domain.Range{Min: -500, Max: 500, Unit: "m³/s", Source: "protected-cropping houses"}
	fanSlopeRange      = domain.Range{Min: 0, Max: 10, Unit: "m³/(s Pa)", Source: "a rising curve would be unstable"}
)

// Opening is a vent, door or gap with the flow of an orifice. With Vertical
// zero it is a point at Height; otherwise it reaches from Height - Vertical/2
// to Height + Vertical/2 with uniform width, and air can pass both ways inside
// it: TallVent makes one of bottom, top and width.
type Opening struct {
	Name                string  // names the opening in errors and reports
	Height              float64 // m, -10 to 50, above the datum (outside grade), of the middle; of the vent of a Well, -10 to 0
	Vertical            float64 // m, 0 to 20, vertical extent; 0 is a point
	Area                float64 // m², more than 0, at most 1e5, the area to which Discharge refers
	Discharge           float64 // dimensionless, more than 0, at most 1, discharge coefficient on Area
	Viscous             float64 // Pa s/m³, resistance in series that grows with the flow itself, as of a screen; 0 is none; of points only
	PressureCoefficient float64 // dimensionless, -3 to 2, wind pressure coefficient
}

// Leak is a leakage path at a height with a flow exponent:
// Q = Flow |dp|^Exponent, in volume of the air that passes.
type Leak struct {
	Name                string  // names the path in errors and reports
	Height              float64 // m, -10 to 50, above the datum
	Flow                float64 // m³/(s Pa^n), more than 0, at most 100; flow coefficient: the flow at 1 Pa, m³/s
	Exponent            float64 // dimensionless flow exponent n, 0.5 to 1
	PressureCoefficient float64 // dimensionless, -3 to 2, wind pressure coefficient
}

// FixedFan moves air with a straight fan curve: Q = Flow + Slope dp, in volume of
// the air that passes, dp the pressure outside less that inside. A Slope of
// zero is a fan of constant flow.
type FixedFan struct {
	Name                string  // names the fan in errors and reports
	Height              float64 // m, -10 to 50, above the datum
	Flow                float64 // m³/s, -500 to 500, at no pressure difference; positive blows in, negative draws out
	Slope               float64 // m³/(s Pa), 0 to 10; 0 for constant flow
	PressureCoefficient float64 // dimensionless, -3 to 2, wind pressure coefficient
}

// PathFlow is the flow through one element.
type PathFlow struct {
	Drive float64 // Pa, pressure outside less that inside at the element's height (a tall opening's middle)
	In    float64 // kg/s, inward
	Out   float64 // kg/s, outward
}

// net returns the flow inward less the flow outward, kg/s.
func (f PathFlow) net() float64 { return f.In - f.Out }

func (o Opening) check(where string) error {
	if o.Viscous == 0 && areaRange.Contains(o.Area) && o.Area > 0 && dischargeRange.Contains(o.Discharge) && o.Discharge > 0 &&
		heightRange.Contains(o.Height) && verticalRange.Contains(o.Vertical) && pressureCoefRange.Contains(o.PressureCoefficient) {
		return nil
	}
	viscous := viscousRange
	if o.Vertical > 0 {
		viscous = domain.Range{Min: 0, Max: 0, Unit: viscous.Unit, Source: "a tall opening takes no screen: give it as points, one above the other"}
	}
	return errors.Join(
		viscous.Check(where+".Viscous", o.Viscous),
		heightRange.Check(where+".Height", o.Height),
		verticalRange.Check(where+".Vertical", o.Vertical),
		openAreaRange.Check(where+".Area", o.Area),
		openDischargeRange.Check(where+".Discharge", o.Discharge),
		pressureCoefRange.Check(where+".PressureCoefficient", o.PressureCoefficient),
	)
}

func (l Leak) check(where string) error {
	return errors.Join(
		heightRange.Check(where+".Height", l.Height),
		leakageRange.Check(where+".Flow", l.Flow),
		exponentRange.Check(where+".Exponent", l.Exponent),
		pressureCoefRange.Check(where+".PressureCoefficient", l.PressureCoefficient),
	)
}

func (f FixedFan) check(where string) error {
	return errors.Join(
		heightRange.Check(where+".Height", f.Height),
		fanFlowRange.Check(where+".Flow", f.Flow),
		fanSlopeRange.Check(where+".Slope", f.Slope),
		pressureCoefRange.Check(where+".PressureCoefficient", f.PressureCoefficient),
	)
}

// place names element i of a list in errors.
func place(list string, i int, name string) string {
	if name == "" {
		return fmt.Sprintf("%s[%d]", list, i)
	}
	return fmt.Sprintf("%s[%d] %q", list, i, name)
}

// path is an element prepared for solving. Drives are outside over inside.
type path struct {
	bottom, top float64 // m, heights of the ends; equal for all but a tall opening
	wind        float64 // dimensionless pressure coefficient
	flow        float64 // orifice: Cd A sqrt 2; leak: C; fan: volume flow
	exponent    float64 // leak
	slope       float64 // fan: slope; screened point: viscous resistance
	kind        pathKind
}

type pathKind uint8

const (
	pointPath pathKind = iota
	tallPath
	screenPath
	leakPath
	fanPath
)

func (o Opening) path() path {
	p := path{wind: o.PressureCoefficient, flow: o.Discharge * o.Area * math.Sqrt2, bottom: o.Height, top: o.Height}
	if o.Viscous > 0 {
		p.kind, p.slope = screenPath, o.Viscous
	}
	if o.Vertical > 0 {
		p.kind = tallPath
		p.bottom, p.top = o.Height-0.5*o.Vertical, o.Height+0.5*o.Vertical
	}
	return p
}

func (l Leak) path() path {
	return path{kind: leakPath, bottom: l.Height, top: l.Height, wind: l.PressureCoefficient, flow: l.Flow, exponent: l.Exponent}
}

func (f FixedFan) path() path {
	return path{kind: fanPath, bottom: f.Height, top: f.Height, wind: f.PressureCoefficient, flow: f.Flow, slope: f.Slope}
}

// air is what the two sides of a path hold: density and its square root.
type air struct{ rho, root float64 }

func newAir(rho float64) air { return air{rho, math.Sqrt(rho)} }

// flows returns the mass flow inward and outward, kg/s, for the drives at the
// bottom and at the top, Pa, and the rate at which the net flow grows with
// the drive, kg/(s Pa), which may be infinite at a drive of zero.
func (p *path) flows(bottom, top float64, outside, inside air) (in, out, rate float64) {
	switch p.kind {
	case pointPath:
		if bottom >= 0 {
			s := math.Sqrt(bottom)
			k := p.flow * outside.root
			return k * s, 0, 0.5 * k / s
		}
		s := math.Sqrt(-bottom)
		k := p.flow * inside.root
		return 0, k * s, 0.5 * k / s
	case tallPath:
		return tallFlows(p.flow*outside.root, p.flow*inside.root, bottom, top)
	case screenPath:
		// dp = a Q + b Q²: Q = 2 dp/(a + sqrt(a² + 4 b dp)), b = rho/(Cd A)²/2.
		rho := outside.rho
		if bottom < 0 {
			rho = inside.rho
		}
		root := math.Sqrt(p.slope*p.slope + 4*rho/(p.flow*p.flow)*math.Abs(bottom))
		m := rho * 2 * math.Abs(bottom) / (p.slope + root)
		if bottom < 0 {
			return 0, m, rho / root
		}
		return m, 0, rho / root
	case leakPath:
		rho := outside.rho
		if bottom < 0 {
			rho = inside.rho
		}
		size := math.Abs(bottom)
		if size == 0 {
			return 0, 0, math.Inf(1)
		}
		m := rho * p.flow * math.Pow(size, p.exponent)
		rate = p.exponent * m / size
		if bottom < 0 {
			return 0, m, rate
		}
		return m, 0, rate
	default:
		q := p.flow + p.slope*bottom
		if q < 0 {
			return 0, -q * inside.rho, p.slope * inside.rho
		}
		return q * outside.rho, 0, p.slope * outside.rho
	}
}

// tallFlows integrates dm/dz = k sqrt|dp| over an opening with the drive going
// straight from bottom to top, Pa. Where both ends have one sign,
//
//	mean sqrt = (2/3) (s1² + s1 s2 + s2²)/(s1 + s2), s = sqrt|dp|,
//
// which holds for equal ends too; else each direction takes its share of the
// height with one end at zero. kIn and kOut are Cd A sqrt(2 rho) for air coming
// in and going out.
func tallFlows(kIn, kOut, bottom, top float64) (in, out, rate float64) {
	a, b := math.Abs(bottom), math.Abs(top)
	s, t := math.Sqrt(a), math.Sqrt(b)
	if (bottom >= 0) == (top >= 0) || a == 0 || b == 0 {
		if s+t == 0 {
			return 0, 0, math.Inf(1)
		}
		mean := (2.0 / 3) * (a + s*t + b) / (s + t)
		if bottom+top > 0 {
			return kIn * mean, 0, kIn / (s + t)
		}
		return 0, kOut * mean, kOut / (s + t)
	}
	share := 1 / (a + b)
	if bottom > 0 {
		in, out = kIn*(2.0/3)*a*s*share, kOut*(2.0/3)*b*t*share
		return in, out, (kIn*s + kOut*t) * share
	}
	in, out = kIn*(2.0/3)*b*t*share, kOut*(2.0/3)*a*s*share
	return in, out, (kIn*t + kOut*s) * share
}

// drive returns the pressure outside less that inside, Pa, at height z, m,
// for the conditions and the inside pressure at the datum [definition in
// doc.go]: (rho_o Cp U²/2 - rho_o g z) - (P0 - rho_i g z). Each product is
// rounded by itself on every processor, so that openings of one drive find
// exactly none at the pressure that bracket gives: the root of a rounding error
// would be a flow.
func (p *path) drive(z, dynamic, buoyancy, pressure float64) float64 {
	return float64(p.wind*dynamic) + float64(buoyancy*z) - pressure
}

// buoyancy returns (rho_i - rho_o) g, Pa/m.
func buoyancy(c FlowConditions) float64 {
	return (c.InsideDensity - c.OutsideDensity) * constant.Gravity
}
