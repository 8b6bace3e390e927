package envelope

// Value is a typical value with its range. Low and High equal Typical where no
// range is known; without a Source nothing is known.
type Value struct {
	Low     float64 // unit of the property
	Typical float64 // unit of the property
	High    float64 // unit of the property
	Source  string  // source, or "from memory"
}

// Known reports whether the table has the value.
func (v Value) Known() bool { return v.Source != "" }

// Material is a row of the table.
type Material struct {
	Name          string // what it is, no brand
	Kind          string // film, glass, hollow sheet, screen, wall or insulation
	Thickness     Value  // m
	Conductivity  Value  // W/(m K)
	Emittance     Value  // fraction, long-wave
	Transmittance Value  // fraction, long-wave
	Light         Value  // fraction, light (PAR) at normal incidence, whole product
	Index         Value  // ratio, refractive index
	Resistance    Value  // m² K/W
	U             Value  // W/(m² K), as declared
	Openness      Value  // fraction of the area that is open
	Leakage       Value  // m³/(s m²), air exchanged through it where it is drawn
	Saving        Value  // fraction of the loss that it saves when drawn below a single cover, as measured
	Retained      Value  // fraction of the house's long-wave held back at night, an index measured on films
}

// FindMaterial returns the row of the name, as Materials has it, and whether
// there is one.
func FindMaterial(name string) (Material, bool) {
	for _, m := range Materials() {
		if m.Name == name {
			return m, true
		}
	}
	return Material{}, false
}
