package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"

	"cloche.example/ventilation"
)

func coldJet(s ventilation.InletShape) ventilation.ColdJet {
	j := ventilation.DefaultColdJet(s)
	j.Size, j.Speed, j.Excess, j.House = 0.2, 1.5, -18, 16
	return j
}

var inletShapes = []ventilation.InletShape{ventilation.CompactInlet, ventilation.SlotInlet}

func TestColdJetLaws(t *testing.T) {
	c, s := coldJet(ventilation.CompactInlet), coldJet(ventilation.SlotInlet)
	ar := 9.80665 * 18 * 0.2 / (289.15 * 1.5 * 1.5)
	require.InEpsilon(t, -ar, c.Archimedes(), 1e-14)
	require.InEpsilon(t, math.Cbrt(1+2.5*5/36*ar*225), c.Falling(3), 1e-14)
	require.InEpsilon(t, math.Cbrt(1+1.8*2/(2.43*2.43)*ar*math.Pow(15, 1.5)), s.Falling(3), 1e-14)
	require.InEpsilon(t, 1.5*6*0.2/3, c.AxisSpeed(3), 1e-14)
	require.InEpsilon(t, 1.5*2.43*math.Sqrt(0.2/3), s.AxisSpeed(3), 1e-14)
	require.InEpsilon(t, -18*5*0.2/3, c.AxisExcess(3), 1e-14)
	require.InEpsilon(t, -18*2*math.Sqrt(0.2/3), s.AxisExcess(3), 1e-14)
	for _, j := range []ventilation.ColdJet{c, s} {
		require.InEpsilon(t, j.AxisExcess(3)/j.Falling(3), j.MildExcess(3), 1e-14)
		require.Equal(t, j.Speed, j.AxisSpeed(0))
		require.Equal(t, j.Excess, j.AxisExcess(0))
		require.Equal(t, j.Excess, j.MildExcess(0))
		require.Equal(t, j.Excess, j.MildExcess(0.1)) // core
		require.True(t, math.IsNaN(j.AxisExcess(-1)))
		require.True(t, math.IsNaN(j.MildExcess(-1)))
		require.True(t, math.IsNaN(j.AxisSpeed(-1)))
		require.True(t, math.IsNaN(j.Falling(-1)))
		for _, path := range []float64{0.1, 0.5, 2, 8} {
			require.LessOrEqual(t, j.AxisExcess(path), j.MildExcess(path)) // colder
		}
		j.Excess = 0
		require.Zero(t, j.AxisExcess(3))
		require.Zero(t, j.MildExcess(3))
		require.Equal(t, 1.0, j.Falling(3))
	}
}

// Far out a slow jet is a plume of the weight B = g' V0 A0, or b = g' V0 h a
// metre, with the speed 4.7 (B/s)^(1/3) or 1.66 b^(1/3) and g dT/T of
// 9.1 B^(2/3) s^(-5/3) or 2.38 b^(2/3)/s on its axis (Fischer and others 1979,
// from memory): the correction for a falling jet comes within a quarter of it.
func TestSlowColdJetIsAPlume(t *testing.T) {
	c, s := coldJet(ventilation.CompactInlet), coldJet(ventilation.SlotInlet)
	c.Size, c.Speed, s.Size, s.Speed = 0.05, 0.05, 0.02, 0.02
	g := 9.80665 / 289.15
	b := g * 18 * 0.05 * 0.0025
	require.InEpsilon(t, -9.1*math.Pow(b, 2.0/3)*math.Pow(9, -5.0/3)/g, c.MildExcess(9), 0.25)
	require.InEpsilon(t, 4.7*math.Cbrt(b/9), c.AxisSpeed(9)*c.Falling(9), 0.25)
	b = g * 18 * 0.02 * 0.02
	require.InEpsilon(t, -2.38*math.Pow(b, 2.0/3)/9/g, s.MildExcess(9), 0.02)
	require.InEpsilon(t, 1.66*math.Cbrt(b), s.AxisSpeed(9)*s.Falling(9), 0.25)
}

