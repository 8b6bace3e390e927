// Package envelope computes heat and light through the covers, walls and
// ground of a protected-cropping house.
//
// A cover is a stack of one to six layers: films, panes, hollow sheets,
// screens. A film lets long-wave radiation of the house through to the sky,
// so one table U-value cannot describe it: under a clear sky the same film
// loses nearly twice what it loses under an overcast one. Package envelope
// solves the temperature of every face and says what goes to the air and what
// goes to the sky.
//
// # What is modelled
//
// The cover: grey, diffuse long-wave exchange between all faces by the
// net-radiation method, with transmittance; conduction through each layer and
// its ribs; free convection in each gap for any tilt and either direction of
// heat flow; convection inside and outside by named published correlations;
// absorbed sun; a wet inner face with the latent heat of condensation; screens
// with open area and air leakage; a double film of which a share has
// collapsed.
//
// # What is not modelled
//
// The cover: spectral structure of the long-wave properties (one grey value
// per face), storage of heat in the layers, edge effects of panes and
// profiles, snow.
//
// # Sources
//
//	AshHoF17    ASHRAE Handbook - Fundamentals (SI), 2017
//	Bot83       G. P. A. Bot, Greenhouse climate: from physical processes to a
//	            dynamic model, Wageningen 1983
//	Baille90    A. Baille, T. Boulard and others, convection in greenhouses (from
//	            memory; the exact paper was not seen)
//	BerMar84    P. Berdahl, M. Martin, "Emissivity of clear skies", Solar Energy
//	            32 (1984) 663-664; M. Martin, P. Berdahl, "Characteristics of
//	            infrared sky radiation in the United States", Solar Energy 33
//	            (1984) 321-336
//	DufBec13    J. A. Duffie, W. A. Beckman, Solar Engineering of Thermal
//	            Processes, 4th ed., Wiley 2013
//	ElSher82    S. M. ElSherbiny, G. D. Raithby, K. G. T. Hollands, "Heat
//	            transfer by natural convection across vertical and inclined air
//	            layers", J. Heat Transfer 104 (1982) 96-102
//	EnGlass11   EN 673:2011, Glass in building - Determination of thermal
//	            transmittance (U value) - Calculation method
//	Hollands76  K. G. T. Hollands, T. E. Unny, G. D. Raithby, L. Konicek, "Free
//	            convective heat transfer across inclined air layers", J. Heat
//	            Transfer 98 (1976) 189-193
//	IsoMoist12  ISO 13788:2012, Hygrothermal performance of building components
//	IsoWall17   ISO 6946:2017, Thermal resistance and thermal transmittance
//	IsoWin03    ISO 15099:2003, Thermal performance of windows, doors and shading
//	            devices - Detailed calculations
//	Papadakis92 G. Papadakis, A. Frangoudakis, S. Kyritsis, "Mixed, forced and free
//	            convection heat transfer at the greenhouse cover", J. Agric. Eng.
//	            Research 51 (1992) 191-205 (from memory)
//	Swinbank63  W. C. Swinbank, "Long-wave radiation from clear skies", Quarterly
//	            Journal of the Royal Meteorological Society 89 (1963) 339-348
//	Watmuff77   J. H. Watmuff, W. W. S. Charters, D. Proctor, "Solar and wind
//	            induced external coefficients for solar collectors", COMPLES 2
//	            (1977)
//	Wright96    J. L. Wright, "A correlation to quantify convective heat transfer
//	            between vertical window glazings", ASHRAE Transactions 102 (1996)
package envelope
