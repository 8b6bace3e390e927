package envelope_test

import (
	"testing"

	"cloche.example/envelope"
	"cloche.example/internal/check"
)

// propertyNames are the names of properties in the record of the materials.
var propertyNames = map[envelope.Property]string{
	envelope.PropThickness: "thickness, m", envelope.PropConductivity: "conductivity, W/(m K)", envelope.PropEmittance: "long-wave emittance",
	envelope.PropTransmittance: "long-wave transmittance", envelope.PropLight: "light", envelope.PropIndex: "refractive index",
	envelope.PropResistance: "resistance, m² K/W", envelope.PropU: "U, W/(m² K)", envelope.PropOpenness: "openness",
	envelope.PropLeakage: "leakage, m³/(s m²)", envelope.PropSaving: "saving", envelope.PropRetained: "long-wave retained",
}

func TestMaterialsCellByCell(t *testing.T) {
	var table []check.Line
	for _, m := range envelope.Materials() {
		for _, v := range m.Values {
			table = append(table, check.Line{Name: m.Name + ": " + propertyNames[v.Of], Cells: []float64{v.Low, v.Typical, v.High}})
		}
	}
	check.Table(t, "materials.csv", table)
}

func TestSoilsCellByCell(t *testing.T) {
	var table []check.Line
	for _, s := range envelope.Soils() {
		table = append(table, check.Line{Name: s.Name, Cells: []float64{s.Conductivity, s.ConductivityLow, s.ConductivityHigh, s.HeatCapacity}})
	}
	check.Table(t, "soils.csv", table)
}

func TestGasesCellByCell(t *testing.T) {
	var table []check.Line
	for _, g := range []envelope.Gas{envelope.AirFilling(), envelope.ArgonFilling()} {
		table = append(table, check.Line{Name: g.Name, Cells: []float64{g.Density, g.Viscosity, g.Conductivity, g.HeatCapacity}})
	}
	check.Table(t, "gases.csv", table)
}
