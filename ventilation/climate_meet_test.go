package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// coverNamed is the ready-made cover of that name.
func coverNamed(t *testing.T, name string) envelope.Cover {
	for _, c := range envelope.Covers() {
		if c.Name == name {
			return c.Cover
		}
	}
	t.Fatalf("no cover %q", name)
	return envelope.Cover{}
}

// Hours whose covers are far from straight between where a cold start begins and
// the state: it has been found none the less.
func TestColdStartsFarFromTheState(t *testing.T) {
	for _, c := range []struct {
		cover               string
		air, ratio          float64 // °C, kg/kg
		wind, sky, ground   float64
		open, heat, radiant float64
		screen              bool
	}{
		{"double film", 23.4075, 0.0167644, 5.678, 8.4259, 6.3074, 0.1, 6536.66, 1706.28, false},
		{"single infrared film", 4.43315, 0.00261355, 1.76016, -17.7651, 16.1171, 0, 5197.12, 0, false},
		{"double film", 11.0366, 0.00733409, 2.08616, -5.31135, 5.36749, 0.067517, 269.732, 1974.07, false},
		{"twin-wall sheet 6 mm", -15.5083, 0.000822006, 4.5843, -35.3798, 19.5386, 0, 6113.09, 1825.79, true},
		{"triple-wall sheet 16 mm", -15.9132, 0.000822716, 0, -24.7339, 6.06922, 0, 7081.79, 0, true},
	} {
		for _, see := range []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure} {
			h := realClimate(t, coverNamed(t, c.cover))
			h.Real.House = realHouse(t, coverNamed(t, c.cover), see)
			out, err := psychro.FromHumidityRatio(c.air, c.ratio, 101325)
			require.NoError(t, err)
			w := ventilation.Weather{Air: out, Wind: c.wind, Sky: c.sky, Ground: c.ground}
			s := ventilation.Setting{Opening: c.open, Heat: c.heat, Radiant: c.radiant, Screen: c.screen}
			x, err := climate(t, h).Solve(w, s)
			require.NoErrorf(t, err, "%s %v", c.cover, see)
			require.Less(t, x.NodeResidual, 1e-9)
			sameCovers(t, h, w, s, x)
		}
	}
}
