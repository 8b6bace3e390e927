package lighting

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestArcsByTable(t *testing.T) {
	var b rays
	unitSteps := &ladder{scale: 1}
	worst := 0.0
	for v := math.Ldexp(1.001, -acosOctaves+1); v <= 1; v *= 1.0007 {
		for i, sign := range []float64{1, -1} {
			b.polar[i] = sign * (1 - v)
		}
		b.polarSteps(2, unitSteps)
		for i, sign := range []float64{1, -1} {
			near := 2 * math.Asin(math.Sqrt((1-(1-v))/2)) // better than math.Acos here
			worst = math.Max(worst, math.Abs(b.polar[i]-(math.Pi/2-sign*(math.Pi/2-near)))/near)
		}
	}
	require.Less(t, worst, 1.5e-13)
	b.polar[0] = 0
	b.polarSteps(1, unitSteps)
	require.InDelta(t, math.Pi/2, b.polar[0], 2e-13)
	for o := range uint8(8) {
		for q := 0.0; q <= 1; q += 0.0003 {
			// The sides of the octant: u = ±1 or ±q, v the other.
			u, v := 1.0, q
			if o&1 == 1 {
				u, v = q, 1
			}
			if o&2 == 2 {
				u = -u
			}
			if o&4 == 4 {
				v = -v
			}
			b.octant[0], b.azi[0] = o, v/u
			if o&1 == 1 {
				b.azi[0] = u / v
			}
			b.aziSteps(1, unitSteps)
			if q == 0 && o&1 == 0 {
				v = math.Copysign(0, v)
			}
			require.InDelta(t, math.Atan2(v, u), b.azi[0], 5e-14, "octant %d at %g", o, q)
		}
	}
}

func TestALadderFindsEveryInterval(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	lists := [][]float64{{0, 1}, {0, 10, 19.9, 30}, {-3, -3 + 1e-6, 3}, {-1, 0, 0, 2}}
	for range 50 {
		list := []float64{r.Float64() - 1}
		for range 1 + r.IntN(20) {
			list = append(list, list[len(list)-1]+math.Pow(r.Float64(), 3)+1e-9)
		}
		lists = append(lists, list)
	}
	for _, list := range lists {
		l := newLadder(list)
		first, last := list[0], list[len(list)-1]
		for range 2000 {
			v := first + (1.2*r.Float64()-0.1)*(last-first)
			want := 0
			for want < len(list) && list[want] <= v {
				want++
			}
			p := (v - l.zero) * l.scale
			if p < 0 || int(p) >= len(l.start) {
				require.True(t, v < first || v > last)
				continue
			}
			k := int(l.start[int(p)])
			for p >= l.intervals[k].to {
				k++
			}
			require.Equal(t, want, k, "%g in %v", v, list)
		}
	}
}

// anyWeb is a web at angles of no pattern, with steep falls.
func anyWeb(t *testing.T, r *rand.Rand, kind Coordinates) *Table {
	between := func(lo, hi float64) []float64 {
		list := []float64{lo}
		for list[len(list)-1] < hi-1 {
			list = append(list, math.Min(hi, list[len(list)-1]+0.5+20*r.Float64()*r.Float64()))
		}
		list[len(list)-1] = hi
		return list
	}
	w := Web{Coordinates: kind, Vertical: between(-70, 80), Horizontal: between(-60, 75)}
	if kind == TypeC {
		last := []float64{0, 90, 180, 360}[r.IntN(4)]
		w.Vertical, w.Horizontal = between(0, 90+90*float64(r.IntN(2))), []float64{0}
		if last > 0 {
			w.Horizontal = between(0, last)
		}
	}
	for j := range w.Horizontal {
		w.Intensity = append(w.Intensity, nil)
		for range w.Vertical {
			w.Intensity[j] = append(w.Intensity[j], 1+500*r.Float64()*r.Float64())
		}
	}
	return table(t, w)
}

func TestTablesOfAnyAnglesFollowTheDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for i := range 60 {
		f := Fixture{Light: anyWeb(t, r, Coordinates(i%3)), At: Point{5, 3, 2.5}, Aim: Aim(AimAngles{360 * r.Float64(), 180 * r.Float64() * r.Float64(), 360 * r.Float64()})}
		l, err := NewLights(f)
		require.NoError(t, err)
		p, err := Bed{Length: 10, Width: 6}.Grid(140, 9)
		require.NoError(t, err)
		got, err := l.MapTo(nil, p)
		require.NoError(t, err)
		for k, v := range got {
			want := direct(f, p.At(k), up)
			require.InDelta(t, want, v, 1e-10*want, "web %d at %v", i, p.At(k))
		}
	}
}

func TestTablesNextToTheirAxis(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	for _, kind := range []Coordinates{TypeC, TypeB, TypeA} {
		light := anyWeb(t, r, kind)
		for range 400 {
			f := Fixture{Light: light, At: Point{0, 0, 2}, Aim: Aim(AimAngles{360 * r.Float64(), 40 * r.Float64(), 360 * r.Float64()})}
			axis := f.Aim.Axis()
			if kind == TypeB {
				m := f.Aim.matrix()
				axis = Vector{m[0][1], m[1][1], m[2][1]}
			}
			off := math.Pow(10, -12*r.Float64())
			at := f.At.plus(axis, 1.3-2.6*float64(r.IntN(2)))
			at = Point{at.X + off*r.NormFloat64(), at.Y + off*r.NormFloat64(), at.Z + off*r.NormFloat64()}
			n := Vector{f.At.X - at.X, f.At.Y - at.Y, f.At.Z - at.Z}
			want := direct(f, at, unit(n))
			require.InDelta(t, want, one(t, f, at, n), 1e-10*want, "%g off", off)
		}
	}
}

func TestPowersByTable(t *testing.T) {
	// Along the floor under a downlight of 1 on the axis: cos^(m+3).
	var xs, cosines []float64
	for angle := 0.0; angle < 89; angle += 0.0037 {
		sin, cos := math.Sincos(angle * radian)
		xs, cosines = append(xs, sin/cos), append(cosines, cos)
	}
	for _, m := range []float64{0, 0.37, 1, 2.2, 4.8188, 12.3, 60, 140} {
		power := newPowerTable((m + 3) / 2)
		require.NotNil(t, power)
		r := run{out: make([]float64, len(xs)), x: xs, n: up}
		r.addPower(&powerSource{z: 1, az: -1, intensity: 1, power: power})
		worst := 0.0
		for i, c := range cosines {
			if want := math.Pow(c, m+3); want > 1e-280 {
				worst = math.Max(worst, math.Abs(r.out[i]/want-1))
			}
		}
		require.Less(t, worst, 1e-12+1e-15*(m+3), "m %g", m)
	}
	require.Nil(t, newPowerTable(400))
}
