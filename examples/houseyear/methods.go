package main

import (
	"fmt"

	"cloche.example/airheat"
)

// method is a season's heat by one of the short methods on the same hours.
type method struct {
	Name   string  `json:"name"`
	Heat   float64 `json:"heat_kwh"`
	Over   float64 `json:"over_the_hours_ratio"` // of the heat by the hours of the whole house; 0 where that is none
	Leaves string  `json:"leaves_out"`
}

// methods reckon the same year with one coefficient of loss, the mean of the year's
// colder hours; the months have one each. Part of a year has none of them.
func (h *house) methods(a *answer) ([]method, error) {
	s, p, year := h.weather, h.plan, h.steady.Year
	if !s.Whole() {
		return nil, nil
	}
	floor := h.steady.House.Shape.FloorArea
	q := p.SetPoints
	season := airheat.HeatingSeason{
		Outside: s.Temperature, Sun: s.Global, Loss: year.Loss, Aperture: h.steady.Sun.Gain * floor, Burner: h.source.Burner,
		SetPoints: airheat.SetPoints{Day: q.Day.Temperature, Night: q.Night.Temperature, DayStarts: int(q.DayFrom), DayEnds: int(q.DayUntil)},
		Plants:    airheat.Plants{Area: h.steady.Sun.Gain * floor, LampRadiant: h.lamps.share, Evaporated: p.Crop.TranspiredSun},
	}
	for _, on := range a.year.Burn {
		season.Lamps = append(season.Lamps, on*h.lamps.power)
	}
	base, err := season.BaseTemperature()
	if err != nil {
		return nil, fmt.Errorf("degree-hours: %w", err)
	}
	var list []method
	add := func(name, leaves string, r airheat.SeasonHeat, err error) error {
		m := method{Name: name, Heat: r.Heat / 3.6e6, Leaves: leaves}
		if was := a.Account.Whole.Heater; was > 0 {
			m.Over = m.Heat / was
		}
		list = append(list, m)
		return err
	}
	one, err := season.Hourly()
	if err = add("hour by hour, one coefficient", "storage; wind, sky and wet covers hour by hour", one, err); err != nil {
		return nil, err
	}
	one, err = season.DegreeHours(base)
	if err = add(fmt.Sprintf("degree-hours below %.1f °C", base), "when the sun shines; night and day apart", one, err); err != nil {
		return nil, err
	}
	one, err = season.Bins(1)
	if err = add("bins of 1 K", "which hours of one temperature are sunny", one, err); err != nil {
		return nil, err
	}
	m := method{Name: "months, storage by a utilisation", Heat: year.Heat, Leaves: "which hours of a month are sunny"}
	if was := a.Account.Whole.Heater; was > 0 {
		m.Over = m.Heat / was
	}
	return append(list, m), nil
}
