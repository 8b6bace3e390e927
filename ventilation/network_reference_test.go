package ventilation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

// cases reads a testdata file into rows grouped by their first column.
func cases(t *testing.T, name string) [][][]float64 {
	t.Helper()
	var out [][][]float64
	for _, row := range check.Numbers(t, name) {
		if row[5] == 0 {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], row)
	}
	require.NotEmpty(t, out)
	return out
}

// points compares one file of point openings: flows to 1e-8, and the inside
// pressure to 1e-9 Pa or what float64 leaves of a large wind pressure.
func points(t *testing.T, name string) {
	for _, rows := range cases(t, name) {
		var o []ventilation.Opening
		for _, r := range rows {
			o = append(o, ventilation.Opening{Height: r[6], Area: r[7], Discharge: r[8], PressureCoefficient: r[9]})
		}
		b := solveNet(t, build(t, o...), dry(t, rows[0][1], rows[0][2], rows[0][3]))
		require.InDelta(t, rows[0][4], b.Pressure, 1e-11+4e-16*math.Abs(rows[0][4]), "case %v", rows[0][0])
		for i, r := range rows {
			// The flow goes as the root of the drive: near none it holds absolutely.
			require.InDelta(t, r[10], b.Paths[i].Net(), 1e-9*math.Abs(r[10])+1e-7*r[7]*r[8], "case %v opening %v", r[0], i)
			if math.Abs(b.Paths[i].Drive) > 1e-3 {
				require.InEpsilon(t, r[10], b.Paths[i].Net(), 1e-9, "case %v opening %v", r[0], i)
			}
		}
	}
}

func TestPointsAgainstExtendedPrecision(t *testing.T) {
	points(t, "network_small.csv")
	points(t, "network_extreme.csv")
}

func tall(t *testing.T, name string) {
	for _, rows := range cases(t, name) {
		var o []ventilation.Opening
		for _, r := range rows {
			o = append(o, ventilation.Opening{Height: 0.5 * (r[6] + r[7]), Vertical: r[7] - r[6], Area: r[8] * (r[7] - r[6]), Discharge: r[9], PressureCoefficient: r[10]})
		}
		b := solveNet(t, build(t, o...), dry(t, rows[0][1], rows[0][2], rows[0][3]))
		require.InDelta(t, rows[0][4], b.Pressure, 1e-10+1e-15*math.Abs(rows[0][4]), "case %v", rows[0][0])
		for i, r := range rows {
			require.InDelta(t, r[11], b.Paths[i].In, 1e-9*(1+r[11]+r[12]), "case %v opening %v", r[0], i)
			require.InDelta(t, r[12], b.Paths[i].Out, 1e-9*(1+r[11]+r[12]), "case %v opening %v", r[0], i)
		}
	}
}

func TestTallAgainstQuadrature(t *testing.T) {
	tall(t, "network_tall.csv")
	tall(t, "network_tall_extreme.csv")
}

// Networks of all elements against a plain bisection with the formulas of
// doc.go written out anew; tall openings are summed over 2,000 slices.
func TestElementsAgainstPlainBisection(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 25))
	const g = 9.80665
	for k := range 36 {
		c := dry(t, -5+45*rnd.Float64(), -20+55*rnd.Float64(), 15*rnd.Float64())
		var flows []func(p float64) float64
		drive := func(cp, z, p float64) float64 {
			return c.OutsideDensity*cp*c.Wind*c.Wind/2 - c.OutsideDensity*g*z - (p - c.InsideDensity*g*z)
		}
		up := func(dp float64) float64 {
			if dp < 0 {
				return c.InsideDensity
			}
			return c.OutsideDensity
		}
		var o []ventilation.Opening
		var leaks []ventilation.Leak
		var fans []ventilation.FixedFan
		for range 1 + rnd.IntN(4) {
			v := ventilation.Opening{Height: -1 + 5*rnd.Float64(), Area: 0.1 + 3*rnd.Float64(), Discharge: 0.2 + 0.7*rnd.Float64(), PressureCoefficient: 2*rnd.Float64() - 1}
			switch rnd.IntN(3) {
			case 0:
				v.Vertical = 0.3 + rnd.Float64()
				flows = append(flows, func(p float64) (sum float64) {
					const slices = 2000
					for i := range slices {
						dp := drive(v.PressureCoefficient, v.Height+v.Vertical*((float64(i)+0.5)/slices-0.5), p)
						sum += math.Copysign(v.Discharge*v.Area/slices*math.Sqrt(2*up(dp)*math.Abs(dp)), dp)
					}
					return sum
				})
			case 1:
				v.Viscous = 5 * rnd.Float64()
				flows = append(flows, func(p float64) float64 {
					dp := drive(v.PressureCoefficient, v.Height, p)
					// dp = Viscous Q + rho/2 (Q/(Cd A))², by bisection.
					low, high := 0.0, v.Discharge*v.Area*math.Sqrt(2*math.Abs(dp)/up(dp))
					for range 60 {
						q := (low + high) / 2
						if v.Viscous*q+up(dp)/2*math.Pow(q/(v.Discharge*v.Area), 2) < math.Abs(dp) {
							low = q
						} else {
							high = q
						}
					}
					return math.Copysign(up(dp)*low, dp)
				})
			default:
				flows = append(flows, func(p float64) float64 {
					dp := drive(v.PressureCoefficient, v.Height, p)
					return math.Copysign(v.Discharge*v.Area*math.Sqrt(2*up(dp)*math.Abs(dp)), dp)
				})
			}
			o = append(o, v)
		}
		if k%2 == 0 {
			l := ventilation.Leak{Height: 4 * rnd.Float64(), Flow: 0.1 * rnd.Float64(), Exponent: 0.5 + 0.5*rnd.Float64(), PressureCoefficient: -rnd.Float64()}
			leaks = append(leaks, l)
			flows = append(flows, func(p float64) float64 {
				dp := drive(l.PressureCoefficient, l.Height, p)
				return math.Copysign(up(dp)*l.Flow*math.Pow(math.Abs(dp), l.Exponent), dp)
			})
		}
		if k%3 == 0 {
			f := ventilation.FixedFan{Height: 4 * rnd.Float64(), Flow: 4*rnd.Float64() - 2, Slope: 0.02 * rnd.Float64(), PressureCoefficient: rnd.Float64()}
			fans = append(fans, f)
			flows = append(flows, func(p float64) float64 {
				q := f.Flow + f.Slope*drive(f.PressureCoefficient, f.Height, p)
				return q * up(q)
			})
		}
		low, high := -1e6, 1e6
		for range 80 {
			p, sum := (low+high)/2, 0.0
			for _, f := range flows {
				sum += f(p)
			}
			if sum > 0 {
				low = p
			} else {
				high = p
			}
		}
		n, err := ventilation.NewNetwork(o, leaks, fans)
		require.NoError(t, err)
		b := solveNet(t, n, c)
		require.InDelta(t, low, b.Pressure, 2e-5*(1+math.Abs(low)), k)
		for i := range b.Paths {
			require.InDelta(t, flows[i](b.Pressure), b.Paths[i].Net(), 2e-5*(1+b.Flow), "%d %d", k, i)
		}
	}
}
