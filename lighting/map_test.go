package lighting

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// direct is the definition, term by term: Σ I(γ, C) cos φ/r².
func direct(f Fixture, at Point, n Vector) float64 {
	d := [3]float64{at.X - f.At.X, at.Y - f.At.Y, at.Z - f.At.Z}
	r := math.Sqrt(d[0]*d[0] + d[1]*d[1] + d[2]*d[2])
	turn := f.Aim.matrix()
	var local [3]float64
	for j := range local {
		for i := range d {
			local[j] += turn[i][j] * d[i] / r
		}
	}
	gamma := math.Atan2(math.Hypot(local[0], local[1]), -local[2]) / radian
	c := math.Atan2(local[1], local[0]) / radian
	cosPhi := -(n.X*d[0] + n.Y*d[1] + n.Z*d[2]) / r
	return f.Light.Intensity(gamma, c) * math.Max(0, cosPhi) / (r * r)
}

func cosine(t testing.TB, ppf, m float64) CosinePower {
	d, err := NewCosinePower(ppf, m)
	require.NoError(t, err)
	return d
}

// lopsided is a web without any symmetry.
func lopsided(t testing.TB, kind Coordinates, nV, nH int) *Table {
	w := Web{Coordinates: kind}
	low, high, from, to := 0.0, 180.0, 0.0, 360.0
	if kind != TypeC {
		low, high, from, to = -90, 90, -90, 90
	}
	for i := range nV {
		w.Vertical = append(w.Vertical, low+(high-low)*float64(i)/float64(nV-1))
	}
	for j := range nH {
		w.Horizontal = append(w.Horizontal, from+(to-from)*float64(j)/math.Max(1, float64(nH-1)))
		row := make([]float64, nV)
		for i := range row {
			k := j
			if kind == TypeC && j == nH-1 {
				k = 0
			}
			row[i] = 100 + 40*math.Sin(1.3*float64(i)+0.7*float64(k))
		}
		w.Intensity = append(w.Intensity, row)
	}
	table, err := NewTable(w)
	require.NoError(t, err)
	return table
}

func randomReceivers(r *rand.Rand, n int) []Receiver {
	out := make([]Receiver, n)
	for i := range out {
		out[i] = Receiver{Point{10 * r.Float64(), 6 * r.Float64(), 2 * r.Float64()}, Vector{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}}
	}
	return out
}

func TestEveryKernelFollowsTheDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	lights := []Distribution{
		lopsided(t, TypeC, 19, 13), lopsided(t, TypeB, 13, 7), lopsided(t, TypeA, 7, 13),
	}
	for _, m := range []float64{0, 0.28, 0.646, 1, 1.5, 2, 4.8188, 7, 19.99, 60, 180, 900, 4000} {
		lights = append(lights, cosine(t, 100, m))
	}
	for _, light := range lights {
		for range 20 {
			f := Fixture{Light: light, At: Point{10 * r.Float64(), 6 * r.Float64(), 2.2 + r.Float64()}, Aim: Aim(AimAngles{360 * r.Float64(), 100 * r.Float64(), 360 * r.Float64()})}
			l, err := NewLights(f)
			require.NoError(t, err)
			receivers := randomReceivers(r, 30)
			p, err := NewPoints(receivers...)
			require.NoError(t, err)
			got, err := l.MapTo(nil, p)
			require.NoError(t, err)
			for i, v := range got {
				want := direct(f, p.At(i), p.normal(i))
				tol := 1e-11 * want
				if c, ok := light.(CosinePower); ok {
					tol *= 1 + c.m // rounding of the cosine itself grows with the exponent
				}
				require.InDelta(t, want, v, tol+1e-13, "%#v at %v", f.Aim, p.At(i))
			}
		}
	}
}

func TestDownlightsOnAGridAgreeWithTheGeneralKernel(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	bed := Bed{X: 0.3, Y: -0.2, Z: 0.5, Length: 7.3, Width: 2.9}
	for _, count := range []int{1, 2, 5, 8} {
		var fs []Fixture
		for range count {
			fs = append(fs, Fixture{Light: cosine(t, 50+r.Float64(), 1), At: Point{8 * r.Float64(), 3 * r.Float64(), 1 + r.Float64()}})
		}
		l, err := NewLights(fs...)
		require.NoError(t, err)
		p, err := bed.Grid(67, 23)
		require.NoError(t, err)
		got, err := l.MapTo(nil, p)
		require.NoError(t, err)
		want := make([]float64, p.Len())
		list := make([]Receiver, p.Len())
		for i := range want {
			list[i] = Receiver{p.At(i), up}
			for _, f := range fs {
				want[i] += direct(f, p.At(i), up)
			}
		}
		require.Empty(t, cmp.Diff(want, got, cmpopts.EquateApprox(1e-13, 0)))
		single, err := NewPoints(list...)
		require.NoError(t, err)
		got, err = l.MapTo(nil, single)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(want, got, cmpopts.EquateApprox(1e-13, 0)))
	}
}

