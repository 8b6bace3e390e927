package lighting

import (
	"fmt"
	"math"
)

// rectangleFlux is the photon flux in µmol/s of a fixture on a rectangle that
// it sees from inside the room.
func rectangleFlux(f Fixture, corners [4]Point) float64 {
	if f.PPF() == 0 {
		return 0
	}
	if f.Length > 0 {
		return barFlux(f, corners)
	}
	if d, ok := f.Light.(CosinePower); ok {
		var poly polygon
		for _, c := range corners {
			poly.add(Vector{c.X - f.At.X, c.Y - f.At.Y, c.Z - f.At.Z})
		}
		return poly.cosineFlux(f.Aim.Axis(), d)
	}
	return tableFlux(f, corners, 0)
}

// barFlux integrates along the bar, in panels no longer than the distance to
// the rectangle's plane.
func barFlux(f Fixture, corners [4]Point) float64 {
	n := planeNormal(corners)
	a, b := f.ends()
	c := corners[0]
	near := math.Min(math.Abs(dot(n, Vector{a.X - c.X, a.Y - c.Y, a.Z - c.Z})), math.Abs(dot(n, Vector{b.X - c.X, b.Y - c.Y, b.Z - c.Z})))
	panels := math.Min(math.Ceil(f.Length/near), 64)
	u := f.Aim.Along()
	point := f
	point.Length = 0
	half := f.Length / panels / 2
	sum := 0.0
	for i := 0.0; i < panels; i++ {
		mid := -f.Length/2 + (2*i+1)*half
		for j, x := range gaussX {
			for _, s := range [2]float64{mid - half*x, mid + half*x} {
				point.At = f.At.plus(u, s)
				sum += gaussW[j] * rectangleFlux(point, corners)
			}
		}
	}
	return sum * half / f.Length
}

func planeNormal(c [4]Point) Vector {
	n := cross(Vector{c[1].X - c[0].X, c[1].Y - c[0].Y, c[1].Z - c[0].Z}, Vector{c[3].X - c[0].X, c[3].Y - c[0].Y, c[3].Z - c[0].Z})
	s := math.Sqrt(dot(n, n))
	return Vector{n.X / s, n.Y / s, n.Z / s}
}

// tableFlux halves the rectangle until it is small against its distance, then
// takes 4 by 4 Gauss points.
func tableFlux(f Fixture, c [4]Point, depth int) float64 {
	u := Vector{c[1].X - c[0].X, c[1].Y - c[0].Y, c[1].Z - c[0].Z}
	v := Vector{c[3].X - c[0].X, c[3].Y - c[0].Y, c[3].Z - c[0].Z}
	mid := c[0].plus(u, 0.5).plus(v, 0.5)
	d := Vector{mid.X - f.At.X, mid.Y - f.At.Y, mid.Z - f.At.Z}
	distance := math.Sqrt(dot(d, d))
	lu, lv := math.Sqrt(dot(u, u)), math.Sqrt(dot(v, v))
	if long := math.Max(lu, lv); long > tableStep*distance && depth < 16 {
		var first, second [4]Point
		if lu >= lv {
			m, n := c[0].plus(u, 0.5), c[3].plus(u, 0.5)
			first, second = [4]Point{c[0], m, n, c[3]}, [4]Point{m, c[1], c[2], n}
		} else {
			m, n := c[0].plus(v, 0.5), c[1].plus(v, 0.5)
			first, second = [4]Point{c[0], c[1], n, m}, [4]Point{m, n, c[2], c[3]}
		}
		return tableFlux(f, first, depth+1) + tableFlux(f, second, depth+1)
	}
	t := f.Light.(*Table)
	r := f.Aim.matrix()
	normal := planeNormal(c)
	sum := 0.0
	for i, x := range gauss4X {
		for j, y := range gauss4X {
			p := c[0].plus(u, 0.5*(1+x)).plus(v, 0.5*(1+y))
			d := Vector{p.X - f.At.X, p.Y - f.At.Y, p.Z - f.At.Z}
			r2 := dot(d, d)
			intensity := t.towards(r[0][0]*d.X+r[1][0]*d.Y+r[2][0]*d.Z, r[0][1]*d.X+r[1][1]*d.Y+r[2][1]*d.Z, r[0][2]*d.X+r[1][2]*d.Y+r[2][2]*d.Z)
			sum += gauss4W[i] * gauss4W[j] * intensity * math.Abs(dot(normal, d)) / (r2 * math.Sqrt(r2))
		}
	}
	return sum / 4 * lu * lv
}

