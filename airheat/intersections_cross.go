package airheat

import (
	"math"

	"cloche.example/internal/solve"
)

// cross finds the one crossing between a and b if the ends differ in sign.
func (s *finder) cross(piece int, a, b, ga, gb float64) {
	switch {
	case ga == 0:
		s.add(piece, a)
	case gb == 0:
		s.add(piece, b)
	case ga < 0 != (gb < 0):
		s.add(piece, s.newton(piece, a, b, ga, gb))
	}
}

// newton is the crossing between a and b, where the gap is ga and gb.
func (s *finder) newton(piece int, a, b, ga, gb float64) float64 {
	enough := lastFallingStep // a falling fan against a rising system has no flat place
	if s.fan.pressure[piece+1] > s.fan.pressure[piece] {
		enough = lastRisingStep
	}
	search := solve.NewBracket(a, b, ga > 0)
	x := s.start(piece, a, b, ga, gb)
	for range solve.MaxIterations {
		g, d := s.gap(piece, x)
		var done bool
		if x, done = search.Next(x, g, d, enough*x); done {
			return x
		}
	}
	return math.NaN()
}

// start is the crossing of the fan's chord with the loss taken as a quadratic
// of the flow between its ends, which is near the true one.
func (s *finder) start(piece int, a, b, ga, gb float64) float64 {
	pa, _ := s.fan.piece(piece, a)
	pb, _ := s.fan.piece(piece, b)
	m := (pb - pa) / (b - a)
	c := ((pb - gb) - (pa - ga)) / (b*b - a*a)
	// pa + m(x − a) = pa − ga + c(x² − a²)
	w := m*m + 4*c*(ga-m*a+c*a*a)
	x := (m + math.Sqrt(w)) / (2 * c)
	if !(x > a && x < b) {
		x = a + (b-a)*ga/(ga-gb)
	}
	return x
}
