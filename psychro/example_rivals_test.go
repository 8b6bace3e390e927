package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// How far the saturation formulas of the handbooks lie apart, over liquid
// water, as a difference from the IAPWS line in per cent; and what leaving out
// the enhancement factor costs, which is more than all of them.
func Example_rivals() {
	fmt.Println("   °C        Pa  Hyland-Wexler     FAO56       WMO   no factor")
	for _, t := range []float64{1, 10, 20, 30, 40, 50} {
		ps := psychro.SaturationPressure(t)
		off := func(v float64) float64 { return 100 * (v/ps - 1) }
		fmt.Printf("%5.0f  %8.2f  %13.3f  %8.3f  %8.3f  %10.3f\n", t, ps, off(psychro.HylandWexler(psychro.Liquid, t)),
			off(psychro.FAO56Saturation(t)), off(psychro.WMOMagnus(psychro.Liquid, t)), 100*(1/psychro.EnhancementFactor(t, 101325)-1))
	}
	fmt.Printf("enhancement factor at 101325 Pa: %.5f by [WMO08] at any temperature, %.5f at 20 °C\n",
		psychro.WMOEnhancement(101325), psychro.EnhancementFactor(20, 101325))
	// Output:
	// °C        Pa  Hyland-Wexler     FAO56       WMO   no factor
	//     1    657.09         -0.002    -0.058    -0.022      -0.408
	//    10   1228.18         -0.015    -0.018    -0.175      -0.404
	//    20   2339.21         -0.018    -0.040    -0.283      -0.413
	//    30   4246.69         -0.015    -0.085    -0.305      -0.438
	//    40   7384.43         -0.013    -0.119    -0.230      -0.477
	//    50  12351.27         -0.011    -0.117    -0.049      -0.525
	// enhancement factor at 101325 Pa: 1.00472 by [WMO08] at any temperature, 1.00415 at 20 °C
}
