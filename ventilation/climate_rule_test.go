package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// wetHours is a made-up cold and humid spell of days.
func wetHours(days int) ventilation.Hours {
	h := ventilation.Hours{Pressure: 101325, Settings: []ventilation.Setting{{}}, Soil: ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 9, Start: 10}}
	for i := range 24 * days {
		wave := -math.Cos(2 * math.Pi * float64(i%24) / 24)
		h.Temperature = append(h.Temperature, 4+4*wave)
		h.RelativeHumidity = append(h.RelativeHumidity, 0.85-0.1*wave)
		h.Sun = append(h.Sun, max(0, 350*wave))
		h.Wind = append(h.Wind, 2)
		h.Sky = append(h.Sky, -6+4*wave)
	}
	return h
}

// By day and by night the house is kept at each one's targets, and the screen is
// drawn by clock, sun and cold.
func TestDayAndNight(t *testing.T) {
	c := climate(t, realClimate(t, envelope.SingleGlass()))
	hours := wetHours(2)
	r := ventilation.DefaultDayNight(40e3)
	r.Day.Humidity, r.Night.Humidity = 1, 1
	r.Evening = 18 * time.Hour
	hours.Rule = r
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Zero(t, year.Short)
	for i := range hours.Temperature {
		clock := time.Duration(i%24) * time.Hour
		x := r.At(ventilation.HourMoment{Clock: clock, Weather: ventilation.Weather{Air: air(t, hours.Temperature[i], 0.5), Sun: hours.Sun[i]}})
		want := r.Night.Warm
		if clock >= 7*time.Hour && clock < 18*time.Hour {
			want = r.Day.Warm
		}
		require.Equal(t, want, x.Warm)
		require.Equal(t, hours.Sun[i] < 20 && hours.Temperature[i] < 12 && (clock >= 16*time.Hour || clock < 9*time.Hour), x.Screen, "hour %d", i)
		require.GreaterOrEqual(t, year.Temperature[i], want-1e-6)
		if year.Heat[i] > 0 {
			require.InDelta(t, want, year.Temperature[i], 1e-6)
		}
	}
	open := r
	open.ScreenTo = open.ScreenFrom
	hours.Rule = open
	bare, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Greater(t, bare.Heat[2], 1.2*year.Heat[2], "the screen saves heat")
	require.InDelta(t, bare.Heat[12], year.Heat[12], 0.05*bare.Heat[12]+100, "not by day")
	r.Morning, r.Evening, r.Day.Dry, r.ScreenSun = 20*time.Hour, 4*time.Hour, 2, -1
	hours.Rule = r
	_, err = c.YearTo(nil, hours)
	for _, f := range []string{"Rule.Evening", "Rule.Day.Dry", "Rule.ScreenSun"} {
		require.ErrorContains(t, err, f)
	}
}

// Vents, then heat, hold the humidity; what falls short is counted.
func TestHumidityIsHeld(t *testing.T) {
	c := climate(t, summerHouse(t))
	hours := wetHours(2)
	kept := ventilation.DefaultTargets(60e3)
	kept.Humidity, kept.Lift = 1, 0
	hours.Rule = kept
	free, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	kept.Humidity, kept.Dry = 0.7, 0.3
	hours.Rule = kept
	vented, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	kept.Dry, kept.Lift = 0, 6
	hours.Rule = kept
	lifted, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	wet, byVents, byHeat := 0, 0, 0
	for i := range hours.Temperature {
		if free.RelativeHumidity[i] > 0.7 {
			wet++
		}
		require.LessOrEqual(t, vented.RelativeHumidity[i], 0.7+1e-6)
		require.GreaterOrEqual(t, vented.Temperature[i], 16-1e-6)
		if vented.Opening[i] > free.Opening[i]+1e-6 {
			byVents++
			require.InDelta(t, 0.7, vented.RelativeHumidity[i], 1e-4)
			require.Greater(t, vented.Heat[i], free.Heat[i])
		}
		if lifted.Temperature[i] > free.Temperature[i]+1e-6 {
			byHeat++
			require.LessOrEqual(t, lifted.RelativeHumidity[i], free.RelativeHumidity[i]+1e-9)
			require.LessOrEqual(t, lifted.Temperature[i], 22+1e-6)
		}
	}
	require.Greater(t, wet, 5)
	require.Equal(t, wet, byVents)
	require.Zero(t, vented.Short)
	require.Greater(t, byHeat, wet/2)
}

// Pipes that give half of their heat as radiation hold the same air, with leaves
// less cold, and the two halves are equal.
func TestAHeaterThatRadiates(t *testing.T) {
	c := climate(t, summerHouse(t))
	hours := wetHours(1)
	targets := ventilation.DefaultTargets(60e3)
	targets.Humidity = 1
	hours.Rule = targets
	byAir, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	targets.Radiant = 0.5
	hours.Rule = targets
	byPipe, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.InDelta(t, 16, byPipe.Temperature[3], 1e-6)
	require.Greater(t, byPipe.CanopyTemperature[3], byAir.CanopyTemperature[3]+1)
	hours.Soil.Capacity = 0 // no memory: the hour is Solve's with the heat found
	steady, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	half := steady.Heat[3] / 2
	hours.Rule, hours.Settings = nil, []ventilation.Setting{{Heat: half, Radiant: half}}
	again, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.InDelta(t, 16, again.Temperature[3], 1e-6)
}

