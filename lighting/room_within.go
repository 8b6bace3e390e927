package lighting

import (
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// ReflectedMap is reflected light found to a tolerance.
type ReflectedMap struct {
	PPFD    []float64 // µmol/(m² s) at each point, to be added to the direct map
	Patches int       // count along each side of a face of the finest mesh solved
	Change  float64   // fraction, greatest change from the mesh before at any point
}

// meshes are those that ReflectWithin solves, patches along a side.
var meshes = [...]int{4, 8, 12, 18, 24, 36, 48}

// ReflectWithin returns the reflected light at the points, with finer and finer
// patches in Reflect until the value of no point changes by more than tol
// (fraction of it, 1e-5 to 0.1). The error of flat patches falls with the
// square of their side, which each pair of meshes takes out by Richardson's
// extrapolation; what is left is mostly far below the last change: in 23 random
// rooms asked for 0.3 % one had a point 0.6 % off, the others none beyond.
// ErrNotConverged means that 48 patches along a side, a matter of seconds,
// were not enough, as for a point on a wall beside a fixture. All other faults
// are those of Reflect and Map.
func (r Room) ReflectWithin(layout Layout, p *Points, tol float64) (ReflectedMap, error) {
	if err := (domain.Range{Min: 1e-5, Max: 0.1, Unit: "fraction"}).Check("tol", tol); err != nil {
		return ReflectedMap{}, err
	}
	var coarse, best []float64
	out := ReflectedMap{Change: math.Inf(1)}
	for i, n := range meshes {
		s, err := r.Reflect(layout, n)
		if err != nil {
			return ReflectedMap{}, err
		}
		fine, err := s.Map(p)
		if err != nil {
			return ReflectedMap{}, err
		}
		if i > 0 {
			finer := float64(n) / float64(meshes[i-1])
			out.PPFD, out.Patches = make([]float64, len(fine)), n
			for k, v := range fine {
				out.PPFD[k] = v + (v-coarse[k])/(finer*finer-1)
			}
		}
		if i > 1 {
			out.Change = 0
			for k, v := range out.PPFD {
				if d := math.Abs(v - best[k]); d > 0 {
					out.Change = math.Max(out.Change, d/math.Abs(v))
				}
			}
			if out.Change <= tol {
				return out, nil
			}
		}
		coarse, best = fine, out.PPFD
	}
	return out, fmt.Errorf("%w: %d patches along a side still change the reflected light by %.2g of it", ErrNotConverged, out.Patches, out.Change)
}
