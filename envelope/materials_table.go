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

func span(low, typical, high float64, source string) Value {
	return Value{low, typical, high, source}
}

func single(typical float64, source string) Value {
	return Value{typical, typical, typical, source}
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
		{Name: "clear polyethylene film", Kind: "film", Thickness: span(0.10e-3, 0.15e-3, 0.20e-3, memory), Conductivity: span(0.33, 0.33, 0.40, en10077),
			Emittance: span(0.15, 0.28, 0.45, leftOver), Transmittance: span(0.45, 0.65, 0.80, memory),
			Light: span(0.85, 0.88, 0.92, memory), Index: single(1.515, memory), Retained: single(0.26, hanson)},
		{Name: "infrared-absorbing polyethylene film", Kind: "film", Thickness: span(0.10e-3, 0.18e-3, 0.20e-3, memory), Conductivity: span(0.33, 0.33, 0.40, en10077),
			Emittance: span(0.50, 0.68, 0.85, leftOver), Transmittance: span(0.08, 0.25, 0.40, "0.08 and 0.35 measured by Geoola and others 2011, Acta Hort. 893:367; typical from memory"),
			Light: span(0.83, 0.87, 0.90, memory), Index: single(1.515, memory)},
		{Name: "EVA film", Kind: "film", Thickness: span(0.10e-3, 0.18e-3, 0.20e-3, memory), Conductivity: span(0.33, 0.34, 0.35, memory),
			Emittance: span(0.45, 0.63, 0.80, leftOver), Transmittance: span(0.15, 0.30, 0.45, memory),
			Light: span(0.88, 0.90, 0.92, memory), Index: single(1.49, memory)},
		{Name: "PVC film", Kind: "film", Thickness: span(0.10e-3, 0.10e-3, 0.20e-3, memory), Conductivity: span(0.14, 0.17, 0.19, memory),
			Emittance: span(0.50, 0.68, 0.82, leftOver), Transmittance: span(0.12, 0.25, 0.40, memory),
			Light: span(0.87, 0.90, 0.91, memory), Index: single(1.54, memory)},
		{Name: "ETFE film", Kind: "film", Thickness: span(0.10e-3, 0.10e-3, 0.20e-3, memory), Conductivity: span(0.20, 0.24, 0.25, memory),
			Emittance: span(0.45, 0.65, 0.80, memory), Transmittance: span(0.15, 0.25, 0.45, memory),
			Light: span(0.93, 0.94, 0.95, memory), Index: single(1.40, memory)},
		{Name: "PVF film", Kind: "film", Thickness: span(0.05e-3, 0.10e-3, 0.10e-3, memory), Retained: single(0.90, hanson), Index: single(1.46, memory)},
		{Name: "polyester film", Kind: "film", Thickness: span(0.05e-3, 0.10e-3, 0.18e-3, memory), Retained: single(0.87, hanson), Index: single(1.64, memory)},
		{Name: "polystyrene film", Kind: "film", Retained: single(0.63, hanson), Index: single(1.59, memory)},
		{Name: "water on the inner face", Kind: "film", Emittance: span(0.95, 0.95, 0.96, memory), Transmittance: single(0, "opaque to long-wave"), Index: single(1.33, memory)},
	}
}

func sheets() []Material {
	return []Material{
		{Name: "soda-lime glass", Kind: "glass", Thickness: span(0.003, 0.004, 0.006, memory), Conductivity: span(1.0, 1.0, 1.05, "EN ISO 10456; 1.05 in CIBSE Guide A"),
			Emittance: span(0.837, 0.84, 0.90, "EN 673"), Transmittance: span(0, 0, 0.02, "EN 673 scope"),
			Light: span(0.88, 0.90, 0.94, "agricultural extension slides, 88 to 94 % single"), Index: single(1.526, "Duffie and Beckman ch. 5"),
			Retained: single(0.93, hanson)},
		{Name: "low-emittance coating on glass", Kind: "glass", Emittance: span(0.03, 0.05, 0.20, memory)},
		{Name: "twin-wall polycarbonate, 4 mm", Kind: "hollow sheet", Thickness: single(0.004, size), Light: single(0.82, "trade data"), U: single(4.09, c976+"0.72 Btu/(h ft² °F)")},
		{Name: "twin-wall polycarbonate, 6 mm", Kind: "hollow sheet", Thickness: single(0.006, size), Conductivity: span(0.20, 0.20, 0.21, en10077),
			Transmittance: span(0.01, 0.05, 0.10, "skin of 0.5 mm, estimate"), Emittance: span(0.85, 0.89, 0.92, memory),
			Light: span(0.78, 0.80, 0.82, "trade data; extension.org 78 to 82 %"), Index: single(1.585, memory),
			U: single(3.52, c976+"0.62 Btu/(h ft² °F)")},
		{Name: "twin-wall polycarbonate, 8 mm", Kind: "hollow sheet", Thickness: single(0.008, size), Light: single(0.80, "trade data"), U: single(3.41, c976+"0.60 Btu/(h ft² °F)")},
		{Name: "twin-wall polycarbonate, 10 mm", Kind: "hollow sheet", Thickness: single(0.010, size), Light: single(0.80, "trade data"), U: single(3.18, c976+"0.56 Btu/(h ft² °F)")},
		{Name: "triple-wall polycarbonate, 16 mm", Kind: "hollow sheet", Thickness: single(0.016, size), Light: span(0.59, 0.72, 0.74, "trade data; 0.59 with crossed webs"),
			U: single(2.38, c976+"0.42 Btu/(h ft² °F)")},
		{Name: "acrylic sheet", Kind: "hollow sheet", Conductivity: span(0.18, 0.18, 0.20, en10077), Emittance: span(0.90, 0.92, 0.94, memory),
			Transmittance: span(0, 0, 0.02, memory), Index: single(1.49, memory)},
		{Name: "twin-wall acrylic, 16 mm", Kind: "hollow sheet", Thickness: single(0.016, size), Light: span(0.83, 0.86, 0.91, memory), U: span(2.5, 2.8, 3.0, memory)},
		{Name: "glass-reinforced polyester", Kind: "hollow sheet", Thickness: span(0.8e-3, 1.0e-3, 1.5e-3, memory), Conductivity: single(0.40, en10077), Light: span(0.80, 0.86, 0.90, memory)},
	}
}

