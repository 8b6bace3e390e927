package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// Hours that set out from the hour before are those that set out from nothing,
// under rules that heat, vent and dry, on a cover that every facet solves alone and
// on films that see each other. Between dry and wet what covers take lies between two
// straight forms, and is known no closer than these; films in the one house that
// has a state on either side of a jump take that of the hour before.
func TestNearHoursAreThoseFromAfar(t *testing.T) {
	apart, all := 0, 0
	for _, see := range []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure} {
		for i, cover := range []envelope.Cover{envelope.SingleGlass(), envelope.DoubleInfraredFilm(), envelope.TwinWall10()} {
			for _, day := range []int{20, 100, 190} {
				h := realClimate(t, cover)
				h.Real.House = realHouse(t, cover, see)
				c := climate(t, h)
				hours := yearHours(8760)
				for _, column := range []*[]float64{&hours.Temperature, &hours.RelativeHumidity, &hours.Sun, &hours.Wind, &hours.Sky} {
					*column = (*column)[24*day:][:96]
				}
				hours.Settings = []ventilation.Setting{{}}
				rule := ventilation.DefaultDayNight(30e3)
				if i == 1 {
					rule.Night.Radiant, rule.Day.Radiant = 0.5, 0.5
				}
				hours.Rule = rule
				hours.Structure = ventilation.DefaultStructureStore()
				near, err := c.YearTo(nil, hours)
				require.NoError(t, err)
				far, between, err := ventilation.ForgetfulYear(c, hours)
				require.NoError(t, err)
				from := 0 // from where the stores have forgotten what lay between
				for j := range near.Temperature {
					if between[j] {
						from = j + 24
					}
					if j < from {
						continue
					}
					all++
					if math.Abs(near.Temperature[j]-far.Temperature[j]) > 3e-5 || math.Abs(near.RelativeHumidity[j]-far.RelativeHumidity[j]) > 3e-6 ||
						math.Abs(near.Heat[j]-far.Heat[j]) > 0.3 || math.Abs(near.Condensed[j]-far.Condensed[j]) > 1e-8 {
						apart++
						t.Logf("%v cover %d hour %d: %.7f °C %.7f %.5g W %.6g kg/s, from afar %.7f °C %.7f %.5g W %.6g kg/s", see, i, 24*day+j,
							near.Temperature[j], near.RelativeHumidity[j], near.Heat[j], near.Condensed[j],
							far.Temperature[j], far.RelativeHumidity[j], far.Heat[j], far.Condensed[j])
					}
				}
			}
		}
	}
	t.Logf("%d of %d hours differ", apart, all)
	require.LessOrEqual(t, apart, all/100)
}
