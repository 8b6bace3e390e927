package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// FlowBasis says what a stated air flow is measured at. A flow without a basis
// is refused: at a rise of 100 K the bases lie a third apart.
type FlowBasis uint8

// The bases. The zero value is none, and is refused.
const (
	_           FlowBasis = iota
	FanInlet              // m³/s of air as it enters the heater
	StandardAir           // m³/s of moist air counted at 1.2 kg/m³
	Outlet                // m³/s of air as it leaves the heater
	MoistMass             // kg/s of moist air
)

// String returns the name of the basis.
func (b FlowBasis) String() string {
	switch b {
	case FanInlet:
		return "fan inlet"
	case StandardAir:
		return "standard air"
	case Outlet:
		return "outlet"
	case MoistMass:
		return "moist mass"
	}
	return "no basis"
}

// Flow is an air flow with the point it is stated at.
type Flow struct {
	Value float64   // m³/s, 1e-6 to 10000, or kg/s on the basis MoistMass
	Basis FlowBasis // what Value is measured at
}

// Ranges of the heater.
var (
	flowRange     = domain.Range{Min: 1e-6, Max: 1e4, Unit: "m³/s"}
	massFlowRange = domain.Range{Min: 1e-6, Max: 1e4, Unit: "kg/s"}
	powerRange    = domain.Range{Min: 0, Max: 1e9, Unit: "W"}
	supplyRange   = domain.Range{Min: -90, Max: 300, Unit: "°C"}
)

// hottestReal is where psychro.RealGas ends, °C.
const hottestReal = 200.0

func (f Flow) check() error {
	switch f.Basis {
	case FanInlet, StandardAir, Outlet:
		return flowRange.Check("Flow.Value", f.Value)
	case MoistMass:
		return massFlowRange.Check("Flow.Value", f.Value)
	}
	return &RangeError{Field: "Flow.Basis", Value: float64(f.Basis), Min: float64(FanInlet), Max: float64(MoistMass), Source: "a flow needs a basis: FanInlet, StandardAir, Outlet or MoistMass"}
}

// Duty is a heater at work, with the terms of its balance.
type Duty struct {
	In         psychro.State // air entering
	Outlet     float64       // °C, air leaving, with the same humidity ratio
	Power      float64       // W, given to the air
	DryAir     float64       // kg/s of dry air
	MoistAir   float64       // kg/s of moist air
	InletFlow  float64       // m³/s at the inlet
	OutletFlow float64       // m³/s at the outlet
	Standard   float64       // m³/s counted at 1.2 kg/m³
	Rise       float64       // K
	Enthalpy   float64       // J/kg of dry air, gained
	ByRule     float64       // W, what 1.2 × 1005 × flow × rise would have said of the stated flow
}

// PowerFor returns the duty of a heater that takes in air at state in, in the
// stated flow, and lets it out at outlet, °C, -90 to 300. The balance is
// Q = m (h2 - h1) per kg of dry air [HoF17] ch. 1 eq. 30, in the model that in
// was made with. psychro.IdealGas is the handbook's ideal form and answers any
// outlet to 300 °C; psychro.RealGas is some 0.2 % above it and ends at 200 °C,
// where the error says so. An outlet below the inlet's is
// cooling, of negative power, as far as the dew point.
func PowerFor(in psychro.State, flow Flow, outlet float64) (Duty, error) {
	h, err := newHeated(&in, outlet)
	if err != nil || flow.check() != nil {
		return Duty{}, errors.Join(flow.check(), err)
	}
	var d Duty
	h.fill(&d, &in, flow, h.dryAir(flow))
	return d, nil
}

