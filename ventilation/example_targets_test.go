package ventilation_test

import (
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// windless draws the screen on windless nights alone, and keeps the rest of a
// rule: a TargetRule of one's own.
type windless struct{ ventilation.DayNight }

func (w windless) At(m ventilation.HourMoment) ventilation.Targets {
	t := w.DayNight.At(m)
	t.Screen = t.Screen && m.Weather.Wind < 1
	return t
}

// A cold humid day of an invented glass house on its real covers, kept at other
// temperatures by day than by night, its humidity held by vents and heat, with
// benches that store heat: with a screen by sun and clock, and under a rule of
// one's own.
func Example_dayAndNight() {
	shape, err := envelope.NewShape(envelope.DefaultForm())
	if err != nil {
		fmt.Println(err)
		return
	}
	glass := envelope.SingleGlass()
	screened, err := envelope.WithScreen(glass, envelope.AluminisedScreen())
	if err != nil {
		fmt.Println(err)
		return
	}
	built, err := envelope.NewHouse(envelope.HousePlan{
		Shape:    shape,
		Covers:   map[envelope.FacetKind]envelope.Cover{envelope.Roof: glass, envelope.SideWall: glass, envelope.EndWall: glass},
		Screened: map[envelope.FacetKind]envelope.Cover{envelope.Roof: screened},
		Radiant:  envelope.RadiantEnclosure,
		Ground:   envelope.DefaultGround(envelope.ClaySoil()), Climate: envelope.DefaultGroundClimate(), Leakage: envelope.DefaultLeakage(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	vents, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.7, Area: 2.5, Discharge: 0.62},
		{Name: "ridge", Height: 2.9, Area: 2.0, Discharge: 0.60},
	}, nil, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	house, err := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: shape.FloorArea, Volume: shape.Volume, Real: ventilation.DefaultRealCover(built),
		Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2.5), Air: vents,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	rule := ventilation.DefaultDayNight(30e3)
	rule.Day.Humidity, rule.Night.Humidity = 0.8, 0.8
	rule.Morning, rule.Evening = 8*time.Hour, 18*time.Hour
	hours := ventilation.Hours{
		Pressure: 100000, Settings: []ventilation.Setting{{}},
		Soil:      ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 10, Start: 14},
		Structure: ventilation.DefaultStructureStore(),
	}
	for h := range 24 {
		wave := -math.Cos(2 * math.Pi * float64(h) / 24)
		hours.Temperature = append(hours.Temperature, 6+4*wave)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.88-0.1*wave)
		hours.Sun = append(hours.Sun, max(0, 450*wave))
		hours.Wind = append(hours.Wind, 0.5+float64(h%3))
		hours.Sky = append(hours.Sky, -4+4*wave)
	}
	for _, kept := range []struct {
		name string
		rule ventilation.TargetRule
	}{{"screen by sun and clock", rule}, {"screen on windless nights", windless{rule}}} {
		hours.Rule = kept.rule
		day, err := house.YearTo(nil, hours)
		if err != nil {
			fmt.Println(err)
			return
		}
		heat := 0.0
		for _, w := range day.Heat {
			heat += w * 3600
		}
		fmt.Printf("%s: %.0f kWh\n", kept.name, heat/3.6e6)
		for h := 0; h < 24; h += 6 {
			fmt.Printf("  %2d h  %4.1f °C  %2.0f %%  heat %4.1f kW  vents %4.1f %%  benches %4.1f °C\n",
				h, day.Temperature[h], 100*day.RelativeHumidity[h], day.Heat[h]/1000, 100*day.Opening[h], day.StructureTemperature[h])
		}
	}
	// Output:
	// screen by sun and clock: 87 kWh
	//    0 h  13.0 °C  71 %  heat  5.4 kW  vents  0.0 %  benches 14.3 °C
	//    6 h  13.0 °C  79 %  heat  4.2 kW  vents  0.0 %  benches 13.0 °C
	//   12 h  20.9 °C  90 %  heat  0.0 kW  vents 10.0 %  benches 23.5 °C
	//   18 h  13.0 °C  79 %  heat  2.4 kW  vents  0.0 %  benches 16.5 °C
	// screen on windless nights: 98 kWh
	//    0 h  13.0 °C  71 %  heat  5.4 kW  vents  0.0 %  benches 14.3 °C
	//    6 h  13.0 °C  79 %  heat  4.2 kW  vents  0.0 %  benches 13.0 °C
	//   12 h  20.9 °C  90 %  heat  0.0 kW  vents 10.0 %  benches 23.5 °C
	//   18 h  13.0 °C  79 %  heat  2.4 kW  vents  0.0 %  benches 16.5 °C
}
