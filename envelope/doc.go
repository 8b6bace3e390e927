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
// a band of humidity, one wet, one dry or with a few drops: Solution.TwoStates
// reports it. In a house such films warm or cool each other with what they send:
// all begin wet, those that would dry off are let go of, and so on until all
// agree, so that a house has one answer.
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
// film 4.6, 6.1, 6.6, double film 3.0, 3.8, 4.0 in a design table (Rafferty, from
// memory); houses of double film in Korea 3.85 and with curtains 2.76 (Kim and
// others 2018). They lie within 10 % of the range from overcast to clear (the dry
// curtains of the model houses compared in a dry house with their own films),
// except for the bare model houses, glass at 8 m/s and PVC from 4 m/s up: their
// figures rise by what 2 to 5 more air changes per hour would carry; give such
// a house leakage that follows the wind. In this table, with leaks and vapour,
// which no screen saves, clear cloth saves 14 to 28 %, aluminised 25 to 44 %,
// open strips 4 to 12 %; measured savings are 22 to 58 % in houses, by type and
// tightness, 25 to 31 % over winters, and 50 to 60 % sealed in a hot box. A
// second film saves 16 to 40 % here, 30 to 40 % as printed (Rafferty) and 34 %
// (Rasheed and others); film that absorbs infrared nothing while wet and 5 to 12 % dry,
// 12 % in the mean of a hundred audits (Bartok).
//
// Twenty means of measured night hours, W/(m² K) of floor, in glass compartments
// with no, one and two screens, in calm and wind, under a clear and an overcast sky,
// 3.1 to 9.6 [Hemming19]: 17 come out within the spread of their hours, all in the
// mean 3 % high, for walls that look into other compartments and 10 W/m² given back
// by floor and crop, which the data do not tell; bare glass follows sky and wind
// more than it does there. Their humidity, 0.80 to 0.88, takes 17 to 57 g/(m² h) of
// vapour here; plants give 9 to 48. Tests hold all of it.
//
// # References of a U-value
//
// Solution.U divides by the difference of air temperatures and includes the
// sky; Solution.UOvercast leaves the sky's part out and is what a table means;
// Solution.UAmbient divides by the mixed air and radiant temperatures of ISO
// 15099. For one pane in one state the three differ by half.
//
// LightLayers.Diffuse is what one slope lets through and Glazing.Gain what the
// whole house takes in; BedLight says how much of it reaches a bed, separately
// for the sun's beam, by the sun's position, and the light of the sky. For
// plants the two count alike by the square metre, but only BedBeam.Facets shows
// a bed that lies half in shadow.
// NewBedLight takes houses of one bay: in several, a ray may pass a neighbour's
// roof before it comes in, which its rays through one facet do not follow.
package envelope
