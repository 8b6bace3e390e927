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
// each for each group, lowest above 0 where a driver cannot switch off) that
// bring the sum of the maps nearest to target, µmol/(m² s), 0 to 100000, one
// value for each point, in the sense of least squares. Coordinate descent
// solves the bounded problem, which is convex; ErrNotConverged means that two
// groups light the same points so nearly alike that their levels were still
// changing. Of groups whose maps are the same but for a factor, which any share
// serves, the first takes as much as it can.
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
			slope, terms := right[i], right[i]
			for j, level := range d.Levels {
				slope -= gram[i*n+j] * level
				terms += gram[i*n+j] * level
			}
			v := math.Min(math.Max(d.Levels[i]+slope/gram[i*n+i], lowest[i]), highest[i])
			// What is left of the terms by rounding is no move.
			if step := math.Abs(v - d.Levels[i]); step > dimRounding*terms/gram[i*n+i] {
				moved = math.Max(moved, step)
			}
			d.Levels[i] = v
		}
		if moved < levelsSettled {
			break
		}
	}
	var err error
	if d.PPFD, err = DimmedTo(nil, maps, d.Levels); err != nil {
		return Dimming{}, err
	}
	d.Residual = floats.Distance(d.PPFD, target, 2) / math.Sqrt(float64(len(target)))
	for i, m := range maps {
		d.Power += d.Levels[i] * m.Power
	}
	return d, nil
}

// levelsSettled is the largest move of a level in a last sweep.
const levelsSettled = 1e-13

// dimRounding is what rounding may leave of the sum of a group's terms.
const dimRounding = 4e-16

// mappedRange is the PPFD of a map and of its target.
var mappedRange = domain.Range{Min: 0, Max: 1e5, Unit: "µmol/(m² s)"}

func outside(v float64) bool { return !mappedRange.Contains(v) }

func checkDim(maps []GroupMap, target, lowest, highest []float64) error {
	if len(maps) == 0 || len(lowest) != len(maps) || len(highest) != len(maps) {
		return fmt.Errorf("%d lowest and %d highest levels for %d groups: %w", len(lowest), len(highest), len(maps), ErrRange)
	}
	var errs []error
	for i, m := range maps {
		name := fmt.Sprintf("maps[%d]", i)
		if len(m.PPFD) != len(target) {
			errs = append(errs, fmt.Errorf("%s.PPFD has %d points, the target %d: %w", name, len(m.PPFD), len(target), ErrRange))
		}
		if k := slices.IndexFunc(m.PPFD, outside); k >= 0 {
			errs = append(errs, mappedRange.Check(fmt.Sprintf("%s.PPFD[%d]", name, k), m.PPFD[k]))
		}
		errs = append(errs, domain.Within(name, wattsRange.Check("Power", m.Power)))
		errs = append(errs, levelRange.Check(fmt.Sprintf("lowest[%d]", i), lowest[i]))
		errs = append(errs, domain.Range{Min: lowest[i], Max: 1, Unit: "fraction"}.Check(fmt.Sprintf("highest[%d]", i), highest[i]))
	}
	if k := slices.IndexFunc(target, outside); k >= 0 {
		errs = append(errs, mappedRange.Check(fmt.Sprintf("target[%d]", k), target[k]))
	}
	if len(target) == 0 {
		errs = append(errs, fmt.Errorf("a target without points: %w", ErrRange))
	}
	return errors.Join(errs...)
}
