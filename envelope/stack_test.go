package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// randomStack draws a cover and conditions over the whole domain.
func randomStack(r *rand.Rand) ([]Layer, []Gap, Conditions) {
	n := 1 + r.IntN(MaxLayers)
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	layers, gaps := make([]Layer, n), make([]Gap, n-1)
	for i := range layers {
		tau := 0.0
		if r.IntN(2) == 0 {
			tau = span(0, 0.8)
		}
		layers[i] = Layer{
			EmittanceOut: span(0.02, 1-tau), EmittanceIn: span(0.02, 1-tau), Transmittance: tau,
			Thickness: span(0.0001, 0.006), Conductivity: span(0.15, 1.2),
		}
		if layers[i].EmittanceOut+tau > 1 || layers[i].EmittanceIn+tau > 1 {
			layers[i].EmittanceOut, layers[i].EmittanceIn = (1-tau)/2, (1-tau)/2
		}
		if i > 0 && r.IntN(6) == 0 {
			layers[i].Openness, layers[i].Leakage = span(0, 0.5), span(0, 0.01)
		}
	}
	for i := range gaps {
		gaps[i] = Gap{Width: math.Exp(span(math.Log(0.002), math.Log(0.5)))}
		if r.IntN(3) == 0 {
			gaps[i].Bridge = span(0, 5)
		}
	}
	k := DefaultConditions()
	k.Inside, k.Outside = span(-60, 60), span(-60, 60)
	if r.IntN(20) == 0 {
		k.Inside = k.Outside
	}
	k.InsideRadiant = k.Inside + span(-10, 10)*float64(r.IntN(2))
	if k.InsideRadiant < -60 {
		k.InsideRadiant = -60
	}
	k.InsideHumidity = r.Float64()
	k.Sky = k.Outside - span(0, 30)
	k.Ground = k.Outside + span(-5, 5)
	k.Wind = span(0, 40) * float64(r.IntN(4)) / 3
	k.Tilt = span(0, 180)
	switch r.IntN(4) {
	case 0:
		k.Tilt = 90
	case 1:
		k.Tilt = float64(r.IntN(13)) * 15
	}
	k.Height = span(0.5, 6)
	k.OutsideConvection = OutsideConvection(r.IntN(int(OutsideGiven)))
	k.InsideConvection = InsideConvection(r.IntN(int(InsideGiven)))
	k.InnerFace = InnerFace(r.IntN(3))
	if r.IntN(3) == 0 {
		for i := range n {
			k.AbsorbedSun[i] = span(0, 200)
		}
	}
	return layers, gaps, k
}

// Over the whole domain the solver closes each face to 1e-9 W/m², energy is
// conserved through the cover, and the drives make up the total.
func TestAnyStackCloses(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	jumps, worst := 0, 0
	for i := range 40000 {
		layers, gaps, k := randomStack(r)
		c, err := NewCover(layers, gaps)
		require.NoError(t, err)
		s, err := c.Solve(k)
		require.NoError(t, err, "case %d: %+v %+v %+v", i, layers, gaps, k)
		require.LessOrEqual(t, s.Residual, 1e-9, "case %d", i)
		sun := 0.0
		for _, v := range k.AbsorbedSun {
			sun += v
		}
		require.InDelta(t, s.FluxIn+sun, s.FluxOut, 3e-9, "case %d", i)
		require.InDelta(t, s.FluxIn, s.AirDriven+s.SkyDriven+s.SunDriven, 2e-8, "case %d %+v %+v %+v", i, layers, gaps, k)
		for _, g := range s.Gaps[:s.Layers-1] {
			if g.AtJump {
				jumps++
			}
		}
		worst = max(worst, s.Iterations)
	}
	t.Logf("gaps at the jump: %d; most steps: %d", jumps, worst)
}
