// Package lighting is being built.
package lighting
