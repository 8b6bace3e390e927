package figures

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

func houseJoined() Figure {
	return Figure{
		Name: "winter-day", Title: "A winter's day with everything joined", Subject: "season", Package: "ventilation", Example: "Example_houseJoined",
		Question: "Sun on each face, lamps before sunrise, heater and vents by a rule, covers that drip, soil and benches that remember: what does one winter's day of a film house take?",
		Sketch:   "Nothing is given as a rule of thumb: each face takes its own sun and has its own temperature, and the hours follow one another.",
		Given: []Given{
			{"t_m", "outside, mean of the day", "°C", -2, -15, 10},
			{"I", "sun at noon", "W/m²", 350, 20, 600},
			{"Q_l", "lamps from 4 to 8 h, half of it light", "kW", 3, 0, 12},
			{"η", "efficiency of the heater", "fraction", 0.88, 0.4, 1},
		},
		Assumes: []string{"An invented house under a double film, a ridge vent of 4 m², a crop of LAI 2, clay soil; the sun 25 degree high at noon, half of it beam, 9 hours long; 85 % outside, 2 m/s, a sky 18 K below the air, 98,000 Pa. A flame needs air and an alarm for carbon monoxide: local codes and licensed practice decide."},
		Change:  []string{"No lamps: the heater gives two thirds of their heat instead.", "A dull day, 20 W/m²: the heater gives half as much again, less than the sun had brought, for the vents let a part of that out."},
		Code:    "solveHouseJoined",
		Solve:   solveHouseJoined,
	}
}

func solveHouseJoined(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	plan, err1 := covered(form, envelope.DoubleFilm())
	shape := plan.Shape
	house, err2 := envelope.NewHouse(plan)
	sheet := envelope.Sheet{Index: 1.515, Thickness: 180e-6, Extinction: envelope.ExtinctionOf(1.515, 180e-6, 0.88)}
	layers, err3 := envelope.NewLightLayers(sheet, sheet)
	lights := make([]envelope.FacetLight, len(shape.Facets))
	for i := range lights {
		lights[i] = envelope.FacetLight{Sheets: layers, Factors: envelope.DefaultLightFactors()}
	}
	glazing, err4 := envelope.NewGlazing(shape, lights, 0.8)
	vents, err5 := ventilation.NewNetwork([]ventilation.Opening{{Name: "ridge", Height: form.Ridge, Area: 4, Discharge: 0.6}}, nil, nil)
	climate, err6 := ventilation.NewClimate(ventilation.ClimateHouse{FloorArea: shape.FloorArea, Volume: shape.Volume,
		Real: ventilation.DefaultRealCover(house), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2), Air: vents})
	if err := errors.Join(err1, err2, err3, err4, err5, err6); err != nil {
		return r, err
	}
	hours := ventilation.Hours{Pressure: 98000, Settings: make([]ventilation.Setting, 24), Rule: ventilation.DefaultDayNight(40e3),
		Soil: ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 10, Start: 13}, Structure: ventilation.DefaultStructureStore()}
	for h := range 24 {
		noon := float64(h) + 0.5 - 12
		hours.Temperature = append(hours.Temperature, v[0]+4*math.Cos((noon-2)*math.Pi/12))
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.85)
		hours.Sun = append(hours.Sun, max(0, v[1]*math.Cos(noon*math.Pi/9)))
		hours.Wind, hours.Sky = append(hours.Wind, 2), append(hours.Sky, hours.Temperature[h]-18)
		if h >= 4 && h < 8 {
			hours.Settings[h].Lamps = ventilation.LampHeat{Light: 500 * v[2], Air: 500 * v[2]}
		}
	}
	var gain envelope.SolarGain
	through := make([]float64, 24) // W, sun that comes in
	hours.Gain = func(h int) (*envelope.SolarGain, error) {
		half := hours.Sun[h] / 2 // of it beam, the rest from the sky
		up := 25 * math.Cos((float64(h)+0.5-12)*math.Pi/9)
		s := envelope.Sunlight{DiffuseHorizontal: half, Albedo: 0.2, Elevation: up, Azimuth: 15*float64(h) + 7.5}
		if up > 1 {
			s.BeamNormal = half / math.Sin(up*math.Pi/180)
		}
		err := glazing.GainTo(&gain, s)
		through[h] = gain.Transmitted
		return &gain, err
	}
	day, err := climate.YearTo(nil, hours)
	if err != nil {
		return r, err
	}
	heat, sun, water := heatOf(day.Heat), heatOf(through), 0.0
	for _, m := range day.Condensed {
		water += 3600 * m
	}
	r.Lines = []string{fmt.Sprintf("night %.1f °C, noon %.1f °C, heat %.0f kWh, fuel at %.2f %.0f kWh, condensed %.0f L", day.Temperature[2], day.Temperature[12], heat, v[3], heat/v[3], water)}
	r.Steps = []Step{
		{Says: "The sun's height in the hour from noon.", Formula: "h = 25 cos(20 (12 + 0.5 - 12))", Value: 25 * math.Cos(0.5*math.Pi/9), Unit: "degree"},
		{Says: "Its beam, on a plane that faces it.", Formula: "B = S/2/sin(h)", Values: numbers{"S": hours.Sun[12], "h": 25 * math.Cos(0.5*math.Pi/9)}, Value: hours.Sun[12] / 2 / math.Sin(25*math.Cos(0.5*math.Pi/9)*math.Pi/180), Unit: "W/m²"},
		{Says: "Through all faces in that hour, each by its angle to the sun.", Symbol: "Q_s", Value: through[12] / 1000, Unit: "kW"},
		{Says: "Over what falls on the floor's area in the open: more than 1 where walls catch a low sun.", Formula: "τ = 1000 Q_s/(S A)", Values: numbers{"Q_s": through[12] / 1000, "S": hours.Sun[12], "A": shape.FloorArea}, Value: through[12] / (hours.Sun[12] * shape.FloorArea)},
		{Says: "Sun of the day.", Symbol: "E_s", Value: sun, Unit: "kWh"},
		{Says: "Lamps.", Formula: "E_l = 4 Q_l", Values: numbers{"Q_l": v[2]}, Value: 4 * v[2], Unit: "kWh"},
		{Says: "Heater, from its hourly mean.", Formula: "E = 24 Q_m", Values: numbers{"Q_m": heat / 24}, Value: heat, Unit: "kWh"},
		{Says: "Fuel.", Formula: "F = E/η", Values: numbers{"E": heat, "η": v[3]}, Value: heat / v[3], Unit: "kWh"},
	}
	r.Picture, err = charts("A winter's day", "Two charts over the hours: inside, outside, soil and benches; and the heater beside the sun that comes in.", "A few hours of sun do the work of the heater; the benches keep some of it into the evening.",
		dayChart("°C", false, hourly("inside", day.Temperature, 1), hourly("outside", hours.Temperature, 1), hourly("soil", day.SoilTemperature, 1), hourly("benches", day.StructureTemperature, 1)),
		dayChart("kW", true, hourly("heater", day.Heat, 1e-3), hourly("sun that comes in", through, 1e-3)))
	return r, err
}
