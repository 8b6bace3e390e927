package ventilation_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// preciseFlow is the flow of points, kg/s, by bisection of the inside pressure in 48
// digits.
func preciseFlow(openings []ventilation.Opening, c ventilation.FlowConditions) float64 {
	const digits = 160 // bits
	number := func(x float64) *big.Float { return new(big.Float).SetPrec(digits).SetFloat64(x) }
	times := func(a, b float64) *big.Float { return new(big.Float).SetPrec(digits).Mul(number(a), number(b)) }
	low, high := number(1e9), number(-1e9)
	drives := make([]*big.Float, len(openings))
	for i, o := range openings {
		d := times(o.PressureCoefficient, 0.5*c.OutsideDensity*c.Wind*c.Wind)
		d.Add(d, times((c.InsideDensity-c.OutsideDensity)*9.80665, o.Height))
		drives[i] = d
		if d.Cmp(low) < 0 {
			low.Set(d)
		}
		if d.Cmp(high) > 0 {
			high.Set(d)
		}
	}
	flows := func(p *big.Float) (in, out *big.Float) {
		in, out = number(0), number(0)
		for i, o := range openings {
			d, rho, sum := new(big.Float).SetPrec(digits).Sub(drives[i], p), c.OutsideDensity, in
			if d.Sign() < 0 {
				d.Neg(d)
				rho, sum = c.InsideDensity, out
			}
			m := new(big.Float).SetPrec(digits).Mul(number(2*rho), d)
			sum.Add(sum, m.Mul(m.Sqrt(m), number(o.Area*o.Discharge)))
		}
		return in, out
	}
	for range 130 {
		p := new(big.Float).SetPrec(digits).Add(low, high)
		p.Quo(p, number(2))
		if in, out := flows(p); in.Cmp(out) > 0 {
			low = p
		} else {
			high = p
		}
	}
	in, _ := flows(low)
	f, _ := in.Float64()
	return f
}

func TestFlowAgainstManyDigits(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(77, 1))}
	for k := range 300 {
		var o []ventilation.Opening
		for range 2 + d.IntN(4) {
			o = append(o, point(d.from(0, 4), math.Exp(d.from(math.Log(0.01), math.Log(30))), d.from(-0.6, 0.6)))
		}
		c := dry(t, d.from(5, 40), d.from(-10, 35), d.from(0, 8)*float64(d.IntN(2)))
		require.InEpsilon(t, preciseFlow(o, c), solveNet(t, build(t, o...), c).Flow, 1e-11, "case %d", k)
	}
}
