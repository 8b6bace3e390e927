package psychro

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The fits of condensed water against IAPWS, and what they make of the latent
// heats with the vapour of [HylWex83].
func TestCondensedWaterAgainstIapws(t *testing.T) {
	n, col := ReadColumns(t, "water.csv")
	at, liquid, slope := col("t_C"), col("h_liquid_IAPWS95_J_per_kg"), col("cp_liquid_IAPWS95_J_per_kg_K")
	if97, ice, iceSlope, latent := col("h_liquid_IF97_J_per_kg"), col("h_ice_R10_J_per_kg"), col("cp_ice_R10_J_per_kg_K"), col("latent_heat_J_per_kg")
	seen := [3]int{}
	for i := range n {
		where := fmt.Sprintf("%g °C", at[i])
		if !math.IsNaN(liquid[i]) {
			seen[0]++
			h, c := RealGas.condensedSlope(Liquid, at[i])
			require.InDelta(t, liquid[i], h, bar(at[i] < 0, 25, 4), where)
			require.InDelta(t, slope[i], c, bar(at[i] < 0, 40, 3), where)
			switch at[i] { // how the fit lies on the reference at the cold end
			case -35:
				require.InDelta(t, liquid[i]+24.3, h, 1, where)
			case -20:
				require.InDelta(t, liquid[i]-1.1, h, 0.5, where)
			}
		}
		if !math.IsNaN(if97[i]) { // the two lie up to 70 J/kg apart themselves
			require.InDelta(t, if97[i], RealGas.condensed(Liquid, at[i]), 75, where)
		}
		if !math.IsNaN(ice[i]) {
			seen[1]++
			h, c := RealGas.condensedSlope(Ice, at[i])
			require.InDelta(t, ice[i], h, 2.5, where)
			require.InDelta(t, iceSlope[i], c, 0.7, where)
		}
		if !math.IsNaN(latent[i]) {
			seen[2]++
			require.InEpsilon(t, latent[i], LatentHeat(at[i]), bar(at[i] > 90, 2e-4, 1.3e-4), where)
			if at[i] >= TriplePoint {
				require.InDelta(t, liquid[i]+latent[i], SteamEnthalpy(at[i]), bar(at[i] > 90, 450, 250), where)
			}
		}
	}
	require.GreaterOrEqual(t, seen[0], 30)
	require.GreaterOrEqual(t, seen[1], 15)
	require.GreaterOrEqual(t, seen[2], 35)
}

func bar(wide bool, far, near float64) float64 {
	if wide {
		return far
	}
	return near
}

// The derivatives that the wet bulb uses.
func TestCondensedSlope(t *testing.T) {
	for _, m := range []Model{RealGas, IdealGas} {
		for _, s := range []Surface{Liquid, Ice} {
			for at := -30.0; at < 1; at += 5 {
				_, c := m.condensedSlope(s, at)
				require.InEpsilon(t, (m.condensed(s, at+0.01)-m.condensed(s, at-0.01))/0.02, c, 1e-6)
			}
		}
	}
}

// [HoF17] ch. 1 eq. 33 and 35 as they are printed, kJ and °C.
func TestHandbookWetBulbEquations(t *testing.T) {
	for _, tw := range []float64{-20, -8, -1, 0.5, 9, 25} {
		s := SurfaceAt(tw)
		for _, d := range []float64{0.1, 1, 2} {
			at := tw + d
			ws := ratioOf(IdealGas.saturated(s, tw, 95e3))
			want := ((2501-2.326*tw)*ws - 1.006*(at-tw)) / (2501 + 1.86*at - 4.186*tw) // eq. 33
			if s == Ice {
				want = ((2830-0.24*tw)*ws - 1.006*(at-tw)) / (2830 + 1.86*at - 2.1*tw) // eq. 35
			}
			if want < 0 {
				continue
			}
			got, err := IdealGas.FromWetBulb(at, tw, 95e3)
			require.NoError(t, err)
			require.InEpsilon(t, want, got.HumidityRatio(), 1e-9)
		}
	}
}

// Every literal of the slope and the bend that steer the wet bulb, against
// differences of the balance.
func TestBulbSlopes(t *testing.T) {
	for _, m := range []Model{RealGas, IdealGas} {
		s, err := m.FromRelativeHumidity(30, 0.3, 9e4)
		require.NoError(t, err)
		h := s.Enthalpy()
		for _, surface := range []Surface{Liquid, Ice} {
			for tw := -20.0; tw < 29; tw += 3 {
				if surface == Ice && tw > 0 {
					continue
				}
				y, slope, bend := s.bulb(surface, tw, h)
				require.InDelta(t, s.bulbBalance(surface, tw, h), y, 1e-6)
				const d = 0.01
				up, down := s.bulbBalance(surface, tw+d, h), s.bulbBalance(surface, tw-d, h)
				require.InEpsilon(t, (up-down)/(2*d), slope, 1e-6, "%v %g", surface, tw)
				room := 5e-3
				if surface == Liquid && tw < 0 { // supercooled, off the line that bend is fitted to
					room = 0.015
				}
				require.InDelta(t, (up-2*y+down)/(d*d)/slope, bend, room*bend, "%v %g", surface, tw)
			}
		}
	}
}
