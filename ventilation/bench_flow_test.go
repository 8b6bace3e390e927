package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/speed"
	"cloche.example/ventilation"
)

func BenchmarkMathExp(b *testing.B)  { speed.MathExp(b) }
func BenchmarkMathSqrt(b *testing.B) { speed.MathSqrt(b) }

func twelve() []ventilation.Opening {
	var o []ventilation.Opening
	cp := []float64{0.5, -0.3, -0.6, -0.2}
	for i := range 12 {
		o = append(o, point(0.3+0.27*float64(i), 0.2+0.1*float64(i%5), cp[i%4]))
	}
	return o
}

func fourTall() []ventilation.Opening {
	var o []ventilation.Opening
	for i := range 4 {
		o = append(o, ventilation.Opening{Height: 0.8 + 0.6*float64(i), Vertical: 1 + 0.2*float64(i), Area: 1.5, Discharge: 0.6, PressureCoefficient: 0.4 - 0.3*float64(i)})
	}
	return o
}

func benchNetwork(b *testing.B, o []ventilation.Opening) {
	n := build(b, o...)
	var c [64]ventilation.FlowConditions
	for i := range c {
		c[i] = dry(b, 18+0.4*float64(i), 20, float64(i%7))
	}
	flows := make([]ventilation.PathFlow, len(n.Openings()))
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		r, _ := n.SolveTo(flows, c[i&63])
		sum += r.Flow
	}
	speed.Sink = sum
}

// A balance of 12 points takes about 7 looks at 12 square roots and as many
// divisions: at 4 ns a root with the division beside it, 0.35 to 0.7 µs.
func BenchmarkNetwork12(b *testing.B) { benchNetwork(b, twelve()) }
func BenchmarkTall4(b *testing.B)     { benchNetwork(b, fourTall()) }

func TestSolvingAllocatesNothing(t *testing.T) {
	for _, o := range [][]ventilation.Opening{twelve(), fourTall()} {
		n := build(t, o...)
		flows := make([]ventilation.PathFlow, len(n.Openings()))
		c := dry(t, 30, 20, 2)
		require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = n.SolveTo(flows, c) }))
		n, err := n.WithExchange(ventilation.DefaultWindExchange())
		require.NoError(t, err)
		require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = n.SolveTo(flows, c) }))
	}
}
