package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// WindMethod names how the air that the wind's turbulence exchanges through
// each vent joins the flow that pressures drive through the house.
type WindMethod uint8

const (
	// InQuadrature takes the root of the sum of the squares, as [BoulardB95] and
	// [Kittas97] do for stack and wind: G = sqrt(Gp² + Gx²).
	InQuadrature WindMethod = iota
	// LargerOfTwo takes the larger of the two, as [Warren84] and [Bs91] do.
	LargerOfTwo
)

var windMethodNames = []string{"quadrature", "larger of the two"}

// String names the method.
func (m WindMethod) String() string { return enumName("WindMethod", windMethodNames, uint8(m)) }

// WindExchange is the exchange of air by wind through every vent by itself, in
// and out at once, which mean pressures know nothing of: vents at one level,
// under one pressure, pass air in wind because of it. Through the openings of a
// network, screens and all, it is
//
//	Gx = 1/2 sqrt(Coefficient) U sum(Cd A)
//
// [BoulardB95], [Kittas97]: half of each opening lets air in and half out, with
// the speed sqrt(Coefficient) U that [BoulardB95] fitted. Leaks, fans and
// openings below grade, which gusts do not reach, have none. The zero value exchanges nothing: the pressures alone.
type WindExchange struct {
	Method      WindMethod // how it joins the flow that pressures drive
	Coefficient float64    // dimensionless, 0 to 0.5, wind effect Cw, on the square of FlowConditions.Wind; 0 for none
}

var windEffectRange = domain.Range{Min: 0, Max: 0.5, Source: "published fits are 0.04 to 0.14"}

// defaultWindEffect is Cw of a Venlo house and of a multi-span one, read in
// [Vanthoor11] appendix table 2; film houses there 0.12.
const defaultWindEffect = 0.09

// DefaultWindExchange returns the exchange that every new Network has:
// quadrature with a wind effect of 0.09, the value of two of the three kinds of
// house of [Vanthoor11]; 0.07 to 0.12 are published for vents without insect
// screens. Coefficients are fitted as a pair with the discharge: on one house
// two papers have Cd sqrt(Cw) 0.114 and 0.198, so that the flow in wind alone is
// known to half of it.
func DefaultWindExchange() WindExchange {
	return WindExchange{Method: InQuadrature, Coefficient: defaultWindEffect}
}

// check joins every fault of x, by field.
func (x WindExchange) check() error {
	return errors.Join(
		enumFault("Method", "WindMethod", windMethodNames, uint8(x.Method)),
		windEffectRange.Check("Coefficient", x.Coefficient),
	)
}

// WithExchange returns the network with the exchange x in place of its own. The
// zero WindExchange leaves the pressures alone. The error joins the faults by
// field.
func (n *Network) WithExchange(x WindExchange) (*Network, error) {
	if err := errors.Join(n.check(), x.check()); err != nil {
		return nil, err
	}
	m := *n
	m.exchange = x
	return &m, nil
}

// turbulence returns the mass flow, kg/s of outside air each way, that x exchanges
// through paths whose openings stand at a fraction of their area: half of what
// each would pass under the pressure Cw rho_o U²/2.
func (x WindExchange) turbulence(paths []path, opening float64, outside air, dynamic float64) float64 {
	drive := x.Coefficient * dynamic
	if drive == 0 || opening == 0 {
		return 0
	}
	sum := 0.0
	for i := range paths {
		sum += paths[i].turbulence(drive, opening, outside)
	}
	return sum
}

// turbulence is that of one path under the pressure drive, Pa.
func (p *path) turbulence(drive, opening float64, outside air) float64 {
	if p.bottom+p.top < 0 {
		return 0
	}
	switch p.kind {
	case pointPath, tallPath:
		return 0.5 * opening * p.flow * outside.root * math.Sqrt(drive)
	case screenPath:
		e := *p
		e.flow *= opening
		e.slope /= opening
		in, _, _ := e.flows(drive, drive, outside, outside)
		return 0.5 * in
	}
	return 0
}

// more returns by how much the flow of the house grows, kg/s, when the flow
// driven and the exchange turbulence act together.
func (x WindExchange) more(driven, turbulence float64) float64 {
	if x.Method == LargerOfTwo {
		return math.Max(0, turbulence-driven)
	}
	if turbulence == 0 {
		return 0
	}
	return turbulence / (driven + math.Sqrt(driven*driven+turbulence*turbulence)) * turbulence
}

// share returns the rate at which the two together grow with the flow driven.
func (x WindExchange) share(driven, turbulence float64) float64 {
	switch {
	case turbulence == 0:
		return 1
	case x.Method == LargerOfTwo:
		if turbulence > driven {
			return 0
		}
		return 1
	}
	return driven / math.Sqrt(driven*driven+turbulence*turbulence)
}
