package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The daylight on a bed of an invented glass house of 6 by 12 m on a clear day of
// March, hour by hour: how much of the bed lies in the beam through which part of
// the cover, and what sun and sky bring. The back wall to the north is opaque.
func ExampleNewBedLight() {
	form := envelope.DefaultForm()
	form.Azimuth = 90 // the ridge runs from west to east
	shape, err := envelope.NewShape(form)
	if err != nil {
		fmt.Println(err)
		return
	}
	pane, err := envelope.NewLightLayers(envelope.Sheet{Index: 1.526, Thickness: 0.004, Extinction: envelope.ExtinctionOf(1.526, 0.004, 0.90)})
	if err != nil {
		fmt.Println(err)
		return
	}
	lights := make([]envelope.FacetLight, len(shape.Facets))
	for i, f := range shape.Facets {
		if f.Kind != envelope.Floor && !(f.Kind == envelope.SideWall && f.Azimuth == 0) {
			lights[i] = envelope.FacetLight{Sheets: pane, Factors: envelope.LightFactors{Dirt: 0.95, Condensation: 0.95, Frame: 0.92}}
		}
	}
	house, err := envelope.NewGlazing(shape, lights, 0.8)
	if err != nil {
		fmt.Println(err)
		return
	}
	bed, err := envelope.NewBedLight(house, envelope.BedPlace{Left: 0.5, Near: 0.5, Width: 5, Length: 11, Height: 0.8})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f %% of the sky's light reaches the bed\n", 100*bed.Diffuse())
	fmt.Println("sun: height, azimuth   roof  walls  beam through   beam  diffuse W/m²  diffuse share")
	for _, sun := range []envelope.Sunlight{
		{BeamNormal: 250, DiffuseHorizontal: 35, Elevation: 6, Azimuth: 98},
		{BeamNormal: 560, DiffuseHorizontal: 65, Elevation: 23, Azimuth: 122},
		{BeamNormal: 680, DiffuseHorizontal: 80, Elevation: 36, Azimuth: 180},
		{BeamNormal: 60, DiffuseHorizontal: 170, Elevation: 23, Azimuth: 238},
	} {
		hour, err := bed.Light(sun)
		if err != nil {
			fmt.Println(err)
			return
		}
		roof := 0.0
		for i, share := range hour.Sun.Facets {
			if shape.Facets[i].Kind == envelope.Roof {
				roof += share
			}
		}
		fmt.Printf("%11.0f %8.0f %7.2f %6.2f %10.2f %9.0f %8.0f %14.2f\n", sun.Elevation, sun.Azimuth, roof, hour.Sun.Lit-roof, hour.Sun.Transmittance, hour.Beam, hour.Diffuse, hour.DiffuseShare)
	}
	noon := bed.Beam(36, 180)
	fmt.Printf("at noon %.0f %% of the bed lie in the sun\n", 100*noon.Lit)
	// Output:
	// 69 % of the sky's light reaches the bed
	// sun: height, azimuth   roof  walls  beam through   beam  diffuse W/m²  diffuse share
	//           6       98    0.01   0.99       0.71        18       24           0.57
	//          23      122    0.64   0.36       0.71       155       45           0.22
	//          36      180    0.82   0.18       0.74       297       55           0.16
	//          23      238    0.64   0.36       0.71        17      117           0.88
	// at noon 100 % of the bed lie in the sun
}
