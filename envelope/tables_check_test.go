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

func TestLayersCellByCell(t *testing.T) {
	var table []check.Line
	for _, name := range []string{"clear film", "infrared film", "ETFE film", "EVA film", "glass", "polycarbonate wall", "aluminised screen", "open aluminised screen", "clear screen"} {
		l, found := envelope.FindLayer(name)
		if !found {
			t.Errorf("no layer %s", name)
		}
		table = append(table, check.Line{Name: l.Name, Cells: []float64{l.EmittanceOut, l.EmittanceIn, l.Transmittance, l.Thickness, l.Conductivity, l.Openness, l.Leakage}})
	}
	check.Table(t, "layers.csv", table)
}

// The ready-made layers are typical ones of the table of materials.
func TestLayersAreTypical(t *testing.T) {
	for name, of := range map[string]string{"clear film": "clear polyethylene film", "infrared film": "infrared-absorbing polyethylene film", "ETFE film": "ETFE film",
		"EVA film": "EVA film", "glass": "soda-lime glass", "polycarbonate wall": "twin-wall polycarbonate, 6 mm", "aluminised screen": "aluminised screen, closed strips",
		"open aluminised screen": "aluminised screen, open strips", "clear screen": "clear woven screen"} {
		l, found := envelope.FindLayer(name)
		m, known := envelope.FindMaterial(of)
		if !found || !known {
			t.Fatal(name, of)
		}
		if l.EmittanceOut != m.Emittance.Typical || l.Transmittance != m.Transmittance.Typical || l.Conductivity != m.Conductivity.Typical ||
			l.Leakage != m.Leakage.Typical || l.Openness != m.Openness.Typical || name != "polycarbonate wall" && l.Thickness != m.Thickness.Typical {
			t.Errorf("%+v is no typical %s: %+v", l, of, m)
		}
	}
}
