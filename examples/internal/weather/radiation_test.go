package weather

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"testing"

	"cloche.example/internal/sun"
	"github.com/stretchr/testify/require"
)

// TestSunOfTMY3 compares the mean sine of the sun's elevation with the
// quotient of the file's own columns for extraterrestrial radiation, which NREL
// worked out for each hour.
func TestSunOfTMY3(t *testing.T) {
	s := read(t, file(t, "tmy3_week.csv"), Options{})
	text := file(t, "tmy3_week.csv")
	in := csv.NewReader(bytes.NewReader(text))
	in.FieldsPerRecord = -1
	rows, err := in.ReadAll()
	require.NoError(t, err)
	lit := 0
	for i, row := range rows[2:] {
		level, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		across, err := strconv.ParseFloat(row[3], 64)
		require.NoError(t, err)
		if across < 1400 { // an hour with sunrise or sunset: its normal value is a part of the hour
			continue
		}
		lit++
		require.InDelta(t, level/across, s.Sun[i].Sine, 0.002, "hour %d", i)
		require.InEpsilon(t, across, s.Sun[i].Extraterrestrial, 0.006, "of the solar constant: 1,367 there, 1,361 W/m² here")
	}
	require.Greater(t, lit, 50)
}

// TestErbsOnTheYear leaves beam and diffuse out of a real year and compares
// what Erbs makes of its global radiation.
func TestErbsOnTheYear(t *testing.T) {
	s, err := Greensboro()
	require.NoError(t, err)
	bare := *s
	bare.Direct, bare.Diffuse = nil, nil
	var text bytes.Buffer
	require.NoError(t, Write(&text, &bare))
	e := read(t, text.Bytes(), Options{})
	require.Greater(t, e.Account.Erbs, 4000)
	measured, modelled, scatter := 0.0, 0.0, 0.0
	for i, h := range e.Sun {
		if h.Lit == 0 {
			require.Zero(t, e.Direct[i])
			continue
		}
		require.InDelta(t, e.Global[i], e.Diffuse[i]+e.Direct[i]*h.Sine/h.Lit, 1e-9, "hour %d", i)
		require.GreaterOrEqual(t, e.Diffuse[i], 0.0)
		require.GreaterOrEqual(t, e.Direct[i], 0.0)
		measured += s.Diffuse[i]
		modelled += e.Diffuse[i]
		scatter += (s.Diffuse[i] - e.Diffuse[i]) * (s.Diffuse[i] - e.Diffuse[i])
	}
	t.Logf("diffuse of the year %.0f kWh/m² in the source, %.0f by Erbs; scatter %.0f W/m²", measured/1e3, modelled/1e3, math.Sqrt(scatter/float64(e.Account.Erbs)))
	require.InEpsilon(t, measured, modelled, 0.1)
}

// TestOneOfTheTwoGivesTheOther leaves out beam, then diffuse.
func TestOneOfTheTwoGivesTheOther(t *testing.T) {
	s, err := Greensboro()
	require.NoError(t, err)
	for _, c := range []struct {
		drop func(*Series)
		did  func(Account) int
	}{
		{func(x *Series) { x.Direct = nil }, func(a Account) int { return a.FromDiffuse }},
		{func(x *Series) { x.Diffuse = nil }, func(a Account) int { return a.FromDirect }},
	} {
		part := *s
		c.drop(&part)
		var text bytes.Buffer
		require.NoError(t, Write(&text, &part))
		got := read(t, text.Bytes(), Options{})
		require.Greater(t, c.did(got.Account), 4000)
		require.Zero(t, got.Account.Erbs)
		for i, h := range got.Sun {
			if h.Elevation > 10 {
				require.InDelta(t, s.Diffuse[i], got.Diffuse[i], 25, "hour %d", i)
				require.InDelta(t, s.Direct[i], got.Direct[i], 80, "hour %d", i)
			}
		}
	}
}

// TestOffsetsAroundTheHalfHour: radiation for the middle of the hour stays
// where it is; earlier instants lean on the hour after, later ones on the hour
// before.
func TestOffsetsAroundTheHalfHour(t *testing.T) {
	for offset, want := range map[string]float64{
		"0.5": 200, "0.498": 0.998*200 + 0.002*400, "0.502": 0.998*200 + 0.002*100, "1": 0.5*200 + 0.5*100, "-0.5": 400,
	} {
		text := "Latitude (decimal degrees): 0\nLongitude (decimal degrees): 0\nElevation (m): 0\nIrradiance Time Offset (h): " + offset +
			"\ntime(UTC),T2m,RH,G(h),SP\n20180101:1000,20,50,100,1e5\n20180101:1100,20,50,200,1e5\n20180101:1200,20,50,400,1e5\n"
		require.InDelta(t, want, read(t, []byte(text), Options{}).Global[1], 1e-9, offset)
	}
}

// TestRadiationThatDoesNotAddUpIsCounted makes the global radiation of six
// summer hours larger than beam and diffuse together.
func TestRadiationThatDoesNotAddUpIsCounted(t *testing.T) {
	const hours = 6
	count := func(part float64) int {
		s, err := Greensboro()
		require.NoError(t, err)
		i := 24*172 + 12
		for k := range hours {
			level := s.Direct[i+k]*s.Sun[i+k].Sine + s.Diffuse[i+k]
			s.Global[i+k] = level / part
		}
		var b bytes.Buffer
		require.NoError(t, Write(&b, s))
		before, err := Greensboro()
		require.NoError(t, err)
		return read(t, b.Bytes(), Options{}).Account.Apart - before.Account.Apart
	}
	require.Zero(t, count(1))
	require.Zero(t, count(1-0.1995))
	require.Equal(t, hours, count(1-0.2005))
}

// TestPlanesOfTheYear puts the real year on planes as programs do: hour by
// hour with the sun of the hour. What falls on a level plane is the file's own
// global radiation, and walls get what their direction lets one expect.
func TestPlanesOfTheYear(t *testing.T) {
	s, err := Greensboro()
	require.NoError(t, err)
	year := func(tilt, azimuth float64) (kWh float64) {
		for i, h := range s.Sun {
			r := sun.Radiation{
				Direct: s.Direct[i], Diffuse: s.Diffuse[i], Extraterrestrial: h.Extraterrestrial,
				Elevation: h.Elevation, Azimuth: h.Azimuth, Reflectance: 0.2,
			}.HayDavies(tilt, azimuth)
			require.False(t, math.IsNaN(r.Total()), "hour %d", i)
			kWh += r.Total() / 1000
		}
		return kWh
	}
	global := 0.0
	for _, v := range s.Global {
		global += v / 1000
	}
	level, tilted := year(0, 0), year(36, 180)
	north, east, south, west := year(90, 0), year(90, 90), year(90, 180), year(90, 270)
	t.Logf("kWh/m²: level %.0f, 36 degree south %.0f; walls north %.0f, east %.0f, south %.0f, west %.0f", level, tilted, north, east, south, west)
	require.InEpsilon(t, global, level, 0.005)
	require.Greater(t, tilted, 1.08*level)
	require.Less(t, tilted, 1.25*level)
	require.Greater(t, south, 1.1*east)
	require.InEpsilon(t, east, west, 0.15)
	require.Less(t, north, 0.6*east)
}
