package weather

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"testing"
	"time"

	"cloche.example/psychro"
	"github.com/stretchr/testify/require"
)

func file(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	return text
}

func read(t testing.TB, text []byte, o Options) *Series {
	t.Helper()
	s, err := Read(bytes.NewReader(text), o)
	require.NoError(t, err)
	return s
}

// TestDegreeHoursOfTheYear compares the degree-hours of the hours' means with
// the plain sum over the readings of the source. They differ only in hours that
// cross the base, and there the mean gives less, by at most half the hour's
// step.
func TestDegreeHoursOfTheYear(t *testing.T) {
	s, err := Greensboro()
	require.NoError(t, err)
	rows := readings(t)
	for _, base := range []float64{5, 10, 15, 18, 25} {
		plain, crossing := 0.0, 0.0
		for i, r := range rows {
			last := rows[(i+len(rows)-1)%len(rows)]["dry_bulb_c"]
			plain += math.Max(0, base-r["dry_bulb_c"])
			if (last-base)*(r["dry_bulb_c"]-base) < 0 {
				crossing += math.Abs(r["dry_bulb_c"]-last) / 2
			}
		}
		means := 0.0
		for _, v := range s.Temperature {
			means += math.Max(0, base-v)
		}
		require.Less(t, means, plain)
		require.LessOrEqual(t, plain-means, crossing)
		require.InEpsilon(t, plain, means, 0.01, "base %g", base)
	}
	require.Greater(t, degreeHours(s.Temperature, 18), 50e3) // 2,100 kelvin-days and more at 36 degree north
}

func degreeHours(v []float64, base float64) (sum float64) {
	for _, x := range v {
		sum += math.Max(0, base-x)
	}
	return sum
}

// TestTheYearKeepsTheSource holds sums and extremes against the source's rows.
func TestTheYearKeepsTheSource(t *testing.T) {
	s, err := Greensboro()
	require.NoError(t, err)
	require.Equal(t, 8760, s.Hours())
	require.True(t, s.Whole() && s.Typical && s.SiteInFile)
	require.Equal(t, Site{"Greensboro Piedmont Triad, North Carolina", 36.1, -79.95, -5, 273}, s.Site)
	sums := map[string]float64{}
	for _, r := range readings(t) {
		for k, v := range r {
			sums[k] += v
		}
	}
	total := func(v []float64) (sum float64) {
		for _, x := range v {
			sum += x
		}
		return sum
	}
	require.InDelta(t, sums["dry_bulb_c"], total(s.Temperature), 1)
	require.InDelta(t, sums["wind_m_s"], total(s.Wind), 1)
	require.InDelta(t, sums["pressure_mbar"]*100, total(s.Pressure), 1e4)
	require.InDelta(t, sums["global_horizontal_w_m2"], total(s.Global), 1e-6)
	require.InDelta(t, sums["opaque_cloud_tenths"]/10, total(s.Cloud), 10)
	require.InDelta(t, 1566e3, total(s.Global), 500, "kWh/m² of the source's description")
	require.InDelta(t, sums["direct_normal_w_m2"], total(s.Direct), 0.001*total(s.Direct), "beam of hours without sun counts as diffuse")
	require.Less(t, s.Account.Apart, 9, "beam and diffuse of the source add up to its global radiation")
	for i, h := range s.Sun {
		if h.Lit == 0 {
			require.Zero(t, s.Direct[i])
		}
	}
}

// TestHoursOfTMY3 pins the rule for the hour on the first rows of the file as
// published: row 8 ends at 8 o'clock.
func TestHoursOfTMY3(t *testing.T) {
	s := read(t, file(t, "tmy3_week.csv"), Options{})
	require.Equal(t, TMY3, s.Format)
	require.Equal(t, 168, s.Hours())
	require.Equal(t, "2001-01-01T00:00:00-05:00", s.Time[0].Format(time.RFC3339))
	require.Equal(t, Site{"GREENSBORO PIEDMONT TRIAD INT, NC", 36.1, -79.95, -5, 273}, s.Site)
	require.InDelta(t, 9, s.Global[7], 1e-12)
	require.InDelta(t, (10.6+11.7)/2, s.Temperature[10], 1e-12)
	require.InDelta(t, (10.0+10.6)/2, s.DewPoint[10], 1e-12)
	require.InDelta(t, 99250, s.Pressure[11], 1e-9) // 993 and 992 mbar
	require.InDelta(t, 10.0, s.Temperature[0], 1e-12, "a part of a year is no ring: the first hour has its end alone")
	require.InDelta(t, 1.0, s.Cloud[0], 1e-12)
	require.Equal(t, 168, s.Account.SkyFromCloud)
}

