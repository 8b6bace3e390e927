package ventilation_test

import (
	"math"
	"testing"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Any house is refused, has no state within the range, or closes with finite
// figures.
func FuzzClimate(f *testing.F) {
	f.Add(100.0, 2.5, 5.8, 0.5, 27.0, 0.5, 820.0, 2.0, 12.0, 1.0, 0.0, 0.0)
	f.Add(20.0, 0.0, 0.3, 0.0, -10.0, 0.9, 0.0, 0.0, -30.0, 0.0, 3000.0, 0.01)
	f.Add(3000.0, 6.0, 3.0, -1.0, 38.0, 0.05, 1000.0, 8.0, 38.0, 0.01, -5e5, 1.0)
	f.Add(100.0, 1.0, 5.8, 0.3, 0.01, 1.0, 0.0, 3.0, 0.0, 0.5, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, area, lai, u, coefficient, to, rh, sun, wind, sky, opening, heat, mist float64) {
		n, err := ventilation.NewNetwork([]ventilation.Opening{
			{Height: 0.5, Area: 2, Discharge: 0.6, PressureCoefficient: coefficient},
			{Height: 3, Area: 1, Discharge: 0.6, Vertical: 0.4},
		}, nil, nil)
		if err != nil {
			return
		}
		h := ventilation.ClimateHouse{FloorArea: area, Volume: 3 * area, Cover: ventilation.DefaultSimpleCover(2 * area), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(lai), Air: n}
		h.Cover.U = u
		c, err := ventilation.NewClimate(h)
		if err != nil {
			return
		}
		a, err := psychro.FromRelativeHumidity(to, rh, 101325)
		if err != nil {
			return
		}
		s, err := c.Solve(ventilation.Weather{Air: a, Sun: sun, Wind: wind, Sky: sky, Ground: 12}, ventilation.Setting{Opening: opening, Heat: heat, Mist: mist})
		if err != nil {
			return
		}
		size := math.Abs(s.HeatIn) + math.Abs(s.HeatOut) + math.Abs(s.AirLatent) + math.Abs(s.CoverLoss) + 2.5e6*(s.Mist+s.Drip) + 1e-3*area
		if !(math.Abs(s.HeatResidual) <= 1e-8*size) || !(s.NodeResidual <= 1e-9) || !ventilation.TemperatureRange.Contains(s.Temperature) || !(s.RelativeHumidity >= 0 && s.RelativeHumidity <= 1+1e-9) {
			t.Fatalf("%+v", s)
		}
	})
}
