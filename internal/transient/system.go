// Package transient solves three coupled heat stores exactly: constant
// coefficients, constant heat and at most a steady ramp of what surrounds them.
// The solution is a sum of three decays, so a step of any length is exact, and
// the first time at which a store reaches a level is found without missing one.
package transient

import "math"

// uncoupled is the square of an element beside the diagonal over those on it that is
// rounding of the eigenvalues.
const uncoupled = 1e-18

// System is the equations C dT/dt = f - G T of three stores ready for exact
// solution: eigenvalues and eigenvectors. It is a value, safe to copy and to
// share; the zero System is invalid.
type System struct {
	Rates [3]float64 // 1/s, decay rates, falling

	scale [3]float64    // square root of each capacity
	vec   [3][3]float64 // vec[i][k]: node i of eigenvector k, orthonormal in scaled temperatures
}

// New returns the system of stores with the heat capacities, J/K, all above
// 0, and the symmetric conductances g, W/K. Written in y = sqrt(C) T the matrix
// is symmetric, so its eigenvalues are real; Jacobi's rotations give them to the
// last digits.
func New(capacity [3]float64, g [3][3]float64) System {
	s := System{scale: [3]float64{math.Sqrt(capacity[0]), math.Sqrt(capacity[1]), math.Sqrt(capacity[2])}}
	i0, i1, i2 := 1/s.scale[0], 1/s.scale[1], 1/s.scale[2]
	a, b, c := g[1][0]*(i0*i1), g[2][0]*(i0*i2), g[2][1]*(i1*i2)
	m := [3][3]float64{
		{g[0][0] * (i0 * i0), a, b},
		{a, g[1][1] * (i1 * i1), c},
		{b, c, g[2][2] * (i2 * i2)},
	}
	s.Rates, s.vec = jacobi3(m)
	return s
}

// Made reports whether New made the system.
func (s *System) Made() bool { return s.scale[0] > 0 }

// jacobi3 returns the eigenvalues of the symmetric matrix m, falling, and its
// orthonormal eigenvectors as columns, by cyclic Jacobi rotations.
func jacobi3(m [3][3]float64) (val [3]float64, vec [3][3]float64) {
	vec = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	pairs := [3][2]int{{0, 1}, {0, 2}, {1, 2}}
	for range 60 { // three or four sweeps in practice
		done := true
		for _, pq := range pairs {
			p, q := pq[0], pq[1]
			// Relative to the diagonal, so that small eigenvalues keep their digits.
			if math.Abs(m[p][q]) <= uncoupled*math.Sqrt(math.Abs(m[p][p]*m[q][q])) {
				continue
			}
			done = false
			theta := (m[q][q] - m[p][p]) / (2 * m[p][q])
			t := math.Copysign(1/(math.Abs(theta)+math.Sqrt(theta*theta+1)), theta)
			c := 1 / math.Sqrt(t*t+1)
			s := t * c
			g := t * m[p][q]
			m[p][p] -= g
			m[q][q] += g
			m[p][q], m[q][p] = 0, 0
			r := 3 - p - q
			m[p][r], m[q][r] = c*m[p][r]-s*m[q][r], s*m[p][r]+c*m[q][r]
			m[r][p], m[r][q] = m[p][r], m[q][r]
			for i := range vec {
				vec[i][p], vec[i][q] = c*vec[i][p]-s*vec[i][q], s*vec[i][p]+c*vec[i][q]
			}
		}
		if done {
			break
		}
	}
	val = [3]float64{m[0][0], m[1][1], m[2][2]}
	for i := range 2 {
		for j := i + 1; j < 3; j++ {
			if val[j] > val[i] {
				val[i], val[j] = val[j], val[i]
				for r := range vec {
					vec[r][i], vec[r][j] = vec[r][j], vec[r][i]
				}
			}
		}
	}
	return val, vec
}
