package ventilation_test

import (
	"fmt"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// The CO2 of an invented house at noon with its vents ajar: what is left without
// a supply, what a dose of 900 µmol/mol takes, of which most is blown out, and
// how fast the level falls when dosing stops.
func Example_carbonDioxide() {
	air, err := psychro.FromRelativeHumidity(24, 0.7, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	house := ventilation.CO2Case{
		FloorArea: 95, Volume: 275, Crop: ventilation.DefaultCanopy(3), Air: air, Leaf: 23, PAR: 800,
		Exchange: 0.2, Outside: 420, Respiration: 95 * 0.5e-3 / 3600,
	}
	bare, err := house.Steady()
	if err != nil {
		fmt.Println(err)
		return
	}
	dose, err := house.Dose(900)
	if err != nil {
		fmt.Println(err)
		return
	}
	house.Supply = dose
	rich, err := house.Steady()
	if err != nil {
		fmt.Println(err)
		return
	}
	house.Supply = 0
	after, err := house.Over(rich.Concentration, 10*time.Minute)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("1 µmol/mol is %.3f mg/m³ at 24 °C\n", 1e6*ventilation.CO2Density(1, 24, 101325))
	fmt.Printf("a canopy of LAI 3 takes %.2f g/(m² h) at 400 and %.2f at 900 µmol/mol\n",
		3.6e6*house.Crop.Uptake(800, 400, 23), 3.6e6*house.Crop.Uptake(800, 900, 23))
	fmt.Printf("without a supply %.0f µmol/mol, uptake %.2f kg/h\n", bare.Concentration, 3600*bare.Uptake)
	fmt.Printf("for 900 µmol/mol %.2f kg/h, of which %.2f kg/h are taken and %.2f kg/h blown out\n", 3600*dose, 3600*rich.Uptake, 3600*rich.Carried)
	fmt.Printf("ten minutes after dosing stops %.0f µmol/mol\n", after.End)
	// Output:
	// 1 µmol/mol is 1.805 mg/m³ at 24 °C
	// a canopy of LAI 3 takes 5.27 g/(m² h) at 400 and 7.03 at 900 µmol/mol
	// without a supply 213 µmol/mol, uptake 0.32 kg/h
	// for 900 µmol/mol 1.24 kg/h, of which 0.67 kg/h are taken and 0.62 kg/h blown out
	// ten minutes after dosing stops 571 µmol/mol
}
