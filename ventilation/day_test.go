package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// dayHouse is a small house with side and ridge vents and a leak.
func dayHouse(t testing.TB) *ventilation.Climate {
	t.Helper()
	n, err := ventilation.NewNetwork(
		[]ventilation.Opening{point(0.8, 6, 0.1), point(2.9, 5, -0.4)},
		[]ventilation.Leak{{Height: 1.5, Flow: 0.02, Exponent: 0.65}}, nil)
	require.NoError(t, err)
	crop := ventilation.DefaultCanopy(2)
	c, err := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: 95, Volume: 280, Cover: ventilation.DefaultSimpleCover(150), Floor: ventilation.DefaultFloorSurface(), Crop: crop, Air: n})
	require.NoError(t, err)
	return c
}

// summer is a clear day in steps an hour long: 15 to 29 °C, up to 850 W/m².
func summer(t testing.TB) []ventilation.DayStep {
	t.Helper()
	steps := make([]ventilation.DayStep, 24)
	for i := range steps {
		h := float64(i) + 0.5
		air := humid(t, 22-7*math.Cos((h-3)/24*2*math.Pi), 0.6+0.25*math.Cos((h-3)/24*2*math.Pi))
		steps[i].Weather = ventilation.Weather{Air: air, Sun: math.Max(0, 850*math.Sin((h-5)/15*math.Pi)), Wind: 2, Sky: air.Temperature() - 12, Ground: 17}
		if h < 5 || h > 20 {
			steps[i].Weather.Sun = 0
		}
	}
	return steps
}

func hand() ventilation.Schedule {
	return ventilation.Schedule{{At: 8 * time.Hour, Opening: 0.5}, {At: 19 * time.Hour, Opening: 0}}
}

func runDay(t testing.TB, steps []ventilation.DayStep, v ventilation.Vents) ventilation.DayCourse {
	t.Helper()
	d, err := dayHouse(t).Day(steps, time.Hour, v, ventilation.DefaultDayLimits())
	require.NoError(t, err)
	return d
}

// The vents of the rule rest where their own temperature asks for them.
func TestDayRestsAtTheRulesDemand(t *testing.T) {
	r := rule()
	d := runDay(t, summer(t), r)
	between := 0
	for _, p := range d.Points {
		require.InDelta(t, math.Min(r.Demand(p.State.Temperature), p.Vents.Limit), p.Vents.Opening, 1e-7)
		require.InDelta(t, 0, p.State.HeatResidual, 1e-4)
		if p.Vents.Opening > 0 && p.Vents.Opening < 1 {
			between++
		}
	}
	require.Greater(t, between, 4)
	require.Zero(t, d.Points[2].Vents.Opening) // night
}

// On a clear evening the shut house is colder than the air outside, and the
// rule may rest shut as well as open: the vents stay near where they stood.
func TestVentsRestNearWhereTheyStood(t *testing.T) {
	r := ventilation.DefaultOpeningRule()
	r.Start, r.Band = 20.4, 2.4
	noon := ventilation.DayStep{Weather: ventilation.Weather{Air: air(t, 28, 0.4), Sun: 800, Wind: 2, Sky: 14, Ground: 18}}
	evening := ventilation.DayStep{Weather: ventilation.Weather{Air: air(t, 23, 0.5), Wind: 3, Sky: 6, Ground: 18}}
	for _, interval := range []time.Duration{time.Hour, 10 * time.Minute} {
		fromShut, err := dayHouse(t).Day([]ventilation.DayStep{evening}, interval, r, ventilation.DefaultDayLimits())
		require.NoError(t, err)
		fromOpen, err := dayHouse(t).Day([]ventilation.DayStep{noon, evening}, interval, r, ventilation.DefaultDayLimits())
		require.NoError(t, err)
		shut, open := fromShut.Points[0], fromOpen.Points[1]
		require.Zero(t, shut.Vents.Opening)
		require.Less(t, shut.State.Temperature, r.Start)
		require.Greater(t, open.Vents.Opening, 0.5)
		require.Less(t, open.Vents.Opening, fromOpen.Points[0].Vents.Opening)
		require.InDelta(t, r.Demand(open.State.Temperature), open.Vents.Opening, r.Step+r.DeadBand)
	}
}

