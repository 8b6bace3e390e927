package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/spatial/r3"
)

// square is a box of the breadth and height in m as edges of a section.
func square(w, h float64) (floor, right, top, left edge) {
	a, b, c, d := planar{0, 0}, planar{w, 0}, planar{w, h}, planar{0, h}
	return edge{a, b}, edge{b, c}, edge{c, d}, edge{d, a}
}

// Opposite and adjacent rectangles have closed forms in every textbook of
// radiation (from memory); two of the three meet only through closure.
func TestViewFactorsOfABox(t *testing.T) {
	for _, c := range [][3]float64{{1, 1, 1}, {8, 2, 30}, {6, 3, 0.7}, {3, 9, 4}} {
		w, h, l := c[0], c[1], c[2]
		floor, right, top, left := square(w, h)
		parallel := func(a, b, d float64) float64 {
			x, y := a/d, b/d
			return 2 / (math.Pi * x * y) * (math.Log(math.Sqrt((1+x*x)*(1+y*y)/(1+x*x+y*y))) +
				x*math.Sqrt(1+y*y)*math.Atan(x/math.Sqrt(1+y*y)) + y*math.Sqrt(1+x*x)*math.Atan(y/math.Sqrt(1+x*x)) -
				x*math.Atan(x) - y*math.Atan(y))
		}
		corner := func(from, to, l float64) float64 {
			W, H := from/l, to/l
			w2, h2 := W*W, H*H
			return 1 / (math.Pi * W) * (W*math.Atan(1/W) + H*math.Atan(1/H) - math.Sqrt(w2+h2)*math.Atan(1/math.Sqrt(w2+h2)) +
				0.25*math.Log((1+w2)*(1+h2)/(1+w2+h2)*math.Pow(w2*(1+w2+h2)/((1+w2)*(w2+h2)), w2)*math.Pow(h2*(1+w2+h2)/((1+h2)*(w2+h2)), h2)))
		}
		require.InDelta(t, parallel(w, l, h), exchangeArea(floor, top, l)/(w*l), 1e-9)
		require.InDelta(t, corner(w, h, l), exchangeArea(floor, right, l)/(w*l), 1e-9)
		require.InDelta(t, parallel(h, l, w), exchangeArea(left, right, l)/(h*l), 1e-9)
		outline := []edge{{planar{0, 0}, planar{0, h}}, {planar{0, h}, planar{w, h}}, {planar{w, h}, planar{w, 0}}, {planar{w, 0}, planar{0, 0}}}
		require.InDelta(t, corner(l, h, w), toEnd(floor, outline, l)/(w*l), 1e-9)
		require.InDelta(t, parallel(w, h, l), endToEnd(outline, outline, l)/(w*h), 1e-9)
	}
}

// crossedStrings returns the exchange area in m² per metre of length between
// two edges of a convex section that runs on without end: the crossed strings
// less the uncrossed ones, over two (Hottel). Both edges run the same way
// round the section.
func crossedStrings(p, q edge) float64 {
	return (p.a.distance(q.a) + p.b.distance(q.b) - p.b.distance(q.a) - p.a.distance(q.b)) / 2
}

// In a house that runs on, exchange per metre tends to the crossed strings.
func TestLongHousesTendToCrossedStrings(t *testing.T) {
	f := DefaultForm()
	f.DwarfWall = 0.4
	longs := func() []long { b := f.body(); return b.longs }()
	for i, p := range longs {
		for _, q := range longs[i+1:] {
			endless := crossedStrings(p.edge, q.edge)
			require.InDelta(t, endless, exchangeArea(p.edge, q.edge, 1e4)/1e4, 2e-3*math.Max(endless, 0.5), "%v %v", p, q)
			require.InDelta(t, endless, exchangeArea(p.edge, q.edge, 1e5)/1e5, 2e-4*math.Max(endless, 0.5), "%v %v", p, q)
		}
	}
}

// lambert returns the view factor from a point with the normal to a polygon of
// which all lies before it, by Lambert's sum over the edges.
func lambert(at, normal r3.Vec, polygon []r3.Vec) float64 {
	sum := 0.0
	for i := range polygon {
		a, b := r3.Sub(polygon[i], at), r3.Sub(polygon[(i+1)%len(polygon)], at)
		c := r3.Cross(a, b)
		n := r3.Norm(c)
		if n == 0 {
			continue
		}
		sum += r3.Dot(r3.Scale(1/n, c), normal) * math.Atan2(n, r3.Dot(a, b))
	}
	return math.Abs(sum) / (2 * math.Pi)
}

