package lighting

import "math"

// d65 is the relative spectral power of the CIE standard illuminant D65, from
// 300 nm in steps of 10 nm [CieCol18]; the CIE's values between them are linear
// interpolations.
var d65 = [...]float64{
	0.0341, 3.2945, 20.2360, 37.0535, 39.9488, 44.9117, 46.6383, 52.0891,
	49.9755, 54.6482, 82.7549, 91.4860, 93.4318, 86.6823, 104.865, 117.008,
	117.812, 114.861, 115.923, 108.811, 109.354, 107.802, 104.790, 107.689,
	104.405, 104.046, 100.000, 96.3342, 95.7880, 88.6856, 90.0062, 89.5991,
	87.6987, 83.2886, 83.6992, 80.0268, 80.2146, 82.2778, 78.2842, 69.7213,
	71.6091, 74.3490, 61.6040, 69.8856, 75.0870, 63.5927, 46.4182, 66.8054,
	63.3828, 64.3040, 59.4519, 51.9590, 57.4406, 60.3125,
}

// The table of D65, nm.
const (
	d65From = 300.0
	d65Step = 10.0
)

// IlluminantD65 returns the relative spectral power of CIE standard illuminant
// D65, average daylight of 6500 K, from 300 to 830 nm, 100 at 560 nm [CieCol18].
func IlluminantD65() Spectrum {
	s := Spectrum{make([]float64, len(d65)), make([]float64, len(d65))}
	for i, v := range d65 {
		s.nm[i], s.power[i] = d65From+d65Step*float64(i), v
	}
	return s
}

// Constants of illuminant A [CieCol18].
const (
	illuminantAC2          = 1.435e7 // nm K, the second radiation constant of the definition
	illuminantATemperature = 2848.0  // K, on that constant (2856 K on today's)
	illuminantAReference   = 560.0   // nm, where S is 100
)

// IlluminantA returns the relative spectral power of CIE standard illuminant
// A, the tungsten lamp, from 300 to 830 nm in steps of 1 nm, 100 at 560 nm, by
// its defining formula [CieCol18].
func IlluminantA() Spectrum {
	const n = 531
	s := Spectrum{make([]float64, n), make([]float64, n)}
	for i := range n {
		w := d65From + float64(i)
		s.nm[i], s.power[i] = w, illuminantA(w)
	}
	return s
}

func illuminantA(w float64) float64 {
	f := func(w float64) float64 { return math.Expm1(illuminantAC2 / (illuminantATemperature * w)) }
	r := illuminantAReference / w
	return 100 * r * r * r * r * r * f(illuminantAReference) / f(w) // [CieCol18]
}
