package speed_test

import (
	"testing"

	"cloche.example/internal/speed"
)

func BenchmarkMathExp(b *testing.B)  { speed.MathExp(b) }
func BenchmarkMathSqrt(b *testing.B) { speed.MathSqrt(b) }