func screens() []Material {
	return []Material{
		{Name: "aluminised screen, closed strips", Kind: "screen", Emittance: span(0.10, 0.30, 0.60, memory), Transmittance: span(0, 0.05, 0.20, memory), Thickness: span(0.1e-3, 0.2e-3, 0.3e-3, memory),
			Conductivity: span(0.15, 0.20, 0.40, memory), Openness: single(0, "closed weave"), Leakage: span(0, 0.0005, 0.002, memory), Saving: span(0.50, 0.55, 0.60, geoola11)},
		{Name: "aluminised screen, open strips", Kind: "screen", Emittance: span(0.10, 0.30, 0.60, memory), Transmittance: span(0, 0.05, 0.20, memory), Thickness: span(0.1e-3, 0.2e-3, 0.3e-3, memory),
			Conductivity: span(0.15, 0.20, 0.40, memory), Openness: span(0.20, 0.40, 0.60, memory), Leakage: span(0.002, 0.01, 0.03, memory)},
		{Name: "clear woven screen", Kind: "screen", Emittance: span(0.40, 0.55, 0.70, memory), Transmittance: span(0.20, 0.35, 0.50, memory), Thickness: span(0.1e-3, 0.2e-3, 0.3e-3, memory),
			Conductivity: span(0.15, 0.20, 0.30, memory), Openness: single(0, "closed weave"), Leakage: span(0, 0.001, 0.003, memory), Light: span(0.75, 0.83, 0.88, memory)},
		{Name: "thermal screen, untight", Kind: "screen", Saving: single(0.30, geoola09)},
		{Name: "polyethylene curtain", Kind: "screen", Saving: single(0.33, mihara)},
		{Name: "PVC curtain", Kind: "screen", Saving: single(0.37, mihara)},
	}
}

func walls() []Material {
	return []Material{
		{Name: "concrete, 1800 kg/m³", Kind: "wall", Conductivity: single(1.15, en10456)},
		{Name: "concrete, 2000 kg/m³", Kind: "wall", Conductivity: single(1.35, en10456)},
		{Name: "concrete, 2200 kg/m³", Kind: "wall", Conductivity: single(1.65, en10456)},
		{Name: "concrete, 2400 kg/m³", Kind: "wall", Conductivity: single(2.00, en10456)},
		{Name: "reinforced concrete, 1 % steel", Kind: "wall", Conductivity: single(2.3, en10456)},
		{Name: "reinforced concrete, 2 % steel", Kind: "wall", Conductivity: single(2.5, en10456)},
		{Name: "hollow concrete block, 200 mm", Kind: "wall", Thickness: single(0.2, size), Resistance: span(0.10, 0.18, 0.25, memory)},
		{Name: "brick", Kind: "wall", Conductivity: span(0.50, 0.77, 1.10, memory)},
		{Name: "softwood, 500 kg/m³", Kind: "wall", Conductivity: span(0.12, 0.13, 0.13, en10077)},
		{Name: "hardwood, 700 kg/m³", Kind: "wall", Conductivity: single(0.18, en10077)},
		{Name: "plywood", Kind: "wall", Conductivity: span(0.09, 0.13, 0.17, memory)},
		{Name: "steel", Kind: "wall", Conductivity: span(45, 50, 50, en10077+"; 45 in CIBSE Guide A")},
		{Name: "aluminium", Kind: "wall", Conductivity: span(160, 160, 230, en10077+"; 230 in CIBSE Guide A")},
	}
}

func insulations() []Material {
	return []Material{
		{Name: "extruded polystyrene", Kind: "insulation", Conductivity: span(0.029, 0.034, 0.038, "0.0288 dry in an open slab test; typical from memory")},
		{Name: "expanded polystyrene", Kind: "insulation", Conductivity: span(0.031, 0.037, 0.040, "open building catalogues 0.031 and 0.037")},
		{Name: "mineral wool", Kind: "insulation", Conductivity: span(0.030, 0.035, 0.045, memory)},
		{Name: "rigid polyurethane foam", Kind: "insulation", Conductivity: span(0.022, 0.026, 0.030, memory)},
		{Name: "cellular glass", Kind: "insulation", Conductivity: span(0.038, 0.045, 0.055, memory)},
	}
}
