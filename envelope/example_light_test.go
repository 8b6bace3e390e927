package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// A pane of 4 mm for light, step by step: reflection at a face, absorption on
// the way, then the pane as a whole, by the angle of incidence.
func Example_paneForLight() {
	const index, thickness = 1.526, 0.004
	pane := envelope.Sheet{Index: index, Thickness: thickness, Extinction: envelope.ExtinctionOf(index, thickness, 0.90)}
	one, err := envelope.NewLightLayers(pane)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("extinction %.1f 1/m from a transmittance of 0.90\n", pane.Extinction)
	fmt.Println("degree  face: perpendicular, parallel   once through  pane: passes  absorbs")
	for _, angle := range []float64{0, 30, 60, 80} {
		perpendicular, parallel := envelope.Fresnel(index, angle)
		l := one.At(angle)
		fmt.Printf("%6.0f  %19.3f %9.3f   %12.3f  %12.3f  %7.3f\n", angle, perpendicular, parallel, pane.Bouguer(angle), l.Transmittance, l.Absorptance[0])
	}
	fmt.Printf("diffuse light %.3f\n", one.Diffuse().Transmittance)
	sky, ground := envelope.DiffuseAngles(30)
	fmt.Printf("on a slope of 30 degree the sky's light passes as beam at %.0f degree, %.3f, the ground's at %.0f, %.3f\n",
		sky, one.At(sky).Transmittance, ground, one.At(ground).Transmittance)
	// Output:
	// extinction 4.6 1/m from a transmittance of 0.90
	// degree  face: perpendicular, parallel   once through  pane: passes  absorbs
	//      0                0.043     0.043          0.982         0.900    0.018
	//     30                0.062     0.028          0.981         0.897    0.019
	//     60                0.185     0.001          0.978         0.823    0.022
	//     80                0.549     0.235          0.976         0.441    0.024
	// diffuse light 0.827
	// on a slope of 30 degree the sky's light passes as beam at 57 degree, 0.843, the ground's at 75, 0.596
}
