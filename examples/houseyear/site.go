package main

import (
	"encoding/json"
	"slices"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// atSite is the plan where the weather was; in its months, and with its coldest nights
// and hottest noons to size by, where the weather is a whole year.
func atSite(p plan.Filled, s *weather.Series) (plan.Filled, error) {
	site := map[string]any{"latitude_deg": s.Site.Latitude, "longitude_deg": s.Site.Longitude, "time_zone_h": s.Site.Zone, "altitude_m": s.Site.Altitude}
	if s.Whole() {
		t, mj, rh := monthMeans(s)
		site["months"] = map[string]any{"temperature_c": t, "sun_mj_m2_d": mj, "relative_humidity": rh}
		cold, hot, damp := extremes(s)
		coldest := 0
		for m := range t {
			if t[m] < t[coldest] {
				coldest = m
			}
		}
		// A house where it never freezes is sized for a kelvin.
		cold = min(cold, t[coldest], p.SetPoints.WinterNight.Temperature-1)
		site["winter_night"] = map[string]any{"temperature_c": cold, "month": coldest + 1}
		site["summer_noon"] = map[string]any{"temperature_c": max(hot, slices.Max(t[:])), "relative_humidity": damp}
	}
	text, err := json.Marshal(map[string]any{"site": site})
	if err != nil {
		return p, err
	}
	return p.Change(text)
}

// rare is the part of a year that is colder than design nights, and hotter than design
// noons, as is common practice.
const rare = 0.004

// extremes are the temperatures of rare cold and rare heat, °C, and the mean humidity
// in that heat, fraction.
func extremes(s *weather.Series) (cold, hot, damp float64) {
	sorted := slices.Sorted(slices.Values(s.Temperature))
	n := int(rare * float64(len(sorted)))
	cold, hot = sorted[n], sorted[len(sorted)-1-n]
	hours := 0.0
	for i, t := range s.Temperature {
		if t >= hot {
			damp += s.RelativeHumidity[i]
			hours++
		}
	}
	return cold, hot, damp / hours
}

// monthMeans are the temperature, °C, sun, MJ/(m² d), and humidity of each month.
func monthMeans(s *weather.Series) (t, mj, rh [12]float64) {
	var n [12]float64
	for i, at := range s.Time {
		m := at.Month() - 1
		n[m]++
		t[m] += s.Temperature[i]
		mj[m] += s.Global[i] * 0.0864 // 86,400 s a day
		rh[m] += s.RelativeHumidity[i]
	}
	for m := range n {
		t[m], mj[m], rh[m] = t[m]/n[m], mj[m]/n[m], rh[m]/n[m]
	}
	return t, mj, rh
}
