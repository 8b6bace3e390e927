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
// Spectra as tables, in photons, watts and lumens; photometric files of LM-63;
// the sun, clear skies, the daily light through a cover and a year of hours
// with lamps; the daily light that crops ask for.
//
// The frame is right-handed: x and y on the floor, z up, metres. Yaw is
// counter-clockwise from +x seen from above. PPF is in µmol/s, PPFD in
// µmol/(m² s), photon intensity in µmol/(s sr).
//
// # What is not modelled
//
// Shadows, light inside a canopy, specular mirrors, spectra that change with
// direction (give each channel its own fixture), and any assessment of safety.
//
// # How a map is made
//
// A Distribution (CosinePower or Table) makes a Fixture; fixtures make a Layout
// (Rows, Staggered, Spaced, Perimeter). Bed.Map gives its direct light on a bed
// with the evenness, Room.Map the reflected light as well. Need.Solve finds a
// layout. For other points (NewPoints, Bed.Grid), many maps of one layout or
// progress, NewLights makes the fixtures ready for Lights.MapTo.
//
// Photometric files hold candela, which say nothing of photons: ReadLM63 gives
// a CandelaTable, and PhotonTable (a spectrum), ChannelTables (one for each
// colour) or WithPhotonsPerLumen (a factor) make the Table that a Fixture takes.
//
// # What is computed, and how well
//
//	function               equation                       range                accuracy           check
//	FromBeamAngle          ln 0.5/ln cos(beam/2)          2..178 degree        1e-15              Moreno06
//	Table.Flux             exact integral of interpolant  type A, B, C         1e-14              spheres, quadrature
//	Lights.MapTo, points   Σ I cos φ/r²                   any aim              1e-9 (1e-11 seen)  inverse square, disc
//	Lights.MapTo, tables   the same, bilinear in angle    type A, B, C         1e-9 (1e-10 seen)  definition term by term
//	Lights.MapTo, bars     integral along the bar         cosine power         1e-8 (1e-13 seen)  line source, 8000 points
//	Evenness               U0, Ud, CV, Christiansen       -                    1e-15              Hart's relation
//	CosinePower.SpotAngle  acos f^(1/(m+3))               above a level plane  1e-15              identities
//	CosinePower.FlatPair   2h/√(m+4)                      above a level plane  1e-15              curvature
//	CosineFlux             ∮ G dφ along the edges         plane polygon        1e-9 of the flux   closed box
//	PolygonFactor          Lambert's formula              convex, 12 corners   1e-14              CornerFactor
//	OpposedPlatesFactor    1/2π ∮∮ ln r dr1·dr2           -                    1e-12              Howell10
//	Room.Reflect, n = 1    six faces                      reflectance to 0.98  1e-6               another solution
//	Room.Reflect, n = 16   radiosity, exact gather        reflectance to 0.98  see Room.Reflect   finer mesh, random photons
//	Room.ReflectWithin     the same, extrapolated         tolerance from 1e-5  its tolerance      other meshes
//	EnclosureMean          PPF/(A (1-ρ))                  reflectance to 0.98  exact              sphere, box
//	Room.Share             exact flux on bed and plane    -                    1e-9               closed box
//	Need.Solve             simplex search by rows         to 10,000 fixtures   0.002 of the need  150 random needs, finer grids
//	Dim                    bounded least squares          levels 0..1          1e-9               invented levels; 2,000,000 random sets
//	EnergyInput.Solve      all power ends as heat         -                    exact              arithmetic
//	Spectrum.PPF           ∫ E λ/(N_A h c) dλ             100..5000 nm         exact for a table  AstmSun03, D65, A
//	Spectrum.Luminous      683.002 ∫ V E dλ               360..830 nm          2e-5 on daylight   AstmSun03, CieCol18
//	LuminousEfficiency     cubics through four            360..830 nm          2.2e-4             CieVis23, 471 points
//	ReadLM63               I x multiplier x ballast       1986..2019, A, B, C  flux to 1e-14      six files, eight refused
//	Site.Sun               NREL SPA                       1950..2100           0.0003 degree      Reda04, ERFA, Meeus98
//	Site.SunDay            elevation = -0.8333            1950..2100           0.2 s              ephem, NREL (1.2 s)
//	Site.ClearSky          Ineichen02 eqs. 6, 8           1..10, to 4000 m     1e-9 of formula    pvlib's tests
//	DiffuseFraction        Erbs82 eq. 1                   0..2                 a mean of hours    pvlib's tests
//	SunHour.Split          Erbs82 on a lit hour           global from 0        closes to 1e-9     sums
//	SunAndSky.OnPlane      Hay80                          tilt 0..180          1e-9 of formula    PV_LIB by pvlib's tests
//	ExtraterrestrialDay    FAO56 eq. 21                   day 1..366           printed digits     examples; table 2.6 to 0.12 MJ
//	SunPeriod              FAO56 eqs. 28 to 33            day 1..366           printed digits     example 19
//	DayLength              FAO56 eq. 34                   day 1..366           printed digits     example 9; table 2.7 to 0.08 h
//	GlobalFromSunshine     FAO56 eq. 35                   0..1                 printed digits     example 10
//	DLI                    0.0036 PPFD h                  0..5000, 0..24 h     exact              six printed sums
//	LightingSeason.Solve   deficit/PPFD                   8760, 8784 h         exact              by hand
//	CropLights             -                              0..80 mol/(m² d)     as quoted          sources in each row
//
// # Which function to use
//
// For a measured hour use Site.SunHour and its Split; for a tilted plane,
// SunAndSky.OnPlane. Under a clear sky OnPlane puts more than half of the sky's
// light around the sun's disc, so that a slope of 30 degree facing a sun 25 to
// 60 degree high gets 8 to 1 % more than from an evenly bright sky, and a wall
// facing away gets less. Without measurements use Site.ClearSky for the hours
// of a bright day and the formulas of FAO56 for what a day brings on average.
// What reaches a bed under a cover, by the sun's position, is BedLight of
// package envelope, which takes Direct and Diffuse.
//
// # Departures
//
// Reda04 prints 11.10629 for the example's hour angle where its own terms give
// 11.10627. UT1 is taken as UTC (up to 0.9 s). V is interpolated from 5 nm, D65
// from 10 nm. Factors of Thimijan83 and most crop ranges are second-hand and say
// so. The sun of AstmSun03 stands in the tests, not in the library.
//
// Moreno06 leaves the sensor's cosine out of the spot's fall; here it is
// counted, so that its exponent m+2 is m+3 here. The rule that a source may be
// taken as a point from five times its size [IesDef20] holds for even radiance
// only; narrow beams need the bar itself, or SplitWithin.
//
// Flat patches, 16 along a side, do not keep the reflected light at every point
// within 0.3 %, however well their equations are solved: Room.Reflect says how
// close they come, and Room.ReflectWithin refines them further.
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
//	Asabe17     ANSI/ASABE S640, Quantities and units of optical radiation for
//	            plants (2017)
//	AstmSun03   ASTM G173-03, Reference solar spectral irradiances: direct normal
//	            and hemispherical on 37° tilted surface
//	CieVis23    ISO/CIE 23539:2023, Photometry - The CIE system of physical
//	            photometry; the table as the library colour-science carries it
//	CieCol18    CIE 15:2018, Colorimetry
//	Thimijan83  R. W. Thimijan, R. D. Heins, "Photometric, radiometric, and
//	            quantum light units of measure: a review of procedures for
//	            interconversion", HortScience 18 (1983) 818-822
//	IesLM02     ANSI/IESNA LM-63-02, with the editions of 1986, 1991, 1995 and
//	            ANSI/IES LM-63-19, standard file format for photometric data
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
//	Erbs82      D. G. Erbs, S. A. Klein, J. A. Duffie, "Estimation of the diffuse
//	            radiation fraction for hourly, daily and monthly-average global
//	            radiation", Solar Energy 28 (1982) 293-302; the coefficients as
//	            the library pvlib-python quotes them
//	Hay80       J. E. Hay, J. A. Davies, "Calculations of the solar radiation
//	            incident on an inclined surface", First Canadian Solar Radiation
//	            Data Workshop (1980) 59; as the documentation of pvlib-python
//	            gives it
//	Icao93      ICAO Doc 7488, Manual of the standard atmosphere (1993)
//	FAO56       R. G. Allen, L. S. Pereira, D. Raes, M. Smith, Crop
//	            evapotranspiration, FAO irrigation and drainage paper 56 (1998)
//	Faust18     J. E. Faust, J. Logan, "Daily light integral: a research review
//	            and high-resolution maps of the United States", HortScience 53
//	            (2018) 1250-1257
package lighting
