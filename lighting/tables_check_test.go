package lighting_test

import (
	"testing"

	"cloche.example/internal/check"
	"cloche.example/lighting"
)

func TestCropsCellByCell(t *testing.T) {
	var table []check.Line
	for _, c := range lighting.CropLights() {
		table = append(table, check.Line{Name: c.Name, Cells: []float64{c.Min, c.Target, c.Upper}})
	}
	check.Table(t, "crops.csv", table)
}
