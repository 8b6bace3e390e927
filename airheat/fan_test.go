package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/solve"
)

func TestFanTableIsLinearAndKeepsItsPoints(t *testing.T) {
	q, p := []float64{0, 0.2, 0.5, 0.9}, []float64{200, 230, 180, 10}
	f, err := NewFanTable(q, p)
	require.NoError(t, err)
	for i := range q {
		require.InDelta(t, p[i], f.Pressure(q[i], 1, 1.2), 1e-12)
	}
	require.InDelta(t, 205, f.Pressure(0.35, 1, 1.2), 1e-12)
	require.True(t, math.IsNaN(f.Pressure(0.95, 1, 1.2)))
	peakFlow, peak := f.peakPoint()
	require.Equal(t, []float64{0.2, 230}, []float64{peakFlow, peak})
	first, last := f.flowRange()
	require.Equal(t, []float64{0, 0.9}, []float64{first, last})
}

func TestFanLaws(t *testing.T) {
	f, err := NewFanPolynomial(0, 1, 250, 120, -380)
	require.NoError(t, err)
	for _, n := range []float64{0.4, 0.9, 1.3} {
		for _, rho := range []float64{0.9, 1.2, 1.34} {
			for _, q := range []float64{0.05, 0.3, 0.7} {
				want := n * n * rho / 1.2 * (250 + 120*q - 380*q*q)
				require.InEpsilon(t, want, f.Pressure(n*q, n, rho), 1e-12)
			}
		}
	}
}

// On fittings alone the system is quadratic, so the point moves with the speed
// along Q ~ n, p ~ n², P ~ n³, and the flow does not know the density.
func TestFanLawsMoveTheOperatingPoint(t *testing.T) {
	s, err := NewSystem(Segment{Section: Round(0.3), Fittings: 7})
	require.NoError(t, err)
	f, err := NewFanTable([]float64{0, 0.3, 0.6, 0.9}, []float64{250, 240, 170, 0})
	require.NoError(t, err)
	d := DefaultFanDrive()
	base, err := s.OperatingPoint(f, d, DryAir(20, 101325))
	require.NoError(t, err)
	for _, n := range []float64{0.5, 0.8, 1.4} {
		d.Speed = n
		p, err := s.OperatingPoint(f, d, DryAir(20, 101325))
		require.NoError(t, err)
		require.InEpsilon(t, n*base.Flow, p.Flow, 1e-12)
		require.InEpsilon(t, n*n*base.Pressure, p.Pressure, 1e-12)
		require.InEpsilon(t, n*n*n*base.ElectricPower, p.ElectricPower, 1e-12)
	}
	d.Speed = 1
	thin, err := s.OperatingPoint(f, d, DryAir(20, 80000))
	require.NoError(t, err)
	require.InEpsilon(t, base.Flow, thin.Flow, 1e-12)
	require.InEpsilon(t, base.Pressure*80000/101325, thin.Pressure, 1e-12)
}

// every finds all roots of fan minus system by a fine scan and bisection.
func every(s System, f Fan, d FanDrive, air AirProperties) (roots []float64) {
	first, last := f.flowRange()
	g := func(q float64) float64 { return f.Pressure(q, d.Speed, air.Density) - s.Loss(q, air) }
	const n = 6000
	a, b := first*d.Speed, last*d.Speed
	for i := range n {
		x, y := a+(b-a)*float64(i)/n, a+(b-a)*float64(i+1)/n
		if i == n-1 {
			y = b * (1 - 1e-15)
		}
		if g(x)*g(y) < 0 {
			r, _ := solve.Root(g, x, y, 0)
			roots = append(roots, r)
		}
	}
	return roots
}

