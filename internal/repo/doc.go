// Package repo holds the tests of the repository as a whole: which package may
// import which; that every exported name is documented with its unit, and every
// checked input with its range; how wide each package's surface is, and a
// record of it; that each package names its sources; that the README's commands
// and programs are there; and that go.mod asks for nothing else.
package repo
