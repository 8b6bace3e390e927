package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// windy is the real weather with a wind of 4 m/s from one direction.
func windy(t *testing.T, from string, days int, direction float64) *weather.Series {
	t.Helper()
	s := part(t, from, days)
	s.WindFrom = make([]float64, s.Hours())
	for i := range s.WindFrom {
		s.Wind[i], s.WindFrom[i] = 4, direction
	}
	return s
}

// Wind across the house drives more air through side vents than wind along it;
// that from the left is what an unknown direction counts as.
func TestWindFindsTheVents(t *testing.T) {
	p := changed(t, `{"house": {"ridge_azimuth_deg": 90}, "vents": [{"name": "l", "place": "left side", "length_m": 4, "height_m": 0.3}, {"name": "r", "place": "right side", "length_m": 4, "height_m": 0.3}]}`)
	hottest := func(direction float64) float64 {
		return solved(t, p, windy(t, "07-09", 1, direction)).Account.Hottest.Inside
	}
	require.Greater(t, hottest(90), hottest(0)+0.3)
	require.InDelta(t, hottest(0), hottest(math.NaN()), 1e-6)
	require.InDelta(t, hottest(0), hottest(360), 1e-9)
	require.InDelta(t, hottest(4), hottest(0), 1e-9, "the same of 16 sectors")
}

// Fans run in hot hours alone, take their electricity, and leave fewer of them;
// pads cool more and take water.
func TestFansAndPads(t *testing.T) {
	s := part(t, "07-08", 3)
	fans := `{"vent_fans": [{"name": "fan", "flow_m3_s": 3, "power_w": 250}]`
	was := solved(t, changed(t, "{}"), s)
	dry := solved(t, changed(t, fans+"}"), s)
	wet := solved(t, changed(t, fans+`, "pads": {}}`), s)
	w := &dry.Account.Whole
	require.Greater(t, w.FanHours, 10)
	require.Less(t, w.FanHours, 50)
	require.InDelta(t, 0.25*float64(w.FanHours), w.VentPower, 1e-9)
	require.InDelta(t, w.VentPower*dry.filled.Prices.ElectricityPerKWh, dry.Money.Vents, 1e-9)
	require.Less(t, dry.Account.Hottest.Inside, was.Account.Hottest.Inside)
	require.Less(t, wet.Account.Hottest.Inside, dry.Account.Hottest.Inside-1)
	require.Zero(t, w.Pads)
	require.Greater(t, wet.Account.Whole.Pads, 100.0)
	require.Greater(t, wet.Money.Water-dry.Money.Water, 0.0)
}

// Fog cools the hot house and is counted with what falls, and is not sprayed into
// cold or damp air.
func TestFog(t *testing.T) {
	p := changed(t, `{"fog": {"spray_g_m2_h": 300}}`)
	hot, was := solved(t, p, part(t, "07-08", 2)), solved(t, changed(t, "{}"), part(t, "07-08", 2))
	require.Less(t, hot.Account.Hottest.Inside, was.Account.Hottest.Inside-1)
	require.InDelta(t, hot.Account.Whole.Fog/0.8, hot.Account.Whole.Sprayed, 1e-6)
	require.Less(t, hot.Account.Whole.Fell, 0.1*hot.Account.Whole.Fog)
	require.Zero(t, solved(t, p, part(t, "02-02", 2)).Account.Whole.Fog)
}

// CO2 is kept at the plan's level by day in a shut house, closes with what the crop
// takes and the air carries, and costs what it weighs.
func TestCarbonDioxide(t *testing.T) {
	a := solved(t, changed(t, `{"co2": {"level_umol_mol": 700, "price_per_kg": 2}}`), part(t, "02-02", 4))
	bare := solved(t, changed(t, "{}"), part(t, "02-02", 4))
	y, w := a.year, &a.Account.Whole
	held := 0
	for i, given := range y.Given {
		if given > 0 && given < doserMost*y.house.steady.House.Shape.FloorArea*(1-1e-9) {
			require.InDelta(t, 700, y.CO2[i], 0.1)
			held++
		}
	}
	require.Greater(t, held, 5)
	require.InDelta(t, 2*w.Dosed, a.Money.CO2, 1e-9)
	require.Greater(t, w.TakenUp, bare.Account.Whole.TakenUp)
	breath := 0.5e-3 * y.house.steady.House.Shape.FloorArea * float64(w.Hours)
	held2 := 700e-6 * 1.8 * y.house.steady.House.Shape.Volume // kg that the air can hold more or less than at first
	require.InDelta(t, w.TakenUp+w.CarbonOut, w.Dosed+breath, held2)
	require.Zero(t, bare.Account.Whole.Dosed)
}

