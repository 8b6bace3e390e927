package lighting

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Ranges of a spectrum's entries.
var (
	wavelengthRange    = domain.Range{Min: 100, Max: 5000, Unit: "nm", Source: "a value below 5 is a wavelength in µm"}
	spectralPowerRange = domain.Range{Min: 0, Max: 1e12, Unit: "W/nm"}
)

// Spectrum is the spectral power of a source, or the spectral irradiance on a
// plane, as a table: linear between its points and zero outside them. Its
// integrals are exact for that curve, with the curve cut at the ends of the
// band. Make it with NewSpectrum; it never changes afterwards, and the zero
// value is dark. Of a table in W/nm the integrals are W, µmol/s and lm; of one
// in W/(m² nm) they are W/m², µmol/(m² s) and lx; of a relative table only the
// ratios mean something.
type Spectrum struct{ nm, power []float64 }

// NewSpectrum makes a spectrum of wavelength, nm, 100 to 5000 and strictly
// increasing, and power, W/nm, 0 to 1e12 (or W/(m² nm)), of equal lengths. All
// faults are reported together, with the number of the point.
func NewSpectrum(wavelength, power []float64) (Spectrum, error) {
	var errs []error
	if len(wavelength) != len(power) {
		errs = append(errs, fmt.Errorf("%d wavelengths for %d powers: %w", len(wavelength), len(power), ErrRange))
	}
	if len(wavelength) < 2 {
		errs = append(errs, fmt.Errorf("a spectrum of %d points, at least 2: %w", len(wavelength), ErrRange))
	}
	for i, w := range wavelength {
		if err := wavelengthRange.Check(fmt.Sprintf("wavelength %d", i+1), w); err != nil {
			errs = append(errs, err)
		} else if i > 0 && !(w > wavelength[i-1]) {
			errs = append(errs, fmt.Errorf("wavelength %d is %g nm after %g nm, not increasing: %w", i+1, w, wavelength[i-1], ErrRange))
		}
	}
	for i, v := range power {
		if err := spectralPowerRange.Check(fmt.Sprintf("power %d", i+1), v); err != nil {
			errs = append(errs, err)
		}
	}
	if err := errors.Join(errs...); err != nil {
		return Spectrum{}, err
	}
	return Spectrum{slices.Clone(wavelength), slices.Clone(power)}, nil
}

// Band is a range of wavelengths under a name. Photons of different bands are
// different quantities; no function adds them. Besides PAR and FarRed, the trade
// speaks of ultraviolet, 100 to 400 nm, blue, 400 to 500, green, 500 to 600, and
// red, 600 to 700; some authors propose 400 to 750 nm instead of PAR.
type Band struct {
	Name string  // what the photons of the band are called
	From float64 // nm
	To   float64 // nm
}

// PAR returns the band of photosynthetic photons, 400 to 700 nm, by ANSI/ASABE
// S640 [Asabe17].
func PAR() Band { return Band{"photosynthetic", 400, 700} }

// FarRed returns the band of far-red photons, 700 to 800 nm, by ANSI/ASABE S640
// [Asabe17].
func FarRed() Band { return Band{"far-red", 700, 800} }

// nmPerMicromole turns a wavelength in nm into µmol/J: N_A h c = 0.119627 J
// m/mol, in nm J/µmol.
const nmPerMicromole = constant.Avogadro * constant.Planck * constant.LightSpeed * 1e3

// PhotonsPerJoule returns the photons in a joule of light of one wavelength,
// nm, 100 to 5000: wavelength/119.627 in µmol/J. NaN outside.
func PhotonsPerJoule(wavelength float64) float64 {
	if !wavelengthRange.Contains(wavelength) {
		return math.NaN()
	}
	return wavelength / nmPerMicromole
}

