package envelope

import (
	"reflect"
	"strings"
	"testing"

	"cloche.example/internal/domain"
	"github.com/stretchr/testify/require"
)

// Every value has a source, a unit and a range that holds its typical value
// and makes sense; fractions of one material leave room for each other.
func TestMaterials(t *testing.T) {
	names := map[string]bool{}
	for _, m := range Materials() {
		require.NotEmpty(t, m.Kind, m.Name)
		require.False(t, names[m.Name], m.Name)
		names[m.Name] = true
		known := 0
		for _, c := range []struct {
			v Value
			r domain.Range
		}{
			{m.Thickness, thicknessRange}, {m.Conductivity, conductivityRange}, {m.Emittance, fractionRange}, {m.Transmittance, fractionRange},
			{m.Light, fractionRange}, {m.Index, indexRange}, {m.Resistance, resistanceLimits}, {m.U, uRange},
			{m.Openness, fractionRange}, {m.Leakage, layerLeakageRange}, {m.Saving, fractionRange}, {m.Retained, fractionRange},
		} {
			if !c.v.Known() {
				require.Zero(t, c.v, m.Name)
				continue
			}
			known++
			require.LessOrEqual(t, c.v.Low, c.v.Typical, m.Name)
			require.LessOrEqual(t, c.v.Typical, c.v.High, m.Name)
			require.NotEmpty(t, strings.TrimSpace(c.v.Source), m.Name)
			require.True(t, c.r.Contains(c.v.Low) && c.r.Contains(c.v.High), "%s: %+v", m.Name, c.v)
		}
		require.Positive(t, known, m.Name)
		if m.Emittance.Known() && m.Transmittance.Known() {
			require.LessOrEqual(t, m.Emittance.Typical+m.Transmittance.Typical, 1.0, m.Name)
		}
	}
}

// The ready-made layers are the typical values of the table.
func TestLayersAreOfTheTable(t *testing.T) {
	table := map[string]Material{}
	for _, m := range Materials() {
		table[m.Name] = m
	}
	for name, l := range map[string]Layer{"clear polyethylene film": clearFilm, "infrared-absorbing polyethylene film": infraredFilm,
		"ETFE film": fluoropolymerFilm, "EVA film": evaFilm, "soda-lime glass": glass4,
		"aluminised screen, closed strips": aluminisedScreen, "aluminised screen, open strips": openScreen, "clear woven screen": clearScreen} {
		m := table[name]
		require.Equal(t, []float64{l.Thickness, l.Conductivity, l.EmittanceOut, l.Transmittance, l.Openness, l.Leakage},
			[]float64{m.Thickness.Typical, m.Conductivity.Typical, m.Emittance.Typical, m.Transmittance.Typical, m.Openness.Typical, m.Leakage.Typical}, name)
		require.True(t, m.Thickness.Known() && m.Conductivity.Known() && m.Emittance.Known() && m.Transmittance.Known(), name)
	}
	sheet := table["twin-wall polycarbonate, 6 mm"]
	require.Equal(t, []float64{polycarbonateSkin.Conductivity, polycarbonateSkin.EmittanceIn, polycarbonateSkin.Transmittance},
		[]float64{sheet.Conductivity.Typical, sheet.Emittance.Typical, sheet.Transmittance.Typical})
	water, ok := FindMaterial("water on the inner face")
	require.True(t, ok)
	require.Equal(t, wetEmittance, water.Emittance.Typical)
	require.False(t, table["steel"].Light.Known())
	_, ok = FindMaterial("moonstone")
	require.False(t, ok)
	for _, c := range Covers() {
		require.Positive(t, c.Cover.count(), c.Name)
		require.True(t, c.Light > 0 && c.Light <= 1)
	}
	require.InDelta(t, 0.02*0.20/0.005, TwinWall6().Gaps()[0].Bridge, 1e-12)
}

