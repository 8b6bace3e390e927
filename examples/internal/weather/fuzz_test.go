package weather

import (
	"bytes"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// seeds are small files of each format.
var seeds = []string{
	site + names + "2001-01-01T00:00,1,0.8,0,2\n2001-01-01T01:00,2,0.9,,NaN\n2001-01-01T02:00,3,1,0,2\n",
	"time_ending,temperature_c,dew_point_c,global_w_m2,direct_w_m2,diffuse_w_m2,sky_w_m2,cloud_percent,pressure_pa\n" +
		"2019-06-30T12:00Z,25,12,800,700,150,380,20,97000\n2019-06-30T14:00+01:00,26,12,820,,,,,97000\n",
	site + "# typical_year: yes\ntime,temperature_c,relative_humidity_percent,global_w_m2\n2003-12-31T23:00,-50,70,0\n2001-01-01T00:00,-49,70,0\n",
	"723170,\"X\",NC,-5.0,36.1,-79.95,273\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),OpqCld (tenths),Dry-bulb (C),Dew-point (C),RHum (%),Pressure (mbar),Wspd (m/s)\n" +
		"01/01/1988,12:00,261,3,260,10,11.7,10.6,93,992,5.2\n01/01/1988,13:00,155,0,155,10,11.7,-9900,93,992,5.2\n",
	"Latitude (decimal degrees): 45.000\nLongitude (decimal degrees): 8.000\nElevation (m): 250.0\nIrradiance Time Offset (h): 0.1761\nmonth,year\n1,2018\n" +
		"time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP\n20180101:1000,1.27,95.75,132.0,38.3,119.2,286.2,1.24,232.0,99580.0\n20180101:1100,2.97,85.7,112.0,6.5,109.6,275.4,1.59,228.0,99540.0\n\nT2m: notes\n",
	"month,day,hour_ending,dry_bulb_c,dew_point_c,wind_m_s,wind_from_deg,global_horizontal_w_m2\n1,1,1,3,1,2,350,0\n1,1,2,3,1,2,-9900,0\n1,1,3,3,1,0,10,0\n",
	"\x1f\x8b", "# a: b", "Latitude (decimal degrees)", "",
}

// FuzzRead wants an error or columns of one length with numbers that can be,
// and what was read to be written and read again.
func FuzzRead(f *testing.F) {
	for _, s := range seeds {
		f.Add([]byte(s), true)
	}
	f.Add([]byte(seeds[0]), false)
	f.Fuzz(func(t *testing.T, text []byte, fill bool) {
		place := Site{"", 50, 14, 1, 300}
		s, err := Read(bytes.NewReader(text), Options{Fill: fill, Site: &place})
		if err != nil {
			require.Nil(t, s)
			return
		}
		n := s.Hours()
		require.Positive(t, n)
		require.LessOrEqual(t, n, mostHours)
		within := func(v []float64, low, high float64) {
			require.Len(t, v, n)
			for i, x := range v {
				require.True(t, x >= low && x <= high, "hour %d: %g outside %g to %g", i, x, low, high)
			}
		}
		within(s.Temperature, -90, 60)
		within(s.DewPoint, -100, 60)
		within(s.RelativeHumidity, 0, 1)
		within(s.Pressure, 25e3, 111e3)
		within(s.Global, 0, 1500)
		within(s.Direct, 0, 1420)
		within(s.Diffuse, 0, 1500)
		if s.Wind != nil {
			within(s.Wind, 0, 75)
		}
		if s.Cloud != nil {
			within(s.Cloud, 0, 1)
		}
		require.Len(t, s.Sky, n)
		require.Len(t, s.Sun, n)
		for i := range n {
			require.True(t, math.IsNaN(s.Sky[i]) || s.Sky[i] >= 50 && s.Sky[i] <= 600)
			require.LessOrEqual(t, s.DewPoint[i], s.Temperature[i])
			if s.WindFrom != nil {
				require.True(t, math.IsNaN(s.WindFrom[i]) || s.WindFrom[i] >= 0 && s.WindFrom[i] <= 360)
			}
			if i > 0 && !s.Account.LeapDayLeftOut {
				require.Equal(t, int64(hour), s.Time[i].Unix()-s.Time[i-1].Unix())
			}
		}
		var written bytes.Buffer
		require.NoError(t, Write(&written, s))
		again, err := Read(&written, Options{})
		require.NoError(t, err, written.String())
		require.Equal(t, n, again.Hours())
	})
}
