// Package repo holds the tests of the repository as a whole: which package may
// import which, that every exported name is documented with its unit, that
// each package names its sources, and that go.mod asks for nothing else.
package repo
