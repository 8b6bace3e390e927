package figures

import (
	"errors"
	"fmt"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

func seasonMethods() Figure {
	return Figure{
		Name: "season", Title: "A season by four methods", Subject: "season", Package: "airheat", Example: "Example_seasonMethods",
		Question: "What does a year of heating take, by hours, by bins of temperature, by degree-hours and by monthly means, and why do they part?",
		Sketch:   "One invented year, one house, one pellet heater, four ways of adding up.",
		Given: []Given{
			{"t_d", "set-point by day", "°C", 16, 8, 22},
			{"t_n", "set-point by night", "°C", 12, 4, 20},
			{"H", "loss of the covers and the ground", "W/K", 400, 50, 2000},
			{"A", "floor whose sun becomes heat", "m²", 40, 0, 200},
			{"t_y", "mean of the year outside", "°C", 9, 2, 15},
		},
		Assumes: []string{"Leaks of 0.5 air changes of 240 m³; a year of two sine waves; a heater of 20 kW at 88 % that stands ready for 5000 hours; half of the sun on the plants becomes vapour; a price of 0.38 for a kilogram."},
		Change:  []string{"No sun: the methods draw together, since they part by what they do with the sun of another hour."},
		Code:    "solveSeasonMethods",
		Solve:   solveSeasonMethods,
	}
}

func solveSeasonMethods(v []float64) (r Result, err error) {
	season := airheat.HeatingSeason{
		SetPoints: airheat.SetPoints{Day: v[0], Night: v[1], DayStarts: 7, DayEnds: 19},
		Loss:      v[2] + airheat.LeakageRule(0.5, 240), // 0.33 n V
		Aperture:  v[3], Price: 0.38,
		Plants: airheat.Plants{Area: 0.625 * v[3], Evaporated: 0.5}, // half of what falls on them becomes vapour
	}
	season.Burner.Rated, season.Burner.Efficiency = 20e3, 0.88
	season.Burner.Standby, season.Burner.Ready = 0.01, 5000
	season.Burner.Fuel, _ = airheat.FindFuel("wood pellets")
	season.Outside, season.Sun = inventedYear(v[4])
	base, e1 := season.BaseTemperature()
	months, e2 := season.MonthlyMeans()
	if err := errors.Join(e1, e2); err != nil {
		return r, err
	}
	mean := (v[0] + v[1]) / 2
	hours, e1 := season.Hourly()
	bins, e2 := season.Bins(2)
	degrees, e3 := season.DegreeHours(base)
	monthly, _, e4 := airheat.MonthlyHouse{SetPoint: mean, Aperture: v[3], Plants: season.Plants, Storage: 10, Burner: season.Burner, Price: 0.38}.Solve(months)
	if err := errors.Join(e1, e2, e3, e4); err != nil {
		return r, err
	}
	var rows []bar
	for _, m := range []airheat.SeasonHeat{hours, bins, degrees, monthly} {
		r.Lines = append(r.Lines, fmt.Sprintf("%-13s %6.0f kWh, %5.0f kg of pellets, %5.0f currency", m.Method, m.Heat/3.6e6, m.FuelMass, m.Cost))
		rows = append(rows, bar{m.Method, m.Heat / 3.6e6})
	}
	byHand := airheat.DegreeDayEnergy(season.Loss, 2500, 1) / 3.6e6
	r.Lines = append(r.Lines, fmt.Sprintf("2,500 K d by hand %.0f kWh", byHand))
	for _, structure := range []float64{1e6, 3e7} {
		house, err := airheat.NewTransient(envelope.Nodes{AirCapacity: 3e5, StructureCapacity: structure, SoilCapacity: 2e7, Cover: 100, Leakage: 20, AirStructure: 600, AirSoil: 450, SoilDeep: 60})
		if err != nil {
			return r, err
		}
		s, err := house.NightSetBack(envelope.Drive{Outside: -5, Deep: 8}, season.SetPoints, 20e3)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("set-back with %.0f MJ/K of structure saves %.1f %%", structure/1e6, 100*s.Saving))
	}
	r.Steps = []Step{
		{Says: "Leaks for each kelvin, by the rule.", Formula: "H_l = 0.33 n V", Values: numbers{"n": 0.5, "V": 240}, Value: airheat.LeakageRule(0.5, 240), Unit: "W/K"},
		{Says: "The house.", Formula: "H_t = H + H_l", Values: numbers{"H": v[2], "H_l": airheat.LeakageRule(0.5, 240)}, Value: season.Loss, Unit: "W/K"},
		{Says: "Outside temperature at which the mean sun of the colder hours heats the house alone.", Symbol: "t_b", Value: base, Unit: "°C"},
		{Says: "Hours: every hour that asks for heat, none of its sun kept for the next.", Symbol: "E_h", Value: hours.Heat / 3.6e6, Unit: "kWh", Figures: 5},
		{Says: "Pellets for that, with what the heater loses while it stands ready.", Formula: "m = 3.6 (E_h/0.88 + E_s)/H_u", Values: numbers{"E_h": hours.Heat / 3.6e6, "E_s": (hours.Fuel - hours.Heat/0.88) / 3.6e6, "H_u": season.Burner.Fuel.Lower / 1e6}, Value: hours.FuelMass, Unit: "kg"},
		{Says: "By hand: degree-days times the loss times 24 hours.", Formula: "E_d = 24 H_t D/1000", Source: "degree-days with all gains left out", Values: numbers{"H_t": season.Loss, "D": 2500}, Value: byHand, Unit: "kWh", Figures: 5},
	}
	r.Picture = bars("The year's heat by four methods", "Four bars of a year's heat: by hours, bins, degree-hours and monthly means.", "%.0f kWh", "Hours keep no sun for the night; the other methods lend it from one hour to another.", rows...)
	return r, nil
}
