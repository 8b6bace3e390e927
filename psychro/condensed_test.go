package psychro

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Liquid water at atmospheric pressure: the saturated liquid of the steam
// tables (IAPWS-95, kJ/kg, from memory) and the work of raising it to 101325 Pa.
func TestLiquidEnthalpy(t *testing.T) {
	for _, r := range []struct{ t, table, tol float64 }{
		{20, 83.914, 25}, {40, 167.53, 20}, {60, 251.18, 40}, {80, 335.01, 40}, {100, 419.17, 60},
	} {
		raised := 1000*r.table + 1.01e-3*(101325-SaturationPressure(r.t))
		require.InDelta(t, raised, LiquidEnthalpy(r.t), r.tol, "%g °C", r.t)
	}
	require.InDelta(t, 0.611+1.0e-3*(101325-612), LiquidEnthalpy(TriplePoint), 5)
	require.InEpsilon(t, 2675600, SteamEnthalpy(100), 2e-3) // steam tables, from memory
}

// Ice: its enthalpy at 0 °C and its heat capacity there by IAPWS R10-06
// (from memory), and below by the equation of Clausius and Clapeyron on the
// sublimation line, which knows nothing of the fit.
func TestIceEnthalpy(t *testing.T) {
	h, c := RealGas.condensedSlope(Ice, 0)
	require.InDelta(t, -333444, h, 80)
	require.InDelta(t, 2096.7, c, 5)
	residual := func(at float64) float64 {
		T := at + kelvin
		ps := SaturationPressureOver(Ice, at)
		_, _, bww := virials(100 / T)
		volume := gasConstant*T/ps + 1e-6*bww - 19.65e-6
		return T*volume*SaturationSlopeOver(Ice, at)/molarWater - LatentHeatOver(Ice, at)
	}
	for at := -80.0; at < 0; at += 10 {
		require.InDelta(t, residual(0), residual(at), 160, "%g °C", at)
	}
}

// The derivatives that the wet bulb uses.
func TestCondensedSlope(t *testing.T) {
	for _, m := range []Model{RealGas, IdealGas} {
		for _, s := range []Surface{Liquid, Ice} {
			for at := -30.0; at < 1; at += 5 {
				_, c := m.condensedSlope(s, at)
				require.InEpsilon(t, (m.condensed(s, at+0.01)-m.condensed(s, at-0.01))/0.02, c, 1e-8)
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
			ws := IdealGas.SaturationHumidityRatioOver(s, tw, 95e3)
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
				require.InDelta(t, (up-2*y+down)/(d*d)/slope, bend, 5e-3*bend, "%v %g", surface, tw)
			}
		}
	}
}
