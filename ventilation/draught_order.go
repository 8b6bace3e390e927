package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// Opened is At for vents opened group after group: order lists the groups, each
// the indices of its openings, and opened, a count from 0 to their number, says
// how far: 1.25 is the first group wholly and the second a quarter. Openings in
// no group stay shut. The error joins every fault by field.
func (v ColdVents) Opened(order [][]int, opened float64) (ColdAir, error) {
	err := errors.Join(v.checkOrder(order), domain.Range{Min: 0, Max: float64(len(order)), Unit: "count", Source: "the number of groups"}.Check("opened", opened))
	if err != nil {
		return ColdAir{}, err
	}
	return v.at(v.fractions(order, opened))
}

func (v ColdVents) checkOrder(order [][]int) error {
	err := v.check()
	if len(order) == 0 {
		err = errors.Join(err, &RangeError{Field: "number of groups in order", Min: 1, Max: math.Inf(1), Unit: "count"})
	}
	if v.Network == nil {
		return err
	}
	seen := make([]bool, len(v.Network.openings))
	for g, group := range order {
		for k, i := range group {
			where := fmt.Sprintf("order[%d][%d]", g, k)
			if i < 0 || i >= len(seen) {
				err = errors.Join(err, &RangeError{Field: where, Value: float64(i), Min: 0, Max: float64(len(seen) - 1), Unit: "index of an opening"})
				continue
			}
			if seen[i] {
				err = errors.Join(err, fmt.Errorf("%s: %w: opening %d stands in the order twice", where, ErrRange, i))
			}
			seen[i] = true
		}
	}
	return err
}

func (v ColdVents) fractions(order [][]int, opened float64) []float64 {
	f := make([]float64, len(v.Network.openings))
	for g, group := range order {
		for _, i := range group {
			f[i] = math.Max(0, math.Min(1, opened-float64(g)))
		}
	}
	return f
}

// ForFlow opens the vents in that order until flow, kg/s, 0 to 1e4, enters
// the house, leaks included. ErrNoSolution says that all of them do not suffice;
// other errors join every fault by field.
func (v ColdVents) ForFlow(order [][]int, flow float64) (ColdAir, error) {
	if err := errors.Join(v.checkOrder(order), dryAirRange.Check("flow", flow)); err != nil {
		return ColdAir{}, err
	}
	var fault error
	lack := func(opened float64) float64 {
		a, err := v.at(v.fractions(order, opened))
		fault = errors.Join(fault, err)
		return a.Air.Flow - flow
	}
	last := float64(len(order))
	if lack(0) >= 0 {
		return v.at(v.fractions(order, 0))
	}
	if most := lack(last); fault == nil && most < 0 {
		return ColdAir{}, fmt.Errorf("vents: %w: wholly open they let in %.4g kg/s, wanted %.4g", ErrNoSolution, most+flow, flow)
	}
	opened, err := solve.Root(lack, 0, last, shareFound)
	if err = errors.Join(fault, err); err != nil {
		return ColdAir{}, err
	}
	return v.at(v.fractions(order, opened))
}

// looks is the number of steps of each group at which Widest looks.
const looks = 100

// Widest opens the vents in that order as far as the air at the crop stays at
// the limit or above all the way there. Fractions of zero say that not even a
// gap is safe. The error joins every fault by field.
func (v ColdVents) Widest(order [][]int) (ColdAir, error) {
	if err := v.checkOrder(order); err != nil {
		return ColdAir{}, err
	}
	safe, err := v.at(v.fractions(order, 0))
	if err != nil {
		return ColdAir{}, err
	}
	good := 0.0
	for k := 1; k <= looks*len(order); k++ {
		opened := float64(k) / looks
		a, err := v.at(v.fractions(order, opened))
		if err != nil {
			return ColdAir{}, err
		}
		if !a.Chill {
			safe, good = a, opened
			continue
		}
		for low, high := good, opened; high-low > openingTolerance; {
			mid := 0.5 * (low + high)
			a, err := v.at(v.fractions(order, mid))
			if err != nil {
				return ColdAir{}, err
			}
			if a.Chill {
				high = mid
			} else {
				safe, low = a, mid
			}
		}
		break
	}
	return safe, nil
}
