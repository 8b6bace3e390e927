package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// A whole film house, dug in by 0.7 m, on a clear winter night, and with a
// screen drawn under its roof. The house is invented.
func Example_filmHouseAtNight() {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge, form.Depth, form.Azimuth = 6.4, 14.8, 1.3, 3.1, 0.7, 90
	shape, err := envelope.NewShape(form)
	if err != nil {
		fmt.Println(err)
		return
	}
	film := envelope.DoubleInfraredFilm()
	screened, err := envelope.WithScreen(film, envelope.AluminisedScreen())
	if err != nil {
		fmt.Println(err)
		return
	}
	kinds := map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film}
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:          shape,
		Covers:         kinds,
		Screened:       map[envelope.FacetKind]envelope.Cover{envelope.Roof: screened},
		FrameAllowance: 0.04,
		Ground:         envelope.DefaultGround(envelope.ClaySoil()),
		Climate:        envelope.DefaultGroundClimate(),
		Leakage:        envelope.DefaultLeakage(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	k := envelope.DefaultHouseConditions()
	k.Outside, k.SkyDrop, k.Wind = -14, 18, 3.5
	fmt.Printf("%.1f m² of cover over %.1f m² of floor, %.0f m³; 15 °C and 80 %% inside, -14 °C outside, sky -32 °C\n",
		shape.CoverArea, shape.FloorArea, shape.Volume)
	for _, drawn := range []bool{false, true} {
		k.ScreenDrawn = drawn
		r, err := house.Loss(k)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("screen drawn: %v\n", drawn)
		for _, f := range r.Facets {
			fmt.Printf("  %-17s %5.1f m²  U %.2f  without sky %.2f W/(m² K)  face %4.1f °C  drips above %2.0f %%  %.1f L/h\n",
				f.Name, f.Area, f.U, f.UAir, f.InnerTemperature, 100*f.DripHumidity, f.Condensate)
		}
		for _, x := range r.Terms() {
			if x.Loss != 0 {
				fmt.Printf("    %-24s %6.0f W  %4.1f %%\n", x.Name, x.Loss, 100*x.Share)
			}
		}
		fmt.Printf("  total %.0f W, %.0f W/K, %.0f W/m² of floor; sky-driven %.0f W, latent %.0f W\n",
			r.Total, r.Coefficient, r.PerFloor, r.CoverSky, r.Latent)
	}
	// Output:
	// 175.3 m² of cover over 94.7 m² of floor, 275 m³; 15 °C and 80 % inside, -14 °C outside, sky -32 °C
	// screen drawn: false
	//   roof, north        54.3 m²  U 4.54  without sky 3.28 W/(m² K)  face  3.4 °C  drips above 41 %  2.6 L/h
	//   roof, south        54.3 m²  U 4.54  without sky 3.28 W/(m² K)  face  3.4 °C  drips above 41 %  2.6 L/h
	//   side wall, north   19.2 m²  U 3.89  without sky 3.12 W/(m² K)  face  3.0 °C  drips above 40 %  0.7 L/h
	//   side wall, south   19.2 m²  U 3.89  without sky 3.12 W/(m² K)  face  3.0 °C  drips above 40 %  0.7 L/h
	//   end wall, east     14.1 m²  U 3.80  without sky 3.06 W/(m² K)  face  2.6 °C  drips above 39 %  0.5 L/h
	//   end wall, west     14.1 m²  U 3.80  without sky 3.06 W/(m² K)  face  2.6 °C  drips above 39 %  0.5 L/h
	//     roof, north                7151 W  25.2 %
	//     roof, south                7151 W  25.2 %
	//     side wall, north           2170 W   7.6 %
	//     side wall, south           2170 W   7.6 %
	//     end wall, east             1551 W   5.5 %
	//     end wall, west             1551 W   5.5 %
	//     frame                       870 W   3.1 %
	//     ground and buried walls    1349 W   4.7 %
	//     leakage, sensible          2695 W   9.5 %
	//     leakage, latent            1767 W   6.2 %
	//   total 28425 W, 980 W/K, 300 W/m² of floor; sky-driven 3231 W, latent 6945 W
	// screen drawn: true
	//   roof, north        54.3 m²  U 2.38  without sky 1.82 W/(m² K)  face  8.7 °C  drips above 58 %  0.8 L/h
	//   roof, south        54.3 m²  U 2.38  without sky 1.82 W/(m² K)  face  8.7 °C  drips above 58 %  0.8 L/h
	//   side wall, north   19.2 m²  U 3.89  without sky 3.12 W/(m² K)  face  3.0 °C  drips above 40 %  0.7 L/h
	//   side wall, south   19.2 m²  U 3.89  without sky 3.12 W/(m² K)  face  3.0 °C  drips above 40 %  0.7 L/h
	//   end wall, east     14.1 m²  U 3.80  without sky 3.06 W/(m² K)  face  2.6 °C  drips above 39 %  0.5 L/h
	//   end wall, west     14.1 m²  U 3.80  without sky 3.06 W/(m² K)  face  2.6 °C  drips above 39 %  0.5 L/h
	//     roof, north                3757 W  17.6 %
	//     roof, south                3757 W  17.6 %
	//     side wall, north           2170 W  10.2 %
	//     side wall, south           2170 W  10.2 %
	//     end wall, east             1551 W   7.3 %
	//     end wall, west             1551 W   7.3 %
	//     frame                       598 W   2.8 %
	//     ground and buried walls    1349 W   6.3 %
	//     leakage, sensible          2695 W  12.6 %
	//     leakage, latent            1767 W   8.3 %
	//   total 21366 W, 737 W/K, 226 W/m² of floor; sky-driven 2282 W, latent 4474 W
}
