package figures

import (
	"errors"
	"fmt"
	"time"

	"cloche.example/examples/internal/page"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func dryingAWinterMorning() Figure {
	return Figure{
		Name: "drying-morning", Title: "Drying a winter morning", Subject: "moisture and crop", Package: "ventilation", Example: "Example_dryingAWinterMorning",
		Question: "Crop and floor give off vapour, and the house is to be held at a humidity. What does the cold cover take, how much outside air carries the rest, and what heat goes with it?",
		Sketch:   "Vapour rises from crop and floor. A part condenses on cover and walls below the dew point; the rest must leave with air that comes in cold and dry and is warmed.",
		Given: []Given{
			{"t_i", "inside", "°C", 15, 8, 28},
			{"φ_i", "humidity to be held", "fraction", 0.85, 0.5, 0.95},
			{"t_o", "outside", "°C", -2, -25, 12},
			{"E", "vapour set free", "kg/h", 7.2, 0.5, 60},
			{"η", "heat recovery", "fraction", 0.6, 0, 0.9},
			{"t_c", "inner face of the cover", "°C", 8, -10, 20},
		},
		Assumes: []string{"90 % outside, 97,300 Pa, 240 m³; 105 m² of cover and 55 m² of walls 3 K warmer, 2.5 W/(m² K) of convection at both, the air well mixed, its temperature held. The round of heat and vent warms the air by 2 K."},
		Change:  []string{"Hold 75 %: the cover takes less, more air must pass, and its heat grows by half.", "A cover of 15 °C, as a double one may be: nothing drips, and all the water must go by air."},
		Code:    "solveDryingAWinterMorning",
		Solve:   solveDryingAWinterMorning,
	}
}

func solveDryingAWinterMorning(v []float64) (r Result, err error) {
	const pressure = 97300.0 // Pa
	switch {
	case v[2] >= v[0]:
		return r, errors.New("outside: no colder than inside")
	case v[5] > v[0]-1:
		return r, errors.New("inner face of the cover: it must be colder than the air inside by 1 K at least")
	}
	inside, err1 := psychro.FromRelativeHumidity(v[0], v[1], pressure)
	outside, err2 := psychro.FromRelativeHumidity(v[2], 0.90, pressure)
	night, err3 := psychro.FromRelativeHumidity(v[0], 0.97, pressure)
	if err := errors.Join(err1, err2, err3); err != nil {
		return r, err
	}
	house := ventilation.DryingCase{
		Wanted: inside, Outside: outside, Release: v[3] / 3600, Recovery: v[4],
		Surfaces: []ventilation.ColdSurface{
			{Name: "cover", Temperature: v[5], Area: 105, Film: 2.5},
			{Name: "walls", Temperature: v[5] + 3, Area: 55, Film: 2.5},
		},
	}
	d, err := house.Flow()
	if err != nil {
		return r, err
	}
	course, err1 := house.Time(night, 1.5*d.DryAir, 240)
	rounds, missed := ventilation.Purge{Start: night, Outside: outside, Volume: 240, Warm: v[0] + 2, Exchange: 0.3}.RoundsFor(0.60)
	dry, err2 := ventilation.DewLimit(v[0], 0.5, pressure, house.Surfaces)
	if err := errors.Join(err1, err2); err != nil {
		return r, err
	}
	line := func(format string, values ...any) { r.Lines = append(r.Lines, fmt.Sprintf(format, values...)) }
	line("1. What condenses first: h/(cp Le^(2/3)) A (W - Ws)")
	line("   W wanted %.3f g/kg, dew point %.2f °C", 1000*inside.HumidityRatio(), inside.DewPoint())
	for _, s := range house.Surfaces {
		f, err := inside.VapourFlux(s.Temperature, s.Film)
		if err != nil {
			return r, err
		}
		line("   %s: %.2f g/(m² s), Ws %.3f g/kg: %.3f kg/h", s.Name, 1000*f.Coefficient, 1000*f.Saturation, 3600*s.Area*max(0, f.Flux))
		r.Steps = append(r.Steps, Step{Says: "What the " + s.Name + " takes, from the difference of the humidity ratios; nothing where it is warmer than the dew point.", Formula: "C = 3600 k A max(0, W - W_s)", Source: "ChiCol34", Values: numbers{"k": f.Coefficient, "A": s.Area, "W": inside.HumidityRatio(), "W_s": f.Saturation}, Value: 3600 * s.Area * max(0, f.Flux), Unit: "kg/h"})
	}
	line("2. The air that carries the rest: m = (E - C)/(W - Wo)")
	line("   E - C = %.2f - %.3f = %.3f kg/h", 3600*d.Release, 3600*d.Condensed, 3600*d.Excess)
	line("   W - Wo = %.3f - %.3f = %.3f g/kg", 1000*inside.HumidityRatio(), 1000*outside.HumidityRatio(), 1000*d.Difference)
	line("   m = %.4f kg/s, %.0f m³/h of outside air; without step 1 it would be %.4f kg/s", d.DryAir, 3600*d.Supply, d.Uncounted)
	line("3. Its heat: m (h - ho)")
	line("   h - ho = %.2f - %.2f kJ/kg", inside.Enthalpy()/1000, outside.Enthalpy()/1000)
	line("   sensible %.0f W, latent %.0f W, together %.0f W", d.Sensible, d.Latent, d.Total)
	line("4. Heat recovery, %g %% of the supply side", 100*v[4])
	line("   supply air %.1f °C, saved %.0f W, left to pay %.0f W", d.Heat.Supply, d.Heat.Saved, d.Cost)
	line("   exhaust air leaves at %.1f °C and drops %.2f kg/h, frost on the plates: %v", d.Heat.Exhaust, 3600*d.Heat.Condensate, d.Heat.Frost)
	e := d.Over(3 * time.Hour)
	line("5. Three hours: %.1f kg by the air, %.1f kg off the cover, %.1f kWh", e.Water, e.Dripped, e.Cost/3.6e6)
	line("6. From 97 %% with half as much air again: %.1f min, W would rest at %.3f g/kg", course.Time.Minutes(), 1000*course.Settled)
	if missed != nil { // the outside air is too moist for that
		line("7. Heat and vent instead: no count of rounds of %g °C leads to 60 %%", v[0]+2)
	} else {
		line("7. Heat and vent instead: %d rounds of %g °C and 0.3 air changes to 60 %%, %.1f kg, %.1f kWh", len(rounds.Rounds), v[0]+2, rounds.Removed, rounds.Heat/3.6e6)
	}
	line("8. Dry surfaces all over need air below %.0f %%", 100*dry.RelativeHumidity())
	r.Steps = append(r.Steps,
		Step{Says: "Dry air that carries out the rest.", Formula: "m = max(0, E - C)/3600/(W - W_o)", Values: numbers{"E": v[3], "C": 3600 * d.Condensed, "W": inside.HumidityRatio(), "W_o": outside.HumidityRatio()}, Value: d.DryAir, Unit: "kg/s"})
	r.Picture = dryingPicture(v, d)
	if d.DryAir == 0 { // cover and walls take it all
		return r, nil
	}
	r.Steps = append(r.Steps,
		Step{Says: "Heat that leaves with it.", Formula: "Q = 1000 m (h - h_o)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"m": d.DryAir, "h": inside.Enthalpy() / 1000, "h_o": outside.Enthalpy() / 1000}, Value: d.Total, Unit: "W"},
		Step{Says: "Heat recovery warms the air that comes in.", Formula: "t_s = t_o + η (t_i - t_o)", Values: numbers{"t_o": v[2], "η": v[4], "t_i": v[0]}, Value: d.Heat.Supply, Unit: "°C"},
		Step{Says: "And leaves to pay.", Formula: "Q_p = Q - Q_r", Values: numbers{"Q": d.Total, "Q_r": d.Heat.Saved}, Value: d.Cost, Unit: "W"})
	return r, nil
}

func dryingPicture(v []float64, d ventilation.Drying) Picture {
	p := gable(7, 1.5, 3, 0, 4.6)
	drop := page.Stroke{Color: css(page.PenOf(2).Color), Width: 2, Arrow: true}
	p.Line(drop, 2.6, 0.2, 2.6, 1.2)
	p.Text(page.Start, 2.8, 0.35, fmt.Sprintf("vapour %.1f kg/h", v[3]))
	p.Line(drop, 2.4, 1.6, 1.4, 2.1)
	p.Text(page.End, 1.0, 2.5, fmt.Sprintf("drips %.1f kg/h", 3600*d.Condensed))
	p.Line(cool, -1.4, 0.8, 0.6, 0.8)
	p.Text(page.End, -1.5, 0.65, fmt.Sprintf("%.0f m³/h", 3600*d.Supply))
	p.Line(warm, 6.4, 1.9, 7.9, 2.5)
	p.Text(page.Start, 8, 2.4, fmt.Sprintf("water %.1f kg/h", 3600*d.Excess))
	p.Text(page.Start, 8, 1.9, fmt.Sprintf("heat %.1f kW", d.Total/1000))
	p.Text(page.Middle, 4.6, 1.2, fmt.Sprintf("%.3g °C, %.0f %%", v[0], 100*v[1]))
	return drawn(p, "Water on a winter morning", "A house in section: vapour rises from the floor, a part drips off the cover, the rest leaves with the air that comes in cold and dry.", "The cover dries the house for nothing, as long as the drip does no harm.")
}
