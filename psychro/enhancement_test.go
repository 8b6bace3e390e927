package psychro

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// The logarithm of the factor and its slope against the factor itself; the slope
// steers the solvers and needs no more than this.
func TestEnhancementSlope(t *testing.T) {
	for _, s := range []Surface{Liquid, Ice} {
		for _, p := range []float64{30e3, 101325, 200e3} {
			for _, at := range []float64{-99, -60, -20, -1, 5, 40, 60} {
				if s == Ice && at > 0 || s == Liquid && at < -20 {
					continue
				}
				f := func(at float64) float64 {
					return math.Log(enhancement(s, 1/(at+kelvin), p, pureSaturation(s, at)/p))
				}
				rise := iceLogSlope(at)
				if s == Liquid {
					root, x := liquidRoot(at + kelvin)
					rise = liquidLogSlope(at+kelvin, x, root)
				}
				caa, caw, cww := caloric(100 / (at + kelvin))
				logF, slope := enhancementSlope(s, 1/(at+kelvin), p, pureSaturation(s, at)/p, rise, caa, caw, cww)
				require.InDelta(t, f(at), logF, 2e-11)
				require.InDelta(t, (f(at+0.01)-f(at-0.01))/0.02, slope, 3e-4*math.Abs(slope)+1e-9)
			}
		}
	}
}

// The series of the logarithm, at the largest deviation in range.
func TestEnhancementSeries(t *testing.T) {
	at, p := -100.0, 200e3
	ps := iceSaturation(at)
	caa, caw, cww := caloric(100 / (at + kelvin))
	logF, _ := enhancementSlope(Ice, 1/(at+kelvin), p, ps/p, iceLogSlope(at), caa, caw, cww)
	require.InDelta(t, 0.0245, logF, 0.001)
	require.InDelta(t, math.Log(enhancement(Ice, 1/(at+kelvin), p, ps/p)), logF, 1e-11)
}

// The molar volumes of the condensed phases from their densities: ice at 0 °C
// 916.7 kg/m³, liquid water 989 kg/m³ near 47 °C.
func TestCondensedVolumes(t *testing.T) {
	require.InDelta(t, 1e6*molarWater/916.7, volumeIce, 0.01)
	require.InDelta(t, 1e6*molarWater/989.4, volumeLiquid, 0.05)
}

// The dew point by its quick path and by the plain iteration.
func TestDewPointPaths(t *testing.T) {
	for _, s := range []Surface{Liquid, Ice} {
		for _, p := range []float64{30e3, 60e3, 85e3, 101325, 150e3, 200e3} {
			for at := -99.0; at < 68; at += 0.7 {
				if s == Ice && at > 0 || s == Liquid && at < -39 {
					continue
				}
				e := pureSaturation(s, at)
				quick := liquidDewPoint
				if s == Ice {
					quick = frostPoint
				}
				require.InDelta(t, refineDewPoint(s, e, p), quick(e/p, p), 5e-10, "%v %g %g", s, at, p)
			}
		}
	}
}

// The guesses that save an iteration must be good where they are meant to be:
// then the quick path is the one taken.
func TestDewPointGuesses(t *testing.T) {
	for p := 60e3; p <= 110e3; p += 5e3 {
		for at := -60.0; at < 45; at++ {
			s := SurfaceAt(at)
			e := pureSaturation(s, at)
			e *= enhancement(s, 1/(at+kelvin), p, e/p)
			logF := math.Log(e / pureSaturation(s, at))
			guess := 0.0
			if s == Ice {
				l := math.Log(e / triplePressure)
				guess = p*(gi0+l*(gi1+l*gi2)) + e*(gi3+l*gi4)
			} else {
				b := math.Sqrt(math.Sqrt(e * 1e-6))
				guess = p*(gl0+b*(gl1+b*gl2)) + e*(gl3+b*gl4)
			}
			room := 9e-5
			if s == Ice {
				room = 3e-5
			}
			require.InDelta(t, logF, guess, room, "%g %g", at, p)
		}
	}
}

// The check value of [IapwsAir15], the fugacity of water vapour at 300 K, 1 MPa
// and a mole fraction of 0.1: ten times the pressure that this package accepts
// and thirty times saturated, so that third virials count, which it leaves out,
// and the water-water coefficient of [HylWex83], 2.4 % above that of IAPWS-95.
// At 0.1 MPa, near saturation, both together are 0.008 %.
func TestFugacityOfG11(t *testing.T) {
	fugacity := func(p, x float64, third bool) float64 {
		const T = 300.0
		aa, aw, ww := virials(100 / T)
		xa, k := 1-x, p*1e-6/(gasConstant*T)
		beta := x*(2-x)*ww + xa*xa*(2*aw-aa) // eq. 3
		// Third virials at 300 K, cm⁶/mol²: Caaa, Caaw, Caww, Cwww of
		// iapws 1.5.2, humidAir._virial(300).
		const aaa, aaw, aww, www = 1811.666, 801.9777, -155552.8, -4204191.96
		gamma := x*x*(3-2*x)*www + xa*xa*(6*x*aww+3*(1-2*x)*aaw-2*xa*aaa) +
			(x*x*ww+2*x*xa*aw+xa*xa*aa)*(x*(3*x-4)*ww+2*xa*(3*x-2)*aw+3*xa*xa*aa) // eq. 4
		if !third {
			gamma = 0
		}
		return x * p * math.Exp(beta*k+0.5*gamma*k*k) // eq. 2
	}
	check.Run(t, []check.Row{
		{Where: "IapwsAir15/check,second virials", Printed: "0.0884061686", Tol: 1.6e-3, Why: "third virials left out"},
	}, func(...float64) float64 { return fugacity(1e6, 0.1, false) * 1e-6 })
	check.Run(t, []check.Row{
		{Where: "IapwsAir15/check,third virials", Printed: "0.0884061686", Tol: 2e-4, Why: "the water-water coefficient of 1983"},
	}, func(...float64) float64 { return fugacity(1e6, 0.1, true) * 1e-6 })
	// humidAir._fugacity(300, 0.1, 0.03) of iapws 1.5.2, MPa.
	require.InEpsilon(t, 0.0029855998, fugacity(1e5, 0.03, false)*1e-6, 9e-5)
}
