package ventilation

import (
	"errors"
	"fmt"
	"time"

	"cloche.example/internal/domain"
)

// Targets are what a house is kept at in one hour.
type Targets struct {
	Warm     float64 // °C, -60 to Vent, the heater works as far as keeps the inside at this
	Vent     float64 // °C, -60 to 80, the vents open as far as keeps the inside at this
	Heater   float64 // W, 0 to 1e8, the heater's power
	Radiant  float64 // fraction, 0 to 1, of the heater's power that is heat radiation to crop and floor: 0 for air heaters, about half for pipes
	Humidity float64 // fraction, 0.2 to 1, relative humidity that vents and heat keep the inside below; 1 for no limit
	Lift     float64 // K, 0 to 20, above Warm to which the heater may warm for the sake of Humidity
	Least    float64 // fraction, 0 to 1, to which the vents stand open at least
	Dry      float64 // fraction, 0 to 1, to which the vents may open for the sake of Humidity
	Most     float64 // fraction, Least to 1, to which the vents may open at all: less in wind and rain
	Screen   bool    // the screen of Real is drawn
	Shade    float64 // fraction, 0 to 1, of the sun kept out, beside what the hour's setting keeps out
	CO2      float64 // µmol/mol, 0 to 5000, up to which CO2 is given; 0 for none

	Mist     float64  // kg/s, 0 to 1000, beside the hour's setting
	Exchange float64  // W/K, 0 to 1e7, in place of the setting's where it is above 0
	Store    float64  // °C, -60 to 80, with Exchange
	Air      *Network // openings, leaks and fans in place of the setting's; nil: those
	Forced   *Network // the same with fans, in hours in which the vents wide open leave the house warmer than Vent; nil: none
	Pad      float64  // fraction, 0 to 0.99, efficiency of a wet pad that all air passes while Forced stands in

	Condensing  float64 // kg/(s Pa), 0 to 10, with Exchange, in place of the setting's
	StoreVapour float64 // Pa, 0 to 1e5, with Exchange, in place of the setting's
}

// DefaultTargets returns a house that is heated by air to 16 °C and vented at
// 24 °C, at most 90 % humid by vents a tenth open, then by heat up to 3 K more
// (common practice, no source), with a heater of the given power, W, 0 to 1e8.
func DefaultTargets(heater float64) Targets {
	return Targets{Warm: 16, Vent: 24, Heater: heater, Humidity: 0.9, Lift: 3, Dry: 0.1, Most: 1}
}

// Ranges of targets.
var (
	limitRange = domain.Range{Min: 0.2, Max: 1, Unit: "fraction", Source: "drier air than plants grow in to none too humid"}
	liftRange  = domain.Range{Min: 0, Max: 20, Unit: "K", Source: "chosen"}
	doseRange  = domain.Range{Min: 0, Max: 5000, Unit: "µmol/mol", Source: "none to the limit for people at work"}
)

// valid is the fast path of Check.
func (t *Targets) valid() bool {
	return temperatureRange.Contains(t.Vent) && t.Warm >= temperatureRange.Min && t.Warm <= t.Vent && heaterRange.Contains(t.Heater) &&
		shareRange.Contains(t.Radiant) && limitRange.Contains(t.Humidity) && liftRange.Contains(t.Lift) && shareRange.Contains(t.Least) &&
		shareRange.Contains(t.Dry) && t.Most >= t.Least && t.Most <= 1 && shareRange.Contains(t.Shade) && doseRange.Contains(t.CO2) &&
		vapourRange.Contains(t.Mist) && storeRange.Contains(t.Exchange) && temperatureRange.Contains(t.Store) && padRange.Contains(t.Pad) &&
		condensingRange.Contains(t.Condensing) && storeVapourRange.Contains(t.StoreVapour)
}

// Check joins every fault of t, by field.
func (t Targets) Check() error {
	if t.valid() {
		return nil
	}
	return errors.Join(
		temperatureRange.Check("Vent", t.Vent),
		domain.Range{Min: temperatureRange.Min, Max: t.Vent, Unit: "°C", Source: "the heater must not fight the vents"}.Check("Warm", t.Warm),
		heaterRange.Check("Heater", t.Heater),
		shareRange.Check("Radiant", t.Radiant),
		limitRange.Check("Humidity", t.Humidity),
		liftRange.Check("Lift", t.Lift),
		shareRange.Check("Least", t.Least),
		shareRange.Check("Dry", t.Dry),
		domain.Range{Min: t.Least, Max: 1, Unit: "fraction", Source: "Least"}.Check("Most", t.Most),
		shareRange.Check("Shade", t.Shade),
		doseRange.Check("CO2", t.CO2),
		vapourRange.Check("Mist", t.Mist),
		storeRange.Check("Exchange", t.Exchange),
		temperatureRange.Check("Store", t.Store),
		padRange.Check("Pad", t.Pad),
		condensingRange.Check("Condensing", t.Condensing),
		storeVapourRange.Check("StoreVapour", t.StoreVapour),
	)
}

