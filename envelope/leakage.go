package envelope

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// LeakageModel chooses how a house's air leakage is found.
type LeakageModel uint8

// The leakage models.
const (
	LeakageGiven    LeakageModel = iota // air changes per hour as given, whatever the weather
	LeakagePressure                     // from a pressure test, by stack and wind
)

// Leakage is how a closed house leaks air. DefaultLeakage gives a complete one
// to change.
type Leakage struct {
	Model         LeakageModel // given air changes, or by pressure
	AirChanges    float64      // air changes per hour, 0 to 60; read with LeakageGiven alone
	At50          float64      // air changes per hour, 0 to 500, at 50 Pa, of a pressure test; read with LeakagePressure, as are all below
	Exponent      float64      // exponent, 0.5 to 1, of the flow over the pressure, 0.5 for holes to 1 for pores
	Horizontal    float64      // fraction, 0 to 1, of the leaks that lie in roof and floor, the rest in the walls
	RoofLessFloor float64      // fraction, of the leaks in the roof less that of the leaks in the floor, from minus Horizontal to Horizontal
	Shelter       float64      // fraction, 0 to 1, of the open wind that reaches the house, 1 on open ground, about 0.3 among buildings
}

// DefaultLeakage returns one air change per hour, given; its pressure fields
// are those of a fairly tight house.
func DefaultLeakage() Leakage {
	return Leakage{AirChanges: 1, At50: 10, Exponent: 0.65, Horizontal: 0.5, RoofLessFloor: 0.5, Shelter: 0.8}
}

// Ranges of leakage.
var (
	airChangesRange   = domain.Range{Min: 0, Max: 60, Unit: "air changes per hour", Source: "chosen: a closed house"}
	at50Range         = domain.Range{Min: 0, Max: 500, Unit: "air changes per hour", Source: "chosen"}
	flowExponentRange = domain.Range{Min: 0.5, Max: 1, Unit: "exponent", Source: "turbulent to laminar flow"}
	leakageModels     = domain.Range{Min: 0, Max: float64(LeakagePressure), Unit: "number", Source: "constants of LeakageModel"}
	leakageVolume     = domain.Range{Min: 0.1, Max: 1e7, Unit: "m³", Source: "chosen"}
	leakageHeight     = domain.Range{Min: 0.1, Max: 60, Unit: "m", Source: "chosen"}
)

// Coefficients of [WalWil98], a house on a slab without a flue.
const (
	stackPower     = 1.25     // stack factor: (X²/(2 - R))^(5/4)
	windFactor     = 0.19     // wind factor
	windExponent   = 2.0      // wind factor: 0.19 (2 - n)
	windPower      = 1.5      // wind factor: ((X + R)/2)^(3/2)
	superposition  = -1.0 / 3 // [WalWil98] superposition
	testPressure   = 50.0     // Pa
	secondsPerHour = 3600.0
)

// LeakageFlow is the leakage of one hour.
type LeakageFlow struct {
	AirChanges    float64 // air changes per hour, of the volume with inside air
	Volume        float64 // m³/s, of inside air
	DryAir        float64 // kg/s
	StackPressure float64 // Pa, of the temperature difference over the height; 0 with given air changes
	WindPressure  float64 // Pa, of the sheltered wind
	Stack         float64 // m³/s, what the stack alone would move
	Wind          float64 // m³/s, what the wind alone would move
	Sensible      float64 // W, to warm the air that comes in with its vapour
	Latent        float64 // W, carried off as vapour: the heat that evaporation at the temperature of the inside air took
	Total         float64 // W, the sum of the two
	Coefficient   float64 // W/K, Sensible per kelvin, finite at equal temperatures
}

// check returns nil, or the join of a *RangeError for each field out of range.
func (l Leakage) check() error {
	if l.valid() {
		return nil
	}
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(leakageModels, "Model", float64(l.Model))
	if l.Model == LeakageGiven {
		check(airChangesRange, "AirChanges", l.AirChanges)
		return errors.Join(faults...)
	}
	check(at50Range, "At50", l.At50)
	check(flowExponentRange, "Exponent", l.Exponent)
	check(fractionRange, "Horizontal", l.Horizontal)
	h := math.Max(0, math.Min(1, l.Horizontal))
	check(domain.Range{Min: -h, Max: h, Unit: "fraction", Source: "no more than Horizontal either way"}, "RoofLessFloor", l.RoofLessFloor)
	check(fractionRange, "Shelter", l.Shelter)
	return errors.Join(faults...)
}

