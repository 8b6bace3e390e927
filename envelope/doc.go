// Package envelope is being built.
package envelope