func TestDaySummaryIsThatOfItsPoints(t *testing.T) {
	steps := summer(t)
	for i := range steps {
		steps[i].Setting.Mist = 0.0005 + 0.02*float64(i/23) // more than the last hour's air can hold
	}
	limits := ventilation.DayLimits{Temperature: 26, DeficitLow: 500, DeficitHigh: 1000}
	d, err := dayHouse(t).Day(steps, time.Hour, hand(), limits)
	require.NoError(t, err)
	var mean, deficit, degree, water, dripped, transpired float64
	above, dry, wet := 0, 0, 0
	high, at := math.Inf(-1), time.Duration(0)
	for i, p := range d.Points {
		require.Equal(t, time.Duration(i)*time.Hour, p.Time)
		require.Equal(t, ventilation.ByHand, p.Vents.By)
		s := p.State
		mean += s.Temperature / 24
		deficit += s.Deficit / 24
		if s.Temperature > 26 {
			above++
			degree += s.Temperature - 26
		}
		if s.Deficit > 1000 {
			dry++
		}
		if s.Deficit < 500 {
			wet++
		}
		if s.Temperature > high {
			high, at = s.Temperature, p.Time
		}
		water += 3600 * s.Mist
		dripped += 3600 * s.Drip
		transpired += 3600 * s.Transpired
	}
	require.InDelta(t, mean, d.Mean, 1e-9)
	require.InDelta(t, deficit, d.DeficitMean, 1e-7)
	require.Equal(t, time.Duration(above)*time.Hour, d.Above)
	require.Equal(t, time.Duration(dry)*time.Hour, d.Dry)
	require.Equal(t, time.Duration(wet)*time.Hour, d.Humid)
	require.InDelta(t, degree, d.DegreeHours, 1e-9)
	require.InDelta(t, water, d.Water, 1e-9)
	require.InDelta(t, dripped, d.Dripped, 1e-9)
	require.Greater(t, dripped, 10.0)
	require.InDelta(t, transpired, d.Transpired, 1e-9)
	require.Equal(t, high, d.High)
	require.Equal(t, at, d.HighAt)
	require.Less(t, d.Low, d.Mean)
	require.Less(t, d.DeficitLow, d.DeficitHigh)
	require.Equal(t, 2, d.Moves) // opened and closed; where they stood before is not known
	require.InDelta(t, 1, d.Travel, 1e-12)
	require.Positive(t, above*dry*wet)
}

// Vents that follow the temperature keep the house cooler by day than vents
// half open, and no colder at night; more vent area cools more.
func TestAutomaticBeatsTwiceADay(t *testing.T) {
	steps := summer(t)
	auto, twice := runDay(t, steps, rule()), runDay(t, steps, hand())
	require.Less(t, auto.High, twice.High)
	require.Less(t, auto.DegreeHours, twice.DegreeHours)
	// Open wide is the best that can be had while the sun warms the house; at
	// night the cover cools it below the outside air.
	wide := runDay(t, steps, ventilation.Schedule{{Opening: 1}})
	for i := range wide.Points {
		if auto.Points[i].State.Temperature < steps[i].Weather.Air.Temperature() {
			continue
		}
		require.LessOrEqual(t, wide.Points[i].State.Temperature, auto.Points[i].State.Temperature+1e-6)
	}
	require.LessOrEqual(t, wide.High, auto.High+1e-9)
}

