package ventilation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func network(t testing.TB, openings ...ventilation.Opening) *ventilation.Network {
	t.Helper()
	n, err := ventilation.NewNetwork(openings, nil, nil)
	require.NoError(t, err)
	return n
}

// Under one pressure coefficient the network is the published equations: the
// wind of [BoulardB95] for any opening, wind and stack of [Kittas97] for two
// small ones.
func TestExchangeIsThatOfTheGreenhouseEquations(t *testing.T) {
	for _, u := range []float64{0.5, 2, 6} {
		same := dry(t, 20, 20, u)
		eq, err := ventilation.HouseVents{Roof: 8, Side: 12, Discharge: 0.6, WindEffect: 0.09, Inside: 20, Outside: 20, Wind: u}.Solve()
		require.NoError(t, err)
		b := solveNet(t, network(t, point(0.8, 12, -0.3), ventilation.Opening{Height: 3, Vertical: 0.5, Area: 8, Discharge: 0.6, PressureCoefficient: -0.3}), same)
		require.InEpsilon(t, eq.Flow, b.Volume, 1e-12)
		require.InEpsilon(t, b.Flow, b.Exchange, 1e-12)

		eq, err = ventilation.HouseVents{Roof: 8, Side: 8, Separation: 2.5, Discharge: 0.6, WindEffect: 0.09, Inside: 25, Outside: 20, Wind: u}.Solve()
		require.NoError(t, err)
		b = solveNet(t, network(t, point(0.5, 8, -0.3), point(3, 8, -0.3)), dry(t, 25, 20, u))
		require.InEpsilon(t, eq.RoofAndSide, 0.5*(b.Volume+b.VolumeOut), 1e-2) // two densities for one mean temperature
	}
	// One tall opening in calm: the half and half of [BoulardB95] is 6.07 % above
	// the exact integral.
	eq, err := ventilation.HouseVents{Roof: 8, RoofHeight: 0.5, Discharge: 0.6, Inside: 25, Outside: 20}.Solve()
	require.NoError(t, err)
	b := solveNet(t, network(t, ventilation.Opening{Height: 3, Vertical: 0.5, Area: 8, Discharge: 0.6}), dry(t, 25, 20, 0))
	require.InDelta(t, 1.0607, eq.Flow/(0.5*(b.Volume+b.VolumeOut)), 2e-4)
}

// anyNetwork returns openings of every kind, leaks and now and then a fan.
func anyNetwork(d dice) ([]ventilation.Opening, []ventilation.Leak, []ventilation.FixedFan) {
	var o []ventilation.Opening
	for range 1 + d.IntN(4) {
		v := ventilation.Opening{Height: d.from(0.5, 4), Area: d.from(0.01, 20), Discharge: d.from(0.2, 0.8), PressureCoefficient: d.from(-0.6, 0.6)}
		switch d.IntN(3) {
		case 0:
			v.Vertical = d.from(0.01, 1)
		case 1:
			v.Viscous = d.from(0, 5)
		}
		o = append(o, v)
	}
	leaks := []ventilation.Leak{{Height: 1, Flow: d.from(0.001, 0.1), Exponent: 0.65}}
	var fans []ventilation.FixedFan
	if d.IntN(4) == 0 {
		fans = append(fans, ventilation.FixedFan{Height: 2, Flow: d.from(-1, 1), Slope: d.from(0, 0.01)})
	}
	return o, leaks, fans
}

// More opening never means less air, whichever opening it is and however wind
// and stack stand.
func TestFlowGrowsWithTheOpening(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(12, 2))}
	for i := range 2000 {
		o, leaks, fans := anyNetwork(d)
		c := dry(t, d.from(0, 45), d.from(0, 35), d.from(0, 10)*float64(d.IntN(2)))
		method := ventilation.WindExchange{Method: ventilation.WindMethod(d.IntN(2)), Coefficient: d.from(0, 0.2)}
		which := d.IntN(len(o)+1) - 1 // -1: all
		last := 0.0
		for _, by := range []float64{1, 1.001, 1.2, 3, 30} {
			grown := append([]ventilation.Opening(nil), o...)
			for j := range grown {
				if which < 0 || j == which {
					grown[j].Area *= by
					grown[j].Viscous /= by
				}
			}
			n, err := ventilation.NewNetwork(grown, leaks, fans)
			require.NoError(t, err)
			n, err = n.WithExchange(method)
			require.NoError(t, err)
			b := solveNet(t, n, c)
			require.GreaterOrEqual(t, b.Flow, last*(1-1e-6), "case %d, %v times", i, by)
			last = b.Flow
			in, out := 0.0, 0.0
			for _, p := range b.Paths {
				in, out = in+p.In, out+p.Out
			}
			require.InDelta(t, in, out, 1e-5*b.Flow+1e-9)
			require.InEpsilon(t, b.Flow, in, 1e-5)
		}
	}
}

