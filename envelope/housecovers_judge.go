package envelope

import (
	"errors"
	"math"
)

// Films that pass heat radiation and see each other may have more than one state
// that agrees, of which LossTo takes that with the most under water. It is asked
// where that is in doubt.
const (
	judgeOpen   = 1e-4 // W/m², by which what the facets see may be off for it to be asked
	judgeMargin = 8.0  // K, of a dry film above the dew point, from which no neighbour's water makes it wet: colder by some 3 K at most, as what it sees falls by 15 W/m²
	judgeMoved  = 1e-3 // K, W/m² and Pa, by which the drives may have moved since
	judgeStuck  = 3    // calls in a row without such a move that leave more open: films that turn wet and dry by turns
)

// unjudged are drives that no house has.
var unjudged = [insideDrives]float64{math.Inf(1), math.Inf(1), math.Inf(1)}

// doubtful reports whether films may have another state.
func (c *HouseCovers) doubtful(k *HouseConditions, room *roomAir) bool {
	if c.house.plan.Radiant != RadiantEnclosure || k.InnerFace != InnerAuto || room.ratio == 0 {
		return false
	}
	new := c.judged[0] == unjudged[0]
	for i := range c.facets {
		f := &c.facets[i]
		if f.film && (new || f.dries || f.soaked || f.dry && f.inner < room.dew+judgeMargin || f.apart.near.stage == stageAuto) {
			return true
		}
	}
	return false
}

// ripe reports whether it is time to judge: at first, where the search ends, and
// where it does not.
func (c *HouseCovers) ripe(at *[insideDrives]float64) bool {
	if c.judged[0] == unjudged[0] {
		return true
	}
	if c.Open <= judgeOpen {
		c.stuck = 0
		return apart(at, &c.judged) >= judgeMoved
	}
	if c.stuck++; apart(at, &c.at) >= judgeMoved {
		c.stuck = 0
	}
	return c.stuck == judgeStuck
}

// apart returns by how much the drives a and b differ at most.
func apart(a, b *[insideDrives]float64) (off float64) {
	for d := range a {
		off = max(off, abs(a[d]-b[d]))
	}
	return off
}

// judge takes the states of films from LossTo, and reports whether any is another
// than it was.
func (c *HouseCovers) judge(k *HouseConditions, at *[insideDrives]float64) (changed bool, err error) {
	new := c.judged[0] == unjudged[0]
	c.judged = *at
	if err := c.house.LossTo(&c.loss, k); errors.Is(err, ErrNotConverged) {
		c.loss = HouseLoss{} // the films stay as they are
		return false, nil
	} else if err != nil {
		return false, err
	}
	for i := range c.facets {
		f, m, w := &c.facets[i], &c.loss.mutual[i], &c.loss.near[i]
		if f.apart.near.stage != w.apart.stage || f.touched.near.stage != w.touched.stage || f.soaked != m.soaked {
			changed = true
		}
	}
	if !changed {
		return new, nil
	}
	for i := range c.facets {
		f, m, w := &c.facets[i], &c.loss.mutual[i], &c.loss.near[i]
		if f.apart.near.stage != w.apart.stage || f.touched.near.stage != w.touched.stage {
			f.apart.have, f.touched.have = false, false
		}
		f.apart.near.stage, f.touched.near.stage, f.soaked = w.apart.stage, w.touched.stage, m.soaked
		f.seen = m.seen
	}
	return true, nil
}
