package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// SetPoints are the air temperatures asked for over the day.
type SetPoints struct {
	Day       float64 // °C, -90 to 120
	Night     float64 // °C, -90 to 120
	DayStarts int     // number of the first hour of the day, 0 to 23
	DayEnds   int     // number of the first hour of the night, after DayStarts, to 24
}

// at returns the set-point of hour i of the year, °C.
func (s SetPoints) at(i int) float64 {
	if h := i % 24; h >= s.DayStarts && h < s.DayEnds {
		return s.Day
	}
	return s.Night
}

// mean returns the set-point's mean over the day, °C.
func (s SetPoints) mean() float64 {
	n := float64(s.DayEnds - s.DayStarts)
	return (s.Day*n + s.Night*(24-n)) / 24
}

// HeatingSeason is a year of one house for the hourly, bin, degree-hour and monthly
// methods: all of them see the same house, weather and burner. The columns
// have 8,760 or 8,784 hourly means.
type HeatingSeason struct {
	Outside   []float64 // °C, -90 to 120
	Sun       []float64 // W/m², 0 to 1500, global on the horizontal
	SetPoints SetPoints // °C, asked for
	Loss      float64   // W/K, 0.001 to 1e9, house to outside, leakage and sky included
	Aperture  float64   // m², 0 to 1e6, of horizontal area whose sun is taken up inside: floor × transmission × share absorbed
	Plants    Plants    // what they turn into vapour
	Lamps     []float64 // W, 0 to 1e9, hourly heat of the lamps; nil for none
	Gain      float64   // W, 0 to 1e9, constant heat from motors and people
	Burner    Burner    // heater and fuel; what exceeds its rated heat is unmet
	Price     float64   // currency per kg, 0 to 1e6, of fuel
}

// Plants says what part of the heat of sun and lamps the plants turn into
// vapour. That part warms nothing: it leaves with the air, or comes back on the
// cover, where the coefficient of a wet cover counts it. The zero Plants is a
// house without any.
type Plants struct {
	Area        float64 // m², 0 to 1e6, of horizontal area whose sun falls on them: part of Aperture, or of ToPlants of three nodes
	LampRadiant float64 // fraction, 0 to 1, of the lamps' heat that falls on them as radiation
	Evaporated  float64 // fraction, 0 to 1, of what falls on them that they turn into vapour
}

func (p *Plants) check(source string, area float64) error {
	return domain.Within("Plants", errors.Join(
		domain.Range{Min: 0, Max: area, Unit: "m²", Source: source}.Check("Area", p.Area),
		shareRange.Check("LampRadiant", p.LampRadiant),
		shareRange.Check("Evaporated", p.Evaporated),
	))
}

// evaporated returns what the plants take out of the sun, W/m², and the heat of
// the lamps, W: W.
func (p *Plants) evaporated(sun, lamps float64) float64 {
	return p.Evaporated * (p.Area*sun + p.LampRadiant*lamps)
}

// gain is the heat in hour i beside the heater's, W.
func (s *HeatingSeason) gain(i int) float64 {
	lamps := 0.0
	if s.Lamps != nil {
		lamps = s.Lamps[i]
	}
	return s.Aperture*s.Sun[i] + lamps + s.Gain - s.Plants.evaporated(s.Sun[i], lamps)
}

// checkLamps refuses lamps of another year than the weather's.
func checkLamps(lamps, outside []float64) error {
	if lamps == nil {
		return nil
	}
	err := checkColumn("Lamps", lamps, powerRange)
	if len(lamps) != len(outside) {
		err = errors.Join(err, fmt.Errorf("Outside has %d values and Lamps %d: %w", len(outside), len(lamps), ErrRange))
	}
	return err
}

