package lighting

import "math"

// powerTable raises a number in (0, 1] to a fixed power p >= 0: the mantissa by
// a Taylor polynomial of degree 5 about the middle of its interval, the
// exponent of two by a table. run.addPower reads it.
type powerTable struct {
	shift uint
	scale [2048]float64 // 2^((i-1023)p), the upper half unused but for i = 1023
	poly  [][6]float64
}

// powerError is the greatest relative error allowed to a powerTable.
const powerError = 1e-12

// maxIntervals keeps a powerTable within the cache.
const maxIntervals = 2048

// newPowerTable returns nil when p needs more intervals than the cache holds:
// the caller then takes math.Pow.
func newPowerTable(p float64) *powerTable {
	// The first term left out is C(p,6) (dt/m)^6 with dt at most half an interval.
	c := 1.0
	for i := range 6 {
		c *= (p - float64(i)) / float64(i+1)
	}
	bits, n := uint(7), 128
	for ; math.Abs(c)*math.Pow(0.5/float64(n), 6) > powerError; n *= 2 {
		bits++
		if n == maxIntervals {
			return nil
		}
	}
	t := &powerTable{shift: 52 - bits, poly: make([][6]float64, n)}
	for i := 1; i <= 1023; i++ {
		t.scale[i] = math.Exp2(float64(i-1023) * p)
	}
	for i := range t.poly {
		mid := 1 + (float64(i)+0.5)/float64(n)
		binomial := 1.0
		for k := range t.poly[i] {
			t.poly[i][k] = binomial * math.Pow(mid, p-float64(k))
			binomial *= (p - float64(k)) / float64(k+1)
		}
	}
	return t
}

// The fields of a float64.
const (
	fraction     = 1<<52 - 1
	exponentMask = 1<<11 - 1
	oneBits      = 1023 << 52
)
