package ventilation_test

import (
	"fmt"
	"math"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Summer noon in an invented small house with a crop and open vents:
// temperature, humidity, canopy and flow solved together, every term shown. A
// vent-area rule would stop at the flow.
func Example_summerNoon() {
	air, err := psychro.FromRelativeHumidity(27, 0.50, 97300) // °C, fraction, Pa
	if err != nil {
		fmt.Println(err)
		return
	}
	vents, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "south side", Height: 0.7, Area: 1.9, Discharge: 0.62, PressureCoefficient: 0.25},
		{Name: "north side", Height: 0.7, Area: 1.9, Discharge: 0.62, PressureCoefficient: -0.25},
		{Name: "ridge", Height: 2.9, Area: 2.8, Discharge: 0.60, PressureCoefficient: -0.40},
	}, nil, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	house := ventilation.ClimateHouse{
		FloorArea: 94.7, Volume: 275,
		Cover: ventilation.DefaultSimpleCover(186),
		Floor: ventilation.DefaultFloorSurface(),
		Crop:  ventilation.DefaultCanopy(2.5),
		Air:   vents,
	}
	c, err := ventilation.NewClimate(house)
	if err != nil {
		fmt.Println(err)
		return
	}
	weather := ventilation.Weather{Air: air, Sun: 820, Wind: 1.5, Sky: 11, Ground: 17}
	s, err := c.Solve(weather, ventilation.Setting{Opening: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	row := func(label string, v float64, unit string) {
		digits := 2
		if unit == "W" || unit == "Pa" || unit == "s/m" {
			digits = 0
		}
		fmt.Printf("%-36s %8.*f %s\n", label, digits, v, unit)
	}
	fmt.Println("Sun")
	row("tau I Af = 0.65 x 820 x 94.7", s.SunCanopy+s.SunFloor+s.SunReflected, "W")
	row("leaves, (1-0.2)(1-exp(-0.48 LAI))", s.SunCanopy, "W")
	row("floor, 0.8 exp(-0.48 LAI)", s.SunFloor, "W")
	row("goes out again", s.SunReflected, "W")
	fmt.Println("State")
	row("inside air", s.Temperature, "°C")
	row("relative humidity", s.RelativeHumidity, "fraction")
	row("deficit", s.Deficit, "Pa")
	row("leaves", s.CanopyTemperature, "°C")
	row("floor", s.FloorTemperature, "°C")
	row("inner surface of the cover", s.CoverTemperature, "°C")
	fmt.Println("Air")
	row("flow of dry air", s.DryAir, "kg/s")
	row("air changes", s.AirChanges, "1/h")
	row("neutral level", s.Neutral, "m")
	fmt.Println("Leaves: sun = sensible + latent + long-wave")
	row("boundary layer, on 2 LAI", s.Boundary, "s/m")
	row("stomata, on 2 LAI", s.Stomata, "s/m")
	row("sensible", s.CanopyHeat, "W")
	row("latent", s.CanopyLatent, "W")
	row("long-wave to cover and floor", s.CanopyUp+s.CanopyDown, "W")
	fmt.Println("Where the heat goes")
	row("air, sensible: m c (T - To)", s.AirSensible, "W")
	row("air, latent: m (W - Wo) hg(T)", s.AirLatent, "W")
	row("through the cover", s.CoverLoss, "W")
	row("into the ground", s.Ground, "W")
	row("less: liquid water in, from 0 °C", -s.Liquid, "W")
	fmt.Println("Water")
	row("transpired", 3600*s.Transpired/house.FloorArea, "kg/(m² h)")
	row("from the soil", 3600*s.FloorEvaporated/house.FloorArea, "kg/(m² h)")
	fmt.Println("heat in", math.Round(s.HeatIn), "W, heat out", math.Round(s.HeatOut), "W; closed to 1e-9:",
		math.Abs(s.HeatResidual) < 1e-9*s.HeatIn && math.Abs(s.WaterResidual) < 1e-9*s.WaterIn)
	// Output:
	// Sun
	// tau I Af = 0.65 x 820 x 94.7            50475 W
	// leaves, (1-0.2)(1-exp(-0.48 LAI))       28218 W
	// floor, 0.8 exp(-0.48 LAI)               12162 W
	// goes out again                          10095 W
	// State
	// inside air                              30.96 °C
	// relative humidity                        0.55 fraction
	// deficit                                  2019 Pa
	// leaves                                  34.58 °C
	// floor                                   37.81 °C
	// inner surface of the cover              27.93 °C
	// Air
	// flow of dry air                          2.05 kg/s
	// air changes                             24.18 1/h
	// neutral level                            2.77 m
	// Leaves: sun = sensible + latent + long-wave
	// boundary layer, on 2 LAI                  225 s/m
	// stomata, on 2 LAI                        1121 s/m
	// sensible                                 8569 W
	// latent                                  18390 W
	// long-wave to cover and floor             1259 W
	// Where the heat goes
	// air, sensible: m c (T - To)              8333 W
	// air, latent: m (W - Wo) hg(T)           23662 W
	// through the cover                        5805 W
	// into the ground                          3941 W
	// less: liquid water in, from 0 °C        -1361 W
	// Water
	// transpired                               0.29 kg/(m² h)
	// from the soil                            0.06 kg/(m² h)
	// heat in 41741 W, heat out 41741 W; closed to 1e-9: true
}
