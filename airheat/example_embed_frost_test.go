package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/psychro"
)

// How long a house stays free of frost once its heater stops. The house is
// invented: a gable of 6 by 15 m under double film, 12 °C inside, -5 °C outside
// on a clear night. What stores heat comes from the house.
func Example_embedFrost() {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge = 6, 15, 1.5, 3.2 // m
	shape, e1 := envelope.NewShape(form)
	film := envelope.DoubleFilm()
	house, e2 := envelope.NewHouse(envelope.HousePlan{
		Shape:   shape,
		Covers:  map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film},
		Ground:  envelope.DefaultGround(envelope.ClaySoil()),
		Climate: envelope.DefaultGroundClimate(),
		Leakage: envelope.DefaultLeakage(),
	})
	inside, e3 := psychro.FromRelativeHumidity(12, 0.8, 98000)
	outside, e4 := psychro.FromRelativeHumidity(-5, 0.85, 98000)
	night, e5 := envelope.NewHouseConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: 2})
	nodes, drive, e6 := house.Nodes(night, 0, envelope.DefaultNodeStores())
	transient, e7 := airheat.NewTransient(nodes)
	frost, e8 := transient.CoolDown(transient, drive, airheat.HeatFailure{SetPoint: 12, Level: 0, Limit: airheat.Forever})
	for _, err := range []error{e1, e2, e3, e4, e5, e6, e7, e8} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("0 °C after %.1f h; the soil is then at %.1f °C\n%s\n", frost.Time.Hours(), frost.State.Soil, airheat.FrostCaution)
	// Output:
	// 0 °C after 5.7 h; the soil is then at 8.7 °C
	// A computed time to frost assumes the stated house and weather; plants, pipes and power supplies fail earlier. Keep an alarm that works without mains power, and follow local codes and licensed practice.
}
