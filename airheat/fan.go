package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Fan is a fan's pressure against its flow as tested at 1.2 kg/m³ and one
// speed: a table joined by straight lines, or a polynomial between two flows.
// It may rise and fall; OperatingPoint finds every intersection. A Fan does
// not change: goroutines may share it.
type Fan struct {
	flow     []float64 // m³/s, the knots: table points, or ends, extremes and inflections of the polynomial
	pressure []float64 // Pa at the knots
	convex   []bool    // piece i, from knot i to i+1, curves upward
	poly     []float64 // coefficients, lowest first; nil for a table
	peak     int       // the knot of the rightmost local maximum of the pressure
}

// fanFlowRange and fanPressureRange hold for the points of a fan curve.
var (
	fanFlowRange     = domain.Range{Min: 0, Max: 1000, Unit: "m³/s", Source: "fans of small houses"}
	fanPressureRange = domain.Range{Min: -1e5, Max: 1e5, Unit: "Pa", Source: "fans, not blowers or compressors"}
)

// NewFanTable returns the fan that a table of two or more points describes:
// flow in m³/s, 0 to 1000, rising, at the fan's inlet, and the fan pressure
// there in Pa, -1e5 to 1e5, for air of 1.2 kg/m³. Between points the pressure is linear; outside the
// table nothing is assumed. The error lists every fault.
func NewFanTable(flow, pressure []float64) (Fan, error) {
	var faults []error
	if len(flow) != len(pressure) {
		faults = append(faults, fmt.Errorf("%w: %d flows and %d pressures", ErrRange, len(flow), len(pressure)))
	}
	if len(flow) < 2 {
		faults = append(faults, fmt.Errorf("%w: a fan table of %d points, at least 2 are needed", ErrRange, len(flow)))
	}
	for i, q := range flow {
		r := fanFlowRange
		if i > 0 && flow[i-1] > r.Min {
			r.Min, r.Source = math.Nextafter(flow[i-1], math.Inf(1)), "the flows of a table rise"
		}
		faults = append(faults, r.Check(fmt.Sprintf("flow[%d]", i), q))
	}
	for i, p := range pressure {
		faults = append(faults, fanPressureRange.Check(fmt.Sprintf("pressure[%d]", i), p))
	}
	if err := errors.Join(faults...); err != nil {
		return Fan{}, err
	}
	f := Fan{
		flow:     append([]float64(nil), flow...),
		pressure: append([]float64(nil), pressure...),
		convex:   make([]bool, len(flow)-1),
	}
	f.findPeak()
	return f, nil
}

// maxFanDegree is the highest degree of a fan polynomial.
const maxFanDegree = 8

// NewFanPolynomial returns the fan whose pressure in Pa, for air of 1.2 kg/m³,
// is coefficients[0] + coefficients[1] Q + coefficients[2] Q² + … of the inlet
// flow Q in m³/s, for the flows from first, m³/s, 0 to 1000, to last (m³/s, above first, at most
// 1000) and nowhere else.
// The coefficients have the unit Pa over the power of m³/s. The error lists
// every fault.
func NewFanPolynomial(first, last float64, coefficients ...float64) (Fan, error) {
	faults := []error{fanFlowRange.Check("first", first)}
	above := fanFlowRange
	if fanFlowRange.Contains(first) {
		above.Min, above.Source = math.Nextafter(first, math.Inf(1)), "above first"
	}
	faults = append(faults, above.Check("last", last))
	if n := len(coefficients); n < 1 || n > maxFanDegree+1 {
		faults = append(faults, fmt.Errorf("%w: %d coefficients, allowed 1 to %d", ErrRange, n, maxFanDegree+1))
	}
	for i, c := range coefficients {
		faults = append(faults, domain.Range{Min: math.Inf(-1), Max: math.Inf(1), Unit: "Pa over a power of m³/s"}.Check(fmt.Sprintf("coefficients[%d]", i), c))
	}
	if err := errors.Join(faults...); err != nil {
		return Fan{}, err
	}
	f := Fan{poly: append([]float64(nil), coefficients...)}
	slope := derivative(f.poly)
	curve := derivative(slope)
	f.flow = append(f.flow, first)
	f.flow = append(f.flow, rootsBetween(first, last, slope, curve)...)
	f.flow = append(f.flow, last)
	f.pressure = make([]float64, len(f.flow))
	f.convex = make([]bool, len(f.flow)-1)
	for i, q := range f.flow {
		f.pressure[i] = horner(f.poly, q)
		faults = append(faults, fanPressureRange.Check(fmt.Sprintf("pressure at %.4g m³/s", q), f.pressure[i]))
		if i > 0 {
			f.convex[i-1] = horner(curve, (f.flow[i-1]+q)/2) > 0
		}
	}
	if err := errors.Join(faults...); err != nil {
		return Fan{}, err
	}
	f.findPeak()
	return f, nil
}

// findPeak sets the knot at which the pressure starts to fall for good. Left
// of it the fan stalls: its blades no longer guide the air.
func (f *Fan) findPeak() {
	f.peak = len(f.flow) - 1
	for f.peak > 0 && f.pressure[f.peak-1] >= f.pressure[f.peak] {
		f.peak--
	}
}

// flowRange returns the first and the last flow of the curve as tested, m³/s.
func (f Fan) flowRange() (first, last float64) { return f.flow[0], f.flow[len(f.flow)-1] }

// peakPoint returns the flow (m³/s) and pressure (Pa) of the curve as tested from
// which on the pressure only falls. To its left the fan is in stall, or has no
// stall if it is the first point.
func (f Fan) peakPoint() (flow, pressure float64) { return f.flow[f.peak], f.pressure[f.peak] }

// Pressure returns the fan pressure, Pa, at the inlet flow (m³/s, on the
// curve), the speed as a ratio to the tested one (0.05 to 2), and the inlet
// density (kg/m³, 0.3 to 2), by the fan laws: n² (ρ/1.2) times the tested
// pressure at flow/n. NaN outside, and of the zero Fan.
// [HoF17] ch. 21, fan laws.
func (f Fan) Pressure(flow, speed, density float64) float64 {
	if len(f.flow) < 2 || !fanSpeedRange.Contains(speed) || !densityRange.Contains(density) {
		return math.NaN()
	}
	p, _ := f.at(flow / speed)
	return speed * speed * (density / StandardDensity) * p
}

// at returns the tested pressure and its slope at a tested flow.
func (f *Fan) at(q float64) (pressure, slope float64) {
	n := len(f.flow) - 1
	if !(q >= f.flow[0] && q <= f.flow[n]) {
		return math.NaN(), math.NaN()
	}
	return f.piece(f.pieceAt(q), q)
}

// pieceAt is the piece that the flow q lies on.
func (f *Fan) pieceAt(q float64) int {
	i := len(f.flow) - 2
	for i > 0 && q < f.flow[i] {
		i--
	}
	return i
}

// piece returns the pressure and its slope on piece i.
func (f *Fan) piece(i int, q float64) (pressure, slope float64) {
	if f.poly == nil {
		slope = (f.pressure[i+1] - f.pressure[i]) / (f.flow[i+1] - f.flow[i])
		return f.pressure[i] + slope*(q-f.flow[i]), slope
	}
	for j := len(f.poly) - 1; j >= 0; j-- {
		slope = slope*q + pressure
		pressure = pressure*q + f.poly[j]
	}
	return pressure, slope
}
