package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// A hood, 13.4 m of 230 mm duct, five elbows and a damper on a fan of six
// tested points: Y. A. Cengel, J. M. Cimbala, Fluid Mechanics, Ex. 14-1, which
// reads 650 cfm and 0.83 inch of water off its chart. The table is joined by
// straight lines here.
func Example_operatingPoint() {
	const cfm, inch = 0.3048 * 0.3048 * 0.3048 / 60, 249.0889
	air := airheat.AirProperties{Density: 1.184, Viscosity: 1.184 * 1.562e-5, HeatCapacity: 1006}
	flow := []float64{0, 250, 500, 750, 1000, 1200}
	pressure := []float64{0.90, 0.95, 0.90, 0.75, 0.40, 0}
	for i := range flow {
		flow[i] *= cfm
		pressure[i] *= inch * airheat.StandardDensity / air.Density // to 1.2 kg/m³
	}
	fan, err := airheat.NewFanTable(flow, pressure)
	if err != nil {
		fmt.Println(err)
		return
	}
	duct := airheat.Segment{Section: airheat.Round(0.23), Length: 13.4, Roughness: 0.15e-3, Fittings: 1.3 + 5*0.21 + 1.8 + 1.05}
	system, err := airheat.NewSystem(duct)
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := system.OperatingPoint(fan, airheat.DefaultFanDrive(), air)
	if err != nil {
		fmt.Println(err)
		return
	}
	l := duct.Loss(p.Flow, air)
	fmt.Printf("velocity           %8.3f m/s\n", l.Velocity)
	fmt.Printf("Reynolds number    %8.0f\n", l.Reynolds)
	fmt.Printf("friction factor    %8.5f       Colebrook\n", l.Friction)
	fmt.Printf("wall loss          %8.1f Pa    f L/D ρV²/2\n", l.Wall)
	fmt.Printf("fittings           %8.1f Pa    K ρV²/2\n", l.Fittings)
	fmt.Printf("flow               %8.1f cfm   printed 650\n", p.Flow/cfm)
	fmt.Printf("pressure           %8.3f inH2O printed 0.83\n", p.Pressure/inch)
	fmt.Printf("crossings          %8d\n", p.Count)
	fmt.Printf("electric power     %8.1f W     efficiencies 0.5 and 0.75\n", p.ElectricPower)
	fmt.Printf("warming of the air %8.3f K     motor in the stream\n", p.Rise)
	// Output:
	// velocity              7.310 m/s
	// Reynolds number      107634
	// friction factor     0.02075       Colebrook
	// wall loss              38.2 Pa    f L/D ρV²/2
	// fittings              164.5 Pa    K ρV²/2
	// flow                  643.5 cfm   printed 650
	// pressure              0.814 inH2O printed 0.83
	// crossings                 1
	// electric power        164.2 W     efficiencies 0.5 and 0.75
	// warming of the air    0.454 K     motor in the stream
}
