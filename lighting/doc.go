// Package lighting counts photons on a crop: from a fixture's photometry to
// the map over a bed, its evenness, the reflections of the room, the day's
// photons with and without daylight, and what they cost.
//
// # What is modelled
//
// Direct light of points and straight bars with a cosine-power or tabulated
// intensity, at any place and aim, on points of any tilt; diffuse reflection
// in an empty box room by radiosity. Fixtures and plants cast no shadow,
// fixtures scatter no light, surfaces reflect diffusely and evenly over 400 to
// 700 nm.
//
// The frame is right-handed: x and y on the floor, z up, metres. Yaw is
// counter-clockwise from +x seen from above. PPF is in µmol/s, PPFD in
// µmol/(m² s), photon intensity in µmol/(s sr).
//
// # What is not
//
// Shadows, light inside a canopy, specular mirrors, spectra that change with
// direction (give each channel its own fixture), and any assessment of safety.
//
// # Sources
//
//	Moreno06    I. Moreno, M. Avendaño-Alejo, R. I. Tzonchev, "Designing
//	            light-emitting diode arrays for uniform near-field irradiance",
//	            Applied Optics 45 (2006) 2265-2272
//	Howell10    J. R. Howell, R. Siegel, M. P. Mengüç, Thermal Radiation Heat
//	            Transfer, 5th ed. (2010), and J. R. Howell, A Catalog of
//	            Radiation Heat Transfer Configuration Factors
//	Sparrow63   E. M. Sparrow, "A new and simpler formulation for radiative
//	            angle factors", J. Heat Transfer 85 (1963) 81-88
//	IesDef20    Illuminating Engineering Society, online definitions,
//	            "inverse square law"
//	Ciolkosz01  D. E. Ciolkosz, A. J. Both, L. D. Albright, "Selection and
//	            placement of greenhouse luminaires for uniformity", Applied
//	            Engineering in Agriculture 17 (2001) 875-882
//	CieMaint05  CIE 97:2005, Guide on the maintenance of indoor electric
//	            lighting systems
//	UlHort19    UL 8800, Horticultural Lighting Equipment (2019)
//	IecEyes06   IEC 62471:2006, Photobiological safety of lamps and lamp systems
package lighting
