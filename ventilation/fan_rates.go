package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/atmosphere"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Summer and winter rates of fans for a house by North American practice
// [Kessler] and, but for the rate and the light, from memory.
const (
	fanSummer   = 8 * 0.3048 / 60 // m³/(s m²), 8 cfm/ft²
	fanWinter   = 2 * 0.3048 / 60 // m³/(s m²), 2 cfm/ft² (from memory)
	fanLight    = 53819.55        // lx, 5000 foot-candles
	fanRise     = 7 / 1.8         // K, 7 °F (from memory)
	fanDistance = 30.48           // m, 100 ft (from memory)
	fanCold     = 15 / 1.8        // K, 15 °F (from memory)
)

// Ranges of the fan rates.
var (
	fanAltitudeRange = domain.Range{Min: -500, Max: 4000, Unit: "m", Source: "houses"}
	fanLightRange    = domain.Range{Min: 0, Max: 150000, Unit: "lx", Source: "sun inside a house; a value in klx falls short of use"}
	fanRiseRange     = domain.Range{Min: 0.5, Max: 20, Unit: "K", Source: "pad to fan"}
	fanDistanceRange = domain.Range{Min: 3, Max: 100, Unit: "m", Source: "pad to fan, 60 m at most in practice"}
	fanColdRange     = domain.Range{Min: 0.5, Max: 60, Unit: "K", Source: "inside to outside air in winter"}
)

// FanRates ask for the fans of a house by the rates of practice: fans at one
// end, pads or inlets at the other.
type FanRates struct {
	Floor    float64 // m², 0.1 to 1e6
	Altitude float64 // m, -500 to 4000, above sea level
	Light    float64 // lx, 0 to 150000, most inside the house, below cover and shade
	Rise     float64 // K, 0.5 to 20, of the air from the pads to the fans
	Distance float64 // m, 3 to 100, from the pads to the fans
	Cold     float64 // K, 0.5 to 60, inside over outside air in winter, when the least rate runs
}

// FanFlows are the fans' rates with their factors.
type FanFlows struct {
	ByAltitude float64 // dimensionless, p0/p of the standard atmosphere: fans move volume, air carries mass
	ByLight    float64 // dimensionless, light over 53.8 klx
	ByRise     float64 // dimensionless, 3.89 K over Rise
	House      float64 // dimensionless, the product of the three
	Velocity   float64 // dimensionless, root of 30.5 m over Distance, at least 1: air that moves over the crop
	Summer     float64 // m³/s, Floor times 0.0406 m³/(s m²) and the larger of House and Velocity
	Winter     float64 // m³/s, Floor times 0.0102 m³/(s m²), ByAltitude and 8.33 K over Cold
}

// DefaultFanRates returns the conditions at which every factor is 1, for a floor, m²,
// 0.1 to 1e6: sea level, 53.8 klx, 3.89 K, 30.48 m and, in winter, 8.33 K.
func DefaultFanRates(floor float64) FanRates {
	return FanRates{Floor: floor, Light: fanLight, Rise: fanRise, Distance: fanDistance, Cold: fanCold}
}

// Solve returns the rates: 8 cfm/ft² and 2 cfm/ft² with factors by law where practice
// has tables (from memory), which agree with the laws within 0.01 but for 8,000 ft
// (0.014). The larger of House and Velocity counts, never their product. They are rules
// for a first size: PadDesign and Climate know the heat. The error joins the faults by
// field.
func (r FanRates) Solve() (FanFlows, error) {
	if err := errors.Join(
		floorAreaRange.Check("Floor", r.Floor),
		fanAltitudeRange.Check("Altitude", r.Altitude),
		fanLightRange.Check("Light", r.Light),
		fanRiseRange.Check("Rise", r.Rise),
		fanDistanceRange.Check("Distance", r.Distance),
		fanColdRange.Check("Cold", r.Cold),
	); err != nil {
		return FanFlows{}, err
	}
	f := FanFlows{
		ByAltitude: constant.StandardPressure / atmosphere.Pressure(r.Altitude),
		ByLight:    r.Light / fanLight,
		ByRise:     fanRise / r.Rise,
		Velocity:   math.Max(1, math.Sqrt(fanDistance/r.Distance)),
	}
	f.House = f.ByAltitude * f.ByLight * f.ByRise
	f.Summer = fanSummer * r.Floor * math.Max(f.House, f.Velocity)
	f.Winter = fanWinter * r.Floor * f.ByAltitude * fanCold / r.Cold
	return f, nil
}

// Circulating fans by [HafPage].
const (
	mixingRate  = 2 * 0.3048 / 60 // m³/(s m²), 2 cfm/ft²
	mixingThrow = 30.0            // diameters
)

var (
	fanDiameterRange = domain.Range{Min: 0.1, Max: 3, Unit: "m", Source: "circulating fans"}
	mixingFanRange   = domain.Range{Min: 0.05, Max: 50, Unit: "m³/s", Source: "circulating fans"}
)

// CirculatingFans are fans that keep the air of a house moving along it.
type CirculatingFans struct {
	Floor    float64 // m², 0.1 to 1e6
	Flow     float64 // m³/s, 0.05 to 50, of one fan, free air
	Diameter float64 // m, 0.1 to 3, of its blades
}

// CirculatingLayout is how many fans it takes and how far apart.
type CirculatingLayout struct {
	Total float64 // m³/s, of all fans: 0.0102 m³/(s m²) of floor
	Count int     // count of fans, rounded up
	Throw float64 // m, 30 diameters: no fan further than that from the next
}

// Solve returns the fans of the rule of practice: 2 cfm of nominal free air for
// each ft² of floor and a throw of 30 diameters [HafPage]. Another rule, a
// quarter of the volume a minute, is the same at a mean height of 2.44 m. The
// error joins the faults by field.
func (m CirculatingFans) Solve() (CirculatingLayout, error) {
	if err := errors.Join(
		floorAreaRange.Check("Floor", m.Floor),
		mixingFanRange.Check("Flow", m.Flow),
		fanDiameterRange.Check("Diameter", m.Diameter),
	); err != nil {
		return CirculatingLayout{}, err
	}
	l := CirculatingLayout{Total: mixingRate * m.Floor, Throw: mixingThrow * m.Diameter}
	l.Count = int(math.Ceil(l.Total / m.Flow * (1 - slack))) // a fan more is not for rounding
	return l, nil
}
