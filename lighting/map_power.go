package lighting

import "math"

// powerTable raises a number in (0, 1] to a fixed power p >= 0: the mantissa by
// a polynomial about the middle of its interval, the exponent of two by a
// table. run.addPower reads it.
type powerTable struct {
	shift uint
	scale [2048]float64 // 2^((i-1023)p), the upper half unused but for i = 1023
	poly  [][6]float64  // the middle and five coefficients
}

// powerError is the greatest relative error allowed to a powerTable.
const powerError = 1e-12

// maxIntervals keeps a powerTable within the cache.
const maxIntervals = 2048

// newPowerTable returns nil when p needs more intervals than the cache holds:
// the caller then takes math.Pow.
func newPowerTable(p float64) *powerTable {
	// The Taylor series is cut after the fifth power of d, at most half an
	// interval h, and economised: of the fifth, T5 = 16x⁵ - 20x³ + 5x leaves a
	// sixteenth. With C(p,k) the binomials, what is left out is at most
	// C(p,5) h⁵/16 + C(p,6) h⁶.
	c := [7]float64{1}
	for k := range 6 {
		c[k+1] = c[k] * (p - float64(k)) / float64(k+1)
	}
	bits, n := uint(7), 128
	left := func(h float64) float64 { return math.Abs(c[5])*math.Pow(h, 5)/16 + math.Abs(c[6])*math.Pow(h, 6) }
	for ; left(0.5/float64(n)) > powerError; n *= 2 {
		bits++
		if n == maxIntervals {
			return nil
		}
	}
	t := &powerTable{shift: 52 - bits, poly: make([][6]float64, n)}
	for i := 1; i <= 1023; i++ {
		t.scale[i] = math.Exp2(float64(i-1023) * p)
	}
	h2 := 0.25 / float64(n) / float64(n)
	for i := range t.poly {
		mid := 1 + (float64(i)+0.5)/float64(n)
		taylor := func(k int) float64 { return c[k] * math.Pow(mid, p-float64(k)) }
		t.poly[i] = [6]float64{mid, taylor(0), taylor(1) - taylor(5)*h2*h2*5/16, taylor(2), taylor(3) + taylor(5)*h2*20/16, taylor(4)}
	}
	return t
}

// The fields of a float64.
const (
	fraction     = 1<<52 - 1
	exponentMask = 1<<11 - 1
	oneBits      = 1023 << 52
)
