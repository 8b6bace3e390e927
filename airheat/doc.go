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
// degree-hours and months on the same year.
//
// # What is not modelled
//
// The flame, nitrogen oxides and dust; dissociation (flue gas stays below
// 900 °C); acid dew point of sulphurous flue gas; more than one temperature
// of a node; transfer of moisture between the nodes of the exact solution.
//
// # Sources
//
//	BimschV10   Germany, First Ordinance on the Federal Immission Control Act
//	            (small and medium combustion plants), 2010: flue loss by the
//	            Siegert form; its constants from memory
//	BWSteam11   Babcock & Wilcox, Steam: its generation and use, 1911
//	            (public domain)
//	EnBoiler12  EN 303-5:2012, Heating boilers for solid fuels: efficiency by
//	            losses
//	HoF17       ASHRAE Handbook - Fundamentals (SI), 2017
//	Hundy08     G. F. Hundy, A. R. Trott, T. C. Welch, Refrigeration and
//	            Air-Conditioning, 4th ed., 2008
//	IsoFuel21   ISO 17225-1:2021, Solid biofuels - Fuel specifications and
//	            classes: net calorific value as received
//	IupacAw21   IUPAC, Standard atomic weights 2021 (abridged)
//	Janaf98     M. W. Chase, NIST-JANAF Thermochemical Tables, 4th ed., 1998, in
//	            the Shomate form of the NIST Chemistry WebBook, SRD 69
//	Joel96      R. Joel, Basic Engineering Thermodynamics, 5th ed., 1996
//	MurMck03    W. R. Murphy, G. McKay, Energy Management, 2003
//	Nag08       P. K. Nag, Basic and Applied Thermodynamics, 2008
package airheat
