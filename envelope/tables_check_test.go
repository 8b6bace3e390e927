package envelope_test

import (
	"testing"

	"cloche.example/envelope"
	"cloche.example/internal/check"
)

func TestMaterialsCellByCell(t *testing.T) {
	var table []check.Line
	for _, m := range envelope.Materials() {
		for _, p := range []struct {
			name string
			v    envelope.Value
		}{
			{"thickness, m", m.Thickness}, {"conductivity, W/(m K)", m.Conductivity}, {"long-wave emittance", m.Emittance},
			{"long-wave transmittance", m.Transmittance}, {"light", m.Light}, {"refractive index", m.Index},
			{"resistance, m² K/W", m.Resistance}, {"U, W/(m² K)", m.U}, {"openness", m.Openness},
			{"leakage, m³/(s m²)", m.Leakage}, {"saving", m.Saving}, {"long-wave retained", m.Retained},
		} {
			if p.v.Known() {
				table = append(table, check.Line{Name: m.Name + ": " + p.name, Cells: []float64{p.v.Low, p.v.Typical, p.v.High}})
			}
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

func TestLeakageClassesCellByCell(t *testing.T) {
	var table []check.Line
	for _, l := range envelope.LeakageClasses() {
		table = append(table, check.Line{Name: l.Name, Cells: []float64{l.Low, l.Typical, l.High}})
	}
	check.Table(t, "leakage.csv", table)
}

func TestCoversCellByCell(t *testing.T) {
	var table []check.Line
	for _, c := range envelope.Covers() {
		table = append(table, check.Line{Name: c.Name, Cells: []float64{c.Light}})
	}
	check.Table(t, "covers.csv", table)
}
