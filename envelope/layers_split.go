package envelope

// Drives of a cover's flux. At the solution, with its coefficients held, the
// balances are linear in the temperatures above the outside air, so that the
// flux is exactly the sum of what each drive alone would send.
const (
	driveInside = iota // inside air, radiant temperature and vapour
	driveSky           // sky and ground
	driveSun           // absorbed sun
	driveUnit          // 1 K of inside air and radiant temperature
	drives
)

// split divides the flux at the solution among its drives.
func (s *solver) split(o *Solution) {
	n, faces := s.n, 2*s.n
	nodes := faces
	if s.leaks {
		nodes += n - 1
	}
	last := faces - 1
	var m [maxFaces + MaxLayers - 1][maxFaces + MaxLayers - 1 + drives]float64
	var hr [maxFaces]float64 // emission above that at the outside air, per kelvin
	for a := range faces {
		hr[a] = s.c.secant(s.t[a], s.out)
	}
	base := s.c.emission(s.out)
	sky, room := s.eOut-base, s.eIn-base
	unit := s.c.secant(s.k.radiant(), s.out)
	for a := range faces {
		row := &m[a]
		e := s.rad.emittance[a]
		for b := range faces {
			row[b] = e * s.rad.face[a][b] * hr[b]
		}
		row[a] -= e * hr[a]
		// Sources to the right, with their sign turned.
		row[nodes+driveInside] = -e * s.rad.inside[a] * room
		row[nodes+driveSky] = -e * s.rad.outside[a] * sky
		row[nodes+driveSun] = -s.half[a/2]
		row[nodes+driveUnit] = -e * s.rad.inside[a] * unit
	}
	m[0][0] -= s.hOut
	m[last][last] -= s.hIn
	m[last][nodes+driveInside] -= s.hIn*(s.in-s.out) + s.latent
	m[last][nodes+driveUnit] -= s.hIn
	link := func(a, b int, h float64) {
		m[a][a] -= h
		m[a][b] += h
		m[b][b] -= h
		m[b][a] += h
	}
	for i := range n - 1 {
		g, f := innerFace(i), outerFace(i+1)
		link(g, f, s.gaps[i].bridge)
		if s.leaks {
			link(g, faces+i, 2*s.gaps[i].h)
			link(f, faces+i, 2*s.gaps[i].h)
		} else {
			link(g, f, s.gaps[i].h)
		}
	}
	if s.leaks {
		for i := range n - 1 {
			node := faces + i
			if i+1 < n-1 {
				link(node, node+1, s.leak[i+1])
			}
			if i == n-2 {
				m[node][node] -= s.leak[n-1]
				m[node][nodes+driveInside] -= s.leak[n-1] * (s.in - s.out)
				m[node][nodes+driveUnit] -= s.leak[n-1]
			}
		}
	}
	// The outer row becomes the layer's balance; the inner row, times the
	// resistance, the conduction, so that thin layers stay well scaled.
	for i := range n {
		f, g := outerFace(i), innerFace(i)
		for q := range nodes + drives {
			m[f][q] += m[g][q]
			m[g][q] *= s.resist[i]
		}
		m[g][g]--
		m[g][f]++
	}
	for p := range nodes {
		best := p
		for r := p + 1; r < nodes; r++ {
			if abs(m[r][p]) > abs(m[best][p]) {
				best = r
			}
		}
		if best != p {
			m[p], m[best] = m[best], m[p]
		}
		for r := p + 1; r < nodes; r++ {
			if m[r][p] == 0 {
				continue
			}
			k := m[r][p] / m[p][p]
			for q := p + 1; q < nodes+drives; q++ {
				m[r][q] -= k * m[p][q]
			}
		}
	}
	for p := nodes - 1; p >= 0; p-- {
		for d := nodes; d < nodes+drives; d++ {
			v := m[p][d]
			for q := p + 1; q < nodes; q++ {
				v -= m[p][q] * m[q][d]
			}
			m[p][d] = v / m[p][p]
		}
	}
	// Flux from the house for each drive: convection, net long-wave, leakage.
	flux := func(drive int, air, radiant, sky float64) float64 {
		theta := m[last][nodes+drive]
		own, other := radiant, s.rad.outside[last-1]*sky+s.rad.inside[last-1]*radiant
		for b := range faces {
			other += s.rad.face[last-1][b] * hr[b] * m[b][nodes+drive]
		}
		q := s.hIn*(air-theta) + radiant - s.rad.radiosity(last, hr[last]*theta, own, other)
		if s.leaks {
			q += s.leak[n-1] * (air - m[nodes-1][nodes+drive])
		}
		return q
	}
	o.AirDriven = flux(driveInside, s.in-s.out, room, 0) + s.latent
	o.SkyDriven = flux(driveSky, 0, 0, sky)
	o.SunDriven = flux(driveSun, 0, 0, 0)
	o.UAir = flux(driveUnit, 1, unit, 0)
}

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}
