package lighting

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// PhotonTable turns a table in cd into photons of the band, µmol/(s sr), for a
// fixture whose light has the spectrum s in every direction. An invisible
// spectrum is refused: candela say nothing about it.
func PhotonTable(t *Table, s Spectrum, b Band) (*Table, error) {
	k := s.PhotonsPerLumen(b)
	if math.IsNaN(k) {
		return nil, fmt.Errorf("%w: a spectrum without visible light cannot turn candela into photons", ErrNoSolution)
	}
	return t.Scaled(k)
}

// Channel is one colour of a fixture: its spectrum and its part of the lumens.
type Channel struct {
	Name     string   // as the user calls it
	Spectrum Spectrum // relative is enough
	Lumens   float64  // fraction of the fixture's lumens with every channel at full, 0 to 1
}

// ChannelTables divides a table in cd, measured with every channel at full,
// into one photon table for each channel, µmol/(s sr) of the band. The lumen
// fractions must add up to 1 within 1e-6. It assumes that every channel
// shines in the same directions; where each was measured alone, use
// PhotonTable on each.
func ChannelTables(t *Table, channels []Channel, b Band) ([]*Table, error) {
	var errs []error
	sum := 0.0
	fraction := domain.Range{Min: 0, Max: 1, Unit: "(fraction)"}
	for i, c := range channels {
		if err := fraction.Check(fmt.Sprintf("lumens of channel %d %q", i+1, c.Name), c.Lumens); err != nil {
			errs = append(errs, err)
		}
		sum += c.Lumens
	}
	if !(math.Abs(sum-1) <= 1e-6) {
		errs = append(errs, &RangeError{Field: "sum of the channels' lumens", Value: sum, Min: 1, Max: 1, Unit: "(fraction)"})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	var out []*Table
	for _, c := range channels {
		share, err := t.Scaled(c.Lumens)
		if err != nil {
			return nil, err
		}
		photons, err := PhotonTable(share, c.Spectrum, b)
		if err != nil {
			return nil, fmt.Errorf("channel %q: %w", c.Name, err)
		}
		out = append(out, photons)
	}
	return out, nil
}
