package envelope

// Property names what a table value measures.
type Property uint8

// Properties of the material table.
const (
	PropThickness     Property = iota // m
	PropConductivity                  // W/(m K)
	PropEmittance                     // fraction, long-wave
	PropTransmittance                 // fraction, long-wave
	PropLight                         // fraction, light (PAR) at normal incidence, whole product
	PropIndex                         // ratio, refractive index
	PropResistance                    // m² K/W
	PropU                             // W/(m² K), as declared
	PropOpenness                      // fraction of the area that is open
	PropLeakage                       // m³/(s m²), air exchanged through it where it is drawn
	PropSaving                        // fraction of the loss that it saves when drawn below a single cover, as measured
	PropRetained                      // fraction of the house's long-wave held back at night, an index measured on films
)

// Unit returns the unit of the property, as Value's fields have it.
func (p Property) Unit() string {
	if int(p) >= len(propertyUnits) {
		return ""
	}
	return propertyUnits[p]
}

var propertyUnits = [...]string{
	PropThickness: "m", PropConductivity: "W/(m K)", PropEmittance: "fraction", PropTransmittance: "fraction",
	PropLight: "fraction", PropIndex: "ratio", PropResistance: "m² K/W", PropU: "W/(m² K)",
	PropOpenness: "fraction", PropLeakage: "m³/(s m²)", PropSaving: "fraction", PropRetained: "fraction",
}

// Kind sorts the materials.
type Kind uint8

// Kinds of material.
const (
	KindFilm Kind = iota
	KindGlass
	KindHollow
	KindScreen
	KindWall
	KindInsulation
)

// Value is a typical value with its range in the unit of its Property. Low
// and High equal Typical where no range is known.
type Value struct {
	Of      Property // what is measured
	Low     float64  // unit of Of
	Typical float64  // unit of Of
	High    float64  // unit of Of
	Source  string   // source, or "from memory"
}

// Material is a row of the table.
type Material struct {
	Name   string  // what it is, no brand
	Kind   Kind    // sort
	Values []Value // known properties
}

// Get returns the value of a property.
func (m Material) Get(p Property) (Value, bool) {
	for _, v := range m.Values {
		if v.Of == p {
			return v, true
		}
	}
	return Value{}, false
}
