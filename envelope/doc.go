// Package envelope computes heat and light through the covers, walls and
// ground of a protected-cropping house.
//
// A cover is one to six layers: films, panes, hollow sheets, screens. A film
// lets long-wave radiation of the house through to the sky, so one table
// U-value cannot describe it: under a clear sky the same film loses nearly
// twice what it loses under an overcast one. Package envelope solves the
// temperature of every face and says what goes to the air and what goes to the
// sky.
//
// # What is modelled
//
// The cover: grey, diffuse long-wave exchange between all faces by the
// net-radiation method, with transmittance; conduction through each layer and
// its ribs; free convection in each gap for any tilt and either direction of
// heat flow; convection inside and outside by named published correlations;
// absorbed sun; an inner face that is wet, dry or wet in part, with water,
// frost or both, by the vapour flux of package psychro; screens with open area
// and air leakage; a double film of which a share has collapsed.
//
// Beside it: sealed glazing with declared values (EN 673), opaque walls
// (ISO 6946), light through layers of clear sheets, a table of materials and a
// set of ready-made covers.
//
// The house: gable, uneven gable, round and pointed arch and lean-to, several
// bays, dug in, with annexes, as facets of exact area; floor and buried walls
// with their yearly wave (ISO 13370); leakage by air changes or by stack and
// wind; sunlight on and through each facet; the loss of the whole house with
// every term, which facets drip and how much, and a linear form of it for
// transients; the humidity that the house settles to by its own vapour.
//
// # What is not modelled
//
// The cover: spectral structure of the long-wave properties (one grey value per
// face), storage of heat in the layers, edge effects of panes and profiles,
// snow, the water and latent heat of vapour that passes a screen and condenses
// above it (Solution.DripsAbove reports that it does). Light: scattering films
// beyond what an extinction coefficient holds.
//
// The house: facets that see each other from outside, as across the valleys of
// several bays, and anything on the horizon; one inside temperature and
// humidity, floor and crop as one black surface at one temperature;
// groundwater, snow on the ground and soil drier under the house than beside
// it; storage of heat, which belongs to transients.
//
// # Which function to use
//
// Conditions: NewHouseConditions or NewCoverConditions from the air inside and
// outside, which set sky and ground as well; changing the outside temperature
// alone then moves both with it. Sky: SkyTemperature, made of SkyEmissivity,
// CloudySky and SkyTemperatureOf; ClarkAllen when the height of the clouds is
// not known, Swinbank when the humidity is not. Covers: Cover.Solve with the
// convection of DefaultCoverConditions; its gaps are those of GapNusselt, and
// MacGregorEmery is an alternative for an upright slot. McAdams includes
// radiation and must not be used for a cover; Mitchell is used through
// OutsideGiven. Ground: Ground.Solve; MaceyFloor and AndersonFloor are older
// rules to compare with, StripFlow and BoxFlow exact checks. A whole house:
// NewHouse and House.Loss, which call all of these. House.Loss holds the
// humidity that it is given and says how much water must evaporate for it;
// where only the vapour from crop and soil is known, use House.SolveVapour.
// Size a heater by the larger of Total and DryTotal.
//
// # Vapour
//
// Vapour passes to a wet face by psychro.State.VapourFlux, so that none does at
// the dew point. The face receives the latent heat at its own temperature, that
// of sublimation below 0.01 °C; the heater pays the heat of evaporation at the
// temperature of the inside air. Solution states both; U-values and House.Loss
// contain the second. At 0.01 °C a part of the vapour freezes, as much as
// closes the balance. A face is wet if that keeps it at or below the dew point,
// else dry if that keeps it at or above, else wet in part: drops hold it at the
// dew point and nothing passes. Condensate and loss are continuous in the
// humidity, except that a film which passes heat radiation has two states over
// a band of humidity, one wet, one dry or barely wet: Solution.TwoStates
// reports it.
//
// # What the facets see
//
// Inside, a facet sees the other facets, which are cold, and floor and crop,
// which are warm. RadiantEnclosure, the default of a HousePlan, follows that:
// the view factors are exact for the forms of NewShape, by Lambert's integral
// over each facet (a long house tends to the crossed strings), with several
// bays exact except for what crosses the level of the eaves, and approximate
// for facets of the caller's own [Carroll80]. RadiantAir has each facet alone
// before a black body at the air's temperature, as tables of U-values have it,
// and RadiantGiven before one of a given temperature. Outside, SkyWeighted
// makes the sky warmer towards the horizon, as it is; SkyEven has it the same
// all over.
//
// In the three houses of Example_radiantRoom, with the sky 20 K below the air
// and 4 m/s of wind, the covers lose less than by RadiantAir and SkyEven, by so
// many per cent through the enclosure and through the weighted sky:
//
//	                        small house  tunnel  six bays
//	glass, wet              18, 1        11, 1    9, 1
//	clear film, dry         35, 3        24, 3   18, 2
//	double clear film, dry  32, 4        22, 3   17, 2
//
// Use the enclosure and the weighted sky for a house: with them the
// coefficients of whole houses come out as measured, in the next table; without
// them glass in calm comes out 15 % too high and dry film by half as much
// again. Use RadiantAir to compare a cover with a table. A tall crop hides the
// facets from each other and brings the truth nearer to RadiantAir; by how much
// depends on the crop.
//
// # A house as used and houses as measured
//
// Loss of covers, bars of 5 % and leaks of half an air change per hour, without
// the ground, W/(m² K) of cover, by DefaultHouseConditions in a gable of 8 by
// 20 m at 15 °C inside and 0 °C outside, the sky 2 or 20 K below the air, the
// humidity that of 20 g/(m² h) of vapour from the crop, screens drawn by
// WithScreen, at winds of 0, 4 and 8 m/s:
//
//	                             overcast, 2 K     clear, 20 K
//	cover           screen        0    4    8 m/s   0    4    8 m/s
//	glass                        4.0  5.3  5.7    5.3  5.9  6.1
//	glass           clear        3.3  4.0  4.2    4.3  4.4  4.4
//	glass           open strips  3.8  4.8  5.1    4.9  5.3  5.4
//	glass           aluminised   2.8  3.2  3.3    3.6  3.5  3.5
//	single film                  4.1  5.4  5.8    5.5  6.1  6.3
//	single film     clear        3.4  4.0  4.2    4.4  4.5  4.5
//	single film     open strips  3.9  4.9  5.2    5.1  5.4  5.5
//	single film     aluminised   2.8  3.2  3.3    3.7  3.6  3.5
//	infrared film                4.1  5.4  5.8    5.5  6.1  6.3
//	infrared film   clear        3.4  4.0  4.2    4.4  4.5  4.5
//	infrared film   open strips  3.9  4.9  5.2    5.1  5.4  5.5
//	infrared film   aluminised   2.8  3.2  3.3    3.7  3.6  3.6
//	double film                  3.3  3.5  3.5    4.6  4.6  4.6
//	double film     clear        2.8  2.9  3.0    3.9  3.8  3.8
//	double film     open strips  3.2  3.3  3.3    4.4  4.3  4.3
//	double film     aluminised   2.5  2.5  2.5    3.4  3.3  3.3
//	twin-wall 6 mm               3.2  3.8  3.9    4.2  4.2  4.2
//	twin-wall 6 mm  clear        2.8  3.1  3.2    3.6  3.5  3.5
//	twin-wall 6 mm  open strips  3.1  3.6  3.7    4.0  4.0  4.0
//	twin-wall 6 mm  aluminised   2.4  2.7  2.7    3.1  2.9  2.9
//
// Measured or printed beside it, at 0, 4 and 8 m/s: glass 4.4, 6.0, 7.6 and PVC
// film 4.9, 7.0, 9.2 in two model houses (Mihara and Hayashi 1979), with
// curtains 2.9 to 3.2, 3.3 to 3.8, 3.7 to 4.5, dry; glass 4.3, 5.8, 6.2, single
// film 4.6, 6.1, 6.6, double film 3.0, 3.8, 4.0 in a design table (Rafferty);
// houses of double film in Korea 3.85 and with curtains 2.76 (Kim and others
// 2018). They lie within 10 % of the range from overcast to clear (the dry
// curtains of the model houses compared in a dry house with their own films),
// except for the bare model houses, glass at 8 m/s and PVC from 4 m/s up: their
// figures rise by what 2 to 5 more air changes per hour would carry; give such
// a house leakage that follows the wind. In this table, with leaks and vapour,
// which no screen saves, clear cloth saves 14 to 28 %, aluminised 25 to 44 %,
// open strips 4 to 12 %; measured savings are 22 to 58 % in houses, by type and
// tightness, 25 to 31 % over winters, and 50 to 60 % sealed in a hot box. A
// test holds all of it.
//
// # References of a U-value
//
// Solution.U divides by the difference of air temperatures and includes the
// sky; Solution.UAir leaves the sky's part out and is what a table means;
// Solution.UAmbient divides by the mixed air and radiant temperatures of ISO
// 15099. For one pane in one state the three differ by half.
//
// LightLayers.Diffuse is what one slope lets through and Glazing.Gain what the
// whole house takes in; BedLight says how much of it reaches a bed, separately
// for the sun's beam, by the sun's position, and the light of the sky. For
// plants the two count alike by the square metre, but only BedBeam.Facets shows
// a bed that lies half in shadow.
//
// # Equations
//
//	function              equation                   range                 accuracy            check
//	air in gaps           IsoWin03 Annex B           -100 to 120 °C        1 % (from memory)   fits written out
//	GapNusselt            IsoWin03 eq. 42-53         tilt 0 to 180 degree  10 % measured       13 values of an open engine
//	Cover.Solve           IsoWin03 8.3, eq. 15-17    -60 to 60 °C, 40 m/s  balances 1e-9 W/m²  26 values of an open engine, an
//	                                                                                           independent solver to 1e-5 K,
//	                                                                                           9 bands of extension services
//	InsideConvection      IsoWin03 eq. 131-138       tilt 0 to 180 degree  10 % (from memory)  second writing
//	ChurchillChu          ChuChu75                   Ra to 1e12            10 % (from memory)  window of a textbook
//	MacGregorEmery        MacEme69                   Ra 1e4 to 1e7         20 % (from memory)  window of a textbook
//	OutsideConvection     IsoWall17 C.5, Watmuff77   0 to 40 m/s           20 to 30 %          coefficients written out
//	McAdams, Mitchell     McAdams54, Mitchell76      0 to 30, 40 m/s       20 to 30 %          coefficients written out
//	SkyTemperature        BerMar84                   as SkyEmissivity      as SkyEmissivity    its parts
//	SkyEmissivity         BerMar84                   dew point -40 to 30   0.03                by hand
//	ClarkAllen            ClaAll78                   dew point -40 to 29   0.1 in dry air      by hand, Berdahl and Martin
//	Swinbank              Swinbank63                 -30 to 40 °C          5 K                 an open engine
//	Solution.DewPoint     psychro.State.DewPoint     -60 to 60 °C          as there            DIN 4108-3, from memory
//	House.SolveVapour     balance of vapour          as House.Loss         1e-9 of the vapour  each loss alone, laws
//	SealedUnit.Solve      EnGlass11 clauses 5-7      1 to 20 plates        declared 0.1        5 trade values, 28 from memory
//	Wall.Solve            IsoWall17 6.7, Annex C, D  limits within 1.5     standard's own      worked example, 31 from memory
//	Fresnel, LightLayers  DufBec13 5.1-5.3           0 to 90 degree        1e-12               closed form, pvlib, examples
//	NewShape              geometry                   see Form              exact; strips       by hand, closure of areas
//	                                                                       tilt of middle
//	Ground.Solve          IsoGround17 7, Annex D, H  0 to 5 m deep         total 2 to 15 %     87 table values from memory,
//	                                                                                           an open national model, strip
//	GroundCoefficients    IsoGround17 C.3, C.4, C.9  month 1 to 12         standard's own      an open national model to 1e-9
//	StripFlow, BoxFlow    own, IeaBestest08          1 mm to 10 km         exact               GC10a, quadrature
//	MaceyFloor            CibseA06                   four exposed edges    4 %                 17 table values
//	AndersonFloor         Anderson91                 0.05 to 1.3 1/m       the fit's           one value
//	FindLeakageClass      AsaeHeat03, AshApp11       8 classes             factor of 2         13 values from memory
//	Leakage.Flow          WalWil98                   0 to 40 m/s           10 % in houses      by hand, integral over the wall
//	Facet.Sun, Glazing    DufBec13 1.6, 2.15         sun -90 to 90 degree  even sky            by hand, projection of a body
//	NewBedLight           straight rays              one bay, clear        exact; sky 2e-3     zenith, one wall, what lands
//	House.Loss            sum of the above           as Cover.Solve        sums 1e-9           each facet alone, laws, 12 published
//	                                                                                           lines of whole houses
//	view factors          MazRav12, by parts         forms of NewShape     1e-9 one bay        closed forms, Lambert's integral,
//	                                                                                           crossed strings
//	facets of one's own   Carroll80                  up to 500             0.001 in a cube     a gable
//	SkyWeighted           Walton83                   tilt 0 to 180 degree  none stated         by hand
//	WithScreen            DeZwart96                  10 K across it        savings 22 to 58    the same lines
//	Materials, Covers     see each Source            low to high           typical values      40 rows as printed
//
// # Known departures
//
// Outside its published wind a correlation is continued to 40 m/s, inside to
// any tilt, and Hollands' beyond Ra 1e5, as ISO 15099 does; OutsideInRange,
// InsideInRange and GapState.InRange report it.
//
// The vertical gap correlation jumps at Ra 1e4 and 5e4. Within the upward jump
// at 5e4 no exact root may exist: the gap is then held at the jump with a
// Nusselt number between the branches, and GapState.AtJump reports it. At the
// downward jump at 1e4 two roots may exist; either is a solution. Where a
// screen leaks into a gap its air is a node between two films, and about one
// such cover in a hundred thousand has no root that the solver finds: a Nusselt
// number is then held off its correlation, and AtJump reports that, too.
//
// Facets that see each other: of 60,000 random houses, whatever their covers
// and however wet, all closed; in 7 a cover jumped between two states, and what
// it receives differed from what the others send by more than 1e-8 W/m², which
// HouseLoss.RadiantResidual states (go test -run RandomEnclosures -enclosures
// 60000).
//
// Of 1,000,000 random covers of the trade in ordinary weather, and as many over
// the whole domain, every one closes to 1e-9 W/m². Of as many at the ends of
// the ranges 7 are refused as not converged and the others close to 2e-9 (go
// test ./envelope -run TestCampaign -covers 1000000).
//
// Speed, in microseconds for a core on which math.Exp costs 15 ns (go test
// ./envelope -bench 'Vapour|MathExp'): House.SolveVapour finds the humidity of a
// house of 14 facets, seven of which have a twin, in 420 from a cold start and
// 260 from the hour before, more than the 300 and 150 that were aimed at; as an
// enclosure in 1,500 and 1,200. It takes five solutions of the covers cold and
// four from near, and in an enclosure about three rounds for each of them.
// Facets are sought from their last state; where a balance could have a second
// root, from afar.
//
// Frost that dries off a declared wet face takes the heat of sublimation; where
// both water and frost would balance it is water. Correlations of free convection
// vanish with an infinite slope where face and air are equally warm; vapour
// reaches a wet face with at least 0.5 W/(m² K), so that a root exists there. A
// door's resistances to its surfaces, 0.13 and 0.04 m² K/W, stay when it is wet.
//
// ISO 13370 puts 15 to 30 % less through a buried wall of 1 m and up to 40 %
// more through the floor than two-dimensional conduction does, while their
// total stays within a few per cent, at worst 15 % low: GroundCoefficients
// calls the parts the standard's. Its yearly wave of the outside is 5 to 24 %
// too strong, that of the inside 5 to 28 % too weak; GroundCoefficients.Flow
// and Worst state what is left of that in a month. Its formula for vertical
// edge insulation promises more than finite differences show, the U-value being
// 8 to 13 % low. Its two slab formulas jump by 0.014 % where they meet. Annual
// means are weighted by the days of the months.
//
// Glazing.Gain takes off the beam that bays shade from each other, but not the
// sky that they hide from each other. In an enclosure a door is as warm as its
// facet and a wall to an annex as the floor; what is left of an end wall beside
// the strips of an arch, under a third of a per cent of it, sees itself.
//
// Light that drops or frame keep out is taken as lost, and the sheets absorb as
// if clean.
//
// The numbers of clauses, annexes and equations of the standards that are sold
// are those that open implementations and notes quote; the texts themselves
// were not at hand. The numbers of ISO 15099 eq. 42 and 44 to 53, and of ISO
// 13370 clauses 7.1 and 7.3, eq. 12 to 16, 18, C.4, F.2, H.1 and H.4 to H.7,
// its Table 7 and Table H.1, were read in an open implementation; those of EN
// 673, ISO 6946, ISO 13788 and the rest of ISO 15099 and ISO 13370 are from
// notes. From memory, not read, are the effect of clouds of Martin and Berdahl,
// the table of air changes, the correlations of Bot, Papadakis, Baille, McAdams
// and Mitchell, and whatever else says so at its place.
//
// # Sources
//
//	Anderson91  B. R. Anderson, "Calculation of the steady-state heat transfer through a
//	            slab-on-ground floor", Building and Environment 26 (1991) 405-415
//	            (its fit as quoted by open calculators)
//	AsaeHeat03  ANSI/ASAE EP406.4 JAN2003, Heating, Ventilating and Cooling Greenhouses
//	            (its table of air changes from memory)
//	AshApp11    ASHRAE Handbook - HVAC Applications, 2011, Environmental control for
//	            animals and plants (table of air changes from memory)
//	Bot83       G. P. A. Bot, Greenhouse climate: from physical processes to a
//	            dynamic model, Wageningen 1983
//	Baille90    A. Baille, T. Boulard and others, convection in greenhouses (from
//	            memory; the exact paper was not seen)
//	BerMar84    P. Berdahl, M. Martin, "Emissivity of clear skies", Solar Energy
//	            32 (1984) 663-664; M. Martin, P. Berdahl, "Characteristics of
//	            infrared sky radiation in the United States", Solar Energy 33
//	            (1984) 321-336
//	Carroll80   J. A. Carroll, "An MRT method of computing radiant energy exchange in
//	            rooms", 2nd Systems Simulation and Economics Analysis Conference 1980
//	            (as open libraries describe it)
//	ChuChu75    S. W. Churchill, H. H. S. Chu, "Correlating equations for laminar and
//	            turbulent free convection from a vertical plate", Int. J. Heat Mass
//	            Transfer 18 (1975) 1323-1329 (as a solution manual applies it)
//	CibseA06    CIBSE Guide A, Environmental design, 2006, section 3.5 (Macey's formula;
//	            its tables from memory)
//	ClaAll78    G. Clark, C. Allen, "The estimation of atmospheric radiation for clear
//	            and cloudy skies", 2nd National Passive Solar Conference 1978, with
//	            the clouds of G. N. Walton, Thermal analysis research program, NBS
//	            1983 (as open programs quote them)
//	DeZwart96   H. F. de Zwart, Analyzing energy-saving options in greenhouse
//	            cultivation, thesis, Wageningen 1996 (air through screens as B. H. E.
//	            Vanthoor and others, Biosystems Engineering 110 (2011) 363, quote it)
//	DufBec13    J. A. Duffie, W. A. Beckman, Solar Engineering of Thermal
//	            Processes, 4th ed., Wiley 2013
//	ElSher82    S. M. ElSherbiny, G. D. Raithby, K. G. T. Hollands, "Heat
//	            transfer by natural convection across vertical and inclined air
//	            layers", J. Heat Transfer 104 (1982) 96-102
//	EnGlass11   EN 673:2011, Glass in building - Determination of thermal
//	            transmittance (U value) - Calculation method
//	Hemming19   S. Hemming, F. de Zwart, A. Elings, I. Righini, A. Petropoulou,
//	            Autonomous Greenhouse Challenge, first edition (2018), data set,
//	            4TU.ResearchData; described in Sensors 19(8):1807, 2019
//	Hollands76  K. G. T. Hollands, T. E. Unny, G. D. Raithby, L. Konicek, "Free
//	            convective heat transfer across inclined air layers", J. Heat
//	            Transfer 98 (1976) 189-193
//	IeaBestest08 J. Neymark, R. Judkoff, IEA building energy simulation test and
//	            diagnostic method: ground-coupled heat transfer, NREL 2008, with the
//	            solution of A. E. Delsante and others, 1983
//	IsoGround17 ISO 13370:2017, Heat transfer via the ground - Calculation methods
//	            (equations as open implementations quote them)
//	IsoWall17   ISO 6946:2017, Thermal resistance and thermal transmittance
//	IsoWin03    ISO 15099:2003, Thermal performance of windows, doors and shading
//	            devices - Detailed calculations
//	MacEme69    R. K. MacGregor, A. P. Emery, "Free convection through vertical plane
//	            layers", J. Heat Transfer 91 (1969) 391-401 (as a solution manual
//	            applies it)
//	MazRav12    S. Mazumder, M. Ravishankar, "General procedure for calculation of
//	            diffuse view factors between arbitrary planar polygons", Int. J. Heat
//	            Mass Transfer 2012 (contour integral)
//	McAdams54   W. H. McAdams, Heat Transmission, 3rd ed., McGraw-Hill 1954 (from
//	            memory)
//	Mitchell76  J. W. Mitchell, "Heat transfer from spheres and other animal forms",
//	            Biophysical Journal 16 (1976) 561-569 (from memory)
//	Papadakis92 G. Papadakis, A. Frangoudakis, S. Kyritsis, "Mixed, forced and free
//	            convection heat transfer at the greenhouse cover", J. Agric. Eng.
//	            Research 51 (1992) 191-205 (from memory)
//	Swinbank63  W. C. Swinbank, "Long-wave radiation from clear skies", Quarterly
//	            Journal of the Royal Meteorological Society 89 (1963) 339-348
//	WalWil98    I. S. Walker, D. J. Wilson, "Field validation of algebraic equations for
//	            stack and wind driven air infiltration calculations", HVAC&R Research 4
//	            (1998) 119-139 (equations as open implementations quote them)
//	Walton83    G. N. Walton, Thermal analysis research program reference manual, NBSIR
//	            83-2655, 1983 (the weight of the horizon as open building programs
//	            quote it)
//	Watmuff77   J. H. Watmuff, W. W. S. Charters, D. Proctor, "Solar and wind
//	            induced external coefficients for solar collectors", COMPLES 2
//	            (1977)
//	Wright96    J. L. Wright, "A correlation to quantify convective heat transfer
//	            between vertical window glazings", ASHRAE Transactions 102 (1996)
//
// The measured houses are those of Mihara and Hayashi, J. Agric. Meteorol. 35
// (1979) 13; Rafferty, Greenhouses, in Geothermal direct use; Kim and others,
// Energies 11(3), 2018.
package envelope
