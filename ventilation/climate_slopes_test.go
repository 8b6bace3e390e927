package ventilation_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// The slopes that the balances are solved with are those of the balances: leaves
// warmer and colder than the air, a wet and a dry floor, dew on leaves and cover,
// saturated air, covers by one U and as package envelope has them.
func TestSlopesAreThoseOfTheBalances(t *testing.T) {
	w := ventilation.Weather{Air: air(t, 12, 0.7), Sun: 300, Wind: 2.5, Sky: -6, Ground: 14}
	s := ventilation.Setting{Opening: 0.4, Heat: 5000, Mist: 1e-4, Exchange: 120, Store: 16, Condensing: 2e-7, StoreVapour: 1400}
	simple, real := summerHouse(t), realClimate(t, envelope.SingleFilm())
	for name, h := range map[string]ventilation.ClimateHouse{"simple": simple, "real": real} {
		c := climate(t, h)
		for _, at := range [][5]float64{
			{24, 21, 15, 1500, 22},
			{19, 18, 17, 1900, 21.5},
			{16, 15, 11, 2100, 21.3}, // dew on all of them
			{27.3, 26, 24, 2600, 25},
		} {
			for _, wet := range []bool{false, true} {
				v := at
				if wet {
					v[3] = 2e-4
				}
				exact, steps, err := ventilation.Slopes(c, w, s, v, wet)
				require.NoError(t, err)
				for r := range exact {
					size := 0.0
					for i := range exact {
						size = max(size, math.Abs(exact[r][i]))
					}
					for i := range exact {
						require.InDelta(t, steps[r][i], exact[r][i], 2e-5*math.Abs(steps[r][i])+1e-8*size, fmt.Sprint(name, v, wet, " balance ", r, " unknown ", i))
					}
				}
			}
		}
	}
}
