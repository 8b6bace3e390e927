package ventilation

import (
	"errors"
	"math"
)

// SeriesArea returns the one area, m², that passes as much as the areas, m²,
// passed one after the other: A = (Σ 1/A²)^(-1/2). It serves for areas times
// their discharge coefficients too. One area of zero closes all; no area, or one
// outside 0 to 1e5, gives NaN.
func SeriesArea(areas ...float64) float64 {
	sum := 0.0
	for _, a := range areas {
		if !areaRange.Contains(a) {
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
	LowArea       float64 // m², more than 0, at most 1e5
	LowDischarge  float64 // dimensionless, more than 0, at most 1, discharge coefficient on LowArea
	HighArea      float64 // m², more than 0, at most 1e5
	HighDischarge float64 // dimensionless, more than 0, at most 1, discharge coefficient on HighArea
	Separation    float64 // m, more than 0, at most 50, height of the high opening above the low one
}

// StackFlow is the answer of TwoLevels, with the Boussinesq form beside it.
type StackFlow struct {
	Neutral     float64 // m, neutral level above the low opening
	Total       float64 // Pa, stack pressure over the whole separation
	AtLow       float64 // Pa, of it across the low opening
	AtHigh      float64 // Pa, of it across the high opening
	Flow        float64 // kg/s, with the density of the air that passes each opening
	Boussinesq  float64 // kg/s, the flow by one mean density in both openings, for comparison
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
		openAreaRange.Check("LowArea", s.LowArea),
		openDischargeRange.Check("LowDischarge", s.LowDischarge),
		openAreaRange.Check("HighArea", s.HighArea),
		openDischargeRange.Check("HighDischarge", s.HighDischarge),
		openHeightRange.Check("Separation", s.Separation),
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
