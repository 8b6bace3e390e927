package lighting

import (
	"math"
	"testing"
	"time"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// flatSeason has the same day all year: g W/m² from 8 to 16 o'clock.
func flatSeason(g float64, hours int) LightingSeason {
	s := LightingSeason{Global: make([]float64, hours), PerJoule: 2, Transmittance: 0.5, Target: 15, PPFD: 150, From: 2 * time.Hour, Until: 20 * time.Hour, OffAbove: 5000}
	for h := range s.Global {
		if h%24 >= 8 && h%24 < 16 {
			s.Global[h] = g
		}
	}
	return s
}

func TestSeasonByHand(t *testing.T) {
	s := flatSeason(200, 8760)
	r, err := s.Solve()
	require.NoError(t, err)
	d := r.Days[100]
	// 200 W/m² x 2 µmol/J x 8 h x 3600 s = 11.52 mol outside, half inside.
	require.InEpsilon(t, 11.52, d.Outdoor, 1e-12)
	require.InEpsilon(t, 5.76, d.Daylight, 1e-12)
	require.InEpsilon(t, 9.24, d.Deficit, 1e-12)
	// 9.24 mol at 150 µmol/(m² s) are 17.11 h, within the 18 h from 2 to 20.
	require.InEpsilon(t, 9.24/(150*0.0036), d.LampTime.Hours(), 1e-9)
	require.InEpsilon(t, 9.24, d.Lamps, 1e-9)
	require.Zero(t, d.Shortfall)
	require.Len(t, r.Days, 365)
	require.Equal(t, 365, r.DarkDays)
	require.Zero(t, r.ShortDays)
	require.InEpsilon(t, 365*d.LampTime.Hours(), r.LampTime.Hours(), 1e-9)
	require.InEpsilon(t, 365*15, r.Daylight+r.Lamps, 1e-9)
	require.InEpsilon(t, 5.76, r.Percentile(0.1), 1e-12)
	require.Len(t, r.Month(time.February).Days, 28)

	s.OffAbove = 100 // the eight hours of 200 µmol/(m² s) inside drop out
	r, err = s.Solve()
	require.NoError(t, err)
	require.Equal(t, 10*time.Hour, r.Days[0].LampTime)
	require.InEpsilon(t, 9.24-10*0.54, r.Days[0].Shortfall, 1e-12)
	require.Equal(t, 365, r.ShortDays)
	s.From, s.Until = 90*time.Minute, 150*time.Minute
	r, err = s.Solve()
	require.NoError(t, err)
	require.Equal(t, time.Hour, r.Days[0].LampTime)
	s.PPFD = 0
	r, err = s.Solve()
	require.NoError(t, err)
	require.Equal(t, r.Days[0].Deficit, r.Days[0].Shortfall)

	leap, err := flatSeason(900, 8784).Solve()
	require.NoError(t, err)
	require.Zero(t, leap.LampTime)
	feb, mar := leap.Month(time.February), leap.Month(time.March)
	require.Len(t, feb.Days, 29)
	require.Len(t, mar.Days, 31)
}

// Lamps of the night burn before the end and after the start of the window,
// each hour once: a window and what it leaves of the day make up the day.
func TestSeasonAcrossMidnight(t *testing.T) {
	s := flatSeason(0, 8760)
	s.Target = 80 // more than the lamps can give
	burn := func(from, until float64) float64 {
		s.From, s.Until = time.Duration(from*float64(time.Hour)), time.Duration(until*float64(time.Hour))
		r, err := s.Solve()
		require.NoError(t, err)
		return r.Days[100].LampTime.Hours()
	}
	require.InDelta(t, 8, burn(22, 6), 1e-9)
	require.InDelta(t, 3.75, burn(23.5, 3.25), 1e-9)
	require.InDelta(t, 23.75, burn(6.5, 6.25), 1e-9)
	require.InDelta(t, 6, burn(24, 6), 1e-9)
	require.InDelta(t, 2, burn(22, 0), 1e-9)
	require.Zero(t, burn(6, 6))
	for _, w := range [][2]float64{{2, 20}, {5.3, 5.9}, {0.25, 23.75}, {7, 8}} {
		require.InDelta(t, 24, burn(w[0], w[1])+burn(w[1], w[0]), 1e-9)
	}
	s = flatSeason(200, 8760)
	s.OffAbove = 100 // dark hours are 0 to 8 and 16 to 24
	s.Target = 80
	require.InDelta(t, 14, burn(18, 9), 1e-9)
}

// The mean of the deficits exceeds the deficit of the mean day.
func TestSeasonLaws(t *testing.T) {
	s := flatSeason(0, 8760)
	for h := range s.Global {
		if h%24 == 12 {
			s.Global[h] = 600 * (1 + math.Sin(float64(h/24*37)))
		}
	}
	s.Transmittance, s.Target = 0.9, 4
	r, err := s.Solve()
	require.NoError(t, err)
	deficit, light := 0.0, 0.0
	for _, d := range r.Days {
		deficit += d.Deficit / 365
		light += d.Daylight / 365
		require.InDelta(t, d.Deficit, d.Lamps+d.Shortfall, 1e-9)
		require.LessOrEqual(t, d.LampTime, s.Until-s.From)
	}
	require.Greater(t, deficit, Deficit(s.Target, light)+0.3)
	require.Less(t, r.Percentile(0.05), r.Percentile(0.5))
	months := 0.0
	for m := time.January; m <= time.December; m++ {
		months += r.Month(m).Lamps
	}
	require.InEpsilon(t, r.Lamps, months, 1e-9)
	for _, p := range []float64{-0.1, 1.1, math.NaN()} {
		require.True(t, math.IsNaN(r.Percentile(p)))
	}
	require.True(t, math.IsNaN(LightingYear{}.Percentile(0.5)))
}

// Lamps sized for exactly what the target leaves over the hours allowed miss no
// day by rounding, and a part in ten thousand less misses every one.
func TestExactSizingLeavesNoShortDay(t *testing.T) {
	for hours := 4; hours <= 24; hours++ {
		for tenth := 10; tenth <= 600; tenth += 7 {
			s := LightingSeason{PerJoule: 2, Transmittance: 0.6, Target: float64(tenth) / 10, Until: time.Duration(hours) * time.Hour, OffAbove: 5000}
			global := make([]float64, 24)
			global[12] = float64(tenth) / 10 // a little daylight
			missing := Deficit(s.Target, global[12]*s.PerJoule*s.Transmittance*3600*micromole)
			s.PPFD = missing / (float64(hours) * 3600 * micromole)
			if !ppfdRange.Contains(s.PPFD) {
				continue
			}
			require.Zero(t, s.day(global).Shortfall, "%d h for %g mol/(m² d)", hours, s.Target)
			s.PPFD *= 1 - 1e-4
			require.Positive(t, s.day(global).Shortfall)
		}
	}
}

func TestSeasonErrorsNameEveryFault(t *testing.T) {
	bad := LightingSeason{Global: []float64{0, math.NaN(), -1}, PerJoule: 1, Transmittance: 65, Target: -1, PPFD: math.Inf(1), From: 25 * time.Hour, Until: -time.Hour, OffAbove: -1}
	_, err := bad.Solve()
	require.ErrorIs(t, err, ErrRange)
	for _, want := range []string{"PerJoule", "Transmittance is 65", "Target is -1", "PPFD is", "OffAbove", "From is 25", "Until is -1",
		"Global has 3 hours, want a whole year", "Global[1] is NaN"} {
		require.ErrorContains(t, err, want)
	}
}

// The months of testdata/daily_greensboro.csv as a year of even days: the light
// of each month; and what falls outside the atmosphere, which the station's file
// has, by the formula of a day and by the sun itself at the
// 1367 W/m² that such files use (common practice, no source).
func TestSeasonAtGreensboro(t *testing.T) {
	const latitude = 36.1
	site, err := NewSite(latitude, -79.95, 270)
	require.NoError(t, err)
	rows := check.Numbers(t, "daily_greensboro.csv")
	require.Len(t, rows, 12)
	s := LightingSeason{PerJoule: DaylightThimijan, Transmittance: 1, Until: 24 * time.Hour, OffAbove: 5000}
	day := 0
	for _, r := range rows {
		above := 0.0
		for range int(r[1]) {
			day++
			above += ExtraterrestrialDay(latitude, day) / r[1]
			for range 24 {
				s.Global = append(s.Global, r[2]/24)
			}
		}
		require.InEpsilon(t, r[4]*1e6, above, 0.03, "month %g", r[0])
		exact := 0.0
		for at := time.Date(2023, time.Month(r[0]), 1, 5, 0, 0, 0, time.UTC); at.Add(-5*time.Hour).Month() == time.Month(r[0]); at = at.Add(20 * time.Minute) {
			sun := site.Sun(at)
			exact += 1200 / r[1] * 1367 / (sun.Distance * sun.Distance) * max(0, math.Sin(sun.Elevation*radian))
		}
		require.InEpsilon(t, r[4]*1e6, exact, 0.005, "month %g", r[0])
		t.Logf("month %2g: formula %+.2f %%, sun %+.2f %%", r[0], 100*(above/r[4]/1e6-1), 100*(exact/r[4]/1e6-1))
	}
	year, err := s.Solve()
	require.NoError(t, err)
	for i, r := range rows {
		m := year.Month(time.Month(i + 1))
		require.Len(t, m.Days, int(r[1]))
		require.InDelta(t, r[6], m.Daylight/r[1], 0.011, "printed to 0.01 of rounded means")
	}
}

// The bounds of a season's inputs: a value at each is taken, one beyond is not.
func TestSeasonBounds(t *testing.T) {
	for name, c := range map[string]struct {
		low, high float64
		set       func(s *LightingSeason, v float64)
	}{
		"PerJoule":      {1.7, 2.5, func(s *LightingSeason, v float64) { s.PerJoule = v }},
		"Transmittance": {0, 1, func(s *LightingSeason, v float64) { s.Transmittance = v }},
		"Target":        {0, 80, func(s *LightingSeason, v float64) { s.Target = v }},
		"PPFD":          {0, 5000, func(s *LightingSeason, v float64) { s.PPFD = v }},
		"OffAbove":      {0, 5000, func(s *LightingSeason, v float64) { s.OffAbove = v }},
		"Global[77]":    {0, 1500, func(s *LightingSeason, v float64) { s.Global[77] = v }},
		"From":          {0, 24, func(s *LightingSeason, v float64) { s.From = time.Duration(v * float64(time.Hour)) }},
		"Until":         {0, 24, func(s *LightingSeason, v float64) { s.Until = time.Duration(v * float64(time.Hour)) }},
	} {
		for _, v := range []float64{c.low, c.high} {
			s := flatSeason(200, 8760)
			c.set(&s, v)
			_, err := s.Solve()
			require.NoError(t, err, "%s %g", name, v)
		}
		for _, v := range []float64{c.low - 0.005*(c.high-c.low), c.high * 1.005} {
			s := flatSeason(200, 8760)
			c.set(&s, v)
			_, err := s.Solve()
			require.ErrorContains(t, err, name, "%g", v)
		}
	}
}