// SeasonHeat is a season's result by one method.
type SeasonHeat struct {
	Method   string  // the method's name
	Heat     float64 // J, useful heat from the heater
	Unmet    float64 // J, heat asked for beyond the heater's rating
	Fuel     float64 // J, on the lower heating value, with the standby loss of the hours the burner stands ready
	FuelMass float64 // kg
	Cost     float64 // currency
	Emission float64 // kg of carbon dioxide by the fuel's emission factor
	Hours    float64 // h in which the heater is called on
	Peak     float64 // W, greatest mean over an hour of the heat asked for; NaN by methods that know no single hour. Not the size of a heater: the design night gives that
	Loss     float64 // J, lost during the hours in which the method counts heating
	Gains    float64 // J, gains that met loss in that time
}

func (s *HeatingSeason) check() error {
	err := errors.Join(checkColumn("Outside", s.Outside, roomRange), checkColumn("Sun", s.Sun, sunRange))
	if err == nil && len(s.Outside) != len(s.Sun) {
		err = fmt.Errorf("Outside has %d values and Sun %d: %w", len(s.Outside), len(s.Sun), ErrRange)
	}
	return errors.Join(err, s.SetPoints.check(), s.Plants.check("part of Aperture", s.Aperture), checkLamps(s.Lamps, s.Outside),
		domain.Range{Min: 1e-3, Max: conductanceRange.Max, Unit: "W/K"}.Check("Loss", s.Loss),
		domain.Range{Min: 0, Max: 1e6, Unit: "m²"}.Check("Aperture", s.Aperture),
		powerRange.Check("Gain", s.Gain),
		domain.Range{Min: 0, Max: 1e6, Unit: "currency per kg"}.Check("Price", s.Price),
		s.Burner.Check(),
	)
}

var sunRange = domain.Range{Min: 0, Max: 1500, Unit: "W/m²"}

func checkColumn(field string, col []float64, r domain.Range) error {
	if len(col) != 8760 && len(col) != 8784 {
		return fmt.Errorf("%s has %d values, a year has 8760 or 8784: %w", field, len(col), ErrRange)
	}
	for i, v := range col {
		if !r.Contains(v) {
			return fmt.Errorf("hour %d: %w", i, r.Check(field, v))
		}
	}
	return nil
}

func (p SetPoints) check() error {
	return errors.Join(
		roomRange.Check("SetPoints.Day", p.Day), roomRange.Check("SetPoints.Night", p.Night),
		domain.Range{Min: 0, Max: 23, Unit: "h"}.Check("SetPoints.DayStarts", float64(p.DayStarts)),
		domain.Range{Min: float64(p.DayStarts), Max: 24, Unit: "h"}.Check("SetPoints.DayEnds", float64(p.DayEnds)),
	)
}

// add counts hours h of a mean heat asked for, W.
func (r *SeasonHeat) add(b *Burner, asked, h float64) {
	heat := math.Min(asked, b.Rated)
	r.Heat += heat * h * 3600
	r.Unmet += (asked - heat) * h * 3600
	r.Hours += h
}

// finish derives fuel, mass, cost and emission from the heat.
func (r *SeasonHeat) finish(b *Burner, price float64) {
	r.Fuel = b.yearFuel(r.Heat)
	r.FuelMass = r.Fuel / b.Fuel.Lower
	r.Cost = r.FuelMass * price
	r.Emission = r.Fuel * b.Fuel.Emission
}

// Hourly sums, hour by hour, the excess of the loss over the gains. The house
// stores nothing: what the sun gives beyond an hour's loss is gone, so this is
// an upper estimate for a house with much soil and benches, and right for a
// light one.
func (s HeatingSeason) Hourly() (SeasonHeat, error) {
	if err := s.check(); err != nil {
		return SeasonHeat{}, err
	}
	r := SeasonHeat{Method: "hourly"}
	for i, to := range s.Outside {
		loss := s.Loss * (s.SetPoints.at(i) - to)
		gain := s.gain(i)
		if loss > gain {
			r.Peak = math.Max(r.Peak, loss-gain)
			r.add(&s.Burner, loss-gain, 1)
			r.Loss += loss * 3600
			r.Gains += gain * 3600
		}
	}
	r.finish(&s.Burner, s.Price)
	return r, nil
}

