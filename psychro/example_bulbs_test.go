package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Near freezing the same air can hold two wet bulbs in equilibrium: a liquid
// one, and an iced one below it. A psychrometer reads whichever its wick is.
func Example_waterOrIceBulb() {
	fmt.Println("air of 3 °C   liquid bulb  iced bulb  chosen")
	for _, rh := range []float64{0.40, 0.50, 0.54, 0.58, 0.62, 0.70} {
		s, err := psychro.FromRelativeHumidity(3, rh, 101325)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%7.0f %%     %8.2f     %8.2f  %7.2f\n", 100*rh, s.WetBulbOver(psychro.Liquid), s.WetBulbOver(psychro.Ice), s.WetBulb())
	}
	fmt.Println("A liquid bulb below 0 °C is supercooled; NaN: the ice would melt.")
	// Output:
	// air of 3 °C   liquid bulb  iced bulb  chosen
	//      40 %        -1.05        -1.29    -1.29
	//      50 %        -0.34        -0.57    -0.57
	//      54 %        -0.06        -0.28    -0.28
	//      58 %         0.21         0.00     0.21
	//      62 %         0.49          NaN     0.49
	//      70 %         1.03          NaN     1.03
	// A liquid bulb below 0 °C is supercooled; NaN: the ice would melt.
}
