package ventilation_test

import (
	"fmt"
	"math"

	"cloche.example/ventilation"
)

// A spring day of an invented house hour by hour, its heater and vents under a
// rule, the soil as the store of heat: the same call runs the 8,760 hours of a
// year.
func Example_hoursUnderARule() {
	vents, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.7, Area: 3.8, Discharge: 0.62},
		{Name: "ridge", Height: 2.9, Area: 2.8, Discharge: 0.60},
	}, []ventilation.Leak{{Height: 1.5, Flow: 0.02, Exponent: 0.65}}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	house, err := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: 95, Volume: 275, Cover: ventilation.DefaultSimpleCover(186), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2.5), Air: vents,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	hours := ventilation.Hours{
		Pressure: 97300, Settings: []ventilation.Setting{{}},
		Rule: ventilation.Targets{Warm: 14, Vent: 24, Heater: 25000, Humidity: 1, Most: 1},
		Soil: ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 10, Start: 12},
	}
	for h := range 24 {
		wave := -math.Cos(2 * math.Pi * (float64(h) - 1.5) / 24)
		hours.Temperature = append(hours.Temperature, 9+6*wave)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.70-0.2*wave)
		hours.Sun = append(hours.Sun, max(0, 700*wave-50))
		hours.Wind = append(hours.Wind, 1.5)
		hours.Sky = append(hours.Sky, -4+6*wave)
	}
	day, err := house.YearTo(nil, hours)
	if err != nil {
		fmt.Println(err)
		return
	}
	heat := 0.0
	for _, w := range day.Heat {
		heat += w * 3600
	}
	fmt.Println("hour  inside °C  heat kW  vents %  soil °C")
	for h := 1; h < 24; h += 6 {
		fmt.Printf("%4d  %9.1f  %7.1f  %7.0f  %7.1f\n", h, day.Temperature[h], day.Heat[h]/1000, 100*day.Opening[h], day.SoilTemperature[h])
	}
	fmt.Printf("heat of the day %.0f kWh, hours short of the rule %d\n", heat/3.6e6, day.Short)
	// Output:
	// hour  inside °C  heat kW  vents %  soil °C
	//    1       14.0     11.4        0     12.0
	//    7       14.0      7.1        0     11.8
	//   13       24.0      0.0       19     13.2
	//   19       14.0      4.3        0     14.6
	// heat of the day 123 kWh, hours short of the rule 0
}
