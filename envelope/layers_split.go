package envelope

// Drives of a cover's flux. At the solution, with its coefficients held, the
// balances are linear in the temperatures above the outside air, so that the
// flux is exactly the sum of what each drive alone would send.
const (
	driveRoom   = iota // 1 W/m² of long-wave from the inside
	driveSky           // sky and ground
	driveSun           // absorbed sun
	driveAir           // 1 K of inside air
	driveVapour        // heat of condensation
	drives

	drivesApart = driveAir // those that are told apart from the slopes over the inside
)

// response is what each drive alone sends into the cover and what then leaves
// its inner face by radiation, W/m² above the emission at the outside air.
type response struct {
	flux, radiosity [drives]float64
}

// split divides the flux at the solution among the first of its drives, and among
// all for the sums of o. The balances are lost.
func (s *solver) split(o *Solution, count int) {
	n, faces := s.n, 2*s.n
	rad := s.optics()
	nodes := faces
	if s.leaks {
		nodes += n - 1
	}
	last := faces - 1
	m := &s.system.matrix
	s.fresh = false
	for a := range nodes {
		clear(m[a][:nodes+drives])
	}
	var hr [maxFaces]float64 // emission above that at the outside air, per kelvin
	for a := range faces {
		hr[a] = s.c.secant(s.t[a], s.out)
	}
	base := s.c.emission(s.out)
	sky, room := s.eOut-base, s.eIn-base
	unit := s.c.secant(s.k.radiant(), s.out)
	for a := range faces {
		row := &m[a]
		e := rad.emittance[a]
		for b := range faces {
			row[b] = e * rad.face[a][b] * hr[b]
		}
		row[a] -= e * hr[a]
		// Sources to the right, with their sign turned.
		row[nodes+driveRoom] = -e * rad.inside[a]
		row[nodes+driveSky] = -e * rad.outside[a] * sky
		row[nodes+driveSun] = -s.half[a/2]
	}
	m[0][0] -= s.hOut
	m[last][last] -= s.hIn
	m[last][nodes+driveAir] -= s.hIn
	m[last][nodes+driveVapour] -= s.latent
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
			link(g, faces+i, 2*s.gaps[i].films[0])
			link(f, faces+i, 2*s.gaps[i].films[1])
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
				m[node][nodes+driveAir] -= s.leak[n-1]
			}
		}
	}
	// The outer row becomes the layer's balance; the inner row, times the
	// resistance, the conduction, so that thin layers stay well scaled.
	for i := range n {
		f, g := outerFace(i), innerFace(i)
		for q := range nodes + count {
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
			for q := p + 1; q < nodes+count; q++ {
				m[r][q] -= k * m[p][q]
			}
		}
	}
	for p := nodes - 1; p >= 0; p-- {
		for d := nodes; d < nodes+count; d++ {
			v := m[p][d]
			for q := p + 1; q < nodes; q++ {
				v -= m[p][q] * m[q][d]
			}
			m[p][d] = v / m[p][p]
		}
	}
	// Flux from the house for each drive: convection, net long-wave, leakage.
	r := &o.drive
	follow := func(drive int, air, radiant, sky float64) {
		theta := m[last][nodes+drive]
		other := rad.outside[last-1]*sky + rad.inside[last-1]*radiant
		for b := range faces {
			other += rad.face[last-1][b] * hr[b] * m[b][nodes+drive]
		}
		r.radiosity[drive] = rad.radiosity(last, hr[last]*theta, radiant, other)
		r.flux[drive] = s.hIn*(air-theta) + radiant - r.radiosity[drive]
		if s.leaks {
			r.flux[drive] += s.leak[n-1] * (air - m[nodes-1][nodes+drive])
		}
	}
	follow(driveRoom, 0, 1, 0)
	follow(driveSky, 0, 0, sky)
	follow(driveSun, 0, 0, 0)
	if count < drives {
		return
	}
	follow(driveAir, 1, 0, 0)
	follow(driveVapour, 0, 0, 0)
	r.flux[driveVapour] += s.latent
	o.AirDriven = r.flux[driveAir]*(s.in-s.out) + r.flux[driveRoom]*room + r.flux[driveVapour]
	o.SkyDriven, o.SunDriven = r.flux[driveSky], r.flux[driveSun]
	o.UOvercast = r.flux[driveAir] + r.flux[driveRoom]*unit
}

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}
