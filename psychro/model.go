package psychro

import (
	"strconv"

	"cloche.example/internal/atmosphere"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Model chooses how moist air is described. It is a value that each State
// carries, never a global setting.
type Model uint8

const (
	// RealGas is the default: saturation by IAPWS, enhancement factor, volume
	// and enthalpy with second virial coefficients.
	RealGas Model = iota
	// IdealGas is the form of the ASHRAE handbook: ideal mixture, constant
	// heat capacities, no enhancement factor, saturation by Hyland and Wexler
	// [HoF17] ch. 1 eq. 5, 6, 20 to 35.
	IdealGas
)

// String names the model.
func (m Model) String() string {
	switch m {
	case RealGas:
		return "real gas"
	case IdealGas:
		return "ideal gas"
	}
	return "Model(" + strconv.Itoa(int(m)) + ")"
}

// Surface is the phase of water, liquid or ice, that vapour is in equilibrium
// with.
type Surface uint8

const (
	Liquid Surface = iota // liquid water, supercooled below the triple point
	Ice                   // ice, to the triple point
)

// String names the surface.
func (s Surface) String() string {
	switch s {
	case Liquid:
		return "liquid"
	case Ice:
		return "ice"
	}
	return "Surface(" + strconv.Itoa(int(s)) + ")"
}

// TriplePoint is the temperature of the triple point of water, °C. Functions
// that do not ask for a surface switch here: ice below it, liquid at and above
// it.
const TriplePoint = 0.01

// SurfaceAt returns the surface taken by default at temperature t, °C.
func SurfaceAt(t float64) Surface {
	if t < TriplePoint {
		return Ice
	}
	return Liquid
}

// Accepted inputs. The limits are chosen so that common input errors fall
// outside: a relative humidity in per cent, a pressure in kPa or hPa, a
// temperature in kelvin, a humidity ratio in g/kg.
var (
	// Temperatures of air, dew points and wet bulbs: both ends are those of the
	// enthalpy polynomials [HylWex83].
	temperaturesRange = domain.Range{Min: -100, Max: 200, Unit: "°C", Source: "Hyland and Wexler 1983"}
	// Saturation over liquid water, supercooled to the
	// temperature at which droplets freeze of themselves.
	liquidTemperaturesRange = domain.Range{Min: -40, Max: 200, Unit: "°C", Source: "IAPWS R7-97 eq. 30, extrapolated below 0 °C"}
	// Temperatures at which the enthalpy of liquid water is fitted.
	waterTemperaturesRange = domain.Range{Min: -40, Max: 110, Unit: "°C", Source: "fit to IAPWS-95"}
	// Ice in air.
	frostTemperaturesRange = domain.Range{Min: -100, Max: TriplePoint, Unit: "°C", Source: "Hyland and Wexler 1983"}
	// Saturation over ice.
	iceTemperaturesRange = domain.Range{Min: -223.15, Max: TriplePoint, Unit: "°C", Source: "IAPWS R14-08 eq. 6"}
	// Pressures of the air. Accuracy is measured for 70 to 105 kPa.
	pressuresRange = domain.Range{Min: 30e3, Max: 200e3, Unit: "Pa"}
	// Degrees of saturation and efficiencies.
	fractionsRange          = domain.Range{Min: 0, Max: 1, Unit: "fraction"}
	relativeHumiditiesRange = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "saturation; to accept a sensor's 1.01, clip it before: min(rh, 1)"}
	// Any air in range; saturation is mostly the closer limit.
	humidityRatiosRange = domain.Range{Min: 0, Max: 1e3, Unit: "kg/kg"}
	// Wet surfaces, as far as their latent heat is known.
	surfaceTemperaturesRange = domain.Range{Min: -100, Max: 110, Unit: "°C", Source: "fit to IAPWS-95"}
	// Coefficients of convective heat transfer.
	coefficientsRange = domain.Range{Min: 0, Max: 1000, Unit: "W/(m² K)"}
	// Altitudes of the standard atmosphere.
	altitudesRange = atmosphere.Altitudes()
)

// Constants of both models.
const (
	molarRatio  = constant.MoleRatio   // kg/kg, mass of a mole of water over that of dry air [HoF17] ch. 1 eq. 20
	molarAir    = 0.028966             // kg/mol, dry air [HoF17] ch. 1
	molarWater  = 0.018015268          // kg/mol [HoF17] ch. 1
	gasConstant = constant.MolarGas    // J/(mol K)
	kelvin      = constant.ZeroCelsius // K at 0 °C
)

// saturated returns the mole fraction of vapour in air saturated over the
// surface at t in °C and p in Pa. Where water boils it is the saturation
// pressure over the total pressure, 1 or more.
func (m Model) saturated(s Surface, t, p float64) float64 {
	if m == IdealGas {
		return handbookSaturation(s, t) / p
	}
	r := pureSaturation(s, t) / p
	if !(r < 1) {
		return r
	}
	return enhancement(s, 1/(t+kelvin), p, r) * r
}

func ratioOf(x float64) float64    { return molarRatio * x / (1 - x) }
func fractionOf(w float64) float64 { return w / (molarRatio + w) }

// SaturationHumidityRatio returns the humidity ratio, kg/kg dry air, of air
// saturated at temperature t, °C, -100 to 200, and pressure p, Pa, 30e3 to
// 200e3; over ice below 0.01 °C, over liquid from that temperature up. NaN
// outside and where water boils.
func SaturationHumidityRatio(t, p float64) float64 {
	return RealGas.SaturationHumidityRatio(t, p)
}

// SaturationHumidityRatio is the function of the same name for model m: kg/kg
// dry air, from t, °C, -100 to 200, and p, Pa, 30e3 to 200e3.
func (m Model) SaturationHumidityRatio(t, p float64) float64 {
	if !temperaturesRange.Contains(t) || !pressuresRange.Contains(p) || m > IdealGas {
		return nan
	}
	x := m.saturated(SurfaceAt(t), t, p)
	if !(x < 1) {
		return nan
	}
	return ratioOf(x)
}

// inAir reports whether water of surface s can have temperature t, °C, in air.
func (s Surface) inAir(t float64) bool {
	switch s {
	case Ice:
		return frostTemperaturesRange.Contains(t)
	case Liquid:
		return liquidTemperaturesRange.Contains(t)
	}
	return false
}

// contains reports whether the saturation line of s has temperature t, °C.
func (s Surface) contains(t float64) bool {
	switch s {
	case Ice:
		return iceTemperaturesRange.Contains(t)
	case Liquid:
		return liquidTemperaturesRange.Contains(t)
	}
	return false
}
