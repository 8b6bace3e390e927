package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func rule() ventilation.OpeningRule {
	return ventilation.OpeningRule{Start: 22, Band: 6, Most: 1, WindLow: 8, WindHigh: 14, WindMost: 0.1, RainMost: 0.3}
}

func TestOpeningIsProportional(t *testing.T) {
	r := rule()
	for _, c := range []struct{ inside, want float64 }{{10, 0}, {22, 0}, {23.5, 0.25}, {25, 0.5}, {28, 1}, {40, 1}} {
		p := r.Next(c.inside, 2, false, 0)
		require.InDelta(t, c.want, p.Opening, 1e-12)
		require.Equal(t, 1.0, p.Limit)
		require.Equal(t, ventilation.ByTemperature, p.By)
	}
	r.Least, r.Most = 0.1, 0.6
	require.InDelta(t, 0.1, r.Next(10, 0, false, 1).Opening, 1e-12)
	require.InDelta(t, 0.35, r.Next(25, 0, false, 0).Opening, 1e-12)
	require.InDelta(t, 0.6, r.Next(60, 0, false, 0).Opening, 1e-12)
}

func TestWindAndRainActAtOnce(t *testing.T) {
	r := rule()
	r.DeadBand, r.Least = 0.5, 0.2
	p := r.Next(30, 11, false, 1) // half way: 1 - 0.9/2
	require.InDelta(t, 0.55, p.Opening, 1e-12)
	require.Equal(t, ventilation.ByWind, p.By)
	require.InDelta(t, 0.1, r.Next(30, 14, false, 0.2).Opening, 1e-12)
	require.InDelta(t, 0.1, r.Next(10, 30, false, 0.2).Opening, 1e-12) // below Least
	p = r.Next(30, 2, true, 0.9)
	require.InDelta(t, 0.3, p.Opening, 1e-12)
	require.Equal(t, ventilation.ByRain, p.By)
	require.InDelta(t, 0.1, r.Next(30, 20, true, 0.9).Opening, 1e-12) // the lower of the two
	last := 1.0
	for wind := 0.0; wind <= 20; wind += 0.25 {
		p := r.Next(35, wind, false, 0)
		require.LessOrEqual(t, p.Opening, last)
		last = p.Opening
	}
}

func TestDeadBandHolds(t *testing.T) {
	r := rule()
	r.DeadBand = 0.1
	p := r.Next(25.3, 0, false, 0.5) // asks for 0.55
	require.Equal(t, 0.5, p.Opening)
	require.Equal(t, ventilation.ByDeadBand, p.By)
	require.InDelta(t, 0.55, p.Demand, 1e-12)
	require.Equal(t, ventilation.ByTemperature, r.Next(25, 0, false, 0.5).By) // no move was asked for
	require.InDelta(t, 2.0/3, r.Next(26, 0, false, 0.5).Opening, 1e-12)
}

func TestDriveStopsAtSteps(t *testing.T) {
	r := rule()
	r.Step = 0.2
	require.InDelta(t, 0.4, r.Next(24.7, 0, false, 0).Opening, 1e-12) // 0.45
	require.InDelta(t, 0.6, r.Next(25.5, 0, false, 0).Opening, 1e-12) // 0.583
	require.InDelta(t, 0.2, r.Next(30, 0, true, 0).Opening, 1e-12)    // 0.3 in rain, not above
	require.InDelta(t, 1, r.Next(60, 0, false, 0).Opening, 1e-12)
	r.Step = 0.3
	require.InDelta(t, 0.9, r.Next(60, 0, false, 0).Opening, 1e-12)
	r.RainMost = 0.6
	require.InDelta(t, 0.6, r.Next(60, 0, true, 0).Opening, 1e-12)
}

func TestRuleFaultsComeTogether(t *testing.T) {
	err := ventilation.OpeningRule{Start: 295, Band: 0, DeadBand: -1, Step: 20, Least: 2, Most: -1, WindLow: 60, WindHigh: 50, WindMost: 9, RainMost: 9}.Check()
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"Start", "Band", "DeadBand", "Step", "Least", "Most", "WindLow", "WindHigh", "WindMost", "RainMost"} {
		require.ErrorContains(t, err, field)
	}
	require.NoError(t, rule().Check())
	require.NoError(t, ventilation.DefaultOpeningRule().Check())
	require.Equal(t, ventilation.OpeningRule{Start: 20, Band: 5, DeadBand: 0.05, Most: 1, WindLow: 8, WindHigh: 14, WindMost: 0.05, RainMost: 0.2}, ventilation.DefaultOpeningRule())
	r := rule()
	r.Least, r.Most, r.WindLow = 0.5, 0.4, 20
	require.ErrorContains(t, r.Check(), "Most is 0.4")
	require.ErrorContains(t, r.Check(), "WindHigh is 14")
	require.Equal(t, [2]float64{0.1, 30}, [2]float64{ventilation.BandRange.Min, ventilation.BandRange.Max})
	require.Equal(t, "dead band", ventilation.ByDeadBand.String())
	require.Equal(t, "Cause(9)", ventilation.Cause(9).String())
}

func TestScheduleOverMidnight(t *testing.T) {
	s := ventilation.Schedule{{At: 8 * time.Hour, Opening: 0.7}, {At: 19*time.Hour + 30*time.Minute, Opening: 0.05}}
	require.NoError(t, s.Check())
	for _, c := range []struct{ hour, want float64 }{{0, 0.05}, {7.99, 0.05}, {8, 0.7}, {19.49, 0.7}, {19.5, 0.05}, {31.9, 0.05}, {32, 0.7}, {-1, 0.05}, {-10, 0.7}} {
		require.Equal(t, c.want, s.OpeningAt(time.Duration(c.hour*float64(time.Hour))), c.hour)
	}
	require.True(t, math.IsNaN(ventilation.Schedule{}.OpeningAt(0)))
	require.ErrorContains(t, ventilation.Schedule{}.Check(), "number of moves")
	err := ventilation.Schedule{{At: 9 * time.Hour, Opening: 7}, {At: 8 * time.Hour}, {At: 25 * time.Hour}}.Check()
	for _, field := range []string{"moves[0].Opening", "moves[1].At is 8, allowed 9", "moves[2].At"} {
		require.ErrorContains(t, err, field)
	}
}

func TestRuleAllocatesNothing(t *testing.T) {
	r, s := rule(), ventilation.Schedule{{At: time.Hour, Opening: 1}}
	sum := 0.0
	require.Zero(t, testing.AllocsPerRun(100, func() { sum += r.Next(25, 3, false, 0.2).Opening + s.OpeningAt(3*time.Hour) }))
}
