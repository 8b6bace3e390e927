// Package plan reads, checks, fills and explains a plan: the one description of
// a house that every example program takes.
//
// A plan is a JSON object whose keys carry their units. Whatever it leaves out
// takes a default, and Filled lists the defaults that were taken; null stands
// for leaving out. A section that a house may lack, such as lights, is absent
// unless the plan has it; {} has it with all its defaults. One table, Keys,
// holds every key with its kind, unit, range, default and meaning; it drives
// reading, checking, filling, the explanation and the printed plan. The structs
// are what programs read.
//
// Defaults are figures of the invented demo house, or those of the library's own
// Default functions, or common practice without a source; the heating values of
// fuels by volume are from memory. A grower's own figures come first.
//
// All faults of a plan are reported together, each with its key, its value and
// what is allowed: values out of range, misspelt keys with the nearest right
// one, keys that stand twice, and contradictions between keys. Reading is
// bounded by MaxBytes, MaxDepth, MaxKeys, MaxItems and MaxText, and at most
// MaxFaults faults are listed.
//
// Filled.Taken words the defaults in few lines; Filled.With changes single
// figures, as the flags of a program do; Explain prints the table.
//
// A change of a plan is a JSON object that holds only what differs, merged as
// in RFC 7396: objects are merged key by key; a list, a number or a text takes
// the place of what was there, so a list is always given whole; null takes the
// key out of the plan, so that its default holds again, or the section is gone.
package plan
