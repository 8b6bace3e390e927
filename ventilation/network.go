package ventilation

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Network is one air space joined to the outside by openings, leakage paths
// and fans. It never changes after NewNetwork and may be used by several
// goroutines at once.
type Network struct {
	openings []Opening
	paths    []path
	exchange WindExchange
}

// Balance is the state of a network in which as much air leaves as enters.
// Flow and Paths hold the air that wind exchanges through each vent as well as
// that which the pressures drive.
type Balance struct {
	Pressure  float64    // Pa, inside at the datum less the outside static pressure there
	Neutral   float64    // m above the datum, where inside equals outside static pressure; NaN for equal densities
	Flow      float64    // kg/s, all air that enters, equal to all that leaves
	Exchange  float64    // kg/s, of Flow, that the turbulence of the wind adds to what pressures drive
	Residual  float64    // kg/s, what the computed flows fail to balance
	Volume    float64    // m³/s, of the air that enters, at the density of the outside air
	VolumeOut float64    // m³/s, of the air that leaves, at the density of the inside air
	Paths     []PathFlow // openings, then leaks, then fans, in the order given
}

// NewNetwork returns the network of openings, leaks and fans, each of which
// may be nil, though one opening or leak is needed. Wind exchanges air through
// each opening as DefaultWindExchange has it; WithExchange changes that. Give
// vents their height (Vertical, or a TallVent): in calm a vent alone, or vents at
// one level, pass air only by being tall. The error joins every
// fault, each with its field: areas, coefficients and flows outside their
// ranges, and no way for air to pass.
func NewNetwork(openings []Opening, leaks []Leak, fans []FixedFan) (*Network, error) {
	var faults []error
	if len(openings)+len(leaks) == 0 {
		faults = append(faults, noOpening())
	}
	n := &Network{openings: slices.Clone(openings), exchange: DefaultWindExchange()}
	for i := range openings {
		faults = append(faults, openings[i].check(place("openings", i, openings[i].Name)))
		n.paths = append(n.paths, openings[i].path())
	}
	for i := range leaks {
		faults = append(faults, leaks[i].check(place("leaks", i, leaks[i].Name)))
		n.paths = append(n.paths, leaks[i].path())
	}
	for i := range fans {
		faults = append(faults, fans[i].check(place("fans", i, fans[i].Name)))
		n.paths = append(n.paths, fans[i].path())
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return n, nil
}

// Openings returns a copy of the network's openings.
func (n *Network) Openings() []Opening { return slices.Clone(n.openings) }

// Solve returns the balance under c. Openings that nothing drives, such as a
// single one, or several at one height, without wind, pass no air unless they
// are tall: CheckOpenings says so beforehand. The error joins the conditions
// outside their ranges; ErrNoSolution says that a fan of constant flow would
// take the inside beyond 5,000 Pa. Flows hold to 1e-8 and the pressure to 1e-9
// Pa against independent solutions in extended precision; the flow of an
// opening at whose height the drive vanishes goes as the square root of the
// drive and holds absolutely.
func (n *Network) Solve(c FlowConditions) (Balance, error) { return n.SolveTo(nil, c) }

// SolveTo is Solve with the flow of each element written to dst, which must
// have the length of Balance.Paths; it allocates nothing. A nil dst allocates.
func (n *Network) SolveTo(dst []PathFlow, c FlowConditions) (Balance, error) {
	if dst == nil {
		dst = make([]PathFlow, len(n.paths))
	}
	if len(dst) != len(n.paths) {
		panic("ventilation: dst does not have the network's length")
	}
	return n.balance(dst, c)
}

// balance is SolveTo, but a nil dst leaves the elements' flows out.
func (n *Network) balance(dst []PathFlow, c FlowConditions) (Balance, error) {
	if err := c.check(); err != nil {
		return Balance{}, err
	}
	if len(n.paths) == 0 {
		return Balance{}, errEmpty
	}
	s := n.solver(c)
	p, err := s.pressure()
	if err == nil && math.Abs(p) > pressureLimit {
		err = fmt.Errorf("fans: %w: at their flow the openings and leaks leave %.3g Pa inside, beyond the %g Pa that any fan reaches: give a fan its Slope", ErrNoSolution, p, pressureLimit)
	}
	if err != nil {
		return Balance{}, err
	}
	in, out, flow := s.collect(dst, p)
	b := Balance{
		Pressure: p,
		Neutral:  neutralLevel(p, c),
		Flow:     flow,
		Residual: in - out,
		Paths:    dst,
	}
	if n.exchange.Coefficient > 0 && c.Wind > 0 {
		s.mix(&b, n.exchange)
	}
	b.Volume = b.Flow / c.OutsideDensity
	b.VolumeOut = b.Flow / c.InsideDensity
	return b, nil
}

// AirChanges returns the air changes per hour, 1/h, of a volume flow, m³/s, -1e6
// to 1e6, in a house of volume, m³, 0.05 to 1e7. NaN outside.
func AirChanges(flow, volume float64) float64 {
	if !changesFlowRange.Contains(flow) || !volumeRange.Contains(volume) {
		return math.NaN()
	}
	return 3600 * flow / volume
}

// pressureLimit, Pa, is beyond what wind of 45 m/s makes (3,700 Pa at a
// coefficient of -3) and what ventilating fans reach (some 100 Pa): only a fan of
// constant flow comes there, on its way below a vacuum.
const pressureLimit = 5000.0

// errEmpty is the fault of a network without elements, as the zero one.
var errEmpty = fmt.Errorf("Network: %w: the zero Network is invalid, NewNetwork makes one", ErrRange)

// check refuses the zero Network.
func (n *Network) check() error {
	if len(n.paths) == 0 {
		return errEmpty
	}
	return nil
}

func noOpening() error {
	return &RangeError{Field: "number of openings", Value: 0, Min: 1, Max: math.Inf(1), Unit: "count", Source: "air must be able to enter and leave"}
}
