package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// hourlyRule gives each hour's targets, and keeps what the house was in the hour
// before.
type hourlyRule struct {
	of     func(m ventilation.HourMoment) ventilation.Targets
	before []ventilation.ClimateState
}

func (k *hourlyRule) At(m ventilation.HourMoment) ventilation.Targets {
	if m.Hour > 0 {
		k.before = append(k.before, m.Before)
	}
	return k.of(m)
}

// summerHours are hours of a hot, sunny day.
func summerHours(n int) ventilation.Hours {
	hours := ventilation.Hours{Pressure: 101325, Settings: []ventilation.Setting{{}}, Soil: ventilation.FloorStore{Ground: 18}}
	for i := range n {
		wave := math.Sin(math.Pi * float64(i%24-6) / 12)
		hours.Temperature = append(hours.Temperature, 25+6*wave)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.5-0.15*wave)
		hours.Sun = append(hours.Sun, max(0, 850*wave))
		hours.Wind = append(hours.Wind, 1)
		hours.Sky = append(hours.Sky, 12)
	}
	return hours
}

// Fans run in the hours in which the vents wide open leave the house warmer than
// Vent, and in no other; each such hour is Solve's with the fans in the place of
// the vents, and cooler than without them.
func TestFansRunWhereVentsDoNotDo(t *testing.T) {
	h := summerHouse(t)
	c := climate(t, h)
	fans, err := ventilation.NewNetwork(h.Air.Openings(), nil, []ventilation.FixedFan{{Name: "far end", Height: 2, Flow: -6, Slope: 0.01}})
	require.NoError(t, err)
	hours := summerHours(24)
	x := ventilation.DefaultTargets(20e3)
	x.Humidity, x.Vent = 1, 28
	alone := &hourlyRule{of: func(ventilation.HourMoment) ventilation.Targets { return x }}
	hours.Rule = alone
	without, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for _, pad := range []float64{0, 0.8} {
		forced := &hourlyRule{of: func(ventilation.HourMoment) ventilation.Targets {
			y := x
			y.Forced, y.Pad = fans, pad
			return y
		}}
		hours.Rule = forced
		with, err := c.YearTo(nil, hours)
		require.NoError(t, err)
		ran := 0
		for i, s := range forced.before {
			require.Equal(t, without.Temperature[i] > x.Vent+0.01, s.Forced, "hour %d", i)
			require.Less(t, s.NodeResidual, 1e-8)
			if !s.Forced {
				require.InDelta(t, without.Temperature[i], with.Temperature[i], 1e-6)
				continue
			}
			ran++
			require.Less(t, with.Temperature[i], without.Temperature[i]-0.1)
			w := ventilation.Weather{Air: air(t, hours.Temperature[i], hours.RelativeHumidity[i]), Sun: hours.Sun[i], Wind: 1, Sky: 12, Ground: 18}
			alone, err := c.Solve(w, ventilation.Setting{Opening: with.Opening[i], Air: fans, Pad: pad})
			require.NoError(t, err)
			require.InDelta(t, alone.Temperature, s.Temperature, 1e-4)
			require.InDelta(t, alone.VolumeOut, s.VolumeOut, 1e-3)
			require.Equal(t, pad > 0, s.FromPad > 0)
		}
		require.Greater(t, ran, 4)
		require.Less(t, ran, 20)
	}
}

