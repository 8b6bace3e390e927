package ventilation_test

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// A glass house on a clear winter night, on its real covers: heated by air, by
// pipes that give half of their heat as radiation, and with a screen drawn. The
// house is invented.
func Example_realHouseAtNight() {
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
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:          shape,
		Covers:         map[envelope.FacetKind]envelope.Cover{envelope.Roof: glass, envelope.SideWall: glass, envelope.EndWall: glass},
		Screened:       map[envelope.FacetKind]envelope.Cover{envelope.Roof: screened},
		Radiant:        envelope.RadiantEnclosure,
		FrameAllowance: 0.04,
		Ground:         envelope.DefaultGround(envelope.ClaySoil()),
		Climate:        envelope.DefaultGroundClimate(),
		Leakage:        envelope.DefaultLeakage(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	climate, err := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: shape.FloorArea, Volume: shape.Volume,
		Real: ventilation.DefaultRealCover(house), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	out, err := psychro.FromRelativeHumidity(-5, 0.85, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	w := ventilation.Weather{Air: out, Wind: 3, Sky: -19, Ground: 9}
	for _, c := range []struct {
		name string
		s    ventilation.Setting
	}{
		{"air", ventilation.Setting{}},
		{"air and pipes", ventilation.Setting{Radiant: 4500}},
		{"air, lamps lit", ventilation.Setting{Lamps: ventilation.LampHeat{Light: 1500, Radiant: 300, Air: 1200}}},
		{"air, screen drawn", ventilation.Setting{Screen: true}},
	} {
		x, err := climate.HeatFor(w, c.s, 15)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-18s heater %5.1f kW  leaves %4.1f °C  humidity %2.0f %%  through the covers %4.1f kW  drips %.1f L/h\n",
			c.name, x.Heat/1000, x.CanopyTemperature, 100*x.RelativeHumidity, x.CoverLoss/1000, 3600*x.Condensed)
	}
	// Output:
	// air                heater  15.7 kW  leaves 12.1 °C  humidity 36 %  through the covers 14.1 kW  drips 1.0 L/h
	// air and pipes      heater  12.3 kW  leaves 13.9 °C  humidity 38 %  through the covers 14.8 kW  drips 1.4 L/h
	// air, lamps lit     heater  13.9 kW  leaves 12.3 °C  humidity 42 %  through the covers 14.7 kW  drips 2.1 L/h
	// air, screen drawn  heater  12.5 kW  leaves 12.8 °C  humidity 43 %  through the covers 10.6 kW  drips 0.8 L/h
}
