package lighting

import "math"

// Arc functions for maps: tables of Taylor polynomials, economised: the last
// power left out is replaced by the lower ones of its Chebyshev polynomial,
// which leaves 2^(1-n) of it.

// acosTable holds acos(1-v) for 2^(1-acosOctaves) <= v <= 1 in cells that are 64 to
// each octave of v, since it starts as √2v: the middle of the cell and five
// coefficients about it, right to 1e-13 of the angle.
var acosTable = makeAcosTable()

const (
	acosOctaves = 16 // low bits of the exponent that tell octaves apart
	acosBits    = 6  // high bits of the fraction that tell cells apart
	acosMask    = acosOctaves<<acosBits - 1
)

func makeAcosTable() (t [acosMask + 1][6]float64) {
	for octave := range acosOctaves {
		for i := range 1 << acosBits {
			width := math.Ldexp(1, -octave) / (1 << acosBits)
			low := math.Ldexp(1, -octave) + width*float64(i)
			at := math.Float64bits(low) >> (52 - acosBits) & acosMask
			t[at] = arcCell(low+width/2, width/2)
		}
	}
	return t
}

func arcCell(mid, half float64) [6]float64 {
	// y = d acos(1-v)/dv = (2v-v²)^-1/2 obeys (2v-v²) y' = -(1-v) y, which
	// gives each Taylor coefficient from the two before it.
	p := 2*mid - mid*mid
	y := [5]float64{1 / math.Sqrt(p)}
	before := 0.0
	for k := 0.0; k < 4; k++ {
		i := int(k)
		y[i+1] = (k*before - (1-mid)*(2*k+1)*y[i]) / (p * (k + 1))
		before = y[i]
	}
	c := [6]float64{mid, math.Acos(1 - mid), y[0], y[1] / 2, y[2] / 3, y[3] / 4}
	h2 := half * half
	fifth := y[4] / 5
	c[2] -= fifth * h2 * h2 * 5 / 16 // T5 = 16x⁵ - 20x³ + 5x
	c[4] += fifth * h2 * 20 / 16
	return c
}

// atanTable holds atan q for -1 <= q <= 1 in even cells: the middle and four
// coefficients about it, right to 3e-14.
var atanTable = makeAtanTable()

const (
	atanCells = 512 // in a unit of q
	atanMask  = 4*atanCells - 1
)

func makeAtanTable() (t [atanMask + 1][5]float64) {
	for i := range 2*atanCells + 1 {
		q := (float64(i)+0.5)/atanCells - 1
		// atan(q+d) = atan q + Σ (-1)^(k-1) sin(kβ) sin^k β d^k/k, β = atan2(1, q).
		beta := math.Atan2(1, q)
		term := func(k float64) float64 {
			return -math.Cos(math.Pi*k) * math.Sin(k*beta) * math.Pow(math.Sin(beta), k) / k
		}
		h2 := 0.25 / (atanCells * atanCells)
		t[i] = [5]float64{q, math.Atan(q), term(1), term(2), term(3)}
		t[i][1] -= term(4) * h2 * h2 / 8 // T4 = 8x⁴ - 8x² + 1
		t[i][3] += term(4) * h2
	}
	return t
}
