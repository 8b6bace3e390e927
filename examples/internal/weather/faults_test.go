package weather

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"cloche.example/internal/domain"
	"github.com/stretchr/testify/require"
)

const site = "# latitude_deg: 50\n# longitude_deg: 10\n# zone_h: 1\n# altitude_m: 300\n"

const names = "time,temperature_c,relative_humidity,global_w_m2,wind_m_s\n"

// text is a file of Cloche's with one line for each hour.
func text(rows ...string) string { return site + names + strings.Join(rows, "\n") + "\n" }

// days returns rows of n hours from a start.
func days(start string, n int) []string {
	at, err := time.Parse("2006-01-02T15:04", start)
	if err != nil {
		panic(err)
	}
	rows := make([]string, n)
	for i := range rows {
		rows[i] = fmt.Sprintf("%s,%d,0.8,0,2", at.Add(time.Duration(i)*time.Hour).Format("2006-01-02T15:04"), i%10)
	}
	return rows
}

func TestFaultsAreNamedByLine(t *testing.T) {
	ok := days("2001-01-01T00:00", 4)
	with := func(i int, row string) string {
		rows := append([]string(nil), ok...)
		rows[i] = row
		return text(rows...)
	}
	swapped := text(ok[0], ok[2], ok[1], ok[3])
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"humidity above 100", with(1, "2001-01-01T01:00,1,1.01,0,2"), []string{"line 7: relative_humidity is 1.01, allowed more than 0, at most 1 (fraction)"}},
		{"humidity 0", with(1, "2001-01-01T01:00,1,0,0,2"), []string{"line 7: relative_humidity is 0, allowed more than 0"}},
		{"humidity that no air reaches", with(1, "2001-01-01T01:00,47,0.7,0,2"), []string{"line 7: relative_humidity makes a dew point of 40.1 °C at 47 °C, allowed at most 40 °C"}},
		{"humidity in per cent", with(1, "2001-01-01T01:00,1,80,0,2"), []string{"line 7: relative_humidity is 80, allowed more than 0, at most 1 (fraction)"}},
		{"wind 999", with(2, "2001-01-01T02:00,1,0.8,0,999"), []string{"line 8: wind_m_s is 999, allowed 0 to 75 m/s"}},
		{"kelvin", with(0, "2001-01-01T00:00,280,0.8,0,2"), []string{"line 6: temperature_c is 280, allowed -90 to 60 °C"}},
		{"sun at night", with(0, "2001-01-01T00:00,1,0.8,300,2"), []string{"line 6: global_w_m2 is 300 W/m² in the hour from 2001-01-01 00:00, when the sun is down; is the time zone right?"}},
		{"negative sun", with(0, "2001-01-01T00:00,1,0.8,-11,2"), []string{"line 6: global_w_m2 is -11, allowed 0 to 1500 W/m²"}},
		{"no number", with(3, "2001-01-01T03:00,1,0.8,a lot,2"), []string{`line 9: global_w_m2 is "a lot", not a number`}},
		{"-9999", with(1, "2001-01-01T01:00,-9999,0.8,0,2"), []string{"line 7: temperature_c has no value for 1 hour; gaps of at most 3 hours can be filled on request"}},
		{"9999", with(1, "2001-01-01T01:00,1,0.8,9999,2"), []string{"line 7: global_w_m2 has no value for 1 hour"}},
		{"empty", with(1, "2001-01-01T01:00,1,,0,2"), []string{"line 7: relative_humidity has no value for 1 hour"}},
		{"NaN", with(1, "2001-01-01T01:00,1,0.8,0,NaN"), []string{"line 7: wind_m_s has no value for 1 hour"}},
		{"infinite", with(1, "2001-01-01T01:00,1,0.8,0,Inf"), []string{"line 7: wind_m_s is +Inf"}},
		{"missing hour", text(ok[0], ok[1], ok[3]), []string{"line 8: 1 hour is missing before it, from 2001-01-01 02:00 on; gaps of at most 3 hours can be filled on request"}},
		{"missing day", text(append(days("2001-01-01T00:00", 2), days("2001-01-02T03:00", 2)...)...), []string{"line 8: 25 hours are missing before it, from 2001-01-01 02:00 on"}},
		{"repeated hour", text(ok[0], ok[1], ok[1], ok[2]), []string{"line 8: the hour 2001-01-01 01:00 comes twice, first in line 7"}},
		{"shuffled hours", swapped, []string{"line 7: 1 hour is missing before it", "line 8: the hour 2001-01-01 01:00 stands out of order"}},
		{"half hours", text(ok[0], "2001-01-01T00:30,1,0.8,0,2"), []string{"line 7: 2001-01-01 00:30 is 30 minutes after the line before; lines must be an hour apart"}},
		{"no time", with(1, "yesterday,1,0.8,0,2"), []string{`line 7: "yesterday" is not a time`}},
		{"a year too early", with(1, "1950-12-31T01:00,1,0.8,0,2"), []string{`line 7: "1950-12-31T01:00" is a year outside 1951 to 2099`}},
		{"30 February", with(1, "2001-02-30T01:00,1,0.8,0,2"), []string{`line 7: "2001-02-30T01:00" is not a time`}},
		{"a column too many", with(1, "2001-01-01T01:00,1,0.8,0,2,"), []string{"line 7: 6 columns, but the names are 5"}},
		{"decimal commas", site + "time;temperature_c;global_w_m2\n", []string{"line 5: one column only: columns are separated by commas"}},
		{"unknown column", site + "time,temperature_c,wind_ms\n", []string{`line 5: unknown columns "wind_ms"; known are time, time_ending, temperature_c`}},
		{"column twice", site + "time,temperature_c,cloud,cloud_percent\n", []string{"line 5: cloud and cloud_percent say the same"}},
		{"time twice", site + "time,temperature_c,time_ending\n", []string{"line 5: two columns for time"}},
		{"misspelt key", "# lattitude_deg: 50\n" + text(ok...), []string{`line 1: "lattitude_deg" is no key; known are name, latitude_deg`}},
		{"key twice", "# zone_h: 2\n" + text(ok...), []string{"line 4: zone_h stands twice"}},
		{"half a site", "# latitude_deg: 50\n" + names + ok[0], []string{"the site lacks longitude_deg, zone_h, altitude_m"}},
		{"no site", names + ok[0], []string{"the file names no site: give latitude, longitude, zone and altitude"}},
		{"site on no planet", strings.Replace(text(ok...), "latitude_deg: 50", "latitude_deg: 95", 1), []string{"Site.Latitude is 95, allowed -90 to 90 degree"}},
		{"site no number", strings.Replace(text(ok...), "latitude_deg: 50", "latitude_deg: 50 N", 1), []string{`latitude_deg is "50 N", not a number`}},
		{"no humidity", site + "time,temperature_c,global_w_m2\n2001-01-01T00:00,1,0\n", []string{"no column with the humidity"}},
		{"no temperature", site + "time,dew_point_c,global_w_m2,wind_m_s\n2001-01-01T00:00,1,0,1\n", []string{"no column with the temperature"}},
		{"no sun", site + "time,dew_point_c,temperature_c\n2001-01-01T00:00,1,1\n", []string{"no column with the global radiation"}},
		{"dew above air", site + "time,dew_point_c,temperature_c,global_w_m2\n2001-01-01T00:00,3,1,0\n", []string{"line 6: dew_point_c is 3 °C, above the temperature of 1 °C"}},
		{"no hours", site + names, []string{"the file has no hours"}},
		{"half a year without time", site + "temperature_c,relative_humidity,global_w_m2\n1,0.8,0\n", []string{"1 hours without a column for time"}},
		{"mixed offsets", text("2001-01-01T00:00Z,1,0.8,0,2", ok[1]), []string{"some times have an offset and some have none"}},
		{"two years", text(days("2001-01-01T00:00", 8785)...), []string{"line 8790: the file has more than the 8784 hours of a leap year"}},
		{"all together", text("2001-01-01T00:00,1,1.2,0,2", "2001-01-01T01:00,100,0.5,0,200"), []string{"line 6: relative_humidity is 1.2", "line 7: temperature_c is 100", "line 7: wind_m_s is 200"}},
		{"something else", "a,b\nc,d\n", []string{"this is no weather file known here; known are"}},
		{"one line", "hello", []string{"this is no weather file known here"}},
		{"nothing", "", []string{"the file is empty"}},
		{"only lines", strings.Repeat("\n", 10), []string{"the file is empty"}},
		{"endless comments", strings.Repeat("# a: b\n", 300), []string{"line 201: no line with the names of the columns yet"}},
		{"TMY3 without hours", "1,x,NC,-5,36,-79,273\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2)\n", []string{"the file has no hours"}},
		{"TMY3 without station", "1,x\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2)\n", []string{"line 1: the first line of TMY3 names station"}},
		{"PVGIS without place", "Latitude (decimal degrees): 45\ntime(UTC),T2m\n", []string{`line 2: no line "Longitude (decimal degrees):" with a number above the table`}},
		{"PVGIS without table", "Latitude (decimal degrees): 45\n", []string{`no line "time(UTC),T2m,..."`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read(strings.NewReader(c.text), Options{})
			require.Error(t, err)
			require.Nil(t, s)
			for _, w := range c.want {
				require.ErrorContains(t, err, w)
			}
		})
	}
}