// TestHoursOfPVGIS pins stamps in UTC, readings at the stamp, and radiation
// shifted by the file's offset.
func TestHoursOfPVGIS(t *testing.T) {
	text := file(t, "pvgis_week.csv")
	s := read(t, text, Options{})
	require.Equal(t, PVGIS, s.Format)
	require.Equal(t, Site{"", 45, 8, 1, 250}, s.Site)
	require.True(t, s.Account.ZoneFromLongitude)
	require.Equal(t, "2001-01-01T01:00:00+01:00", s.Time[0].Format(time.RFC3339))
	require.InDelta(t, (0.23+1.27)/2, s.Temperature[9], 1e-12) // 09:00 and 10:00 UTC
	require.InDelta(t, (0.5+0.1761)*119.2+(0.5-0.1761)*132.0, s.Global[9], 1e-9)
	require.InDelta(t, (289.1+286.2)/2, s.Sky[9], 1e-9)
	require.Equal(t, 168, s.Account.SkyRead)
	require.Nil(t, s.Cloud)

	east := 5.5
	other := read(t, text, Options{Zone: &east})
	require.Equal(t, "2001-01-01T05:30:00+05:30", other.Time[0].Format(time.RFC3339))
	require.True(t, other.Time[0].Equal(s.Time[0]))
	require.False(t, other.Account.ZoneFromLongitude)

	old := bytes.Replace(text, []byte("Irradiance Time Offset (h): 0.1761\n"), nil, 1)
	require.NotEqual(t, len(text), len(old))
	require.True(t, read(t, old, Options{}).Account.NoOffset)
}

// TestHumidityIsOverLiquidWater: 90 % at -10 °C over liquid water is 99 % over
// ice, and fog there is more than saturated over ice.
func TestHumidityIsOverLiquidWater(t *testing.T) {
	text := func(rh string) []byte {
		return []byte("# latitude_deg: 50\n# longitude_deg: 10\n# zone_h: 1\n# altitude_m: 300\n" +
			"time,temperature_c,relative_humidity,global_w_m2\n2001-01-01T00:00,-10," + rh + ",0\n2001-01-01T01:00,12," + rh + ",0\n")
	}
	s := read(t, text("0.9"), Options{})
	require.True(t, s.Account.PressureFromAltitude)
	require.InDelta(t, psychro.StandardPressure(300), s.Pressure[0], 1e-9)
	for i := range 2 {
		state, err := psychro.FromRelativeHumidity(s.Temperature[i], s.RelativeHumidity[i], s.Pressure[i])
		require.NoError(t, err)
		require.InDelta(t, 0.9, state.RelativeHumidityOver(psychro.Liquid), 1e-4)
		require.InDelta(t, state.DewPointOver(psychro.Liquid), s.DewPoint[i], 0.001)
	}
	require.InDelta(t, 0.992, s.RelativeHumidity[0], 0.001)
	require.InDelta(t, 0.9, s.RelativeHumidity[1], 1e-6)
	fog := read(t, text("1"), Options{})
	require.Equal(t, 1, fog.Account.OverIce)
	require.Equal(t, 1.0, fog.RelativeHumidity[0])
	require.Equal(t, []string{
		"2 hours with the sky's heat radiation from humidity alone, as if clear",
		"1 hour above saturation over ice, taken as saturated",
		"pressure of the standard atmosphere at the site's altitude",
	}, fog.Account.Lines())
}

// TestPolarCold: below -40 °C there is no liquid water to state humidity over.
func TestPolarCold(t *testing.T) {
	for _, air := range []float64{-90, -60, -41, -40, -39, -20} {
		for _, rh := range []float64{1e-6, 0.01, 0.5, 1} {
			td := dewPointOf(air, rh, 90e3)
			require.False(t, math.IsNaN(td), "%g %g", air, rh)
			require.LessOrEqual(t, td, air)
		}
	}
}

