package psychro

import "errors"

// FromVapourPressure returns air of temperature t, °C, vapour pressure e, Pa,
// and pressure p, Pa. The error names each input outside its range.
func FromVapourPressure(t, e, p float64) (State, error) { return RealGas.FromVapourPressure(t, e, p) }

// FromVapourPressure is the function of the same name for model m:
// t in °C, e and p in Pa.
func (m Model) FromVapourPressure(t, e, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "vapour pressure", e, "Pa")
	}
	return m.build(t, p, e/p, xs, "vapour pressure", e, "Pa", State.VapourPressure)
}

// FromVapourPressureDeficit returns air of temperature t, °C, whose vapour
// pressure falls short of saturation by d, Pa, at pressure p, Pa. The error
// names each input outside its range.
func FromVapourPressureDeficit(t, d, p float64) (State, error) {
	return RealGas.FromVapourPressureDeficit(t, d, p)
}

// FromVapourPressureDeficit is the function of the same name for model m:
// t in °C, d and p in Pa.
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

// FromEnthalpy returns air of temperature t, °C, enthalpy h, J/kg dry air, and
// pressure p, Pa. The error names each input outside its range.
func FromEnthalpy(t, h, p float64) (State, error) { return RealGas.FromEnthalpy(t, h, p) }

// FromEnthalpy is the function of the same name for model m:
// t in °C, h in J/kg dry air, p in Pa.
func (m Model) FromEnthalpy(t, h, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "enthalpy", h, "J/kg")
	}
	return m.build(t, p, floor(m.fractionFromHeat(t, p, h, 0)), xs, "enthalpy", h, "J/kg", State.Enthalpy)
}

// FromSpecificVolume returns air of temperature t, °C, specific volume v, m³/kg
// dry air, and pressure p, Pa. Ill conditioned: an error of 0.1 % in v is one
// of 0.0006 in the humidity ratio. The error names each input outside its
// range.
func FromSpecificVolume(t, v, p float64) (State, error) { return RealGas.FromSpecificVolume(t, v, p) }

// FromSpecificVolume is the function of the same name for model m:
// t in °C, v in m³/kg dry air, p in Pa.
func (m Model) FromSpecificVolume(t, v, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "specific volume", v, "m³/kg")
	}
	return m.build(t, p, floor(m.fractionFromVolume(t, v, p)), xs, "specific volume", v, "m³/kg", State.SpecificVolume)
}

// FromDegreeOfSaturation returns air of temperature t, °C, and pressure p, Pa,
// whose humidity ratio is the fraction mu of that of saturated air. The error
// names each input outside its range.
func FromDegreeOfSaturation(t, mu, p float64) (State, error) {
	return RealGas.FromDegreeOfSaturation(t, mu, p)
}

// FromDegreeOfSaturation is the function of the same name for model m:
// t in °C, mu as a fraction, p in Pa.
func (m Model) FromDegreeOfSaturation(t, mu, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !fractionsRange.Contains(mu) {
		return State{}, errors.Join(err, fractionsRange.Check("degree of saturation", mu))
	}
	return m.build(t, p, fractionOf(mu*ratioOf(xs)), xs, "degree of saturation", mu, "fraction", State.DegreeOfSaturation)
}

// FromAbsoluteHumidity returns air of temperature t, °C, that holds d, kg/m³,
// of vapour in its volume, at pressure p, Pa. The error names each input
// outside its range.
func FromAbsoluteHumidity(t, d, p float64) (State, error) {
	return RealGas.FromAbsoluteHumidity(t, d, p)
}

// FromAbsoluteHumidity is the function of the same name for model m:
// t in °C, d in kg/m³, p in Pa.
func (m Model) FromAbsoluteHumidity(t, d, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, finite(err, "absolute humidity", d, "kg/m³")
	}
	return m.build(t, p, m.fractionFromVapourDensity(t, d, p), xs, "absolute humidity", d, "kg/m³", State.AbsoluteHumidity)
}

// FromMoleFraction returns air of temperature t, °C, with x moles of vapour in
// a mole of moist air, fraction, at pressure p, Pa. The error names each input
// outside its range.
func FromMoleFraction(t, x, p float64) (State, error) { return RealGas.FromMoleFraction(t, x, p) }

// FromMoleFraction is the function of the same name for model m:
// t in °C, x as a fraction, p in Pa.
func (m Model) FromMoleFraction(t, x, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !fractionsRange.Contains(x) {
		return State{}, errors.Join(err, fractionsRange.Check("mole fraction", x))
	}
	return m.build(t, p, x, xs, "mole fraction", x, "fraction", State.MoleFraction)
}

// FromSpecificHumidity returns air of temperature t, °C, with q kg of vapour in
// a kg of moist air, at pressure p, Pa. The error names each input outside its
// range.
func FromSpecificHumidity(t, q, p float64) (State, error) {
	return RealGas.FromSpecificHumidity(t, q, p)
}

// FromSpecificHumidity is the function of the same name for model m:
// t in °C, q in kg/kg moist air, p in Pa.
func (m Model) FromSpecificHumidity(t, q, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !fractionsRange.Contains(q) {
		return State{}, errors.Join(err, fractionsRange.Check("specific humidity", q))
	}
	return m.build(t, p, fractionOf(q/(1-q)), xs, "specific humidity", q, "kg/kg", State.SpecificHumidity)
}

// floor lifts a mole fraction that rounding has put just below none.
func floor(x float64) float64 {
	if x < 0 && x > -1e-12 {
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
