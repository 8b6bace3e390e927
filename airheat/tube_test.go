package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// bruteTube is the same scheme written plainly, with the end pressure found by
// bisection and friction by bisection.
func bruteTube(t PerforatedTube, s TubeSupply) (end, fan float64, q []float64) {
	rho, nu := s.Air.Density, s.Air.Viscosity/s.Air.Density
	area := math.Pi / 4 * t.Diameter * t.Diameter
	hole := float64(t.HolesPerRow) * math.Pi / 4 * t.HoleDiameter * t.HoleDiameter
	friction := func(v float64) float64 {
		re := math.Abs(v) * t.Diameter / nu
		switch rough := t.Roughness / t.Diameter; {
		case re == 0:
			return 0
		case re <= 2300:
			return 64 / re
		case re < 4000:
			return 64.0/2300 + (colebrookByBisection(4000, rough)-64.0/2300)*(re-2300)/1700
		default:
			return colebrookByBisection(re, rough)
		}
	}
	march := func(p float64) float64 {
		q = q[:0]
		v := 0.0
		for i := t.Positions; i >= 1; i-- {
			qi := t.Discharge * hole * math.Sqrt(2*math.Abs(p)/rho)
			if p < 0 {
				qi = -qi
			}
			q = append(q, qi)
			up := v + qi/area
			p -= t.Regain * rho / 2 * (up*up - v*v)
			v = up
			leg := t.Pitch
			if i == 1 {
				leg = t.LeadIn
			}
			p += friction(v) * leg / t.Diameter * rho * v * math.Abs(v) / 2
		}
		fan = p
		return v * area
	}
	lo, hi := 0.0, 1.0
	for march(hi) < s.Flow {
		hi *= 2
	}
	for range 60 {
		mid := 0.5 * (lo + hi)
		if march(mid) < s.Flow {
			lo = mid
		} else {
			hi = mid
		}
	}
	march(lo)
	return lo, fan, q
}

func tubes() []PerforatedTube {
	a, _ := tube150()
	a.Positions = 60
	b := a
	b.Diameter, b.Roughness, b.Regain, b.HolesPerRow = 0.3, 0.3e-3, 0.6, 4
	c := a
	c.Diameter, c.HoleDiameter, c.Pitch, c.Positions = 0.16, 0.008, 0.6, 40
	d := a
	d.Diameter, d.HoleDiameter, d.HolesPerRow, d.Positions, d.LeadIn = 0.25, 0.05, 3, 30, 0 // reversal
	e := a
	e.Positions, e.HolesPerRow = 1, 1
	return []PerforatedTube{a, b, c, d, e}
}

func TestTubeFollowsTheMarchingScheme(t *testing.T) {
	for _, tube := range tubes() {
		for _, flow := range []float64{0.01, 0.2, 0.9} {
			_, s := tube150()
			s.Flow = flow
			f, err := tube.Solve(s)
			require.NoError(t, err)
			end, fan, q := bruteTube(tube, s)
			require.InEpsilon(t, end, f.EndPressure, 1e-10)
			require.InDelta(t, fan, f.FanPressure, 1e-10*(math.Abs(fan)+end))
			for i, p := range f.Positions {
				require.InDelta(t, q[len(q)-1-i], p.Flow, 1e-10*flow)
			}
			require.InDelta(t, 0, f.Residual, 1e-11*flow)
			t.Logf("%+.3g marches %d evenness %.4f reversed %d", flow, f.Marches, f.Evenness, f.Reversed)
		}
	}
}