// A little wind, or a little warmth, changes the flow little.
func TestFlowIsContinuousAtZero(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(5, 12))}
	for range 500 {
		o, leaks, fans := anyNetwork(d)
		size := 0.0
		for _, v := range o {
			size += v.Area * v.Discharge
		}
		n, err := ventilation.NewNetwork(o, leaks, fans)
		require.NoError(t, err)
		to, dt, u := d.from(0, 30), d.from(-20, 20)*float64(d.IntN(2)), d.from(0, 8)*float64(d.IntN(2))
		calm, even := solveNet(t, n, dry(t, to+dt, to, 0)).Flow, solveNet(t, n, dry(t, to, to, u)).Flow
		for _, little := range []float64{1e-1, 1e-3, 1e-5} {
			// Leaks pass 0.65 powers, orifices roots of the pressure: of U² and of dT.
			require.InDelta(t, calm, solveNet(t, n, dry(t, to+dt, to, little)).Flow, 5*(1+size)*little)
			require.InDelta(t, even, solveNet(t, n, dry(t, to+little, to, u)).Flow, 5*(1+size)*math.Sqrt(little))
		}
	}
}

// Vents that shut leave the leaks, without a jump, in the balance of the whole
// house too.
func TestFlowIsContinuousWhereVentsShut(t *testing.T) {
	h := summerHouse(t)
	var err error
	h.Air, err = ventilation.NewNetwork([]ventilation.Opening{{Height: 1, Vertical: 0.8, Area: 6, Discharge: 0.6, PressureCoefficient: 0.3}, {Height: 3, Area: 4, Discharge: 0.6, PressureCoefficient: -0.4}},
		[]ventilation.Leak{{Height: 1, Flow: 0.02, Exponent: 0.65, PressureCoefficient: -0.1}, {Height: 2.5, Flow: 0.02, Exponent: 0.65, PressureCoefficient: -0.3}}, nil)
	require.NoError(t, err)
	c := climate(t, h)
	for _, wind := range []float64{0, 3} {
		w := ventilation.Weather{Air: air(t, 27, 0.5), Sun: 820, Sky: 12, Ground: 17}
		w.Wind = wind
		flow := func(opening float64) float64 {
			s, err := c.Solve(w, ventilation.Setting{Opening: opening})
			require.NoError(t, err)
			return s.DryAir
		}
		shut, last := flow(0), 0.0
		for _, o := range []float64{1e-6, 1e-4, 1e-2, 0.1, 0.5, 1} {
			f := flow(o)
			require.InDelta(t, shut, f, 30*o)
			require.Greater(t, f, last)
			last = f
		}
	}
}

func TestExchangeOfAShutOrFaultyNetwork(t *testing.T) {
	n := network(t, point(1, 1, 0))
	_, err := n.WithExchange(ventilation.WindExchange{Method: 9, Coefficient: 0.6})
	requireFields(t, err, "Method", "Coefficient")
	_, err = (&ventilation.Network{}).WithExchange(ventilation.DefaultWindExchange())
	require.ErrorIs(t, err, ventilation.ErrRange)
	require.Equal(t, "quadrature", ventilation.InQuadrature.String())
	require.Equal(t, "larger of the two", ventilation.LargerOfTwo.String())
	// Openings below grade and leaks have none; the larger of the two is no sum.
	well := ventilation.Opening{Height: -0.5, Area: 1, Discharge: 0.6}
	require.Zero(t, solveNet(t, network(t, well), dry(t, 20, 20, 5)).Flow)
	// A screen takes its part: half of what its pressure drop lets through.
	screened := ventilation.Opening{Height: 1, Area: 2, Discharge: 0.6, Viscous: 0.8}
	five := dry(t, 20, 20, 5)
	require.InEpsilon(t, 0.5*screened.MassFlow(0.09*0.5*five.OutsideDensity*25, five.OutsideDensity), solveNet(t, network(t, screened), five).Flow, 1e-12)
	larger, err := network(t, point(0.5, 1, 0.4), point(3, 1, -0.4)).WithExchange(ventilation.WindExchange{Method: ventilation.LargerOfTwo, Coefficient: 0.09})
	require.NoError(t, err)
	c := dry(t, 25, 20, 3)
	require.Equal(t, solveNet(t, pressures(t, larger), c).Flow, solveNet(t, larger, c).Flow)
	even, err := network(t, point(0.5, 1, 0)).WithExchange(ventilation.WindExchange{Method: ventilation.LargerOfTwo, Coefficient: 0.09})
	require.NoError(t, err)
	require.InEpsilon(t, 0.5*0.3*3*0.6, solveNet(t, even, c).Volume, 1e-12)
}