// The weak end of the band from its own equation: weight adds downward
// momentum to a jet of flat profiles, whose decay factors are one.
func TestFallFromMomentum(t *testing.T) {
	for _, shape := range inletShapes {
		j := coldJet(shape)
		j.Size, j.Speed, j.Velocity, j.Thermal = 0.1, 6, 5, 5
		g := 9.80665 * 18 / 289.15
		speed := func(x float64) float64 { // without its core
			if shape == ventilation.SlotInlet {
				return j.Speed * 5 * math.Sqrt(j.Size/x)
			}
			return j.Speed * 5 * j.Size / x
		}
		// Momentum level: u² A is constant, and so u A dT: A g' = A0 V0 g'0/u.
		y, momentum := 0.0, 0.0
		const steps = 400000
		const x1 = 2.0
		dx := x1 / steps
		for i := range steps {
			x := (float64(i) + 0.5) * dx
			u := speed(x)
			half := momentum + 0.5*dx*g*j.Speed/u
			momentum += dx * g * j.Speed / u
			y += dx * half / (j.Speed * j.Speed / u) / u // v = momentum over u A, slope v/u
		}
		require.InEpsilon(t, y, j.Drop(x1, false), 1e-5)
	}
}

func TestDropFollowsItsLaw(t *testing.T) {
	c, s := coldJet(ventilation.CompactInlet), coldJet(ventilation.SlotInlet)
	ar := -c.Archimedes()
	require.InEpsilon(t, 0.47*5/36*ar*1000*0.2, c.Drop(2, true), 1e-12)
	require.InEpsilon(t, 5.0/36/6*ar*1000*0.2, c.Drop(2, false), 1e-12)
	require.InEpsilon(t, 0.4*2/(2.43*2.43)*ar*math.Pow(10, 2.5)*0.2, s.Drop(2, true), 1e-12)
	require.InEpsilon(t, 4.0/15*2/(2.43*2.43)*ar*math.Pow(10, 2.5)*0.2, s.Drop(2, false), 1e-12)
	c.Angle = -30
	require.InEpsilon(t, 2*math.Tan(math.Pi/6)+0.47*5/36*ar*math.Pow(10/math.Cos(math.Pi/6), 3)*0.2, c.Drop(2, true), 1e-12)
	c.Angle = -90
	require.True(t, math.IsNaN(c.Drop(2, true)))
	require.True(t, math.IsNaN(s.Drop(-1, true)))
}

func TestFallComesDownOnTheAxis(t *testing.T) {
	for _, shape := range inletShapes {
		for _, angle := range []float64{-60, -20, 0, 25, 60} {
			for _, speed := range []float64{0.1, 0.5, 2} {
				j := coldJet(shape)
				j.Angle, j.Speed = angle, speed
				f := j.Fall(1.7, 500)
				for steep, l := range map[bool]ventilation.Landing{true: f.Steep, false: f.Shallow} {
					require.False(t, l.Struck)
					require.InDelta(t, 1.7, j.Drop(l.Distance, steep), 1e-9)
					// Its length by a rule of 400 points along the level distance.
					length := quad.Fixed(func(x float64) float64 {
						h := 1e-6 * l.Distance
						return math.Hypot(1, (j.Drop(x+h, steep)-j.Drop(x-h, steep))/(2*h))
					}, 0, l.Distance, 400, quad.Legendre{}, 0)
					require.InEpsilon(t, length, l.Path, 1e-4)
					require.Equal(t, 16+j.AxisExcess(l.Path), l.Temperature)
					require.Equal(t, 16+j.MildExcess(l.Path), l.Mild)
					require.Equal(t, j.AxisSpeed(l.Path)*j.Falling(l.Path), l.Speed)
				}
				require.Less(t, f.Steep.Distance, f.Shallow.Distance)
				require.LessOrEqual(t, f.Steep.Temperature, f.Shallow.Temperature)
				require.Equal(t, f.Steep.Temperature, f.Coldest)
			}
		}
	}
}