// Every ready-made screen saves below every single cover, the closed bright
// one most.
func TestScreensSave(t *testing.T) {
	for _, cover := range []Cover{SingleFilm(), SingleInfraredFilm(), SingleGlass()} {
		bare := solved(t, cover, night()).FluxIn
		var with []float64
		for _, s := range []Layer{aluminisedScreen, openScreen, clearScreen} {
			c, err := WithScreen(cover, s)
			require.NoError(t, err)
			with = append(with, solved(t, c, night()).FluxIn)
			require.Less(t, with[len(with)-1], bare, s.Name)
		}
		require.Less(t, with[0], with[1])
		require.Less(t, with[0], with[2])
	}
}

// Values that were read in a source, as it prints them.
func TestPublishedMaterials(t *testing.T) {
	table := map[string]Material{}
	for _, m := range Materials() {
		table[m.Name] = m
	}
	for _, r := range []struct {
		name               string
		of                 string
		low, typical, high float64
	}{
		// EN ISO 10077-2:2003 and EN ISO 10456:2007, lists of conductivities; CIBSE Guide A for the other end.
		{"clear polyethylene film", "Conductivity", 0.33, 0.33, 0.40},
		{"infrared-absorbing polyethylene film", "Conductivity", 0.33, 0.33, 0.40},
		{"soda-lime glass", "Conductivity", 1.0, 1.0, 1.05},
		{"twin-wall polycarbonate, 6 mm", "Conductivity", 0.20, 0.20, 0.21},
		{"acrylic sheet", "Conductivity", 0.18, 0.18, 0.20},
		{"glass-reinforced polyester", "Conductivity", 0.40, 0.40, 0.40},
		{"concrete, 1800 kg/m³", "Conductivity", 1.15, 1.15, 1.15},
		{"concrete, 2000 kg/m³", "Conductivity", 1.35, 1.35, 1.35},
		{"concrete, 2200 kg/m³", "Conductivity", 1.65, 1.65, 1.65},
		{"concrete, 2400 kg/m³", "Conductivity", 2.00, 2.00, 2.00},
		{"reinforced concrete, 1 % steel", "Conductivity", 2.3, 2.3, 2.3},
		{"reinforced concrete, 2 % steel", "Conductivity", 2.5, 2.5, 2.5},
		{"softwood, 500 kg/m³", "Conductivity", 0.12, 0.13, 0.13},
		{"hardwood, 700 kg/m³", "Conductivity", 0.18, 0.18, 0.18},
		{"steel", "Conductivity", 45, 50, 50},
		{"aluminium", "Conductivity", 160, 160, 230},
		{"expanded polystyrene", "Conductivity", 0.031, 0.037, 0.040},
		{"soda-lime glass", "Emittance", 0.837, 0.84, 0.90}, // EN 673; an open engine 0.84
		{"soda-lime glass", "Index", 1.526, 1.526, 1.526},
		{"soda-lime glass", "Light", 0.88, 0.90, 0.94},
		{"ETFE film", "Light", 0.93, 0.94, 0.95},
		{"ETFE film", "Index", 1.40, 1.40, 1.40},
		// Hanson 1963, index of the long-wave held back at night.
		{"clear polyethylene film", "Retained", 0.26, 0.26, 0.26},
		{"PVF film", "Retained", 0.90, 0.90, 0.90},
		{"polyester film", "Retained", 0.87, 0.87, 0.87},
		{"polystyrene film", "Retained", 0.63, 0.63, 0.63},
		{"soda-lime glass", "Retained", 0.93, 0.93, 0.93},
		// Trade data sheet of hollow sheets.
		{"twin-wall polycarbonate, 4 mm", "U", 0.72 * btu, 0.72 * btu, 0.72 * btu},
		{"twin-wall polycarbonate, 6 mm", "U", 0.62 * btu, 0.62 * btu, 0.62 * btu},
		{"twin-wall polycarbonate, 8 mm", "U", 0.60 * btu, 0.60 * btu, 0.60 * btu},
		{"twin-wall polycarbonate, 10 mm", "U", 0.56 * btu, 0.56 * btu, 0.56 * btu},
		{"triple-wall polycarbonate, 16 mm", "U", 0.42 * btu, 0.42 * btu, 0.42 * btu},
		{"twin-wall polycarbonate, 4 mm", "Light", 0.82, 0.82, 0.82},
		{"twin-wall polycarbonate, 6 mm", "Light", 0.78, 0.80, 0.82},
		{"twin-wall polycarbonate, 8 mm", "Light", 0.80, 0.80, 0.80},
		{"twin-wall polycarbonate, 10 mm", "Light", 0.80, 0.80, 0.80},
		{"triple-wall polycarbonate, 16 mm", "Light", 0.59, 0.72, 0.74},
		// Measured savings of screens.
		{"aluminised screen, closed strips", "Saving", 0.50, 0.55, 0.60},
		{"thermal screen, untight", "Saving", 0.30, 0.30, 0.30},
		{"polyethylene curtain", "Saving", 0.33, 0.33, 0.33},
		{"PVC curtain", "Saving", 0.37, 0.37, 0.37},
	} {
		v := reflect.ValueOf(table[r.name]).FieldByName(r.of).Interface().(Value)
		require.True(t, v.Known(), r.name)
		require.InEpsilon(t, r.low, v.Low, 2.2e-3, r.name)
		require.InEpsilon(t, r.typical, v.Typical, 2.2e-3, r.name)
		require.InEpsilon(t, r.high, v.High, 2.2e-3, r.name)
	}
	require.Equal(t, 0.08, table["infrared-absorbing polyethylene film"].Transmittance.Low)
}