// Openings of the hour stand in for the house's: the hour is that of a house with
// these.
func TestOpeningsOfTheHour(t *testing.T) {
	h := summerHouse(t)
	other := build(t, ventilation.Opening{Name: "ridge", Height: 2.9, Area: 3.6, Discharge: 0.60, PressureCoefficient: 0.6}, ventilation.Opening{Name: "side", Height: 0.6, Area: 1, Discharge: 0.62, PressureCoefficient: -0.3})
	turned := h
	turned.Air = other
	hours := summerHours(24)
	x := ventilation.DefaultTargets(20e3)
	x.Humidity, x.Vent, x.Least = 1, 26, 0.2
	hours.Rule = x
	want, err := climate(t, turned).YearTo(nil, hours)
	require.NoError(t, err)
	own, err := climate(t, h).YearTo(nil, hours)
	require.NoError(t, err)
	x.Air = other
	hours.Rule = x
	got, err := climate(t, h).YearTo(nil, hours)
	require.NoError(t, err)
	for i := range want.Temperature {
		require.InDelta(t, want.Temperature[i], got.Temperature[i], 1e-6)
		require.InDelta(t, want.Opening[i], got.Opening[i], 1e-6)
	}
	require.Greater(t, math.Abs(own.Temperature[12]-got.Temperature[12]), 0.1)
	w := ventilation.Weather{Air: air(t, 27, 0.5), Sun: 820, Wind: 3, Sky: 12, Ground: 17}
	a, err := climate(t, turned).Solve(w, ventilation.Setting{Opening: 0.5})
	require.NoError(t, err)
	b, err := climate(t, h).Solve(w, ventilation.Setting{Opening: 0.5, Air: other})
	require.NoError(t, err)
	require.InDelta(t, a.Temperature, b.Temperature, 1e-9)
	paths, err := climate(t, h).PathsTo(nil, w, ventilation.Setting{Opening: 0.5, Air: other}, b)
	require.NoError(t, err)
	require.Len(t, paths, 2)
	_, err = climate(t, h).Solve(w, ventilation.Setting{Opening: 0.5, Air: new(ventilation.Network)})
	require.ErrorContains(t, err, "Air")
}

// Air that is blown through a store gives it the conductance times the difference,
// which is what a cooler of that power would take; the balances close with it.
func TestAirThroughAStore(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 27, 0.5), Sun: 820, Wind: 2, Sky: 12, Ground: 17}
	s, err := c.Solve(w, ventilation.Setting{Opening: 0.3, Exchange: 400, Store: 16})
	require.NoError(t, err)
	require.InDelta(t, 400*(s.Temperature-16), s.ToStore, 1e-9)
	require.InDelta(t, 0, s.HeatResidual, 1e-6*s.HeatIn)
	cooled, err := c.Solve(w, ventilation.Setting{Opening: 0.3, Heat: -s.ToStore})
	require.NoError(t, err)
	require.InDelta(t, cooled.Temperature, s.Temperature, 1e-7)
	require.InDelta(t, cooled.HumidityRatio, s.HumidityRatio, 1e-10)
	held, err := c.HeatFor(w, ventilation.Setting{Opening: 0.3, Exchange: 400, Store: 16}, s.Temperature)
	require.NoError(t, err)
	require.InDelta(t, 0, held.Heat, 0.01)
	hours := summerHours(2)
	x := ventilation.DefaultTargets(0)
	x.Humidity, x.Least, x.Vent, x.Exchange, x.Store, x.Mist = 1, 0.3, 60, 400, 16, 1e-3
	k := &hourlyRule{of: func(ventilation.HourMoment) ventilation.Targets { return x }}
	hours.Rule = k
	_, err = c.YearTo(nil, hours)
	require.NoError(t, err)
	require.InDelta(t, 400*(k.before[0].Temperature-16), k.before[0].ToStore, 1e-9)
	require.Equal(t, 1e-3, k.before[0].Mist)
	for field, bad := range map[string]func(*ventilation.Targets){
		"Exchange": func(x *ventilation.Targets) { x.Exchange = -1 }, "Store": func(x *ventilation.Targets) { x.Store = 99 },
		"Mist": func(x *ventilation.Targets) { x.Mist = -1 }, "Pad": func(x *ventilation.Targets) { x.Pad = 1 },
	} {
		wrong := ventilation.DefaultTargets(0)
		bad(&wrong)
		require.ErrorContains(t, wrong.Check(), field)
	}
	_, err = c.Solve(w, ventilation.Setting{Opening: 0.3, Exchange: -1, Store: 99})
	require.ErrorContains(t, err, "Exchange")
	require.ErrorContains(t, err, "Store")
}

