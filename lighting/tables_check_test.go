package lighting_test

import (
	"testing"

	"cloche.example/internal/check"
	"cloche.example/lighting"
)

func TestCropsCellByCell(t *testing.T) {
	var table []check.Line
	for _, c := range lighting.CropLights() {
		table = append(table, check.Line{Name: c.Name, Cells: []float64{c.Least, c.Target, c.Most}})
	}
	check.Table(t, "crops.csv", table)
}

func TestBroadbandFactorsCellByCell(t *testing.T) {
	var table []check.Line
	for _, b := range lighting.BroadbandFactors() {
		table = append(table, check.Line{Name: b.Name, Cells: []float64{b.LuxPerPPFD, b.PhotonsPerJoule}})
	}
	check.Table(t, "broadband.csv", table)
}
