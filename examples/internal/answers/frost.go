package answers

import (
	"errors"
	"fmt"
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/lighting"
)

// Frost is how the house warms up and cools down on the design night.
type Frost struct {
	Unheated      float64     `json:"unheated_air_c"`
	WarmUp        *float64    `json:"warm_up_min"` // null: it never gets there
	Settles       float64     `json:"full_heat_settles_at_c"`
	Frost         float64     `json:"frost_below_c"`
	HeaterStops   *float64    `json:"frost_after_heater_stops_min"` // without emergency heat; null: it never comes
	PowerFails    *float64    `json:"frost_after_power_fails_min"`
	StopsBetween  [2]*float64 `json:"frost_after_heater_stops_between_min"` // with the least and the most that measured houses store
	FailsBetween  [2]*float64 `json:"frost_after_power_fails_between_min"`
	Bridged       *float64    `json:"frost_after_power_fails_with_emergency_heat_min"`
	Emergency     float64     `json:"emergency_heat_w"`
	EmergencyNeed float64     `json:"emergency_heat_needed_w"`
	NightLength   float64     `json:"night_h"`
	Lasts         float64     `json:"emergency_heat_lasts_h"`
	Constants     [3]float64  `json:"time_constants_h"`

	Course []Moment `json:"-"` // after a failure
}

// horizon is how far ahead warm-up and frost are looked for.
const horizon = 7 * 24 * time.Hour

// Frost takes the loss of the night as a straight line down to the outside air
// for the warm-up, and down to the frost for failures. Without power the fan
// stands still.
func (h *House) Frost(night Night) (Frost, error) {
	p := h.Plan
	k, _, err := fromplan.Conditions(p, night.air, float64(p.Site.WinterNight.Month), fromplan.Drawn(p, night.air.Outside.Temperature(), 0))
	if err != nil {
		return Frost{}, err
	}
	stores := fromplan.Stores(p, h.Shape)
	if err := stores.Check(); err != nil {
		return Frost{}, fmt.Errorf("heat_storage, on each m² of floor: %w", err)
	}
	inside, outside := k.Inside, k.Outside
	wide, drive, err := h.Envelope.Nodes(k, outside, stores)
	if err != nil {
		return Frost{}, fmt.Errorf("warm-up: %w", err)
	}
	house, err := airheat.NewTransient(wide)
	if err != nil {
		return Frost{}, err
	}
	f := Frost{Frost: p.SetPoints.Limits.Frost, Unheated: house.Steady(drive).Air}
	f.NightLength = 24 - dayLength(p.Site.Latitude, p.Site.WinterNight.Month)
	drive.Heat = p.Heater.Power
	f.Settles = house.Steady(drive).Air
	up, err := house.WarmUp(drive, inside, horizon)
	if err != nil {
		return f, fmt.Errorf("warm-up: %w", err)
	}
	f.WarmUp = minutes(up)
	for i, c := range house.TimeConstants() {
		f.Constants[i] = c.Hours()
	}
	return f, h.failures(&f, k, stores)
}

// failures finds what is left of the time when heater or power fails.
func (h *House) failures(f *Frost, k envelope.HouseConditions, stores envelope.NodeStores) error {
	p := h.Plan
	fan, fall, err := h.Envelope.Nodes(k, f.Frost, stores)
	if err != nil {
		return fmt.Errorf("frost: %w", err)
	}
	still := fan
	still.AirStructure *= p.HeatStorage.StillAir
	still.AirSoil *= p.HeatStorage.StillAir
	turning, e1 := airheat.NewTransient(fan)
	dark, e2 := airheat.NewTransient(still)
	if err := errors.Join(e1, e2); err != nil {
		return err
	}
	held, _ := turning.HoldingHeat(fall, k.Inside)
	need, _ := dark.HoldingHeat(fall, f.Frost)
	f.EmergencyNeed = max(0, need)
	without := 0.0
	if e := p.EmergencyHeat; e != nil {
		f.Emergency, f.Lasts = e.Power, e.Lasts
		if !e.NeedsMains {
			without = e.Power
		}
	}
	for _, c := range []struct {
		house airheat.Transient
		heat  float64
		to    **float64
	}{{turning, 0, &f.HeaterStops}, {dark, 0, &f.PowerFails}, {dark, without, &f.Bridged}} {
		e, err := turning.CoolDown(c.house, fall, airheat.HeatFailure{SetPoint: k.Inside, Share: share(c.heat, held), Level: f.Frost, Limit: horizon})
		if err != nil {
			return fmt.Errorf("frost: %w", err)
		}
		*c.to = minutes(e)
	}
	f.trace(turning, dark, fall, held, without)
	return f.spread(fan, fall, k.Inside, p.HeatStorage.StillAir)
}

