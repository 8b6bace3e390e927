package psychro

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Transport properties of dry air [UsStd76] eq. 51 and 53; T in K.
const (
	viscosityA                   = constant.SutherlandFactor    // kg/(s m K^1/2), eq. 51
	viscosityS                   = constant.SutherlandReference // K, eq. 51
	conductA, conductB, conductC = 2.64638e-3, 245.4, -12.0     // W/(m K^3/2), K, K; eq. 53
	diffusivityZero              = 0.2178e-4                    // m²/s at 0 °C and 101325 Pa [Massman98]
	diffusivityExponent          = 1.81                         // [Massman98]
)

// Dilute water vapour: viscosity, µPa s [IapwsVis08] eq. 11 and table 1;
// conductivity, mW/(m K) [IapwsCon11] eq. 16 and table 1; both over T/647.096.
const (
	criticalKelvin  = 647.096
	perRootCritical = 0.03931114036971462 // its power -1/2
	vis0, vis1      = 1.67752, 2.20462
	vis2, vis3      = 0.6366564, -0.241605
	con0, con1      = 2.443221e-3, 1.323095e-2
	con2, con3      = 6.770357e-3, -3.454586e-3
	con4            = 4.096266e-4
)

// transportRange is that of the bare functions of temperature: from the coldest
// State to what an air heater may send out.
var transportRange = domain.Range{Min: -100, Max: 200, Unit: "°C"}

// Viscosity returns the dynamic viscosity of dry air, Pa s, at temperature t,
// °C, -100 to 200: Sutherland's law, [UsStd76] eq. 51, within 0.5 % of measured
// values (from memory). NaN outside.
func Viscosity(t float64) float64 {
	if !transportRange.Contains(t) {
		return nan
	}
	T := t + kelvin
	return airViscosity(T, T*math.Sqrt(T))
}

// airViscosity takes T in K and its power 3/2.
func airViscosity(T, power float64) float64 {
	return viscosityA * power / (T + viscosityS) // eq. 51
}

// Conductivity returns the thermal conductivity of dry air, W/(m K), at
// temperature t, °C, -100 to 200: [UsStd76] eq. 53. NaN outside.
func Conductivity(t float64) float64 {
	if !transportRange.Contains(t) {
		return nan
	}
	T := t + kelvin
	return airConductivity(T, T*math.Sqrt(T))
}

// airConductivity takes T in K and its power 3/2.
func airConductivity(T, power float64) float64 {
	return conductA * power / (T + conductB*tenTo(conductC/T)) // eq. 53
}

// tenTo is 10 to the power y by the series about y = -0.045, to 1e-13 for the y
// from -0.07 to -0.025 that eq. 53 has: a third of the time of an exponential.
func tenTo(y float64) float64 {
	const centre, there = -0.045, 0.9015711376059569 // 10 to the power -0.045
	d := (y - centre) * math.Ln10
	s := d * d
	return there * ((1 + d) + s*((1.0/2+d*(1.0/6))+s*((1.0/24+d*(1.0/120))+s*(1.0/720+d*(1.0/5040)))))
}

// VapourDiffusivity returns the diffusivity of water vapour in air, m²/s, at
// temperature t, °C, -100 to 200, and pressure p, Pa, 30e3 to 200e3:
// [Massman98], measured values scatter about it by 7 %. NaN outside.
func VapourDiffusivity(t, p float64) float64 {
	if !transportRange.Contains(t) || !pressuresRange.Contains(p) {
		return nan
	}
	return diffusivityOf(math.Log(t+kelvin), p)
}

// diffusivityOf takes ln T.
func diffusivityOf(logT, p float64) float64 {
	const logKelvin = 5.610021094841726 // ln 273.15
	return diffusivityZero * standardPressure / p * math.Exp(diffusivityExponent*(logT-logKelvin))
}

// vapourViscosityOf is that of dilute water vapour, Pa s, from 647.096/T and the
// square root of T.
func vapourViscosityOf(r, root float64) float64 {
	return 1e-4 * perRootCritical * root / (vis0 + r*(vis1+r*(vis2+r*vis3))) // [IapwsVis08] eq. 11
}

// vapourConductivityOf is that of dilute water vapour, W/(m K), from 647.096/T
// and the square root of T.
func vapourConductivityOf(r, root float64) float64 {
	return 1e-3 * perRootCritical * root / (con0 + r*(con1+r*(con2+r*(con3+r*con4)))) // [IapwsCon11] eq. 16
}

// wilke returns what multiplies the mole ratios in the mixture rule of
// [Wilke50] eq. 14, of air and of vapour, for their viscosities in Pa s.
func wilke(air, vapour float64) (airByVapour, vapourByAir float64) {
	// With m = molarAir/molarWater: m to the power 1/4, and sqrt(8 (1 + m))
	// and sqrt(8 (1 + 1/m)).
	const root4, down, up = 1.1260610840398837, 4.567588773956176, 3.6021608128423446
	r := math.Sqrt(air / vapour)
	a, v := 1+r*(1/root4), 1+root4/r
	return a * a * (1 / down), v * v * (1 / up)
}

// transport returns viscosity and conductivity of the moist air.
func (s State) transport() (viscosity, conductivity float64) {
	T := s.t + kelvin
	root := math.Sqrt(T)
	power, r := T*root, criticalKelvin/T
	air, vapour := airViscosity(T, power), vapourViscosityOf(r, root)
	av, va := wilke(air, vapour)
	x, xa := s.x, 1-s.x
	// Weights of [Wilke50] eq. 14.
	a, v := xa/(xa+x*av), x/(x+xa*va)
	return a*air + v*vapour, a*airConductivity(T, power) + v*vapourConductivityOf(r, root)
}

// Viscosity returns the dynamic viscosity of the moist air, Pa s: dry air and
// dilute vapour mixed by the rule of [Wilke50].
func (s State) Viscosity() float64 {
	mu, _ := s.transport()
	return mu
}

// Conductivity returns the thermal conductivity of the moist air, W/(m K): dry
// air and dilute vapour mixed by the rule of [Wilke50], with conductivities in
// place of viscosities, as [MasSax58] justify.
func (s State) Conductivity() float64 {
	_, k := s.transport()
	return k
}

// lewisNumber is heat over vapour diffusivity, dimensionless.
func (s State) lewisNumber() float64 {
	_, k := s.transport()
	return k / (s.HeatCapacity() / s.SpecificVolume() * diffusivityOf(math.Log(s.t+kelvin), s.p))
}

// LewisFactor returns the Lewis number to the power 2/3, dimensionless, 0.88 to
// 0.90 in air of 0 to 40 °C: a surface that exchanges heat with the air by the
// convective coefficient h, W/(m² K), exchanges vapour by h/(cp LewisFactor),
// kg/(m² s) per kg/kg of humidity ratio, cp being HeatCapacity, by the analogy
// of [ChiCol34]. Take the State halfway between air and surface, as VapourFlux
// does.
func (s State) LewisFactor() float64 {
	le := s.lewisNumber()
	return math.Cbrt(le * le)
}
