package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Sheet is a smooth, clear sheet for light or sun.
type Sheet struct {
	Index      float64 // dimensionless ratio, 1 to 4, refractive index over that of air
	Extinction float64 // 1/m, 0 to 1e5, Bouguer's coefficient
	Thickness  float64 // m, 1e-6 to 1
}

// Ranges of the optical inputs.
var (
	incidenceAngleRange = domain.Range{Min: 0, Max: 90, Unit: "degree", Source: "definition"}
	indexRange          = domain.Range{Min: 1, Max: 4, Unit: "ratio", Source: "chosen"}
	extinctionRange     = domain.Range{Min: 0, Max: 1e5, Unit: "1/m", Source: "chosen"}
)

// Light is what becomes of light on layers of sheets; the parts make 1.
type Light struct {
	Transmittance float64            // fraction
	Reflectance   float64            // fraction
	Absorptance   [MaxLayers]float64 // fraction, in each sheet from the outside
}

// Fresnel returns the reflectances as fractions of one smooth surface from
// air into a medium of the refractive index, ratio, 1 to 4, for light polarised
// perpendicular and parallel to the plane of incidence, at the angle, degree,
// 0 to 90: [DufBec13] eq. 5.1.1 to 5.1.4. NaN outside these.
func Fresnel(index, angle float64) (perpendicular, parallel float64) {
	if !incidenceAngleRange.Contains(angle) || !indexRange.Contains(index) {
		return nan, nan
	}
	sin, cos := sinCos(angle)
	return fresnel(index, sin, cos)
}

// sinCos is exact at grazing incidence.
func sinCos(angle float64) (sin, cos float64) {
	if angle == 90 {
		return 1, 0
	}
	return math.Sincos(angle * degree)
}

// fresnel writes eq. 5.1.1 and 5.1.2 in cosines, the same by Snell's law, and
// without their limit at normal incidence.
func fresnel(n, sin, cos float64) (perpendicular, parallel float64) {
	s := sin / n // eq. 5.1.4
	c := math.Sqrt(1 - s*s)
	p := (cos - n*c) / (cos + n*c)
	q := (n*cos - c) / (n*cos + c)
	return p * p, q * q
}

// Bouguer returns the fraction of light that crosses the sheet once at the
// angle of incidence, degree, 0 to 90, exp(-K L/cos) with the refracted ray:
// [DufBec13] eq. 5.2.2; NaN outside.
func (s Sheet) Bouguer(angle float64) float64 {
	if !incidenceAngleRange.Contains(angle) {
		return nan
	}
	sin, _ := sinCos(angle)
	x := sin / s.Index
	return math.Exp(-s.Extinction * s.Thickness / math.Sqrt(1-x*x))
}

// ExtinctionOf returns the extinction coefficient in 1/m that gives a sheet of
// the refractive index, ratio, 1 to 4, and the thickness, m, 1e-6 to 1, its
// measured transmittance at normal incidence, a fraction; NaN outside these and
// when the surfaces alone reflect more. It inverts [DufBec13] eq. 5.3.2.
func ExtinctionOf(index, thickness, transmittance float64) float64 {
	r, _ := Fresnel(index, 0)
	if !thicknessRange.Contains(thickness) || !(transmittance > 0) || !(transmittance <= (1-r)/(1+r)) {
		return nan
	}
	b := (1 - r) * (1 - r)
	// r² tau a² + b a - tau = 0, the root that does not cancel.
	a := 2 * transmittance / (b + math.Sqrt(b*b+4*r*r*transmittance*transmittance))
	return math.Max(0, -math.Log(a)/thickness)
}

// LightLayers are checked sheets from the outside. They are made by
// NewLightLayers.
type LightLayers struct {
	n      int
	sheets [MaxLayers]Sheet
}

// NewLightLayers returns the layers of one to six sheets, from the outside. The
// error joins a *RangeError for each fault, with Field as in
// "sheets[0].Index".
func NewLightLayers(sheets ...Sheet) (LightLayers, error) {
	if err := layerCountRange.Check("number of sheets", float64(len(sheets))); err != nil {
		return LightLayers{}, err
	}
	var faults []error
	check := func(r domain.Range, v float64, format string, i int) {
		if err := r.Check(fmt.Sprintf(format, i), v); err != nil {
			faults = append(faults, err)
		}
	}
	s := LightLayers{n: len(sheets)}
	for i, x := range sheets {
		check(indexRange, x.Index, "sheets[%d].Index", i)
		check(extinctionRange, x.Extinction, "sheets[%d].Extinction", i)
		check(thicknessRange, x.Thickness, "sheets[%d].Thickness", i)
		s.sheets[i] = x
	}
	return s, errors.Join(faults...)
}

