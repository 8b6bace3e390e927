package main

import (
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// airFlows is the sensible heat that air takes out, W, by the way it goes.
type airFlows struct{ leak, vent float64 }

// split parts what the air takes between leaks and vents by the mass that goes
// each way.
func split(x *ventilation.ClimateState, opening float64) airFlows {
	if x.DryAir <= 0 || opening <= 0 {
		return airFlows{leak: x.AirSensible}
	}
	f := x.Leakage / x.DryAir
	return airFlows{f * x.AirSensible, (1 - f) * x.AirSensible}
}

// lit is the daylight on the trays with the shade that was drawn, µmol/(m² s).
func (y *year) lit(i int) float64 {
	p := y.house.plan
	return y.Daylight[i] * fromplan.ShadeLight(p, y.house.weather.Global[i]) * screenLeaves(p, y.screen(i))
}

// lampShare is the part of the light above the crop that comes from lamps.
func (y *year) lampShare(i int) float64 {
	h, x := y.house, &y.State[i]
	lamp := y.Burn[i] * h.lamps.power * h.lamps.share
	all := x.SunCanopy + x.SunFloor + x.SunReflected
	if all <= 0 {
		return 0
	}
	return math.Min(1, lamp/all)
}

// heat is the useful heat that the heater gives in hour i, W: where it draws from
// the ridge, less what that saves.
func (y *year) heat(i int) float64 { return y.house.heater(&y.State[i]) - y.saved(i) }

// saved is what drawing from the ridge saves in hour i, W.
func (y *year) saved(i int) float64 {
	if !y.house.ridge.on {
		return 0
	}
	return y.house.drawn(&y.State[i], y.house.weather.Temperature[i])
}

// fans is the electricity of the fans in walls and roof in hour i, W.
func (y *year) fans(i int) float64 {
	if y.State[i].Forced {
		return y.house.vents.power
	}
	return 0
}

// pads is the water that the pads take in hour i, kg/s, with what is drained off.
func (y *year) pads(i int) float64 {
	if w := y.State[i].FromPad; w > 0 {
		return w * y.house.vents.salt / (y.house.vents.salt - 1)
	}
	return 0
}

// sprayed is the water that the fog's nozzles give in hour i, kg/s.
func (y *year) sprayed(i int) float64 {
	if f := y.house.plan.Fog; f != nil && f.Evaporated > 0 {
		return y.State[i].Mist / f.Evaporated
	}
	return 0
}

// burnt is the heat of the CO2 burner in hour i, W, by the lower heating value; none
// where the CO2 comes from bottles.
func (y *year) burnt(i int) float64 { return y.house.burnt(&y.State[i]) }

// tubesFan is the electricity of the fan of the tubes in the soil in hour i, W.
func (y *year) tubesFan(i int) float64 {
	if y.tubes == nil {
		return 0
	}
	return y.tubes.fan[i]
}

// carbonOut is the CO2 that the air carries off in hour i, kg/s.
func (y *year) carbonOut(i int) float64 {
	x := &y.State[i]
	return x.VolumeOut * ventilation.CO2Density(1, x.Temperature, y.Pressure) * (y.CO2[i] - y.house.outside)
}

// from is whence the wind blows in hour i, degree; NaN where it is not known.
func (y *year) from(i int) float64 {
	if w := y.house.weather; w.WindFrom != nil {
		return w.WindFrom[i]
	}
	return math.NaN()
}

// fuel is what the heater takes in hour i, W. A burner stands ready in months that
// are colder in the mean than the house is kept by day.
func (y *year) fuel(i int) float64 {
	h := y.house
	if heat := y.heat(i); heat > 0 {
		return h.source.Energy(heat, 1)
	}
	if h.plan.Site.Months.Temperature[h.weather.Time[i].Month()-1] < h.plan.SetPoints.Day.Temperature {
		return h.source.Burner.FuelPower(0) / h.source.Ratio
	}
	return 0
}

// screen tells whether the screen is drawn in hour i.
func (y *year) screen(i int) bool {
	w := y.house.weather
	return fromplan.Drawn(y.house.plan, w.Temperature[i], w.Global[i])
}

// setPoint is what the heater holds in hour i, °C.
func (y *year) setPoint(i int) float64 {
	q := y.house.plan.SetPoints
	if byDay(q, float64(y.house.weather.Time[i].Hour())) {
		return q.Day.Temperature
	}
	return q.Night.Temperature
}