// spread finds both times again with stores as far from the plan's as the ends of
// measured houses lie from their median.
func (f *Frost) spread(fan envelope.Nodes, fall envelope.Drive, inside, stillAir float64) error {
	least, most := envelope.NodeStoresSpread()
	middle := envelope.DefaultNodeStores()
	ground := 1 / (1/fan.SoilDeep + 1/fan.AirSoil) // from the air to the ground
	for i, end := range [2]envelope.NodeStores{least, most} {
		n := fan
		n.StructureCapacity *= end.Structure / middle.Structure
		n.AirStructure *= end.AirStructure / middle.AirStructure
		n.AirSoil *= end.AirSoil / middle.AirSoil
		if d := 1 / (1/ground - 1/n.AirSoil); fan.SoilDeep > 0 && d > 0 {
			n.SoilDeep = d
		}
		still := n
		still.AirStructure *= stillAir
		still.AirSoil *= stillAir
		turning, e1 := airheat.NewTransient(n)
		dark, e2 := airheat.NewTransient(still)
		failure := airheat.HeatFailure{SetPoint: inside, Level: f.Frost, Limit: horizon}
		stops, e3 := turning.CoolDown(turning, fall, failure)
		fails, e4 := turning.CoolDown(dark, fall, failure)
		if err := errors.Join(e1, e2, e3, e4); err != nil {
			return fmt.Errorf("frost: %w", err)
		}
		f.StopsBetween[i], f.FailsBetween[i] = minutes(stops), minutes(fails)
	}
	return nil
}

// Moment is the air some time after a failure.
type Moment struct {
	After   time.Duration
	Stopped float64 // °C, the heater alone has stopped, without emergency heat
	Alone   float64 // °C, the power has failed
	Bridged float64 // °C, the power has failed, with the emergency heat
}

// trace follows the air after a failure for twelve hours, closely at
// first.
func (f *Frost) trace(turning, dark airheat.Transient, fall envelope.Drive, held, left float64) {
	fall.Heat = held
	start := turning.Steady(fall)
	for i := range 61 {
		after := time.Duration(i*i) * 12 * time.Second
		fall.Heat = 0
		m := Moment{After: after, Stopped: turning.After(start, fall, after).Air, Alone: dark.After(start, fall, after).Air}
		fall.Heat = left
		m.Bridged = dark.After(start, fall, after).Air
		f.Course = append(f.Course, m)
	}
}

func share(power, held float64) float64 {
	if held <= 0 {
		return 1
	}
	return min(1, max(0, power/held))
}

// minutes returns the time of an event, nil when it does not come.
func minutes(e airheat.Event) *float64 {
	if !e.Reached {
		return nil
	}
	return some(e.Time.Minutes())
}

// midMonth is the number of the day in the year in the middle of a month.
func midMonth(month int) int { return int(30.4*(float64(month)-0.5)) + 1 }

// dayLength is the time between sunrise and sunset in the middle of a month, h.
func dayLength(latitude float64, month int) float64 {
	return lighting.DayLength(latitude, midMonth(month))
}
