package ventilation_test

import (
	"math"
	"testing"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Any hour of a house on any ready-made cover is refused, has no state within the
// range, or closes with finite figures.
func FuzzRealCovers(f *testing.F) {
	covers := envelope.Covers()
	climates := make([]*ventilation.Climate, 2*len(covers))
	f.Add(uint8(0), -5.0, 0.8, 0.0, 2.0, 12.0, 0.0, 4000.0, 0.0, 0.0, true)
	f.Add(uint8(3), 28.0, 0.4, 850.0, 3.0, 15.0, 1.0, 0.0, 0.0, 0.0, false)
	f.Add(uint8(11), 2.35, 0.75, 0.0, 0.0, 5.0, 0.0, 83.0, 0.0, 0.0, false)
	f.Add(uint8(4), 0.01, 1.0, 100.0, 40.0, -10.0, 0.02, -3000.0, 500.0, 0.01, true)
	f.Fuzz(func(t *testing.T, which uint8, to, rh, sun, wind, drop, opening, heat, radiant, mist float64, screen bool) {
		i := int(which) % len(climates)
		if climates[i] == nil {
			h := realClimate(t, covers[i/2].Cover)
			h.Real.House = realHouse(t, covers[i/2].Cover, []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure}[i%2])
			climates[i] = climate(t, h)
		}
		a, err := psychro.FromRelativeHumidity(to, rh, 101325)
		if err != nil {
			return
		}
		w := ventilation.Weather{Air: a, Sun: sun, Wind: wind, Sky: to - drop, Ground: 12}
		s, err := climates[i].Solve(w, ventilation.Setting{Opening: opening, Heat: heat, Radiant: radiant, Mist: mist, Screen: screen})
		if err != nil {
			return
		}
		size := math.Abs(s.HeatIn) + math.Abs(s.HeatOut) + math.Abs(s.AirLatent) + math.Abs(s.CoverLoss) + 2.5e6*(s.Mist+s.Drip) + 0.1
		if !(math.Abs(s.HeatResidual) <= 1e-8*size) || !(s.NodeResidual <= 1e-9) || !ventilation.TemperatureRange.Contains(s.Temperature) || !(s.RelativeHumidity >= 0 && s.RelativeHumidity <= 1+1e-9) {
			t.Fatalf("%+v", s)
		}
	})
}
