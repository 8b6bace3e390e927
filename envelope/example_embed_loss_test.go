package envelope_test

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

// The heat that a round arch of 6 by 20 m under a double film loses on a clear
// night of -10 °C, and which of its facets drip. The house is invented.
func Example_archLoss() {
	form := envelope.DefaultForm()
	form.Section, form.Span, form.Length, form.Eave, form.Ridge, form.ArchStrips = envelope.RoundArch, 6, 20, 1.2, 3.4, 2
	shape, e1 := envelope.NewShape(form)
	film := envelope.DoubleFilm()
	house, e2 := envelope.NewHouse(envelope.HousePlan{
		Shape:   shape,
		Covers:  map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film},
		Ground:  envelope.DefaultGround(envelope.ClaySoil()),
		Climate: envelope.DefaultGroundClimate(),
		Leakage: envelope.DefaultLeakage(),
	})
	inside, e3 := psychro.FromRelativeHumidity(15, 0.46, 101325)
	outside, e4 := psychro.FromRelativeHumidity(-10, 0.85, 101325)
	night, e5 := envelope.NewHouseConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: 3})
	loss, e6 := house.Loss(night)
	if err := errors.Join(e1, e2, e3, e4, e5, e6); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kW, of which the covers %.1f and the leaks %.1f; sky %.1f °C\n", loss.Total/1000, loss.Cover/1000, loss.Leakage.Total/1000, night.Outside-night.SkyDrop)
	for _, f := range loss.Facets {
		fmt.Printf("  %-21s %5.1f m²  face %4.1f °C  drips %v\n", f.Name, f.Area, f.InnerTemperature, f.Drips)
	}
	// Output:
	// 27.0 kW, of which the covers 22.1 and the leaks 3.9; sky -35.1 °C
	//   roof, west, strip 1    39.8 m²  face  1.0 °C  drips true
	//   roof, west, strip 2    39.8 m²  face  0.4 °C  drips true
	//   roof, east, strip 1    39.8 m²  face  1.0 °C  drips true
	//   roof, east, strip 2    39.8 m²  face  0.4 °C  drips true
	//   side wall, west        24.0 m²  face  0.7 °C  drips true
	//   side wall, east        24.0 m²  face  0.7 °C  drips true
	//   end wall, north        16.9 m²  face -0.3 °C  drips false
	//   end wall, south        16.9 m²  face -0.3 °C  drips false
}
