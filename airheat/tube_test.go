package airheat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// bruteTube is the same scheme written plainly, with the end pressure found by
// bisection and friction by bisection.
func bruteTube(t PerforatedTube, s TubeSupply) (end, fan float64, q []float64) {
	rho, nu := s.Properties.Density, s.Properties.Viscosity/s.Properties.Density
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
			f, err := tube.solveTo(make([]TubePosition, tube.Positions), s) // at any pressure
			require.NoError(t, err)
			end, fan, q := bruteTube(tube, s)
			require.InEpsilon(t, end, f.EndPressure, 2e-9)
			require.InDelta(t, fan, f.FanPressure, 2e-9*(math.Abs(fan)+end))
			for i, p := range f.Positions {
				require.InDelta(t, q[len(q)-1-i], p.Flow, 1e-9*flow)
			}
			require.InDelta(t, 0, f.Residual, 1e-11*flow)
			t.Logf("%+.3g marches %d evenness %.4f reversed %d", flow, f.Marches, f.Evenness, f.Reversed)
		}
	}
}

// Where friction rules, the far rows get a hundredth of the near ones; and in
// slow laminar flow it takes all pressure before the end, which is said.
func TestFrictionRulesALongTube(t *testing.T) {
	tube, s := tube150()
	tube.HoleDiameter, tube.HolesPerRow, tube.Positions, tube.Pitch, tube.Discharge, tube.Regain = 0.09, 1, 500, 0.9, 0.45, 0.5
	s.Flow = 3.6
	f, err := tube.Solve(s)
	require.NoError(t, err)
	require.Less(t, f.Evenness, 0.02)
	end, fan, q := bruteTube(tube, s)
	require.InEpsilon(t, end, f.EndPressure, 2e-9)
	require.InEpsilon(t, fan, f.FanPressure, 2e-9)
	require.InEpsilon(t, q[0], f.Positions[499].Flow, 2e-9)
	tube.Positions, s.Flow = 600, 0.01
	_, err = tube.Solve(s)
	require.ErrorIs(t, err, ErrNoSolution)
	require.ErrorContains(t, err, "friction")
}

// Without friction (a film so short that it has none to speak of) and with full
// regain the row flows follow the cosine, nearer the more rows there are.
func TestEvennessFollowsTheCosine(t *testing.T) {
	for _, ratio := range []float64{0.5, 1, 1.5} {
		tube := DefaultPerforatedTube()
		tube.Diameter, tube.Pitch, tube.LeadIn, tube.Roughness = 0.4, 1e-9, 0, 0
		last := math.Inf(1)
		for _, n := range []int{50, 500, 5000} {
			tube.Positions, tube.HolesPerRow = n, 1
			tube.HoleDiameter = 0.4 * math.Sqrt(ratio/float64(n))
			f, err := tube.Solve(TubeSupply{Flow: 0.5, Temperature: 20, House: 20, Properties: DryAir(20, 101325)})
			require.NoError(t, err)
			require.InEpsilon(t, ratio, f.AreaRatio, 1e-12)
			miss := math.Abs(f.FanToEnd - FrictionlessRatio(0.65, ratio))
			require.Less(t, miss, last/8, "ten times the rows: a tenth of the difference")
			last = miss
		}
		require.Less(t, last, 3e-4)
	}
	require.True(t, math.IsNaN(FrictionlessRatio(0.65, 3)))
	require.InDelta(t, 0.80, FrictionlessRatio(0.65, 1), 0.005)
	require.InDelta(t, 0.56, FrictionlessRatio(0.65, 1.5), 0.005)
	require.InDelta(t, 0.27, FrictionlessRatio(0.65, 2), 0.005)
}

func TestTubeKeepsMassAndEnergy(t *testing.T) {
	for _, tube := range tubes() {
		_, s := tube150()
		f, err := tube.solveTo(make([]TubePosition, tube.Positions), s)
		require.NoError(t, err)
		sum := 0.0
		for i, p := range f.Positions {
			if i > 0 {
				require.InDelta(t, f.Positions[i-1].Velocity-f.Positions[i-1].Flow/(math.Pi/4*tube.Diameter*tube.Diameter), p.Velocity, 1e-10*math.Abs(f.Positions[0].Velocity))
				require.InDelta(t, f.Positions[i-1].Distance+tube.Pitch, p.Distance, 1e-12*tube.Length())
			}
			sum += p.Flow
		}
		require.InEpsilon(t, s.Flow, sum, 1e-11)
		supplied := s.Flow * s.Properties.Density * s.Properties.HeatCapacity * (s.Temperature - s.House)
		require.InEpsilon(t, supplied, f.HolesHeat+f.WallHeat, 1e-9)
		require.InDelta(t, tube.Length(), f.Positions[len(f.Positions)-1].Distance, 1e-9)
	}
}

func TestTemperatureAlongTheTube(t *testing.T) {
	tube, s := tube150()
	tube.Positions = 12
	f, err := tube.solveTo(make([]TubePosition, tube.Positions), s)
	require.NoError(t, err)
	temp, leg := s.Temperature, tube.LeadIn
	for _, p := range f.Positions {
		m := s.Properties.Density * p.Velocity * math.Pi / 4 * 0.25
		temp = s.House + (temp-s.House)*math.Exp(-6*math.Pi*0.5*leg/(m*1006))
		require.InDelta(t, temp, p.Temperature, 1e-9)
		require.InDelta(t, p.Flow*s.Properties.Density*1006*(temp-s.House), p.Heat, 1e-8)
		require.InEpsilon(t, p.Flow/(0.65*2*math.Pi/4*0.0009), p.JetSpeed, 1e-12)
		leg = tube.Pitch
	}
	require.Less(t, f.HeatEven, f.Evenness)
}

