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
				f.Name, f.Area, f.U, f.UOvercast, f.InnerTemperature, 100*f.DripHumidity, 3600*f.Condensate)
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
	//   roof, north        54.3 m²  U 4.28  without sky 2.94 W/(m² K)  face  2.4 °C  drips above 37 %  3.2 L/h
	//   roof, south        54.3 m²  U 4.28  without sky 2.94 W/(m² K)  face  2.4 °C  drips above 37 %  3.2 L/h
	//   side wall, north   19.2 m²  U 3.32  without sky 2.55 W/(m² K)  face  1.4 °C  drips above 35 %  0.9 L/h
	//   side wall, south   19.2 m²  U 3.32  without sky 2.55 W/(m² K)  face  1.4 °C  drips above 35 %  0.9 L/h
	//   end wall, east     14.1 m²  U 3.17  without sky 2.43 W/(m² K)  face  0.7 °C  drips above 33 %  0.6 L/h
	//   end wall, west     14.1 m²  U 3.17  without sky 2.43 W/(m² K)  face  0.7 °C  drips above 33 %  0.6 L/h
	//     roof, north                6739 W  25.6 %
	//     roof, south                6739 W  25.6 %
	//     side wall, north           1853 W   7.0 %
	//     side wall, south           1853 W   7.0 %
	//     end wall, east             1294 W   4.9 %
	//     end wall, west             1294 W   4.9 %
	//     frame                       791 W   3.0 %
	//     ground and buried walls    1349 W   5.1 %
	//     leakage, sensible          2695 W  10.2 %
	//     leakage, latent            1723 W   6.5 %
	//   total 26328 W, 908 W/K, 278 W/m² of floor; sky-driven 2615 W, latent 8319 W
	// screen drawn: true
	//   roof, north        54.3 m²  U 2.36  without sky 1.80 W/(m² K)  face  8.6 °C  drips above 60 %  1.0 L/h
	//   roof, south        54.3 m²  U 2.36  without sky 1.80 W/(m² K)  face  8.6 °C  drips above 60 %  1.0 L/h
	//   side wall, north   19.2 m²  U 3.46  without sky 2.73 W/(m² K)  face  2.1 °C  drips above 37 %  0.8 L/h
	//   side wall, south   19.2 m²  U 3.46  without sky 2.73 W/(m² K)  face  2.1 °C  drips above 37 %  0.8 L/h
	//   end wall, east     14.1 m²  U 3.34  without sky 2.63 W/(m² K)  face  1.5 °C  drips above 35 %  0.6 L/h
	//   end wall, west     14.1 m²  U 3.34  without sky 2.63 W/(m² K)  face  1.5 °C  drips above 35 %  0.6 L/h
	//     roof, north                3721 W  18.3 %
	//     roof, south                3721 W  18.3 %
	//     side wall, north           1930 W   9.5 %
	//     side wall, south           1930 W   9.5 %
	//     end wall, east             1363 W   6.7 %
	//     end wall, west             1363 W   6.7 %
	//     frame                       561 W   2.8 %
	//     ground and buried walls    1349 W   6.6 %
	//     leakage, sensible          2695 W  13.2 %
	//     leakage, latent            1723 W   8.5 %
	//   total 20355 W, 702 W/K, 215 W/m² of floor; sky-driven 1907 W, latent 5032 W
}
