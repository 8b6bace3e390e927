package main

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/psychro"
)

// bare is a house without crop, lamps, vents, leaks and humidity of its own, kept
// at one temperature.
const bare = `"lights": null, "vents": [], "leakage": {"air_changes_per_h": 0}, "crop": {"leaf_area_ratio": 0}, "floor": {"wet_fraction": 0},
	"set_points": {"limits": {"relative_humidity": 0.99}, "day": {"temperature_c": 14}, "night": {"temperature_c": 14}}`

// In weather that stays, without sun, crop, wind and leaks, over soil that
// has settled, the heater gives what the steady loss of the same house is, its
// faces seeing the floor that the year has found.
func TestConstantWeatherIsTheSteadyNight(t *testing.T) {
	s := part(t, "01-02", 12)
	for i := range s.Time {
		s.Temperature[i], s.RelativeHumidity[i], s.DewPoint[i], s.Pressure[i] = -6, 0.8, -8, 98000
		s.Wind[i], s.Global[i], s.Direct[i], s.Diffuse[i], s.Sky[i] = 0, 0, 0, 0, 230
	}
	a := solved(t, changed(t, "{"+bare+"}"), s)
	n := s.Hours() - 1
	x := &a.year.State[n]
	require.InDelta(t, 14, x.Temperature, 1e-6)
	out, err := psychro.FromRelativeHumidity(-6, 0.8, 98000)
	require.NoError(t, err)
	in, err := psychro.FromHumidityRatio(14, x.HumidityRatio, 98000)
	require.NoError(t, err)
	k, _, err := fromplan.Conditions(&a.filled.Plan, envelope.HouseAir{Inside: in, Outside: out}, 1, false)
	require.NoError(t, err)
	k.SkyDrop, k.RadiantRise = -6-a.year.Sky[n], x.FloorTemperature-14
	loss, err := a.year.house.steady.House.Envelope.Loss(k)
	require.NoError(t, err)
	want := loss.Total - loss.Ground.Total
	require.InEpsilon(t, want, x.CoverLoss+x.AirSensible+x.AirLatent, 1e-3)
	require.InEpsilon(t, want, x.Heat-x.Ground-x.ToStructure, 1e-3)
	require.InDelta(t, 0, x.ToStructure, 1e-3*want, "the structure has settled")
}

// The same light, no limit of humidity: more insulation and a lower set-point
// cost no heat in the time.
func TestLessHeat(t *testing.T) {
	s := part(t, "01-28", 5)
	with := func(more string) float64 {
		return solved(t, changed(t, `{"set_points": {"limits": {"relative_humidity": 0.99}`+more+`}`), s).Account.Whole.Heater
	}
	was := with("}")
	require.Less(t, with(`}, "ground": {"floor_resistance_m2_k_w": 2}`), was)
	require.Less(t, with(`}, "screen": {}`), was)
	cold := with(`, "night": {"temperature_c": 9}}`)
	require.Less(t, cold, was)
	require.Less(t, with(`, "night": {"temperature_c": 7}, "day": {"temperature_c": 13}}`), cold)
	require.Less(t, with(`}, "cover": {"roof": "double film", "side_walls": "double film", "end_walls": "double film"}`),
		with(`}, "cover": {"roof": "single film", "side_walls": "single film", "end_walls": "single film"}`))
}

// More vent never makes an hour hotter that is warmer than outside and has its
// vents as wide as they go.
func TestMoreVentIsNotHotter(t *testing.T) {
	s := part(t, "07-08", 3)
	one := solved(t, plan.Demo(), s)
	h, err := newHouse(&one.filled.Plan, s)
	require.NoError(t, err)
	wide := *h.plan
	wide.Vents = append([]plan.Vent(nil), wide.Vents...)
	for i := range wide.Vents {
		wide.Vents[i].Length *= wider
	}
	other, err := newHouse(&wide, s)
	require.NoError(t, err)
	y, err := other.solve(context.Background())
	require.NoError(t, err)
	n := 0
	for i, x := range one.year.State {
		if x.Temperature > s.Temperature[i]+0.5 && one.year.Opening[i] == 1 && y.Opening[i] == 1 {
			require.LessOrEqual(t, y.State[i].Temperature, x.Temperature+1e-6, s.Time[i])
			n++
		}
	}
	require.Greater(t, n, 10)
}

// Lamps burn within their time, off in bright daylight, and no longer than the
// crop's light asks.
func TestLampsBurn(t *testing.T) {
	l := lamps{ppfd: 150, asked: 12, from: 20, long: 8, above: 200}
	require.Zero(t, l.burn(12, 10, 0), "outside its time")
	require.Equal(t, 1.0, l.burn(21, 10, 0))
	require.Equal(t, 1.0, l.burn(3, 10, 0), "past midnight")
	require.Zero(t, l.burn(4, 10, 0))
	require.Zero(t, l.burn(21, 201, 0), "bright")
	require.Zero(t, l.burn(21, 10, 12), "enough")
	require.InDelta(t, 0.5, l.burn(21, 0, 12-0.5*150*0.0036), 1e-12)
	l.from = 6.5
	require.InDelta(t, 0.5, l.burn(6, 0, 0), 1e-12)
}

// The store's two ways agree where its mean comes from the exact course, and
// tell where it does not.
func TestStore(t *testing.T) {
	const c, g = 3e5, 4.0
	s := newStore(c, 10, 3600*g)
	now, wrong := 10.0, newStore(c, 10, 3600*g)
	for i := range 50 {
		goal := 15 + 3*math.Sin(float64(i))
		x := 3600 * g / c
		mean := goal + (now-goal)*-math.Expm1(-x)/x
		s.add(g*(goal-mean), mean)
		wrong.add(g*(goal-mean)*1.001, mean)
		now = goal + (now-goal)*math.Exp(-x)
	}
	require.InDelta(t, now, s.byHeat, 1e-9)
	require.Less(t, s.off(), 1e-6)
	require.Greater(t, wrong.off(), 100.0)
}
