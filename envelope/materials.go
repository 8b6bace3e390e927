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
)

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

const (
	memory  = "from memory"
	en10077 = "EN ISO 10077-2:2003 list"
	en10456 = "EN ISO 10456:2007"
)

// Materials returns the table of cover and wall materials as a fresh slice;
// Soils returns that of soils. Values are typical; the user's own measured ones come first.
func Materials() []Material {
	v := func(p Property, low, typical, high float64, source string) Value {
		return Value{p, low, typical, high, source}
	}
	one := func(p Property, typical float64, source string) Value {
		return Value{p, typical, typical, typical, source}
	}
	return []Material{
		{"clear polyethylene film", KindFilm, []Value{
			v(PropThickness, 0.10e-3, 0.15e-3, 0.20e-3, memory), v(PropConductivity, 0.33, 0.33, 0.40, en10077),
			v(PropEmittance, 0.15, 0.28, 0.45, "1 - transmittance - reflectance 0.05 to 0.10"), v(PropTransmittance, 0.45, 0.65, 0.80, memory),
			v(PropLight, 0.85, 0.88, 0.92, memory), one(PropIndex, 1.515, memory)}},
		{"infrared-absorbing polyethylene film", KindFilm, []Value{
			v(PropThickness, 0.10e-3, 0.18e-3, 0.20e-3, memory), v(PropConductivity, 0.33, 0.33, 0.40, en10077),
			v(PropEmittance, 0.50, 0.68, 0.85, "1 - transmittance - reflectance 0.07"), v(PropTransmittance, 0.08, 0.25, 0.40, "0.08 and 0.35 measured by Geoola et al. 2011, Acta Hort. 893:367; typical from memory"),
			v(PropLight, 0.83, 0.87, 0.90, memory), one(PropIndex, 1.515, memory)}},
		{"EVA film", KindFilm, []Value{
			v(PropThickness, 0.10e-3, 0.15e-3, 0.20e-3, memory), v(PropTransmittance, 0.15, 0.30, 0.45, memory)}},
		{"PVC film", KindFilm, []Value{
			v(PropThickness, 0.10e-3, 0.10e-3, 0.20e-3, memory), v(PropTransmittance, 0.12, 0.25, 0.40, memory)}},
		{"ETFE film", KindFilm, []Value{
			v(PropThickness, 0.10e-3, 0.10e-3, 0.20e-3, memory), v(PropConductivity, 0.20, 0.24, 0.25, memory),
			v(PropEmittance, 0.45, 0.65, 0.80, memory), v(PropTransmittance, 0.15, 0.25, 0.45, memory),
			v(PropLight, 0.93, 0.94, 0.95, memory), one(PropIndex, 1.40, memory)}},
		{"soda-lime glass", KindGlass, []Value{
			v(PropThickness, 0.003, 0.004, 0.006, memory), v(PropConductivity, 1.0, 1.0, 1.05, "EN ISO 10456; 1.05 in CIBSE Guide A"),
			v(PropEmittance, 0.837, 0.84, 0.90, "EN 673"), v(PropTransmittance, 0, 0, 0.02, "EN 673 scope"),
			v(PropLight, 0.88, 0.90, 0.94, "agricultural extension slides, 88 to 94 % single"), one(PropIndex, 1.526, "Duffie and Beckman ch. 5")}},
		{"low-emittance coating on glass", KindGlass, []Value{v(PropEmittance, 0.03, 0.05, 0.20, memory)}},
		{"twin-wall polycarbonate, 6 mm", KindHollow, []Value{
			one(PropThickness, 0.006, "trade size"), v(PropConductivity, 0.20, 0.20, 0.21, en10077),
			v(PropTransmittance, 0.01, 0.05, 0.10, "skin of 0.5 mm, estimate"), v(PropEmittance, 0.85, 0.89, 0.92, memory),
			v(PropLight, 0.78, 0.80, 0.82, "trade data; extension.org 78 to 82 %"), one(PropIndex, 1.585, memory),
			one(PropU, 3.52, "trade data, ASTM C976: 0.62 Btu/(h ft² °F)")}},
		{"twin-wall polycarbonate, 8 mm", KindHollow, []Value{one(PropThickness, 0.008, "trade size"), one(PropU, 3.41, "trade data, ASTM C976: 0.60 Btu/(h ft² °F)")}},
		{"twin-wall polycarbonate, 10 mm", KindHollow, []Value{one(PropThickness, 0.010, "trade size"), one(PropU, 3.18, "trade data, ASTM C976: 0.56 Btu/(h ft² °F)")}},
		{"triple-wall polycarbonate, 16 mm", KindHollow, []Value{one(PropThickness, 0.016, "trade size"), v(PropLight, 0.59, 0.72, 0.74, "trade data"),
			one(PropU, 2.38, "trade data, ASTM C976: 0.42 Btu/(h ft² °F)")}},
		{"acrylic sheet", KindHollow, []Value{v(PropConductivity, 0.18, 0.18, 0.20, en10077), v(PropEmittance, 0.90, 0.92, 0.94, memory),
			v(PropTransmittance, 0, 0, 0.02, memory), one(PropIndex, 1.49, memory)}},
		{"glass-reinforced polyester", KindHollow, []Value{one(PropConductivity, 0.40, en10077)}},
		{"aluminised screen, coated face", KindScreen, []Value{v(PropEmittance, 0.10, 0.30, 0.60, memory)}},
		{"concrete, 2200 kg/m³", KindWall, []Value{one(PropConductivity, 1.65, en10456)}},
		{"concrete, 2400 kg/m³", KindWall, []Value{one(PropConductivity, 2.00, en10456)}},
		{"reinforced concrete, 1 % steel", KindWall, []Value{one(PropConductivity, 2.3, en10456)}},
		{"hollow concrete block, 200 mm", KindWall, []Value{one(PropThickness, 0.2, "trade size"), v(PropResistance, 0.10, 0.18, 0.25, memory)}},
		{"softwood, 500 kg/m³", KindWall, []Value{v(PropConductivity, 0.12, 0.13, 0.13, en10077)}},
		{"hardwood, 700 kg/m³", KindWall, []Value{one(PropConductivity, 0.18, en10077)}},
		{"steel", KindWall, []Value{v(PropConductivity, 45, 50, 50, en10077)}},
		{"aluminium", KindWall, []Value{v(PropConductivity, 160, 160, 230, "EN ISO 10077-2:2003 list; 230 in CIBSE Guide A")}},
		{"extruded polystyrene", KindInsulation, []Value{v(PropConductivity, 0.029, 0.034, 0.038, memory)}},
		{"expanded polystyrene", KindInsulation, []Value{v(PropConductivity, 0.031, 0.037, 0.040, "open building catalogues 0.031 and 0.037")}},
	}
}
