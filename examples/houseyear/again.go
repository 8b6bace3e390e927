package main

import (
	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// again is hour i as Climate.Solve takes it alone: the weather, and what was done to
// the house, with the heat of structure and tubes as the year had it. Opening, Air
// and Pad are left to the caller.
func (y *year) again(i int) (ventilation.Weather, ventilation.Setting, error) {
	h, s, x := y.house, y.house.weather, &y.State[i]
	air, err := psychro.FromRelativeHumidity(s.Temperature[i], s.RelativeHumidity[i], y.Pressure)
	if err != nil {
		return ventilation.Weather{}, ventilation.Setting{}, err
	}
	gain := new(envelope.SolarGain)
	err = h.glazing.GainTo(gain, h.sunlight(i))
	gain.Transmitted *= 1 - h.mass.Sun
	w := ventilation.Weather{Air: air, Sun: s.Global[i], Wind: y.Wind[i], Sky: y.Sky[i], Ground: y.Soil[i], Gain: gain}
	set := ventilation.Setting{
		Heat: x.Heat - x.ToStructure - x.ToStore, Moisture: x.Moisture, Mist: x.Mist, Lamps: h.lamps.heat(y.Burn[i]),
		Screen: y.screen(i), Shade: shade(h.plan, s.Global[i], y.screen(i)),
	}
	if x.IntoStore > 0 { // all of it a share of what the air holds
		set.Condensing = x.IntoStore / x.VapourPressure
	}
	return w, set, err
}
