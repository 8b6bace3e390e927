package envelope

// Sources of the table that stand more than once.
const (
	memory   = "from memory"
	en10077  = "EN ISO 10077-2:2003 list"
	en10456  = "EN ISO 10456:2007"
	hanson   = "Hanson 1963, J. Applied Meteorology 2:793"
	mihara   = "Mihara and Hayashi 1979, J. Agric. Meteorol. 35:13, below glass at 1 m/s"
	geoola09 = "Geoola and others 2009, an untight screen"
	geoola11 = "Geoola and others 2011, Acta Hort. 893:367, 50 to 60 %, sealed"
	leftOver = "1 - transmittance - reflectance 0.07"
	size     = "trade size"
	c976     = "trade data, ASTM C976: "
)

func span(p Property, low, typical, high float64, source string) Value {
	return Value{p, low, typical, high, source}
}

func single(p Property, typical float64, source string) Value {
	return Value{p, typical, typical, typical, source}
}

// Materials returns the table of cover and wall materials as a fresh slice;
// Soils returns that of soils. Values are typical; the user's own measured
// ones come first, and NewCover takes any layer.
func Materials() []Material {
	var all []Material
	for _, part := range [][]Material{films(), sheets(), screens(), walls(), insulations()} {
		all = append(all, part...)
	}
	return all
}

func films() []Material {
	return []Material{
		{"clear polyethylene film", KindFilm, []Value{
			span(PropThickness, 0.10e-3, 0.15e-3, 0.20e-3, memory), span(PropConductivity, 0.33, 0.33, 0.40, en10077),
			span(PropEmittance, 0.15, 0.28, 0.45, leftOver), span(PropTransmittance, 0.45, 0.65, 0.80, memory),
			span(PropLight, 0.85, 0.88, 0.92, memory), single(PropIndex, 1.515, memory), single(PropRetained, 0.26, hanson)}},
		{"infrared-absorbing polyethylene film", KindFilm, []Value{
			span(PropThickness, 0.10e-3, 0.18e-3, 0.20e-3, memory), span(PropConductivity, 0.33, 0.33, 0.40, en10077),
			span(PropEmittance, 0.50, 0.68, 0.85, leftOver), span(PropTransmittance, 0.08, 0.25, 0.40, "0.08 and 0.35 measured by Geoola and others 2011, Acta Hort. 893:367; typical from memory"),
			span(PropLight, 0.83, 0.87, 0.90, memory), single(PropIndex, 1.515, memory)}},
		{"EVA film", KindFilm, []Value{
			span(PropThickness, 0.10e-3, 0.18e-3, 0.20e-3, memory), span(PropConductivity, 0.33, 0.34, 0.35, memory),
			span(PropEmittance, 0.45, 0.63, 0.80, leftOver), span(PropTransmittance, 0.15, 0.30, 0.45, memory),
			span(PropLight, 0.88, 0.90, 0.92, memory), single(PropIndex, 1.49, memory)}},
		{"PVC film", KindFilm, []Value{
			span(PropThickness, 0.10e-3, 0.10e-3, 0.20e-3, memory), span(PropConductivity, 0.14, 0.17, 0.19, memory),
			span(PropEmittance, 0.50, 0.68, 0.82, leftOver), span(PropTransmittance, 0.12, 0.25, 0.40, memory),
			span(PropLight, 0.87, 0.90, 0.91, memory), single(PropIndex, 1.54, memory)}},
		{"ETFE film", KindFilm, []Value{
			span(PropThickness, 0.10e-3, 0.10e-3, 0.20e-3, memory), span(PropConductivity, 0.20, 0.24, 0.25, memory),
			span(PropEmittance, 0.45, 0.65, 0.80, memory), span(PropTransmittance, 0.15, 0.25, 0.45, memory),
			span(PropLight, 0.93, 0.94, 0.95, memory), single(PropIndex, 1.40, memory)}},
		{"PVF film", KindFilm, []Value{span(PropThickness, 0.05e-3, 0.10e-3, 0.10e-3, memory), single(PropRetained, 0.90, hanson), single(PropIndex, 1.46, memory)}},
		{"polyester film", KindFilm, []Value{span(PropThickness, 0.05e-3, 0.10e-3, 0.18e-3, memory), single(PropRetained, 0.87, hanson), single(PropIndex, 1.64, memory)}},
		{"polystyrene film", KindFilm, []Value{single(PropRetained, 0.63, hanson), single(PropIndex, 1.59, memory)}},
		{"water on the inner face", KindFilm, []Value{span(PropEmittance, 0.95, 0.95, 0.96, memory), single(PropTransmittance, 0, "opaque to long-wave"), single(PropIndex, 1.33, memory)}},
	}
}

