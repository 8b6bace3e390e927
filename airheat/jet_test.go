package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func warmJet(s JetShape) Jet {
	j := DefaultJet(s)
	j.Size, j.Speed, j.Excess, j.House = 0.2, 6, 25, 15
	return j
}

func TestThrowIsWhereTheSpeedIs(t *testing.T) {
	for _, s := range []JetShape{RoundJet, PlaneJet} {
		j := warmJet(s)
		for _, v := range []float64{0.25, 0.5, 2} {
			require.InEpsilon(t, v, j.AxisSpeed(j.Throw(v)), 1e-12)
		}
		require.Equal(t, 6.0, j.AxisSpeed(0))
		require.Equal(t, 25.0, j.AxisExcess(0.1))
		require.True(t, math.IsNaN(j.Throw(7)))
		require.True(t, math.IsNaN(j.AxisSpeed(-1)))
	}
	require.InEpsilon(t, 6*0.2*6/0.5, warmJet(RoundJet).Throw(0.5), 1e-14)
	require.InEpsilon(t, 0.2*math.Pow(2.43*6/0.5, 2), warmJet(PlaneJet).Throw(0.5), 1e-14)
	require.InEpsilon(t, 25*5*0.2/10, warmJet(RoundJet).AxisExcess(10), 1e-14)
	require.InEpsilon(t, 25*2.0*math.Sqrt(0.2/10), warmJet(PlaneJet).AxisExcess(10), 1e-14)
}

// The momentum balance stepped numerically: vertical momentum grows by the
// buoyancy in each slice, heat flow and level momentum are kept. Flat profiles
// give the weak end of the band; Gaussian ones, with heat wider by λ, λ²/3.
func TestBendAgreesWithTheMomentumBalance(t *testing.T) {
	for _, s := range []JetShape{RoundJet, PlaneJet} {
		j := warmJet(s)
		x, y, rise, n := 0.0, 0.0, 0.0, 200000
		dx := 8.0 / float64(n)
		for range n {
			xm := x + dx/2
			// Flat profiles that hold momentum and heat: with Thermal = Velocity
			// the slice's excess times its width is V0 ΔT0 L/V.
			v := j.Velocity * j.Size / xm
			width := j.Size * j.Size
			if s == PlaneJet {
				v, width = j.Velocity*math.Sqrt(j.Size/xm), j.Size
			}
			slice := j.Excess * width / v // ∫ΔT dA
			rise += 9.80665 / 288.15 * slice * dx / (j.Speed * j.Speed * width)
			y += rise * dx
			x += dx
		}
		j.Thermal = j.Velocity
		require.InEpsilon(t, y, j.Height(8).Least, 1e-4)
	}
}

func TestBandEnds(t *testing.T) {
	r, p := warmJet(RoundJet), warmJet(PlaneJet)
	require.InEpsilon(t, 0.47*6, r.Height(5).Most/r.Height(5).Least, 1e-12)
	require.InEpsilon(t, 0.4*15/4, p.Height(5).Most/p.Height(5).Least, 1e-12)
	cool := r
	cool.Excess = -25
	require.InDelta(t, -r.Height(5).Most, cool.Height(5).Most, 1e-12)
	r.Excess, r.Angle = 0, 30
	require.InEpsilon(t, 4/math.Sqrt(3), r.Height(4).Least, 1e-12)
}

func TestJetMeetsFilmAndCrop(t *testing.T) {
	j := warmJet(RoundJet)
	near, far := j.Meets(1.2, 40)
	require.Less(t, near.Distance, far.Distance)
	require.InDelta(t, 1.2, j.Height(near.Distance).Most, 1e-9)
	require.InDelta(t, 1.2, j.Height(far.Distance).Least, 1e-9)
	require.InEpsilon(t, j.AxisExcess(near.Distance), near.Excess, 1e-12)
	none, _ := j.Meets(-1, 40)
	require.True(t, math.IsNaN(none.Distance))
}

func TestJetFaults(t *testing.T) {
	err := Jet{Shape: 9, Speed: math.NaN()}.Check()
	for _, s := range []string{"Shape", "Size", "Speed", "Velocity", "Thermal"} {
		require.ErrorContains(t, err, s)
	}
	require.NoError(t, warmJet(PlaneJet).Check())
}

// How far inertia rules: where buoyancy's momentum is some share of the jet's
// own. Five-fold excess shortens a plane jet's by 5^(2/3), a round one's by √5.
func TestForcedLength(t *testing.T) {
	for _, r := range []struct {
		shape JetShape
		want  float64
		power float64
	}{
		{PlaneJet, 0.5 * math.Pow(288.15*9/(9.80665*20*0.05), 2.0/3) * 0.05, 2.0 / 3},
		{RoundJet, 0.5 * math.Sqrt(288.15*9/(9.80665*20*0.2)) * 0.2, 0.5},
	} {
		j := DefaultJet(r.shape)
		j.Size, j.Speed, j.Excess, j.House = 0.05, 3, 20, 15
		if r.shape == RoundJet {
			j.Size = 0.2 * math.Sqrt(math.Pi/4) // a diameter of 0.2 m
		}
		require.InEpsilon(t, r.want, j.ForcedLength(), 1e-12)
		five := j
		five.Excess = -100
		require.InEpsilon(t, math.Pow(5, r.power), j.ForcedLength()/five.ForcedLength(), 1e-12)
		j.Excess = 0
		require.True(t, math.IsInf(j.ForcedLength(), 1))
	}
}

// Distances no jet goes give NaN, not infinity.
func TestJetsEnd(t *testing.T) {
	j := DefaultJet(RoundJet)
	j.Size, j.Speed, j.Excess, j.House = 0.1, 6, 20, 15
	j.Angle = 60
	for _, d := range []float64{-0.1, 1001, 1e308, math.Inf(1), math.NaN()} {
		require.True(t, math.IsNaN(j.AxisSpeed(d)), d)
		require.True(t, math.IsNaN(j.AxisExcess(d)), d)
		require.True(t, math.IsNaN(j.Height(d).Least) && math.IsNaN(j.Height(d).Most), d)
		near, far := j.Meets(2, d)
		require.True(t, math.IsNaN(near.Distance) && math.IsNaN(far.Speed), d)
	}
	near, _ := j.Meets(1e300, 40)
	require.True(t, math.IsNaN(near.Distance))
	require.False(t, math.IsNaN(j.AxisSpeed(1000)) || math.IsNaN(j.Height(1000).Most))
	near, _ = j.Meets(1000, 500)
	require.False(t, math.IsNaN(near.Distance) || math.IsNaN(near.Speed))
}