func TestFaultsOfTheOtherFormats(t *testing.T) {
	tmy3, pvgis := string(file(t, "tmy3_week.csv")), string(file(t, "pvgis_week.csv"))
	for _, c := range []struct{ name, text, old, new, want string }{
		{"TMY3 humidity", tmy3, ",77,A,7,993", ",101,A,7,993", "line 3: RHum (%) is 101, allowed more than 0, at most 100 %"},
		{"TMY3 missing", tmy3, "10.0,A,7,6.1,A,7,77", "-9900,A,7,6.1,A,7,77", "line 3: Dry-bulb (C) has no value for 1 hour"},
		{"TMY3 pressure", tmy3, "993,A,7,200", "99300,A,7,200", "line 3: Pressure (mbar) is 99300, allowed 300 to 1100 mbar"},
		{"TMY3 date", tmy3, "01/01/1988,03:00", "01/01/1988,03:30", `line 5: "01/01/1988","03:30" is no date and hour`},
		{"TMY3 columns", tmy3, "01/01/1988,03:00,0", "01/01/1988,03:00", "line 5: 70 columns, but the second line names 71"},
		{"TMY3 gap", tmy3, "01/01/1988,03:00", "01/01/1988,04:00", "line 5: 1 hour is missing"},
		{"TMY3 zone", tmy3, "NC,-5.0", "NC,7.0", "when the sun is down; is the time zone right?"},
		{"PVGIS humidity", pvgis, ",94.38,", ",194.38,", "line 19: RH is 194.38, allowed more than 0, at most 100 %"},
		{"PVGIS time", pvgis, "20180101:0300", "20180101:0330", `line 22: "20180101:0330" is no time`},
		{"PVGIS torn", pvgis, "20180102:0300", "\n20180102:0300", "an hour behind the empty line that ends the table"},
		{"PVGIS text between", pvgis, "20180102:0300", "hello\n20180102:0300", "1 columns, but the table's head names 10"},
		{"PVGIS offset", pvgis, "(h): 0.1761", "(h): 1761", "Irradiance Time Offset (h) is 1761, allowed -0.5 to 1 h"},
	} {
		t.Run(c.name, func(t *testing.T) {
			changed := strings.Replace(c.text, c.old, c.new, 1)
			require.NotEqual(t, c.text, changed)
			_, err := Read(strings.NewReader(changed), Options{})
			require.ErrorContains(t, err, c.want)
		})
	}
}