// A heater that draws from the ridge gives less by what the change from low in the
// house is said to save.
func TestRidgeReturn(t *testing.T) {
	s := part(t, "02-02", 3)
	low, ridge := solved(t, changed(t, "{}"), s), solved(t, changed(t, `{"heater": {"takes_air_from": "the ridge"}}`), s)
	said := low.year.house.ridgeReturn(low)
	require.Positive(t, said.Heat)
	require.InDelta(t, said.Heat, low.Account.Whole.Heater-ridge.Account.Whole.Heater, 1e-6)
	require.InDelta(t, said.Heat, ridge.Account.Whole.Ridge, 1e-6)
	require.InDelta(t, said.Peak, ridge.Account.Peak.Heat, 1e-6)
	require.Contains(t, ridge.year.house.ridgeReturn(ridge).WhyNot, "draws from the ridge")
	r := low.year.house.steady.Ridge
	x := low.year.State[0]
	x.Heat, x.Temperature = 1e6, r.Inside
	require.InDelta(t, r.SavingHeat, low.year.house.drawn(&x, r.Outside), 1e-9, "as in the mean of the heated months")
}

const withTubes = `{"soil_store": {"tubes_count": 8, "diameter_m": 0.1, "length_m": 12, "spacing_m": 0.4, "depth_m": 0.6, "flow_m3_s": 0.2}, "heater": {"power_w": 34000}}`

// Tubes in the soil take heat in warm hours, and every joule of it is in the soil,
// went up through the floor, or drained off with the water that condensed; this
// leaves no warmer than the air and no colder than the soil was. Each hour is what
// the tubes alone say of the house's air, in which it is drier than without them.
func TestTubes(t *testing.T) {
	a := solved(t, changed(t, withTubes), part(t, "04-20", 6))
	u, w := a.year.tubes, &a.Account.Whole
	require.Greater(t, w.Tubes, 5.0)
	require.Greater(t, w.InTubes, 1.0)
	require.InDelta(t, w.InTubes*0.7, w.TubeWater, 0.02*w.TubeWater, "2.5 MJ for each kg")
	up, keeps := 0.0, 0.0
	for i, q := range u.up {
		up, keeps = up+q/kWh, keeps+u.keeps[i]/kWh
	}
	require.InDelta(t, keeps, up+u.store.Stored()/3.6e6, 1e-9*keeps)
	drained := (w.Tubes + w.TubeWater - keeps) * 3.6e6 / w.InTubes
	require.Greater(t, drained, 4186*8.0)
	require.Less(t, drained, 4186*30.0)
	hours := 0
	for i, x := range a.year.State {
		if x.ToStore != 0 {
			hours++
			require.Positive(t, u.fan[i])
		} else {
			require.Zero(t, u.fan[i]+x.IntoStore)
		}
		require.InDelta(t, u.took[i], x.ToStore+x.StoreLatent, 1e-6*math.Abs(u.took[i])+1e-3)
		require.InDelta(t, u.water[i], x.IntoStore, 1e-9)
	}
	require.Greater(t, hours, 10)
	require.Less(t, hours, 144)
	require.Less(t, a.Account.Closure.Heat, asked)
	require.Less(t, a.Account.Closure.Water, asked)
	without := solved(t, changed(t, "{}"), part(t, "04-20", 6))
	require.Less(t, w.Condensed+w.Vented, without.Account.Whole.Condensed+without.Account.Whole.Vented)
}

