package answers

import "math"

// monthHours are those of a month, about its mean by the normal law.
type monthHours struct{ mean float64 } // °C

// Deviation is the standard deviation of a month's hours from their mean, K. Chosen:
// the months of the typical year of Greensboro have 3.6 to 8.6 K, 5.6 K in their
// mean. With its own deviation each of its months from October to May has the
// normal law's degree-hours below 13 °C within 5 %.
const Deviation = 5.5

// upTo is the share of the hours that are colder than t, °C, and the density of
// the hours there, 1/K.
func (h monthHours) upTo(t float64) (share, density float64) {
	z := (t - h.mean) / Deviation
	return 0.5 * math.Erfc(-z/math.Sqrt2), math.Exp(-z*z/2) / (Deviation * math.Sqrt(2*math.Pi))
}

// below is by how much the hours lie below t, °C, in their mean, K; 0 counts for
// those above.
func (h monthHours) below(t float64) float64 {
	share, density := h.upTo(t)
	return (t-h.mean)*share + Deviation*Deviation*density
}

// over is what the house loses in the hours between two temperatures outside, °C,
// in the mean of all hours, W.
func (h monthHours) over(list []stretch, from, to float64) (heat, vapour float64) {
	for i := range list {
		s := &list[i]
		low, high := max(s.from, from), min(s.to, to)
		if low >= high {
			continue
		}
		a, before := h.upTo(low)
		b, after := h.upTo(high)
		share := b - a
		above := (h.mean-s.from)*share - Deviation*Deviation*(after-before) // K, of the hours over from
		heat += s.heat.value*share + s.heat.slope*above
		vapour += s.vapour.value*share + s.vapour.slope*above
	}
	return heat, vapour
}