func TestMapToAllocatesNothing(t *testing.T) {
	fs := []Fixture{{Light: cosine(t, 100, 1), At: Point{1, 1, 2}}, {Light: cosine(t, 100, 3.3), At: Point{2, 1, 2}, Aim: Aim(AimAngles{10, 20, 30})},
		{Light: lopsided(t, TypeC, 19, 13), At: Point{3, 1, 2}}, {Light: cosine(t, 100, 2), At: Point{3, 1, 2}, Length: 1}}
	l, err := NewLights(fs...)
	require.NoError(t, err)
	p, err := Bed{Length: 4, Width: 2}.Grid(40, 20)
	require.NoError(t, err)
	dst := make([]float64, p.Len())
	require.Zero(t, testing.AllocsPerRun(10, func() { _, _ = l.MapTo(dst, p) }))
}

func TestBadPlacesAreRefused(t *testing.T) {
	light := cosine(t, 100, 1)
	bed := Bed{Length: 4, Width: 2, Z: 1}
	p, err := bed.Grid(4, 4)
	require.NoError(t, err)
	for _, z := range []float64{1, 0.5} {
		l, err := NewLights(Fixture{Light: light, At: Point{1, 1, 3}}, Fixture{Light: light, At: Point{1, 1, z}})
		require.NoError(t, err)
		_, err = l.MapTo(nil, p)
		require.ErrorIs(t, err, ErrRange)
		require.ErrorContains(t, err, "fixtures[1]")
	}
	// A sloping bar with one end below the plane.
	l, err := NewLights(Fixture{Light: light, At: Point{1, 1, 1.4}, Length: 1, Aim: AimBar(BarAngles{0, 60, 0})})
	require.NoError(t, err)
	_, err = l.MapTo(nil, p)
	require.ErrorIs(t, err, ErrRange)
	// A point on a fixture.
	l, err = NewLights(Fixture{Light: cosine(t, 1, 2), At: Point{1, 1, 1}})
	require.NoError(t, err)
	on, err := NewPoints(Receiver{Point{1, 1, 1}, Vector{1, 0, 0}})
	require.NoError(t, err)
	_, err = l.MapTo(nil, on)
	require.ErrorIs(t, err, ErrRange)
	// No area, no fixtures, no light, no direction, and all faults at once.
	_, err = Bed{}.Grid(3, 3)
	require.ErrorContains(t, err, "Bed.Length")
	require.ErrorContains(t, err, "Bed.Width")
	_, err = bed.Grid(0, 3)
	require.ErrorIs(t, err, ErrRange)
	_, err = bed.Grid(math.MaxInt32, math.MaxInt32)
	require.ErrorIs(t, err, ErrRange)
	_, err = NewLights()
	require.ErrorIs(t, err, ErrRange)
	_, err = NewLights(Fixture{}, Fixture{Light: light, At: Point{math.NaN(), 0, 1e9}, Aim: Aim(AimAngles{math.NaN(), 0, 0}), Power: -1})
	for _, want := range []string{"fixtures[0]: Light is missing", "fixtures[1].At.X", "fixtures[1].At.Z", "fixtures[1].Power", "fixtures[1]: Aim"} {
		require.ErrorContains(t, err, want)
	}
	_, err = NewPoints(Receiver{Point{1, 1, 1}, Vector{}})
	require.ErrorIs(t, err, ErrRange)
	require.Panics(t, func() { _, _ = l.MapTo(make([]float64, 3), p) })
}

func TestGridSpacing(t *testing.T) {
	bed := Bed{Length: 3, Width: 1}
	p, err := bed.GridFor(1)
	require.NoError(t, err)
	require.Equal(t, 15, p.Columns())
	require.Equal(t, 75, p.Len())
	_, err = bed.GridFor(0)
	require.ErrorIs(t, err, ErrRange)
}

func TestTableAnglesAtTheirEnds(t *testing.T) {
	d := lopsided(t, TypeC, 5, 5)
	for _, at := range []Point{{0, 0, 1}, {0, 0, 3}, {1, 0, 2}, {-1, 0, 2}, {-1, math.Copysign(0, -1), 2}, {0, 1, 2}, {0, -1, 2}, {-1, 1e-300, 1}, {-1, -1e-300, 1}, {-1, -1e-300, 2}, {1e-200, 0, 1}} {
		n := Vector{-at.X, -at.Y, 2 - at.Z}
		f := Fixture{Light: d, At: Point{0, 0, 2}}
		require.InEpsilon(t, direct(f, at, unit(n)), one(t, f, at, n), 1e-11, "%v", at)
	}
	uneven := Web{Vertical: []float64{0, 1, 2, 40, 41.5, 90}, Horizontal: []float64{0, 3, 100, 190, 359, 360}}
	for j := range 6 {
		uneven.Intensity = append(uneven.Intensity, []float64{10, 20, 5 + float64(j%5), 30, 7, 1})
	}
	u, err := NewTable(uneven)
	require.NoError(t, err)
	f := Fixture{Light: u, At: Point{0, 0, 1}}
	r := rand.New(rand.NewPCG(1, 9))
	for range 2000 {
		at := Point{4*r.Float64() - 2, 4*r.Float64() - 2, 0}
		require.InEpsilon(t, direct(f, at, up), one(t, f, at, up), 1e-10, "%v", at)
	}
}
