package lighting

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
)

// exchange holds the area-times-factor of all pairs of patches by the offsets
// on which it depends.
type exchange struct {
	n        int
	parallel [3][]float64    // [normal axis][|Δj|][|Δi|]
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
				x.parallel[k][j*n+i] = parallelExchange(step(a, 0), step(a, i), step(b, 0), step(b, j), d[k])
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
			table := x.parallel[k][abs(j1-j)*n:][:n]
			row := light[j*n : (j+1)*n]
			for i, v := range row[i1:] {
				sum += table[i] * v
			}
			for i := range i1 {
				sum += table[i1-i] * row[i]
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

// times sets out to the flux, m² times light, that the patches receive when
// each gives off its light per m²; dark faces are passed over.
func (x *exchange) times(out, light []float64, dark [faces]bool) {
	n := x.n
	clear(out)
	for f1 := range faces {
		for f2 := range faces {
			if f2 == f1 || dark[f2] {
				continue
			}
			from := light[f2*n*n : (f2+1)*n*n]
			for at := range n * n {
				out[f1*n*n+at] += x.between(f1, at%n, at/n, f2, from)
			}
		}
	}
}

// solve finds the light b = ρ E that each patch gives off per m². With the area
// A of a patch and X = A F, which is symmetric, E = E0 + F b makes the system
// (A/ρ) b - X b = A E0: positive definite, solved by conjugate gradients with
// its diagonal as preconditioner.
func (s *Reflections) solve() error {
	n := s.Patches
	x := s.Room.exchange(n)
	count := faces * n * n
	area, rho := make([]float64, count), make([]float64, count)
	var dark [faces]bool
	for face, reflectance := range s.Room.reflectance() {
		dark[face] = reflectance == 0
		for i := face * n * n; i < (face+1)*n*n; i++ {
			area[i], rho[i] = s.Room.faceArea(face)/float64(n*n), reflectance
		}
	}
	b, p, q := make([]float64, count), make([]float64, count), make([]float64, count)
	r, z := make([]float64, count), make([]float64, count) // what is missing to A E0, and ρ/A of it
	for i, e0 := range s.Direct {
		if rho[i] > 0 {
			r[i], z[i] = area[i]*e0, rho[i]*e0
		}
	}
	copy(p, z)
	rz, scale := floats.Dot(r, z), floats.Max(s.Direct)
	const (
		most        = 1000
		roomClosure = 1e-12 // of the strongest direct light
	)
	for s.Residual = math.Inf(1); rz > 0 && s.Residual > roomClosure*scale; s.Iterations++ {
		if s.Iterations == most {
			return fmt.Errorf("%w: reflections still err by %g µmol/(m² s) after %d rounds", ErrNotConverged, s.Residual, most)
		}
		x.times(q, p, dark)
		for i, v := range p {
			if rho[i] > 0 {
				q[i] = area[i]/rho[i]*v - q[i]
			} else {
				q[i] = 0
			}
		}
		alpha := rz / floats.Dot(p, q)
		floats.AddScaled(b, alpha, p)
		floats.AddScaled(r, -alpha, q)
		s.Residual = 0
		for i, v := range r {
			z[i] = rho[i] / area[i] * v
			s.Residual = math.Max(s.Residual, math.Abs(v)/area[i])
		}
		last := rz
		rz = floats.Dot(r, z)
		floats.AddScaledTo(p, z, rz/last, p)
	}
	if math.IsInf(s.Residual, 1) {
		s.Residual = 0 // nothing reflects
	}
	x.times(q, b, dark)
	s.Total = make([]float64, count)
	for i, e0 := range s.Direct {
		s.Total[i] = e0 + q[i]/area[i]
	}
	return nil
}