func sheets() []Material {
	return []Material{
		{"soda-lime glass", KindGlass, []Value{
			span(PropThickness, 0.003, 0.004, 0.006, memory), span(PropConductivity, 1.0, 1.0, 1.05, "EN ISO 10456; 1.05 in CIBSE Guide A"),
			span(PropEmittance, 0.837, 0.84, 0.90, "EN 673"), span(PropTransmittance, 0, 0, 0.02, "EN 673 scope"),
			span(PropLight, 0.88, 0.90, 0.94, "agricultural extension slides, 88 to 94 % single"), single(PropIndex, 1.526, "Duffie and Beckman ch. 5"),
			single(PropRetained, 0.93, hanson)}},
		{"low-emittance coating on glass", KindGlass, []Value{span(PropEmittance, 0.03, 0.05, 0.20, memory)}},
		{"twin-wall polycarbonate, 4 mm", KindHollow, []Value{single(PropThickness, 0.004, size), single(PropLight, 0.82, "trade data"), single(PropU, 4.09, c976+"0.72 Btu/(h ft² °F)")}},
		{"twin-wall polycarbonate, 6 mm", KindHollow, []Value{
			single(PropThickness, 0.006, size), span(PropConductivity, 0.20, 0.20, 0.21, en10077),
			span(PropTransmittance, 0.01, 0.05, 0.10, "skin of 0.5 mm, estimate"), span(PropEmittance, 0.85, 0.89, 0.92, memory),
			span(PropLight, 0.78, 0.80, 0.82, "trade data; extension.org 78 to 82 %"), single(PropIndex, 1.585, memory),
			single(PropU, 3.52, c976+"0.62 Btu/(h ft² °F)")}},
		{"twin-wall polycarbonate, 8 mm", KindHollow, []Value{single(PropThickness, 0.008, size), single(PropLight, 0.80, "trade data"), single(PropU, 3.41, c976+"0.60 Btu/(h ft² °F)")}},
		{"twin-wall polycarbonate, 10 mm", KindHollow, []Value{single(PropThickness, 0.010, size), single(PropLight, 0.80, "trade data"), single(PropU, 3.18, c976+"0.56 Btu/(h ft² °F)")}},
		{"triple-wall polycarbonate, 16 mm", KindHollow, []Value{single(PropThickness, 0.016, size), span(PropLight, 0.59, 0.72, 0.74, "trade data; 0.59 with crossed webs"),
			single(PropU, 2.38, c976+"0.42 Btu/(h ft² °F)")}},
		{"acrylic sheet", KindHollow, []Value{span(PropConductivity, 0.18, 0.18, 0.20, en10077), span(PropEmittance, 0.90, 0.92, 0.94, memory),
			span(PropTransmittance, 0, 0, 0.02, memory), single(PropIndex, 1.49, memory)}},
		{"twin-wall acrylic, 16 mm", KindHollow, []Value{single(PropThickness, 0.016, size), span(PropLight, 0.83, 0.86, 0.91, memory), span(PropU, 2.5, 2.8, 3.0, memory)}},
		{"glass-reinforced polyester", KindHollow, []Value{span(PropThickness, 0.8e-3, 1.0e-3, 1.5e-3, memory), single(PropConductivity, 0.40, en10077), span(PropLight, 0.80, 0.86, 0.90, memory)}},
	}
}

