// Package airheat computes the forced-air heating of a small house for
// protected cropping: the heater's duty, what a return from the ridge really
// saves, fuel and flue gas, how fast the house warms, cools and freezes, and
// what a season costs; ducts, fan, perforated tube, jets and soil store.
//
// # What is modelled
//
// Heater: humid air of any pressure, the flow stated at the fan inlet, as
// standard air, at the outlet or as mass. House: two layers for the return
// from the ridge; three nodes (air, structure, soil) in time, solved exactly.
// Fuel: complete combustion of a given composition, flue loss by the integral
// of the gases' heat capacities, on either heating value. Season: hours, bins,
// degree-hours and months on the same year. Latent heat of freezing soil and of
// condensing vapour, which the exact solution leaves out, is in FreezeOut's march.
//
// # What is not modelled
//
// The flame, nitrogen oxides and dust; dissociation (flue gas stays below
// 900 °C); more than one temperature of a node; transfer of moisture between the nodes of the exact solution.
//
// # Which function to use
//
//	power, rise or flow of a heater, two of them given    PowerFor, RiseFor, FlowFor
//	what a return from the ridge saves                    TwoLayers
//	loss by the flue from composition and air             Fuel.FlueLoss; SiegertFor for the short form
//	a flue that must stay dry                             FlueHeat.DewPoint; with sulphur in the fuel FlueGas.AcidDewPoint
//	heat of a metre of hot-water pipe                     HeatPipe.Heat
//	the course of a night, a warm-up, a failure           Transient.After, WarmUp, CoolDown
//	a night set-back                                      NightSetBack; light houses save what their degree-hours say
//	heat of a year, hour by hour                          HeatingSeason.Hourly; SeasonNodes where soil and structure store
//	the same from less weather                            Bins, DegreeHours, MonthlyHouse.Solve
//	friction of a duct                                    Friction; SwameeJain, Haaland and AltshulTsal to compare with
//	a fan on its ducts                                    System.OperatingPoint; Tree.Solve with branches
//	a tube with holes                                     PerforatedTube.Solve, HolesFor
//
// # Heater, fuel, house and season
//
// Burning fuel makes carbon monoxide, hot supply air burns skin and scorches
// leaves, a house without heat or power freezes: print CombustionCaution,
// SupplyCaution, FrostCaution and FreezeCaution with results that touch these.
//
//	function              equation               range                 accuracy              check
//	PowerFor, RiseFor,    [HoF17] ch. 1 eq. 26,  -90 to 300 °C ideal,  rounding              by hand; Nag Ex. 15.10; Hundy Ex. 21.1,
//	 FlowFor              30                     to 200 °C real gas                          21.2, 25.1; trade figure
//	TwoLayers             two heat balances      Lower above Outside   rounding              worked by hand; mixed bound
//	Stoichiometry, Burn   atoms and [IupacAw21]  any composition       rounding              Babcock, Joel, Murphy and McKay, ORNL
//	AirRatioFromO2, -CO2  exact                  complete combustion   rounding              each the other's inverse
//	FlueLoss              [Janaf98] integrals    -20 to 900 °C         0.1 % of the tables   own table worked out apart; JANAF
//	FlueHeat.DewPoint     vapour pressure        no sulphur            0.05 K                the same table
//	FlueGas.AcidDewPoint  [VerBan74]             trioxide 1 mPa-100 Pa others 10 K apart     two worksheets
//	Siegert               [BimschV10]            above the dew point   1 to 5 % of FlueLoss  from memory
//	Losses, Burner        [EnBoiler12] losses    to the higher value   definition            Murphy Ex. 6.9; trade figure
//	DirectFired           atoms                  any fuel              rounding              kg of water per kWh
//	MixedGas, PurgeTime   well mixed house       constant exchange     exact                 Douglas Ex. 25.11
//	DryGasLoss, ...       [BWSteam11]            gas analysis          short forms           Babcock p. 262, 263
//	SiegertFor            fitted to FlueLoss     1 to 12 % of oxygen   0.2 % of FlueLoss     scan
//	Fuel.MoistFuel        [IsoFuel21]            moisture 0 to 0.65    definition            wood energy sheet
//	Dulong, Boie          published forms        coal; wood poor       1 to 3 % apart        Murphy Ex. 6.8; declared values
//	Transient.After       eigenvectors           linear nodes          1e-8 K, 1e-5 s        40-digit solutions; marching
//	WarmUp, CoolDown      After, from the        level met at the      1e-5 s                40-digit solutions; one-node closed form
//	                      steady state           start: no time
//	PowerForWarmUp        linear in the heat     positive heat         rounding              inverse of WarmUp
//	NightSetBack          exact steps of 5 min   constant weather      balance 1e-6          days worked apart; bound by the mean set-point
//	FreezeOut             heat contents, march   2 to 40 layers        0.01 K by the steps,  balance 1e-9; Stefan's depth; exact house;
//	                                                                   0.1 K by 24 layers    houses worked apart
//	HeatingSeason         sums over the year     8,760 or 8,784 h      rounding              constant year; Murphy Ex. 9.5; years
//	                                                                                         worked apart
//	MonthlyHouse          [IsoEnergy08]          gain ratio from 0     of the method         limits; constant year
//	SeasonNodes           exact hours            linear nodes          balance 1e-9          constant year; After
//
// The season methods differ for known reasons: Hourly stores no sun for the
// night and gives the highest heat; bins and degree-hours lend gains from one
// hour to another at the same temperature and come out lower; the monthly
// method sees no single night; SeasonNodes stores heat in the soil and pays for
// what the soil loses, which the others leave out. Plants that evaporate, lamps
// and the burner's standby are treated alike in all of them. Peak is the
// highest hourly mean, known to Hourly (steady) and to SeasonNodes (with the
// morning's warm-up); neither is the size of a heater.
//
// Known departures: the Shomate fits of CO2, SO2 and CO begin at 298 K and that
// of vapour at 500 K, and are used from 240 K on (0.5 % of cp at worst). The
// argon of the air is counted as nitrogen in volumes and heat. Older tables of
// atomic weights (12, 1, 16) and 23.15 % of oxygen by mass move the printed
// examples of the sources by up to 0.5 %; the tests of such rows use the
// source's own number of atoms. The real gas ends at 200 °C, beyond which a
// supply needs psychro.IdealGas.
//
// # Air movement
//
// One flow in a duct, a tree of branches, a perforated tube or a store: steady,
// incompressible, friction by Darcy and Weisbach with Colebrook's factor. A
// Fan is its curve at 1.2 kg/m³; every crossing with the ducts is found. Water
// condenses on cold walls of ducts and stores in Duct.Dew and Store.StepMoist.
// Not modelled: junctions other than a dividing tee (their losses stand in
// Segment.Fittings), noise, leakage of ducts, jets that cling to a surface, a
// wet wall that dries again. A hole of a PerforatedTube has one Discharge: air that
// passes it fast lowers the true one and lets the jet lean along the tube, by no more
// than the angle whose tangent is Velocity over JetSpeed of its TubePosition, since a
// jet keeps the speed it had along the tube; no fit of either could be read. A hot jet,
// a fan in stall over a heater and a frozen pipe can do harm: the results name them,
// local codes and licensed practice decide.
//
//	function              equation               range                 accuracy              check
//	Friction, Colebrook   [Cole39] eq. 12        Re to 1e9, ε/D to 0.1 4e-16 of its root     bisection; Cengel Ex. 8-3, 14-1
//	SwameeJain            [SwaJai76] eq. 3       Re 5e3 to 1e8         +2.9 % of Colebrook   scan
//	Haaland               [Haal83] eq. 8         Re 4e3 to 1e8         1.5 % of Colebrook    scan
//	AltshulTsal           [Tsal89]               Re 4e3 to 1e8         -9 to +3 %            duct sheet; scan
//	EquivalentDiameter    [Hueb48]               any                   as printed            duct sheet
//	DryAir                psychro.Viscosity      -60 to 200 °C         0.5 % (from memory)   tables
//	DuctNusselt           [Pet70]                Re 1e4 to 5e6         6 % of measurements   Lienhard Ex. 7.6
//	SmoothElbow, ...      [SmaDuct06] table A-7  as the table          linear between points the table's rows; Hundy Ex. 24.3
//	DividingRun, -Branch  [Crane09] ch. 2        share 0 to 1          4 % at the source's   Crane Ex. 7-36
//	                                                                   own steps
//	Duct.Heat             exact                  any                   rounding              Lienhard Ex. 7.6
//	Duct.Dew              psychro.LewisFactor    any                   0.5 % of finer cells  balance 1e-8; Duct.Heat
//	System.Loss, RoundFor Darcy-Weisbach         any                   rounding              Cengel Ex. 8-4, 8-5; Douglas Ex. 14.5, 14.6
//	OperatingPoint        fan laws [HoF17]       within the curve      1e-9                  scan; Cengel Ex. 14-1; Arasu Ex. 3.11, 4.12
//	Tree.Solve            balance of branches    any tree              1e-9                  laws; trees worked apart
//	PerforatedTube        momentum with regain   steady                1e-9 of the scheme    plain march, also apart; cosine law
//	Jet                   [HoF17] ch. 20         K from memory         band of the bend      momentum balance
//	Jet.ForcedLength      [VentGuide01] eq. 7.60 round: from memory    limit of a zone       powers of F
//	HeatPipe.Heat         [Righini20],           51 mm, others by law  2 to 24 % of the      rows computed apart; a handbook's pipe
//	                      [Vanthoor11]                                 convection
//	AirOrWater            heat balance           above                 rounding              Hundy Ex. 21.1
//	SoilStore             conduction             steps to a day        2.5 % of finer cells  line source; pipes below a plane; worked
//	                                                                                         apart
//	RockBed               [Ergun52], [Schum29]   any step              0.1 K of 20 K         Schumann's solution
//	Store.StepMoist       psychro.LewisFactor    steps to a day        heat to 1e-9          balance of water and heat
//
// Between Reynolds numbers 2300 and 4000 the friction factor is a straight
// line, a convention. In Cengel's Ex. 14-1 the fan table is joined by straight
// lines here and by a curve in the source: 643 against 650 cfm. Lienhard's Ex.
// 7.6 prints a film coefficient 2.8 % above what its own formula gives. Crane's
// factor G of a side branch jumps at shares of 0.4 and 0.6, at which no branches
// could balance; its falling lines end here where they meet the constant.
//
// # Sources
//
//	BimschV10   Germany, First Ordinance on the Federal Immission Control Act
//	            (small and medium combustion plants), 2010: flue loss by the
//	            Siegert form; its constants from memory
//	BWSteam11   Babcock & Wilcox, Steam: its generation and use, 1911
//	            (public domain)
//	ChenRod80   C. J. Chen, W. Rodi, Vertical Turbulent Buoyant Jets, 1980; from
//	            memory
//	Clam09      D. Clamond, "Efficient resolution of the Colebrook equation",
//	            Industrial & Engineering Chemistry Research 48 (2009) 3665-3671
//	Cole39      C. F. Colebrook, "Turbulent flow in pipes", J. Institution of Civil
//	            Engineers 11 (1939) 133-156; eq. number from memory
//	Crane09     Crane Co., Flow of Fluids Through Valves, Fittings, and Pipe, TP-410,
//	            2009: tees and wyes, chapter 2
//	DufBec13    J. A. Duffie, W. A. Beckman, Solar Engineering of Thermal
//	            Processes, 4th ed., 2013
//	ElM97       K. El Moueddeb, S. Barrington, N. Barthakur, perforated ventilation
//	            ducts, J. Agricultural Engineering Research 68 (1997) 29-37
//	EnBoiler12  EN 303-5:2012, Heating boilers for solid fuels: efficiency by
//	            losses; superseded by the edition of 2021, which was not read
//	Ergun52     S. Ergun, "Fluid flow through packed columns", Chemical Engineering
//	            Progress 48 (1952) 89-94; from memory
//	Haal83      S. E. Haaland, J. Fluids Engineering 105 (1983) 89-90; from memory
//	Hagstrom99  K. Hagström, K. Sirén, A. M. Zhivov, Calculation Methods for Air
//	            Supply Design in Industrial Facilities, Helsinki University of
//	            Technology 1999 (formulas as in the open Python package hvac)
//	HoF17       ASHRAE Handbook - Fundamentals (SI), 2017
//	Hueb48      R. G. Huebscher, "Friction equivalents for round, square and
//	            rectangular ducts", ASHVE Transactions 54 (1948)
//	Hundy08     G. F. Hundy, A. R. Trott, T. C. Welch, Refrigeration and
//	            Air-Conditioning, 4th ed., 2008
//	IsoEnergy08 ISO 13790:2008, Energy performance of buildings: monthly method;
//	            its constants from memory. Withdrawn; EN ISO 52016-1:2017, which
//	            was not read, stands in its place
//	IsoFuel21   ISO 17225-1:2021, Solid biofuels - Fuel specifications and
//	            classes: net calorific value as received
//	IupacAw21   IUPAC, Standard atomic weights 2021 (abridged)
//	Janaf98     M. W. Chase, NIST-JANAF Thermochemical Tables, 4th ed., 1998, in
//	            the Shomate form of the NIST Chemistry WebBook, SRD 69
//	Joel96      R. Joel, Basic Engineering Thermodynamics, 5th ed., 1996
//	MurMck03    W. R. Murphy, G. McKay, Energy Management, 2003
//	Nag08       P. K. Nag, Basic and Applied Thermodynamics, 2008
//	Pet70       B. S. Petukhov, Advances in Heat Transfer 6 (1970) 503-564
//	Righini20   M. Righini, B. Vanthoor, M. J. Verheul, M. Naseer, H. Maessen, T.
//	            Persson, C. Stanghellini, Biosystems Engineering 194 (2020) 1-15:
//	            convection of pipes, after H. F. de Zwart 1996
//	Schum29     T. E. W. Schumann, "Heat transfer: a liquid flowing through a porous
//	            prism", J. Franklin Institute 208 (1929) 405-416; from memory
//	SmaDuct06   SMACNA, HVAC Systems Duct Design, 4th ed., 2006: loss factors of
//	            fittings
//	SwaJai76    P. K. Swamee, A. K. Jain, "Explicit equations for pipe-flow
//	            problems", J. Hydraulics Division ASCE 102 (1976) 657-664; from
//	            memory
//	Tsal89      R. J. Tsal, "Altshul-Tsal friction factor equation", Heating/Piping/
//	            Air Conditioning, August 1989
//	UsStd76     U.S. Standard Atmosphere, 1976: tables, against which DryAir is checked
//	Vanthoor11  B. H. E. Vanthoor, C. Stanghellini, E. J. van Henten, P. H. B. de
//	            Visser, Biosystems Engineering 110 (2011) 363-377, electronic
//	            appendix, tables 2 to 4: heating pipes
//	VerBan74    F. H. Verhoff, J. T. Banchero, "Predicting dew points of flue gases",
//	            Chemical Engineering Progress 70 (1974) 71-72, as two public
//	            worksheets apply it
//	VentGuide01 H. Goodfellow, E. Tähti, Industrial Ventilation Design Guidebook,
//	            2001: section 7.4, jets
//
// The checks also take worked examples from Y. A. Cengel, J. M. Cimbala, Fluid
// Mechanics; J. F. Douglas and others, Fluid Mechanics; J. H. Lienhard, A Heat
// Transfer Textbook; A. V. Arasu, Turbomachines; and from the process-heating
// tests of Oak Ridge National Laboratory (ORNL). Babcock in the tables is
// [BWSteam11], Murphy [MurMck03].
package airheat
