package airheat

import (
	"math"

	"cloche.example/internal/domain"
)

// Verhoff and Banchero's form [VerBan74], pressures in mm of mercury.
const (
	verhoffBase  = 2.276
	verhoffWater = 0.0294
	verhoffAcid  = 0.0858
	verhoffBoth  = 0.0062
	millimetreHg = 133.322 // Pa
)

// Ranges of the acid dew point.
var (
	convertedRange    = domain.Range{Min: 0.001, Max: 0.1, Unit: "fraction", Source: "share of the sulphur burnt to the trioxide"}
	acidPressureRange = domain.Range{Min: 1e-3, Max: 100, Unit: "Pa", Source: "chosen: 0.01 to 1,000 parts in a million"}
	acidWaterRange    = domain.Range{Min: 500, Max: 50e3, Unit: "Pa", Source: "chosen: flue gases"}
)

// AcidDewPoint returns the temperature, °C, at which sulphuric acid begins to
// condense from the flue gas at the pressure, Pa, 30000 to 200000, where the
// fraction converted, 0.001 to 0.1, of its sulphur has become the trioxide;
// 0.01 to 0.05 is usual, rising with excess air (from memory). Heat exchanger
// and flue walls below it corrode, even though the water's dew point lies far
// lower. 1000/T = 2.276 - 0.0294 ln pw - 0.0858 ln ps + 0.0062 ln pw ln ps, T
// in K, pressures of vapour and trioxide in mm of mercury [VerBan74]; other
// correlations differ by up to 10 K (from memory). NaN without sulphur, for
// arguments outside, and where the trioxide has less than 0.001 or more than
// 100 Pa.
func (g FlueGas) AcidDewPoint(pressure, converted float64) float64 {
	if !gasPressureRange.Contains(pressure) || !convertedRange.Contains(converted) {
		return math.NaN()
	}
	return acidDewPoint(g.H2O/g.Wet*pressure, g.SO2/g.Wet*converted*pressure)
}

// acidDewPoint is that of gas with the partial pressures of vapour and trioxide,
// Pa.
func acidDewPoint(vapour, trioxide float64) float64 {
	if !acidWaterRange.Contains(vapour) || !acidPressureRange.Contains(trioxide) {
		return math.NaN()
	}
	w, s := math.Log(vapour/millimetreHg), math.Log(trioxide/millimetreHg)
	return 1000/(verhoffBase-verhoffWater*w-verhoffAcid*s+verhoffBoth*w*s) - zeroC // [VerBan74]
}
