package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
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
// Newton's method, each with a flow and its rate (some 5 looks at 3 roots and a
// tall opening), 4 saturation pressures with slopes and an elimination of order
// 5; then one or two flows, and in four of ten a few more steps, for a stronger
// state: about 5 µs where math.Exp takes 5.4 ns, of which the saturation line, at 3
// roots and 3 divisions a look, is 1.
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

// yearHours is a made-up year: a yearly and a daily wave.
func yearHours(n int) ventilation.Hours {
	h := ventilation.Hours{Pressure: 101325, Soil: ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 9, Start: 6}}
	for i := range n {
		season := -math.Cos(2 * math.Pi * float64(i) / 8760)
		hour := -math.Cos(2 * math.Pi * float64(i%24) / 24)
		t := 9 + 10*season + 5*hour
		h.Temperature = append(h.Temperature, t)
		h.RelativeHumidity = append(h.RelativeHumidity, 0.72-0.18*hour)
		h.Sun = append(h.Sun, max(0, (450+300*season)*hour+70*season))
		h.Wind = append(h.Wind, 1.5+1.5*math.Sin(float64(i)*0.37))
		h.Sky = append(h.Sky, t-12-3*math.Sin(float64(i)*0.11))
	}
	return h
}

func BenchmarkVentYear(b *testing.B) {
	c := climate(b, summerHouse(b))
	hours := yearHours(8760)
	hours.Settings = []ventilation.Setting{{Opening: 0.3, Heat: 3000}}
	year, err := c.YearTo(nil, hours)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.YearTo(year, hours); err != nil {
			b.Fatal(err)
		}
	}
	speed.Sink = year.Temperature[4000]
}

func BenchmarkVentYearUnderRule(b *testing.B) {
	c := climate(b, summerHouse(b))
	hours := yearHours(8760)
	hours.Settings = []ventilation.Setting{{}}
	hours.Rule = ventilation.Targets{Vent: 24, Warm: 12, Heater: 34000, Humidity: 1, Most: 1}
	year, err := c.YearTo(nil, hours)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.YearTo(year, hours); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(year.Short), "short")
	speed.Sink = year.Temperature[4000]
}

// An hour of a house on real covers under day and night targets, screen and
// humidity, from the hour before: its limit is the solutions of all covers that
// it takes, each of a step or two of Newton's method for every facet that has no
// twin; the count is reported.
func BenchmarkRealHours(b *testing.B) {
	for _, see := range []envelope.RadiantRoom{envelope.RadiantGiven, envelope.RadiantEnclosure} {
		b.Run(see.String(), func(b *testing.B) {
			h := summerHouse(b)
			h.Real = ventilation.DefaultRealCover(realHouse(b, envelope.DoubleInfraredFilm(), see))
			c := climate(b, h)
			const n = 24 * 14
			hours := spanOf(100*24, 100*24+n)
			hours.Settings = []ventilation.Setting{{}}
			hours.Rule = ventilation.DefaultDayNight(30e3)
			hours.Structure = ventilation.DefaultStructureStore()
			year, err := c.YearTo(nil, hours)
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.YearTo(year, hours); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(year.Solved)/n, "covers/h")
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/n, "ns/h")
			b.ReportMetric(float64(year.Between), "between")
			b.ReportMetric(float64(year.Short), "short")
		})
	}
}
