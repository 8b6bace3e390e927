package ventilation_test

import (
	"bufio"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// climate.csv holds houses solved a second time from a second writing of the
// equations, with one Lewis factor for all.
func TestClimateAgainstASecondSolution(t *testing.T) {
	f, err := os.Open("testdata/climate.csv")
	require.NoError(t, err)
	defer f.Close()
	var names []string
	n := 0
	for s := bufio.NewScanner(f); s.Scan(); {
		if strings.HasPrefix(s.Text(), "#") {
			continue
		}
		fields := strings.Split(s.Text(), ",")
		if names == nil {
			names = fields[:strings.Count(s.Text()[:strings.Index(s.Text(), ",4 openings")], ",")+1]
			continue
		}
		v := map[string]float64{}
		number := func(i int) float64 {
			x, err := strconv.ParseFloat(fields[i], 64)
			require.NoError(t, err)
			return x
		}
		for i, name := range names {
			v[name] = number(i)
		}
		var o []ventilation.Opening
		for i := len(names); i < len(names)+20 && fields[i] != ""; i += 5 {
			o = append(o, ventilation.Opening{Height: number(i), Vertical: number(i + 1), Area: number(i + 2), Discharge: number(i + 3), PressureCoefficient: number(i + 4)})
		}
		want := func(k int) float64 { return number(len(names) + 20 + k) }
		c := climate(t, ventilation.ClimateHouse{
			FloorArea: v["A"], Volume: 3 * v["A"],
			Cover: ventilation.SimpleCover{Area: v["Ac"], U: v["U"], Inside: v["hi"], Outside: v["ho"], Convection: v["hc"], Emissivity: v["em"],
				Transmittance: v["tau"], Absorptance: v["ab"], SkyFactor: v["sf"]},
			Floor: ventilation.FloorSurface{Conductance: v["g"], Convection: v["hfl"], Absorptance: v["af"], Wet: v["wet"], Resistance: v["rs"]},
			Crop: ventilation.Canopy{LAI: v["LAI"], Extinction: v["ks"], LongwaveExtinction: v["kl"], Reflectance: v["rho"],
				LeafSize: v["l"], AirSpeed: v["u"], CO2: v["CO2"], Stomata: ventilation.Stomata(v["st"])},
			Air: build(t, o...),
		})
		outside, err := psychro.FromHumidityRatio(v["To"], v["Wo"], v["p"])
		require.NoError(t, err)
		got, err := c.SolveWithLewis(
			ventilation.Weather{Air: outside, Sun: v["sun"], Wind: v["wind"], Sky: v["Tsky"], Ground: v["Tg"]},
			ventilation.Setting{Opening: v["open"], Heat: v["heat"], Mist: v["mist"], Moisture: v["moist"], Shade: v["shade"]}, 0.898)
		require.NoError(t, err)
		const kelvin = 1e-6
		if v["LAI"] > 0 {
			require.InDelta(t, want(0), got.CanopyTemperature, kelvin, "case %d", n)
		}
		require.InDelta(t, want(1), got.FloorTemperature, kelvin, "case %d", n)
		require.InDelta(t, want(2), got.CoverTemperature, kelvin, "case %d", n)
		require.InDelta(t, want(3), got.VapourPressure, 1e-4, "case %d", n)
		require.InDelta(t, want(4), got.Temperature, kelvin, "case %d", n)
		require.InEpsilon(t, want(5), got.DryAir, 1e-7, "case %d", n)
		require.InDelta(t, want(6), got.HumidityRatio, 1e-9, "case %d", n)
		require.InDelta(t, want(7), got.Pressure, 1e-6, "case %d", n)
		n++
	}
	require.Equal(t, 24, n)
}
