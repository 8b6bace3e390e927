package ventilation

import "math"

// creeping is the way of the covers from pass to pass, to tell where it leads when
// each goes the same share of the one before: drops on a film change what it takes
// by more than straight lines may follow (skinSteepest).
type creeping struct {
	at     [drives]float64 // where the covers were solved last
	moved  [drives]float64 // from the place before
	count  int             // of places in a row to which balances led
	beyond bool            // at is where the way was foreseen to end
}

// Limits of a way whose end is foreseen.
const (
	creepAlike = 0.95 // cosine of two moves in a row, either way
	creepLeast = 0.2  // share of the move before, from which it counts
	creepMost  = 0.98 // and to which the end is foreseen: fifty moves on; one that turns back has it between
)

// creepScale weighs the drives against each other, K: as much as they move with the
// temperature of a house.
var creepScale = [drives]float64{byAir: 1, byGlow: 0.2, byVapour: 0.02}

// along returns how far two moves go along with each other, K².
func along(a, b *[drives]float64) (sum float64) {
	for i, scale := range creepScale {
		sum += scale * scale * a[i] * b[i]
	}
	return sum
}

// alike returns which share of the move before a move goes, and whether it goes the
// same way, or back.
func alike(move, before *[drives]float64) (share float64, one bool) {
	with, size := along(move, before), along(before, before)
	return with / size, math.Abs(with) > creepAlike*math.Sqrt(size*along(move, move))
}

// to takes the place z to which the balances led, and returns where the covers are
// solved next: there, or where the way would end.
func (c *creeping) to(z [drives]float64) [drives]float64 {
	var moved [drives]float64
	for i := range z {
		moved[i] = z[i] - c.at[i]
	}
	share, one := alike(&moved, &c.moved)
	c.count++
	c.beyond = c.count > 2 && one && math.Abs(share) > creepLeast && share < creepMost
	if c.beyond {
		for i := range z {
			moved[i] /= 1 - share
			z[i] = c.at[i] + moved[i]
		}
		c.count = 0
	}
	c.at, c.moved = z, moved
	return z
}