// at returns the power at wavelength, nm, in the unit of the table (W/nm);
// zero outside the table.
func (s Spectrum) at(wavelength float64) float64 {
	n := len(s.nm)
	if n == 0 || !(wavelength >= s.nm[0] && wavelength <= s.nm[n-1]) {
		return 0
	}
	i := min(sort.SearchFloat64s(s.nm, wavelength), n-1)
	if i == 0 {
		return s.power[0]
	}
	return s.between(i-1, wavelength)
}

// between interpolates on segment i.
func (s Spectrum) between(i int, w float64) float64 {
	return s.power[i] + (s.power[i+1]-s.power[i])*(w-s.nm[i])/(s.nm[i+1]-s.nm[i])
}

// overlap returns the part of segment i inside from..to.
func (s Spectrum) overlap(i int, from, to float64) (a, b float64, ok bool) {
	a, b = max(s.nm[i], from), min(s.nm[i+1], to)
	return a, b, a < b
}

// Power returns the radiant power between from and to, nm, in W (W/m² for a
// table of irradiance).
func (s Spectrum) Power(from, to float64) float64 {
	sum := 0.0
	for i := range max(len(s.nm)-1, 0) {
		if a, b, ok := s.overlap(i, from, to); ok {
			sum += (b - a) * (s.between(i, a) + s.between(i, b)) / 2
		}
	}
	return sum
}

// Photons returns the photon flux in the band in µmol/s (µmol/(m² s) for a
// table of irradiance): ∫ E λ/(N_A h c) dλ. Simpson's rule is exact for the
// product of the linear E and λ.
func (s Spectrum) Photons(b Band) float64 {
	sum := 0.0
	for i := range max(len(s.nm)-1, 0) {
		if a, z, ok := s.overlap(i, b.From, b.To); ok {
			m := (a + z) / 2
			sum += (z - a) / 6 * (a*s.between(i, a) + 4*m*s.between(i, m) + z*s.between(i, z))
		}
	}
	return sum / nmPerMicromole
}

// PPF returns the photosynthetic photon flux, 400 to 700 nm, in µmol/s; for a
// table of irradiance it is the PPFD in µmol/(m² s).
func (s Spectrum) PPF() float64 { return s.Photons(PAR()) }

// PARPhotonsPerJoule returns the PPF over the radiant power of the same band,
// µmol/J; NaN for a spectrum that is dark there.
func (s Spectrum) PARPhotonsPerJoule() float64 { return ratio(s.PPF(), s.Power(PAR().From, PAR().To)) }

// ratio is a/b, NaN for b = 0.
func ratio(a, b float64) float64 {
	if b == 0 {
		return math.NaN()
	}
	return a / b
}

// scaleRange is how far a spectrum is scaled.
var scaleRange = domain.Range{Min: 0, Max: 1e12, Unit: "(factor)"}

// Scaled returns the spectrum times k, factor, 0 to 1e12. Outside, every power is
// NaN.
func (s Spectrum) Scaled(k float64) Spectrum {
	if !scaleRange.Contains(k) {
		k = math.NaN()
	}
	out := Spectrum{s.nm, make([]float64, len(s.power))}
	for i, v := range s.power {
		out.power[i] = k * v
	}
	return out
}

// MixSpectra returns the sum of the spectra, exact between the points of all of them
// where no spectrum starts or ends above zero; where one does, its step is
// drawn over the smallest interval that float64 allows.
func MixSpectra(spectra ...Spectrum) Spectrum {
	var nm []float64
	for _, s := range spectra {
		nm = append(nm, s.nm...)
		if n := len(s.nm); n > 0 {
			nm = append(nm, math.Nextafter(s.nm[0], 0), math.Nextafter(s.nm[n-1], math.Inf(1)))
		}
	}
	slices.Sort(nm)
	nm = slices.Compact(nm)
	out := Spectrum{nm, make([]float64, len(nm))}
	for _, s := range spectra {
		for i, w := range nm {
			out.power[i] += s.at(w)
		}
	}
	return out
}
