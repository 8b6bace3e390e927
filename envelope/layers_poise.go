package envelope

import "math"

// Newton's method for a face that drops on a share of it keep at the dew point.
const (
	poiseSteps = 8    // more, and a search by brackets is no slower
	poiseClose = 0.01 // K, from the dew point on the way: what is left open there is as roughClosure
	poiseLeft  = 0.3  // of the way to a share of none or all, that a step leaves at least
)

// poise finds the share of the face under drops by Newton's method over it and
// the balances together, from near share. It reports false where that does not
// end, or at a share of which more would cool the face.
func (s *solver) poise(share float64) (float64, bool) {
	s.take(faceDamp)
	last := innerFace(s.n - 1)
	for range poiseSteps {
		s.mix(share)
		s.evaluate(s.system)
		off := s.t[last] - s.room.dew
		if s.biggest <= s.aim && abs(off) <= poiseClose {
			return share, s.sole(faceDamp)
		}
		v := s.vars
		m := &s.system.matrix
		for r := range v {
			m[r][v] = -s.f[r]
		}
		s.shareColumn(share, v+1)
		if !s.system.eliminate(v, 2) {
			return share, false
		}
		s.steps++
		rise := s.rises(last, v+1)
		if !(rise > 0) {
			return share, false
		}
		more := (-off - s.rises(last, v)) / rise
		more = max(-(1-poiseLeft)*share, min((1-poiseLeft)*(1-share), more))
		for r := range v {
			step := m[r][v] + more*m[r][v+1]
			if !(abs(step) <= stepLimit) {
				return share, false
			}
			s.x[r] += step
		}
		share += more
	}
	return share, false
}

// rises returns by how much in K the answer in the column warms the face.
func (s *solver) rises(face, col int) float64 {
	m := &s.system.matrix
	t := m[2*(face/2)][col]
	if face&1 == 1 {
		t += s.resist[face/2] * m[face][col]
	}
	return t
}

// shareColumn writes into the column what more of the face under drops opens,
// from the share wet of the state that is evaluated, and returns by how much more
// then leaves the face, W/m² for all of it.
func (s *solver) shareColumn(share float64, col int) (sends float64) {
	step := shareStep
	if share+step > 1 {
		step = -step
	}
	n, faces := s.n, 2*s.n
	last := innerFace(n - 1)
	o, f := outerFace(n-1), last
	more := s.mixed
	more.emittance[o] += step * (s.wet.emittance[o] - s.dry.emittance[o])
	more.emittance[f] += step * (s.wet.emittance[f] - s.dry.emittance[f])
	more.transmit[n-1] += step * (s.wet.transmit[n-1] - s.dry.transmit[n-1])
	more.trace(n)
	m := &s.system.matrix
	var g [2]float64 // of the innermost layer's faces
	for r := range s.vars {
		m[r][col] = 0
	}
	for a := range faces {
		now := more.irradiance(a, faces, &s.black, s.eOut, s.eIn)
		before := s.mixed.emittance[a] * (s.g[a] - s.black[a])
		m[a][col] = (before - more.emittance[a]*(now-s.black[a])) / step
		if a >= o {
			g[a-o] = now
		}
	}
	return (more.radiosity(last, s.black[last], g[1], g[0]) - s.mixed.radiosity(last, s.black[last], s.g[last], s.g[last-1])) / step
}

// hangs turns the columns of what is open and of each drive into those of a face
// that drops on a share of it keep at the dew point, which moves by dew with each,
// K, and writes how the share moves with each to shares. It returns false where
// more drops would not warm the face.
func (s *solver) hangs(dew, shares *[mostSides]float64) bool {
	n := s.vars
	last := innerFace(s.n - 1)
	m := &s.system.matrix
	warms := s.rises(last, n+mostSides)
	if !(warms > 0) || math.IsInf(warms, 1) {
		return false
	}
	for side := range mostSides {
		shares[side] = (dew[side] - s.rises(last, n+side)) / warms
		for r := range n {
			m[r][n+side] += shares[side] * m[r][n+mostSides]
		}
	}
	return true
}
