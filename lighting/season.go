package lighting

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"cloche.example/internal/domain"
	"gonum.org/v1/gonum/stat"
)

// LightingSeason asks how long lamps must run over a whole year of hours; for
// part of a year leave the other hours dark and read the Days wanted. Every day
// is planned with its own daylight known: the lamps give what is missing to the
// target, in the hours allowed, from the first on, and only in hours whose
// daylight inside stays at or below OffAbove. Light is counted by the calendar
// day: hours across midnight are those before Until and those after From of the
// same day.
type LightingSeason struct {
	Global        []float64     // W/m², 0 to 1500; outside on level ground, means of the hours of a year: 8,760 or 8,784
	PerJoule      float64       // µmol/J, 1.7 to 2.5; photons of PAR in a joule of Global
	Transmittance float64       // fraction, 0 to 1; of the light outside that reaches the bed
	Target        float64       // mol/(m² d), 0 to 80; wanted on the bed
	PPFD          float64       // µmol/(m² s), 0 to 5000; of the lamps on the bed
	From          time.Duration // time of day, 0 to 24 h, from which lamps may burn: the photoperiod begins
	Until         time.Duration // time of day, 0 to 24 h, until which they may: it ends; before From it lies across midnight
	OffAbove      float64       // µmol/(m² s), 0 to 5000; of daylight inside above which they are off, 5000 is never
}

// LightingDay is one day's light, mol/(m² d) on the bed but for Outdoor.
type LightingDay struct {
	Outdoor   float64       // mol/(m² d) outside
	Daylight  float64       // mol/(m² d)
	Deficit   float64       // mol/(m² d) missing to the target without lamps
	Lamps     float64       // mol/(m² d) from the lamps
	Shortfall float64       // mol/(m² d) still missing
	LampTime  time.Duration // running time of the lamps
}

// LightingYear is a year of days.
type LightingYear struct {
	Days      []LightingDay // in the year's order
	LampTime  time.Duration // running time of the lamps in the year
	Lamps     float64       // mol/m² from the lamps in the year
	Daylight  float64       // mol/m² of daylight on the bed in the year
	DarkDays  int           // days with a deficit
	ShortDays int           // days that miss the target in spite of the lamps
}

// hourlyRange is the global irradiance of an hour.
var hourlyRange = domain.Range{Min: 0, Max: 1500, Unit: "W/m²"}

// Solve works through the year. All faults are reported together; of faulty
// hours the first is named.
func (s LightingSeason) Solve() (LightingYear, error) {
	if err := s.check(); err != nil {
		return LightingYear{}, err
	}
	var out LightingYear
	for d := range len(s.Global) / 24 {
		out.add(s.day(s.Global[24*d : 24*d+24]))
	}
	return out, nil
}

func (r *LightingYear) add(d LightingDay) {
	r.Days = append(r.Days, d)
	r.LampTime += d.LampTime
	r.Lamps += d.Lamps
	r.Daylight += d.Daylight
	if d.Deficit > 0 {
		r.DarkDays++
	}
	if d.Shortfall > 0 {
		r.ShortDays++
	}
}

func (s LightingSeason) check() error {
	errs := []error{
		daylightRatioRange.Check("PerJoule", s.PerJoule), shareRange.Check("Transmittance", s.Transmittance),
		dliRange.Check("Target", s.Target), ppfdRange.Check("PPFD", s.PPFD), ppfdRange.Check("OffAbove", s.OffAbove),
		photoperiodRange.Check("From", s.From.Hours()), photoperiodRange.Check("Until", s.Until.Hours()),
	}
	if n := len(s.Global); n != 8760 && n != 8784 {
		errs = append(errs, fmt.Errorf("Global has %d hours, want a whole year of 8760 or 8784: %w", n, ErrRange))
	}
	for i, g := range s.Global {
		if !hourlyRange.Contains(g) {
			errs = append(errs, hourlyRange.Check(fmt.Sprintf("Global[%d]", i), g))
			break
		}
	}
	return errors.Join(errs...)
}

// rounding is what a running time may miss by and still be exact.
const rounding = 1e-9

// day plans 24 hours.
func (s LightingSeason) day(global []float64) LightingDay {
	inside := func(h int) float64 { return global[h] * s.PerJoule * s.Transmittance } // µmol/(m² s)
	var d LightingDay
	for h := range global {
		d.Outdoor += global[h] * s.PerJoule * 3600 * micromole
		d.Daylight += inside(h) * 3600 * micromole
	}
	d.Deficit = max(0, s.Target-d.Daylight)
	if s.PPFD == 0 || d.Deficit == 0 {
		d.Shortfall = d.Deficit
		return d
	}
	want := d.Deficit / (s.PPFD * micromole) // s
	burn := 0.0
	for h := range global {
		if inside(h) <= s.OffAbove {
			burn = min(burn+s.free(h).Seconds(), want)
		}
	}
	d.LampTime = time.Duration(burn * float64(time.Second))
	if d.Lamps = burn * s.PPFD * micromole; want-burn > rounding*want {
		d.Shortfall = d.Deficit - d.Lamps
	}
	return d
}

// free returns how much of an hour of the day, 0 to 23, lies where lamps may
// burn.
func (s LightingSeason) free(hour int) time.Duration {
	start, end := time.Duration(hour)*time.Hour, time.Duration(hour+1)*time.Hour
	if s.From <= s.Until {
		return max(0, min(end, s.Until)-max(start, s.From))
	}
	return max(0, min(end, s.Until)-start) + max(0, end-max(start, s.From))
}

// Percentile returns the daylight on the bed, mol/(m² d), that the fraction p,
// 0 to 1, of the days stays below: design lamps on a low one, not on a mean.
// NaN outside.
func (r LightingYear) Percentile(p float64) float64 {
	if !(p >= 0 && p <= 1) || len(r.Days) == 0 {
		return math.NaN()
	}
	light := make([]float64, len(r.Days))
	for i, d := range r.Days {
		light[i] = d.Daylight
	}
	slices.Sort(light)
	return stat.Quantile(p, stat.LinInterp, light, nil)
}

// Month sums the days of a calendar month of a year that begins on 1 January;
// one of 366 days has its leap day. Light is in mol/m² for the month.
func (r LightingYear) Month(m time.Month) LightingYear {
	year := 2023
	if len(r.Days) == 366 {
		year = 2024
	}
	var out LightingYear
	for i, d := range r.Days {
		if time.Date(year, 1, 1+i, 0, 0, 0, 0, time.UTC).Month() != m {
			continue
		}
		out.add(d)
	}
	return out
}
