package lighting

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

func TestAxesFollowTheAngles(t *testing.T) {
	// Two turns are 12.6 rad, whose rounding is 1.8e-15, and fused products differ
	// by as much again. Across a bar that stands nearly upright the direction is
	// divided by a short length: 20 draws find one of a hundredth now and then.
	near := cmpopts.EquateApprox(0, 1e-12)
	require.Empty(t, cmp.Diff(Vector{0, 0, -1}, Orientation{}.Axis(), near))
	require.Empty(t, cmp.Diff(Vector{1, 0, 0}, Orientation{}.along(), near))
	require.Equal(t, Vector{0, 0, -1}, Aim(AimAngles{37, 0, 0}).Axis(), "straight down exactly")
	for range 20 {
		p, tilt, spin := 360*rand.Float64(), 180*rand.Float64(), 360*rand.Float64()
		sp, cp := math.Sincos(p * radian)
		st, ct := math.Sincos(tilt * radian)
		require.Empty(t, cmp.Diff(Vector{st * cp, st * sp, -ct}, Aim(AimAngles{p, tilt, spin}).Axis(), near))
		// Without tilt, yaw and spin turn the same way.
		s, c := math.Sincos((p + spin) * radian)
		require.Empty(t, cmp.Diff(Vector{c, s, 0}, Aim(AimAngles{p, 0, spin}).along(), near))
	}
	for range 20 {
		az, slope, roll := 360*rand.Float64(), 180*rand.Float64()-90, 360*rand.Float64()
		sa, ca := math.Sincos(az * radian)
		ss, cs := math.Sincos(slope * radian)
		u := Vector{cs * ca, cs * sa, ss}
		o := AimBar(BarAngles{az, slope, roll})
		require.Empty(t, cmp.Diff(u, o.along(), near))
		// The direction across the bar nearest to straight down, -z less its
		// part along the bar, turned about the bar by Rodrigues' formula.
		d := Vector{ss * u.X, ss * u.Y, ss*u.Z - 1}
		l := math.Sqrt(dot(d, d))
		d = Vector{d.X / l, d.Y / l, d.Z / l}
		sr, cr := math.Sincos(roll * radian)
		x := cross(u, d)
		want := Vector{cr*d.X + sr*x.X, cr*d.Y + sr*x.Y, cr*d.Z + sr*x.Z}
		require.Empty(t, cmp.Diff(want, o.Axis(), cmpopts.EquateApprox(0, 1e-13)))
	}
}

// split sums a great count of points along the bar, with Richardson's
// extrapolation of the midpoint rule's error.
func split(t *testing.T, f Fixture, at Point, n Vector, count int) float64 {
	sum := func(count int) float64 {
		parts, err := f.split(count)
		require.NoError(t, err)
		s := 0.0
		for _, p := range parts {
			s += direct(p, at, n)
		}
		return s
	}
	a, b := sum(count), sum(2*count)
	return b + (b-a)/3
}

