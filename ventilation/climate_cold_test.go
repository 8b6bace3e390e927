package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Hours under single film, found cold in calm: straight forms from far away missed
// one to three millionths of the heat.
func TestColdHoursInCalm(t *testing.T) {
	h := realClimate(t, envelope.SingleFilm())
	h.Real.House = realHouse(t, envelope.SingleFilm(), envelope.RadiantGiven)
	c := climate(t, h)
	for _, hour := range []struct {
		air, ratio, sun, sky, ground float64
		set                          ventilation.Setting
	}{
		{-1.9130179730609171, 0.0024304154032984988, 793.762101569876, -21.48032206730576, 8.785065694903818,
			ventilation.Setting{Opening: 0.9593450146451987, Heat: 4667.163690437661, Screen: true}},
		{21.32411812904307, 0.006235500632522849, 614.2131054548677, 7.297568373192995, 17.920340132753005,
			ventilation.Setting{Opening: 0.6524488481053725, Heat: 6243.604664953808, Radiant: 1040.004450373748, Screen: true}},
		{16.98066527865746, 0.0014634950347142065, 484.2210349228185, 13.248305043097586, 14.076579968305518,
			ventilation.Setting{Opening: 0.3053402533046734, Heat: 3001.307544685422}},
	} {
		air, err := psychro.IdealGas.FromHumidityRatio(hour.air, hour.ratio, 101325)
		require.NoError(t, err)
		w := ventilation.Weather{Air: air, Sun: hour.sun, Sky: hour.sky, Ground: hour.ground}
		x, err := c.Solve(w, hour.set)
		require.NoError(t, err)
		sameCovers(t, h, w, hour.set, x)
	}
}
