package lighting

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/speed"
)

func BenchmarkMathExp(b *testing.B)  { speed.MathExp(b) }
func BenchmarkMathSqrt(b *testing.B) { speed.MathSqrt(b) }

// scene hangs count fixtures over a bed of 120 by 40 cells.
func scene(b *testing.B, count int, turn func(i int, r *rand.Rand) Fixture) (*Lights, *Points) {
	r := rand.New(rand.NewPCG(7, 8))
	var fs []Fixture
	for i := range count {
		f := turn(i, r)
		f.At = Point{12 * r.Float64(), 4 * r.Float64(), 1 + r.Float64()}
		fs = append(fs, f)
	}
	l, err := NewLights(fs...)
	require.NoError(b, err)
	p, err := Bed{Length: 12, Width: 4}.Grid(120, 40)
	require.NoError(b, err)
	return l, p
}

func benchmarkMap(b *testing.B, count int, turn func(i int, r *rand.Rand) Fixture) {
	l, p := scene(b, count, turn)
	dst := make([]float64, p.Len())
	b.ReportAllocs()
	for b.Loop() {
		_, _ = l.MapTo(dst, p)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(count)/float64(p.Len()), "ns/pair")
	speed.Sink = dst[7]
}

// A pair costs half a division and about six products and sums: two
// fixtures share one division.
func BenchmarkMapDown(b *testing.B) {
	light := cosine(b, 100, 1)
	benchmarkMap(b, 40, func(int, *rand.Rand) Fixture { return Fixture{Light: light} })
}

// A pair costs one division, one power by table and about 35 products and
// sums. Four exponents take turns.
func BenchmarkMapAimed(b *testing.B) {
	m := [4]float64{0.646, 1.7, 4.8188, 12.3}
	benchmarkMap(b, 40, func(i int, r *rand.Rand) Fixture {
		return Fixture{Light: cosine(b, 100, m[i%4]), Aim: Aim(AimAngles{360 * r.Float64(), 60 * r.Float64(), 0})}
	})
}

// A pair costs a square root, two divisions, an arccosine and an arctangent by
// table and about 50 products and sums.
func BenchmarkMapTable(b *testing.B) {
	benchmarkTables(b, lopsided(b, TypeC, 37, 25), lopsided(b, TypeC, 19, 13))
}

// The angles of many files are uneven.
func BenchmarkMapTableUneven(b *testing.B) {
	w := Web{Vertical: []float64{0, 2.5, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 85, 90, 105, 120, 150, 180}, Horizontal: []float64{0, 5, 10, 20, 30, 45, 67.5, 90}}
	for j := range w.Horizontal {
		w.Intensity = append(w.Intensity, nil)
		for i := range w.Vertical {
			w.Intensity[j] = append(w.Intensity[j], 100+40*math.Sin(1.3*float64(i)+0.7*float64(j)))
		}
	}
	uneven, err := NewTable(w)
	require.NoError(b, err)
	benchmarkTables(b, uneven)
}

// The same all round: no azimuth.
func BenchmarkMapTableRound(b *testing.B) {
	benchmarkTables(b, lopsided(b, TypeC, 37, 1))
}

func benchmarkTables(b *testing.B, tables ...*Table) {
	benchmarkMap(b, 40, func(i int, r *rand.Rand) Fixture {
		return Fixture{Light: tables[i%len(tables)], Aim: Aim(AimAngles{360 * r.Float64(), 20 * r.Float64(), 360 * r.Float64()})}
	})
}

// 500 fixtures on 20,000 points, all cores; ns/pair is wall time.
func BenchmarkMapParallel(b *testing.B) {
	l, _ := scene(b, 500, func(int, *rand.Rand) Fixture {
		return Fixture{Light: cosine(b, 100, 2.2), Aim: Aim(AimAngles{20, 30, 0})}
	})
	p, err := Bed{Length: 12, Width: 4}.Grid(200, 100)
	require.NoError(b, err)
	dst := make([]float64, p.Len())
	for _, run := range []struct {
		name string
		f    func() error
	}{
		{"one", func() error { _, err := l.MapTo(dst, p); return err }},
		{"all", func() error { _, err := l.MapParallelTo(context.Background(), dst, p, nil); return err }},
	} {
		b.Run(run.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := run.f(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/500/float64(p.Len()), "ns/pair")
		})
	}
}

// The walls of a small room at 16 patches a side.
func BenchmarkRoom(b *testing.B) {
	r := Room{6, 4, 3, 0.2, 0.6, 0.5, 0.5, 0.5, 0.5}
	layout, err := Rows(Fixture{Light: cosine(b, 100, 2)}, Bed{X: 1, Y: 1, Z: 0.5, Length: 4, Width: 2}, 2, 4, 2)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Reflect(layout, 16); err != nil {
			b.Fatal(err)
		}
	}
}
