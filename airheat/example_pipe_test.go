package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// What a metre of heating pipe gives, and how much of it is radiation.
func Example_heatingPipe() {
	for _, surface := range []float64{40, 60, 80} {
		h, err := airheat.DefaultHeatPipe(surface, 20).Heat()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f °C: %5.1f W/m by convection (%.1f by the law of 51 mm), %4.1f by radiation, %5.1f in all, %.2f radiant\n",
			surface, h.Convection, h.VanthoorConvection, h.Radiation, h.Total, h.Radiant)
	}
	// Output:
	// 40 °C:  18.3 W/m by convection (16.6 by the law of 51 mm), 17.5 by radiation,  35.7 in all, 0.49 radiant
	// 60 °C:  43.4 W/m by convection (41.5 by the law of 51 mm), 38.7 by radiation,  82.1 in all, 0.47 radiant
	// 80 °C:  72.1 W/m by convection (70.9 by the law of 51 mm), 64.0 by radiation, 136.1 in all, 0.47 radiant
}