// Bins sorts the hours by the outside temperature into bins of the given width,
// K, 0.1 to 10, and treats each bin at its mean temperature, mean set-point and
// mean gains. Sunny hours and cold nights at one temperature share a bin: where
// cold days are sunny, gains from other hours are used, so the heat comes out
// lower than hour by hour.
func (s HeatingSeason) Bins(width float64) (SeasonHeat, error) {
	if err := errors.Join(s.check(), domain.Range{Min: 0.1, Max: 10, Unit: "K"}.Check("width", width)); err != nil {
		return SeasonHeat{}, err
	}
	low := math.Inf(1)
	high := math.Inf(-1)
	for _, v := range s.Outside {
		low, high = math.Min(low, v), math.Max(high, v)
	}
	first := math.Floor(low / width)
	type bin struct{ hours, diff, gain float64 }
	bins := make([]bin, int(math.Floor(high/width)-first)+1)
	for i, v := range s.Outside {
		b := &bins[int(math.Floor(v/width)-first)]
		b.hours++
		b.diff += s.SetPoints.at(i) - v
		b.gain += s.gain(i)
	}
	r := SeasonHeat{Method: "bins", Peak: math.NaN()}
	for _, b := range bins {
		if b.hours == 0 {
			continue
		}
		loss, gain := s.Loss*b.diff/b.hours, b.gain/b.hours
		if loss > gain {
			r.add(&s.Burner, loss-gain, b.hours)
			r.Loss += loss * b.hours * 3600
			r.Gains += gain * b.hours * 3600
		}
	}
	r.finish(&s.Burner, s.Price)
	return r, nil
}

// DegreeHours sums the outside temperatures below the base temperature base,
// °C, -90 to 120: heat = Loss × degree-hours. The base is the set-point less
// what the gains carry; BaseTemperature gives it. One base for the whole year
// cannot tell a sunny hour from a dull one.
func (s HeatingSeason) DegreeHours(base float64) (SeasonHeat, error) {
	if err := errors.Join(s.check(), roomRange.Check("base", base)); err != nil {
		return SeasonHeat{}, err
	}
	r := SeasonHeat{Method: "degree-hours", Peak: math.NaN()}
	sum := 0.0
	for _, to := range s.Outside {
		if to < base {
			sum += base - to
			r.Hours++
		}
	}
	hours := r.Hours
	r.Hours = 0
	if hours > 0 {
		r.add(&s.Burner, s.Loss*sum/hours, hours)
	}
	r.Loss = s.Loss * (sum + hours*(s.SetPoints.mean()-base)) * 3600
	r.Gains = r.Loss - s.Loss*sum*3600
	r.finish(&s.Burner, s.Price)
	return r, nil
}

// BaseTemperature returns the base of the degree-hours, °C: the mean set-point
// less the mean gains, over the hours colder than it, divided by the loss.
func (s HeatingSeason) BaseTemperature() (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	mean := s.SetPoints.mean()
	sum, n := 0.0, 0.0
	for i, to := range s.Outside {
		if to < mean {
			sum += s.gain(i)
			n++
		}
	}
	if n == 0 {
		return mean, nil
	}
	return mean - sum/n/s.Loss, nil
}

// DegreeDayEnergy returns the heat in J of a house of loss, W/K, 0 to 1e9, over
// degreeDays, K d, 0 to 1e5: 86400 × loss × degree-days × share, the share of
// the day or of the rooms that is heated, a fraction, 0 to 1. NaN outside.
func DegreeDayEnergy(loss, degreeDays, share float64) float64 {
	if !conductanceRange.Contains(loss) || !(degreeDays >= 0 && degreeDays <= 1e5) || !shareRange.Contains(share) {
		return math.NaN()
	}
	return 86400 * loss * degreeDays * share
}
