package lighting

import "math"

// powerTable raises a number in (0, 1] to a fixed power p >= 0: the mantissa by
// a Taylor polynomial of degree 5 about the middle of its interval, the
// exponent of two by a table.
type powerTable struct {
	p     float64
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
	t := &powerTable{p: p, shift: 52 - bits, poly: make([][6]float64, n)}
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

// at returns x^p for x in (0, 1], also when rounding left it just above 1, and
// 0 for x too small to be a normal number.
func (t *powerTable) at(x float64) float64 {
	b := math.Float64bits(x)
	frac := b & fraction
	k := frac >> t.shift
	d := math.Float64frombits(oneBits|frac) - math.Float64frombits(oneBits|k<<t.shift|1<<(t.shift-1))
	c := &t.poly[k]
	d2 := d * d
	return t.scale[b>>52&exponentMask] * ((c[0] + c[1]*d) + d2*((c[2]+c[3]*d)+d2*(c[4]+c[5]*d)))
}
