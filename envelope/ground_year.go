package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// GroundClimate is the year that a house's ground sees, as sine waves of the
// monthly means. DefaultGroundClimate gives a complete one to change.
type GroundClimate struct {
	InsideMean   float64 // °C, -60 to 60, annual mean of the inside air
	InsideSwing  float64 // K, 0 to 40, amplitude of its monthly means, coldest in the same month
	OutsideMean  float64 // °C, -60 to 60, annual mean of the outside air
	OutsideSwing float64 // K, 0 to 40, amplitude of its monthly means
	Coldest      float64 // number of the month, 0.5 to 12.5, with the lowest outside mean: 1 January, 12 December
	InsideLead   float64 // number of months, 0 to 6, alpha, by which the flow leads the inside wave
	OutsideLag   float64 // number of months, 0 to 6, beta, by which the flow lags the outside wave
}

// DefaultGroundClimate returns a house at 16 °C all year in a climate of 9 °C
// with 10 K of swing, coldest in January, and the lags 0 and 1 month of
// [IsoGround17] for slabs and heated basements (from memory).
func DefaultGroundClimate() GroundClimate {
	return GroundClimate{InsideMean: 16, OutsideMean: 9, OutsideSwing: 10, Coldest: 1, OutsideLag: 1}
}

// Ranges of a ground climate.
var (
	swingRange = domain.Range{Min: 0, Max: 40, Unit: "K", Source: "chosen"}
	monthRange = domain.Range{Min: 0.5, Max: 12.5, Unit: "number", Source: "of the month: 1 stands for the mean of January, 12 of December"}
	lagRange   = domain.Range{Min: 0, Max: 6, Unit: "months", Source: "chosen"}
)

// check returns nil, or the join of a *RangeError for each field out of range.
func (c GroundClimate) check() error {
	return errors.Join(
		coverTemperatureRange.Check("InsideMean", c.InsideMean),
		swingRange.Check("InsideSwing", c.InsideSwing),
		coverTemperatureRange.Check("OutsideMean", c.OutsideMean),
		swingRange.Check("OutsideSwing", c.OutsideSwing),
		monthRange.Check("Coldest", c.Coldest),
		lagRange.Check("InsideLead", c.InsideLead),
		lagRange.Check("OutsideLag", c.OutsideLag),
	)
}

// inside and outside return the mean temperature in °C of the month:
// [IsoGround17] eq. C.1 and C.2.
func (c *GroundClimate) inside(month float64) float64 {
	return c.InsideMean - c.InsideSwing*math.Cos(math.Pi*(month-c.Coldest)/6)
}

func (c *GroundClimate) outside(month float64) float64 {
	return c.OutsideMean - c.OutsideSwing*math.Cos(math.Pi*(month-c.Coldest)/6)
}

// GroundFlow is the heat that the ground takes in one month.
type GroundFlow struct {
	Month   float64 // number of the month, 1 to 12
	Inside  float64 // °C, mean of the month
	Outside float64 // °C, mean of the month
	Total   float64 // W, from the house, the sum of the three below; negative when the ground gives heat
	Steady  float64 // W, annual mean
	InWave  float64 // W, of the inside's yearly wave
	OutWave float64 // W, of the outside's yearly wave
}

// Flow returns the mean flow in W from the house into the ground in the month,
// number, 0.5 to 12.5, 1 being the mean of January, of the year c: [IsoGround17]
// eq. C.3. The annual mean alone understates a winter's month. Fields are NaN
// for a month or a year out of range.
//
// Against two-dimensional conduction the standard's waves are rough: that of the
// outside is 5 to 24 % too strong and lags 0.57 to 1.56 months instead of
// OutsideLag's 1, that of the inside is 5 to 28 % too weak and leads by 0.25 to 1
// month instead of none.
func (r GroundCoefficients) Flow(c GroundClimate, month float64) GroundFlow {
	if !monthRange.Contains(month) || c.check() != nil {
		return GroundFlow{nan, nan, nan, nan, nan, nan, nan}
	}
	f := GroundFlow{Month: month, Inside: c.inside(month), Outside: c.outside(month)}
	f.Steady = r.Total * (c.InsideMean - c.OutsideMean)
	f.InWave = -r.Inside * c.InsideSwing * math.Cos(math.Pi*(month-c.Coldest+c.InsideLead)/6)
	f.OutWave = r.Outside * c.OutsideSwing * math.Cos(math.Pi*(month-c.Coldest-c.OutsideLag)/6)
	f.Total = f.Steady + f.InWave + f.OutWave // eq. C.3
	return f
}

// Worst returns the month's flow at its largest: the annual mean and the full
// swing of the outside wave, in the month Coldest + OutsideLag, [IsoGround17]
// eq. C.9 with the inside wave as it then stands. Against two-dimensional
// conduction it lies 1 % low to 5 % high for a house at 16 °C, 1 to 10 % high at
// 12 °C and 7 to 37 % high at 8 °C, where little but the wave is left: on the safe
// side for a heater.
func (r GroundCoefficients) Worst(c GroundClimate) GroundFlow {
	m := c.Coldest + c.OutsideLag
	if m > monthRange.Max {
		m -= 12
	}
	return r.Flow(c, m)
}

// Days of the months and of a common year, which weigh the annual means.
var monthDays = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

const yearDays = 365

// GroundMonths are monthly mean temperatures, January first.
type GroundMonths struct {
	Inside  [12]float64 // °C, -60 to 60, of the inside air
	Outside [12]float64 // °C, -60 to 60, of the outside air
}

// MonthlyFlow returns the flow in W from the house into the ground for each
// month: [IsoGround17] eq. C.4, which leaves out the lags; annual means are
// weighted by the days of the months. The error joins a *RangeError for each
// temperature out of range.
func (r GroundCoefficients) MonthlyFlow(m GroundMonths) ([12]float64, error) {
	var flow [12]float64
	var faults []error
	var in, out float64
	for i := range 12 {
		faults = append(faults,
			coverTemperatureRange.Check(fmt.Sprintf("Inside[%d]", i), m.Inside[i]),
			coverTemperatureRange.Check(fmt.Sprintf("Outside[%d]", i), m.Outside[i]))
		in += m.Inside[i] * monthDays[i] / yearDays
		out += m.Outside[i] * monthDays[i] / yearDays
	}
	if err := errors.Join(faults...); err != nil {
		return flow, err
	}
	for i := range 12 {
		flow[i] = (r.Total-r.JunctionPart)*(in-out) + r.JunctionPart*(m.Inside[i]-m.Outside[i]) -
			r.Inside*(in-m.Inside[i]) + r.Outside*(out-m.Outside[i]) // eq. C.4
	}
	return flow, nil
}
