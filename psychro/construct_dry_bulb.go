package psychro

import "errors"

// FromVapourPressure returns air of temperature t, °C, -100 to 200, vapour
// pressure e, Pa, 0 to that of saturated air, and pressure p, Pa, 30e3 to
// 200e3. The error names each input outside its range.
func (m Model) FromVapourPressure(t, e, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "vapour pressure", e, "Pa")
	}
	return m.build(t, p, e/p, xs, "vapour pressure", e, "Pa", State.VapourPressure)
}

// FromVapourPressureDeficit returns air of temperature t, °C, -100 to 200,
// whose vapour pressure falls short of saturation by d, Pa, 0 to all of it, at
// pressure p, Pa, 30e3 to 200e3. The error names each input outside its range.
func (m Model) FromVapourPressureDeficit(t, d, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "vapour pressure deficit", d, "Pa")
	}
	x := xs - d/p
	if x < 0 && x > -roundingSlack*xs {
		x = 0
	}
	return m.build(t, p, x, xs, "vapour pressure deficit", d, "Pa", State.VapourPressureDeficit)
}

// FromEnthalpy returns air of temperature t, °C, -100 to 200, enthalpy h, J/kg
// dry air, that of dry to that of saturated air, and pressure p, Pa, 30e3 to
// 200e3. The error names each input outside its range.
func (m Model) FromEnthalpy(t, h, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "enthalpy", h, "J/kg")
	}
	return m.build(t, p, floor(m.fractionFromHeat(t, p, h, 0)), xs, "enthalpy", h, "J/kg", State.Enthalpy)
}

// FromSpecificVolume returns air of temperature t, °C, -100 to 200, specific
// volume v, m³/kg dry air, that of dry to that of saturated air, and pressure
// p, Pa, 30e3 to 200e3. Ill conditioned: an error of 0.1 % in v makes one of
// 0.0006 kg/kg in the humidity ratio. The error names each input outside its
// range.
func (m Model) FromSpecificVolume(t, v, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "specific volume", v, "m³/kg")
	}
	return m.build(t, p, floor(m.fractionFromVolume(t, v, p)), xs, "specific volume", v, "m³/kg", State.SpecificVolume)
}

// FromDegreeOfSaturation returns air of temperature t, °C, -100 to 200 and
// below boiling, and pressure p, Pa, 30e3 to 200e3, whose humidity ratio is the
// fraction mu, 0 to 1, of that of saturated air at the same temperature and
// pressure. The error names each input outside its range.
func (m Model) FromDegreeOfSaturation(t, mu, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !fractionsRange.Contains(mu) {
		return State{}, errors.Join(err, fractionsRange.Check("degree of saturation", mu))
	}
	if !(xs < 1) {
		return State{}, m.boils("temperature", t, p)
	}
	return m.build(t, p, fractionOf(mu*ratioOf(xs)), xs, "degree of saturation", mu, "fraction", State.degreeOfSaturation)
}

// FromAbsoluteHumidity returns air of temperature t, °C, -100 to 200, that
// holds d, kg/m³, 0 to what saturated air holds, of vapour in its volume, at
// pressure p, Pa, 30e3 to 200e3. The error names each input outside its range.
func (m Model) FromAbsoluteHumidity(t, d, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "absolute humidity", d, "kg/m³")
	}
	return m.build(t, p, m.fractionFromVapourDensity(t, d, p), xs, "absolute humidity", d, "kg/m³", State.AbsoluteHumidity)
}

// noFraction is how far below none rounding puts a mole fraction.
const noFraction = 1e-12

// floor lifts a mole fraction that rounding has put just below none.
func floor(x float64) float64 {
	if x < 0 && x > -noFraction {
		return 0
	}
	return x
}

// fractionFromVolume returns the mole fraction at which air at t has volume v,
// m³/kg dry air: the volume times the dry air's mole fraction is a quadratic.
func (m Model) fractionFromVolume(t, v, p float64) float64 {
	T := t + kelvin
	if m == IdealGas {
		return fractionOf((v*p/(gasAir*T) - 1) / gasFactor)
	}
	aa, aw, ww := virials(100 / T)
	return smallRoot(1e-6*(aa-2*aw+ww), molarAir*v+2e-6*(aw-aa), gasConstant*T/p+1e-6*aa-molarAir*v)
}

// fractionFromVapourDensity returns the mole fraction at which air at t holds
// d, kg/m³, of vapour.
func (m Model) fractionFromVapourDensity(t, d, p float64) float64 {
	T := t + kelvin
	if m == IdealGas {
		g := d * gasAir * T / p
		return fractionOf(g / (1 - gasFactor*g))
	}
	aa, aw, ww := virials(100 / T)
	return smallRoot(1e-6*(aa-2*aw+ww)*d, 2e-6*(aw-aa)*d-molarRatio*molarAir, (gasConstant*T/p+1e-6*aa)*d)
}
