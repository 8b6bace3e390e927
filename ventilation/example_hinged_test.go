package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// A ridge flap 1.2 m along its hinge and 0.8 m deep, opened to 30 degrees: what
// three published models make of it, all on the frame area.
func Example_hingedVent() {
	h := ventilation.Hinged{Hinge: ventilation.TopHinged, Along: 1.2, Depth: 0.8, Angle: 30}
	a, err := h.Area()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("stroke 2 d sin(a/2)      %.4f m\n", ventilation.FlapStroke(h.Angle, h.Depth))
	fmt.Printf("front s l                %.4f m²\n", a.Front)
	fmt.Printf("two side triangles       %.4f m²\n", a.Sides)
	fmt.Printf("in series with the frame %.4f m² of %.4f m²\n", a.Free, a.Frame)
	names := []string{"aspect-class exponential", "EN 16798 polynomial", "geometry"}
	for m, name := range names {
		cd, err := ventilation.HingedModel(m).Discharge(h, 0.6)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("Cd on the frame, %-24s %.3f\n", name, cd)
	}
	long := ventilation.Hinged{Along: 30, Depth: 0.8, Angle: 20, Blocked: 2}
	byDefault, err1 := ventilation.DefaultHingedModel().Discharge(long, 0.6)
	byAspect, err2 := ventilation.AspectExponential.Discharge(long, 0.6)
	fmt.Printf("a long ridge vent at 20 degrees: %.3f by %v, %.3f by %v %v %v\n", byDefault, ventilation.DefaultHingedModel(), byAspect, ventilation.AspectExponential, err1, err2)
	// Output:
	// stroke 2 d sin(a/2)      0.4141 m
	// front s l                0.4969 m²
	// two side triangles       0.3200 m²
	// in series with the frame 0.6222 m² of 0.9600 m²
	// Cd on the frame, aspect-class exponential 0.393
	// Cd on the frame, EN 16798 polynomial      0.275
	// Cd on the frame, geometry                 0.389
	// a long ridge vent at 20 degrees: 0.197 by flap geometry, 0.292 by aspect class, exponential <nil> <nil>
}
