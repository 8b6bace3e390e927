package plan

import (
	"fmt"
	"math"
)

// largestFloor of a house, m².
const largestFloor = 100_000

// largestVolume of a house, m³, as the exchange of its air takes it.
const largestVolume = 1_000_000

// leastRise from eave to ridge makes a roof, m.
const leastRise = 0.05

// shape looks for houses that cannot be built.
func (f *filler) shape(h House) {
	const ridge, eave, span = "house.ridge_height_m", "house.eave_height_m", "house.span_m"
	rise := h.RidgeHeight - h.EaveHeight
	switch {
	case rise < leastRise:
		f.clash("the ridge must stand 0.05 m and more above the eave", ridge, eave)
	case h.Shape == "round arch" && rise > h.Span/2*(1+1e-9):
		f.clash("a round arch rises above its eave by no more than half its span", ridge, eave, span)
	case h.Shape == "pointed arch":
		chord := math.Atan2(rise, h.Span/2) * 180 / math.Pi
		if h.RidgeSlope > 0.999*chord || 2*chord-h.RidgeSlope > 90 {
			f.clash("no circular arcs lead from this eave to this ridge: at the ridge they must be flatter than the line from eave to ridge, and at the eave no steeper than upright",
				"house.ridge_slope_deg", ridge, eave, span)
		}
	}
	if floor := floorArea(h); floor > largestFloor {
		f.clash(fmt.Sprintf("a house has at most %.0f m² of floor, and this one %.0f", float64(largestFloor), floor), span, "house.length_m", "house.bays_count")
	} else if v := floor * (h.RidgeHeight + h.Depth); v > largestVolume {
		f.clash(fmt.Sprintf("a house holds at most %.0f m³, floor times height of the ridge above it, and this one %.0f", float64(largestVolume), v), "house.ridge_height_m", "house.depth_m", span, "house.length_m", "house.bays_count")
	}
	if h.Depth > h.Span {
		f.clash("a house is dug in no deeper than it is wide", "house.depth_m", span)
	}
	if h.Shape == "uneven gable" && (h.RidgeOffset > 0.98*h.Span || h.RidgeOffset < 0.02*h.Span) {
		f.clash("the ridge must stand within the span, 2 % from its ends and more", "house.ridge_offset_m", span)
	}
	if h.Shape == "lean-to" && h.Bays > 1 {
		f.clash("a lean-to has one bay", "house.bays_count", "house.shape")
	}
	if h.DwarfWall.Height > h.EaveHeight {
		f.clash("the dwarf wall must end at the eave or below", "house.dwarf_wall.height_m", eave)
	}
}

// annexes looks at what is built on, and at the doors.
func (f *filler) annexes(h House) {
	once(f, "house.annexes", h.Annexes, func(a Annex) string { return a.Name }, "none")
	used, shared := map[string]float64{}, map[string]float64{}
	for i, a := range h.Annexes {
		at := func(key string) string { return under("house.annexes", i, key) }
		if used[a.Place] += a.Width; used[a.Place] > placeLength(h, a.Place)+1e-9 {
			f.clash("annexes must find room at their wall", at("width_m"), at("place"), "house.length_m", "house.span_m")
		}
		if a.High > wallHeight(h, a.Place) {
			f.clash("an annex must not stand above its wall", at("high_m"), at("place"), "house.eave_height_m", "house.ridge_height_m")
		}
		shared[a.Place] += a.Width * math.Max(0, a.High-h.DwarfWall.Height)
		if room := used[a.Place] <= placeLength(h, a.Place); room && shared[a.Place] > wallArea(h, a.Place) {
			f.clash("annexes must not cover more than their wall", at("width_m"), at("high_m"), at("place"), "house.eave_height_m", "house.ridge_height_m")
		}
		if a.Low > a.High {
			f.clash("an annex's roof falls away from the house", at("low_m"), at("high_m"))
		}
		if a.Depth > h.Depth {
			f.clash("an annex must not be dug deeper than the house", at("depth_m"), "house.depth_m")
		}
	}
	for i, d := range h.Doors {
		at := func(key string) string { return under("house.doors", i, key) }
		if d.Width > placeLength(h, d.Place) {
			f.clash("a door must be narrower than its wall", at("width_m"), at("place"), "house.length_m", "house.span_m")
		}
		if d.Sill+d.Height > wallHeight(h, d.Place)+1e-9 {
			f.clash("a door must end below the top of its wall", at("height_m"), at("sill_m"), at("place"), "house.eave_height_m", "house.ridge_height_m")
		}
		if d.Sill < -h.Depth {
			f.clash("a door's sill lies at the floor or above", at("sill_m"), "house.depth_m")
		}
		if d.OpeningsPerDay*d.Open > 86400 {
			f.clash("a door cannot stand open longer than a day has", at("openings_per_d"), at("open_s"))
		}
		for j, a := range h.Annexes {
			if a.Name == d.Lobby && a.Place != d.Place {
				f.clash("a door and its lobby must be at the same wall", at("place"), under("house.annexes", j, "place"))
			}
		}
	}
}

