package ventilation_test

import (
	"testing"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

func TestPressureCoefficientsCellByCell(t *testing.T) {
	var faces, roofs []check.Line
	for s := ventilation.Exposed; s <= ventilation.Sheltered; s++ {
		for f := ventilation.WindFaceWall; f <= ventilation.WindFaceSteepRoof; f++ {
			line := check.Line{Name: s.String() + ": " + f.String()}
			for angle := 0.0; angle <= 180; angle += 45 {
				line.Cells = append(line.Cells, s.Coefficient(f, angle))
			}
			faces = append(faces, line)
		}
		for _, long := range []bool{false, true} {
			plan := map[bool]string{false: ", as long as wide: ", true: ", twice as long as wide: "}[long]
			for f := ventilation.WindFaceLowRoof; f <= ventilation.WindFaceMidRoof; f++ {
				line := check.Line{Name: s.String() + plan + f.String()}
				for angle := 0.0; angle <= 90; angle += 45 {
					line.Cells = append(line.Cells, s.RoofMean(f, long, angle))
				}
				roofs = append(roofs, line)
			}
		}
	}
	check.Table(t, "pressure.csv", faces)
	check.Table(t, "roofmeans.csv", roofs)
}

func TestTerrainsCellByCell(t *testing.T) {
	var powers, roughs []check.Line
	for _, name := range []string{"city", "suburb", "open", "flat"} {
		of := terrain(name)
		powers = append(powers, check.Line{Name: name, Cells: []float64{of.Exponent, of.Layer}})
	}
	for _, name := range []string{"sea", "lake", "field", "village", "town"} {
		of := rough(name)
		roughs = append(roughs, check.Line{Name: name, Cells: []float64{of.Roughness, of.Least}})
	}
	check.Table(t, "terrains.csv", powers)
	check.Table(t, "rough_terrains.csv", roughs)
}

func TestFlapsAndScreensCellByCell(t *testing.T) {
	aspects, cubic, screens := ventilation.DataTables()
	check.Table(t, "hinged_aspect.csv", aspects)
	check.Table(t, "hinged_cubic.csv", cubic)
	check.Table(t, "screen_fits.csv", screens)
}