// The deep ground by the hour: where it stays it is Soil.Ground, and a warmer one
// gives the soil its heat.
func TestDeepGroundByTheHour(t *testing.T) {
	c := climate(t, summerHouse(t))
	hours := yearHours(48)
	hours.Settings = []ventilation.Setting{{Opening: 0.1}}
	want, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for range 48 {
		hours.Deep = append(hours.Deep, hours.Soil.Ground)
	}
	hours.Soil.Ground = 40
	same, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Equal(t, want.SoilTemperature, same.SoilTemperature)
	require.Equal(t, want.Temperature, same.Temperature)
	hours.Deep[20] += 10
	warm, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Equal(t, want.SoilTemperature[:20], warm.SoilTemperature[:20])
	// Half an hour's gain of 10 K times D over C in the mean: 3600/2 * 10/3e5.
	require.InDelta(t, want.SoilTemperature[20]+0.06, warm.SoilTemperature[20], 0.002)
	hours.Soil.Capacity, hours.Soil.Deep = 0, 0
	bare, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Equal(t, hours.Deep, bare.SoilTemperature)
	hours.Deep[20] -= 10
	cool, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Greater(t, bare.Temperature[20], cool.Temperature[20]+0.1)
	hours.Deep[3] = 200
	_, err = c.YearTo(nil, hours)
	require.ErrorContains(t, err, "Deep")
	hours.Deep = hours.Deep[:5]
	require.Panics(t, func() { _, _ = c.YearTo(nil, hours) })
}

// The carbon dioxide of the hours closes: what is given and set free, less what the
// crop takes and the air carries off, is what the air of the house stores.
func TestCarbonOfTheHoursCloses(t *testing.T) {
	h := summerHouse(t)
	for _, least := range []float64{0, 0.02} {
		hours := wetHours(2)
		x := ventilation.DefaultTargets(40e3)
		x.Humidity, x.CO2, x.Vent, x.Least = 1, 800, 26, least
		k := &hourlyRule{of: func(ventilation.HourMoment) ventilation.Targets { return x }}
		hours.Rule, hours.CO2 = k, ventilation.DefaultCO2Hours()
		hours.CO2.Doser = 2e-4
		year, err := climate(t, h).YearTo(nil, hours)
		require.NoError(t, err)
		now, taken := hours.CO2.Start, 0.0
		for i, s := range k.before {
			per := 0.0440095 * hours.Pressure / (8.314462618 * (s.Temperature + 273.15)) * 1e-6 // kg/m³ for 1 µmol/mol
			net := year.Dosed[i] + hours.CO2.Respiration*h.FloorArea - year.Photosynthesis[i]
			taken += year.Photosynthesis[i]
			mean, end := now+net*1800/(h.Volume*per), now+net*3600/(h.Volume*per) // shut
			if a := s.VolumeOut * 3600 / h.Volume; a > 0 {
				goal := hours.CO2.Outside + net/(s.VolumeOut*per)
				mean, end = goal+(now-goal)*-math.Expm1(-a)/a, goal+(now-goal)*math.Exp(-a)
			}
			require.InDelta(t, mean, year.CO2[i], 1e-3*mean, "hour %d", i)
			now = end
		}
		require.Positive(t, taken)
	}
}

// The crop takes what leaves take in the light above it: 2.3 µmol in a joule of sun
// inside [Vanthoor11b] table 3, Photons in one of the lamps'.
func TestCarbonOfTheHoursSeesSunAndLamps(t *testing.T) {
	hours := wetHours(1)
	hours.Sun[0] = 0
	hours.Settings = []ventilation.Setting{{Opening: 0.5, Lamps: ventilation.LampHeat{Light: 4000}}}
	hours.CO2 = ventilation.DefaultCO2Hours()
	require.Equal(t, &ventilation.CO2Hours{Outside: 420, Start: 420, Respiration: 0.5e-3 / 3600, Photons: 4.6}, hours.CO2)
	h := summerHouse(t)
	year, err := climate(t, h).YearTo(nil, hours)
	require.NoError(t, err)
	for _, i := range []int{0, 9, 12} {
		light := 2.3*0.65*hours.Sun[i] + 4.6*4000/h.FloorArea
		want := h.FloorArea * h.Crop.Uptake(light, year.CO2[i], year.CanopyTemperature[i])
		require.InEpsilon(t, want, year.Photosynthesis[i], 1e-4, "hour %d", i)
	}
	require.Positive(t, hours.Sun[12])
}
