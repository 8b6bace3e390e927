package airheat

import (
	"testing"

	"cloche.example/internal/speed"
)

// The pace of the machine, to read the other benchmarks by.
func BenchmarkMathExp(b *testing.B)  { speed.MathExp(b) }
func BenchmarkMathSqrt(b *testing.B) { speed.MathSqrt(b) }

var sinkFlow float64

func benchSystem(b testing.TB) (System, Fan) {
	s, err := NewSystem(
		Segment{Section: Round(0.315), Length: 4, Roughness: 0.15e-3, Fittings: 1.3},
		Segment{Section: Rectangular(0.35, 0.2), Length: 6, Roughness: 0.15e-3, Fittings: 0.6},
		Segment{Section: Round(0.28), Length: 3, Roughness: 0.9e-3, Fittings: 0.4},
		Segment{Section: Round(0.25), Length: 8, Roughness: 0.15e-3, Fittings: 0.9},
		Segment{Section: Round(0.25), Length: 2, Roughness: 3e-3, Fittings: 1.1},
	)
	if err != nil {
		b.Fatal(err)
	}
	f, err := NewFanTable([]float64{0, 0.12, 0.24, 0.36, 0.48, 0.6, 0.7}, []float64{240, 225, 236, 220, 175, 90, 0})
	if err != nil {
		b.Fatal(err)
	}
	return s, f
}

// Fan and five segments: three or four evaluations of the system, each of five
// logarithms and 30 divisions. Those alone, one behind the other in each
// segment, take about 0.9 of its 1.3 µs.
func BenchmarkOperatingPoint(b *testing.B) {
	s, f := benchSystem(b)
	var airs [16]AirProperties
	for i := range airs {
		airs[i] = DryAir(-10+5*float64(i), 101325)
	}
	d := DefaultFanDrive()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		d.Speed = 0.8 + 0.02*float64(i&15)
		p, err := s.OperatingPoint(f, d, airs[i&15])
		if err != nil {
			b.Fatal(err)
		}
		sinkFlow += p.Flow
		i++
	}
}

func tube150() (PerforatedTube, TubeSupply) {
	t := DefaultPerforatedTube()
	t.Diameter, t.LeadIn, t.Pitch, t.Positions, t.HolesPerRow, t.HoleDiameter = 0.5, 2, 0.2, 150, 2, 0.03
	return t, TubeSupply{Flow: 1.1, Temperature: 45, House: 15, Properties: DryAir(45, 101325)}
}

// 150 rows with the end pressure solved: two marches, each a chain of 150 square
// roots and what hangs on them, 3 µs; before each the roots of Colebrook's
// equation, five divisions a row, 3 to 4 µs; after them the heat, 3.5 µs.
func BenchmarkTube150(b *testing.B) {
	t, s := tube150()
	dst := make([]TubePosition, t.Positions)
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		s.Flow = 0.6 + 0.05*float64(i&15)
		f, err := t.SolveTo(dst, s)
		if err != nil {
			b.Fatal(err)
		}
		sinkFlow += f.FanPressure
		i++
	}
}
