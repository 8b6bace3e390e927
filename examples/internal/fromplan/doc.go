// Package fromplan turns a plan into the inputs of the library: air, shape,
// covers, ground, house, weather, heater, ducts, vents, lamps and crop. It
// computes no answers; where a plan's switches say so it leaves out what a
// published example leaves out.
//
// Names in a plan are those that the library's own look-ups take; a test holds
// the two together.
package fromplan