// TestOnlySoManyFaultsAreNamed, and the rest counted.
func TestOnlySoManyFaultsAreNamed(t *testing.T) {
	rows := days("2001-01-01T00:00", 100)
	for i := range rows {
		rows[i] = strings.Replace(rows[i], ",0.8,", ",8,", 1)
	}
	_, err := Read(strings.NewReader(text(rows...)), Options{})
	require.Len(t, strings.Split(err.Error(), "\n"), mostFaults+1)
	require.ErrorContains(t, err, "and 80 more faults")
	var e *domain.RangeError
	require.True(t, errors.As(err, &e))
	require.Equal(t, "relative_humidity", e.Field)
}

func TestFilling(t *testing.T) {
	rows := days("2001-01-01T00:00", 12)                       // 0, 1, 2 ... °C
	rows[2] = "2001-01-01T02:00,,0.8,0,2"                      // one value
	rows[3] = "2001-01-01T03:00,-9999,0.8,0,2"                 // and the next
	gap := append(append([]string(nil), rows[:6]...), rows[9]) // 6 to 8 are not there
	gap = append(gap, rows[10:]...)
	s, err := Read(strings.NewReader(text(gap...)), Options{Fill: true})
	require.NoError(t, err)
	require.Equal(t, 12, s.Hours())
	for i, v := range s.Temperature {
		want := float64(i % 10)
		require.InDelta(t, want, v, 1e-12, "a straight line keeps a straight line")
	}
	require.Equal(t, 5, s.Account.FilledHours)
	require.Equal(t, []Filled{{12, 3, "all"}, {8, 2, "temperature_c"}}, s.Account.Filled)
	require.Contains(t, s.Account.Lines(), "5 hours filled, in straight lines between the hours beside them")

	_, err = Read(strings.NewReader(text(append(rows[:2:2], rows[6:]...)...)), Options{Fill: true})
	require.ErrorContains(t, err, "line 8: 4 hours are missing before it")
	_, err = Read(strings.NewReader(text("2001-01-01T00:00,,0.8,0,2", rows[1])), Options{Fill: true})
	require.ErrorContains(t, err, "at the end of the file, where nothing can be filled")
}

