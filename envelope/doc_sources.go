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
// (1979) 13 (abstract); K. D. Rafferty, Greenhouses, ch. 14 of Geothermal direct-use
// engineering and design guidebook (its table of U-values from memory); Kim and
// others, Energies 11(3), 2018; A. Rasheed, J. W. Lee, H. W. Lee, Spanish J. Agric.
// Research, article 10777 (abstract); J. Bartok, summary of energy audits (a trade
// article); [Hemming19].
package envelope
