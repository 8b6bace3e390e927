package figures

import (
	"errors"
	"fmt"

	"cloche.example/ventilation"
)

func windExposure() Figure {
	return Figure{
		Name: "exposure", Title: "From the weather station to the walls", Subject: "vents and wind", Package: "ventilation", Example: "Example_exposure",
		Question: "A station in open country measures the wind at 10 m. What arrives at a low house among others, and where does it press and suck?",
		Sketch:   "Wind from the south-west slows down over rough ground towards the low house, meets the long south wall at a slant and leaves the north wall in its lee.",
		Given: []Given{
			{"U_m", "wind at the station", "m/s", 5, 0.5, 25},
			{"z", "height of the house", "m", 3, 1, 10},
			{"D", "wind comes from", "degree", 225, 0, 360},
		},
		Assumes: []string{"The station stands 10 m above open country, the house in a village; its long walls, twice the gables, look south and north. Semi-sheltered; coefficients are means over a face, and refer to the wind at the ridge."},
		Change:  []string{"Turn the wind to 180 degree: the table has 0.40 on the south wall, the most there is.", "Lower the house: the logarithm keeps to its least height, 5 m in a village."},
		Code:    "solveWindExposure",
		Solve:   solveWindExposure,
	}
}

func solveWindExposure(v []float64) (r Result, err error) {
	open, _ := ventilation.FindTerrain("open")
	suburb, _ := ventilation.FindTerrain("suburb")
	field, _ := ventilation.FindRoughTerrain("field")
	village, _ := ventilation.FindRoughTerrain("village")
	power, err1 := ventilation.PowerWind{Measured: v[0], Station: 10, StationTerrain: open, Height: v[1], Terrain: suburb}.Speed()
	log, err2 := ventilation.LogWind{Measured: v[0], Station: 10, StationTerrain: field, Height: v[1], Terrain: village}.Speed()
	if err := errors.Join(err1, err2); err != nil {
		return r, err
	}
	r.Lines = []string{fmt.Sprintf("wind at the ridge     %.2f m/s by the power law, at most %.2f m/s by the logarithm", power, log)}
	r.Steps = []Step{
		{Says: "By the power law: up to the wind that both places share, and down again.", Formula: "U_p = U_m (d_1/10)^(a_1) (z/d_2)^(a_2)", Source: "HoF17 ch. 24 eq. 4, from memory",
			Values: numbers{"U_m": v[0], "z": v[1], "d_1": open.Layer, "a_1": open.Exponent, "d_2": suburb.Layer, "a_2": suburb.Exponent}, Value: power, Unit: "m/s"},
		{Says: "By the logarithm, which stops at its least height.", Formula: "U_l = U_m (z_2/z_1)^0.07 ln(max(z, z_m)/z_2)/ln(10/z_1)", Source: "EnWind05 eqs. 4.3 to 4.5",
			Values: numbers{"U_m": v[0], "z": v[1], "z_1": field.Roughness, "z_2": village.Roughness, "z_m": village.Least}, Value: log, Unit: "m/s"},
	}
	const shelter = ventilation.SemiSheltered
	table := func(a float64) float64 { return shelter.Coefficient(ventilation.WindFaceWall, a) }
	fit := func(a float64) float64 { return ventilation.WallCoefficient(a, 2, 0.6) }
	var marks []mark
	for _, face := range []struct {
		name    string
		azimuth float64
	}{{"south wall", 180}, {"north wall", 0}} {
		a := ventilation.Incidence(v[2], face.azimuth)
		r.Lines = append(r.Lines, fmt.Sprintf("%s, %3.0f degree  %+.2f by the table, %+.2f by the fit for a long wall", face.name, a, table(a), fit(a)))
		r.Steps = append(r.Steps, Step{Says: "Between the wind and the normal of the " + face.name + ".", Formula: "β = acos(cos(D - A))",
			Values: numbers{"D": v[2], "A": face.azimuth}, Value: a, Unit: "degree", Within: 1e-6, Why: "an arc cosine near its ends"},
			Step{Says: "Pressure there, by the table.", Formula: "P = C 1.2 U_p^2/2", Source: "Liddament96 table 2.2",
				Values: numbers{"C": table(a), "U_p": power}, Value: table(a) * 1.2 * power * power / 2, Unit: "Pa"})
		marks = append(marks, mark{face.name[:5], a, table(a)})
	}
	roof := shelter.RoofMean(ventilation.WindFaceMidRoof, true, ventilation.Incidence(v[2], 180))
	r.Lines = append(r.Lines, fmt.Sprintf("roof of 25 degrees    %+.2f as the mean of both slopes, %s", roof, shelter))
	r.Picture, err = chart{title: "Pressure coefficient of a wall against the wind's angle", says: "Two curves that fall from pressure to suction as the wall turns out of the wind, with the two long walls marked on the table's.", x: "wind to the wall's normal, degree", y: "pressure coefficient", curves: []curve{
		{"table, a house as long as wide", along(0, 180, 36, table)},
		{"fit for a wall twice the gable, bare site", along(0, 180, 90, fit)},
	}, marks: marks}.picture("0 is the wind square on the wall, 180 the wall in the lee. Above zero the wind presses, below it sucks.")
	return r, err
}
