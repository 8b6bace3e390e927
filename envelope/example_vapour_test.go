package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The humidity that a house settles to by itself on a winter night, from the
// vapour that its crop and soil set free, and what that makes of its loss. The
// house is invented.
func ExampleHouse_SolveVapour() {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge = 6.4, 14.8, 1.3, 3.1
	shape, err := envelope.NewShape(form)
	if err != nil {
		fmt.Println(err)
		return
	}
	glass := envelope.SingleGlass()
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:   shape,
		Covers:  map[envelope.FacetKind]envelope.Cover{envelope.Roof: glass, envelope.SideWall: glass, envelope.EndWall: glass},
		Ground:  envelope.DefaultGround(envelope.ClaySoil()),
		Climate: envelope.DefaultGroundClimate(),
		Leakage: envelope.DefaultLeakage(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	k := envelope.DefaultHouseConditions()
	k.Outside, k.SkyDrop, k.Wind = -14, 18, 3.5
	var b envelope.VapourBalance
	for _, grams := range []float64{5, 20, 60, 200} {
		v := envelope.VapourSources{Released: grams / 3.6e6 * shape.FloorArea}
		if err := house.SolveVapourTo(&b, &k, v); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f g/(m² h): humidity %2.0f %%, on the covers %4.1f kg/h (frost on %d of %d facets), by the air %4.1f kg/h, load %.1f kW\n",
			grams, 100*b.Humidity, 3600*b.Condensate, b.Loss.Frosting, len(b.Loss.Facets), 3600*b.Carried, b.Total/1000)
	}
	k.InsideHumidity = 0.8
	l, err := house.Loss(k)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("80 %% inside takes %.1f kg/h of evaporation and %.1f kW\n", 3600*l.Evaporation, l.Total/1000)
	// Output:
	// 5 g/(m² h): humidity 19 %, on the covers  0.2 kg/h (frost on 6 of 6 facets), by the air  0.3 kg/h, load 29.2 kW
	//  20 g/(m² h): humidity 24 %, on the covers  1.5 kg/h (frost on 6 of 6 facets), by the air  0.4 kg/h, load 29.9 kW
	//  60 g/(m² h): humidity 37 %, on the covers  4.9 kg/h (frost on 6 of 6 facets), by the air  0.7 kg/h, load 31.8 kW
	// 200 g/(m² h): humidity 84 %, on the covers 16.9 kg/h (frost on 6 of 6 facets), by the air  2.0 kg/h, load 38.3 kW
	// 80 % inside takes 17.8 kg/h of evaporation and 37.7 kW
}
