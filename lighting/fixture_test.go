package lighting

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

func TestAxesFollowTheAngles(t *testing.T) {
	// Two turns are 12.6 rad, whose rounding is 1.8e-15; fused products differ by
	// as much again.
	near := cmpopts.EquateApprox(0, 1e-14)
	require.Empty(t, cmp.Diff(Vector{0, 0, -1}, Orientation{}.Axis(), near))
	require.Empty(t, cmp.Diff(Vector{1, 0, 0}, Orientation{}.Along(), near))
	require.Equal(t, Vector{0, 0, -1}, Aim(37, 0, 0).Axis(), "straight down exactly")
	for range 20 {
		p, tilt, spin := 360*rand.Float64(), 180*rand.Float64(), 360*rand.Float64()
		sp, cp := math.Sincos(p * radian)
		st, ct := math.Sincos(tilt * radian)
		require.Empty(t, cmp.Diff(Vector{st * cp, st * sp, -ct}, Aim(p, tilt, spin).Axis(), near))
		// Without tilt, yaw and spin turn the same way.
		s, c := math.Sincos((p + spin) * radian)
		require.Empty(t, cmp.Diff(Vector{c, s, 0}, Aim(p, 0, spin).Along(), near))
	}
	for range 20 {
		az, slope, roll := 360*rand.Float64(), 180*rand.Float64()-90, 360*rand.Float64()
		sa, ca := math.Sincos(az * radian)
		ss, cs := math.Sincos(slope * radian)
		u := Vector{cs * ca, cs * sa, ss}
		o := AimBar(az, slope, roll)
		require.Empty(t, cmp.Diff(u, o.Along(), near))
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
		parts, err := f.Split(count)
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
				Aim: AimBar(360*r.Float64(), 40*r.Float64()-20, 60*r.Float64()-30)}
			at := Point{3*r.Float64() - 1, 2*r.Float64() - 1, r.Float64()}
			want := split(t, f, at, Up, 4000)
			require.InDelta(t, want, one(t, f, at, Up), 1e-8*want+1e-12, "m %g", m)
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
	require.InEpsilon(t, one(t, p, Point{0.4, 0.1, 0}, Up), one(t, g, Point{0.4, 0.1, 0}, Up), 1e-8)
	long := Fixture{Light: cosine(t, 100*math.Pi, 1), At: Point{0, 0, 0.01}, Length: 100}
	require.InEpsilon(t, math.Pi/2/0.01, one(t, long, Point{}, Up), 1e-9)
}

func unit(v Vector) Vector {
	l := math.Sqrt(dot(v, v))
	return Vector{v.X / l, v.Y / l, v.Z / l}
}

// TestSegmentsKeepTheirPromise measures the rule for splitting bars, and that
// five times the largest dimension is not enough for a narrow beam.
func TestSegmentsKeepTheirPromise(t *testing.T) {
	for _, m := range []float64{1, 2, 5, 10} {
		f := Fixture{Light: cosine(t, 100, m), At: Point{0, 0, 1}, Length: 2}
		n, err := Segments(m, 2, 1, 0.01)
		require.NoError(t, err)
		require.Equal(t, int(math.Ceil(2*(m+3)-1e-9)), n, "1 %% needs a segment of clearance/(m+3)")
		parts, err := f.Split(n)
		require.NoError(t, err)
		worst := 0.0
		for x := 0.0; x <= 1.2; x += 0.01 {
			for y := 0.0; y <= 0.5; y += 0.1 {
				sum := 0.0
				for _, p := range parts {
					sum += direct(p, Point{x, y, 0}, Up)
				}
				worst = math.Max(worst, math.Abs(sum/one(t, f, Point{x, y, 0}, Up)-1))
			}
		}
		require.LessOrEqual(t, worst, 0.0105, "m %g", m)
		require.GreaterOrEqual(t, worst, 0.002, "m %g: the rule is not wasteful", m)
	}
	// Worst error over points along and beside a bar, segment over clearance; own computation.
	require.InDelta(t, 0.0064, SegmentError(1, 0.2, 1), 2e-4)
	require.InDelta(t, 0.0256, SegmentError(5, 0.2, 1), 1e-3)
	require.True(t, math.IsNaN(SegmentError(1, 0.2, 0)))
	require.True(t, math.IsNaN(SegmentError(-1, 0.2, 1)))
	_, err := Segments(1, 1, 0, 0.01)
	require.ErrorIs(t, err, ErrRange)
	_, err = Segments(1, 1, 1e-9, 0.01)
	require.ErrorIs(t, err, ErrRange)
	_, err = Fixture{Light: cosine(t, 1, 1)}.Split(0)
	require.ErrorIs(t, err, ErrRange)
	_, err = NewLights(Fixture{Light: lopsided(t, TypeC, 5, 5), Length: 1})
	require.ErrorContains(t, err, "split it first")
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
		fs = append(fs, Fixture{Light: d, At: Point{r.Float64(), r.Float64(), 2 + r.Float64()}, Aim: Aim(360*r.Float64(), 50*r.Float64(), 360*r.Float64())})
	}
	fs = append(fs, Fixture{Light: cosine(t, 40, 2), At: Point{0.5, 0.5, 2}, Length: 0.8, Aim: AimBar(20, 5, 10)})
	at := []Point{{0.2, 0.9, 0}, {1.4, -0.3, 0.4}, {-0.5, 0.1, 0.9}}
	for _, p := range at {
		sum := 0.0
		for _, f := range fs {
			sum += one(t, f, p, Up)
		}
		l, err := NewLights(fs...)
		require.NoError(t, err)
		q, err := NewPoints(Receiver{p, Up})
		require.NoError(t, err)
		all, err := l.Map(q)
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
			require.InEpsilon(t, one(t, f, p, Up), one(t, g, about(p), Up), 1e-10)
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
			v, err := l.Map(p)
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
	f := Fixture{Light: cosine(t, 100, 5), At: Point{0, 0, 0.6}, Length: 1.5, Aim: AimBar(0, 5, 10)}
	parts, err := f.SplitWithin(p, 1e-5)
	require.NoError(t, err)
	l, err := NewLights(parts...)
	require.NoError(t, err)
	got, err := l.Map(p)
	require.NoError(t, err)
	for i, v := range got {
		require.InDelta(t, one(t, f, p.At(i), Up), v, 1e-5*150)
	}
	f.Light = lopsided(t, TypeC, 13, 9)
	parts, err = f.SplitWithin(p, 1e-3)
	require.NoError(t, err)
	require.Greater(t, len(parts), 4)
	require.InEpsilon(t, f.PPF(), parts.PPF(), 1e-12)
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
	require.ErrorContains(t, err, "tiers")
	require.ErrorContains(t, err, "rise")
}