// The ready-made covers have the spaces, ribs and light that they state.
func TestCoversAreAsStated(t *testing.T) {
	light := func(name string) float64 {
		m, _ := FindMaterial(name)
		require.True(t, m.Light.Known(), name)
		return m.Light.Typical
	}
	film, infrared, glass := light("clear polyethylene film"), light("infrared-absorbing polyethylene film"), light("soda-lime glass")
	rib := func(width float64) float64 { return 0.02 * 0.20 / width }
	want := []struct {
		gaps  []Gap
		light float64
		off   float64 // for reflections between two sheets
	}{
		{nil, film, 0}, {nil, infrared, 0},
		{[]Gap{{Width: 0.1}}, film * film, 0.007}, {[]Gap{{Width: 0.1}}, film * infrared, 0.007},
		{nil, glass, 0}, {[]Gap{{Width: 0.012}}, glass * glass, 0.007},
		{[]Gap{{Width: 0.005, Bridge: rib(0.005)}}, light("twin-wall polycarbonate, 6 mm"), 0},
		{[]Gap{{Width: 0.009, Bridge: rib(0.009)}}, light("twin-wall polycarbonate, 10 mm"), 0},
		{[]Gap{{Width: 0.00725, Bridge: rib(0.00725)}, {Width: 0.00725, Bridge: rib(0.00725)}}, light("triple-wall polycarbonate, 16 mm"), 0},
	}
	covers := Covers()
	require.Len(t, covers, len(want))
	for i, w := range want {
		c := covers[i]
		require.InDelta(t, w.light, c.Light, w.off+1e-12, c.Name)
		require.Equal(t, len(w.gaps)+1, c.Cover.count(), c.Name)
		for j, g := range w.gaps {
			require.InDelta(t, g.Width, c.Cover.gaps()[j].Width, 1e-12, c.Name)
			require.InDelta(t, g.Bridge, c.Cover.gaps()[j].Bridge, 1e-12, c.Name)
		}
	}
	// Walls of a sheet and its spaces make up its trade size: 6, 10 and 16 mm.
	for i, size := range map[int]float64{6: 0.006, 7: 0.010, 8: 0.016} {
		c := covers[i].Cover
		sum := 0.0
		for j := range c.count() {
			sum += c.layers()[j].Thickness
			if j > 0 {
				sum += c.gaps()[j-1].Width
			}
		}
		require.InDelta(t, size, sum, 1e-12)
	}
	screened, err := WithScreen(SingleGlass(), aluminisedScreen)
	require.NoError(t, err)
	require.Equal(t, 0.2, screened.gaps()[0].Width)
	for _, s := range []Layer{aluminisedScreen, openScreen} {
		require.Equal(t, 0.6, s.EmittanceIn) // the dull face, from memory
	}
	for _, l := range []Layer{clearFilm, infraredFilm, fluoropolymerFilm, evaFilm, glass4, polycarbonateSkin, clearScreen} {
		require.Equal(t, l.EmittanceOut, l.EmittanceIn, l.Name)
	}
}
