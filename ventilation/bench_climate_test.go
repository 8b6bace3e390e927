package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/speed"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func summerWeathers(tb testing.TB) (w [64]ventilation.Weather) {
	for i := range w {
		s, err := psychro.FromRelativeHumidity(18+0.25*float64(i), 0.35+0.05*float64(i%9), 101325)
		require.NoError(tb, err)
		w[i] = ventilation.Weather{Air: s, Sun: 100 + 13*float64(i), Wind: 0.5 * float64(i%11), Sky: 5 + 0.2*float64(i), Ground: 16}
	}
	return w
}

// A balance of a house with a crop and four vents takes about 7 steps of
// Newton's method, each with 2 flows (some 3 looks at 3 roots and a tall
// opening each), 4 saturation pressures with slopes and an elimination of
// order 5: about 5 µs, of which the saturation line, at 3 roots and 3
// divisions a look, is 1.
func BenchmarkSummerBalance(b *testing.B) {
	c := climate(b, summerHouse(b))
	w := summerWeathers(b)
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		s, err := c.Solve(w[i&63], ventilation.Setting{Opening: 1})
		if err != nil {
			b.Fatal(err)
		}
		sum += s.Temperature
	}
	speed.Sink = sum
}
