package weather

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/constant"
	"cloche.example/psychro"
	"github.com/stretchr/testify/require"
)

func records(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	require.NoError(t, err)
	defer f.Close()
	in := csv.NewReader(f)
	in.Comment = '#'
	rows, err := in.ReadAll()
	require.NoError(t, err)
	return rows
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// TestSkyAgainstMeasuredRadiation compares the sky of package envelope, which
// callers hand to FillSky, with the records of two pyrgeometers.
//
// On the open roof the clear sky is held within the 0.03 of emissivity, 10 W/m²,
// that envelope states for single hours, and the dull one within 10 W/m². In the clearing the
// snow cloud lies on the ground, where the sky of envelope has its base 1,000 m
// up and is too cold by 8 to 12 W/m²; and the clear sky of the formula is 33 W/m²
// colder than what is measured, since slopes and trees fill a part of the view
// there: a house between trees or hills loses less than under an open sky.
func TestSkyAgainstMeasuredRadiation(t *testing.T) {
	type sum struct{ n, bias, square float64 }
	sums := map[string]*sum{}
	add := func(kind string, hour, air, percent, p, measured float64, clear bool) {
		td := dewPointOf(air, math.Min(1, percent/100), p)
		rh := math.Min(1, psychro.SaturationPressureOver(psychro.Liquid, td)/psychro.SaturationPressure(air))
		state, err := psychro.FromRelativeHumidity(air, rh, p)
		require.NoError(t, err)
		cloud := 1.0
		if clear {
			cloud = 0
		}
		sky, err := envelope.SkyTemperature(state, time.Duration(hour*float64(time.Hour)), cloud)
		require.NoError(t, err)
		miss := constant.StefanBoltzmann*math.Pow(sky+constant.ZeroCelsius, 4) - measured
		if sums[kind] == nil {
			sums[kind] = new(sum)
		}
		s := sums[kind]
		s.n, s.bias, s.square = s.n+1, s.bias+miss, s.square+miss*miss
	}
	for _, row := range records(t, "longwave_coldeporte.csv") {
		add("clearing "+row[0], math.Mod(num(t, row[3])+5.77/15, 24), num(t, row[6])-constant.ZeroCelsius, num(t, row[7]), num(t, row[8]), num(t, row[5]), row[0] == "clear")
	}
	for _, row := range records(t, "longwave_lyngby.csv") {
		hour := num(t, row[1][:2]) + num(t, row[1][3:])/60 + 12.53/15
		add("roof "+row[0], hour, num(t, row[3]), num(t, row[5]), 100*num(t, row[4]), num(t, row[2]), row[0] == "clear")
	}
	for kind, want := range map[string][2]float64{
		"roof clear": {-10, 10}, "roof dull": {-10, 10},
		"clearing dull": {-15, 0}, "clearing snow": {-15, 0}, "clearing clear": {-45, -20},
	} {
		s := sums[kind]
		require.NotNil(t, s, kind)
		bias := s.bias / s.n
		t.Logf("%-14s %2.0f readings: bias %+.1f, scatter %.1f W/m²", kind, s.n, bias, math.Sqrt(s.square/s.n-bias*bias))
		require.GreaterOrEqual(t, bias, want[0], kind)
		require.LessOrEqual(t, bias, want[1], kind)
	}
	require.Len(t, sums, 5)
}