func screens() []Material {
	return []Material{
		{"aluminised screen, closed strips", KindScreen, []Value{
			span(PropEmittance, 0.10, 0.30, 0.60, memory), span(PropTransmittance, 0, 0.05, 0.20, memory), span(PropThickness, 0.1e-3, 0.2e-3, 0.3e-3, memory),
			span(PropConductivity, 0.15, 0.20, 0.40, memory), single(PropOpenness, 0, "closed weave"), span(PropLeakage, 0, 0.0005, 0.002, memory), span(PropSaving, 0.50, 0.55, 0.60, geoola11)}},
		{"aluminised screen, open strips", KindScreen, []Value{
			span(PropEmittance, 0.10, 0.30, 0.60, memory), span(PropTransmittance, 0, 0.05, 0.20, memory), span(PropThickness, 0.1e-3, 0.2e-3, 0.3e-3, memory),
			span(PropConductivity, 0.15, 0.20, 0.40, memory), span(PropOpenness, 0.20, 0.40, 0.60, memory), span(PropLeakage, 0.002, 0.01, 0.03, memory)}},
		{"clear woven screen", KindScreen, []Value{
			span(PropEmittance, 0.40, 0.55, 0.70, memory), span(PropTransmittance, 0.20, 0.35, 0.50, memory), span(PropThickness, 0.1e-3, 0.2e-3, 0.3e-3, memory),
			span(PropConductivity, 0.15, 0.20, 0.30, memory), single(PropOpenness, 0, "closed weave"), span(PropLeakage, 0, 0.001, 0.003, memory), span(PropLight, 0.75, 0.83, 0.88, memory)}},
		{"thermal screen, untight", KindScreen, []Value{single(PropSaving, 0.30, geoola09)}},
		{"polyethylene curtain", KindScreen, []Value{single(PropSaving, 0.33, mihara)}},
		{"PVC curtain", KindScreen, []Value{single(PropSaving, 0.37, mihara)}},
	}
}

func walls() []Material {
	return []Material{
		{"concrete, 1800 kg/m³", KindWall, []Value{single(PropConductivity, 1.15, en10456)}},
		{"concrete, 2000 kg/m³", KindWall, []Value{single(PropConductivity, 1.35, en10456)}},
		{"concrete, 2200 kg/m³", KindWall, []Value{single(PropConductivity, 1.65, en10456)}},
		{"concrete, 2400 kg/m³", KindWall, []Value{single(PropConductivity, 2.00, en10456)}},
		{"reinforced concrete, 1 % steel", KindWall, []Value{single(PropConductivity, 2.3, en10456)}},
		{"reinforced concrete, 2 % steel", KindWall, []Value{single(PropConductivity, 2.5, en10456)}},
		{"hollow concrete block, 200 mm", KindWall, []Value{single(PropThickness, 0.2, size), span(PropResistance, 0.10, 0.18, 0.25, memory)}},
		{"brick", KindWall, []Value{span(PropConductivity, 0.50, 0.77, 1.10, memory)}},
		{"softwood, 500 kg/m³", KindWall, []Value{span(PropConductivity, 0.12, 0.13, 0.13, en10077)}},
		{"hardwood, 700 kg/m³", KindWall, []Value{single(PropConductivity, 0.18, en10077)}},
		{"plywood", KindWall, []Value{span(PropConductivity, 0.09, 0.13, 0.17, memory)}},
		{"steel", KindWall, []Value{span(PropConductivity, 45, 50, 50, en10077+"; 45 in CIBSE Guide A")}},
		{"aluminium", KindWall, []Value{span(PropConductivity, 160, 160, 230, en10077+"; 230 in CIBSE Guide A")}},
	}
}

func insulations() []Material {
	return []Material{
		{"extruded polystyrene", KindInsulation, []Value{span(PropConductivity, 0.029, 0.034, 0.038, "0.0288 dry in an open slab test; typical from memory")}},
		{"expanded polystyrene", KindInsulation, []Value{span(PropConductivity, 0.031, 0.037, 0.040, "open building catalogues 0.031 and 0.037")}},
		{"mineral wool", KindInsulation, []Value{span(PropConductivity, 0.030, 0.035, 0.045, memory)}},
		{"rigid polyurethane foam", KindInsulation, []Value{span(PropConductivity, 0.022, 0.026, 0.030, memory)}},
		{"cellular glass", KindInsulation, []Value{span(PropConductivity, 0.038, 0.045, 0.055, memory)}},
	}
}