func (l *Leakage) valid() bool {
	if l.Model == LeakageGiven {
		return airChangesRange.Contains(l.AirChanges)
	}
	return l.Model == LeakagePressure && at50Range.Contains(l.At50) && flowExponentRange.Contains(l.Exponent) &&
		fractionRange.Contains(l.Horizontal) && math.Abs(l.RoofLessFloor) <= l.Horizontal && fractionRange.Contains(l.Shelter)
}

// Flow returns the leakage of a house of the volume, m³, 0.1 to 1e7, whose leaks
// reach over the height, m, 0.1 to 60, between the air inside and outside, in
// the wind at its ridge; hour and cloud are not read. With given air changes only
// the heat depends on the weather. With LeakagePressure the flow is the sum of
// stack and wind by [WalWil98] (AIM-2), whose authors state an error near 10 % for
// houses and take the height of the ceiling; a greenhouse has none, House.Loss
// takes the ridge, and the result is an estimate. The error joins a *RangeError for each fault.
func (l Leakage) Flow(volume, height float64, air HouseAir) (LeakageFlow, error) {
	inside, outside, wind := air.Inside, air.Outside, air.Wind
	if !l.valid() || !leakageVolume.Contains(volume) || !leakageHeight.Contains(height) || !localWindRange.Contains(wind) ||
		!(inside.Pressure() > 0) || !(outside.Pressure() > 0) {
		return LeakageFlow{}, errors.Join(l.check(),
			leakageVolume.Check("volume", volume), leakageHeight.Check("height", height), localWindRange.Check("Wind", wind),
			pressureRange.Check("pressure of Inside", inside.Pressure()), pressureRange.Check("pressure of Outside", outside.Pressure()))
	}
	var r LeakageFlow
	if l.Model == LeakageGiven {
		r.Volume = l.AirChanges * volume / secondsPerHour
	} else {
		l.pressure(&r, volume, height, wind, inside, outside)
	}
	r.AirChanges = r.Volume * secondsPerHour / volume
	r.DryAir = r.Volume / inside.SpecificVolume()
	dt := inside.Temperature() - outside.Temperature()
	r.Coefficient = r.DryAir * outside.HeatCapacity()
	r.Sensible = r.Coefficient * dt
	r.Latent = r.DryAir * (inside.HumidityRatio() - outside.HumidityRatio()) * evaporationHeat(inside.Temperature())
	r.Total = r.Sensible + r.Latent
	return r, nil
}

// evaporationHeat returns the heat in J/kg that evaporates water at t in °C,
// taken at the end of its range below -40 °C.
func evaporationHeat(t float64) float64 {
	return psychro.LatentHeatOver(psychro.Liquid, max(t, -40))
}

// pressure finds the flow by AIM-2.
func (l *Leakage) pressure(r *LeakageFlow, volume, height, wind float64, inside, outside psychro.State) {
	n, x, h := l.Exponent, l.RoofLessFloor, l.Horizontal
	c := l.At50 * volume / secondsPerHour / math.Pow(testPressure, n)                  // m³/(s Pa^n)
	fs := (1 + n*h) / (n + 1) * math.Pow(0.5-0.5*math.Pow(x*x/(2-h), stackPower), n+1) // [WalWil98] stack factor
	fw := windFactor * (windExponent - n) * (1 - math.Pow((x+h)/2, windPower))         // [WalWil98] wind factor
	rho := outside.Density()
	kelvin := inside.Temperature() + constant.ZeroCelsius
	local := l.Shelter * wind
	r.StackPressure = rho * constant.Gravity * height * math.Abs(inside.Temperature()-outside.Temperature()) / kelvin // [WalWil98] stack pressure
	r.WindPressure = rho * local * local / 2                                                                          // [WalWil98] wind pressure
	r.Stack = c * fs * math.Pow(r.StackPressure, n)
	r.Wind = c * fw * math.Pow(r.WindPressure, n)
	s, w := math.Pow(r.Stack, 1/n), math.Pow(r.Wind, 1/n)
	r.Volume = math.Pow(s+w+superposition*math.Sqrt(s*w), n) // [WalWil98] superposition
}
