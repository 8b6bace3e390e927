package airheat

import "cloche.example/internal/solve"

// horner is the value of a polynomial, coefficients lowest first.
func horner(c []float64, x float64) float64 {
	v := 0.0
	for j := len(c) - 1; j >= 0; j-- {
		v = v*x + c[j]
	}
	return v
}

func derivative(c []float64) []float64 {
	if len(c) < 2 {
		return nil
	}
	d := make([]float64, len(c)-1)
	for j := range d {
		d[j] = float64(j+1) * c[j+1]
	}
	return d
}

// rootsBetween returns, in rising order, the places strictly between a and b
// where either polynomial changes its sign.
func rootsBetween(a, b float64, first, second []float64) []float64 {
	x := signChanges(a, b, first)
	y := signChanges(a, b, second)
	var all []float64
	for len(x) > 0 || len(y) > 0 {
		from := &x
		if len(x) == 0 || len(y) > 0 && y[0] < x[0] {
			from = &y
		}
		v := (*from)[0]
		*from = (*from)[1:]
		if v > a && v < b && (len(all) == 0 || v > all[len(all)-1]) {
			all = append(all, v)
		}
	}
	return all
}

// signChanges returns where a polynomial changes its sign between a and b. It
// goes by way of the derivative: between two of its sign changes the
// polynomial is monotonic and has at most one of its own, so none is missed.
func signChanges(a, b float64, c []float64) []float64 {
	if len(c) < 2 {
		return nil
	}
	ends := append(append([]float64{a}, signChanges(a, b, derivative(c))...), b)
	var roots []float64
	for i := 1; i < len(ends); i++ {
		f := func(x float64) float64 { return horner(c, x) }
		lo, hi := f(ends[i-1]), f(ends[i])
		if lo < 0 == (hi < 0) && hi != 0 {
			continue
		}
		if x, err := solve.Root(f, ends[i-1], ends[i], 0); err == nil {
			roots = append(roots, x)
		}
	}
	return roots
}
