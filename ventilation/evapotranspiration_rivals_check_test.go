package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/internal/sun"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// altitudePressure is [Asce05] eq. 34, that of [FAO56] eq. 7, in Pa.
func altitudePressure(z float64) float64 { return 101300 * math.Pow((293-0.0065*z)/293, 5.26) }

// Thirty hours by two surfaces of [Asce05] appendix C.
func TestASCEHoursAtGreeley(t *testing.T) {
	lines := check.CSV(t, "asce.csv")
	var short, tall []check.Row
	for _, l := range lines[1:] {
		in := check.Floats(t, l[1:5])
		short = append(short, check.Row{Where: "Asce05.appC/short/" + l[0], In: in, Printed: l[5], Tol: 0.0055, Why: "net radiation, vapour and wind as printed, rounded"})
		tall = append(tall, check.Row{Where: "Asce05.appC/tall/" + l[0], In: in, Printed: l[6], Tol: 0.0075, Why: "net radiation, vapour and wind as printed, rounded"})
	}
	require.Len(t, short, 30)
	hour := func(s ventilation.ASCEReference) func(...float64) float64 {
		return func(in ...float64) float64 {
			e, err := s.Hour(ventilation.Grass{
				Temperature: in[0], Saturation: psychro.FAO56Saturation(in[0]), Vapour: 1000 * in[1],
				Net: 1e6 * in[2], Wind: in[3], Pressure: altitudePressure(1462.4),
			})
			require.NoError(t, err)
			require.Equal(t, e.ETo, e.Radiation+e.Dryness)
			return e.ETo
		}
	}
	check.Run(t, short, hour(ventilation.ShortReference))
	check.Run(t, tall, hour(ventilation.TallReference))
	// The first hour of the table, computed apart to more digits, pins what the
	// rounded prints leave loose; and a night hour.
	check.Run(t, []check.Row{
		{Where: "Asce05 eq. 1 computed apart/16:00", In: []float64{30.9, 1.09, 1.44, 3.74}, Printed: "0.612378", Tol: 5e-6, Why: "the source's 2503 in the slope is 2e-5 below that of FAO56"},
		{Where: "Asce05 eq. 1 computed apart/21:00", In: []float64{22.9, 1.2, -0.23, 0.96}, Printed: "0.01042378", Tol: 2e-6, Why: "the same"},
	}, hour(ventilation.ShortReference))
	check.Run(t, []check.Row{
		{Where: "Asce05 eq. 1 computed apart/tall 16:00", In: []float64{30.9, 1.09, 1.44, 3.74}, Printed: "0.8209448", Tol: 5e-6, Why: "the same"},
		{Where: "Asce05 eq. 1 computed apart/tall 21:00", In: []float64{22.9, 1.2, -0.23, 0.96}, Printed: "0.02082393", Tol: 2e-6, Why: "the same"},
	}, hour(ventilation.TallReference))
	_, err := ventilation.ASCEReference(7).Hour(ventilation.Grass{Net: 1e9})
	requireFields(t, err, "ASCEReference", "Net", "Pressure")
	require.Equal(t, "tall", ventilation.TallReference.String())
}

