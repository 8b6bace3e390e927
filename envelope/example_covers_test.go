package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The ready-made covers by name: their light, their U-value under an overcast and
// a clear sky, 15 °C inside and 0 °C outside with 4 m/s of wind, and the relative
// humidity inside above which they drip under the clear one. Behind them what an
// aluminised screen drawn below makes of the U-value under the clear sky.
func Example_readyMadeCovers() {
	overcast := envelope.DefaultCoverConditions()
	overcast.Wind = 4
	clear := overcast
	clear.SkyDrop = 20
	fmt.Println("W/(m² K)                       light  overcast  clear  drips at  screened")
	for _, c := range envelope.Covers() {
		a, err := c.Cover.Solve(overcast)
		if err != nil {
			fmt.Println(err)
			return
		}
		b, err := c.Cover.Solve(clear)
		if err != nil {
			fmt.Println(err)
			return
		}
		screened, err := envelope.WithScreen(c.Cover, envelope.AluminisedScreen())
		if err != nil {
			fmt.Println(err)
			return
		}
		s, err := screened.Solve(clear)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-30s  %.2f   %4.1f     %4.1f    %3.0f %%      %4.1f\n", c.Name, c.Light, a.U, b.U, 100*b.DripHumidity, s.U)
	}
	// Each has a function of its own, too, for the plan of a house.
	ends := map[string]envelope.Cover{"infrared film": envelope.SingleInfraredFilm(), "double glass": envelope.DoubleGlass(),
		"6 mm": envelope.TwinWall6(), "16 mm": envelope.TripleWall16()}
	fmt.Println("layers:", len(ends["infrared film"].Layers()), len(ends["double glass"].Layers()), len(ends["6 mm"].Layers()), len(ends["16 mm"].Layers()))
	// Output:
	// W/(m² K)                       light  overcast  clear  drips at  screened
	// single film                     0.88    7.4     10.9     42 %       3.2
	// single infrared film            0.87    6.6      8.8     41 %       3.2
	// double film                     0.78    4.6      7.5     61 %       3.0
	// double film, infrared inside    0.77    3.8      6.1     55 %       3.1
	// single glass                    0.90    5.8      6.9     42 %       3.1
	// double glass                    0.81    2.7      3.2     65 %       2.0
	// twin-wall sheet 6 mm            0.80    3.8      4.6     57 %       2.5
	// twin-wall sheet 10 mm           0.80    3.4      4.1     61 %       2.3
	// triple-wall sheet 16 mm         0.72    2.5      3.0     69 %       1.9
	// layers: 1 2 2 3
}