func TestEveryIntersectionIsFound(t *testing.T) {
	tables := [][2][]float64{
		{{0, 0.1, 0.2, 0.3, 0.45, 0.7}, {130, 60, 40, 95, 120, 0}}, // stall dip
		{{0, 0.2, 0.3, 0.6}, {260, 150, 190, 0}},
		{{0, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.6}, {30, 5, 20, 8, 40, 30, 90, 0}},
	}
	air := DryAir(10, 98000)
	most := 0
	try := func(f Fan) {
		for _, k := range []float64{0.5, 2, 6, 10, 14, 20, 28, 40, 80} {
			for _, dia := range []float64{0.2, 0.3, 0.9} {
				s, err := NewSystem(Segment{Section: Round(dia), Length: 9, Roughness: 0.2e-3, Fittings: k * dia * dia * dia * dia * 100}, Segment{Section: Rectangular(2, 1), Length: 3, Fittings: 1})
				require.NoError(t, err)
				for _, n := range []float64{0.7, 1} {
					d := DefaultFanDrive()
					d.Speed = n
					all, err := s.Intersections(f, d, air)
					require.NoError(t, err)
					want := every(s, f, d, air)
					require.Len(t, all, len(want), "K %g D %g n %g: %v against %v", k, dia, n, all, want)
					for i, w := range want {
						require.InEpsilon(t, w, all[i].Flow, 1e-10)
						require.InDelta(t, s.Loss(w, air), all[i].Pressure, 1e-9*(1+math.Abs(all[i].Pressure)))
						require.Equal(t, (len(want)-1-i)%2 == 0, all[i].Stable, "from the right: stable, unstable, stable")
					}
					p, err := s.OperatingPoint(f, d, air)
					if len(want) == 0 {
						require.ErrorIs(t, err, ErrNoSolution)
						continue
					}
					require.NoError(t, err)
					require.Equal(t, all[len(all)-1], p.Intersection)
					require.Equal(t, len(all), p.Count)
					most = max(most, len(all))
				}
			}
		}
	}
	for _, tab := range tables {
		f, err := NewFanTable(tab[0], tab[1])
		require.NoError(t, err)
		try(f)
	}
	for _, c := range [][]float64{{140, -900, 5200, -7000}, {90, -300, 1800, 500, -6000}} {
		f, err := NewFanPolynomial(0, 0.6, c...)
		require.NoError(t, err)
		try(f)
	}
	require.GreaterOrEqual(t, most, 3)
}

func TestBadFansListAllFaults(t *testing.T) {
	_, err := NewFanTable([]float64{0, 0.2, 0.1, -1}, []float64{1, math.NaN(), 2e5})
	for _, s := range []string{"4 flows and 3 pressures", "flow[2]", "flow[3]", "pressure[1]", "pressure[2]"} {
		require.ErrorContains(t, err, s)
	}
	_, err = NewFanTable([]float64{1}, []float64{1})
	require.ErrorContains(t, err, "at least 2")
	_, err = NewFanPolynomial(1, 0.5, math.Inf(1))
	require.ErrorContains(t, err, "last")
	require.ErrorContains(t, err, "coefficients[0]")
	_, err = NewFanPolynomial(0, 1)
	require.ErrorIs(t, err, ErrRange)
	s, f := benchSystem(t)
	_, err = s.OperatingPoint(Fan{}, FanDrive{}, AirProperties{})
	for _, w := range []string{"fan is empty", "FanDrive.Speed", "FanDrive.FanEfficiency", "air.Density", "air.Viscosity"} {
		require.ErrorContains(t, err, w)
	}
	_, err = System{}.OperatingPoint(f, DefaultFanDrive(), DryAir(20, 101325))
	require.ErrorContains(t, err, "duct system is empty")
}

func TestNoCrossingSaysWhy(t *testing.T) {
	s, _ := benchSystem(t)
	short, err := NewFanTable([]float64{0, 0.01}, []float64{200, 190})
	require.NoError(t, err)
	_, err = s.OperatingPoint(short, DefaultFanDrive(), DryAir(20, 101325))
	require.ErrorIs(t, err, ErrNoSolution)
	require.ErrorContains(t, err, "must reach further")
	weak, err := NewFanTable([]float64{0.5, 0.9}, []float64{2, 1})
	require.NoError(t, err)
	_, err = s.OperatingPoint(weak, DefaultFanDrive(), DryAir(20, 101325))
	require.ErrorContains(t, err, "stays below")
}