// tableStep is the largest piece of a rectangle as a share of its distance.
const tableStep = 0.2

// gauss4X and gauss4W are the 4-point Gauss-Legendre rule on -1..1.
var (
	gauss4X = [4]float64{-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526}
	gauss4W = [4]float64{0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538}
)

// exchange holds the area-times-factor of all pairs of patches by the offsets
// on which it depends.
type exchange struct {
	n        int
	parallel [3][]float64    // [normal axis][|Δi|][|Δj|]
	square   [3][3][]float64 // [axis of face 1][axis of face 2][|Δ along the common axis|][distance of 1][distance of 2]
}

func (r Room) exchange(n int) *exchange {
	x := &exchange{n: n}
	d := r.sides()
	step := func(axis, i int) span {
		return span{d[axis] * float64(i) / float64(n), d[axis] * float64(i+1) / float64(n)}
	}
	for k := range 3 {
		a, b := inFace[k][0], inFace[k][1]
		x.parallel[k] = make([]float64, n*n)
		for i := range n {
			for j := range n {
				x.parallel[k][i*n+j] = parallelExchange(step(a, 0), step(a, i), step(b, 0), step(b, j), d[k])
			}
		}
		for l := range 3 {
			if l == k {
				continue
			}
			c := 3 - k - l
			t := make([]float64, n*n*n)
			for i := range n {
				for p := range n {
					for q := range n {
						t[(i*n+p)*n+q] = squareExchange(step(c, 0), step(c, i), step(l, p), step(k, q))
					}
				}
			}
			x.square[k][l] = t
		}
	}
	return x
}

// between returns Σ area times factor, m², times light over all patches of the
// face f2, seen from patch (i1, j1) of the face f1.
func (x *exchange) between(f1, i1, j1, f2 int, light []float64) float64 {
	k, l, n := f1/2, f2/2, x.n
	sum := 0.0
	if k == l {
		for j := range n {
			row := light[j*n : (j+1)*n]
			for i, v := range row {
				sum += x.parallel[k][abs(i1-i)*n+abs(j1-j)] * v
			}
		}
		return sum
	}
	// Of face 1 the index along the common axis and the distance from face 2.
	c := 3 - k - l
	along, away := i1, j1
	if inFace[k][0] != c {
		along, away = j1, i1
	}
	if f2%2 == 1 {
		away = n - 1 - away
	}
	// Of face 2 the strides of the same two indices in light.
	step, across := 1, n
	if inFace[l][0] != c {
		step, across = n, 1
	}
	for q := range n {
		table := x.square[k][l][(abs(along-q)*n+away)*n:][:n]
		at := q * step
		if f1%2 == 1 {
			for o := n - 1; o >= 0; o-- {
				sum += table[o] * light[at]
				at += across
			}
			continue
		}
		for _, f := range table {
			sum += f * light[at]
			at += across
		}
	}
	return sum
}

func abs(i int) int {
	if i < 0 {
		return -i
	}
	return i
}

// solve sweeps E = E0 + F ρ E until nothing changes.
func (s *Reflections) solve() error {
	n := s.Patches
	x := s.Room.exchange(n)
	rho := s.Room.reflectance()
	scale := 0.0
	for _, v := range s.Direct {
		scale = math.Max(scale, v)
	}
	s.Total = append([]float64(nil), s.Direct...)
	const most = 5000
	for s.Iterations = 1; s.Iterations <= most; s.Iterations++ {
		s.Residual = 0
		for f1 := range faces {
			area := s.Room.faceArea(f1) / float64(n*n)
			for j1 := range n {
				for i1 := range n {
					at := (f1*n+j1)*n + i1
					v := s.Direct[at] + s.received(x, rho, f1, i1, j1)/area
					s.Residual = math.Max(s.Residual, math.Abs(v-s.Total[at]))
					s.Total[at] = v
				}
			}
		}
		if s.Residual <= 1e-13*scale {
			return nil
		}
	}
	return fmt.Errorf("%w: reflections still change by %g µmol/(m² s) after %d sweeps", ErrNotConverged, s.Residual, most)
}

// received is the reflected flux in µmol/s on a patch.
func (s *Reflections) received(x *exchange, rho [faces]float64, f1, i1, j1 int) float64 {
	n := s.Patches
	sum := 0.0
	for f2 := range faces {
		if f2 == f1 || rho[f2] == 0 {
			continue
		}
		sum += rho[f2] * x.between(f1, i1, j1, f2, s.Total[f2*n*n:(f2+1)*n*n])
	}
	return sum
}
