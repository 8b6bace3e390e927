package lighting

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"cloche.example/internal/domain"
	"gonum.org/v1/gonum/floats"
)

// Dimming is a set of levels that brings a map near a target.
type Dimming struct {
	Levels   []float64 // fraction of full output, one for each group
	PPFD     []float64 // µmol/(m² s) at each point at these levels
	Residual float64   // µmol/(m² s), root mean square of what is left
	Power    float64   // W at these levels, power taken as proportional
	Sweeps   int       // count of sweeps used
}

// Dim returns the levels between lowest and highest (fractions 0 to 1, one of
// each for each group, lowest above 0 where a driver cannot go off) that bring
// the sum of the maps nearest to target, µmol/(m² s), one value for each
// point, in the sense of least squares. Coordinate descent solves the bounded
// problem, which is convex; ErrNotConverged tells that two groups light the
// same points so nearly alike that their levels were still changing. Of groups
// whose maps are the same but for a factor, which any share serves, the first
// takes as much as it can. Maps and target are at most 100,000 µmol/(m² s).
func Dim(maps []GroupMap, target, lowest, highest []float64) (Dimming, error) {
	if err := checkDim(maps, target, lowest, highest); err != nil {
		return Dimming{}, err
	}
	n := len(maps)
	gram, right := make([]float64, n*n), make([]float64, n)
	for i := range maps {
		for j := range maps {
			gram[i*n+j] = floats.Dot(maps[i].PPFD, maps[j].PPFD)
		}
		right[i] = floats.Dot(maps[i].PPFD, target)
	}
	d := Dimming{Levels: append([]float64(nil), lowest...)}
	const most = 1_000_000
	for d.Sweeps = 1; ; d.Sweeps++ {
		if d.Sweeps > most {
			return Dimming{}, fmt.Errorf("%w: levels still change after %d sweeps", ErrNotConverged, most)
		}
		moved := 0.0
		for i := range n {
			if gram[i*n+i] == 0 {
				continue // a dark group stays at its lowest level
			}
			slope := right[i] - floats.Dot(gram[i*n:(i+1)*n], d.Levels)
			v := math.Min(math.Max(d.Levels[i]+slope/gram[i*n+i], lowest[i]), highest[i])
			moved = math.Max(moved, math.Abs(v-d.Levels[i]))
			d.Levels[i] = v
		}
		if moved < 1e-13 {
			break
		}
	}
	var err error
	if d.PPFD, err = Dimmed(nil, maps, d.Levels); err != nil {
		return Dimming{}, err
	}
	d.Residual = floats.Distance(d.PPFD, target, 2) / math.Sqrt(float64(len(target)))
	for i, m := range maps {
		d.Power += d.Levels[i] * m.Power
	}
	return d, nil
}

// rangeMapped is the PPFD of a map and of its target.
var rangeMapped = domain.Range{Min: 0, Max: 1e5, Unit: "µmol/(m² s)"}

func checkDim(maps []GroupMap, target, lowest, highest []float64) error {
	if len(maps) == 0 || len(lowest) != len(maps) || len(highest) != len(maps) {
		return fmt.Errorf("%d lowest and %d highest levels for %d groups: %w", len(lowest), len(highest), len(maps), ErrRange)
	}
	var errs []error
	for i, m := range maps {
		if len(m.PPFD) != len(target) {
			errs = append(errs, fmt.Errorf("map of group %q has %d points, the target %d: %w", m.Group, len(m.PPFD), len(target), ErrRange))
		}
		if k := slices.IndexFunc(m.PPFD, func(v float64) bool { return !rangeMapped.Contains(v) }); k >= 0 {
			errs = append(errs, rangeMapped.Check(fmt.Sprintf("map of group %q at point %d", m.Group, k), m.PPFD[k]))
		}
		errs = append(errs, levelRange.Check(fmt.Sprintf("lowest level of group %q", m.Group), lowest[i]))
		errs = append(errs, domain.Range{Min: lowest[i], Max: 1, Unit: "fraction"}.Check(fmt.Sprintf("highest level of group %q", m.Group), highest[i]))
	}
	for i, v := range target {
		if !rangeMapped.Contains(v) {
			errs = append(errs, rangeMapped.Check(fmt.Sprintf("target of point %d", i), v))
		}
	}
	if len(target) == 0 {
		errs = append(errs, fmt.Errorf("a target without points: %w", ErrRange))
	}
	return errors.Join(errs...)
}