func TestBarsAreIntegratedTo1e8(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for _, m := range []float64{0, 0.4, 1, 1.7, 4.8188, 25, 200} {
		for range 12 {
			f := Fixture{Light: cosine(t, 100, m), At: Point{2 * r.Float64(), r.Float64(), 2.4}, Length: 0.1 + 2*r.Float64(),
				Aim: AimBar(BarAngles{360 * r.Float64(), 40*r.Float64() - 20, 60*r.Float64() - 30})}
			at := Point{3*r.Float64() - 1, 2*r.Float64() - 1, r.Float64()}
			want := split(t, f, at, up, 4000)
			require.InDelta(t, want, one(t, f, at, up), 1e-8*want+1e-12, "m %g", m)
		}
	}
	// A sensor whose horizon cuts the bar.
	f := Fixture{Light: cosine(t, 100, 1), At: Point{0, 0, 1}, Length: 2}
	for _, n := range []Vector{{1, 0, 0}, {-1, 0, 0.3}, {0.6, 0.8, 0}, {0, 1, 0}} {
		want := split(t, f, Point{0.1, -0.2, 0.3}, unit(n), 40000)
		require.InEpsilon(t, want, one(t, f, Point{0.1, -0.2, 0.3}, n), 1e-6)
	}
	require.Zero(t, one(t, f, Point{0, 0, 0}, Vector{0, 0, -1}), "facing away")
	require.Zero(t, one(t, f, Point{0, 0, 1.5}, Vector{0.1, 0, 1}), "behind the bar")
	// A very short bar is a point; a very long low one is endless:
	// E = I1/h ∫ cos² cos² dα... for m = 1 half π I1/h.
	g := f
	g.Length = 1e-7
	p := f
	p.Length = 0
	require.InEpsilon(t, one(t, p, Point{0.4, 0.1, 0}, up), one(t, g, Point{0.4, 0.1, 0}, up), 1e-8)
	long := Fixture{Light: cosine(t, 100*math.Pi, 1), At: Point{0, 0, 0.01}, Length: 100}
	require.InEpsilon(t, math.Pi/2/0.01, one(t, long, Point{}, up), 1e-9)
}

func unit(v Vector) Vector {
	l := math.Sqrt(dot(v, v))
	return Vector{v.X / l, v.Y / l, v.Z / l}
}

// Five times the largest dimension is not enough to take a bar with a narrow
// beam as a point; SplitWithin finds what is.
func TestABarIsNoPointFromFiveTimesItsLength(t *testing.T) {
	f := Fixture{Light: cosine(t, 100, 40), At: Point{0, 0, 1}, Length: 0.2}
	below := Point{}
	require.Greater(t, math.Abs(direct(Fixture{Light: f.Light, At: f.At}, below, up)/one(t, f, below, up)-1), 0.05)
	p, err := Bed{X: -0.5, Y: -0.5, Length: 1, Width: 1}.Grid(11, 11)
	require.NoError(t, err)
	parts, err := f.SplitWithin(p, 0.001)
	require.NoError(t, err)
	exact, err := NewLights(f)
	require.NoError(t, err)
	want, err := exact.MapTo(nil, p)
	require.NoError(t, err)
	l, err := NewLights(parts...)
	require.NoError(t, err)
	got, err := l.MapTo(nil, p)
	require.NoError(t, err)
	peak := slices.Max(want)
	for i := range want {
		require.InDelta(t, want[i], got[i], 0.001*peak)
	}
}

func TestTheNodesAreGauss(t *testing.T) {
	// Exact to degree 31: ∫ x^2k over -1..1 is 2/(2k+1).
	for k := 0; k <= 15; k++ {
		sum, four := 0.0, 0.0
		for j, x := range gaussX {
			sum += 2 * gaussW[j] * math.Pow(x, float64(2*k))
		}
		for j, x := range gauss4X {
			four += gauss4W[j] * math.Pow(x, float64(2*k))
		}
		require.InDelta(t, 2/float64(2*k+1), sum, 1e-14)
		if k < 4 {
			require.InDelta(t, 2/float64(2*k+1), four, 1e-14)
		}
	}
}

