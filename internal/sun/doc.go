// Package sun holds the one sun of the library: where it stands, what falls
// outside the atmosphere, clear skies, and what an hour's radiation puts on a
// tilted plane. Package lighting shows it to users; the reference
// evapotranspiration and the invented year of the examples take their
// radiation from it.
//
// There are two suns by design. Site follows NREL's solar position algorithm,
// good to 0.0003 degree. The functions of FAO56 keep that paper's formulas,
// whose declination is up to 1.2 degree off in October, so that its worked
// examples come out as printed; they count days and know no year.
//
// # Sources
//
//	Reda04      I. Reda, A. Andreas, Solar position algorithm for solar
//	            radiation applications, NREL/TP-560-34302 (2003, revised 2008)
//	Meeus98     J. Meeus, Astronomical algorithms, 2nd ed. (1998)
//	IersC17     International Earth Rotation Service, Bulletin C and its table
//	            of leap seconds to 1 January 2017
//	Espenak06   F. Espenak, J. Meeus, Five millennium canon of solar eclipses,
//	            NASA/TP-2006-214141, polynomials for delta T
//	Kopp11      G. Kopp, J. L. Lean, "A new, lower value of total solar
//	            irradiance", Geophysical Research Letters 38 (2011) L01706
//	Haurwitz45  B. Haurwitz, "Insolation in relation to cloudiness and cloud
//	            density", Journal of Meteorology 2 (1945) 154-166
//	Kasten89    F. Kasten, A. T. Young, "Revised optical air mass tables and
//	            approximation formula", Applied Optics 28 (1989) 4735-4738
//	Ineichen02  P. Ineichen, R. Perez, "A new airmass independent formulation
//	            for the Linke turbidity coefficient", Solar Energy 73 (2002)
//	            151-157
//	Icao93      ICAO Doc 7488, Manual of the standard atmosphere (1993)
//	FAO56       R. G. Allen, L. S. Pereira, D. Raes, M. Smith, Crop
//	            evapotranspiration, FAO irrigation and drainage paper 56 (1998)
//	Erbs82      D. G. Erbs, S. A. Klein, J. A. Duffie, "Estimation of the diffuse
//	            radiation fraction for hourly, daily and monthly-average global
//	            radiation", Solar Energy 28 (1982) 293-302
//	Hay80       J. E. Hay, J. A. Davies, "Calculations of the solar radiation
//	            incident on an inclined surface", First Canadian Solar Radiation
//	            Data Workshop (1980) 59; as the documentation of pvlib-python and
//	            Sandia's PV Performance Modeling Collaborative give it
package sun

import "math"

// radian is one degree.
const radian = math.Pi / 180

// none stands for a value that there is not.
var none = math.NaN()
