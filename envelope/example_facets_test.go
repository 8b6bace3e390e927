package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// A shape that no Form describes, made of its own facets: a lean-to of 3 by 8 m
// with a glazed roof and a solid north wall, for one night of hours.
func Example_ownFacets() {
	const slope, tilt = 3.354, 26.565 // of a roof that falls 1.5 m over 3 m
	shape, err := envelope.NewFacetShape([]envelope.Facet{
		{Kind: envelope.Roof, Name: "roof", Area: 8 * slope, Tilt: tilt, Azimuth: 180, Height: slope},
		{Kind: envelope.SideWall, Name: "front", Area: 8 * 1.5, Tilt: 90, Azimuth: 180, Height: 1.5},
		{Kind: envelope.BackWall, Name: "north wall", Area: 8 * 3, Tilt: 90, Azimuth: 0, Height: 3},
		{Kind: envelope.EndWall, Name: "east end", Area: 3 * 2.25, Tilt: 90, Azimuth: 90, Height: 2.25},
		{Kind: envelope.EndWall, Name: "west end", Area: 3 * 2.25, Tilt: 90, Azimuth: 270, Height: 2.25},
		{Kind: envelope.Floor, Name: "floor", Area: 24, Tilt: 180, Height: 3},
	}, envelope.Surroundings{Volume: 54, Perimeter: 22, RidgeHeight: 3, EaveHeight: 1.5})
	if err != nil {
		fmt.Println(err)
		return
	}
	brick, err := envelope.OpaqueWall("brick", 0.5, 0.24)
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet := envelope.TwinWall10()
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:   shape,
		Covers:  map[envelope.FacetKind]envelope.Cover{envelope.Roof: sheet, envelope.SideWall: sheet, envelope.EndWall: sheet, envelope.BackWall: brick},
		Ground:  envelope.DefaultGround(envelope.SandSoil()),
		Climate: envelope.DefaultGroundClimate(),
		Leakage: envelope.DefaultLeakage(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range shape.Facets {
		if !f.Kind.InGround() {
			fmt.Printf("%-10s %5.1f m²\n", f.Name, f.Area)
		}
	}
	k := envelope.DefaultHouseConditions()
	k.SkyDrop, k.Wind = 15, 2
	var loss envelope.HouseLoss // used again in each hour
	energy := 0.0
	for hour := range 12 {
		k.Outside = -2 - 0.5*float64(hour) // sky and ground follow
		if err := house.LossTo(&loss, &k); err != nil {
			fmt.Println(err)
			return
		}
		energy += loss.Total * 3600
	}
	fmt.Printf("last hour, %.1f °C: %.0f W; the night %.1f kWh\n", k.Outside, loss.Total, energy/3.6e6)
	// Output:
	// roof        26.8 m²
	// front       12.0 m²
	// north wall  24.0 m²
	// east end     6.8 m²
	// west end     6.8 m²
	// last hour, -7.5 °C: 5708 W; the night 61.5 kWh
}
