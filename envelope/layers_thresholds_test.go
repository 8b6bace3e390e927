package envelope

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// Where the formula of a wet face ends: at a mole fraction of 0.95 from 60 °C up,
// at -100 °C and, of the heat of evaporation, at 110 °C.
func TestEndsOfAWetFace(t *testing.T) {
	for _, p := range []float64{50e3, 101325, 110e3} {
		s, err := psychro.FromRelativeHumidity(20, 0.5, p)
		require.NoError(t, err)
		room := roomOf(s)
		require.Equal(t, 59.9, room.warmest(59.9))
		end := room.warmest(60.1)
		require.InEpsilon(t, 0.95*p, psychro.SaturationPressure(end), 1e-6)
		require.Less(t, psychro.SaturationPressure(surelyBelow)/p, mostSaturated)
		w := room.wetAt(end)
		beyond := room.wetAt(end + 10)
		require.InEpsilon(t, w.ratio+10*w.slope, beyond.ratio, 1e-12)
		require.Equal(t, w.perH, beyond.perH)
	}
	require.Equal(t, psychro.LatentHeatOver(psychro.Ice, -100), latentHeat(-150, true))
	require.Equal(t, psychro.LatentHeatOver(psychro.Liquid, 110), latentHeat(150, false))
	require.Equal(t, psychro.LatentHeatOver(psychro.Liquid, -40), evaporation(-90))
	require.InEpsilon(t, evaporationBend, psychro.LatentHeatOver(psychro.Liquid, 20.5)-psychro.LatentHeatOver(psychro.Liquid, 19.5), 2e-3)
}

// The pressure of saturated air over that of water alone, as steps take it.
func TestEnhancementOfSteps(t *testing.T) {
	for _, p := range []float64{80e3, 101325} {
		s, err := psychro.FromRelativeHumidity(15, 0.8, p)
		require.NoError(t, err)
		room := roomOf(s)
		const d = 0.01
		w, a, b := room.wetAt(8), room.wetAt(8-d), room.wetAt(8+d)
		require.InEpsilon(t, (b.ratio-a.ratio)/(2*d), w.slope, 3e-4)
		require.InEpsilon(t, (b.perH-a.perH)/(2*d*w.perH), w.bends, 0.15)
	}
}

// A face in saturated air behind fans, whose heat the last digit of its temperature
// moves by more than balances are closed to.
func TestFacesThatRoundingLeavesOpen(t *testing.T) {
	c, err := NewCover([]Layer{{EmittanceIn: 0.5619478600315125, Thickness: 0.0011614440336357602, Conductivity: 400}}, nil)
	require.NoError(t, err)
	k := DefaultCoverConditions()
	k.Inside, k.RadiantRise, k.InsideHumidity, k.Outside = 60, -25.972460781039132, 1, -49.67047628382241
	k.SkyDrop, k.GroundRise, k.Wind, k.Pressure = 60.32952371617759, -20.32952371617759, 0, 50000
	k.Tilt, k.Height, k.OutsideConvection = 121.68966889141211, 100, OutsideISO6946
	k.InsideConvection, k.InsideCoefficient, k.InnerFace = InsideGiven, 500, InnerAuto
	k.AbsorbedSun[0] = 313.4725454757741
	s, err := c.Solve(k)
	require.NoError(t, err)
	require.Less(t, s.Residual, roundingLimit)
	require.InDelta(t, 60, s.Inner[0].Temperature, 0.1)
}
