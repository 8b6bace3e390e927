package lighting

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"

	"cloche.example/internal/domain"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Statistics describe the evenness of a map of equal cells.
type Statistics struct {
	Points       int     // count of points
	Minimum      float64 // µmol/(m² s)
	Mean         float64 // µmol/(m² s)
	Maximum      float64 // µmol/(m² s)
	U0           float64 // minimum/mean, fraction
	Ud           float64 // minimum/maximum, fraction
	CV           float64 // population standard deviation/mean, fraction
	Christiansen float64 // 1 - sum of deviations/(n mean), fraction, may be negative

	sorted []float64
}

// Evenness returns the statistics of ppfd, µmol/(m² s), at least 0, the values at
// the centres of equal cells. An empty map, and a value that is negative or not
// finite, are refused with its index; a dark map has ratios that are NaN.
func Evenness(ppfd []float64) (Statistics, error) {
	if len(ppfd) == 0 {
		return Statistics{}, fmt.Errorf("a map without points: %w", ErrRange)
	}
	var errs []error
	r := domain.Range{Min: 0, Max: math.MaxFloat64, Unit: "µmol/(m² s)"}
	for i, v := range ppfd {
		if !r.Contains(v) {
			errs = append(errs, r.Check(fmt.Sprintf("PPFD of point %d", i), v))
		}
	}
	if err := errors.Join(errs...); err != nil {
		return Statistics{}, err
	}
	s := Statistics{Points: len(ppfd), sorted: slices.Clone(ppfd)}
	sort.Float64s(s.sorted)
	s.Minimum, s.Maximum = s.sorted[0], s.sorted[len(ppfd)-1]
	s.Mean = floats.SumCompensated(ppfd) / float64(len(ppfd))
	s.U0, s.Ud = s.Minimum/s.Mean, s.Minimum/s.Maximum
	absolute := 0.0
	for _, v := range ppfd {
		absolute += math.Abs(v - s.Mean)
	}
	s.CV = stat.PopStdDev(ppfd, nil) / s.Mean
	s.Christiansen = 1 - absolute/(float64(len(ppfd))*s.Mean)
	return s, nil
}

// Percentile returns the PPFD in µmol/(m² s) below which the share of the area
// lies, fraction 0 to 1, linear between the sorted points; NaN outside and for
// the zero Statistics.
func (s Statistics) Percentile(share float64) float64 {
	n := len(s.sorted)
	if n == 0 || !(share >= 0 && share <= 1) {
		return math.NaN()
	}
	at := share * float64(n-1)
	i := min(int(at), n-1)
	j := min(i+1, n-1)
	return s.sorted[i] + (at-float64(i))*(s.sorted[j]-s.sorted[i])
}
