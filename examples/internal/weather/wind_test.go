package weather

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// An excerpt of TMY3 gives the hours of the file itself.
func TestExcerptOfTMY3(t *testing.T) {
	packed, err := os.ReadFile("testdata/greensboro_tmy3.csv.gz")
	require.NoError(t, err)
	_, err = Read(bytes.NewReader(packed), Options{})
	require.ErrorContains(t, err, "the file names no site")
	whole, err := Read(bytes.NewReader(tmy3Text(readings(t))), Options{})
	require.NoError(t, err)
	s, err := Read(bytes.NewReader(packed), Options{Site: &whole.Site})
	require.NoError(t, err)
	require.False(t, s.SiteInFile)
	require.Equal(t, whole.Time, s.Time)
	for i, v := range [][]float64{whole.Temperature, whole.RelativeHumidity, whole.Pressure, whole.Wind, whole.Global, whole.Direct, whole.Diffuse, whole.Cloud} {
		require.Equal(t, v, [][]float64{s.Temperature, s.RelativeHumidity, s.Pressure, s.Wind, s.Global, s.Direct, s.Diffuse, s.Cloud}[i])
	}
	require.Nil(t, s.WindFrom)
	_, err = Read(bytes.NewReader(packed), Options{Site: &Site{Latitude: 50, Longitude: 14, Zone: 1}})
	require.ErrorContains(t, err, "the file names no site: is the one that it was given")
	for text, want := range map[string]string{
		"month,day,hour_ending,dry_bulb_c,dry_bulb_c\n":                   "two columns dry_bulb_c",
		"month,day,hour_ending,dry_bulb_f\n":                              `unknown column "dry_bulb_f"`,
		"month,day,hour_ending,dry_bulb_c\n1,1,25,3\n":                    "line 2: \"1\",\"1\",\"25\" is no month",
		"month,day,hour_ending,dry_bulb_c\n2,30,1,3\n":                    "is no month",
		"month,day,hour_ending,dry_bulb_c\n1,1,1\n":                       "3 columns, but the first line names 4",
		"month,day,hour_ending,dry_bulb_c\n1,1,1,x\n":                     "dry_bulb_c is \"x\"",
		"month,day,hour_ending,dry_bulb_c,wind_from_deg\n1,1,1,3,400\n":   "wind_from_deg",
		"month,day,hour_ending,dry_bulb_c,dew_point_c\n1,1,1,3,1\n":       "no column with the global radiation",
		"month,day,hour_ending,dry_bulb_c\n1,1,1,3\n1,1,1,3\n":            "comes twice",
		"month,day,hour_ending,dry_bulb_c,pressure_mbar\n1,1,1,3,99300\n": "pressure_mbar",
	} {
		_, err := Read(strings.NewReader(text), Options{Site: &whole.Site})
		require.ErrorContains(t, err, want, text)
	}
}

// The direction of an hour is that of the mean wind of its two readings, round the
// circle; one that is missing leaves the other, and stays unknown without it.
func TestWhenceTheWindBlows(t *testing.T) {
	rows := readings(t)[:8]
	text := strings.Replace(string(tmy3Text(rows)), ",Wspd (m/s)\n", ",Wspd (m/s),Wdir (degrees)\n", 1)
	lines := strings.Split(strings.TrimSpace(text), "\n")
	wind := []struct{ v, from string }{{"3", "350"}, {"3", "10"}, {"1", "90"}, {"3", "0"}, {"0", "180"}, {"2", "-9900"}, {"2", "-9900"}, {"4", "270"}}
	for i, w := range wind {
		cells := strings.Split(lines[2+i], ",")
		cells[len(cells)-1] = w.v
		lines[2+i] = strings.Join(append(cells, w.from), ",")
	}
	s := read(t, []byte(strings.Join(lines, "\n")), Options{})
	require.Equal(t, 350.0, s.WindFrom[0], "no reading before it")
	require.InDelta(t, 0, min(s.WindFrom[1], 360-s.WindFrom[1]), 1e-9, "not 180")
	require.InDelta(t, 27.2395, s.WindFrom[2], 1e-4) // atan((3 sin 10° + 1)/(3 cos 10°))
	require.InDelta(t, 18.4349488, s.WindFrom[3], 1e-6)
	require.InDelta(t, 0, s.WindFrom[4], 1e-9, "the other is calm")
	require.Equal(t, 180.0, s.WindFrom[5])
	require.NotEqual(t, s.WindFrom[6], s.WindFrom[6], "unknown")
	require.Equal(t, 270.0, s.WindFrom[7])

	var b bytes.Buffer
	require.NoError(t, Write(&b, s))
	again := read(t, b.Bytes(), Options{})
	for i, v := range s.WindFrom {
		if v == v {
			require.InDelta(t, v, again.WindFrom[i], 0.51)
		} else {
			require.NotEqual(t, again.WindFrom[i], again.WindFrom[i])
		}
	}
	head := site + "time,temperature_c,relative_humidity,global_w_m2,wind_m_s,wind_from_deg\n"
	row := "2001-07-01T%02d:00,10,0.8,0,2,%s\n"
	own := read(t, []byte(head+fmt.Sprintf(row, 0, "200")+fmt.Sprintf(row, 1, "")), Options{})
	require.Equal(t, 200.0, own.WindFrom[0])
	require.NotEqual(t, own.WindFrom[1], own.WindFrom[1])
	require.NotNil(t, read(t, file(t, "pvgis_week.csv"), Options{}).WindFrom)
}
