// Package answers computes what a plan's house does: the nights that its heater
// is sized for, frost, drip, vents, light, ducts, water, electricity, the year
// and what would pay back. It prints nothing. Every part takes the loss of the
// same house: covers, sky, frame, doors, ground, leakage and vapour.
//
// Of returns the whole answer; its first part is a list of decisions, each with
// a code that stays, what holds, by what margin, and what cures it. The parts
// serve programs that ask one question.
package answers
