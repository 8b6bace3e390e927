package sun

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/atmosphere"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// SolarConstant is the irradiance outside the atmosphere at the mean distance
// of the sun, W/m² [Kopp11].
const SolarConstant = 1361.0

// Extraterrestrial returns the irradiance outside the atmosphere on a plane
// that faces the sun, W/m²: the solar constant over the distance squared.
func (s Sun) Extraterrestrial() float64 { return SolarConstant / (s.Distance * s.Distance) }

// Haurwitz returns the clear-sky irradiance on level ground in W/m² at the
// angle zenith, degree, 0 to 180, from straight up, without refraction:
// 1098 cos z exp(-0.059/cos z) [Haurwitz45]; 0 with the sun below the horizon.
// It knows no turbidity. NaN outside.
func Haurwitz(zenith float64) float64 {
	if !(zenith >= 0 && zenith <= 180) {
		return math.NaN()
	}
	c := math.Cos(zenith * radian)
	if zenith >= 90 {
		return 0
	}
	return 1098 * c * math.Exp(-0.059/c)
}

// AirMass returns how many times the air straight up, dimensionless, a ray
// passes from the sun at zenith, degree, 0 to 90, apparent (refraction
// included), at sea level [Kasten89]. NaN outside.
func AirMass(zenith float64) float64 {
	if !(zenith >= 0 && zenith <= 90) {
		return math.NaN()
	}
	return 1 / (math.Cos(zenith*radian) + 0.50572*math.Pow(96.07995-zenith, -1.6364))
}

// ClearSky is the irradiance under a cloudless sky.
type ClearSky struct {
	Global  float64 // W/m² on level ground
	Direct  float64 // W/m² facing the sun
	Diffuse float64 // W/m² on level ground
}

// ClearSkyInput is what the model of Ineichen and Perez needs.
type ClearSkyInput struct {
	Zenith           float64 // degree, apparent angle of the sun from straight up, 0 to 180
	AirMass          float64 // ratio to the air straight up at sea level, 0.3 to 40; AirMass times p/101325
	Turbidity        float64 // dimensionless, Linke turbidity 1 to 10: 2 very clear and cold, 3 clear, 5 hazy
	Altitude         float64 // m, -500 to 4000
	Extraterrestrial float64 // W/m² facing the sun
}

// Ranges of the clear-sky model.
var (
	airMassRange          = domain.Range{Min: 0.3, Max: 40, Unit: "(ratio)"}
	turbidityRange        = domain.Range{Min: 1, Max: 10, Unit: "(dimensionless)", Source: "[Ineichen02]"}
	extraterrestrialRange = domain.Range{Min: 1300, Max: 1430, Unit: "W/m²"}
	clearAltitudeRange    = domain.Range{Min: -500, Max: 4000, Unit: "m", Source: "higher up [Ineichen02] eq. 6 can exceed the sun outside the atmosphere"}
	rangeZenith           = domain.Range{Min: 0, Max: 180, Unit: "degree"}
)

// IneichenPerez returns the clear-sky irradiance of [Ineichen02], without the
// later enhancement at low turbidity. All faults are reported together; with
// the sun at or below the horizon all is dark.
func (in ClearSkyInput) IneichenPerez() (ClearSky, error) {
	err := errors.Join(rangeZenith.Check("zenith", in.Zenith), turbidityRange.Check("turbidity", in.Turbidity),
		clearAltitudeRange.Check("altitude", in.Altitude), extraterrestrialRange.Check("extraterrestrial", in.Extraterrestrial))
	if in.Zenith < 90 {
		err = errors.Join(err, airMassRange.Check("air mass", in.AirMass))
	}
	if err != nil || in.Zenith >= 90 {
		return ClearSky{}, err
	}
	c := math.Cos(in.Zenith * radian)
	fh1 := math.Exp(-in.Altitude / 8000)
	fh2 := math.Exp(-in.Altitude / 1250)
	cg1 := 5.09e-5*in.Altitude + 0.868
	cg2 := 3.92e-5*in.Altitude + 0.0387
	tl := in.Turbidity - 1
	global := cg1 * in.Extraterrestrial * c * math.Exp(-cg2*in.AirMass*(fh1+fh2*tl)) // eq. 6
	b := 0.664 + 0.163/fh1
	direct := b * in.Extraterrestrial * math.Exp(-0.09*in.AirMass*tl) // eq. 8
	most := global / c * (1 - (0.1-0.2*math.Exp(-in.Turbidity))/(0.1+0.882/fh1))
	direct = min(direct, max(most, 0)) // section 4: the diffuse part stays above its least
	return ClearSky{Global: global, Direct: direct, Diffuse: global - direct*c}, nil
}

// airOfRefraction is the temperature of the air that bends the sun, °C: ten kelvin
// more lift a sun on the horizon by a fiftieth of a degree less.
const airOfRefraction = 10.0

// ClearSky returns the clear-sky irradiance at the site and time by Ineichen
// and Perez with the turbidity, Linke's, dimensionless, 1 to 10, the pressure
// of the standard atmosphere and refraction at 10 °C; the site may lie up to
// 4000 m.
func (s Site) ClearSky(t time.Time, turbidity float64) (ClearSky, error) {
	sun := s.Sun(t)
	pressure := atmosphere.Pressure(s.altitude)
	in := ClearSkyInput{Zenith: sun.Zenith(), Turbidity: turbidity, Altitude: s.altitude, Extraterrestrial: sun.Extraterrestrial()}
	if sun.Elevation > -1 {
		in.Zenith -= Refraction(sun.Elevation, pressure, airOfRefraction)
	}
	if in.Zenith < 90 {
		in.Zenith = max(in.Zenith, 0)
		in.AirMass = AirMass(in.Zenith) * pressure / constant.StandardPressure
	}
	return in.IneichenPerez()
}
