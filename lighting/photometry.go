package lighting

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Ranges of the inputs that describe an intensity distribution.
var (
	ppfRange       = domain.Range{Min: 0, Max: 1e5, Unit: "µmol/s"}
	exponentRange  = domain.Range{Min: 0, Max: 20000, Unit: "(exponent)", Source: "0 is even over the hemisphere"}
	beamAngleRange = domain.Range{Min: 2, Max: 178, Unit: "degree", Source: "full angle at half intensity, below the 180 of a hemisphere"}
	// usualBeamRange is where the full beam angles of crop fixtures lie. A
	// half angle taken for a full one mostly falls below it: Cautions warns.
	usualBeamRange = domain.Range{Min: 80, Max: 160, Unit: "degree", Source: "common practice, no source"}
)

// Distribution is the intensity of a fixture in every direction: a CosinePower
// or a *Table.
type Distribution interface {
	// Intensity in µmol/(s sr) at the angle gamma, degree, 0 to 180 from the
	// fixture's axis, and c, degree, about the axis, counter-clockwise from
	// the fixture's x axis seen from above when the fixture points straight
	// down.
	Intensity(gamma, c float64) float64
	// Flux is the total over all directions in µmol/s.
	Flux() float64
	// scaled returns the distribution with its intensities multiplied by k.
	scaled(k float64) Distribution
}

// CosinePower is the distribution I = I0 cos^m γ in the hemisphere about the
// axis and nothing behind it. The zero value emits nothing.
type CosinePower struct{ ppf, m float64 }

// NewCosinePower returns the distribution that emits ppf, µmol/s, 0 to
// 100,000, with the exponent m, 0 to 20,000: 1 is Lambert's, a flat diffuse
// emitter with a beam angle of 120 degree. All faults are
// reported together.
func NewCosinePower(ppf, m float64) (CosinePower, error) {
	err := errors.Join(ppfRange.Check("ppf", ppf), exponentRange.Check("m", m))
	if err != nil {
		return CosinePower{}, err
	}
	return CosinePower{ppf, m}, nil
}

// FromBeamAngle returns the cosine-power distribution that emits ppf, µmol/s,
// 0 to 100,000, with the beam angle beam, degree, 2 to 178: the FULL angle
// between the directions of half the axial intensity.
func FromBeamAngle(ppf, beam float64) (CosinePower, error) {
	err := errors.Join(ppfRange.Check("ppf", ppf), beamAngleRange.Check("beam", beam))
	if err != nil {
		return CosinePower{}, err
	}
	return NewCosinePower(ppf, beamExponent(beam))
}

// FromFieldAngle returns the cosine-power distribution that emits ppf, µmol/s,
// 0 to 100,000, with the field angle field, degree, 2 to 178: the FULL angle
// between the directions of a tenth of the axial intensity.
func FromFieldAngle(ppf, field float64) (CosinePower, error) {
	err := errors.Join(ppfRange.Check("ppf", ppf), beamAngleRange.Check("field", field))
	if err != nil {
		return CosinePower{}, err
	}
	return NewCosinePower(ppf, exponentAt(field, tenthIntensity))
}

// beamExponent returns the exponent m (dimensionless) of the cosine-power
// distribution whose full angle at half intensity is beam, degree, 2 to 178:
// m = ln 0.5/ln cos(beam/2) [Moreno06]. NaN outside.
func beamExponent(beam float64) float64 { return exponentAt(beam, halfIntensity) }

// The two conventions for the angle of a beam.
const (
	halfIntensity  = 0.5 // beam angle
	tenthIntensity = 0.1 // field angle
)

func exponentAt(angle, share float64) float64 {
	if !beamAngleRange.Contains(angle) {
		return math.NaN()
	}
	return math.Log(share) / math.Log(math.Cos(angle/2*radian))
}

// Flux returns the photon flux in µmol/s.
func (d CosinePower) Flux() float64 { return d.ppf }

// Exponent returns m (dimensionless).
func (d CosinePower) Exponent() float64 { return d.m }

// axial returns the intensity on the axis, I0 = PPF (m+1)/2π, in µmol/(s sr)
// [Moreno06].
func (d CosinePower) axial() float64 { return d.ppf * (d.m + 1) / (2 * math.Pi) }

// BeamAngle returns the full angle in degree at half the axial intensity, NaN
// for an exponent of 0.
func (d CosinePower) BeamAngle() float64 { return d.angleAt(halfIntensity) }

func (d CosinePower) angleAt(share float64) float64 {
	if d.m == 0 {
		return math.NaN()
	}
	return 2 * math.Acos(math.Pow(share, 1/d.m)) / radian
}

// ConeShare returns the fraction of the photons that leave within halfAngle,
// degree, 0 to 90, of the axis: 1 - cos^(m+1). NaN outside.
func (d CosinePower) ConeShare(halfAngle float64) float64 {
	if !(halfAngle >= 0 && halfAngle <= 90) {
		return math.NaN()
	}
	return 1 - math.Pow(math.Cos(halfAngle*radian), d.m+1)
}

// Intensity returns the photon intensity in µmol/(s sr) at gamma, degree from
// the axis, 0 to 180; c, degree about the axis, makes no difference.
func (d CosinePower) Intensity(gamma, c float64) float64 {
	if gamma >= 90 {
		return 0
	}
	return d.axial() * math.Pow(math.Cos(gamma*radian), d.m)
}

func (d CosinePower) scaled(k float64) Distribution { return CosinePower{d.ppf * k, d.m} }

// radian is one degree.
const radian = math.Pi / 180
