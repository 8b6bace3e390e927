package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Months holds the twelve months of a place for the monthly method.
type Months struct {
	Outside [12]float64 // °C, -90 to 120, mean of each month
	Sun     [12]float64 // W/m², 0 to 1500, mean of each month over day and night
	Lamps   [12]float64 // W, 0 to 1e9, heat of the lamps, mean of each month over day and night
	Loss    [12]float64 // W/K, 0.001 to 1e9, house to outside, mean of each month
	Hours   [12]float64 // h, 1 to 745, in each month
}

// calendarHours returns the hours of the months of a year of 365 days, h.
func calendarHours() [12]float64 {
	return [12]float64{744, 672, 744, 720, 744, 720, 744, 744, 720, 744, 720, 744}
}

// MonthlyMeans returns the months of the season's year, °C, W/m², W/K and h; a
// year of 8,784 hours has a 29th of February.
func (s HeatingSeason) MonthlyMeans() (Months, error) {
	if err := s.check(); err != nil {
		return Months{}, err
	}
	m := Months{Hours: calendarHours()}
	if len(s.Outside) == 8784 {
		m.Hours[1] += 24
	}
	i := 0
	for k := range 12 {
		m.Loss[k] = s.Loss
		n := int(m.Hours[k])
		for range n {
			m.Outside[k] += s.Outside[i] / float64(n)
			m.Sun[k] += s.Sun[i] / float64(n)
			if s.Lamps != nil {
				m.Lamps[k] += s.Lamps[i] / float64(n)
			}
			i++
		}
	}
	return m, nil
}

// MonthlyHouse is a house for the monthly method.
type MonthlyHouse struct {
	SetPoint float64 // °C, -90 to 120, mean over day and night
	Aperture float64 // m², 0 to 1e6, of horizontal area whose sun is taken up inside
	Plants   Plants  // what they turn into vapour
	Gain     float64 // W, 0 to 1e9, constant gains
	Storage  float64 // h, 0 to 10000, time constant: heat capacity of structure and soil that swings in a day over the loss
	Burner   Burner  // heater and fuel
	Price    float64 // currency per kg, 0 to 1e6, of fuel
}

// utilisation returns the share of the gains that meets loss, a fraction, by
// the monthly method of [IsoEnergy08], a standard since withdrawn: ratio is gains over loss, storage the
// time constant in h; a = 1 + storage/15. A light house uses little of gains
// as large as its loss. NaN for a negative ratio or storage.
func utilisation(ratio, storage float64) float64 {
	if !(ratio >= 0 && storage >= 0) {
		return math.NaN()
	}
	a := utilisationA0 + storage/utilisationTau
	const one = 1e-9 // nearer to 1 the quotient loses its digits, and the limit is as good
	if math.Abs(ratio-1) < one {
		return a / (a + 1)
	}
	if math.IsInf(ratio, 1) {
		return 0
	}
	r := math.Pow(ratio, a)
	if math.IsInf(r*ratio, 1) {
		return 1 / ratio
	}
	return (1 - r) / (1 - r*ratio)
}

const (
	utilisationA0  = 1.0  // dimensionless, a house heated all day (from memory)
	utilisationTau = 15.0 // h (from memory)
)

// Solve returns the season by the monthly method, and the heat of each month,
// J: in each month loss less the used part of the gains. It is quick but blind
// to single nights; it departs from the hourly methods in spring and autumn,
// when the mean outside is mild and the nights are not.
func (h MonthlyHouse) Solve(m Months) (SeasonHeat, [12]float64, error) {
	err := errors.Join(
		roomRange.Check("SetPoint", h.SetPoint),
		domain.Range{Min: 0, Max: 1e6, Unit: "m²"}.Check("Aperture", h.Aperture),
		powerRange.Check("Gain", h.Gain), h.Plants.check("part of Aperture", h.Aperture),
		domain.Range{Min: 0, Max: 1e4, Unit: "h"}.Check("Storage", h.Storage),
		domain.Range{Min: 0, Max: 1e6, Unit: "currency per kg"}.Check("Price", h.Price),
		h.Burner.Check(),
	)
	for k := range 12 {
		err = errors.Join(err, roomRange.Check("Outside", m.Outside[k]), sunRange.Check("Sun", m.Sun[k]), powerRange.Check("Lamps", m.Lamps[k]),
			domain.Range{Min: 1e-3, Max: conductanceRange.Max, Unit: "W/K"}.Check("Loss", m.Loss[k]), domain.Range{Min: 1, Max: 745, Unit: "h"}.Check("Hours", m.Hours[k]))
	}
	if err != nil {
		return SeasonHeat{}, [12]float64{}, err
	}
	r := SeasonHeat{Method: "monthly means", Peak: math.NaN()}
	var heat [12]float64
	for k := range 12 {
		loss := m.Loss[k] * (h.SetPoint - m.Outside[k])
		if loss <= 0 {
			continue
		}
		gain := h.Aperture*m.Sun[k] + m.Lamps[k] + h.Gain - h.Plants.evaporated(m.Sun[k], m.Lamps[k])
		used := gain * utilisation(gain/loss, h.Storage)
		asked := math.Max(0, loss-used)
		r.add(&h.Burner, asked, m.Hours[k])
		r.Loss += loss * m.Hours[k] * 3600
		r.Gains += used * m.Hours[k] * 3600
		heat[k] = asked * m.Hours[k] * 3600
	}
	r.finish(&h.Burner, h.Price)
	return r, heat, nil
}
