package psychro

import "fmt"

// The functions of this file take columns, by RealGas at one pressure for the
// whole column: a station's pressure moves by 3 % either way, which moves a
// humidity ratio from a relative humidity by as much, and from a humidity ratio
// a wet bulb by up to 0.4 K and a dew point by 0.5 K. Where that matters, or for
// IdealGas, make each State in a loop.

// HumidityRatioFromRelativeHumidityTo stores in dst the humidity ratios, kg/kg
// dry air, of air of the temperatures t, °C, -100 to 200, and relative
// humidities rh, fraction, 0 to 1, at pressure p, Pa, 30e3 to 200e3.
func HumidityRatioFromRelativeHumidityTo(dst, t, rh []float64, p float64) []float64 {
	dst = sized(dst, len(t), len(rh))
	for i := range dst {
		dst[i] = orNaN(FromRelativeHumidity(t[i], rh[i], p)).w
	}
	return dst
}

// RelativeHumidityFromHumidityRatioTo stores in dst the relative humidities,
// fraction, of air of the temperatures t, °C, -100 to 200, and humidity ratios
// w, kg/kg dry air, 0 to 1000, at pressure p, Pa, 30e3 to 200e3.
func RelativeHumidityFromHumidityRatioTo(dst, t, w []float64, p float64) []float64 {
	dst = sized(dst, len(t), len(w))
	for i := range dst {
		dst[i] = orNaN(FromHumidityRatio(t[i], w[i], p)).RelativeHumidity()
	}
	return dst
}

// WetBulbFromHumidityRatioTo stores in dst the wet bulbs, °C, of air of the
// temperatures t, °C, -100 to 200, and humidity ratios w, kg/kg dry air, 0 to
// 1000, at pressure p, Pa, 30e3 to 200e3.
func WetBulbFromHumidityRatioTo(dst, t, w []float64, p float64) []float64 {
	dst = sized(dst, len(t), len(w))
	for i := range dst {
		if s, err := FromHumidityRatio(t[i], w[i], p); err == nil {
			dst[i] = s.WetBulb()
		} else {
			dst[i] = nan
		}
	}
	return dst
}

// DewPointFromHumidityRatioTo stores in dst the dew or frost points, °C, of air
// of the temperatures t, °C, -100 to 200, and humidity ratios w, kg/kg dry air,
// 0 to 1000, at pressure p, Pa, 30e3 to 200e3.
func DewPointFromHumidityRatioTo(dst, t, w []float64, p float64) []float64 {
	dst = sized(dst, len(t), len(w))
	for i := range dst {
		dst[i] = orNaN(FromHumidityRatio(t[i], w[i], p)).DewPoint()
	}
	return dst
}

// VapourPressureDeficitFromRelativeHumidityTo stores in dst the vapour pressure
// deficits, Pa, of air of the temperatures t, °C, -100 to 200, and relative
// humidities rh, fraction, 0 to 1, at pressure p, Pa, 30e3 to 200e3.
func VapourPressureDeficitFromRelativeHumidityTo(dst, t, rh []float64, p float64) []float64 {
	dst = sized(dst, len(t), len(rh))
	for i := range dst {
		dst[i] = orNaN(FromRelativeHumidity(t[i], rh[i], p)).VapourPressureDeficit()
	}
	return dst
}

// StatesFromRelativeHumidityTo stores in dst the states of air of the
// temperatures t, °C, -100 to 200, and relative humidities rh, fraction, 0 to
// 1, at pressure p, Pa, 30e3 to 200e3. The error says how many hours were
// refused, the first of them and why; those hours get the zero State.
func StatesFromRelativeHumidityTo(dst []State, t, rh []float64, p float64) ([]State, error) {
	if dst == nil {
		dst = make([]State, len(t))
	}
	if len(dst) != len(t) || len(rh) != len(t) {
		panic(fmt.Sprintf("psychro: slices of unequal length: %d, %d and %d", len(dst), len(t), len(rh)))
	}
	var first error
	at, bad := 0, 0
	for i := range dst {
		s, err := FromRelativeHumidity(t[i], rh[i], p)
		dst[i] = s
		if err != nil {
			if bad == 0 {
				first, at = err, i
			}
			bad++
		}
	}
	if bad > 0 {
		return dst, fmt.Errorf("%d of %d refused, the first at index %d: %w", bad, len(t), at, first)
	}
	return dst, nil
}

// orNaN is the state, or one of NaNs if there is an error.
func orNaN(s State, err error) State {
	if err != nil {
		return State{t: nan, p: nan, x: nan, w: nan, xs: nan}
	}
	return s
}

// sized returns dst, or a new slice if dst is nil, and panics unless dst and
// the other slice have n values.
func sized(dst []float64, n, other int) []float64 {
	if dst == nil {
		dst = make([]float64, n)
	}
	if len(dst) != n || other != n {
		panic(fmt.Sprintf("psychro: slices of unequal length: %d, %d and %d", len(dst), n, other))
	}
	return dst
}
