package lighting

import (
	"math"

	"cloche.example/internal/domain"
)

// luminousRange is where the table of V(λ) stands.
var luminousRange = domain.Range{Min: 360, Max: 830, Unit: "nm", Source: "[CieVis23]"}

// luminousEfficacy is K_m, lm/W: 683 lm/W at 540 THz over V there [CieVis23].
const luminousEfficacy = 683.002

// luminousStep is the step of the table, nm.
const luminousStep = 5.0

// luminous is V(λ) of the CIE standard photometric observer in steps of 5 nm
// from 360 to 830 nm [CieVis23], the digits of the table of 1 nm of the Colour &
// Vision Research Laboratory, which the library colour-science carries.
var luminous = [...]float64{
	0.000003917, 0.000006965, 0.00001239, 0.00002202, 0.000039, 0.000064, 0.00012, 0.000217,
	0.000396, 0.00064, 0.00121, 0.00218, 0.004, 0.0073, 0.0116, 0.01684,
	0.023, 0.0298, 0.038, 0.048, 0.06, 0.0739, 0.09098, 0.1126,
	0.13902, 0.1693, 0.20802, 0.2586, 0.323, 0.4073, 0.503, 0.6082,
	0.71, 0.7932, 0.862, 0.9148501, 0.954, 0.9803, 0.9949501, 1.0,
	0.995, 0.9786, 0.952, 0.9154, 0.87, 0.8163, 0.757, 0.6949,
	0.631, 0.5668, 0.503, 0.4412, 0.381, 0.321, 0.265, 0.217,
	0.175, 0.1382, 0.107, 0.0816, 0.061, 0.04458, 0.032, 0.0232,
	0.017, 0.01192, 0.00821, 0.005723, 0.004102, 0.002929, 0.002091, 0.001484,
	0.001047, 0.00074, 0.00052, 0.0003611, 0.0002492, 0.0001719, 0.00012, 0.0000848,
	0.00006, 0.0000424, 0.00003, 0.0000212, 0.00001499, 0.0000106, 0.0000074657, 0.0000052578,
	0.0000037029, 0.0000026078, 0.0000018366, 0.0000012934, 0.00000091093, 0.00000064153, 0.00000045181,
}

// LuminousEfficiency returns V at wavelength, nm, 360 to 830: the fraction of
// the eye's greatest sensitivity, dimensionless. The table of 5 nm is
// interpolated by cubics through four points, within 2.2e-4 of the CIE's table
// of 1 nm. NaN outside.
func LuminousEfficiency(wavelength float64) float64 {
	if !luminousRange.Contains(wavelength) {
		return math.NaN()
	}
	x := (wavelength - luminousRange.Min) / luminousStep
	i := min(max(int(x), 1), len(luminous)-3)
	t := x - float64(i)
	p := luminous[i-1 : i+3]
	// Lagrange's cubic through the points -1, 0, 1, 2.
	return -t*(t-1)*(t-2)/6*p[0] + (t+1)*(t-1)*(t-2)/2*p[1] - (t+1)*t*(t-2)/2*p[2] + (t+1)*t*(t-1)/6*p[3]
}

// gauss3 holds the nodes and weights of Gauss's rule of three points on -1 to
// 1, exact to the fifth degree: the linear spectrum times a cubic is a quartic.
var gauss3 = [3]struct{ x, w float64 }{
	{-math.Sqrt(3.0 / 5), 5.0 / 9}, {0, 8.0 / 9}, {math.Sqrt(3.0 / 5), 5.0 / 9},
}

// Luminous returns the luminous flux in lm (lx for a table of irradiance):
// 683.002 ∫ V E dλ.
func (s Spectrum) Luminous() float64 {
	sum := 0.0
	for i := range max(len(s.nm)-1, 0) {
		a, b, ok := s.overlap(i, luminousRange.Min, luminousRange.Max)
		for ok && a < b {
			z := min(b, luminousStep*(math.Floor(a/luminousStep)+1))
			half, mid := (z-a)/2, (z+a)/2
			for _, g := range gauss3 {
				w := mid + half*g.x
				sum += g.w * half * s.between(i, w) * LuminousEfficiency(w)
			}
			a = z
		}
	}
	return luminousEfficacy * sum
}

// LuxPerPPFD returns the illuminance of a PPFD of this spectrum: lx per
// µmol/(m² s), the same as lm per µmol/s. A lux reading divided by it is the
// PPFD. NaN for a spectrum dark in PAR.
func (s Spectrum) LuxPerPPFD() float64 { return ratio(s.Luminous(), s.PPF()) }

// PhotonsPerLumen returns the photons in the band for each lumen, µmol/s per
// lm: the factor from candela to µmol/(s sr). NaN for an invisible spectrum.
func (s Spectrum) PhotonsPerLumen(b Band) float64 { return ratio(s.Photons(b), s.Luminous()) }
