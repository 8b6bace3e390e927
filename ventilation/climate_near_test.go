package ventilation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// Hours in a row of random houses on real covers under random targets, without a
// store, are those sought from afar, but under films that let heat radiation through:
// the house may then have a state with water on them and one without, and an hour
// keeps to that of the one before. A house for each 500 of the campaign's number.
func TestNearHoursOfRandomHouses(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 5))
	covers := envelope.Covers()
	apart, all, between, failed := 0, 0, 0, 0
	var heat []float64
	for range max(6, *campaign/500) {
		cover := covers[rnd.IntN(len(covers))]
		see := []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure}[rnd.IntN(2)]
		h := realClimate(t, cover.Cover)
		h.Real.House = realHouse(t, cover.Cover, see)
		if rnd.IntN(3) == 0 {
			h.Crop.LAI = 0
		}
		h.Floor.Wet = rnd.Float64()
		c := climate(t, h)
		hours := yearHours(8760)
		from := 24 * rnd.IntN(360)
		for _, column := range []*[]float64{&hours.Temperature, &hours.RelativeHumidity, &hours.Sun, &hours.Wind, &hours.Sky} {
			*column = (*column)[from:][:96]
		}
		hours.Soil.Capacity = 0
		hours.Settings = []ventilation.Setting{{}}
		rule := ventilation.DefaultDayNight(1e4 + 4e4*rnd.Float64())
		rule.Night.Radiant = rnd.Float64() * float64(rnd.IntN(2))
		rule.Night.Humidity = 0.7 + 0.29*rnd.Float64()
		rule.Day.Radiant, rule.Day.Humidity = rule.Night.Radiant, rule.Night.Humidity
		hours.Rule = rule
		near, err := c.YearTo(nil, hours)
		if err != nil {
			failed += near.Failed
			t.Log(cover.Name, see, from, err)
			continue
		}
		far, stands, err := ventilation.ForgetfulYear(c, hours)
		require.NoError(t, err)
		for j := range near.Temperature {
			all++
			if stands[j] {
				between++
				continue
			}
			if math.Abs(near.Temperature[j]-far.Temperature[j]) > 3e-5 || math.Abs(near.RelativeHumidity[j]-far.RelativeHumidity[j]) > 3e-6 ||
				math.Abs(near.Heat[j]-far.Heat[j]) > 0.3 || math.Abs(near.Condensed[j]-far.Condensed[j]) > 1e-8 {
				apart++
				heat = append(heat, math.Abs(near.Heat[j]-far.Heat[j]))
				require.Positive(t, cover.Cover.Layers()[len(cover.Cover.Layers())-1].Transmittance, cover.Name)
			}
		}
	}
	worst := 0.0
	for _, q := range heat {
		worst = max(worst, q)
	}
	t.Logf("%d of %d hours differ, by up to %.0f W; %d between dry and wet, %d failed", apart, all, worst, between, failed)
	require.LessOrEqual(t, apart, all/50)
	require.LessOrEqual(t, failed, all/10000)
}
