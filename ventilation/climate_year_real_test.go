package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// watched is a rule that notes the hours it was asked for.
type watched struct {
	ventilation.TargetRule
	moments *[]ventilation.HourMoment
	targets *[]ventilation.Targets
}

func (r watched) At(m ventilation.HourMoment) ventilation.Targets {
	t := r.TargetRule.At(m)
	*r.moments, *r.targets = append(*r.moments, m), append(*r.targets, t)
	return t
}

// spanOf returns the hours from to to of the year.
func spanOf(from, to int) ventilation.Hours {
	hours := yearHours(8760)
	for _, column := range []*[]float64{&hours.Temperature, &hours.RelativeHumidity, &hours.Sun, &hours.Wind, &hours.Sky} {
		*column = (*column)[from:to]
	}
	return hours
}

// daysAndNights solves the hours from to to of the year under day and night targets,
// and returns what the rule was asked and said.
func daysAndNights(c *ventilation.Climate, from, to int) (year *ventilation.HouseYear, moments []ventilation.HourMoment, targets []ventilation.Targets, err error) {
	hours := spanOf(from, to)
	hours.Settings, hours.Structure = []ventilation.Setting{{}}, ventilation.DefaultStructureStore()
	hours.Rule = watched{ventilation.DefaultDayNight(40e3), &moments, &targets}
	year, err = c.YearTo(nil, hours)
	return year, moments, targets, err
}

// In every hour of some weeks of each season, on all ready-made covers and both
// radiant surroundings, under day and night targets with a screen, the heat
// through the covers is envelope's at the state of the hour, and every balance
// closes; the few hours between dry and wet are counted as such. A campaign takes
// all of the year: -campaign 72800.
func TestAYearOnRealCovers(t *testing.T) {
	days := max(5, min(91, *campaign/800)) // all of the year with -campaign 72800
	n := 24 * days
	between, astray, wrong, all := 0, 0, 0, 0
	for i, cover := range envelope.Covers() {
		for _, see := range []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure} {
			h := realClimate(t, cover.Cover)
			h.Real.House = realHouse(t, cover.Cover, see)
			c := climate(t, h)
			for season := range 4 {
				from := 24 * ((10 + 91*season + 5*i) % (366 - days))
				year, moments, targets, err := daysAndNights(c, from, from+n)
				if err != nil {
					t.Logf("%s %v: %v", cover.Name, see, err)
					require.LessOrEqual(t, year.Failed, n/1000)
				}
				between += year.Between
				for j := 1; j < n; j++ {
					all++
					x := moments[j].Before
					if x == (ventilation.ClimateState{}) {
						continue // without a state
					}
					require.Lessf(t, x.NodeResidual, 1e-9, "%s %v hour %d", cover.Name, see, from+j)
					if miss := coversDiffer(t, h, moments[j-1].Weather, ventilation.Setting{Screen: targets[j-1].Screen}, x); miss != "" {
						wrong++
						t.Logf("%s %v hour %d: %s", cover.Name, see, from+j-1, miss)
					}
					if x.CoversBetween && edgeDiffers(t, h, moments[j-1].Weather, ventilation.Setting{Screen: targets[j-1].Screen}, x) != "" {
						astray++
					}
				}
			}
		}
	}
	t.Logf("%d hours, %d between dry and wet, %d of them at no edge of Loss, %d wrong", all, between, astray, wrong)
	require.LessOrEqual(t, wrong, all/20000)
	require.Less(t, between, all/100)
	require.LessOrEqual(t, astray, all/10000)
}

// A floor in weather that stays loses to the ground what envelope's steady
// coefficient says of the air that would keep it as warm: the floor's surface and
// the film of ISO 13370 above it.
func TestTheGroundUnderAFloorIsEnvelopes(t *testing.T) {
	h := realClimate(t, envelope.SingleGlass())
	c := climate(t, h)
	house := h.Real.House
	const n = 600
	hours := ventilation.Hours{Pressure: 101325, Settings: []ventilation.Setting{{}}, Soil: ventilation.FloorStoreUnder(house, h.Floor)}
	hours.Soil.Capacity = 2e5
	for range n {
		hours.Temperature = append(hours.Temperature, 4)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.8)
		hours.Sun, hours.Wind, hours.Sky = append(hours.Sun, 0), append(hours.Wind, 2), append(hours.Sky, -8)
	}
	var moments []ventilation.HourMoment
	var targets []ventilation.Targets
	hours.Rule = watched{ventilation.DefaultTargets(60e3), &moments, &targets}
	_, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	x, g := moments[n-1].Before, house.Ground()
	film := 0.17 * x.Ground / h.FloorArea // K, from the air to the floor's surface
	require.InDelta(t, g.Total*(x.FloorTemperature+film-house.Climate().OutsideMean), x.Ground, 1e-3*x.Ground)
	require.Greater(t, x.Ground, 100.0)

	// So it does without a mass, in any hour, as with next to none.
	hours.Soil.Capacity = 1e-3
	tiny, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	moments = nil
	hours.Soil.Capacity = 0
	none, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for i := range n {
		require.InDelta(t, tiny.Heat[i], none.Heat[i], 1e-2)
		require.InDelta(t, tiny.SoilTemperature[i], none.SoilTemperature[i], 1e-4)
	}
	x = moments[n-1].Before
	require.InDelta(t, g.Total*(x.FloorTemperature+0.17*x.Ground/h.FloorArea-house.Climate().OutsideMean), x.Ground, 1e-3*x.Ground)
}

// An hour from the one before takes a pass over all covers where they lead, and one
// or two more until covers and balances agree.
func TestHoursOnRealCoversTakeFewPasses(t *testing.T) {
	for _, see := range []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure} {
		h := realClimate(t, envelope.DoubleInfraredFilm())
		h.Real.House = realHouse(t, envelope.DoubleInfraredFilm(), see)
		const n = 24 * 14
		hours := spanOf(100*24, 100*24+n)
		hours.Settings = []ventilation.Setting{{}}
		hours.Rule, hours.Structure = ventilation.DefaultDayNight(30e3), ventilation.DefaultStructureStore()
		year, err := climate(t, h).YearTo(nil, hours)
		require.NoError(t, err)
		require.Lessf(t, float64(year.Solved)/n, 2.8, "%v", see)
	}
}

// Three days take no more space than one.
func TestAYearOnRealCoversAllocatesOnce(t *testing.T) {
	h := realClimate(t, envelope.DoubleInfraredFilm())
	c := climate(t, h)
	allocs := func(n int) float64 {
		hours := yearHours(n)
		hours.Settings = []ventilation.Setting{{}}
		hours.Rule = ventilation.DefaultDayNight(40e3)
		year, err := c.YearTo(nil, hours)
		require.NoError(t, err)
		return testing.AllocsPerRun(3, func() { _, _ = c.YearTo(year, hours) })
	}
	require.Equal(t, allocs(24), allocs(72))
}
