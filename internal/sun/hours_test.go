package sun

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestHoursAgainstTheSunByTheMinute sums the accurate sun over each hour.
func TestHoursAgainstTheSunByTheMinute(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 150 {
		site, err := NewSite(180*r.Float64()-90, 360*r.Float64()-180, 0)
		require.NoError(t, err)
		start := time.Date(1951+r.IntN(149), 1, 1, 0, 0, 0, 0, time.UTC).Add(time.Duration(r.Float64() * 365 * 24 * float64(time.Hour)))
		start = start.Truncate(time.Minute)
		got := site.HoursTo(nil, []time.Time{start})[0]
		lit, sine, e0 := 0.0, 0.0, 0.0
		const parts = 240
		for i := range parts {
			at := site.Sun(start.Add(time.Duration((float64(i) + 0.5) / parts * float64(time.Hour))))
			if s := math.Sin(at.Elevation * radian); s > 0 {
				lit += 1.0 / parts
				sine += s / parts
			}
			e0 += at.Extraterrestrial() / parts
		}
		require.InDelta(t, sine, got.Sine, 6e-5, "%v %v", site, start)
		require.InDelta(t, e0, got.Extraterrestrial, 0.01)
		if math.Abs(site.Latitude()) < 66 {
			require.InDelta(t, lit, got.Lit, 1.0/parts+1e-3, "%v %v", site, start)
		}
		if got.Lit == 1 {
			middle := site.Sun(start.Add(30 * time.Minute))
			require.InDelta(t, math.Sin(middle.Elevation*radian), got.Sine, 0.003, "the mean over an hour is near its middle")
			require.InDelta(t, got.Sine, math.Sin(got.Elevation*radian), 1e-12)
			if middle.Elevation < 80 {
				require.InDelta(t, 0, math.Remainder(middle.Azimuth-got.Azimuth, 360), 0.05)
			}
		}
	}
}

// TestHoursAddUpToTheDay: the whole hours of a day give what falls in a day.
func TestHoursAddUpToTheDay(t *testing.T) {
	for _, latitude := range []float64{-78, -35, 0, 36, 50, 66.4, 89} {
		site, err := NewSite(latitude, 15, 0)
		require.NoError(t, err)
		for _, month := range []time.Month{1, 3, 6, 10} {
			day := time.Date(2001, month, 20, 0, 0, 0, 0, time.FixedZone("", 3600))
			starts := make([]time.Time, 24)
			for i := range starts {
				starts[i] = day.Add(time.Duration(i) * time.Hour)
			}
			sum, lit := 0.0, 0.0
			for _, h := range site.HoursTo(nil, starts) {
				sum += h.Sine * h.Extraterrestrial * 3600
				lit += h.Lit
				require.GreaterOrEqual(t, h.Lit, 0.0)
				require.LessOrEqual(t, h.Lit, 1+1e-12)
				if h.Lit == 0 {
					require.LessOrEqual(t, h.Elevation, 0.0)
				}
			}
			noon := site.Sun(day.Add(12 * time.Hour))
			w := sunsetAngleAt(latitude, noon.Declination)
			sinP, cosP := math.Sincos(latitude * radian)
			sinD, cosD := math.Sincos(noon.Declination * radian)
			want := 86400 / math.Pi * noon.Extraterrestrial() * (w*radian*sinP*sinD + cosP*cosD*math.Sin(w*radian))
			require.InDelta(t, want, sum, 2e-3*want+2e4, "latitude %g month %v", latitude, month)
			require.InDelta(t, 2*w/15, lit, 0.1, "latitude %g month %v", latitude, month)
		}
	}
}

// sunsetAngleAt is the textbook hour angle of sunset, degree.
func sunsetAngleAt(latitude, declination float64) float64 {
	c := -math.Tan(latitude*radian) * math.Tan(declination*radian)
	return math.Acos(math.Max(-1, math.Min(1, c))) / radian
}

func TestHoursToDst(t *testing.T) {
	site, err := NewSite(50, 14, 300)
	require.NoError(t, err)
	starts := []time.Time{time.Date(2001, 5, 5, 11, 0, 0, 0, time.UTC), time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC)}
	dst := make([]HourSun, 2)
	require.Equal(t, dst[:1], site.HoursTo(dst[:1], starts[:1]))
	require.Greater(t, dst[0].Sine, 0.7)
	require.True(t, math.IsNaN(site.HoursTo(nil, starts)[1].Extraterrestrial))
	require.Panics(t, func() { site.HoursTo(dst[:1], starts) })
}

func BenchmarkHoursOfAYear(b *testing.B) {
	site, err := NewSite(50, 14, 300)
	require.NoError(b, err)
	starts := make([]time.Time, 8760)
	for i := range starts {
		starts[i] = time.Date(2001, 1, 1, i, 0, 0, 0, time.UTC)
	}
	dst := make([]HourSun, len(starts))
	b.ReportAllocs()
	for b.Loop() {
		site.HoursTo(dst, starts)
	}
}
