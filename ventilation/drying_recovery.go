package ventilation

import "cloche.example/psychro"

// RecoveredAir is what a heat exchanger between supply and exhaust air of one
// dry-air flow does. It hands over heat, no water. Its fan takes power and it
// leaks a little: both are left out.
type RecoveredAir struct {
	Supply     float64 // °C, outside air as it enters the house
	Saved      float64 // W, warms it to there
	Exhaust    float64 // °C, inside air as it leaves
	Condensate float64 // kg/s, water and ice that the exhaust air drops on its way
	Plate      float64 // °C, mean of the exhaust air that leaves and the outside air that enters: the coldest part of the plates
	Frost      bool    // Plate lies below 0 °C and below the dew point of the exhaust air: ice may block it
}

// idleRecovery is the exchanger through which nothing flows.
func idleRecovery(outside, inside psychro.State) RecoveredAir {
	return RecoveredAir{Supply: outside.Temperature(), Exhaust: inside.Temperature(), Plate: 0.5 * (outside.Temperature() + inside.Temperature())}
}

// recoverHeat passes dryAir, kg/s, of outside air against as much inside air.
// The effectiveness is the temperature rise of the supply air over the whole
// difference; the exhaust air gives that heat by its enthalpy, and what it
// cannot hold any more condenses in the exchanger.
func recoverHeat(inside, outside psychro.State, dryAir, effectiveness float64) (RecoveredAir, error) {
	r := idleRecovery(outside, inside)
	rise := effectiveness * (inside.Temperature() - outside.Temperature())
	if rise <= 0 || dryAir == 0 {
		return r, nil
	}
	r.Supply = outside.Temperature() + rise
	warmed, err := outside.Model().FromHumidityRatio(r.Supply, outside.HumidityRatio(), outside.Pressure())
	if err != nil {
		return RecoveredAir{}, err
	}
	r.Saved = dryAir * (warmed.Enthalpy() - outside.Enthalpy())
	left, err := psychro.Stream{State: inside, DryAir: dryAir}.Changed(-r.Saved, 0, 0)
	if err != nil {
		return RecoveredAir{}, err
	}
	r.Exhaust = left.Air.State.Temperature()
	r.Condensate = left.FogLiquid + left.FogIce
	r.Plate = 0.5 * (r.Exhaust + outside.Temperature())
	r.Frost = r.Plate < 0 && r.Plate < inside.DewPoint()
	return r, nil
}
