// Package airheat is being built.
package airheat
