// Package speed measures the two functions that set the pace of Cloche's
// kernels, so that a benchmark's figure can be read on any machine: the
// figures asked of a package hold for a core on which math.Exp costs 15 ns in
// throughput, and scale with it.
package speed

import (
	"math"
	"testing"
)

// Sink keeps results alive in benchmarks.
var Sink float64

// MathExp measures math.Exp in throughput over a table of inputs.
func MathExp(b *testing.B) { measure(b, math.Exp) }

// MathSqrt measures math.Sqrt through the same loop.
func MathSqrt(b *testing.B) { measure(b, math.Sqrt) }

func measure(b *testing.B, f func(float64) float64) {
	var in [256]float64
	for i := range in {
		in[i] = 0.013 * float64(i+1)
	}
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += f(in[i&255])
	}
	Sink = sum
}
