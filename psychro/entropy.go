package psychro

import "math"

// Constants of integration of the entropy, J/(mol K), computed from the
// formulas of this package: dry air is zero at 0 °C and 101325 Pa, liquid
// water at the triple point. A test puts both back to zero.
const (
	airEntropy   = -161.75161524544
	waterEntropy = -61.62966138941
)

// entropy of moist air, J/(kg K), per kg of dry air; zero for dry air at 0 °C and
// 101325 Pa and for liquid water at the triple point. Real gas: the integral of
// the heat capacities that Enthalpy uses, the ideal entropy of mixing, and the
// second virial term.
func (s State) entropy() float64 {
	T := s.t + kelvin
	if s.model == IdealGas {
		r := s.p * (1 - s.x) / standardPressure
		air := heatAir*math.Log(T/kelvin) - gasAir*math.Log(r)
		if s.w == 0 {
			return air
		}
		vapour := latentZero/kelvin + heatVapour*math.Log(T/kelvin) - gasAir*gasFactor*math.Log(s.x*s.p/triplePressure)
		return air + s.w*vapour
	}
	z := 100 / T
	baa, baw, bww := virials(z)
	caa, caw, cww := caloric(z)
	return s.realEntropyOf(mix(s.x, baa, baw, bww), mix(s.x, caa, caw, cww), math.Log(T))
}

// realEntropyOf takes the mixture's B and B - T dB/dT, cm³/mol, and ln T.
func (s State) realEntropyOf(b, c, logT float64) float64 {
	T := s.t + kelvin
	x, xa := s.x, 1-s.x
	air := ha1*logT + T*(2*ha2+T*(3.0/2*ha3+T*(4.0/3*ha4+T*(5.0/4*ha5)))) + airEntropy
	vapour := hw1*logT + T*(2*hw2+T*(3.0/2*hw3+T*(4.0/3*hw4+T*(5.0/4*hw5)))) + waterEntropy
	slope := 1e-6 * (b - c) / T // dB/dT
	// Each gas at its own partial pressure, which is pressure and mixing at once.
	r := s.p / standardPressure
	partial := xa * math.Log(xa*r)
	if x > 0 {
		partial += x * math.Log(x*r)
	}
	return (xa*air + x*vapour - gasConstant*partial - s.p*slope) / (molarAir * xa)
}