// A burner for CO2 warms and wets the house as the combustion of its fuel has it,
// its fuel is paid, and the heater gives less.
func TestCO2Burner(t *testing.T) {
	s := part(t, "02-02", 4)
	with := func(source string) *answer {
		return solved(t, changed(t, `{"co2": {"level_umol_mol": 700, "source": "`+source+`", "fuel_price_per_kwh": 0.2}}`), s)
	}
	bottle, burner := with("bottle"), with("burner")
	w := &burner.Account.Whole
	require.Greater(t, w.Dosed, 1.0)
	// Propane: 46.35 MJ/kg, 3 kg of CO2 and 1.634 of water from 1 kg.
	require.InEpsilon(t, w.Dosed/2.994*46.35/3.6, w.BurnerFuel, 0.002)
	require.InEpsilon(t, w.Dosed/2.994*1.634, w.Burnt, 0.002)
	require.InEpsilon(t, w.BurnerFuel+w.Burnt*0.7, w.Burner, 0.02)
	require.InDelta(t, 0.2*w.BurnerFuel, burner.Money.CO2, 1e-9)
	require.Zero(t, bottle.Account.Whole.Burner+bottle.Account.Whole.Burnt+bottle.Account.Whole.BurnerFuel)
	less := bottle.Account.Whole.Heater - w.Heater
	require.Greater(t, less, 0.1*w.BurnerFuel)
	require.Less(t, less, w.Burner)
	for _, v := range []float64{burner.Account.Closure.HourHeat, burner.Account.Closure.HourWater, burner.Account.Closure.Heat, burner.Account.Closure.Water} {
		require.Less(t, v, asked)
	}
	held := 0
	for i, given := range burner.year.Given {
		if given > 0 && given < doserMost*burner.year.house.steady.House.Shape.FloorArea*(1-1e-9) {
			require.InDelta(t, 700, burner.year.CO2[i], 0.5)
			held++
		}
		if given == 0 {
			require.Zero(t, burner.year.burnt(i))
		}
	}
	require.Greater(t, held, 5)
}

// The deep ground is coldest in late winter and warmest in late summer, about the
// mean of the outside air.
func TestDeepGround(t *testing.T) {
	s, err := weather.Greensboro()
	require.NoError(t, err)
	p, err := atSite(changed(t, "{}"), s)
	require.NoError(t, err)
	h, err := newHouse(&p.Plan, s)
	require.NoError(t, err)
	deep := h.deep()
	require.Len(t, deep, 8761)
	low, high, sum := 0, 0, 0.0
	for i, v := range deep[:8760] {
		if v < deep[low] {
			low = i
		}
		if v > deep[high] {
			high = i
		}
		sum += v / 8760
	}
	require.InDelta(t, 14.4, sum, 0.3)
	require.InDelta(t, 45, low/24, 25)
	require.InDelta(t, 182, high/24-low/24, 3)
	require.Greater(t, deep[high]-deep[low], 2.0)
	require.Less(t, deep[high]-deep[low], 25.2, "less than the air's own")
}

// The hours of the heater by its power are those of the hours, and the greatest power
// gives all of the heat; a heater of half the power gives more than half of it.
func TestDurations(t *testing.T) {
	a := solved(t, plan.Demo(), part(t, "02-02", 4))
	require.Len(t, a.Durations, durationSteps)
	for k, d := range a.Durations {
		hours, below := 0, 0.0
		for i := range a.year.State {
			q := a.year.heat(i)
			if q >= d.Power {
				hours++
			}
			below += min(q, d.Power) / kWh
		}
		require.Equal(t, hours, d.Hours)
		require.InDelta(t, below/a.Account.Whole.Heater, d.Share, 1e-9)
		require.InDelta(t, 34000*float64(k+1)/durationSteps, d.Power, 1e-9)
	}
	require.InDelta(t, 1, a.Durations[durationSteps-1].Share, 1e-9)
	require.Greater(t, a.Durations[4].Share, 0.6)
	require.Empty(t, solved(t, plan.Demo(), part(t, "07-08", 1)).Durations)
}

// A screen inside keeps light from the trays that it takes up as heat; outside both
// stay out.
func TestShadeAndLight(t *testing.T) {
	s := part(t, "07-08", 1)
	lit := func(change string) float64 { return solved(t, changed(t, change), s).Account.Whole.DayLight }
	bare := lit("{}")
	outside := lit(`{"shade": {"place": "outside screen", "above_sun_w_m2": 0}}`)
	inside := lit(`{"shade": {"place": "inside screen", "above_sun_w_m2": 0}}`)
	require.InEpsilon(t, 0.5*bare, outside, 1e-9)
	require.InEpsilon(t, outside, inside, 1e-9)
	cooler := solved(t, changed(t, `{"shade": {"place": "outside screen"}}`), s).Account.Hottest.Inside
	require.Less(t, cooler, solved(t, changed(t, `{"shade": {"place": "inside screen"}}`), s).Account.Hottest.Inside)
}
