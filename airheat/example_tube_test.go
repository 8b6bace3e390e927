package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// A film tube of 0.40 m with 30 rows of two 45 mm holes: how even are its
// jets, and how even its heat.
func Example_tubeEvenness() {
	tube := airheat.DefaultPerforatedTube()
	tube.Diameter, tube.LeadIn, tube.Pitch = 0.40, 1.5, 0.45
	tube.Positions, tube.HolesPerRow, tube.HoleDiameter = 30, 2, 0.045
	supply := airheat.TubeSupply{Flow: 0.75, Temperature: 45, House: 15, Properties: airheat.DryAir(45, 101325)}
	f, err := tube.Solve(supply)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("holes over section           %7.3f\n", f.AreaRatio)
	fmt.Printf("static pressure, closed end  %7.2f Pa\n", f.EndPressure)
	fmt.Printf("static pressure, fan         %7.2f Pa\n", f.FanPressure)
	fmt.Printf("total pressure, fan          %7.2f Pa\n", f.FanTotal)
	fmt.Printf("first row over last          %7.4f\n", f.FanToEnd)
	fmt.Printf("the same without friction    %7.4f cos(Cd a/A)\n", airheat.FrictionlessRatio(tube.Discharge, f.AreaRatio))
	fmt.Printf("least row over most, flow    %7.4f\n", f.Evenness)
	fmt.Printf("least row over most, heat    %7.4f\n", f.HeatEven)
	for _, i := range []int{0, 14, 29} {
		p := f.Positions[i]
		fmt.Printf("row %2d at %5.2f m: %6.4f m³/s, jet %5.2f m/s, %5.2f °C\n", i+1, p.Distance, p.Flow, p.JetSpeed, p.Temperature)
	}
	fmt.Println(airheat.SupplyCaution)
	// Output:
	// holes over section             0.759
	// static pressure, closed end    86.50 Pa
	// static pressure, fan           71.94 Pa
	// total pressure, fan            91.70 Pa
	// first row over last           0.9117
	// the same without friction     0.8806 cos(Cd a/A)
	// least row over most, flow     0.9117
	// least row over most, heat     0.6834
	// row  1 at  1.50 m: 0.0235 m³/s, jet 11.39 m/s, 44.60 °C
	// row 15 at  7.80 m: 0.0251 m³/s, jet 12.16 m/s, 42.40 °C
	// row 30 at 14.55 m: 0.0258 m³/s, jet 12.49 m/s, 33.53 °C
	// Hot supply air softens film, scorches leaves and burns skin. Keep outlets clear of film, crop and people; follow the maker's limits, local codes and licensed practice.
}