// wallArea is the area of a wall above the dwarf wall, m²; of an arch's end the
// straight triangle over the eaves.
func wallArea(h House, place string) float64 {
	high := wallHeight(h, place)
	if place == "near end" || place == "far end" {
		high = (h.EaveHeight + h.RidgeHeight) / 2
	}
	return placeLength(h, place) * (high - h.DwarfWall.Height)
}

// weather compares the design states with the months.
func (f *filler) weather(p *Plan) {
	s := p.Site
	if math.Abs(s.TimeZone-s.Longitude/15) > 4 {
		f.clash("standard time lies within 4 hours of the sun's", "site.time_zone_h", "site.longitude_deg")
	}
	coldest, warmest := math.Inf(1), math.Inf(-1)
	for _, t := range s.Months.Temperature {
		coldest, warmest = math.Min(coldest, t), math.Max(warmest, t)
	}
	if s.WinterNight.Temperature > coldest {
		f.clash("the design night must be colder than the mean of the coldest month", "site.winter_night.temperature_c", "site.months.temperature_c")
	}
	if m := s.WinterNight.Month; m >= 1 && m <= len(s.Months.Temperature) && s.Months.Temperature[m-1]-s.WinterNight.Temperature > 40 {
		f.clash("the design night must lie within 40 K of its month's mean", "site.winter_night.temperature_c", "site.winter_night.month", "site.months.temperature_c")
	}
	if s.SummerNoon.Temperature < warmest {
		f.clash("the design noon must be warmer than the mean of the warmest month", "site.summer_noon.temperature_c", "site.months.temperature_c")
	}
	if d := s.SummerDay; d.DewPoint > d.Temperature {
		f.clash("a dew point lies at the air's temperature or below", "site.summer_day.dew_point_c", "site.summer_day.temperature_c")
	}
}

// setPoints looks for heating and venting against each other.
func (f *filler) setPoints(p *Plan) {
	s := p.SetPoints
	const held, day, night = "set_points.winter_night.temperature_c", "set_points.day.temperature_c", "set_points.night.temperature_c"
	if s.WinterNight.Temperature <= p.Site.WinterNight.Temperature {
		f.clash("there is nothing to heat: the air held inside must be warmer than the design night", held, "site.winter_night.temperature_c")
	}
	if p.Site.WinterMorning.Temperature >= s.Day.Temperature {
		f.clash("the winter morning must be colder than the house", "site.winter_morning.temperature_c", day)
	}
	if s.Day.Temperature >= s.Day.VentTemperature {
		f.clash("heater and vents would work against each other: by day the heater must stop before the vents open", day, "set_points.day.vent_temperature_c")
	}
	if s.Night.Temperature >= s.Night.VentTemperature {
		f.clash("heater and vents would work against each other: by night the heater must stop before the vents open", night, "set_points.night.vent_temperature_c")
	}
	if s.DayFrom >= s.DayUntil {
		f.clash("the day must begin before it ends", "set_points.day_from_h", "set_points.day_until_h")
	}
	if l := s.Limits; l.Hot <= s.Day.VentTemperature {
		f.clash("air counts as too hot only above the temperature at which the vents open", "set_points.limits.hot_c", "set_points.day.vent_temperature_c")
	}
	if s.Limits.Chill >= s.Day.Temperature {
		f.clash("air that chills the crop must be colder than the house by day", "set_points.limits.chill_c", day)
	}
	if s.Limits.Frost >= s.Night.Temperature || s.Limits.Frost >= s.WinterNight.Temperature {
		f.clash("air that counts as frost must be colder than what is held", "set_points.limits.frost_c", night, held)
	}
}
