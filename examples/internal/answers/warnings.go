package answers

import (
	"fmt"
	"math"
)

// Warning is a remark on the figures, with a code that stays.
type Warning struct {
	Code string `json:"code"`
	Text string `json:"text"`
}

// WarningCodes are those of all warnings.
func WarningCodes() []string {
	return []string{"sky_not_known", "wet_night_asks_more_water", "fog", "fan_unstable", "operating_points", "two_states_in_wind", "year_beyond_heater", "weather_file_not_read", "pads_too_damp", "arch_in_strips", "assumptions"}
}

func (r *Result) warning(code, format string, a ...any) {
	r.Warnings = append(r.Warnings, Warning{code, fmt.Sprintf(format, a...)})
}

// warn gathers what a reader should know of the figures.
func (r *Result) warn() {
	p := r.House.Plan
	r.Warnings = []Warning{}
	if r.House.Drier {
		r.warning("sky_not_known", "The air outside is drier or damper than the sky's emissivity is known for; that of a dew point of -40 or 30 °C stands for it.")
	}
	if short := r.Wet.Evaporation - r.Crop; short > 0.2*math.Abs(r.Crop)+0.5 {
		r.warning("wet_night_asks_more_water", "To hold %.0f %% inside, %.1f kg of water must evaporate in an hour; the plan's crop and soil set %.1f kg free, which makes %.0f %%.",
			100*r.Wet.Humidity, r.Wet.Evaporation, r.Crop, 100*r.Settled)
	}
	if r.Fog > 0 {
		r.warning("fog", "Crop and soil set more water free on the design night than covers and leaks take: %.1f kg/h of it turn to fog. Vent, or set less free.", r.Fog)
	}
	if r.Ducts != nil && r.Ducts.Rising {
		r.warning("fan_unstable", "The fan's pressure rises with its flow where it works on these ducts: it may hunt.")
	}
	if r.Ducts != nil && r.Ducts.Crossings > 1 {
		r.warning("operating_points", "Fan and ducts agree at %d flows; which one the fan takes depends on how it was started. The greatest is shown.", r.Ducts.Crossings)
	}
	if w := r.Summer.Windy; w != nil && w.States > 1 {
		r.warning("two_states_in_wind", "In wind the house can settle in two states; the hotter is shown.")
	}
	if u := r.Year.Unmet; u > 0 {
		r.warning("year_beyond_heater", "In the mean of a month the house asks for more than the heater can give: %.0f kWh a year are left out of its cost.", u)
	}
	if p.Site.WeatherFile != "" {
		r.warning("weather_file_not_read", "The months serve here; houseyear reads the hours of the weather file.")
	}
	if p.Pads != nil && r.Summer.Pads == nil {
		r.warning("pads_too_damp", "The wet pads count for nothing at the summer noon: with what the crop evaporates the air would be more than full of water.")
	}
	if p.House.Shape == "round arch" || p.House.Shape == "pointed arch" {
		r.warning("arch_in_strips", "The arch counts as flat strips, of its exact area.")
	}
	if a := p.Assumptions; a.RoofU != nil || a.SideWallsU != nil || a.EndWallsU != nil || a.EdgeLoss != nil || a.CoverArea != nil || a.AirHeatCapacity != nil ||
		a.SkyAsColdAsAir || a.DryCover || a.NoGroundLoss || a.NoFrame {
		r.warning("assumptions", "The plan sets aside parts of the calculation, as a published example may ask: do not build by it.")
	}
}
