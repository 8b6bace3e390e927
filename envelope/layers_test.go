package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// randomLayers draws a cover and conditions over the whole domain.
func randomLayers(r *rand.Rand) ([]Layer, []Gap, CoverConditions) {
	n := 1 + r.IntN(MaxLayers)
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	layers, gaps := make([]Layer, n), make([]Gap, n-1)
	for i := range layers {
		tau := 0.0
		if r.IntN(2) == 0 {
			tau = span(0, 0.9)
		}
		layers[i] = Layer{
			EmittanceOut: span(0.01, 1-tau), EmittanceIn: span(0.01, 1-tau), Transmittance: tau,
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
	k := DefaultCoverConditions()
	k.Inside, k.Outside = span(-60, 60), span(-60, 60)
	if r.IntN(20) == 0 {
		k.Inside = k.Outside
	}
	k.RadiantRise = max(-60-k.Inside, span(-10, 10)*float64(r.IntN(2)))
	k.InsideHumidity = r.Float64()
	k.SkyDrop = span(0, 30)
	k.GroundRise = span(-5, 5)
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
func TestAnyCoverCloses(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	jumps, worst := 0, 0
	for i := range 30000 {
		layers, gaps, k := randomLayers(r)
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

// extremeCover draws at the ends of the ranges, coefficients of zero and mirrors
// among them: films to boards, half a millimetre to two metres of air.
func extremeCover(r *rand.Rand) ([]Layer, []Gap, CoverConditions) {
	pick := func(low, high float64) float64 {
		switch r.IntN(4) {
		case 0:
			return low
		case 1:
			return high
		}
		if low > 0 {
			return low * math.Pow(high/low, r.Float64())
		}
		return low + (high-low)*r.Float64()
	}
	n := 1 + r.IntN(MaxLayers)
	layers, gaps := make([]Layer, n), make([]Gap, n-1)
	k := DefaultCoverConditions()
	for j := range layers {
		e := pick(0, 1)
		tau := (1 - e) * r.Float64() * float64(r.IntN(3)) / 2
		layers[j] = Layer{EmittanceOut: e, EmittanceIn: (1 - tau) * r.Float64(), Transmittance: tau, Thickness: pick(2e-5, 0.05), Conductivity: pick(0.02, 400)}
		if r.IntN(4) == 0 {
			layers[j].Openness = r.Float64()
			if j > 0 {
				layers[j].Leakage = pick(0, 0.5)
			}
		}
		k.AbsorbedSun[j] = pick(0, 400) * float64(r.IntN(2))
	}
	for j := range gaps {
		gaps[j] = Gap{Width: pick(5e-4, 2), Bridge: pick(0, 50) * float64(r.IntN(2))}
	}
	k.Inside, k.Outside = pick(-60, 60), pick(-60, 60)
	k.RadiantRise, k.GroundRise = min(100, max(-60, pick(-60, 100)-k.Inside)), min(80, max(-80, pick(-70, 90)-k.Outside))
	k.SkyDrop = max(-10, min(100, k.Outside-pick(-110, k.Outside+10))) // the sum may round beyond -10 where products are fused
	k.Wind, k.Pressure, k.Tilt, k.Height, k.InsideHumidity = pick(0, 40), pick(50e3, 110e3), pick(0, 180), pick(0.01, 100), pick(0, 1)
	k.OutsideConvection, k.InsideConvection = OutsideConvection(r.IntN(int(OutsideGiven)+1)), InsideConvection(r.IntN(int(InsideGiven)+1))
	k.InsideCoefficient, k.OutsideCoefficient = pick(0, 500), pick(0, 500)
	k.InnerFace = InnerFace(r.IntN(3))
	return layers, gaps, k
}

func TestExtremeCoversClose(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for i := range 15000 {
		layers, gaps, k := extremeCover(r)
		c, err := NewCover(layers, gaps)
		require.NoError(t, err)
		s, err := c.Solve(k)
		require.NoError(t, err, "case %d", i)
		require.LessOrEqual(t, s.Residual, 1e-9, "case %d", i)
		require.InDelta(t, s.FluxIn, s.AirDriven+s.SkyDriven+s.SunDriven, 1e-6*(1+math.Abs(s.FluxIn)), "case %d", i)
	}
}