func TestFallLimits(t *testing.T) {
	for _, shape := range inletShapes {
		j := coldJet(shape)
		f := j.Fall(0, 5)
		require.Equal(t, -2.0, f.Coldest) // at the crop: outside air
		require.Zero(t, f.Steep.Path)
		j.Angle = -90
		f = j.Fall(2.5, 5)
		require.InDelta(t, 2.5, f.Steep.Path, 1e-9)
		require.InDelta(t, 2.5, f.Shallow.Path, 1e-9)
		require.InDelta(t, 0, f.Steep.Distance, 1e-12)
		j.Angle = 0
		// The far wall: the path to it and down it.
		j.Speed = 20
		f = j.Fall(2, 4)
		require.True(t, f.Shallow.Struck)
		require.Equal(t, 4.0, f.Shallow.Distance)
		require.InDelta(t, 4+2-j.Drop(4, false), f.Shallow.Path, 0.05)
		j.Angle = 30 // up against the roof: along it and down the wall
		f = j.Fall(2, 4)
		require.InDelta(t, 4/math.Cos(math.Pi/6)+2, f.Shallow.Path, 0.1)
		j.Angle, j.Excess = 0, 0 // no weight: to the wall
		f = j.Fall(2, 4)
		require.True(t, f.Steep.Struck)
		require.Equal(t, 16.0, f.Coldest)
		require.InDelta(t, 6, f.Steep.Path, 1e-9)
	}
}

func TestFallGrows(t *testing.T) {
	for _, shape := range inletShapes {
		lastPath, lastT := 0.0, math.Inf(-1)
		for _, speed := range []float64{0.3, 0.6, 1.2, 2.4} { // faster: farther, warmer
			j := coldJet(shape)
			j.Speed = speed
			f := j.Fall(1.5, 100)
			require.Greater(t, f.Steep.Distance, lastPath)
			require.GreaterOrEqual(t, f.Coldest, lastT)
			lastPath, lastT = f.Steep.Distance, f.Coldest
		}
		lastT = math.Inf(1)
		for _, size := range []float64{0.05, 0.1, 0.2, 0.4} { // wider: colder
			j := coldJet(shape)
			j.Size = size
			c := j.Fall(2.5, 100).Coldest
			require.Less(t, c, lastT)
			lastT = c
		}
		lastT = math.Inf(-1)
		for _, drop := range []float64{1.4, 2, 3, 5} { // higher: warmer
			c := coldJet(shape).Fall(drop, 100).Coldest
			require.Greater(t, c, lastT)
			lastT = c
		}
	}
}

func TestColdJetFaults(t *testing.T) {
	err := ventilation.ColdJet{Shape: 7, Size: -1, Speed: math.NaN(), Excess: 3, House: 290, Angle: 80, Velocity: 0, Thermal: 11}.Check()
	requireFields(t, err, "Shape", "Size", "Speed", "Excess", "House", "Angle", "Velocity", "Thermal")
	require.ErrorContains(t, err, "Shape")
	require.Error(t, ventilation.DefaultColdJet(7).Check())
	j := coldJet(ventilation.CompactInlet)
	require.NoError(t, j.Check())
	for _, f := range []ventilation.Fall{j.Fall(-1, 5), j.Fall(1, 0), ventilation.ColdJet{}.Fall(1, 5)} {
		require.True(t, math.IsNaN(f.Coldest) && math.IsNaN(f.Steep.Path) && math.IsNaN(f.Shallow.Distance))
	}
	require.True(t, math.IsNaN(ventilation.ColdJet{}.Drop(1, true)))
}

func TestFallAllocatesNothing(t *testing.T) {
	j := coldJet(ventilation.SlotInlet)
	require.Zero(t, testing.AllocsPerRun(100, func() { _ = j.Fall(2, 6) }))
}
