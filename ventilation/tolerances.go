package ventilation

// How near the searches of this package come to what they seek: far below what
// anybody can print or measure, and some times the spacing of float64 there, at
// which solve.Root ends in any case.
const (
	temperatureFound = 1e-13 // K, of a temperature of up to 100 °C
	shareFound       = 1e-12 // fraction, of an opening or of two airs in a mixture
	flowFound        = 1e-14 // of the greatest value that the search looks at, of a flow or a factor that others are multiplied by
	co2Found         = 1e-10 // µmol/mol
)

// slack is the fraction by which rounding may put a number beyond a limit that it
// was made to meet.
const slack = 1e-12

// nearlySaturated is the relative humidity, fraction, at which air that was
// saturated is let go, so that whether it stays so is found anew.
const nearlySaturated = 0.99
