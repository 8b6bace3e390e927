package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// heatCapacityAir is the specific heat capacity of dry air at constant
// pressure, J/(kg K) [HoF17] ch. 1 eq. 30.
const heatCapacityAir = constant.HeatDryAir

// Ranges of the heat balance.
var (
	solarRange      = domain.Range{Min: 0, Max: 1e8, Unit: "W", Source: "houses up to some hectares"}
	openSolarRange  = domain.Range{Min: domain.MoreThan(0), Max: 1e8, Unit: "W", Source: "houses up to some hectares"}
	transpiredRange = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition; above 1 the crop would cool the house, which needs the balance with humidity"}
	lossRange       = domain.Range{Min: 0, Max: 1e7, Unit: "W/K", Source: "houses up to some hectares"}
	riseRange       = domain.Range{Min: 0.01, Max: 80, Unit: "K", Source: "a rise over the outside air"}
)

// Load is the heat set free inside a house and what the cover takes of it.
type Load struct {
	Solar      float64 // W, 0 to 1e8, sun absorbed inside, or heat of any other source
	Transpired float64 // fraction, 0 to 1, of Solar that evaporates water and so does not warm the air
	Loss       float64 // W/K, 0 to 1e7, conductance of cover and ground to the outside air
}

// Outdoors is the weather that a heat balance needs.
type Outdoors struct {
	Temperature float64 // °C, -60 to 80
	Pressure    float64 // Pa, 60000 to 110000
	Wind        float64 // m/s, 0 to 45, at the height to which the pressure coefficients refer
}

// SteadyState is a state of a house in which heat and air both balance.
type SteadyState struct {
	Rise        float64 // K, inside over outside temperature
	Temperature float64 // °C, inside
	Sensible    float64 // W, Solar that warms the air
	Latent      float64 // W, Solar that evaporates water
	ByAir       float64 // W, sensible heat carried off by the air
	ByCover     float64 // W, sensible heat lost through cover and ground
	Residual    float64 // W, Sensible less ByAir and ByCover
	Stable      bool    // false: a small disturbance grows and the house leaves this state
	Air         Balance // the flow, with each element's
}

func checkHeat(load Load, out Outdoors) error {
	return errors.Join(
		solarRange.Check("Solar", load.Solar),
		transpiredRange.Check("Transpired", load.Transpired),
		lossRange.Check("Loss", load.Loss),
		temperatureRange.Check("Temperature", out.Temperature),
		pressureRange.Check("Pressure", out.Pressure),
		windRange.Check("Wind", out.Wind),
	)
}

// heatBalance is Sensible - (m cp + Loss) rise for one house and weather.
type heatBalance struct {
	n        *Network
	sensible float64 // W
	loss     float64 // W/K
	out      Outdoors
}

// conditions takes both airs as dry.
func (h *heatBalance) conditions(rise float64) FlowConditions {
	return FlowConditions{
		InsideDensity:  h.out.Pressure / (gasConstantDryAir * (h.out.Temperature + rise + kelvin)),
		OutsideDensity: h.out.Pressure / (gasConstantDryAir * (h.out.Temperature + kelvin)),
		Wind:           h.out.Wind,
	}
}

// surplus returns the heat, W, that the rise leaves over; it warms the house.
func (h *heatBalance) surplus(rise float64) float64 {
	b, err := h.n.balance(nil, h.conditions(rise))
	if err != nil {
		return math.NaN()
	}
	return h.sensible - (b.Flow*heatCapacityAir+h.loss)*rise
}

