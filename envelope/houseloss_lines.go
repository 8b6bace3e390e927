package envelope

// Right-hand sides of the lines of the facets.
const (
	lineOpen  = iota // change of what each sees that closes what it misses
	lineRatio        // the same for each kg/kg of humidity ratio
	lineSides
)

// lines solves the straight lines of all facets for what they see, and returns
// the rows with the two answers behind each.
func (t *together) lines() (rows []float64, wide int) {
	v, m := &t.h.room, t.dst.mutual
	n := len(m)
	wide = n + lineSides
	rows = t.dst.rows(n * wide)
	for i := range n {
		row := rows[i*wide : (i+1)*wide]
		for j, f := range v.share[i*n : (i+1)*n] {
			row[j] = -f * min(mostSlope, max(-mostSlope, m[j].flow.sentBySeen))
			row[n+lineRatio] += f * m[j].flow.sentByRatio
		}
		row[i]++
		row[n+lineOpen] = t.receives(i) - m[i].seen
	}
	eliminateRows(rows, n, lineSides)
	return rows, wide
}

// rows returns a cleared table of so many numbers, kept from hour to hour.
func (r *HouseLoss) rows(size int) []float64 {
	if cap(r.table) < size {
		r.table = make([]float64, size)
	}
	rows := r.table[:size]
	clear(rows)
	return rows
}

// eliminateRows solves n rows for the right-hand sides behind them, in place. In
// each row the diagonal is larger than all else together, as no facet sends
// more than it sees: rows need not be exchanged. Facets under some drops may be
// an exception; where that leads astray, the next round tells.
func eliminateRows(a []float64, n, sides int) {
	wide := n + sides
	for p := range n {
		top := a[p*wide+p : (p+1)*wide]
		inv := 1 / top[0]
		for r := p + 1; r < n; r++ {
			low := a[r*wide+p : (r+1)*wide]
			if f := low[0] * inv; f != 0 {
				for q := 1; q < len(top); q++ {
					low[q] -= f * top[q]
				}
			}
		}
	}
	for p := n - 1; p >= 0; p-- {
		row := a[p*wide : (p+1)*wide]
		for d := n; d < wide; d++ {
			v := row[d]
			for q := p + 1; q < n; q++ {
				v -= row[q] * a[q*wide+d]
			}
			row[d] = v / row[p]
		}
	}
}

// move changes what the facets see by the answers of lines, for a change of the
// humidity ratio.
func (t *together) move(rows []float64, wide int, ratio, damping float64) {
	n := wide - lineSides
	for i := range t.dst.mutual {
		x := &t.dst.mutual[i]
		d := rows[i*wide+n+lineOpen] + ratio*rows[i*wide+n+lineRatio]
		x.seen = min(mostSeen, max(leastSeen, x.seen+damping*d))
	}
}

// split divides the flux of each facet among what drives the house: what the
// sky takes from one facet another feels.
func (t *together) split() {
	h, dst := t.h, t.dst
	dst.floor = t.floor
	if !t.enclosed {
		return
	}
	k := &t.k
	room := [splits]float64{splitInside: t.floor - standard.emission(k.Outside), splitUnit: standard.secant(k.radiant(), k.Outside)}
	n, m, dt := h.room.n, dst.mutual, k.Inside-k.Outside
	wide := n + splits
	rows := dst.rows(n * wide)
	for j := range n {
		s := &dst.Facets[j].Solution
		m[j].drive = own(&s.drive.radiosity, dt)
	}
	for i := range n {
		row := rows[i*wide : (i+1)*wide]
		for d := range splits {
			row[n+d] = h.room.warm[i] * room[d]
		}
		for j, f := range h.room.share[i*n : (i+1)*n] {
			if f == 0 {
				continue
			}
			row[j] = -f * dst.Facets[j].Solution.drive.radiosity[driveRoom]
			for d := range splits {
				row[n+d] += f * m[j].drive[d]
			}
		}
		row[i]++
	}
	eliminateRows(rows, n, splits)
	for i := range n {
		r := &dst.Facets[i]
		s := &r.Solution
		own := own(&s.drive.flux, dt)
		copy(m[i].drive[:], rows[i*wide+n:])
		for d := range splits {
			own[d] += s.drive.flux[driveRoom] * m[i].drive[d]
		}
		s.AirDriven, s.SkyDriven, s.SunDriven, s.UOvercast = own[splitInside], own[splitSky], own[splitSun], own[splitUnit]
		r.scale(r.Facet, &h.plan.Shape.Facets[r.Facet], h.net[r.Facet])
	}
}
