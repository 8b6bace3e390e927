package lighting

import (
	"errors"
	"fmt"
	"io"
	"math"

	"cloche.example/internal/domain"
)

// CandelaWeb is a Web of luminous intensities, as LM-63 files hold it. Candela
// weigh light by the eye and say nothing of photons until the spectrum is
// known, so that no map takes them.
type CandelaWeb struct {
	Coordinates Coordinates // how the angles lie
	Vertical    []float64   // degree, strictly increasing; C within 0 to 180, A and B within -90 to 90
	Horizontal  []float64   // degree, strictly increasing
	Candela     [][]float64 // cd, 0 to 1e12: one row for each horizontal angle, one value for each vertical angle
}

func (w CandelaWeb) web() Web {
	return Web{Coordinates: w.Coordinates, Vertical: w.Vertical, Horizontal: w.Horizontal, Intensity: w.Candela}
}

// CandelaTable is a tabulated luminous intensity, linear in the angles. No
// fixture takes it: PhotonTable, ChannelTables and WithPhotonsPerLumen turn it
// into photons. Make it with NewCandelaTable or LM63.Table; it never changes
// afterwards and may be used by several goroutines at once.
type CandelaTable struct{ table *Table }

// NewCandelaTable checks the web, expands its symmetry and returns the table.
// Every fault is reported, with the index of the angle or value.
func NewCandelaTable(w CandelaWeb) (*CandelaTable, error) {
	t, err := NewTable(w.web())
	if err != nil {
		return nil, err
	}
	return &CandelaTable{t}, nil
}

// Lumens returns the luminous flux, lm: the exact integral of the interpolated
// intensity over all directions. NaN for a table that no constructor made.
func (t *CandelaTable) Lumens() float64 {
	if t.empty() {
		return math.NaN()
	}
	return t.table.Flux()
}

// Intensity returns the luminous intensity, cd, at gamma, degree, 0 to 180 from
// straight down in the fixture's frame, and c, degree counter-clockwise from
// the fixture's x axis seen from above.
func (t *CandelaTable) Intensity(gamma, c float64) float64 {
	if t.empty() {
		return math.NaN()
	}
	return t.table.Intensity(gamma, c)
}

func (t *CandelaTable) empty() bool { return t == nil || t.table.empty() }

// perLumenRange holds the photons of a band in a lumen.
var perLumenRange = domain.Range{Min: 1e-4, Max: 1e3, Unit: "µmol/lm", Source: "0.0122 for sodium lamps to 0.12 for red light, more for bands that the eye hardly sees"}

// WithPhotonsPerLumen returns the photon intensities, µmol/(s sr), of a
// fixture each lumen of whose light carries perLumen, µmol/lm, 1e-4 to 1e3:
// 1/LuxPerPPFD of a Broadband source or of a Spectrum.
func (t *CandelaTable) WithPhotonsPerLumen(perLumen float64) (*Table, error) {
	if err := perLumenRange.Check("perLumen", perLumen); err != nil {
		return nil, err
	}
	return t.photons(perLumen)
}

// FromLM63 returns the fixture of a photometric file of LM-63, hanging level: its
// light, each lumen of which carries perLumen, µmol/lm, 1e-4 to 1e3, and the input
// power that the file states. It refuses what ReadLM63 refuses and drops the
// warnings. PhotonTable needs no factor where the spectrum is known.
func FromLM63(file io.Reader, perLumen float64) (Fixture, error) {
	data, err := ReadLM63(file, nil)
	if err != nil {
		return Fixture{}, err
	}
	candela, err := data.Table()
	if err != nil {
		return Fixture{}, err
	}
	light, err := candela.WithPhotonsPerLumen(perLumen)
	if err != nil {
		return Fixture{}, err
	}
	return Fixture{Light: light, Power: data.InputPower}, nil
}

// photons takes any factor, µmol/lm.
func (t *CandelaTable) photons(k float64) (*Table, error) {
	if t.empty() {
		return nil, fmt.Errorf("a table without values: %w", ErrRange)
	}
	return t.table.times(k)
}

// PhotonTable turns a table in cd into photons of the band, µmol/(s sr), for a
// fixture whose light has the spectrum s in every direction. An invisible
// spectrum is refused: candela say nothing about it.
func PhotonTable(t *CandelaTable, s Spectrum, b Band) (*Table, error) {
	k := s.PhotonsPerLumen(b)
	if math.IsNaN(k) {
		return nil, fmt.Errorf("%w: a spectrum without visible light cannot turn candela into photons", ErrNoSolution)
	}
	return t.photons(k)
}

// Channel is one colour of a fixture: its spectrum and its part of the lumens.
type Channel struct {
	Name     string   // as the user calls it
	Spectrum Spectrum // relative is enough
	Lumens   float64  // fraction, 0 to 1; of the fixture's lumens with every channel at full
}

// ChannelTables divides a table in cd, measured with every channel at full,
// into one photon table for each channel, µmol/(s sr) of the band. The lumen
// fractions must add up to 1 within 1e-6. It assumes that every channel
// shines in the same directions; where each was measured alone, use
// PhotonTable on each.
func ChannelTables(t *CandelaTable, channels []Channel, b Band) ([]*Table, error) {
	var errs []error
	sum := 0.0
	for i, c := range channels {
		errs = append(errs, domain.Within(fmt.Sprintf("channels[%d]", i), shareRange.Check("Lumens", c.Lumens)))
		sum += c.Lumens
	}
	if !(math.Abs(sum-1) <= 1e-6) {
		errs = append(errs, &RangeError{Field: "sum of the channels' Lumens", Value: sum, Min: 1, Max: 1, Unit: "fraction"})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	var out []*Table
	for i, c := range channels {
		k := c.Spectrum.PhotonsPerLumen(b)
		if math.IsNaN(k) {
			return nil, fmt.Errorf("channels[%d] %q: %w: a spectrum without visible light cannot turn candela into photons", i, c.Name, ErrNoSolution)
		}
		photons, err := t.photons(k * c.Lumens)
		if err != nil {
			return nil, fmt.Errorf("channels[%d] %q: %w", i, c.Name, err)
		}
		out = append(out, photons)
	}
	return out, nil
}
