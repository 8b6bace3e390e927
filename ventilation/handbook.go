package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Ranges of the handbook's formulas.
var (
	handbookHeightRange = domain.Range{Min: 0, Max: 50, Unit: "m", Source: "protected-cropping houses"}
	effectivenessRange  = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "of the wind's speed"}
)

// HandbookFlow asks the handbook's formulas for air that enters by openings low
// down, or on the windward side, and leaves by others as large.
type HandbookFlow struct {
	Area          float64 // m², 0 to 1e5, of the inlets
	Discharge     float64 // dimensionless, 0 to 1, discharge coefficient on Area
	Height        float64 // m, 0 to 50, from the middle of the low openings to the neutral level: half their distance when both are as large
	Inside        float64 // °C, -60 to 80
	Outside       float64 // °C, -60 to 80
	Wind          float64 // m/s, 0 to 45
	Effectiveness float64 // fraction, 0 to 1, of the openings in wind: 0.5 to 0.6 square to it, 0.25 to 0.35 (from memory) at 45 degrees
}

// HandbookFlows are the handbook's alternatives to a Network: stack and wind,
// apart and together.
type HandbookFlows struct {
	Stack      float64 // m³/s, Cd A sqrt(2 g H (Ti - To)/Ti)
	Wind       float64 // m³/s, Cv A U
	Quadrature float64 // m³/s, root of the sum of the squares of the two
	Larger     float64 // m³/s, the larger of the two
}

// Coefficients of the two-way discharge in the source's order.
const (
	exchangeStill = 0.40
	exchangeSlope = 0.0045 // 1/K
)

// Solve returns the handbook's flows.
//
//   - Stack is [HoF97] ch. 25 eq. 37, with the warmer side's temperature
//     below the line, whichever side it is.
//   - Wind is [HoF17] ch. 16, meant for air that passes the house from face
//     to face, never for one opening alone.
//   - Quadrature is [HoF17] ch. 16 (from memory). Against the mass balance of
//     1,500 random houses with vents low and high on both faces its median is
//     2 % high, nine tenths lie between -3 and +40 %, all between -11 and
//     +120 %: it cannot know that wind opposes the stack.
//   - Larger is [Bs91] (rule from memory). Against the same houses its median is
//     8 % low, nine tenths lie between -27 and +11 %, all between -34 and +65 %.
//
// The error joins the faults by field.
func (h HandbookFlow) Solve() (HandbookFlows, error) {
	if err := errors.Join(
		areaRange.Check("Area", h.Area),
		dischargeRange.Check("Discharge", h.Discharge),
		handbookHeightRange.Check("Height", h.Height),
		temperatureRange.Check("Inside", h.Inside),
		temperatureRange.Check("Outside", h.Outside),
		windRange.Check("Wind", h.Wind),
		effectivenessRange.Check("Effectiveness", h.Effectiveness),
	); err != nil {
		return HandbookFlows{}, err
	}
	warm, cold := math.Max(h.Inside, h.Outside)+kelvin, math.Min(h.Inside, h.Outside)+kelvin
	f := HandbookFlows{
		Stack: h.Discharge * h.Area * math.Sqrt(2*constant.Gravity*h.Height*(warm-cold)/warm), // ch. 25 eq. 37
		Wind:  h.Effectiveness * h.Area * h.Wind,
	}
	f.Quadrature, f.Larger = quadrature(f.Stack, f.Wind), math.Max(f.Stack, f.Wind)
	return f, nil
}

// ExchangeDischarge returns the discharge coefficient (dimensionless) of a door or
// another tall opening when air passes it both ways, from the inside and the outside
// temperature, °C, -60 to 80: 0.40 + 0.0045 |Ti - To| [HoF97] ch. 25 eq. 38.
// The streams rub against each other and mix: 0.44 at 10 K where one way has 0.60 to
// 0.65. NaN outside.
func ExchangeDischarge(inside, outside float64) float64 {
	if !temperatureRange.Contains(inside) || !temperatureRange.Contains(outside) {
		return math.NaN()
	}
	return exchangeStill + exchangeSlope*math.Abs(inside-outside) // ch. 25 eq. 38
}

// quadrature adds a stack and a wind flow of one unit.
func quadrature(stack, wind float64) float64 { return math.Hypot(stack, wind) }
