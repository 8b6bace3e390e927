package psychro_test

import (
	"testing"

	"cloche.example/internal/speed"
	"cloche.example/psychro"
)

// The figures asked of this package hold for a core on which math.Exp costs
// 15 ns; these two print what it costs here.
func BenchmarkMathExp(b *testing.B)  { speed.MathExp(b) }
func BenchmarkMathSqrt(b *testing.B) { speed.MathSqrt(b) }

const tableSize = 1024

// airs is a table of inputs as a house meets them through a year: -12 to 42
// °C, 20 to 99 %, 95 to 103 kPa, in no order.
func airs() (t, rh, p [tableSize]float64, s [tableSize]psychro.State) {
	for i := range s {
		t[i] = -12 + 54*float64(i*389%tableSize)/tableSize
		rh[i] = 0.20 + 0.79*float64(i*577%tableSize)/tableSize
		p[i] = 95e3 + 8e3*float64(i*211%tableSize)/tableSize
		s[i], _ = psychro.FromRelativeHumidity(t[i], rh[i], p[i])
	}
	return t, rh, p, s
}

// Limit: one square root and three divisions for the saturation pressure (one
// exponential over ice), two divisions for the enhancement factor, one for the
// humidity ratio, two for the enthalpy, three for the volume.
func BenchmarkRealState(b *testing.B) {
	t, rh, p, _ := airs()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		k := i & (tableSize - 1)
		s, err := psychro.FromRelativeHumidity(t[k], rh[k], p[k])
		if err != nil {
			b.Fatal(err)
		}
		sum += s.HumidityRatio() + s.Enthalpy() + s.SpecificVolume()
	}
	speed.Sink = sum
}

// Limit: three evaluations of the bulb's balance, each a saturation pressure,
// an enhancement factor and an enthalpy.
func BenchmarkWetBulb(b *testing.B) {
	_, _, _, s := airs()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += s[i&(tableSize-1)].WetBulb()
	}
	speed.Sink = sum
}

func BenchmarkDewPoint(b *testing.B) {
	_, _, _, s := airs()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += s[i&(tableSize-1)].DewPoint()
	}
	speed.Sink = sum
}

// Limit: the dew point, the wet bulb and the state, five logarithms, four
// exponentials and a dozen divisions.
func BenchmarkFullState(b *testing.B) {
	t, rh, p, _ := airs()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		k := i & (tableSize - 1)
		s, err := psychro.FromRelativeHumidity(t[k], rh[k], p[k])
		if err != nil {
			b.Fatal(err)
		}
		q := s.Properties()
		sum += q.WetBulb + q.DewPoint + q.Entropy
	}
	speed.Sink = sum
}

// A year of hourly wet bulbs by the batch form; divide by 8,760 for one.
func BenchmarkYear(b *testing.B) {
	const hours = 8760
	t, rh, _, _ := airs()
	temperature, ratio, dst := make([]float64, hours), make([]float64, hours), make([]float64, hours)
	for i := range temperature {
		s, err := psychro.FromRelativeHumidity(t[i%tableSize], rh[i%tableSize], 101325)
		if err != nil {
			b.Fatal(err)
		}
		temperature[i], ratio[i] = s.Temperature(), s.HumidityRatio()
	}
	b.ReportAllocs()
	for b.Loop() {
		psychro.WetBulbTo(dst, temperature, ratio, 101325)
	}
	speed.Sink = dst[hours-1]
}