// RiseFor returns the duty of a heater that gives power, W, 0 to 1e9, to air entering
// at state in, in the stated flow: its outlet temperature. A flow stated at
// the outlet makes the balance implicit: as the air expands, the mass falls,
// and above a certain power there is no solution (ErrNoSolution).
func RiseFor(in psychro.State, flow Flow, power float64) (d Duty, err error) {
	if err := flow.check(); err != nil || !powerRange.Contains(power) {
		return d, errors.Join(err, powerRange.Check("power", power))
	}
	if in.Model() == psychro.IdealGas && in.Pressure() > 0 {
		err = idealRise(&d, &in, flow, power)
		return d, err
	}
	t1 := in.Temperature()
	h, err := newHeated(&in, t1)
	if err != nil {
		return Duty{}, err
	}
	_, x, err := h.closed(flow, power, t1+zeroC)
	if err != nil {
		return Duty{}, err
	}
	rise := x * (t1 + zeroC)
	top, topped := hottestReal-t1, false
	for range 12 { // Newton's steps
		if rise > top && !topped { // a step too far is no answer yet
			rise, topped = top, true
		}
		if h, err = newHeated(&in, t1+rise); err != nil {
			return Duty{}, fmt.Errorf("power %g W: %w", power, err)
		}
		da := h.dryAir(flow)
		miss := power - da*h.up
		if math.Abs(miss) <= dutyClosure*power+enthalpyRounding*da {
			h.fill(&d, &in, flow, da)
			return d, nil
		}
		slope := da * h.cp
		if flow.Basis == Outlet {
			slope -= da * h.up / (h.t2 + zeroC)
		}
		rise += miss / slope
	}
	return Duty{}, fmt.Errorf("%w: the rise at %g W, last %g K", ErrNotConverged, power, rise)
}

// dutyClosure is the fraction of the power to which the rise is solved.
const dutyClosure = 1e-12

// enthalpyRounding is what the rounding of two enthalpies of 1e5 J/kg leaves
// open of their difference, J/kg, with a margin.
const enthalpyRounding = 1e-9

// idealRise solves for ideal air in closed form: its heat capacity is constant
// and its volume goes as the absolute temperature.
func idealRise(d *Duty, in *psychro.State, flow Flow, power float64) error {
	h := heated{v1: in.SpecificVolume(), cp: in.HeatCapacity(), moist: 1 + in.HumidityRatio()}
	h.v2 = h.v1
	t1 := in.Temperature()
	da, x, err := h.closed(flow, power, t1+zeroC)
	if err != nil {
		return err
	}
	rise := x * (t1 + zeroC)
	h.t2, h.up, h.v2 = t1+rise, h.cp*rise, h.v1*(1+x)
	if !supplyRange.Contains(h.t2) {
		return fmt.Errorf("power %g W: %w", power, supplyRange.Check("outlet", h.t2))
	}
	h.fill(d, in, flow, da)
	return nil
}

// closed returns the mass of dry air, kg/s, and the rise over T1, the inlet's
// absolute temperature, of ideal air, for h at its inlet.
func (h *heated) closed(flow Flow, power, T1 float64) (da, x float64, err error) {
	da = h.dryAir(flow)
	x = power / (da * h.cp * T1)
	if flow.Basis == Outlet {
		// v2 = v1 T2/T1: the mass falls by 1 − x, a linear equation in the rise.
		if !(x < 1) {
			return 0, 0, fmt.Errorf("%w: %g m³/s at the outlet cannot carry %g W, the most is %.6g W", ErrNoSolution, flow.Value, power, power/x)
		}
		da *= 1 - x
		x /= 1 - x
	}
	return da, x, nil
}

// FlowFor returns the duty of a heater that gives power, W, 1e-6 to 1e9, to air
// entering at state in and leaving at outlet, °C, -90 to 300: its flow, on every basis. ByRule is
// that of the flow at the inlet.
func FlowFor(in psychro.State, power, outlet float64) (Duty, error) {
	h, err := newHeated(&in, outlet)
	err = errors.Join(err, positivePower.Check("power", power))
	if err != nil {
		return Duty{}, err
	}
	if !(h.up > 0) {
		return Duty{}, &RangeError{Field: "outlet", Value: outlet, Min: in.Temperature(), Max: supplyRange.Max, Unit: "°C", Source: "the outlet must be warmer than the inlet"}
	}
	da := power / h.up
	var d Duty
	h.fill(&d, &in, Flow{Value: da * h.v1, Basis: FanInlet}, da)
	return d, nil
}

var positivePower = domain.Range{Min: 1e-6, Max: powerRange.Max, Unit: "W"}

const zeroC = constant.ZeroCelsius // K, 0 °C

