package weather

import "math"

// turns turns readings of whence the wind blows, at one end of the hours, into
// means of the hours: the direction of the mean wind. A reading that is missing
// leaves the other.
func (t *table) turns(from, speed []float64) {
	n := len(from)
	if n < 2 || t.readings == meanOfHour {
		return
	}
	x, y := make([]float64, n), make([]float64, n)
	for i, a := range from {
		v := speed[i]
		if v != v {
			v = 1
		}
		s, c := math.Sincos(a * math.Pi / 180)
		x[i], y[i] = v*c, v*s
	}
	step := 1
	if t.readings == atEnd {
		step = -1
	}
	old := append([]float64(nil), from...)
	for i := range from {
		k := i + step
		if k < 0 || k >= n {
			if !t.whole() {
				continue
			}
			k = (k + n) % n
		}
		switch {
		case old[k] != old[k]:
		case old[i] != old[i]:
			from[i] = old[k]
		default:
			from[i] = between(old[i], x[i]+x[k], y[i]+y[k], math.Hypot(x[i], y[i])+math.Hypot(x[k], y[k]))
		}
	}
}

// between is whence the wind x, y blows, degree; the first direction
// where the two readings cancel, or the air is calm.
func between(first, x, y, size float64) float64 {
	if math.Hypot(x, y) <= 1e-6*size {
		return first
	}
	a := math.Atan2(y, x) * 180 / math.Pi
	if a < 0 {
		a += 360
	}
	return a
}