// At returns what becomes of unpolarised light at the angle of incidence,
// degree, 0 to 90, as fractions: the sheets are combined for each polarisation
// and the two averaged after, [DufBec13] 5.1 to 5.3. Fields are NaN outside.
func (s LightLayers) At(angle float64) Light {
	if !incidenceAngleRange.Contains(angle) {
		l := Light{Transmittance: nan, Reflectance: nan}
		for i := range s.n {
			l.Absorptance[i] = nan
		}
		return l
	}
	sin, cos := sinCos(angle)
	return s.at(sin, cos)
}

func (s *LightLayers) at(sin, cos float64) Light {
	if cos == 0 {
		return Light{Reflectance: 1}
	}
	var tau, rho [2][MaxLayers]float64
	for i := range s.n {
		x := &s.sheets[i]
		y := sin / x.Index
		c := math.Sqrt(1 - y*y)
		a := math.Exp(-x.Extinction * x.Thickness / c) // eq. 5.2.2
		u, v := cos+x.Index*c, x.Index*cos+c
		p, q := (cos-x.Index*c)/u, (x.Index*cos-c)/v
		for j, r := range [2]float64{p * p, q * q} {
			ra := r * a
			t := a * (1 - r) * (1 - r) / (1 - ra*ra) // eq. 5.3.2
			tau[j][i], rho[j][i] = t, r*(1+a*t)      // eq. 5.3.3
		}
	}
	var l Light
	for j := range 2 {
		l.add(s.n, &tau[j], &rho[j])
	}
	return l
}

// add adds half of one polarisation. Space i lies outside sheet i; behind[i]
// is the reflectance of all sheets from i inward.
func (l *Light) add(n int, tau, rho *[MaxLayers]float64) {
	var behind, keep [MaxLayers + 1]float64
	for i := n - 1; i >= 0; i-- {
		keep[i] = tau[i] / (1 - rho[i]*behind[i+1])
		behind[i] = rho[i] + tau[i]*behind[i+1]*keep[i]
	}
	l.Reflectance += 0.5 * behind[0]
	down := 0.5
	for i := range n {
		next := down * keep[i]
		up := next * behind[i+1]
		l.Absorptance[i] += (down + up) * (1 - tau[i] - rho[i])
		down = next
	}
	l.Transmittance += down
}

// Nodes and weights of Gauss and Legendre on 0 to 1 for a diffuse mean, 8
// points, over the square of the sine.
var (
	gaussNodes   = [8]float64{0.0198550717512319, 0.1016667612931866, 0.2372337950418355, 0.4082826787521751, 0.5917173212478249, 0.7627662049581645, 0.8983332387068134, 0.9801449282487681}
	gaussWeights = [8]float64{0.0506142681451881, 0.1111905172266872, 0.1568533229389437, 0.1813418916891810, 0.1813418916891810, 0.1568533229389437, 0.1111905172266872, 0.0506142681451881}
)

// Diffuse returns what becomes of light of equal radiance from the whole
// half-space, as fractions: the mean over the square of the sine of the angle.
func (s LightLayers) Diffuse() Light {
	var sum Light
	const panels = 16
	for p := range panels {
		for i, x := range gaussNodes {
			// cos² = u², graded so that grazing angles get points enough.
			u := (float64(p) + x) / panels
			w := 2 * u * gaussWeights[i] / panels // d(sin²) = -d(cos²)
			l := s.at(math.Sqrt(1-u*u), u)
			sum.Transmittance += w * l.Transmittance
			sum.Reflectance += w * l.Reflectance
			for k := range s.n {
				sum.Absorptance[k] += w * l.Absorptance[k]
			}
		}
	}
	return sum
}

// LightFactors are the losses of light that the clean sheets do not show, each
// a fraction that remains.
type LightFactors struct {
	Dirt         float64 // fraction, 0 to 1, that dirt and age leave
	Condensation float64 // fraction, 0 to 1, that drops on the inner face leave
	Frame        float64 // fraction, 0 to 1, that bars and gutters leave
}

// DefaultLightFactors returns a clean, dry cover without a frame: all 1.
func DefaultLightFactors() LightFactors { return LightFactors{1, 1, 1} }

// Total returns the product as a fraction; NaN if a factor lies outside 0 to 1.
func (f LightFactors) Total() float64 {
	if !fractionRange.Contains(f.Dirt) || !fractionRange.Contains(f.Condensation) || !fractionRange.Contains(f.Frame) {
		return nan
	}
	return f.Dirt * f.Condensation * f.Frame
}

// DiffuseAngles returns the angles of incidence in degree at which beam light
// passes as diffuse light does from the sky and from the ground, for the tilt,
// degree, 0 to 90: [DufBec13] eq. 5.4.2 and 5.4.1 (from memory); NaN outside.
func DiffuseAngles(tilt float64) (sky, ground float64) {
	if !incidenceAngleRange.Contains(tilt) {
		return nan, nan
	}
	return 59.7 - 0.1388*tilt + 0.001497*tilt*tilt, 90 - 0.5788*tilt + 0.002693*tilt*tilt
}