// An hour at Fallon, Nevada, 18:00 to 19:00 UTC on 1 July 2015, from what the
// station measured, radiation and all: 91.80 °F, 61.16 langleys, 3.33 miles an hour
// 3 m up, 1208.5 m above the sea. A clear sky lets through 0.75 + 2e-5 z.
func TestASCEHourFromTheWeather(t *testing.T) {
	const z = 1208.5
	outside, err := sun.Period{Latitude: 39.4575, Longitude: -118.77388, Day: 182, From: 18 * time.Hour, Until: 19 * time.Hour}.Extraterrestrial()
	require.NoError(t, err)
	warm, solar := (91.80-32)/1.8, 61.16*41868
	h := ventilation.GrassHour{
		Temperature: warm, Humidity: 1199.00996 / psychro.FAO56Saturation(warm), Daylight: true,
		Solar: solar, Clearness: solar / ((0.75 + 2e-5*z) * outside),
		Wind: ventilation.FAO56WindAtTwoMetres(3.33*0.44704, 3), Pressure: altitudePressure(z),
	}
	g, err := h.Grass()
	require.NoError(t, err)
	const why = "the sun outside the atmosphere is 4.4e-4 higher there, the slope of the vapour curve 2e-5 lower"
	check.Run(t, []check.Row{
		{Where: "Asce05 by a test of refet/outside the atmosphere", In: []float64{outside / 1e6}, Printed: "4.30824147948541", Tol: 2e-3, Why: "the source rounds declination and longitude otherwise"},
	}, func(in ...float64) float64 { return in[0] })
	check.Run(t, []check.Row{
		{Where: "Asce05 by a test of refet/short at Fallon", In: []float64{float64(ventilation.ShortReference)}, Printed: "0.606351541", Tol: 4e-5, Why: why},
		{Where: "Asce05 by a test of refet/tall at Fallon", In: []float64{float64(ventilation.TallReference)}, Printed: "0.719636961", Tol: 4e-5, Why: why},
	}, func(in ...float64) float64 {
		e, err := ventilation.ASCEReference(in[0]).Hour(g)
		require.NoError(t, err)
		return e.ETo
	})
}

func TestPriestleyTaylor(t *testing.T) {
	at := func(g ventilation.Grass, alpha float64) float64 {
		e, err := g.PriestleyTaylor(alpha)
		require.NoError(t, err)
		return e
	}
	check.Run(t, []check.Row{{Where: "McMahon13.S19.109 by a test of pyet", In: []float64{11.5, 8.6401, 546, 1.26}, Printed: "2.6083", Tol: 5e-4, Why: "gamma is 0.6647e-3 of the pressure there, 0.665e-3 in FAO56"}},
		func(in ...float64) float64 {
			return at(ventilation.Grass{Temperature: in[0], Net: 1e6 * in[1], Pressure: altitudePressure(in[2])}, in[3]) / 0.408 / 2.45
		})
	check.Run(t, []check.Row{{Where: "PriestleyT72/an hour inside, computed apart", In: []float64{24, 300, 1.26}, Printed: "404.521", Tol: 1.1, Why: "the row's latent heat is that of 24 °C, 2.4443 MJ/kg"}},
		func(in ...float64) float64 {
			return 1000 * at(ventilation.Grass{Temperature: in[0], Net: 3600 * in[1], Pressure: 67.3811 / 0.665e-3}, in[2])
		})
	_, err := ventilation.Grass{Pressure: 1}.PriestleyTaylor(3)
	requireFields(t, err, "alpha", "Pressure")
}

func TestSunAndDeficit(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Baille94 form/day", In: []float64{0.5, 25, 0.64, 3, 400, 1}, Printed: "360.9971"},
		{Where: "Baille94 form/night", In: []float64{0.5, 15, 0.64, 3, 0, 0.5}, Printed: "33.06122"},
		{Where: "Baille94 form/thin", In: []float64{0.2, 20, 0.64, 2, 300, 1.2}, Printed: "134.1812"},
	}, func(in ...float64) float64 {
		f, err := ventilation.SunAndDeficit{A: in[0], B: in[1] / 1000, Extinction: in[2], LAI: in[3]}.Solve(in[4], 1000*in[5])
		require.NoError(t, err)
		require.InEpsilon(t, f.Latent, f.BySun+f.ByDeficit, 1e-14)
		return 3.6e6 * f.Transpired
	})
	_, err := ventilation.SunAndDeficit{A: 2, B: 25, Extinction: 2, LAI: 13}.Solve(-1, -1)
	requireFields(t, err, "A", "B", "Extinction", "LAI", "sun", "deficit")
}
