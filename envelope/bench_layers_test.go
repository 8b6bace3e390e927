package envelope

import (
	"testing"

	"cloche.example/internal/speed"
)

func BenchmarkMathExp(b *testing.B) { speed.MathExp(b) }

// Three semi-transparent films with two gaps, closed to 1e-9 W/m², over a
// table of nights. Each step costs an elimination of 6 unknowns and, in each
// gap, a cube root; a solution takes 4 to 6 steps and one elimination of 6
// unknowns with 4 right-hand sides for the drives.
func BenchmarkLayers3(b *testing.B) {
	c := must([]Layer{clearFilm, infraredFilm, clearFilm}, Gap{Width: 0.1}, Gap{Width: 0.03})
	var table [64]CoverConditions
	for i := range table {
		k := DefaultCoverConditions()
		k.Outside = -20 + 0.5*float64(i)
		k.SkyDrop = float64(i % 20)
		k.Wind = float64(i % 9)
		table[i] = k
	}
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		s, err := c.Solve(table[i&63])
		if err != nil {
			b.Fatal(err)
		}
		sum += s.FluxIn
	}
	speed.Sink = sum
}

func BenchmarkOptics3(b *testing.B) {
	s, err := NewLightLayers(Sheet{1.515, 200, 0.00015}, Sheet{1.526, 12, 0.004}, Sheet{1.585, 60, 0.0005})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		l := s.At(float64(i & 63))
		sum += l.Transmittance
	}
	speed.Sink = sum
}
