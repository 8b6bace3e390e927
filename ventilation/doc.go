// Package ventilation is being built.
package ventilation