// The ends, which the library takes from closure, against Lambert's integral
// over each part: midpoints of a fine grid.
func TestEndsAgainstLambert(t *testing.T) {
	for _, section := range []Section{Gable, UnevenGable, LeanTo, PointedArch} {
		f := DefaultForm()
		f.Section, f.Depth, f.DwarfWall, f.RidgeOffset, f.RidgeTilt, f.ArchStrips, f.Length = section, 0.6, 0.3, 2, 12, 3, 7
		e := f.exchange(func(part) float64 { return 0 })
		b := f.body()
		var top []r3.Vec
		for _, l := range b.longs {
			if p := l.edge.a; p.z >= f.DwarfWall && l.part.kind != Floor {
				top = append(top, r3.Vec{X: p.x, Z: p.z})
			}
		}
		top = append(top, r3.Vec{X: 0, Z: f.DwarfWall})
		if section != LeanTo {
			require.Greater(t, len(top), 5)
		}
		end := e.index(part{EndWall, toNearEnd, 0})
		for i, l := range b.longs {
			d := l.edge.b.minus(l.edge.a)
			normal := r3.Unit(r3.Vec{X: -d.z, Z: d.x})
			const n = 60
			sum := 0.0
			for u := range n {
				for v := range n {
					at := r3.Vec{X: l.edge.a.x + d.x*(float64(u)+0.5)/n, Y: f.Length * (float64(v) + 0.5) / n, Z: l.edge.a.z + d.z*(float64(u)+0.5)/n}
					sum += lambert(at, normal, top)
				}
			}
			require.InDelta(t, sum/n/n, e.x[i][end]/e.area[i], 3e-4, "%v %v", section, l.part)
		}
	}
}

// Every part sees all of the half-space before it, and as much of another as
// the other of it.
func TestClosureAndReciprocity(t *testing.T) {
	for section := Gable; section <= LeanTo; section++ {
		for _, bays := range []int{1, 2, 7} {
			if section == LeanTo && bays > 1 {
				continue
			}
			for _, length := range []float64{1, 8, 300} {
				f := DefaultForm()
				f.Section, f.Depth, f.DwarfWall, f.RidgeOffset, f.RidgeTilt, f.ArchStrips = section, 0.6, 0.3, 2, 12, 3
				f.Bays, f.GutterWidth, f.Length = bays, 0.2, length
				whole, err := NewShape(f)
				require.NoError(t, err)
				v := newRoomView(&whole)
				e, at := whole.parts()
				require.NotNil(t, at)
				for i := range e.x {
					sum := 0.0
					for j := range e.x {
						require.GreaterOrEqual(t, e.x[i][j], 0.0)
						require.InDelta(t, e.x[i][j], e.x[j][i], 1e-9)
						sum += e.x[i][j]
					}
					require.InDelta(t, 1, sum/e.area[i], 1e-9, "%v, %d bays, %g m: %v", section, bays, length, e.parts[i])
				}
				total := 0.0
				for i := range whole.Facets {
					require.InEpsilon(t, e.area[at[i]], whole.Facets[i].Area, 1e-9, whole.Facets[i].Name)
					total += whole.Facets[i].Area
				}
				for i := range v.n {
					require.GreaterOrEqual(t, v.warm[i], 0.0)
				}
			}
		}
	}
}

// Facets of the caller's own: a cube, exact to the third place, and a gable
// against its exact factors.
func TestEvenedEnclosure(t *testing.T) {
	var s Shape
	for i, tilt := range []float64{0, 180, 90, 90, 90, 90} {
		s.Facets = append(s.Facets, Facet{Kind: Roof, Area: 4, Tilt: tilt, Azimuth: 90 * float64(max(0, i-2))})
	}
	e, _ := s.evened()
	require.InDelta(t, 0.2, e.x[0][1]/4, 1e-6)
	require.InDelta(t, 0.2, e.x[0][2]/4, 1e-6)
	require.InDelta(t, 0, e.x[0][0], 1e-6)
	house, err := NewShape(DefaultForm())
	require.NoError(t, err)
	exact := newRoomView(&house)
	house.Form = Form{}
	rough := newRoomView(&house)
	for i := range exact.warm {
		require.InDelta(t, exact.warm[i], rough.warm[i], 0.12)
	}
}
