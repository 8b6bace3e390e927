package lighting

// Broadband holds factors that stand in for a spectrum where only the kind of
// the source is known. They are averages over sources that one laboratory
// measured; integrate a Spectrum where there is one.
type Broadband struct {
	Name            string  // kind of source
	LuxPerPPFD      float64 // lx per µmol/(m² s), 400 to 700 nm
	PhotonsPerJoule float64 // µmol/J, of the radiant power from 400 to 700 nm
}

// broadband is table 3 of Thimijan and Heins [Thimijan83], as a text quotes it
// (K. in bionet.plants.education, October 2001); the paper itself was not
// seen.
var broadband = []Broadband{
	{"sun and sky", 54, 4.57},
	{"blue sky", 52, 4.24},
	{"metal halide", 71, 4.59},
	{"high-pressure sodium", 82, 4.98},
	{"cool white fluorescent", 74, 4.59},
	{"incandescent", 50, 5.0},
}

// BroadbandFactors returns the factors of Thimijan and Heins 1983
// [Thimijan83], second-hand. Theirs is a measured daylight: the CIE's D65 has
// 55.5 lx per µmol/(m² s) and 4.53 µmol/J.
func BroadbandFactors() []Broadband { return append([]Broadband(nil), broadband...) }