func TestWindAndRainOfTheDay(t *testing.T) {
	steps := summer(t)
	steps[13].Weather.Wind = 20
	steps[14].Rain = true
	d := runDay(t, steps, rule())
	require.InDelta(t, 0.1, d.Points[13].Vents.Opening, 1e-9)
	require.Equal(t, ventilation.ByWind, d.Points[13].Vents.By)
	require.InDelta(t, 0.3, d.Points[14].Vents.Opening, 1e-9)
	require.Equal(t, ventilation.ByRain, d.Points[14].Vents.By)
	require.Equal(t, ventilation.ByTemperature, d.Points[12].Vents.By)
}

func TestDeadBandAndStepsOfTheDay(t *testing.T) {
	steps := summer(t)
	free := runDay(t, steps, rule())
	r := rule()
	r.DeadBand, r.Step = 0.1, 0.1
	d := runDay(t, steps, r)
	require.Less(t, d.Moves, free.Moves)
	for i, p := range d.Points {
		tenth := p.Vents.Opening * 10
		require.InDelta(t, math.Round(tenth), tenth, 1e-9)
		require.InDelta(t, free.Points[i].Vents.Opening, p.Vents.Opening, 0.2)
	}
}

// Shade, fog and pads reach the balance and cool.
func TestCoolingReachesTheBalance(t *testing.T) {
	steps := summer(t)
	bare := runDay(t, steps, rule())
	b, err := shade(ventilation.OutsideScreen).Balance()
	require.NoError(t, err)
	in, err := shade(ventilation.InsideScreen).Balance()
	require.NoError(t, err)
	noon := bare.Points[13].State.Temperature
	for name, apply := range map[string]func(ventilation.Setting, float64) ventilation.Setting{
		"shade": func(s ventilation.Setting, sun float64) ventilation.Setting { return b.Apply(s, sun, 95) },
		"fog": func(s ventilation.Setting, _ float64) ventilation.Setting {
			s.Mist += 0.01 * 0.6
			return s
		},
		"pad": func(s ventilation.Setting, _ float64) ventilation.Setting {
			s.Pad = 0.8
			return s
		},
	} {
		with := summer(t)
		for i := range with {
			with[i].Setting = apply(with[i].Setting, with[i].Weather.Sun)
		}
		d := runDay(t, with, rule())
		require.Less(t, d.Points[13].State.Temperature, noon-0.3, name)
	}
	outside, inside := b.Apply(ventilation.Setting{}, 800, 95), in.Apply(ventilation.Setting{}, 800, 95)
	require.InDelta(t, outside.Shade, inside.Shade, 1e-12)
	require.Greater(t, inside.Heat, outside.Heat+800*95*0.2)
	require.Equal(t, ventilation.Setting{}, b.Apply(ventilation.Setting{}, -1, 95))
}

func TestDayFaultsComeTogether(t *testing.T) {
	_, err := dayHouse(t).Day(nil, time.Second, nil, ventilation.DayLimits{Temperature: 300, DeficitLow: 1000, DeficitHigh: 500})
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"number of steps", "interval", "vents", "Temperature", "DeficitHigh"} {
		require.ErrorContains(t, err, field)
	}
	steps := summer(t)
	steps[9].Weather.Sun = -4
	_, err = dayHouse(t).Day(steps, time.Hour, hand(), ventilation.DefaultDayLimits())
	require.ErrorContains(t, err, "at 09:00")
	require.ErrorContains(t, err, "Sun is -4")
	_, err = dayHouse(t).Day(steps, time.Hour, rule(), ventilation.DefaultDayLimits())
	require.ErrorContains(t, err, "at 09:00")
	_, err = dayHouse(t).Day(steps, time.Hour, ventilation.OpeningRule{}, ventilation.DefaultDayLimits())
	require.ErrorContains(t, err, "Band")
	require.Equal(t, [2]float64{1, 1440}, [2]float64{ventilation.DayStepRange.Min, ventilation.DayStepRange.Max})
	l := ventilation.DefaultDayLimits()
	require.Equal(t, ventilation.DayLimits{Temperature: 30, DeficitLow: 300, DeficitHigh: 1200}, l)
}
