package ventilation

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
)

// RealCover is the cover of a house as package envelope computes it: every
// facet with its layers, faces wet or dry, the screen open or drawn, frame,
// doors, thermal bridges, walls to annexes, and the leaks of the plan. The
// house's ground is not part of it: ClimateHouse.Floor is. A screen lets air
// through but no vapour: what would condense above it (FacetLoss.DripsAbove)
// stays in the inside air. Of the radiant
// surroundings RadiantEnclosure is the one to take: facets see each other, and
// crop and floor with their own temperatures. RadiantGiven, which is taken for
// RadiantAir, too, puts crop and floor before every facet, as if they were as
// large as all covers: quicker, and up to a third too much in small dry houses.
type RealCover struct {
	House         *envelope.House          // of envelope.NewHouse
	Conditions    envelope.HouseConditions // correlations, inner faces, month of the annexes' ground; air, sky, wind, sun and screen of it are not read
	Transmittance float64                  // fraction, 0 to 1, of the sun on the horizontal that arrives inside, per floor area; not read where Weather has Gain
	Absorptance   float64                  // fraction, 0 to 1, of the sun on the horizontal that the covers absorb, per floor area, evenly; not read where Weather has Gain
}

// DefaultRealCover returns the covers of the house in envelope's default
// conditions, with the transmittance, 0.65, and the absorptance, 0.10, of
// DefaultSimpleCover.
func DefaultRealCover(h *envelope.House) *RealCover {
	return &RealCover{House: h, Conditions: envelope.DefaultHouseConditions(), Transmittance: 0.65, Absorptance: 0.10}
}

// check joins every fault of r, by field.
func (r *RealCover) check() error {
	if r.House == nil {
		return fmt.Errorf("House: %w: envelope.NewHouse makes one", ErrRange)
	}
	var sun error
	if r.Transmittance+r.Absorptance > 1 && shareRange.Contains(r.Transmittance) && shareRange.Contains(r.Absorptance) {
		sun = &RangeError{Field: "Transmittance + Absorptance", Value: r.Transmittance + r.Absorptance, Min: 0, Max: 1, Unit: "fraction", Source: "the cover gives away no more sun than falls on it"}
	}
	k := r.Conditions
	k.Sun = nil
	_, err := r.House.Loss(k)
	return errors.Join(
		domain.Within("Conditions", err),
		shareRange.Check("Transmittance", r.Transmittance),
		shareRange.Check("Absorptance", r.Absorptance),
		sun,
	)
}

// Ranges of what the covers know.
var (
	realAirRange  = domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "the covers of Real"}
	realWindRange = domain.Range{Min: 0, Max: 40, Unit: "m/s", Source: "the covers of Real"}
)

// checkReal returns what the covers do not know of the weather.
func (w *Weather) checkReal(h *envelope.House) error {
	out := w.Air.Temperature()
	var gain error
	if w.Gain != nil {
		n := float64(len(h.Shape().Facets))
		gain = domain.Range{Min: n, Max: n, Unit: "facets", Source: "one entry for each facet of the shape"}.Check("length of Gain.Sun", float64(len(w.Gain.Sun)))
	}
	return errors.Join(
		realAirRange.Check("temperature of Air", out),
		realWindRange.Check("Wind", w.Wind),
		domain.Range{Min: out - 100, Max: out + 10, Unit: "°C", Source: "the covers of Real: at most 10 K above the outside air and 100 K below it"}.Check("Sky", w.Sky),
		gain,
	)
}