// heated is air on its way through a heater.
type heated struct {
	t2     float64 // °C
	v1, v2 float64 // m³/kg of dry air
	up     float64 // J/kg of dry air, enthalpy gained
	cp     float64 // J/(kg K) of dry air, at the outlet
	moist  float64 // kg of moist air per kg of dry air
}

func newHeated(in *psychro.State, outlet float64) (heated, error) {
	if in.Pressure() <= 0 {
		return heated{}, &RangeError{Field: "in", Value: in.Pressure(), Min: (domain.Range{Min: 30e3, Max: 200e3, Unit: "Pa"}).Min, Max: (domain.Range{Min: 30e3, Max: 200e3, Unit: "Pa"}).Max, Unit: "Pa", Source: "the state must come from one of package psychro's constructors"}
	}
	if !supplyRange.Contains(outlet) {
		return heated{}, supplyRange.Check("outlet", outlet)
	}
	t1 := in.Temperature()
	if outlet < t1 && outlet < in.DewPoint() {
		return heated{}, &RangeError{Field: "outlet", Value: outlet, Min: in.DewPoint(), Max: supplyRange.Max, Unit: "°C", Source: "below the dew point water condenses, which this balance leaves out"}
	}
	h := heated{t2: outlet, v1: in.SpecificVolume(), moist: 1 + in.HumidityRatio()}
	if in.Model() == psychro.IdealGas {
		// No saturation is needed, so superheat is no limit.
		h.cp = in.HeatCapacity()
		h.up = h.cp * (outlet - t1)
		h.v2 = h.v1 * (outlet + zeroC) / (t1 + zeroC)
		return h, nil
	}
	out, err := in.Model().FromHumidityRatio(outlet, in.HumidityRatio(), in.Pressure())
	if err != nil {
		return heated{}, fmt.Errorf("outlet (psychro.IdealGas has no such limit): %w", err)
	}
	h.cp, h.up, h.v2 = out.HeatCapacity(), out.Enthalpy()-in.Enthalpy(), out.SpecificVolume()
	return h, nil
}

// dryAir returns the flow in kg/s of dry air.
func (h *heated) dryAir(flow Flow) float64 {
	switch flow.Basis {
	case FanInlet:
		return flow.Value / h.v1
	case Outlet:
		return flow.Value / h.v2
	case StandardAir:
		return flow.Value * StandardDensity / h.moist
	}
	return flow.Value / h.moist
}

// fill sets the terms of d for da kg/s of dry air.
func (h *heated) fill(d *Duty, in *psychro.State, flow Flow, da float64) {
	moist := da * h.moist
	rise := h.t2 - in.Temperature()
	stated := flow.Value
	if flow.Basis == MoistMass {
		stated /= StandardDensity
	}
	*d = Duty{
		In: *in, Outlet: h.t2, Power: da * h.up, DryAir: da, MoistAir: moist,
		InletFlow: da * h.v1, OutletFlow: da * h.v2, Standard: moist * (1 / StandardDensity),
		Rise: rise, Enthalpy: h.up, ByRule: ruleOfThumb(stated, rise),
	}
}

// ruleOfThumb is the trade's short form 1.2 × 1005 × flow × rise, W, for a
// flow in m³/s, 0 to 1e4, and a rise in K, -400 to 400. It knows neither
// density, nor humidity, nor where the flow was measured; PowerFor does. NaN
// outside.
func ruleOfThumb(flow, rise float64) float64 {
	if !sourceRange.Contains(flow) || !airRiseRange.Contains(rise) {
		return math.NaN()
	}
	return 1.2 * 1005 * flow * rise
}

var airRiseRange = domain.Range{Min: -400, Max: 400, Unit: "K"}

// LeakageRule is the trade's short form 0.33 n V for the loss by exchange of
// air, W/K, from airChanges, air changes per hour in 1/h, 0 to 1e4, and volume,
// m³, 0 to 1e8 ([MurMck03] ch. 9). It holds for air of 1.18 kg/m³. NaN outside.
func LeakageRule(airChanges, volume float64) float64 {
	if !(domain.Range{Min: 0, Max: 1e4, Unit: "1/h"}).Contains(airChanges) || !(domain.Range{Min: 0, Max: 1e8, Unit: "m³"}).Contains(volume) {
		return math.NaN()
	}
	return 0.33 * airChanges * volume
}