// SteadyStates returns every steady state of the house under load and out,
// coolest first, with temperature and flow solved together:
//
//	Solar (1 - Transpired) = (m cp + Loss) (Ti - To).
//
// There is one in calm air. Wind that opposes the stack can give three: a cool
// one with wind through the house, a hot one with the stack reversed, and an
// unstable one between; which of the stable ones a house takes depends on what
// went before. Both airs count as dry and the share Transpired is fixed; the
// balance of temperature and humidity together is another function of this
// package. States are sought up to 80 °C inside: ErrNoSolution
// says that the house would pass it. Other errors join the inputs outside
// their ranges.
func (n *Network) SteadyStates(load Load, out Outdoors) ([]SteadyState, error) {
	if err := errors.Join(n.check(), checkHeat(load, out)); err != nil {
		return nil, err
	}
	h := heatBalance{n: n, sensible: load.Solar * (1 - load.Transpired), loss: load.Loss, out: out}
	if h.sensible == 0 {
		s, err := h.state(0, load, true)
		return []SteadyState{s}, err
	}
	limit := temperatureRange.Max - out.Temperature
	roots := allRoots(h.surplus, limit)
	if len(roots) == 0 {
		return nil, fmt.Errorf("heat balance: %w: at %g °C inside %.4g W are still left over", ErrNoSolution, temperatureRange.Max, h.surplus(limit))
	}
	states := make([]SteadyState, 0, len(roots))
	for _, r := range roots {
		s, err := h.state(r.x, load, r.falling)
		if err != nil {
			return nil, err
		}
		states = append(states, s)
	}
	return states, nil
}

func (h *heatBalance) state(rise float64, load Load, stable bool) (SteadyState, error) {
	b, err := h.n.Solve(h.conditions(rise))
	if err != nil {
		return SteadyState{}, err
	}
	s := SteadyState{
		Rise:        rise,
		Temperature: h.out.Temperature + rise,
		Sensible:    h.sensible,
		Latent:      load.Solar * load.Transpired,
		ByAir:       b.Flow * heatCapacityAir * rise,
		ByCover:     h.loss * rise,
		Stable:      stable,
		Air:         b,
	}
	s.Residual = s.Sensible - s.ByAir - s.ByCover
	return s, nil
}

type root struct {
	x       float64
	falling bool // the function falls through zero
}

// gridSteps is the number of steps in which allRoots looks for changes of
// sign and for extremes.
const gridSteps = 240

// allRoots returns the zeros of f in (0, limit], in order. It looks at steps
// that widen from zero on, and at the extremes between them, which may hide a
// pair of zeros.
func allRoots(f func(float64) float64, limit float64) []root {
	x := make([]float64, 0, gridSteps+8)
	for k := 0; k <= gridSteps; k++ {
		u := float64(k) / gridSteps
		x = append(x, limit*u*u*u)
	}
	y := make([]float64, len(x))
	for i := range x {
		y[i] = f(x[i])
	}
	var roots []root
	add := func(a, b, fa, fb float64) {
		if fa != 0 && fb != 0 && (fa < 0) == (fb < 0) || fa == 0 {
			return
		}
		if r, err := solve.Root(f, a, b, temperatureFound); err == nil {
			roots = append(roots, root{r, fa > 0})
		}
	}
	for i := 1; i < len(x); i++ {
		// An extreme towards zero around x[i-1], seen when y[i] is reached.
		if i >= 2 && sameSign(y[i-2], y[i-1], y[i]) && math.Abs(y[i-1]) <= math.Abs(y[i-2]) && math.Abs(y[i-1]) <= math.Abs(y[i]) {
			m, fm := nearest(f, x[i-2], x[i])
			if !sameSign(y[i-1], fm, fm) {
				add(x[i-2], m, y[i-2], fm)
				add(m, x[i], fm, y[i])
			}
		}
		add(x[i-1], x[i], y[i-1], y[i])
	}
	return roots
}

func sameSign(a, b, c float64) bool { return a > 0 && b > 0 && c > 0 || a < 0 && b < 0 && c < 0 }

const golden = math.Phi - 1 // section of a search for a least value

// nearest narrows [a, b] to where |f| is smallest, by golden section, and stops
// early when f changes sign.
func nearest(f func(float64) float64, a, b float64) (x, fx float64) {
	c, d := b-golden*(b-a), a+golden*(b-a)
	fc, fd := f(c), f(d)
	for range 60 {
		if !sameSign(fc, fd, fc) {
			break
		}
		if math.Abs(fc) < math.Abs(fd) {
			b, d, fd = d, c, fc
			c = b - golden*(b-a)
			fc = f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + golden*(b-a)
			fd = f(d)
		}
	}
	if (fc < 0) != (fd < 0) {
		// One of the two lies beyond zero: the one whose sign differs from the
		// interval's ends.
		if fa := f(a); (fa < 0) != (fc < 0) {
			return c, fc
		}
		return d, fd
	}
	if math.Abs(fc) < math.Abs(fd) {
		return c, fc
	}
	return d, fd
}