// Missing values are named together with gaps and hours out of order, and a value
// that was refused is not called missing besides.
func TestAllFaultsTogether(t *testing.T) {
	rows := days("2001-01-01T00:00", 24)
	rows[2] = "2001-01-01T02:00,,0.8,0,2"
	rows[5] = "2001-01-01T05:00,1,8,0,2"
	rows[9], rows[10] = rows[10], rows[9]
	_, err := Read(strings.NewReader(text(append(rows[:14:14], rows[15:]...)...)), Options{})
	for _, said := range []string{"line 8: temperature_c has no value", "line 11: relative_humidity is 8", "out of order", "missing before it"} {
		require.ErrorContains(t, err, said)
	}
	require.NotContains(t, err.Error(), "relative_humidity has no value")
}

// TestYearsOfEveryKind reads whole years that begin in another month, leap
// years, and those in other zones.
func TestYearsOfEveryKind(t *testing.T) {
	read := func(s string) *Series {
		t.Helper()
		got, err := Read(strings.NewReader(s), Options{})
		require.NoError(t, err)
		return got
	}
	july := read(text(days("2019-07-01T00:00", 8784)...))
	require.True(t, july.Whole())
	require.Equal(t, "2020-06-30T23:00:00+01:00", july.Time[8783].Format(time.RFC3339))

	leap := read(text(append(days("2020-01-01T00:00", 59*24), days("2020-03-01T00:00", 306*24)...)...))
	require.True(t, leap.Account.LeapDayLeftOut)
	require.Equal(t, 8760, leap.Hours())

	utc := days("2019-01-01T00:00", 48)
	for i := range utc {
		utc[i] = strings.Replace(utc[i], ":00,", ":00Z,", 1)
	}
	got := read(text(utc...))
	require.Equal(t, "2019-01-01T01:00:00+01:00", got.Time[0].Format(time.RFC3339))

	ending := read(strings.Replace(text(days("2019-01-01T01:00", 24)...), "time,", "time_ending,", 1))
	require.Equal(t, "2019-01-01T00:00:00+01:00", ending.Time[0].Format(time.RFC3339))

	summer := []string{"2019-10-27T01:00+02:00,1,0.8,0,2", "2019-10-27T02:00+02:00,1,0.8,0,2", "2019-10-27T02:00+01:00,1,0.8,0,2"}
	require.Equal(t, "2019-10-27T02:00:00+01:00", read(text(summer...)).Time[2].Format(time.RFC3339))

	bare := site + "temperature_c,relative_humidity,global_w_m2\n" + strings.Repeat("1,0.8,0\n", 8784)
	require.Equal(t, "2004-12-31T23:00:00+01:00", read(bare).Time[8783].Format(time.RFC3339))

	place := Site{"the plan's", 50, 10, 1, 300}
	own, err := Read(strings.NewReader(names+strings.Join(days("2019-01-01T01:00", 2), "\n")), Options{Site: &place})
	require.NoError(t, err)
	require.False(t, own.SiteInFile)
	require.Equal(t, place, own.Site)
}

// TestAPVGISYearIsTurned: a whole year in UTC begins with the local year, and
// no hour is lost.
func TestAPVGISYearIsTurned(t *testing.T) {
	for _, zone := range []float64{-8, 0, 1, 5.5, 12} {
		var b strings.Builder
		fmt.Fprintf(&b, "Latitude (decimal degrees): 50\nLongitude (decimal degrees): %g\nElevation (m): 100\nIrradiance Time Offset (h): 0.5\ntime(UTC),T2m,RH,G(h),SP\n", 15*zone)
		at := time.Date(2018, 1, 1, 0, 0, 0, 0, time.UTC)
		for i := range 8760 {
			fmt.Fprintf(&b, "%s,%g,80,0,99000\n", at.Format("20060102:1504"), float64(i)/200)
			at = at.Add(time.Hour)
		}
		s, err := Read(strings.NewReader(b.String()), Options{Zone: &zone})
		require.NoError(t, err)
		require.Equal(t, 8760, s.Hours())
		require.Equal(t, 2001, s.Time[0].Year())
		require.Equal(t, 0, s.Time[0].Hour())
		require.Equal(t, 1, s.Time[0].YearDay())
		require.Equal(t, 2001, s.Time[8759].Year())
		for i, at := range s.Time {
			k := math.Floor(at.Sub(time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)).Hours())
			k = math.Mod(k+8760, 8760)
			want := (k + 0.5) / 200
			if k == 8759 {
				want = 8759.0 / 400
			}
			require.InDelta(t, want, s.Temperature[i], 1e-9, "zone %g hour %d", zone, i)
		}
	}
}