func TestPowersAndRise(t *testing.T) {
	s, f := benchSystem(t)
	air := DryAir(20, 101325)
	d := FanDrive{Speed: 1, FanEfficiency: 0.6, MotorEfficiency: 0.8}
	p, err := s.OperatingPoint(f, d, air)
	require.NoError(t, err)
	require.InEpsilon(t, p.Flow*p.Pressure, p.AirPower, 1e-15)
	require.InEpsilon(t, p.AirPower/0.6, p.ShaftPower, 1e-15)
	require.InEpsilon(t, p.ShaftPower/0.8, p.ElectricPower, 1e-15)
	require.InEpsilon(t, p.ShaftPower/(air.Density*p.Flow*1006), p.Rise, 1e-14)
	require.InEpsilon(t, FanRise(p.Pressure, 0.6, air), p.Rise, 1e-14)
	require.InEpsilon(t, p.ElectricPower/p.Flow, p.SpecificFanPower, 1e-15)
	require.InDelta(t, s.Loss(p.Flow, air), p.Pressure, 1e-10*p.Pressure)
	d.MotorInStream = true
	in, err := s.OperatingPoint(f, d, air)
	require.NoError(t, err)
	require.InEpsilon(t, p.Rise/0.8, in.Rise, 1e-14)
	require.True(t, math.IsNaN(FanRise(100, 60, air)))
}

func TestOperatingPointAllocatesNothing(t *testing.T) {
	s, f := benchSystem(t)
	air := DryAir(20, 101325)
	d := DefaultFanDrive()
	require.Zero(t, testing.AllocsPerRun(100, func() {
		_, _ = s.OperatingPoint(f, d, air)
	}))
	tube, supply := tube150()
	dst := make([]TubePosition, tube.Positions)
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = tube.SolveTo(dst, supply) }))
}

// A heater between fan and ducts: the fan works on cold air, the ducts carry the
// same mass hot. The operating point balances the fan's pressure at its own flow
// and density with the ducts' loss at theirs, and lies elsewhere than with either
// density throughout.
func TestAHeaterBetweenFanAndDucts(t *testing.T) {
	s, f := benchSystem(t)
	cold, hot := DryAir(10, 101325), DryAir(60, 101325)
	drive := DefaultFanDrive()
	drive.Inlet = cold
	p, err := s.OperatingPoint(f, drive, hot)
	require.NoError(t, err)
	require.InEpsilon(t, cold.Density*p.Flow, hot.Density*p.DuctFlow, 1e-12)
	require.InEpsilon(t, f.Pressure(p.Flow, 1, cold.Density), s.Loss(p.DuctFlow, hot), 1e-9)
	require.InEpsilon(t, p.Pressure, s.Loss(p.DuctFlow, hot), 1e-9)
	require.InEpsilon(t, p.HeatToAir, cold.Density*p.Flow*cold.HeatCapacity*p.Rise, 1e-9)
	all, err := s.Intersections(f, drive, hot)
	require.NoError(t, err)
	require.Equal(t, p.Intersection, all[len(all)-1])
	drive.Inlet = AirProperties{}
	q, err := s.OperatingPoint(f, drive, hot)
	require.NoError(t, err)
	require.Equal(t, q.Flow, q.DuctFlow)
	require.Greater(t, p.Pressure, 1.05*q.Pressure)
	c, err := s.OperatingPoint(f, drive, cold)
	require.NoError(t, err)
	require.Less(t, p.Flow, c.Flow)
	// The same through a tree of one branch.
	tree, err := NewTree(Branch{Parent: -1, Segments: []Segment{
		{Section: Round(0.315), Length: 4, Roughness: 0.15e-3, Fittings: 1.3},
		{Section: Rectangular(0.35, 0.2), Length: 6, Roughness: 0.15e-3, Fittings: 0.6},
		{Section: Round(0.28), Length: 3, Roughness: 0.9e-3, Fittings: 0.4},
		{Section: Round(0.25), Length: 8, Roughness: 0.15e-3, Fittings: 0.9},
		{Section: Round(0.25), Length: 2, Roughness: 3e-3, Fittings: 1.1},
	}})
	require.NoError(t, err)
	drive.Inlet = cold
	b, flows, err := tree.OperatingPoint(f, drive, hot)
	require.NoError(t, err)
	require.InEpsilon(t, p.Flow, b.Flow, 1e-9)
	require.InEpsilon(t, p.DuctFlow, flows.Branches[0].Flow, 1e-9)
	drive.Inlet.Density = 120
	_, err = s.OperatingPoint(f, drive, hot)
	require.ErrorContains(t, err, "FanDrive.Inlet.Density")
}
