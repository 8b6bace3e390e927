package lighting

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// web makes a type C web from a function of both angles, degree.
func web(vertical, horizontal []float64, f func(v, h float64) float64) Web {
	w := Web{Vertical: vertical, Horizontal: horizontal}
	for _, h := range horizontal {
		var row []float64
		for _, v := range vertical {
			row = append(row, f(v, h))
		}
		w.Intensity = append(w.Intensity, row)
	}
	return w
}

func table(t *testing.T, w Web) *Table {
	out, err := NewTable(w)
	require.NoError(t, err)
	return out
}

func steps(from, to float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = from + (to-from)*float64(i)/float64(n)
	}
	return out
}

func TestSymmetriesGiveOneTable(t *testing.T) {
	// Both mirror planes: cos 2h has them.
	f := func(v, h float64) float64 { return 200 - v/2 + 30*math.Cos(2*h*radian) }
	v := steps(0, 180, 12)
	full := table(t, web(v, steps(0, 360, 24), f))
	for name, h := range map[string][]float64{"quadrant": steps(0, 90, 6), "half": steps(0, 180, 12), "side": steps(90, 270, 12)} {
		part := table(t, web(v, h, f))
		require.InEpsilon(t, full.Flux(), part.Flux(), 1e-13, name)
		for c := -400.0; c < 800; c += 7.3 {
			for g := 0.0; g <= 180; g += 11.7 {
				require.InDelta(t, full.Intensity(g, c), part.Intensity(g, c), 1e-10, "%s %g %g", name, g, c)
			}
		}
	}
	// Mirrored in the plane 90-270 alone: sin h.
	g := func(v, h float64) float64 { return 200 - v/2 + 30*math.Sin(h*radian) }
	full, part := table(t, web(v, steps(0, 360, 24), g)), table(t, web(v, steps(90, 270, 12), g))
	for c := 0.0; c < 360; c += 7.3 {
		require.InDelta(t, full.Intensity(50, c), part.Intensity(50, c), 1e-10)
	}
	// Without a plane at 180.
	odd := table(t, web(v, []float64{0, 50, 110, 190, 290, 360}, func(v, h float64) float64 { return 10 + math.Mod(h, 360) + v }))
	require.InDelta(t, 10+180+20, odd.Intensity(20, 180), 1e-10)
	require.InDelta(t, 10+150+20, odd.Intensity(20, 150), 1e-10)
	require.InDelta(t, 10+240+20, odd.Intensity(20, -120), 1e-10)
}

// sphere integrates the intensity over all directions by midpoints.
func sphere(d Distribution, n int) float64 {
	sum := 0.0
	for i := range n {
		c := -1 + 2*(float64(i)+0.5)/float64(n)
		for j := range 2 * n {
			sum += d.Intensity(math.Acos(c)/radian, 180*(float64(j)+0.5)/float64(n))
		}
	}
	return sum * 2 * math.Pi / float64(n*n)
}

func TestFluxIsTheIntegralOfTheInterpolant(t *testing.T) {
	for _, d := range []*Table{lopsided(t, TypeC, 9, 9), lopsided(t, TypeB, 9, 7), lopsided(t, TypeA, 7, 9),
		table(t, web([]float64{0, 7, 31, 90}, []float64{0}, func(v, _ float64) float64 { return 90 - v })),
		table(t, web([]float64{90, 120, 180}, []float64{0, 90}, func(v, h float64) float64 { return v + h }))} {
		require.InEpsilon(t, sphere(d, 500), d.Flux(), 3e-4)
	}
	// An even sphere of 1: 4π; the planes of type A and B are half a sphere.
	one := func(_, _ float64) float64 { return 1 }
	require.InEpsilon(t, 4*math.Pi, table(t, web([]float64{0, 180}, []float64{0}, one)).Flux(), 1e-14)
	w := web([]float64{-90, 90}, []float64{0, 90}, one)
	for _, w.Coordinates = range []Coordinates{TypeA, TypeB} {
		require.InEpsilon(t, 2*math.Pi, table(t, w).Flux(), 1e-14)
	}
}

