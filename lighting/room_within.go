package lighting

import (
	"fmt"
	"math"
)

// ReflectedMap is reflected light found to a tolerance.
type ReflectedMap struct {
	PPFD    []float64 // µmol/(m² s) at each point, to be added to the direct map
	Patches int       // count along each side of a face of the finest mesh solved
	Change  float64   // fraction, greatest change from the mesh before at any point
}

// coarsest is the first mesh of ReflectWithin, patches along a side.
const coarsest = 6

// ReflectWithin returns the reflected light at the points, halving the patches
// of Reflect until the value of no point changes by more than tol (fraction of
// it, 1e-5 to 0.1). The error of flat patches falls with the square of their
// side, which each pair of meshes takes out by Richardson's extrapolation.
// ErrNotConverged tells that 48 patches along a side were not enough, as for a
// point on a wall beside a fixture. All other faults are those of Reflect and
// Map.
func (r Room) ReflectWithin(layout Layout, p *Points, tol float64) (ReflectedMap, error) {
	if err := (Range{Min: 1e-5, Max: 0.1, Unit: "fraction"}).Check("tolerance", tol); err != nil {
		return ReflectedMap{}, err
	}
	var flat, best []float64
	out := ReflectedMap{Change: math.Inf(1)}
	for n := coarsest; n <= int(RangePatches.Max); n *= 2 {
		s, err := r.Reflect(layout, n)
		if err != nil {
			return ReflectedMap{}, err
		}
		finer, err := s.Map(p)
		if err != nil {
			return ReflectedMap{}, err
		}
		if flat == nil {
			flat = finer
			continue
		}
		out.PPFD, out.Patches = make([]float64, len(flat)), n
		for i, v := range finer {
			out.PPFD[i] = v + (v-flat[i])/3
		}
		if best != nil {
			out.Change = 0
			for i, v := range out.PPFD {
				if d := math.Abs(v - best[i]); d > 0 {
					out.Change = math.Max(out.Change, d/v)
				}
			}
			if out.Change <= tol {
				return out, nil
			}
		}
		flat, best = finer, out.PPFD
	}
	return out, fmt.Errorf("%w: %d patches along a side still change the reflected light by %.2g of it", ErrNotConverged, out.Patches, out.Change)
}
