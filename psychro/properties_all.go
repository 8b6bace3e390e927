package psychro

import "math"

// Properties are all properties of a State in one place, for a program that
// prints or stores them. Methods of the same names, where a State has
// them, explain each.
type Properties struct {
	Temperature              float64 // °C
	Pressure                 float64 // Pa
	HumidityRatio            float64 // kg/kg dry air
	SpecificHumidity         float64 // kg/kg moist air
	MoleFraction             float64 // fraction, moles of vapour per mole of moist air
	AbsoluteHumidity         float64 // kg/m³
	VapourPressure           float64 // Pa
	SaturationVapourPressure float64 // Pa
	VapourPressureDeficit    float64 // Pa
	RelativeHumidity         float64 // fraction
	DegreeOfSaturation       float64 // fraction, humidity ratio over that of saturated air; NaN above boiling
	DewPoint                 float64 // °C, a frost point below 0.01; NaN for dry air
	WetBulb                  float64 // °C
	Enthalpy                 float64 // J/kg dry air
	Entropy                  float64 // J/(kg K), per kg of dry air; zero for dry air at 0 °C and 101325 Pa, liquid water at the triple point
	SpecificVolume           float64 // m³/kg dry air
	Density                  float64 // kg/m³
	HeatCapacity             float64 // J/(kg K), per kg of dry air
	LatentHeat               float64 // J/kg, at the dry bulb; NaN above 110 °C
	Viscosity                float64 // Pa s
	Conductivity             float64 // W/(m K)
	VapourDiffusivity        float64 // m²/s
	PrandtlNumber            float64 // dimensionless, momentum over heat diffusivity
	SchmidtNumber            float64 // dimensionless, momentum over vapour diffusivity
	LewisNumber              float64 // dimensionless, heat over vapour diffusivity
	PsychrometricConstant    float64 // Pa/K, cp p/(0.622 L) with cp per kg of moist air; NaN above 110 °C
}

// Properties returns all properties; what several share is computed once.
func (s State) Properties() Properties {
	logT := math.Log(s.t + kelvin)
	h, v, entropy, cp, latent := s.energies(logT)
	mu, k := s.transport()
	q := Properties{
		Temperature:              s.t,
		Pressure:                 s.p,
		HumidityRatio:            s.w,
		SpecificHumidity:         s.w / (1 + s.w),
		MoleFraction:             s.x,
		AbsoluteHumidity:         s.w / v,
		VapourPressure:           s.VapourPressure(),
		SaturationVapourPressure: s.SaturationVapourPressure(),
		VapourPressureDeficit:    s.VapourPressureDeficit(),
		RelativeHumidity:         s.RelativeHumidity(),
		DegreeOfSaturation:       s.degreeOfSaturation(),
		DewPoint:                 s.DewPoint(),
		WetBulb:                  s.wetBulbOf(h),
		Enthalpy:                 h,
		Entropy:                  entropy,
		SpecificVolume:           v,
		Density:                  (1 + s.w) / v,
		HeatCapacity:             cp,
		LatentHeat:               latent,
		Viscosity:                mu,
		Conductivity:             k,
		VapourDiffusivity:        diffusivityOf(logT, s.p),
	}
	q.PrandtlNumber = mu * cp / (1 + s.w) / k
	q.SchmidtNumber = mu / (q.Density * q.VapourDiffusivity)
	q.LewisNumber = q.SchmidtNumber / q.PrandtlNumber
	q.PsychrometricConstant = cp / (1 + s.w) * s.p / (molarRatio * latent)
	return q
}

// energies returns enthalpy, volume, entropy, heat capacity and latent heat,
// which share the virial coefficients, given ln T.
func (s State) energies(logT float64) (h, v, entropy, cp, latent float64) {
	if s.model == IdealGas {
		return s.Enthalpy(), s.SpecificVolume(), s.entropy(), s.HeatCapacity(), LatentHeat(s.t)
	}
	T := s.t + kelvin
	z := 100 / T
	baa, baw, bww := virials(z)
	caa, caw, cww := caloric(z)
	daa, daw, dww := caloricSlope(z)
	b, c, d := mix(s.x, baa, baw, bww), mix(s.x, caa, caw, cww), mix(s.x, daa, daw, dww)
	return realEnthalpyOf(T, s.p, s.x, c), realVolumeOf(T, s.p, s.x, b), s.realEntropyOf(b, c, logT),
		realHeatCapacityOf(T, s.p, s.x, d), latentIn(SurfaceAt(s.t), s.t, cww)
}
