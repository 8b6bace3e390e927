package envelope

import "gonum.org/v1/gonum/integrate/quad"

// gradedPoints is the number of points of the rule along an edge: with it
// closure and reciprocity of the view factors hold to 1e-9, see the tests.
const gradedPoints = 24

// gradedNode and gradedWeight are Gauss's rule for 0 to 1 after the change of
// variable t = u³(10 - 15u + 6u²), which takes the edge of a logarithm at the
// ends off the integrand.
var gradedNode, gradedWeight = graded()

func graded() (x, w [gradedPoints]float64) {
	var u, v [gradedPoints]float64
	quad.Legendre{}.FixedLocations(u[:], v[:], 0, 1)
	for i, t := range u {
		x[i] = t * t * t * (10 - 15*t + 6*t*t)
		w[i] = v[i] * 30 * t * t * (1 - t) * (1 - t)
	}
	return x, w
}
