package psychro_test

import (
	"testing"

	"cloche.example/internal/speed"
	"cloche.example/psychro"
)

// The figures asked of this package hold for a core on which math.Exp costs
// 15 ns; these two print what it costs here. Of the 15, 5 are the loop's. The
// limits below count what a kernel cannot do without, at its bare throughput
// on that core: a division 1.5 ns, a square root 2, an exponential 10, a
// logarithm 15. Measured is what the benchmark then shows; the rest is
// polynomials, and operations that must wait for each other.
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

// Limit: 1 square root and 10 divisions (over ice an exponential and 9), 17 ns.
// Saturation pressure 1 and 2, enhancement factor 2, humidity ratio 1, enthalpy
// 2, volume 3. Measured 117: root and four divisions stand in one row, 35 ns,
// and polynomials of 60 terms follow.
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

// Limit: 2 square roots and 18 divisions, 31 ns (over ice an exponential in
// place of a root). Guess 1 and 7, enthalpy 2, balance with slope and bend 1
// and 7, step 2. Measured 275, nine times that: guess and balance stand in one
// row, and the balance has polynomials of 100 terms. One air in four needs a
// second balance.
func BenchmarkWetBulb(b *testing.B) {
	_, _, _, s := airs()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += s[i&(tableSize-1)].WetBulb()
	}
	speed.Sink = sum
}

// Limit: 3 square roots and 5 divisions over liquid, 14 ns; a logarithm and 2
// divisions over ice, 18 ns. Measured 100, six times that: nearly all of it
// stands in one row, and the factor has polynomials of 40 terms.
func BenchmarkDewPoint(b *testing.B) {
	_, _, _, s := airs()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += s[i&(tableSize-1)].DewPoint()
	}
	speed.Sink = sum
}

// Limit: 9 square roots, 58 divisions, 3 logarithms and an exponential, 160 ns:
// the state 1 and 5; the wet bulb 2 and 16; the dew point 3 and 5; energies 1
// and 10, with the logarithms; transport 2, 11 and the exponential; ratios 11.
// Measured 680, four times that.
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

// A year of hourly wet bulbs by the batch form; divide by 8,760 for one: 375 ns
// beside the 275 of the wet bulb alone, the rest makes the state from the
// humidity ratio (1 square root and 6 divisions).
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
		psychro.WetBulbFromHumidityRatioTo(dst, temperature, ratio, 101325)
	}
	speed.Sink = dst[hours-1]
}
