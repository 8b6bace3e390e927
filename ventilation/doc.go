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
//	water:  transpiration + soil + mist + moisture = condensation + drip + into a store + m (W - Wo)
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
// crop and floor, in the floor, and from lamps as light, radiation and air. House
// air may be blown through a store that takes heat and, above a vapour pressure of
// its own, water; a RefiningRule sets both anew for the state that they make.
// [FAO56] gives radiation and reference evapotranspiration outdoors (Grass).
//
// CO2: what burners and dosing give, what the canopy's photosynthesis takes and
// what the exchanged air carries, in steady state, over a period and hour by
// hour (CO2Case, CO2Hours), in µmol/mol and kg; a burner brings its heat and vapour
// with what it gives in the hour.
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
//	the pressure that pads take from the fans             an Opening, see PadWall
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
// # Cautions
//
// Flow figures carry the uncertainty of discharge and pressure coefficients,
// 20 % and more, temperatures under a cold jet that of the band that Fall
// shows. Vents must close in storm and be held against it: the structure,
// and local codes and licensed practice, come first.
// Where CO2 is given, burners inside need air and an alarm for carbon monoxide,
// flue gas may carry gases that harm plants and people, and 5,000 µmol/mol is the
// usual limit for people at work: local codes and licensed practice decide.
package ventilation
