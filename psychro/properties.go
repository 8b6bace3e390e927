package psychro

// Model returns the model that the state was made with.
func (s State) Model() Model { return s.model }

// Temperature returns the dry bulb, °C.
func (s State) Temperature() float64 { return s.t }

// Pressure returns the total pressure, Pa.
func (s State) Pressure() float64 { return s.p }

// HumidityRatio returns the mass of vapour per mass of dry air, kg/kg.
func (s State) HumidityRatio() float64 { return s.w }

// VapourPressure returns the partial pressure of vapour, Pa: mole fraction
// times total pressure, for both models.
func (s State) VapourPressure() float64 { return s.x * s.p }

// SaturationVapourPressure returns the vapour pressure, Pa, of saturated air
// of the same temperature and pressure: the saturation pressure of pure water
// times the enhancement factor, which above the boiling point is 1.
func (s State) SaturationVapourPressure() float64 {
	return s.xs * s.p
}

// RelativeHumidity returns vapour pressure over SaturationVapourPressure, a
// fraction; over ice below 0.01 °C.
func (s State) RelativeHumidity() float64 {
	return min(1, s.x/s.xs)
}

// RelativeHumidityOver returns the relative humidity, fraction, against the
// given surface. Weather services state it over liquid water below 0 °C too.
// NaN where s does not exist at the state's temperature.
func (s State) RelativeHumidityOver(surface Surface) float64 {
	if !surface.inAir(s.t) {
		return nan
	}
	return s.x / s.model.saturated(surface, s.t, s.p)
}

// degreeOfSaturation is the humidity ratio over that of saturated air of the
// same temperature and pressure; NaN where no saturated air exists.
func (s State) degreeOfSaturation() float64 {
	if !(s.xs < 1) {
		return nan
	}
	return min(1, s.w/ratioOf(s.xs))
}

// AbsoluteHumidity returns the mass of vapour per volume of moist air, kg/m³.
func (s State) AbsoluteHumidity() float64 { return s.w / s.SpecificVolume() }

// VapourPressureDeficit returns how much the vapour pressure falls short of
// saturation at the air's own temperature, Pa.
func (s State) VapourPressureDeficit() float64 {
	return (s.xs - s.x) * s.p // no difference of products, which fused arithmetic rounds apart
}

// VapourPressureDeficitAt returns the vapour pressure of air saturated at the
// temperature t, °C, -100 to 200, of a leaf or a cover, less that of the air, Pa.
// Negative where that surface draws condensation; NaN outside and where water
// boils.
func (s State) VapourPressureDeficitAt(t float64) float64 {
	if !temperaturesRange.Contains(t) {
		return nan
	}
	xs := s.model.saturated(SurfaceAt(t), t, s.p)
	if !(xs < 1) {
		return nan
	}
	return (xs - s.x) * s.p
}

// Enthalpy returns the enthalpy of moist air, J/kg dry air; zero for dry air
// and for liquid water at 0 °C.
func (s State) Enthalpy() float64 { return s.model.enthalpy(s.t, s.p, s.x, s.w) }

// SpecificVolume returns the volume of moist air, m³/kg dry air.
func (s State) SpecificVolume() float64 { return s.model.volume(s.t, s.p, s.x, s.w) }

// Density returns the density of moist air, kg/m³: dry air and vapour
// together.
func (s State) Density() float64 { return (1 + s.w) / s.SpecificVolume() }

// HeatCapacity returns the heat capacity of moist air at constant pressure and
// humidity ratio, J/(kg K), per kg of dry air.
func (s State) HeatCapacity() float64 { return s.model.heatCapacity(s.t, s.p, s.x, s.w) }
