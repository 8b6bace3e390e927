package figures

import "slices"

// All returns every figure, by subject and within a subject from the simple to
// the composed.
func All() []Figure {
	all := slices.Concat(airFigures(), coverFigures(), heaterFigures(), lightFigures(), ventFigures())
	slices.SortStableFunc(all, func(a, b Figure) int {
		return slices.Index(subjects, a.Subject) - slices.Index(subjects, b.Subject)
	})
	return all
}