func TestFillSky(t *testing.T) {
	s, err := Greensboro()
	require.NoError(t, err)
	asked := 0
	s.FillSky(func(h SkyHour) float64 {
		asked++
		require.GreaterOrEqual(t, h.Cloud, 0.0)
		require.LessOrEqual(t, h.DewPoint, h.Temperature)
		return 5.67e-8 * math.Pow(h.Temperature+273.15, 4)
	})
	require.Equal(t, s.Account.SkyFromCloud, asked)
	for _, v := range s.Sky {
		require.Greater(t, v, 200.0)
	}
	p := read(t, file(t, "pvgis_week.csv"), Options{})
	p.FillSky(func(SkyHour) float64 { t.Error("the file has it"); return 0 })
}

// TestReadingWhatWasWritten goes round with each format.
func TestReadingWhatWasWritten(t *testing.T) {
	for _, name := range []string{"tmy3_week.csv", "pvgis_week.csv"} {
		s := read(t, file(t, name), Options{})
		var text bytes.Buffer
		require.NoError(t, Write(&text, s))
		again := read(t, text.Bytes(), Options{})
		require.Equal(t, s.Site, again.Site)
		require.True(t, again.Typical)
		for i := range s.Time {
			require.True(t, s.Time[i].Equal(again.Time[i]))
			require.InDelta(t, s.Temperature[i], again.Temperature[i], 0.0051)
			require.InDelta(t, s.RelativeHumidity[i], again.RelativeHumidity[i], 0.001)
			require.InDelta(t, s.Direct[i], again.Direct[i], 0.051)
			require.InDelta(t, s.Wind[i], again.Wind[i], 0.0051)
			if s.Account.SkyRead > 0 {
				require.InDelta(t, s.Sky[i], again.Sky[i], 0.051)
			}
		}
		var twice bytes.Buffer
		require.NoError(t, Write(&twice, again))
		require.Equal(t, text.String(), twice.String())
	}
}

func BenchmarkReadYear(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, err := Greensboro()
		require.NoError(b, err)
	}
}

func BenchmarkReadTMY3(b *testing.B) {
	text := tmy3Text(readings(b))
	b.ReportAllocs()
	for b.Loop() {
		_, err := Read(bytes.NewReader(text), Options{})
		require.NoError(b, err)
	}
}

// TestRoundingIsForgiven: a dew point may lie a tenth above the temperature.
func TestRoundingIsForgiven(t *testing.T) {
	text := func(td string) []byte {
		return []byte(site + "time,temperature_c,dew_point_c,global_w_m2\n2001-01-01T00:00,5," + td + ",0\n")
	}
	s := read(t, text("5.1"), Options{})
	require.Equal(t, 5.0, s.DewPoint[0])
	require.Equal(t, 1.0, s.RelativeHumidity[0])
	_, err := Read(bytes.NewReader(text("5.102")), Options{})
	require.ErrorContains(t, err, "above the temperature of 5 °C")
}

// A file in UTC of a far place is that of the place's own standard time.
func TestAZoneFarFromTheSun(t *testing.T) {
	own := read(t, []byte(sited("-75", "-5", 0)), Options{})
	utc := read(t, []byte(sited("-75", "0", 5)), Options{})
	require.True(t, utc.Account.ZoneFromLongitude)
	require.False(t, own.Account.ZoneFromLongitude)
	require.InDelta(t, -5, utc.Site.Zone, 0)
	require.Equal(t, own.Time[0].Format(time.RFC3339), utc.Time[0].Format(time.RFC3339))
	require.Equal(t, own.Temperature, utc.Temperature)
	require.Equal(t, own.Direct, utc.Direct)
}

// sited are two days at a longitude, in a zone whose clock is so many hours ahead of
// UTC-5.
func sited(longitude, zone string, ahead int) string {
	text := "# latitude_deg: 40\n# longitude_deg: " + longitude + "\n# zone_h: " + zone + "\n# altitude_m: 0\ntime,temperature_c,relative_humidity,global_w_m2\n"
	at := time.Date(2019, 6, 1, ahead, 0, 0, 0, time.UTC)
	for i := range 48 {
		text += fmt.Sprintf("%s,%d,0.7,%d\n", at.Add(time.Duration(i)*time.Hour).Format("2006-01-02T15:04"), i%7, max(0, 8-(i%24-12)*(i%24-12))*50)
	}
	return text
}
