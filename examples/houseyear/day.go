package main

import (
	"fmt"
	"time"
)

// dayHour is an hour of the day that was asked for.
type dayHour struct {
	Time     string  `json:"time"`
	Outside  float64 `json:"outside_c"`
	Sun      float64 `json:"sun_w_m2"`
	Inside   float64 `json:"inside_c"`
	Humidity float64 `json:"relative_humidity"`
	Heater   float64 `json:"heater_w"`
	Opening  float64 `json:"opening_fraction"`
	Lamps    float64 `json:"lamps_fraction"`
	Light    float64 `json:"light_umol_m2_s"`
	Wet      float64 `json:"condensed_kg_h"`
}

// day is the day of that month and day, as in 01-15; none for an empty word.
func (y *year) day(word string) ([]dayHour, error) {
	if word == "" {
		return nil, nil
	}
	at, err := time.Parse("01-02", word)
	if err != nil {
		return nil, fmt.Errorf("-day %q is not a month and a day such as 01-15", word)
	}
	var list []dayHour
	for i, t := range y.house.weather.Time {
		if t.Month() == at.Month() && t.Day() == at.Day() && !y.Failed[i] {
			list = append(list, y.dayHour(i))
		}
	}
	if list == nil {
		return nil, fmt.Errorf("-day %s: the weather has no such day", word)
	}
	return list, nil
}

func (y *year) dayHour(i int) dayHour {
	w, x := y.house.weather, &y.State[i]
	return dayHour{w.Time[i].Format(stamp), w.Temperature[i], w.Global[i], x.Temperature, x.RelativeHumidity, y.heat(i), y.Opening[i], y.Burn[i],
		y.lit(i) + y.Burn[i]*y.house.lamps.ppfd, 3600 * x.Condensed}
}
