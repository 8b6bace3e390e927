package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// A house and its lobby as two zones, both doors ajar, with wind on the lobby's
// wall.
func Example_lobbyAsAZone() {
	door := ventilation.Doorway{Width: 0.9, Height: 2, Discharge: 0.6, PressureCoefficient: 0.4}
	zones, err := ventilation.NewZones(2, []ventilation.Link{
		{A: ventilation.OutsideZone, B: 0, Element: door.Opening()},
		{A: 0, B: 1, Element: door.Opening()},
		{A: 1, B: ventilation.OutsideZone, Element: ventilation.Opening{Name: "ridge", Height: 3, Area: 0.5, Discharge: 0.6, PressureCoefficient: -0.4}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	b, err := zones.Solve(ventilation.ZoneConditions{ZoneDensities: []float64{1.22, 1.19}, OutsideDensity: 1.25, Wind: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, name := range []string{"outer door", "inner door", "ridge"} {
		fmt.Printf("%-11s %.3f kg/s in, %.3f kg/s back\n", name, b.Links[i].In, b.Links[i].Out)
	}
	fmt.Printf("pressure    %.2f Pa in the lobby, %.2f Pa in the house\n", b.Pressure[0], b.Pressure[1])
	// Output:
	// outer door  0.775 kg/s in, 0.018 kg/s back
	// inner door  0.773 kg/s in, 0.016 kg/s back
	// ridge       0.757 kg/s in, 0.000 kg/s back
	// pressure    0.46 Pa in the lobby, -0.09 Pa in the house
}