func TestDirectionsOfTheThreeTypes(t *testing.T) {
	peak := func(at, around float64) func(v, h float64) float64 {
		return func(v, h float64) float64 { return math.Exp(-math.Hypot(v-at, h-around) / 10) }
	}
	// Type B: vertical angles turn towards +x, horizontal ones lean to -y.
	w := web(steps(-90, 90, 36), steps(-90, 90, 36), peak(30, 0))
	w.Coordinates = TypeB
	require.InDelta(t, 1, table(t, w).Intensity(30, 0), 1e-9)
	require.InDelta(t, 1, table(t, w).at(30, 0), 1e-9)
	w = web(steps(-90, 90, 36), steps(-90, 90, 36), peak(0, 40))
	w.Coordinates = TypeB
	require.InDelta(t, 1, table(t, w).Intensity(40, 270), 1e-9)
	// Type A: straight down is -90, horizontal angles run clockwise.
	w = web(steps(-90, 90, 36), steps(-90, 90, 36), peak(-50, 35))
	w.Coordinates = TypeA
	require.InDelta(t, 1, table(t, w).Intensity(40, -35), 1e-9)
	require.InDelta(t, 1, table(t, w).at(-50, 35), 1e-9)
	require.Zero(t, table(t, w).Intensity(40, 120), "behind")
}

func TestScaledTables(t *testing.T) {
	d := lopsided(t, TypeC, 9, 9)
	s, err := d.times(0.0145)
	require.NoError(t, err)
	require.InEpsilon(t, 0.0145*d.Flux(), s.Flux(), 1e-13)
	require.InEpsilon(t, 0.0145*d.Intensity(33, 200), s.Intensity(33, 200), 1e-13)
	require.InEpsilon(t, 0.5*d.Flux(), d.scaled(0.5).Flux(), 1e-13)
	_, err = d.times(math.NaN())
	require.ErrorIs(t, err, ErrRange)
	w := d.web.clone()
	w.Intensity[0][0] = -1
	require.NotEqual(t, -1.0, d.web.clone().Intensity[0][0], "a copy")
	_, err = NewTable(w)
	require.ErrorContains(t, err, "intensity 1 of row 1 is -1")
}

func TestBadWebs(t *testing.T) {
	good := func() Web { return web(steps(0, 90, 3), steps(0, 90, 2), func(v, h float64) float64 { return 1 }) }
	for want, spoil := range map[string]func(*Web){
		"intensity 2 of row 3":              func(w *Web) { w.Intensity[2][1] = math.NaN() },
		"intensity 1 of row 1":              func(w *Web) { w.Intensity[0][0] = math.Inf(1) },
		"vertical angle 2 is 0 after 0":     func(w *Web) { w.Vertical[1] = 0 },
		"vertical angle 4":                  func(w *Web) { w.Vertical[3] = 181 },
		"horizontal angles from 0 to 80":    func(w *Web) { w.Horizontal[2] = 80 },
		"2 rows of intensity for 3":         func(w *Web) { w.Intensity = w.Intensity[:2] },
		"row 1 has 3 intensities for 4":     func(w *Web) { w.Intensity[0] = w.Intensity[0][:3] },
		"0 of vertical angle, at least 2":   func(w *Web) { w.Vertical = nil },
		"0 of horizontal angle, at least 1": func(w *Web) { w.Horizontal = nil },
		"first horizontal angle is 10": func(w *Web) {
			w.Coordinates, w.Horizontal = TypeB, []float64{10, 20, 30}
		},
		"Coordinates is 7": func(w *Web) { w.Coordinates = 7 },
	} {
		w := good()
		spoil(&w)
		_, err := NewTable(w)
		require.ErrorIs(t, err, ErrRange, want)
		require.ErrorContains(t, err, want)
	}
}