func TestSuperpositionAndRotation(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	lights := []Distribution{cosine(t, 50, 1), cosine(t, 70, 3.3), lopsided(t, TypeC, 13, 9), lopsided(t, TypeB, 13, 9)}
	var fs Layout
	for _, d := range lights {
		fs = append(fs, Fixture{Light: d, At: Point{r.Float64(), r.Float64(), 2 + r.Float64()}, Aim: Aim(AimAngles{360 * r.Float64(), 50 * r.Float64(), 360 * r.Float64()})})
	}
	fs = append(fs, Fixture{Light: cosine(t, 40, 2), At: Point{0.5, 0.5, 2}, Length: 0.8, Aim: AimBar(BarAngles{20, 5, 10})})
	at := []Point{{0.2, 0.9, 0}, {1.4, -0.3, 0.4}, {-0.5, 0.1, 0.9}}
	for _, p := range at {
		sum := 0.0
		for _, f := range fs {
			sum += one(t, f, p, up)
		}
		l, err := NewLights(fs...)
		require.NoError(t, err)
		q, err := NewPoints(Receiver{p, up})
		require.NoError(t, err)
		all, err := l.MapTo(nil, q)
		require.NoError(t, err)
		require.InEpsilon(t, sum, all[0], 1e-13)
		// Turn the whole scene about the vertical.
		const turn = 73.0
		rot := rotZ(turn)
		about := func(p Point) Point {
			return Point{rot[0][0]*p.X + rot[0][1]*p.Y, rot[1][0]*p.X + rot[1][1]*p.Y, p.Z}
		}
		for _, f := range fs {
			g := f
			g.At = about(f.At)
			g.Aim = fromMatrix(multiply(rot, f.Aim.matrix()))
			require.InEpsilon(t, one(t, f, p, up), one(t, g, about(p), up), 1e-10)
		}
	}
}

func TestMeanTimesAreaIsNoMoreThanTheFlux(t *testing.T) {
	for _, m := range []float64{0, 1, 6} {
		l, err := NewLights(Fixture{Light: cosine(t, 100, m), At: Point{0, 0, 1}})
		require.NoError(t, err)
		last := 0.0
		for _, side := range []float64{1, 4, 16} {
			bed := Bed{X: -side / 2, Y: -side / 2, Length: side, Width: side}
			p, err := bed.Grid(200, 200)
			require.NoError(t, err)
			v, err := l.MapTo(nil, p)
			require.NoError(t, err)
			s, err := Evenness(v)
			require.NoError(t, err)
			require.LessOrEqual(t, s.Mean*bed.Area(), 100.0)
			require.Greater(t, s.Mean*bed.Area(), last)
			last = s.Mean * bed.Area()
		}
	}
}

func mustGrid(t *testing.T, b Bed) *Points {
	p, err := b.Grid(4, 4)
	require.NoError(t, err)
	return p
}

func TestSplitWithinMeetsTheIntegral(t *testing.T) {
	p, err := Bed{X: -1, Y: -0.5, Length: 2, Width: 1}.Grid(8, 4)
	require.NoError(t, err)
	f := Fixture{Light: cosine(t, 100, 5), At: Point{0, 0, 0.6}, Length: 1.5, Aim: AimBar(BarAngles{0, 5, 10})}
	parts, err := f.SplitWithin(p, 1e-5)
	require.NoError(t, err)
	l, err := NewLights(parts...)
	require.NoError(t, err)
	got, err := l.MapTo(nil, p)
	require.NoError(t, err)
	for i, v := range got {
		require.InDelta(t, one(t, f, p.At(i), up), v, 1e-5*150)
	}
	f.Light = lopsided(t, TypeC, 13, 9)
	parts, err = f.SplitWithin(p, 1e-3)
	require.NoError(t, err)
	require.Greater(t, len(parts), 4)
	require.InEpsilon(t, f.ppf(), parts.PPF(), 1e-12)
	_, err = f.SplitWithin(p, 0)
	require.ErrorIs(t, err, ErrRange)
	f.At.Z = -1
	_, err = f.SplitWithin(p, 1e-3)
	require.ErrorIs(t, err, ErrRange)
}

func TestTiers(t *testing.T) {
	layout, err := Rows(Fixture{Light: cosine(t, 10, 1), Power: 7}, Bed{Length: 2, Width: 1}, 0.4, 3, 1)
	require.NoError(t, err)
	tiers, err := Tiers(layout, 3, 0.6)
	require.NoError(t, err)
	require.Len(t, tiers, 3)
	require.InDelta(t, 1.6, tiers[2][0].At.Z, 1e-15)
	require.Equal(t, layout, tiers[0])
	_, err = Tiers(layout, 0, 60)
	require.ErrorContains(t, err, "n is 0")
	require.ErrorContains(t, err, "rise")
}