func TestReversalNearTheFanIsReported(t *testing.T) {
	tube := DefaultPerforatedTube()
	tube.Diameter, tube.Pitch, tube.Positions, tube.HolesPerRow, tube.HoleDiameter, tube.LeadIn = 0.3, 0.1, 20, 10, 0.05, 0.5
	_, s := tube150()
	s.Flow = 0.5
	f, err := tube.Solve(s)
	require.NoError(t, err)
	require.Positive(t, f.Reversed)
	require.Negative(t, f.Evenness)
	require.Contains(t, tube.Warnings(f)[0], "draw house air in")
	supplied := s.Flow * s.Properties.Density * s.Properties.HeatCapacity * (s.Temperature - s.House)
	require.InEpsilon(t, supplied, f.HolesHeat+f.WallHeat, 1e-9)
	end, _, _ := bruteTube(tube, s)
	require.InEpsilon(t, end, f.EndPressure, 1e-9)
	// Rows used before leave nothing behind.
	used, err := tube.SolveTo(f.Positions, s)
	require.NoError(t, err)
	fresh, err := tube.Solve(s)
	require.NoError(t, err)
	require.Equal(t, fresh, used)
}

func TestHolesForAnEvenness(t *testing.T) {
	tube, s := tube150()
	for _, e := range []float64{0.8, 0.9, 0.97} {
		sized, f, err := tube.HolesFor(e, s)
		require.NoError(t, err)
		require.InDelta(t, e, f.Evenness, 1e-9)
		sized.HoleDiameter *= 0.9
		g, err := sized.Solve(s)
		require.NoError(t, err)
		require.Greater(t, g.Evenness, e)
		require.Greater(t, g.FanPressure, f.FanPressure)
	}
	_, _, err := tube.HolesFor(1.2, s)
	require.ErrorIs(t, err, ErrRange)
	long := tube
	long.Diameter, long.Pitch, long.Positions = 0.02, 1, 150
	s.Flow = 0.02
	_, _, err = long.HolesFor(0.95, s)
	require.ErrorIs(t, err, ErrNoSolution)
}

func TestTubeFaultsAreListed(t *testing.T) {
	_, err := PerforatedTube{Diameter: 0.1, HolesPerRow: 10, HoleDiameter: 0.4}.Solve(TubeSupply{Temperature: 300})
	for _, s := range []string{"Positions", "do not fit", "Discharge", "TubeSupply.Flow", "TubeSupply.Temperature", "TubeSupply.Properties.Density"} {
		require.ErrorContains(t, err, s)
	}
	tube, s := tube150()
	tube.Positions = 0
	_, err = tube.Solve(s)
	require.ErrorContains(t, err, "Positions is 0, allowed 1")
}

// Rows as open as the tube feed one another, and a supply that no film bears has
// no answer; the largest that is still answered keeps its law.
func TestTubesThatCannotWorkAreRefused(t *testing.T) {
	tube := DefaultPerforatedTube()
	tube.Diameter, tube.LeadIn, tube.Pitch = 0.3, 1, 1
	supply := TubeSupply{Flow: 0.3, Temperature: 45, House: 10, Properties: DryAir(45, 101325)}
	tube.Positions, tube.HolesPerRow, tube.HoleDiameter = 3, 3, 0.24
	_, err := tube.Solve(supply)
	require.ErrorIs(t, err, ErrRange)
	require.ErrorContains(t, err, "as open as the tube")
	tube.Positions, tube.HolesPerRow, tube.HoleDiameter = 1, 6, 0.011
	supply.Flow = 0.8
	_, err = tube.Solve(supply)
	require.ErrorIs(t, err, ErrNoSolution)
	require.ErrorContains(t, err, "5000 Pa")
	// A jet of 5,000 Pa has 94 m/s: all but it is refused.
	holes := 0.65 * 6 * math.Pi / 4 * 0.011 * 0.011
	limit := holes * math.Sqrt(2*5000/supply.Properties.Density)
	for _, c := range []struct {
		share float64
		works bool
	}{{0.999, true}, {1.002, false}} {
		supply.Flow = c.share * limit
		f, err := tube.Solve(supply)
		require.Equal(t, c.works, err == nil, "%v", err)
		if c.works {
			require.InEpsilon(t, 5000*c.share*c.share, f.EndPressure, 1e-6)
		}
	}
}

// Over random tubes every answer moves all its air away from the fan and keeps
// between the temperatures of supply and house.
func TestTubesKeepBetweenSupplyAndHouse(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 5))
	solved := 0
	for range 3000 {
		tube := DefaultPerforatedTube()
		tube.Diameter = 0.05 + 0.5*r.Float64()
		tube.LeadIn, tube.Pitch = 3*r.Float64(), 0.05+r.Float64()
		tube.Positions, tube.HolesPerRow = 1+r.IntN(30), 1+r.IntN(4)
		tube.HoleDiameter = tube.Diameter * (0.02 + 0.9*r.Float64()*r.Float64())
		s := TubeSupply{Flow: 0.01 + r.Float64(), Temperature: 45, House: 10, Properties: DryAir(45, 101325)}
		f, err := tube.Solve(s)
		if err != nil {
			continue
		}
		solved++
		for _, p := range f.Positions {
			require.GreaterOrEqual(t, p.Velocity, 0.0, "%+v", tube)
			require.LessOrEqual(t, p.Temperature, 45+1e-9, "%+v", tube)
			require.GreaterOrEqual(t, p.Temperature, 10-1e-9, "%+v", tube)
		}
	}
	require.Greater(t, solved, 1000)
}
