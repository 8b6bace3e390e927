// Package ventilation computes the air that passes through the openings of a
// protected-cropping house, and what the house becomes with it.
//
// A vent-area rule says nothing about tonight's wind, the neutral level or the
// temperature the crop feels. Here every opening has its height, area,
// discharge coefficient and wind pressure coefficient, the pressure inside
// follows from the balance of mass on true densities, and temperature is solved
// together with the flow.
//
// # What is modelled
//
// Flow: one air space of uniform density (Network) with openings small and
// tall, screens, leaks and fans; several air spaces (Zones). With z the height
// above outside grade, P0 the inside pressure at z = 0 over the outside static
// pressure there, U the wind at the height to which Cp refers and rho = p/(R T),
//
//	dp(z) = (rho_o Cp U²/2 - rho_o g z) - (P0 - rho_i g z)
//	m     = sign(dp) Cd A sqrt(2 rho_up |dp|), rho_up of the side it comes from
//
// and the sum of m over all openings is zero. Wind also exchanges air through
// each opening by itself (WindExchange), so that vents at one level, or a
// single vent, ventilate in wind; in calm they do so only if they are tall. A
// tall opening integrates m over its height in closed form, inflow and outflow
// apart. The net inflow falls strictly with P0, so that a bracketed Newton
// search always finds its one root. Temperature and flow together may have
// several states (SteadyStates).
//
// Openings: free areas of flaps, sliding, roll-up and louvred vents, continuous
// ridge vents (RidgeVent), three published models of a flap's discharge, insect
// screens whose loss depends on the speed, wells for vents below grade, wind at
// height by power and log law, pressure coefficients of walls and roofs for
// exposed and sheltered sites.
//
// What the house becomes (Climate): canopy, floor, inner surface of the cover
// and inside air each with its balance of heat, the air with its balance of
// water, solved together with the flow on moist densities:
//
//	canopy: sun = sensible + latent + long-wave to cover and floor
//	floor:  sun + long-wave = sensible + latent + into the ground
//	cover:  convection + long-wave + condensation = (U without its inner film) A (Tcover - Tsol-air),
//	        or what package envelope has each facet, frame, door and bridge take (RealCover)
//	water:  transpiration + soil + mist + moisture = condensation + drip + m (W - Wo)
//	air:    sensible + heat + h_g of what evaporates = to the cover + m (h - ho) + h_g of what condenses
//
// with m in dry air, the same in and out. Leaves are one layer with stomata
// that follow light, temperature, deficit and CO2, differently by night and by
// day (Canopy); the cover is wet where its inner surface lies below the dew
// point, leaves and floor take dew, and air never exceeds saturation: what it
// cannot hold drips. Opening, heat, mist, vapour set free, a pad and shade make
// up a Setting. HeatFor asks for the heat that holds a temperature,
// OpeningForTemperature and OpeningForDeficit for how far the vents open,
// YearTo for the hours of a year, with soil and structure as stores of heat,
// under a TargetRule, which sets the targets of each hour: targets by day and
// night, a humidity held by vents and heat, a screen by sun and clock
// (DayNight), or a rule of the user's own. Heat enters as air, as radiation to
// crop and floor, in the floor, and from lamps as light, radiation and air.
// [FAO56] gives radiation and reference evapotranspiration outdoors (Grass).
//
// CO2: what burners and dosing give, what the canopy's photosynthesis takes and
// what the exchanged air carries, in steady state, over a period and hour by
// hour (CO2Case, CO2Hours), in µmol/mol and kg.
//
// Winter: the outside air that holds a humidity after what condenses on the
// cover (DryingCase), its heat and heat recovery, the time to dry and rounds of
// heat and vent (Purge), with the states of package psychro; cold air that
// falls on the crop as jets from each vent, and which vents to open first
// (ColdJet, ColdVents); what a door that is opened now and then costs, and what
// a lobby saves (DoorCase). Sunken houses: the stack that is left and the pool
// of cold air below it (StackOf), and wells filled with the air that passes
// through them (DugIn).
//
// Cooling: evaporative pads with their water and fans (PadWall, PadDesign),
// fogging up to saturation (Fogging), and where a shade leaves the sun's heat,
// outside, on or under the cover (Shade); each can be put before the balance of
// the house as a Setting.
//
// Control: vents that follow the temperature within what wind and rain allow
// (OpeningRule), stand where a hand put them (Schedule) or follow a controller of
// the user's own (Vents), run over a day (Climate.Day).
//
// # Which function to use
//
//	air through given openings at given temperatures      Network.Solve
//	the same with lobby or plant room                     Zones.Solve
//	the same with vents in wells                          DugIn.States
//	how wind joins in: quadrature, the larger, pressures  Network.WithExchange
//	two openings or one, by hand                          TwoLevels, SingleOpening
//	roof and side vents by the greenhouse equations       HouseVents; RoofWindows for hectares under glass
//	temperature, share of the sun that evaporates given   Network.SteadyStates (Load, Outdoors)
//	vent area for a rise, that share given                Network.AreaForRise
//	temperature, humidity, crop, flow, all found together NewClimate (ClimateHouse), Climate.Solve (Weather, Setting)
//	the same with every state that wind against stack has Climate.States
//	heat, or opening of the vents, for a setpoint         Climate.HeatFor, OpeningForTemperature, OpeningForDeficit
//	a day under a rule or a hand                          Climate.Day
//	a year, with the heat of soil and structure           Climate.YearTo (Hours, Targets, DayNight)
//	covers facet by facet, screens, films, wet faces      RealCover; SimpleCover for one U
//	CO2 of a house, the dose for a level                  CO2Case; CO2Hours for a year
//	evapotranspiration outdoors                           GrassDay, GrassHour, Grass; by ASCE's hour ShortReference, TallReference
//	the same from radiation alone                         Grass.PriestleyTaylor
//	transpiration inside with fitted coefficients         SunAndDeficit; without them Canopy, PenmanMonteith
//	fans with or without pads, by rules of practice       FanRates; by the heat PadDesign
//	fans that keep the air moving                         CirculatingFans
//	an insect screen, first look                          ScreenFactor; by its own loss Screen.Over
//	heat to carry water out, a kilogram                   HeatToDry; of a house DryingCase
//	air and heat to hold a humidity in winter             DryingCase; Purge for rounds of heat and vent
//
// Network computes the flow of air alone and takes temperatures, or one share
// of the sun, as given: for the design of vents and for checks by hand. Climate
// holds such a Network in its ClimateHouse and finds temperatures and humidity
// with it: for what the crop feels. Balance is the flow through a Network,
// ClimateState the whole house. Functions whose name ends in To fill a dst and
// then do not allocate; a nil dst allocates. CheckOpenings tells beforehand
// which openings cannot work.
//
// # What is not modelled
//
// Layers of different temperature in one air space, the dynamics of gusts
// (their exchange has one coefficient for all vents: see WindExchange; OneFace
// compares the correlations fitted to rooms), change of the wind pressure by
// the opening itself, transients of the flow. In Network moisture enters
// through the density only, when the caller gives that of moist air.
//
// In Climate: heat stored in air and crop (each hour is taken as steady; they
// follow within minutes), the sun's direction, except where Weather has Gain
// (otherwise the transmittance is one number), heat radiation of pipes straight
// to the cover, the part of the sun reflected inside that the cover absorbs,
// freezing of what condenses, water that runs short at the roots, the heat that
// water brings up from the roots, change of SimpleCover's U with wind.
//
// # Function, equation, range, accuracy, check
//
//	Network.Solve                   balance above                       ranges by field        see below              40-digit solutions; NIST cases
//	Network.WithExchange            [BoulardB95], [Kittas97]            Cw 0 to 0.5            half of the wind part  equations as quoted; see below
//	HouseVents.Solve                [Vanthoor11] eq. 64 to 66           Cw 0 to 0.5            as above               rows computed apart
//	RoofWindows.Solve               [DeJong90]                          0 to 44 degree         from memory            rows computed apart
//	Zones.Solve                     balance of each zone                1 to 100 zones         see below              Network, NIST series cases
//	Opening.Points                  equal parts, their middles          1 to 1000              1 % with ten           Network
//	Opening.MassFlow                Cd A sqrt(2 rho dp)                 one way                exact                  NIST cases
//	TallVent.Opening                bottom, top, width                  20 m tall              exact                  laws
//	TwoLevels.Flow                  h1 = H/(1+(r_i/r_o)(CA/CA)²)        calm                   exact                  Network
//	SingleOpening                   exact height integral               calm                   exact                  Network; [Brown62] 1 %
//	OneFace.Band                    six published fits                  rooms, one face        spread 1 : 2           published values
//	HandbookFlow.Solve              [HoF97] ch. 25; [HoF17] ch. 16      face to face           -34 to +120 %          Network, 1,500 houses
//	Hinged.Area                     front and side triangles            0 to 90 degree         geometry               laws
//	HingedModel.Discharge           [Bb18] 8.3; [EnVent17]; triangles   0 to 90 degree         1 %; not stated        published tests; coefficients
//	Screen.PressureDrop             Forchheimer                         woven screens          measured K, Y: 10 %    laws
//	Screen.Over                     screen and vent in series           a point                exact                  Forchheimer
//	PorosityModel.Screen            fits of K and Y to porosity         0.05 to 0.95           factor of 2            [SenScreen16]
//	SeriesArea                      (sum of 1/A²)^(-1/2)                one after the other    exact                  NIST cases
//	Louvre.FreeArea                 geometry                            sides to 200 m         geometry               worked by hand
//	RidgeVent.Opening               gap of a flap at the ridge          0 to 90 degree         geometry               worked by hand
//	StackOf, Well.Opening           geometry; 1/(CA)² adding            10 m below grade       exact                  worked by hand
//	Shelter.Coefficient             tables [Liddament96]                low-rise               0.05                   sums of the tables
//	Shelter.RoofMean                table [PersilyIvy01]                low-rise, 1:1 and 2:1  0.05                   means of the slopes
//	WallCoefficient                 [SwaChan87] eq. 2-1                 sides 1:5 to 5:1       fit of tunnel tests    [PersilyIvy01] profile
//	PowerWind.Speed                 power law [HoF17] ch. 24            0.1 to 200 m           mean wind only         laws
//	LogWind.Speed                   [EnWind05] eqs. 4.3 to 4.5          0.1 to 200 m           mean wind only         worked by hand
//	FAO56WindAtTwoMetres            [FAO56] eq. 47                      0.5 m up               grass                  example 14
//	PadWall.Cool                    t = t0 - eta (t0 - twb)             wet bulb above 0 °C    of psychro             [Hundy16] ex. 22.1
//	PadDesign.Size                  Sensible/(h(t + Rise) - h(t))       wet bulb above 0 °C    of psychro             laws
//	Fogging.Into                    mass and enthalpy kept              to saturation          of psychro             laws
//	Shade.Balance, LayerFor         two layers, all reflections         one band, diffuse      measured optics        [Baille01], by hand
//	OpeningRule.Next                proportional, wind, rain            0 to 1                 exact                  worked by hand
//	Climate.Day                     steady steps under vents            a minute to a day      of Climate.Solve       laws
//	Network.SteadyStates            S(1-f) = (m cp + L) dT              to 80 °C inside        1e-9 of the heat       laws
//	Network.AreaForRise             the same, for the area              0.01 to 80 K           1e-9 of the heat       SteadyStates
//	Climate.Solve                   the five balances above             -60 to 80 °C inside    1e-9 of each balance   second solution 1e-6 K; laws
//	Climate.States                  the same, over the flow             states 1 % apart       as Climate.Solve       SteadyStates for dry air
//	Climate.HeatFor                 the same at a temperature           -60 to 80 °C inside    as Climate.Solve       its inverse
//	Climate.YearTo                  hours, exact masses                 soil, structure        of the steady hour     worked by hand
//	Canopy.Uptake                   [Vanthoor11b] eq. 10 to 23          0 to 45 °C             fitted to tomato      computed apart
//	CO2Case.Steady, Over, Dose      S + R - P(C) = G rho (C - Co)       to pure CO2            1e-9 of the uptake     computed apart; laws
//	RealCover                       envelope.House.Loss                 -60 to 60 °C inside    1e-6 of the heat       envelope at the state
//	DayNight.At, Targets            as said                             by hour                1e-6 K, 1e-6           laws
//	OpeningForTemperature           root of T(opening) - limit          0 to 1                 1e-6 K                 laws
//	OpeningForDeficit               root of the deficit                 0 to 1                 32 steps               laws
//	Canopy.Solve                    2 LAI form [Stanghellini87]         LAI to 12              fitted to one crop     factors by hand
//	PenmanMonteith                  [FAO56] eq. 3                       linear saturation      4 % of Canopy.Solve    Canopy.Solve
//	Grass.Day, Hour                 [FAO56] eq. 6, 53                   grass of 0.12 m        as printed             examples 17, 18, 19
//	GrassDay.Grass                  [FAO56] eq. 12, 17, 38 to 40        -40 to 60 °C           as printed             examples 3, 5, 11, 12, 17, 18
//	GrassHour.Grass                 [FAO56] eq. 38 to 40, 45, 46        -40 to 60 °C           as printed             example 19
//	ASCEReference.Hour              [Asce05] eq. 1                      -40 to 60 °C           as printed             appendix C, 30 hours
//	Grass.PriestleyTaylor           [PriestleyT72]                      alpha 0.5 to 2         a fit                  McMahon13 S19.109
//	SunAndDeficit.Solve             [Baille94]                          coefficients given     over 90 % of rates     rows computed apart
//	FanRates.Solve                  laws of practice [Kessler]          to 4,000 m             rules                  tables from memory, 0.01
//	CirculatingFans.Solve           [HafPage]                           any floor              rule                   its worked example
//	ScreenFactor                    [PerezParra04]                      0.05 to 0.95           1.3 to 2 too much      rows computed apart
//	HeatToDry                       (hi - ho)/(Wi - Wo)                 outside air drier      of psychro             rows computed apart
//	FAO56SolarFromTemperature       [FAO56] eq. 50                      a day                  an estimate            example 15
//	FAO56VapourFromBulbs            [FAO56] eq. 15 and 16               aspirated              as printed             example 4
//	FAO56SoilHeatMonth, MonthSoFar  [FAO56] eq. 43, 44                  grass                  as printed             examples 13, 17
//	DryingCase.Flow                 m = (E - C)/(W - Wo)                ranges by field        1e-12 of water, heat   laws; C: Lewis relation, 10 %
//	DryingCase.Time                 exponentials between sinks          well mixed             exact                  small steps; dilution law
//	DryingCase.Settled              Release = m (W - Wo) + C            short of saturation    1e-9 of the water      Flow, its inverse
//	DewLimit                        dew point below the coldest         colder than the air    of psychro             laws
//	Purge.Rounds                    exp(-n) of the air stays            well mixed             1e-9 of water, heat    laws
//	ColdJet.Fall                    [Hagstrom99] bend, falling jet      band of psi 1 : 3      the band itself        momentum integral; plume laws
//	ColdVents.At                    Network.Solve, ColdJet.Fall         jets do not meet       as Fall                Network
//	DoorCase.Loss                   Network.Solve; gusts [Warren84]     ranges by field        as Network.Solve       cold-store door formula
//	DoorCase.WithLobby              1/(1 + x/2)² of its difference      well mixed             exact                  small steps; 2^(-3/2)
//	DugIn.States                    Network.Solve, wells full           up to 10 wells         as Network.Solve       Network; band of wind
//
// Network.Solve holds flows to 1e-8 and the pressure to 1e-9 Pa in the
// reference cases. Against solutions of 48 digits its Flow held to 1e-12 in
// 12,000 random houses of 2 to 5 vents of 0.01 to 30 m²; over the full ranges
// of the fields (areas of 1e-5 to 1e5 m²) 11 of 12,000 exceeded 1e-8, the worst
// by most of the flow: the pressure has no digits left to resolve what vast
// openings under one drive exchange. The flow of a single path whose drive
// vanishes is exact in absolute terms only: it goes as the root of a rounding
// error. Zones.Solve holds 1e-8 of the flow except in one case in thirty, which
// comes near it.
//
// # How stack, pressures and turbulence combine
//
// The pressures of stack and mean wind drive Gp; the turbulence of wind
// exchanges Gx through each vent. InQuadrature, the default, has G = sqrt(Gp² +
// Gx²), as the greenhouse equations have it for stack and wind; LargerOfTwo
// takes the larger; the zero WindExchange takes Gp alone. Where vents face the
// wind differently the fitted Cw counts some of the mean wind twice: by 14 %
// for open sides to windward and lee, by 41 % at most. Against the sources that
// could be read:
//
//	source                      what it has                               quadrature            pressures alone
//	[BoulardB95] eq., quoted    one roof opening in calm                  -5.7 %                the same
//	the same                    wind alone                                exact                 no flow
//	[Kittas97] eq., quoted      two small openings, stack and wind        1 %, by the densities no wind at one coefficient
//	[Kittas97b], abstract       wind dominates from U/sqrt(dT) = 1 on     from 0.96 on          -
//	[TeitelW14], abstract       tracer gas in a house of one span, sides  14 % above pressures  agree well to 4 m/s
//	                            to windward and lee
//	[LopezSonic11], abstract    turbulence at side vents carries 36 % of  12 %                  0 %
//	                            the heat in 2 m/s, 2 % from 4 m/s on      12 %                  0 %
//
// The measured air changes themselves stand in texts that could not be opened:
// none could be read for houses with roll-up sides alone, two ridge vents or
// one door, so no error against a measured flow can be stated.
//
// Climate on random houses and hours (TestCampaignOfHouses, 100,000 houses with
// covers by U, 99,919 of them stable at the temperature that HeatFor held): HeatFor
// never asked for heat that Solve showed unneeded; Solve had no answer for one and
// missed the stronger of several flows in seven. On real covers, cold, 5,000
// random hours of nine covers (TestCampaignOfRealHours): one without an answer,
// twelve with covers between dry and wet, the heat of all others envelope's
// within 1e-6. An hour of a house of ten facets
// on real covers takes four to six solutions of all covers from the hour before,
// where facets see each other (RadiantEnclosure) each of them some rounds: in
// units of a math.Exp of 15 ns, 16 to 27 microseconds for a cover by U, about 1.1
// milliseconds for RadiantGiven and 1.7 for RadiantEnclosure, measured on a busy
// machine.
//
// # Known departures from the sources
//
// The stack formula of the handbook and the Boussinesq form are offered beside
// the balance for comparison; at 30/22 °C the latter errs by 0.3 %, at large
// differences of temperature and area by up to 8 %. Published reference results
// with a fixed density of 1.2 kg/m³ are 0.7 % below the balance at 20/10 °C.
// Climate counts the flow in dry air, so that the water which the air gains
// leaves through the openings too: Network with the same densities balances
// moist air and differs by half of that gain, under 1 %. Its moist air is the
// ideal form of the handbook over psychro's saturation lines; humidities of a
// real-gas State differ by the enhancement factor, 0.4 % at saturation.
// EnPolynomial gives 0.90 of the frame at 90 degrees, where a flap is wholly
// open. The print of semi-sheltered pressure coefficients that was read repeats
// the exposed rows of roofs above 10 degrees: Shelter.Coefficient has those of
// [PersilyIvy01] up to 30 degrees and, above, a row from memory. The fall of a
// tilted slot's jet counts along its line, as that of a compact one, where the
// source counts the level distance; its factor for a jet straight down is
// offered for any (Landing.Mild), and the colder answer without it is the one
// that ColdVents goes by.
//
// # Cautions
//
// Flow figures carry the uncertainty of discharge and pressure coefficients,
// 20 % and more, temperatures under a cold jet that of the band that Fall
// shows. Vents must close in storm and be held against it: the structure,
// and local codes and licensed practice, come first.
// Where CO2 is given, burners inside need air and an alarm for carbon monoxide,
// flue gas may carry gases that harm plants and people, and 5,000 µmol/mol is the
// usual limit for people at work: local codes and licensed practice decide.
//
// # Sources
//
//	AixLib24    RWTH Aachen EBC, AixLib, Modelica library, package
//	            Airflow.WindowVentilation (2024): published formulas of hinged
//	            openings and single-sided flow with their references
//	Asce05      ASCE-EWRI, The ASCE standardized reference evapotranspiration
//	            equation, 2005 (equations and appendix C as in tests of the open
//	            libraries pyet and refet)
//	Baille01    A. Baille, C. Kittas, N. Katsoulas, "Influence of whitening on
//	            greenhouse microclimate and crop energy partitioning", Agric.
//	            Forest Meteorol. 107 (2001) 293-306 (abstract)
//	Baille94    M. Baille, A. Baille, J. C. Laury, "A simplified model for predicting
//	            evapotranspiration rate of nine ornamental species vs. climate
//	            factors and leaf area", Sci. Hortic. 59 (1994) 217-232 (form as
//	            quoted elsewhere, the table of crops not read)
//	Bb18        Building Bulletin 101, Guidelines on ventilation, thermal comfort
//	            and indoor air quality in schools, ESFA 2018, sec. 8.3; as tested
//	            in CERN's CAiMIRA
//	BoulardB95  T. Boulard, A. Baille, "Modelling of air exchange rate in a
//	            greenhouse equipped with continuous roof vents", J. agric. Engng
//	            Res. 61 (1995) 37-48 (as [Vanthoor11] quotes it)
//	Brown62     W. G. Brown, K. R. Solvason, "Natural convection through
//	            rectangular openings in partitions", Int. J. Heat Mass Transfer 5
//	            (1962) 859-868
//	Bs91        BS 5925:1991, Code of practice for ventilation principles and
//	            designing for natural ventilation
//	Buildings24 LBNL, Buildings, Modelica library (2024), package
//	            Airflow.Multizone and its reference results
//	ChiCol34    T. H. Chilton, A. P. Colburn, Ind. Eng. Chem. 26 (1934) 1183-1187
//	Daunicht71  H. Daunicht, Acta Horticulturae 17 (1971) 62-71 (abstract)
//	DeJong90    T. de Jong, Natural ventilation of large multi-span greenhouses,
//	            thesis, Wageningen 1990; coefficients as in H. F. de Zwart,
//	            Analyzing energy-saving options in greenhouse cultivation using a
//	            simulation model, thesis, Wageningen 1996 (from memory)
//	Din22       DIN/TS 4108-8:2022-09 (formula as in AixLib24)
//	Dowdy87     J. A. Dowdy, N. S. Karabash, "Experimental determination of heat
//	            and mass transfer coefficients in rigid impregnated cellulose
//	            evaporative media", ASHRAE Transactions 93 (1987) (from memory)
//	EnGlass11   EN 673:2011, Glass in building - Determination of thermal
//	            transmittance (surface coefficients from memory)
//	EnVent17    EN 16798-7:2017 and CEN/TR 16798-8 (formulas as in AixLib24)
//	EnWind05    EN 1991-1-4:2005, Eurocode 1, wind actions, sec. 4.3
//	            (read as quoted elsewhere)
//	FAO56       R. G. Allen and others, Crop evapotranspiration, FAO Irrigation
//	            and Drainage Paper 56, Rome 1998
//	GidsPhaff82 W. de Gids, H. Phaff, "Ventilation rates and energy consumption due
//	            to open windows", Air Infiltration Review 4 (1982) 4-5
//	HafPage     a page of greenhouse-management.com on circulating fans
//	Hagstrom99  K. Hagström, K. Sirén, A. M. Zhivov, Calculation Methods for Air
//	            Supply Design in Industrial Facilities, Helsinki University of
//	            Technology 1999 (formulas as in the open Python package hvac,
//	            air_diffusion.air_jets)
//	HoF17       ASHRAE Handbook - Fundamentals (SI), 2017, ch. 1, 16, 18
//	            (sol-air temperature, from memory), 20 (jets, from memory) and 24
//	HoF97       ASHRAE Handbook - Fundamentals (SI), 1997, ch. 25 eqs. 37 and 38
//	            (read as quoted elsewhere)
//	Hundy16     G. F. Hundy, A. R. Trott, T. C. Welch, Refrigeration, Air
//	            Conditioning and Heat Pumps, ch. 22 (example 22.1)
//	Kessler     J. R. Kessler, extension text on fan and pad cooling: the rate of 8
//	            cfm/ft² at 5000 foot-candles; factors from memory of P. V. Nelson,
//	            Greenhouse Operation and Management
//	Kittas97    C. Kittas, T. Boulard, G. Papadakis, "Natural ventilation of a
//	            greenhouse with ridge and side openings: sensitivity to
//	            temperature and wind effects", Trans. ASAE 40 (1997) 415-425 (as
//	            [Vanthoor11] quotes it)
//	Kittas97b   The same authors, "Greenhouse ventilation rates through combined
//	            roof and side openings: an experimental study", 1997 (abstract)
//	LarsenH08   T. S. Larsen, P. Heiselberg, "Single-sided natural ventilation
//	            driven by wind pressure and temperature difference", Energy and
//	            Buildings 40 (2008) 1031-1040 (formula as in AixLib24)
//	Liddament96 M. W. Liddament, A Guide to Energy Efficient Ventilation, AIVC 1996
//	LopezSonic11 A. López, D. L. Valera, F. Molina-Aiz, "Sonic anemometry to measure
//	            natural ventilation in greenhouses", Sensors 11 (2011) 9820-9838
//	            (abstract)
//	Miguel97    A. F. Miguel and others, "Analysis of the airflow characteristics
//	            of greenhouse screening materials", J. Agric. Eng. Research 67
//	            (1997) 105-112 (from memory)
//	MonsiSaeki53 M. Monsi, T. Saeki, Japanese J. Botany 14 (1953) 22-52
//	Monteith65  J. L. Monteith, Evaporation and environment, Symp. Soc. Exp.
//	            Biology 19 (1965) 205-234 (from memory)
//	NistAir89   G. N. Walton, AIRNET, NISTIR 89-4072, 1989: test cases as
//	            reproduced by NIST in contam-x-jr-ml
//	PerezParra04 J. Perez Parra, E. Baeza, J. I. Montero, B. J. Bailey, "Natural
//	            ventilation of parral greenhouses", Biosystems Engineering 87 (2004)
//	            355-366 (as [Vanthoor11] quotes it)
//	PersilyIvy01 A. Persily, E. Ivy, Input data for multizone airflow and IAQ
//	            analysis, NISTIR 6585, 2001: values as in NIST's file of wind
//	            pressure profiles
//	PriestleyT72 C. H. B. Priestley, R. J. Taylor, Mon. Weather Rev. 100 (1972) 81-92
//	            (from memory); checked by T. A. McMahon and others, Hydrol. Earth
//	            Syst. Sci. 17 (2013) 1331-1363, supplement S19.109 (McMahon13)
//	SenScreen16 A. López and others, "Wind tunnel analysis of the airflow through
//	            insect-proof screens ...", Sensors 16 (2016) 690
//	Stanghellini87 C. Stanghellini, Transpiration of greenhouse crops: an aid to
//	            climate management, thesis, Wageningen 1987 (from memory)
//	SwaChan87   M. V. Swami, S. Chandra, "Procedures for calculating natural
//	            ventilation airflow rates in buildings", Florida Solar Energy
//	            Center, FSEC-CR-163-86, 1987
//	TeitelW14   M. Teitel, E. Wenger, "Air exchange and ventilation efficiencies of
//	            a monospan greenhouse with one inflow and one outflow through
//	            longitudinal side openings", Biosystems Engineering 119 (2014)
//	            98-107 (abstract)
//	Valera06    D. L. Valera and others, "Aerodynamic analysis of several
//	            insect-proof screens used in greenhouses", Spanish J. Agric.
//	            Research 4 (2006) 273-279 (coefficients from memory)
//	Vanthoor11  B. H. E. Vanthoor, C. Stanghellini, E. J. van Henten, P. H. B. de
//	            Visser, "A methodology for model-based greenhouse design: Part 1, a
//	            greenhouse climate model for a broad range of designs and
//	            climates", Biosystems Engineering 110 (2011) 363-377, electronic
//	            appendix
//	Vanthoor11b the same authors, Part 2, 378-395, electronic appendix
//	Warren84    P. R. Warren, L. M. Parkins, "Single-sided ventilation through open
//	            windows", Windows in Building Design and Maintenance, Gothenburg
//	            1984 (formula as in AixLib24)
package ventilation
