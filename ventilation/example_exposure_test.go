package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// From a weather station's wind to the pressure on a house's faces: 5 m/s at
// 10 m in open country, an invented house 3 m high among others, its long walls
// facing south and north, wind from the south-west.
func Example_exposure() {
	open, _ := ventilation.FindTerrain("open")
	suburb, _ := ventilation.FindTerrain("suburb")
	field, _ := ventilation.FindRoughTerrain("field")
	village, _ := ventilation.FindRoughTerrain("village")
	power, err1 := ventilation.PowerWind{Measured: 5, Station: 10, StationTerrain: open, Height: 3, Terrain: suburb}.Speed()
	log, err2 := ventilation.LogWind{Measured: 5, Station: 10, StationTerrain: field, Height: 3, Terrain: village}.Speed()
	for _, err := range []error{err1, err2} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("wind at the ridge     %.2f m/s by the power law, at most %.2f m/s by the logarithm\n", power, log)
	const shelter = ventilation.SemiSheltered
	for _, face := range []struct {
		name    string
		azimuth float64
	}{{"south wall", 180}, {"north wall", 0}} {
		a := ventilation.Incidence(225, face.azimuth)
		fmt.Printf("%s, %3.0f degree  %+.2f by the table, %+.2f by the fit for a long wall\n", face.name, a,
			shelter.Coefficient(ventilation.WindFaceWall, a), ventilation.WallCoefficient(a, 2, 0.6))
	}
	fmt.Printf("roof of 25 degrees    %+.2f as the mean of both slopes, %s\n", shelter.RoofMean(ventilation.WindFaceMidRoof, true, 45), shelter)
	// Output:
	// wind at the ridge     2.75 m/s by the power law, at most 3.01 m/s by the logarithm
	// south wall,  45 degree  +0.10 by the table, +0.36 by the fit for a long wall
	// north wall, 135 degree  -0.35 by the table, -0.49 by the fit for a long wall
	// roof of 25 degrees    -0.60 as the mean of both slopes, semi-sheltered
}
