package fromplan

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
	"cloche.example/psychro"
)

// Pressure is that of the standard atmosphere at the site, Pa.
func Pressure(p *plan.Plan) float64 { return psychro.StandardPressure(p.Site.Altitude) }

// Air is the state of air at the site, of the temperature t, °C, and the
// relative humidity rh, fraction.
func Air(p *plan.Plan, t, rh float64) (psychro.State, error) {
	return psychro.FromRelativeHumidity(t, rh, Pressure(p))
}

// WinterNight is the air inside and outside on the night that the heater is
// sized for, with the wind and the cloud over it.
func WinterNight(p *plan.Plan) (envelope.HouseAir, error) {
	n, in := p.Site.WinterNight, p.SetPoints.WinterNight
	inside, e1 := Air(p, in.Temperature, in.RelativeHumidity)
	outside, e2 := Air(p, n.Temperature, n.RelativeHumidity)
	return envelope.HouseAir{Inside: inside, Outside: outside, Wind: n.Wind, Cloud: n.Cloud}, errors.Join(e1, e2)
}

// The sky's emissivity is known for these dew points, °C.
const (
	driest  = -39.999 // of -40
	dampest = 29.999  // of 30
)

// Conditions are those of the house in the given air, in a month, with its
// screen drawn or not. They follow the plan's switches for the sky and for a dry
// cover. Guessed says that the air outside is drier or damper than the sky's
// emissivity is known for, and that the emissivity at a dew point of -40 or 30 °C
// stands for it; between -30 and -50 °C the formula changes by no more than 0.02.
func Conditions(p *plan.Plan, air envelope.HouseAir, month float64, screen bool) (k envelope.HouseConditions, guessed bool, err error) {
	sky := air
	if dew := air.Outside.DewPoint(); dew < driest || dew > dampest {
		guessed = true
		if sky.Outside, err = known(air.Outside); err != nil {
			return k, guessed, err
		}
	}
	if k, err = envelope.NewHouseConditions(sky); err != nil {
		return k, guessed, err
	}
	if guessed {
		warm, cold := sky.Outside.Temperature()+273.15, air.Outside.Temperature()+273.15
		k.SkyDrop *= cold / warm // the same emissivity
		k.Outside, k.OutsideHumidity = air.Outside.Temperature(), air.Outside.RelativeHumidity()
	}
	k.Month, k.ScreenDrawn = month, screen && p.Screen != nil
	if p.Assumptions.SkyAsColdAsAir {
		k.SkyDrop, guessed = 0, false
	}
	if p.Assumptions.DryCover {
		k.InnerFace = envelope.InnerDry
	}
	return k, guessed, nil
}

// known is air of the nearest dew point that the sky's emissivity is known for,
// as warm as the state where that is possible.
func known(s psychro.State) (psychro.State, error) {
	dew := min(max(s.DewPoint(), driest), dampest)
	air, err := psychro.FromDewPoint(math.Max(s.Temperature(), dew), dew, s.Pressure())
	if err != nil {
		return s, fmt.Errorf("air as dry or damp as the sky's emissivity is known for: %w", err)
	}
	return air, nil
}

// Drawn tells whether the plan's screen is drawn in air outside of the
// temperature t, °C, under the sun, W/m² on level ground.
func Drawn(p *plan.Plan, t, sun float64) bool {
	s := p.Screen
	switch {
	case s == nil:
		return false
	case s.Drawn == "always":
		return true
	case s.Drawn == "in the cold":
		return t < s.OutsideBelow
	}
	return sun < s.SunBelow
}
