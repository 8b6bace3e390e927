package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// What the facets of a house see: a black body at the inside air, or each
// other and the floor. Three invented houses on a clear night.
func Example_radiantRoom() {
	small, tunnel, large := envelope.DefaultForm(), envelope.DefaultForm(), envelope.DefaultForm()
	tunnel.Section, tunnel.Span, tunnel.Length, tunnel.Eave, tunnel.Ridge = envelope.RoundArch, 8, 40, 0.4, 3.6
	large.Span, large.Length, large.Eave, large.Ridge, large.Bays, large.GutterWidth = 8, 60, 4, 5.8, 6, 0.2
	glass := envelope.SingleGlass()
	for _, h := range []struct {
		name string
		form envelope.Form
	}{{"small house", small}, {"tunnel", tunnel}, {"six bays", large}} {
		shape, err := envelope.NewShape(h.form)
		if err != nil {
			fmt.Println(err)
			return
		}
		plan := envelope.HousePlan{
			Shape: shape,
			Covers: map[envelope.FacetKind]envelope.Cover{
				envelope.Roof: glass, envelope.SideWall: glass, envelope.EndWall: glass, envelope.Gutter: glass,
			},
			Ground: envelope.DefaultGround(envelope.ClaySoil()), Climate: envelope.DefaultGroundClimate(), Leakage: envelope.DefaultLeakage(),
		}
		k := envelope.DefaultHouseConditions()
		k.SkyDrop, k.Wind, k.RadiantRise = 18, 2, -2
		fmt.Printf("%-11s cover over floor %.2f;", h.name, shape.CoverRatio)
		for _, room := range []envelope.RadiantRoom{envelope.RadiantAir, envelope.RadiantGiven, envelope.RadiantEnclosure} {
			plan.Radiant = room
			if room == envelope.RadiantEnclosure {
				k.RadiantRise = 0 // floor and crop as warm as the air
			}
			house, err := envelope.NewHouse(plan)
			if err != nil {
				fmt.Println(err)
				return
			}
			r, err := house.Loss(k)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf(" %s %.2f W/(m² K);", room, r.Cover/shape.CoverArea/(k.Inside-k.Outside))
			if r.RadiantResidual > 1e-8 {
				fmt.Print(" held at a jump")
			}
		}
		fmt.Println()
	}
	// Output:
	// small house cover over floor 2.12; black at the inside air 7.11 W/(m² K); given 6.73 W/(m² K); enclosure 6.01 W/(m² K);
	// tunnel      cover over floor 1.62; black at the inside air 7.54 W/(m² K); given 7.17 W/(m² K); enclosure 6.81 W/(m² K);
	// six bays    cover over floor 1.42; black at the inside air 7.55 W/(m² K); given 7.18 W/(m² K); enclosure 6.97 W/(m² K);
}
