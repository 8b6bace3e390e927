package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// A two-level stack: 1.2 m² low at the side, 0.8 m² at the ridge 2.4 m above,
// 30 °C inside and 22 °C outside, calm.
func Example_twoLevelStack() {
	c, err := ventilation.DrySides{Inside: 30, Outside: 22, Pressure: 101325}.Conditions()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := ventilation.TwoLevels{LowArea: 1.2, LowDischarge: 0.6, HighArea: 0.8, HighDischarge: 0.6, Separation: 2.4}.Flow(c)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("density outside  rho = p/(R T)            %.4f kg/m³\n", c.OutsideDensity)
	fmt.Printf("density inside                            %.4f kg/m³\n", c.InsideDensity)
	fmt.Printf("stack pressure   (rho_o - rho_i) g H      %.4f Pa\n", f.Total)
	fmt.Printf("neutral level    H/(1+(r_o/r_i)(A1/A2)²)  %.4f m above the low opening\n", f.Neutral)
	fmt.Printf("across the low opening                    %.4f Pa\n", f.AtLow)
	fmt.Printf("across the high opening                   %.4f Pa\n", f.AtHigh)
	fmt.Printf("flow             Cd A sqrt(2 rho dp)      %.4f kg/s\n", f.Flow)
	fmt.Printf("rival with one mean density               %.4f kg/s (%+.3f %%)\n", f.Boussinesq, 100*f.Discrepancy)
	// Output:
	// density outside  rho = p/(R T)            1.1960 kg/m³
	// density inside                            1.1644 kg/m³
	// stack pressure   (rho_o - rho_i) g H      0.7428 Pa
	// neutral level    H/(1+(r_o/r_i)(A1/A2)²)  0.7249 m above the low opening
	// across the low opening                    0.2244 Pa
	// across the high opening                   0.5185 Pa
	// flow             Cd A sqrt(2 rho dp)      0.5274 kg/s
	// rival with one mean density               0.5288 kg/s (+0.266 %)
}
