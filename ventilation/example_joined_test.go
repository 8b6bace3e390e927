package ventilation_test

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// A winter's day of an invented house, everything joined: sun by facets through
// its layers, lamps by the clock, heater and vents by a rule, covers of package
// envelope, soil and structure that remember. What package airheat and lighting
// know enters as figures: the heater's efficiency, and the lamps' light and heat.
// The same call runs the 8,760 hours of a year.
func Example_houseJoined() {
	form := envelope.DefaultForm()
	shape, err1 := envelope.NewShape(form)
	film := envelope.DoubleFilm()
	of := map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film}
	house, err2 := envelope.NewHouse(envelope.HousePlan{Shape: shape, Covers: of, Ground: envelope.DefaultGround(envelope.ClaySoil()),
		Climate: envelope.DefaultGroundClimate(), Leakage: envelope.DefaultLeakage()})
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
		fmt.Println(err)
		return
	}
	hours := ventilation.Hours{Pressure: 98000, Settings: make([]ventilation.Setting, 24), Rule: ventilation.DefaultDayNight(40e3),
		Soil: ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 10, Start: 13}, Structure: ventilation.DefaultStructureStore()}
	for h := range 24 {
		noon := float64(h) + 0.5 - 12
		hours.Temperature = append(hours.Temperature, -2+4*math.Cos((noon-2)*math.Pi/12))
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.85)
		hours.Sun = append(hours.Sun, max(0, 350*math.Cos(noon*math.Pi/9)))
		hours.Wind, hours.Sky = append(hours.Wind, 2), append(hours.Sky, hours.Temperature[h]-18)
		if h >= 4 && h < 8 { // 3 kW of lamps, half of it light
			hours.Settings[h].Lamps = ventilation.LampHeat{Light: 1500, Air: 1500}
		}
	}
	var gain envelope.SolarGain
	hours.Gain = func(h int) (*envelope.SolarGain, error) {
		half := hours.Sun[h] / 2 // of it beam, the rest from the sky
		up := 25 * math.Cos((float64(h)+0.5-12)*math.Pi/9)
		s := envelope.Sunlight{DiffuseHorizontal: half, Albedo: 0.2, Elevation: up, Azimuth: 15*float64(h) + 7.5}
		if up > 1 {
			s.BeamNormal = half / math.Sin(up*math.Pi/180)
		}
		return &gain, glazing.GainTo(&gain, s)
	}
	day, err := climate.YearTo(nil, hours)
	if err != nil {
		fmt.Println(err)
		return
	}
	heat, water := 0.0, 0.0
	for h := range 24 {
		heat, water = heat+day.Heat[h]*time.Hour.Seconds(), water+day.Condensed[h]*time.Hour.Seconds()
	}
	fmt.Printf("night %.1f °C, noon %.1f °C, heat %.0f kWh, fuel at 0.88 %.0f kWh, condensed %.0f L\n", day.Temperature[2], day.Temperature[12], heat/3.6e6, heat/0.88/3.6e6, water)
	// Output:
	// night 13.0 °C, noon 24.0 °C, heat 144 kWh, fuel at 0.88 164 kWh, condensed 77 L
}
