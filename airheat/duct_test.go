package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSections(t *testing.T) {
	r := Rectangular(0.4, 0.2)
	require.InEpsilon(t, 0.08, r.Area(), 1e-14)
	require.InEpsilon(t, 1.2, r.perimeter(), 1e-14)
	require.InEpsilon(t, 4*0.08/1.2, r.hydraulic(), 1e-14)
	o := Round(0.3)
	require.InEpsilon(t, math.Pi*0.0225, o.Area(), 1e-14)
	require.Equal(t, 0.3, o.EquivalentDiameter())
	require.InEpsilon(t, math.Pi*0.3, o.perimeter(), 1e-14)
	// The equivalent round duct loses the same per metre, within a few per cent.
	air := DryAir(20, 101325)
	a := Segment{Section: r, Length: 1, Roughness: 0.1e-3}.Loss(0.5, air).Total
	b := Segment{Section: Round(r.EquivalentDiameter()), Length: 1, Roughness: 0.1e-3}.Loss(0.5, air).Total
	require.InEpsilon(t, a, b, 0.05)
}

func TestLossIsTheSumOfItsTerms(t *testing.T) {
	s, _ := benchSystem(t)
	air := DryAir(35, 98000)
	for _, q := range []float64{1e-5, 0.003, 0.01, 0.02, 0.4, -0.4} {
		sum := 0.0
		for _, l := range s.LossesTo(nil, q, air) {
			require.InEpsilon(t, l.Wall+l.Fittings, l.Total, 1e-14)
			require.InEpsilon(t, air.Density*l.Velocity*math.Abs(l.Velocity)/2, l.VelocityPressure, 1e-14)
			sum += l.Total
		}
		require.InEpsilon(t, sum, s.Loss(q, air), 1e-12)
	}
	require.Zero(t, s.Loss(0, air))
	// Hagen and Poiseuille by hand: 128 μ L Q/(π D⁴).
	p := Segment{Section: Round(0.1), Length: 7}.Loss(1e-3, air).Total
	require.InEpsilon(t, 128*air.Viscosity*7*1e-3/(math.Pi*1e-4), p, 1e-12)
}

// The search for crossings leans on this: the loss rises, and its slope only
// drops where a segment turns fully turbulent.
func TestLossIsConvexBetweenItsCorners(t *testing.T) {
	const nu = 1.5e-5
	for _, rough := range []float64{0, 1e-4, 0.01, 0.05, 0.099} {
		for _, k := range []float64{0, 1, 30} {
			r := Segment{Section: Round(0.2), Length: 5, Roughness: rough * 0.2, Fittings: k}.ready()
			last, corner := 0.0, 4000*nu/0.2*r.area
			for q := corner / 4000; q < 300*corner; q *= 1.003 {
				l, d := r.loss(q, nu)
				require.Positive(t, l)
				require.Positive(t, d)
				if q < corner || q/1.003 > corner {
					require.GreaterOrEqual(t, d, last*(1-1e-12), "roughness %g K %g Re %g", rough, k, 4000*q/corner)
				}
				last = d
				h := 1e-6 * q
				a, _ := r.loss(q-h, nu)
				b, _ := r.loss(q+h, nu)
				if math.Abs(q/corner-1) > 0.01 && math.Abs(q/corner-0.575) > 0.01 {
					require.InEpsilon(t, (b-a)/(2*h), d, 1e-6)
				}
			}
		}
	}
}

func TestFlowAtAndRoundForTurnTheLossRound(t *testing.T) {
	s, _ := benchSystem(t)
	air := DryAir(20, 101325)
	for _, p := range []float64{1e-4, 0.1, 5, 200, 4000} {
		q, err := s.FlowAt(p, air)
		require.NoError(t, err)
		require.InEpsilon(t, p, s.Loss(q, air), 1e-12)
	}
	for _, q := range []float64{0.01, 0.3, 2} {
		d, err := RoundFor(RoundSizing{q, 1, 1, 0.15e-3, air})
		require.NoError(t, err)
		require.InEpsilon(t, 1, Segment{Section: Round(d), Length: 1, Roughness: 0.15e-3}.Loss(q, air).Total, 1e-10)
	}
	free, err := NewSystem(Segment{Section: Round(1)})
	require.NoError(t, err)
	_, err = free.FlowAt(10, air)
	require.ErrorIs(t, err, ErrNoSolution)
	_, err = RoundFor(RoundSizing{0, -1, 1, 1, AirProperties{}})
	for _, w := range []string{"Flow", "Pressure", "Roughness", "Properties.Density"} {
		require.ErrorContains(t, err, w)
	}
	_, err = RoundFor(RoundSizing{900, 0.001, 1, 0, air})
	require.ErrorIs(t, err, ErrNoSolution)
	_, err = s.FlowAt(-3, air)
	require.ErrorIs(t, err, ErrRange)
}

func TestNewSystemListsAllFaults(t *testing.T) {
	_, err := NewSystem(
		Segment{Section: Round(0), Length: -1},
		Segment{Section: DuctSection{Diameter: 1, Width: 1, Height: 1}, Roughness: 1, Fittings: math.NaN()},
		Segment{Section: Round(0.1), Roughness: 0.015},
	)
	for _, w := range []string{"Segment[0].Section.Diameter", "Segment[0].Length", "Segment[1].Section.Diameter", "round or rectangular", "Segment[1].Roughness", "Segment[1].Fittings", "Segment[2].Roughness over the diameter"} {
		require.ErrorContains(t, err, w)
	}
	_, err = NewSystem()
	require.ErrorIs(t, err, ErrRange)
}

func TestDuctHeatClosesItsBalance(t *testing.T) {
	air := DryAir(45, 101325)
	d := Duct{Section: Rectangular(0.4, 0.3), Length: 20, HeatTransfer: 4}
	h, err := d.Heat(0.5, 45, 5, air)
	require.NoError(t, err)
	require.InEpsilon(t, 0.5*air.Density*1006*(45-h.Outlet), h.Loss, 1e-12)
	require.InEpsilon(t, 4*1.4*20/(0.5*air.Density*1006), h.Units, 1e-14)
	// Two halves in a row are the whole.
	d.Length = 10
	a, err := d.Heat(0.5, 45, 5, air)
	require.NoError(t, err)
	b, err := d.Heat(0.5, a.Outlet, 5, air)
	require.NoError(t, err)
	require.InDelta(t, h.Outlet, b.Outlet, 1e-12)
	_, err = Duct{HeatTransfer: -1}.Heat(0, 300, 5, AirProperties{})
	for _, w := range []string{"Section.Diameter", "HeatTransfer", "flow", "inlet", "air.Viscosity"} {
		require.ErrorContains(t, err, w)
	}
	for _, bad := range [][2]float64{{9999, 0.7}, {5.0001e6, 0.7}, {2e4, 0.4999}, {2e4, 200.01}} {
		require.True(t, math.IsNaN(DuctNusselt(bad[0], bad[1])))
	}
	for _, good := range [][2]float64{{1e4, 0.7}, {5e6, 0.7}, {2e4, 0.5}, {2e4, 200}} {
		require.Positive(t, DuctNusselt(good[0], good[1]))
	}
}