// on puts what the targets set into the setting of an hour; house is the house's
// own openings.
func (t *Targets) on(s *Setting, house *Network) {
	if t.Air != nil {
		s.Air = t.Air
	}
	if s.Air != nil {
		house = s.Air
	}
	s.Opening, s.Screen = t.Least, t.Screen
	if s.Opening == 0 && house.fansAlone() {
		s.Opening = t.Most
	}
	s.Shade = 1 - (1-s.Shade)*(1-t.Shade)
	s.Mist += t.Mist
	if t.Exchange > 0 {
		s.Exchange, s.Store, s.Condensing, s.StoreVapour = t.Exchange, t.Store, t.Condensing, t.StoreVapour
	}
}

// At returns t: the same in every hour.
func (t Targets) At(HourMoment) Targets { return t }

// TargetRule says hour by hour what a house is kept at. Targets do, the same all
// year; DayNight does, by clock and sun; and so may a rule of your own.
type TargetRule interface {
	// At returns the targets of the hour that m tells of.
	At(m HourMoment) Targets
}

// HourMoment is what a TargetRule goes by.
type HourMoment struct {
	Hour    int           // from the first hour, 0
	Clock   time.Duration // since midnight, to the start of the hour
	Weather Weather       // mean over the hour
	Setting Setting       // what is done to the house besides
	Before  ClimateState  // the house in the hour before; zero in the first, and after one without a state
}

// RefiningRule is a TargetRule with something in the house that follows the state
// which it makes itself, as air tubes in the soil do in which vapour condenses.
type RefiningRule interface {
	TargetRule
	// Refine is told the state x that the targets t gave. It may set Exchange, Store,
	// Condensing and StoreVapour of t anew; while it reports true the hour is solved
	// again, at most 20 times, and the last state stands. What is out of range is
	// refused as it is of At.
	Refine(x *ClimateState, t *Targets) (again bool)
}

// DayNight keeps a house at other targets by day than by night, and draws a
// screen by sun, clock and cold. Screen of Day and Night is not read.
type DayNight struct {
	Day           Targets       // from Morning to Evening
	Night         Targets       // else
	Morning       time.Duration // since midnight, 0 to 24 h, when Day begins
	Evening       time.Duration // since midnight, when Day ends, at least Morning, at most 24 h
	ScreenFrom    time.Duration // since midnight, 0 to 24 h, from when the screen may be drawn
	ScreenTo      time.Duration // since midnight, 0 to 24 h, until when; before ScreenFrom: over midnight; the same: never
	ScreenSun     float64       // W/m², 0 to 1500, the screen is drawn while the sun is below
	ScreenOutside float64       // °C, -60 to 80, and the outside air colder than
}

// DefaultDayNight returns the default targets by day, from 7 to 19 h, and 3 K
// less by night, and a screen that is drawn from 16 to 9 h while the sun is
// below 20 W/m² and the outside air colder than 12 °C (common practice, no
// source), with a heater of the given power, W, 0 to 1e8.
func DefaultDayNight(heater float64) DayNight {
	r := DayNight{Day: DefaultTargets(heater), Night: DefaultTargets(heater),
		Morning: 7 * time.Hour, Evening: 19 * time.Hour, ScreenFrom: 16 * time.Hour, ScreenTo: 9 * time.Hour, ScreenSun: 20, ScreenOutside: 12}
	r.Night.Warm -= 3
	return r
}

var clockRange = domain.Range{Min: 0, Max: 24, Unit: "h", Source: "a day"}

// Check joins every fault of r, by field.
func (r DayNight) Check() error {
	return errors.Join(
		domain.Within("Day", r.Day.Check()),
		domain.Within("Night", r.Night.Check()),
		clockRange.Check("Morning", r.Morning.Hours()),
		domain.Range{Min: r.Morning.Hours(), Max: 24, Unit: "h", Source: "Morning"}.Check("Evening", r.Evening.Hours()),
		clockRange.Check("ScreenFrom", r.ScreenFrom.Hours()),
		clockRange.Check("ScreenTo", r.ScreenTo.Hours()),
		sunRange.Check("ScreenSun", r.ScreenSun),
		temperatureRange.Check("ScreenOutside", r.ScreenOutside),
	)
}

// At returns Day or Night, with the screen drawn or not.
func (r DayNight) At(m HourMoment) Targets {
	t := r.Night
	if m.Clock >= r.Morning && m.Clock < r.Evening {
		t = r.Day
	}
	within := m.Clock >= r.ScreenFrom && m.Clock < r.ScreenTo
	if r.ScreenTo < r.ScreenFrom {
		within = m.Clock >= r.ScreenFrom || m.Clock < r.ScreenTo
	}
	t.Screen = within && m.Weather.Sun < r.ScreenSun && m.Weather.Air.Temperature() < r.ScreenOutside
	return t
}

// checkRule joins every fault of a rule; nil has none.
func checkRule(r TargetRule) error {
	if c, ok := r.(interface{ Check() error }); ok {
		return domain.Within("Rule", c.Check())
	}
	return nil
}

// outOfRange tells which targets of an hour are.
func outOfRange(t *Targets) error {
	if t.valid() {
		return nil
	}
	return fmt.Errorf("targets of Rule: %w", t.Check())
}