// ownRule opens the vents at noon, whatever the house is like.
type ownRule struct{ seen *int }

func (r ownRule) At(m ventilation.HourMoment) ventilation.Targets {
	*r.seen++
	x := ventilation.DefaultTargets(0)
	x.Humidity, x.Warm, x.Vent = 1, -60, 80
	if m.Clock == 12*time.Hour {
		x.Least = 0.5
	}
	if m.Hour > 0 && m.Before.Temperature == 0 {
		x.Vent = 99 // what came before must be known
	}
	return x
}

func TestARuleOfOnesOwn(t *testing.T) {
	c := climate(t, summerHouse(t))
	hours := wetHours(1)
	seen := 0
	hours.Rule = ownRule{&seen}
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Equal(t, 24, seen)
	require.Equal(t, 0.5, year.Opening[12])
	require.Zero(t, year.Opening[11])
}

// One hour with a structure by hand: the air sees G phi towards the mass and the
// rest of the sun at once.
func TestAnHourWithStructureByHand(t *testing.T) {
	h := summerHouse(t)
	hours := wetHours(1)
	hours.Soil = ventilation.FloorStore{Ground: 9}
	hours.Structure = ventilation.StructureStore{Capacity: 50e3, Exchange: 6, Sun: 0.2, Start: 8}
	hours.Settings = []ventilation.Setting{{Opening: 0.1, Heat: 4000}}
	year, err := climate(t, h).YearTo(nil, hours)
	require.NoError(t, err)
	x := 6 * 3600 / 50e3
	phi := (1 - math.Exp(-x)) / x
	now := 8.0
	h.Cover.Transmittance *= 0.8
	for i := range hours.Temperature {
		sun := 0.2 * 0.65 * hours.Sun[i]
		// The air's heat with what the structure gives, at the temperature found.
		air1 := year.Temperature[i]
		mean := phi*now + (1-phi)*(air1+sun/6)
		require.InDelta(t, mean, year.StructureTemperature[i], 1e-9)
		s := hours.Settings[0]
		s.Heat += h.FloorArea * (6*(mean-air1) + sun - sun)
		y, err := climate(t, h).Solve(ventilation.Weather{Air: air(t, hours.Temperature[i], hours.RelativeHumidity[i]), Sun: hours.Sun[i], Wind: hours.Wind[i], Sky: hours.Sky[i], Ground: 9}, s)
		require.NoError(t, err)
		require.InDelta(t, air1, y.Temperature, 1e-7)
		end := air1 + sun/6 + (now-air1-sun/6)*math.Exp(-x)
		require.InDelta(t, 50e3*(end-now)/3600, 6*(air1-mean)+sun, 1e-9, "energy of the mass closes")
		now = end
	}
	// Any capacity is stable; none and the sun warms the air at once.
	for _, capacity := range []float64{0, 1, 1e3, 1e7} {
		hours.Structure.Capacity = capacity
		year, err = climate(t, h).YearTo(year, hours)
		require.NoError(t, err)
		for _, v := range year.Temperature {
			require.Less(t, math.Abs(v), 45.0)
		}
	}
	hours.Structure = ventilation.StructureStore{Capacity: -1, Exchange: 200, Sun: 2, Start: 300}
	_, err = climate(t, h).YearTo(year, hours)
	for _, f := range []string{"Structure.Capacity", "Structure.Exchange", "Structure.Sun", "Structure.Start"} {
		require.ErrorContains(t, err, f)
	}
}

// A house on real covers, hour by hour, is what Solve says of each hour, with
// the sun by facets.
func TestRealHoursAreSolves(t *testing.T) {
	h := realClimate(t, envelope.DoubleInfraredFilm())
	c := climate(t, h)
	hours := wetHours(1)
	hours.Soil = ventilation.FloorStore{Ground: 9}
	hours.Settings = []ventilation.Setting{{Opening: 0.05, Heat: 6000}}
	shape := h.Real.House.Shape()
	gain := envelope.SolarGain{Sun: make([][envelope.MaxLayers]float64, len(shape.Facets))}
	hours.Gain = func(i int) (*envelope.SolarGain, error) {
		gain.Transmitted = 0.6 * hours.Sun[i] * h.FloorArea
		for j, f := range shape.Facets {
			if !f.Kind.InGround() {
				gain.Sun[j][0] = 0.05 * hours.Sun[i]
			}
		}
		return &gain, nil
	}
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for i := range hours.Temperature {
		g, _ := hours.Gain(i)
		w := ventilation.Weather{Air: air(t, hours.Temperature[i], hours.RelativeHumidity[i]), Sun: hours.Sun[i], Wind: hours.Wind[i], Sky: hours.Sky[i], Ground: 9, Gain: g}
		x, err := c.Solve(w, hours.Settings[0])
		require.NoError(t, err)
		require.InDelta(t, x.CoverLoss, year.CoverLoss[i], 1e-5*math.Abs(x.CoverLoss)+1e-2, "hour %d", i)
		require.InDelta(t, x.Temperature, year.Temperature[i], 1e-5)
		require.InDelta(t, x.Condensed, year.Condensed[i], 1e-5*x.Condensed+1e-9)
	}
	require.Less(t, float64(year.Solved)/24, 12.0)
}
