package sun

import (
	"math"
	"time"
)

// leapSeconds are the days, as year and month of their first, from which
// TAI - UTC is 10, 11, 12, ... s: Bulletin C of the International Earth
// Rotation Service [IersC17].
var leapSeconds = [...]struct{ year, month int }{
	{1972, 1}, {1972, 7}, {1973, 1}, {1974, 1}, {1975, 1}, {1976, 1}, {1977, 1}, {1978, 1}, {1979, 1}, {1980, 1},
	{1981, 7}, {1982, 7}, {1983, 7}, {1985, 7}, {1988, 1}, {1990, 1}, {1991, 1}, {1992, 7}, {1993, 7}, {1994, 7},
	{1996, 1}, {1997, 7}, {1999, 1}, {2006, 1}, {2009, 1}, {2012, 7}, {2015, 7}, {2017, 1},
}

// Terrestrial time is ahead of atomic time by 32.184 s, exactly; the first
// entry of leapSeconds stands for 10 s.
const (
	terrestrialLead = 32.184
	firstLeap       = 10
)

// Polynomials of [Espenak06] for the lead before 1972, s; years from 1950 and
// from 1975 (from memory).
var (
	lead1950 = [4]float64{29.07, 0.407, -1.0 / 233, 1.0 / 2547}
	lead1975 = [4]float64{45.45, 1.067, -1.0 / 260, -1.0 / 718}
)

// DynamicalLead returns by how much dynamical (terrestrial) time is ahead of
// UTC at t: from 1972 by the table of leap seconds, before by polynomials of
// UT1 [Espenak06], after 2017 by the last entry, 69.184 s.
func DynamicalLead(t time.Time) time.Duration {
	t = t.UTC()
	n := 0
	for n < len(leapSeconds) && !t.Before(time.Date(leapSeconds[n].year, time.Month(leapSeconds[n].month), 1, 0, 0, 0, 0, time.UTC)) {
		n++
	}
	s := terrestrialLead + firstLeap - 1 + float64(n)
	if n == 0 {
		year := 2000 + julian(t)/365.25
		p, x := lead1975, year-1975
		if year < 1961 {
			p, x = lead1950, year-1950
		}
		s = p[0] + x*(p[1]+x*(p[2]+x*p[3]))
	}
	return time.Duration(math.Round(s * 1e9))
}
