package envelope

import "cloche.example/internal/constant"

// What drives covers from inside, in the order of HouseCovers.Slope.
const (
	airDrive    = iota // K, inside air
	glowDrive          // W/m², long-wave from the inside
	vapourDrive        // Pa, inside vapour pressure
	insideDrives
)

// What covers take, in the order of HouseCovers.Slope.
const (
	airTakes    = iota // W, sensible heat out of the air
	glowTakes          // W, heat radiation
	vapourTakes        // kg/s
)

// insideSlope has a row for each thing taken and a column for each drive.
type insideSlope [insideDrives][insideDrives]float64

// partTakes is what one part of a cover takes from inside, per m², and how that
// changes with each drive.
type partTakes struct {
	took   [insideDrives]float64
	slope  insideSlope
	inner  float64            // °C, of the inner face
	open   float64            // W/m², that a balance was open before the last step
	margin float64            // K, by which the inner face or the dew point may move and the face stays wet or dry
	smooth float64            // K, by which temperatures may move before a coefficient changes its course
	shares [mostSides]float64 // of a face under drops in part: how their share moves with the last step and with each drive
}

// mostSides is the most right-hand sides of a system: what is open, and each
// drive.
const mostSides = 1 + insideDrives

// takes gathers what the part takes at the state.
func (s *solver) takes() (p partTakes) {
	last := innerFace(s.n - 1)
	p.took[airTakes] = s.hIn * (s.in - s.t[last])
	if s.leaks && s.n > 1 {
		p.took[airTakes] += s.leak[s.n-1] * (s.in - s.gaps[s.n-2].air)
	}
	p.took[glowTakes] = s.eIn - s.optics().radiosity(last, s.black[last], s.g[last], s.g[last-1])
	p.took[vapourTakes] = s.vapour
	p.inner = s.t[last]
	return p
}

// filmStep is the step in K of the inside air by which the slope of the inside
// convection over it is found: a thousandth of what bends it, some thousand times what
// rounding leaves of it.
const filmStep = 1e-4

// sources is what moves the balances of a state, and what its inner face does
// then.
type sources struct {
	byRatio float64 // kg/kg per Pa, of vapour
	byAir   float64 // W/(m² K), convection to the air, of which the film changes
	hByAir  float64 // W/(m² K²), change of its coefficient with the air
	hByFace float64 // W/(m² K²), and with the face
	byFace  float64 // W/(m² K), convection with the face
	wets    bool    // vapour passes
	carry   float64 // kg/(s m²), vapour for each kg/kg
	node    int     // row of the innermost gap's air where screens leak, or -1
}

// slopes takes the last step to the root of the balances, and fills in what p
// takes there and its slopes, all faces moved along with the drives. byRatio is
// what 1 Pa of vapour adds to the humidity ratio, wet the share under drops. It
// reports false for a singular matrix.
func (s *solver) slopes(byRatio, wet float64, p *partTakes) bool {
	if s.plain = false; !s.fresh {
		s.evaluate(s.system)
	}
	p.open = s.biggest
	n := s.vars
	src := s.sources(byRatio)
	s.fresh = false
	sides, sends := mostSides, 0.0
	hanging := s.inner == faceDamp && wet < 1
	if hanging {
		sends = s.shareColumn(wet, n+mostSides)
		sides++
	}
	if !s.system.eliminate(n, sides) {
		return false
	}
	if hanging {
		last := innerFace(s.n - 1)
		var dew [mostSides]float64
		dew[0] = s.room.dew - s.t[last]
		dew[1+vapourDrive] = byRatio / s.room.wetAt(s.room.dew).slope
		if !s.hangs(&dew, &p.shares) {
			return false
		}
		p.margin = min(min(wet, 1-wet)*s.rises(last, n+mostSides), s.near.shed)
	}
	for side := range mostSides {
		own := side - 1
		moved := s.moved(&src, n+side, own)
		moved[glowTakes] -= p.shares[side] * sends
		for i := range moved {
			if own < 0 {
				p.took[i] += moved[i]
			} else {
				p.slope[i][own] = moved[i]
			}
		}
	}
	for r := range n {
		s.x[r] += s.system.matrix[r][n]
	}
	return true
}

// sources writes the right-hand sides behind the Jacobian: what is open, then the
// drives.
func (s *solver) sources(byRatio float64) sources {
	n, faces := s.vars, 2*s.n
	last := faces - 1
	rad := s.optics()
	m := &s.system.matrix
	const side = 1
	for r := range n {
		row := m[r][n : n+mostSides]
		row[0] = -s.f[r]
		row[side+airDrive], row[side+glowDrive], row[side+vapourDrive] = 0, 0, 0
		if r < faces {
			row[side+glowDrive] = -rad.emittance[r] * rad.inside[r]
		}
	}
	d := s.in - s.t[last]
	h, slope := s.hIn, s.hInSlope
	warmer, _ := s.film.coefficient(s.in+filmStep, s.t[last])
	c := sources{byRatio: byRatio, byFace: slope, hByAir: (warmer - h) / filmStep, node: -1}
	if abs(d) > alikeAir {
		c.hByFace = (slope + h) / d
	}
	c.byAir = h + c.hByAir*d
	row := m[last][n : n+mostSides]
	row[side+airDrive] = -c.byAir
	if c.wets = s.inner == faceWater || s.inner == faceFrost; c.wets {
		c.carry = s.closed * max(h, stillVapour) * s.water.perH
		row[side+vapourDrive] = -latentHeat(s.t[last], s.inner == faceFrost) * c.carry * s.water.drives * byRatio
		if h > stillVapour {
			row[side+airDrive] -= s.latent * c.hByAir / h
		}
	}
	if s.leaks && s.n > 1 {
		c.node = faces + s.n - 2
		m[c.node][n+side+airDrive] = -s.leak[s.n-1]
	}
	return c
}

// moved returns the change of what the part takes by the answer in column col, of
// the drive own, or of none below zero.
func (s *solver) moved(c *sources, col, own int) (took [insideDrives]float64) {
	m := &s.system.matrix
	faces := 2 * s.n
	last := faces - 1
	rad := s.optics()
	var black [maxFaces]float64 // W/m²
	for a := range faces {
		black[a] = s.slopeOf(a) * s.rises(a, col)
	}
	seen := 0.0
	if own == glowDrive {
		seen = 1
	}
	face := s.rises(last, col)
	took[airTakes] = c.byFace * face
	took[glowTakes] = seen - rad.radiosity(last, black[last], rad.irradiance(last, faces, &black, 0, seen), rad.irradiance(last-1, faces, &black, 0, seen))
	hMoves := c.hByFace * face
	switch own {
	case airDrive:
		took[airTakes] += c.byAir
		hMoves += c.hByAir
		if c.node >= 0 {
			took[airTakes] += s.leak[s.n-1]
		}
	case vapourDrive:
		took[vapourTakes] = c.carry * s.water.drives * c.byRatio
	}
	if c.node >= 0 {
		took[airTakes] -= s.leak[s.n-1] * m[c.node][col]
	}
	if c.wets {
		took[vapourTakes] += (s.vapour*s.water.bends - c.carry*s.water.slope) * face
		if s.hIn > stillVapour {
			took[vapourTakes] += s.vapour * hMoves / s.hIn
		}
	} else {
		took[vapourTakes] = 0
	}
	return took
}

// noVapour is a vapour pressure, Pa, that counts as none: a millionth of that of
// saturated air at -60 °C.
const noVapour = 1e-6

// byVapourPressure returns what 1 Pa of vapour adds to the air's humidity ratio,
// kg/kg per Pa.
func (r *roomAir) byVapourPressure() float64 {
	if r.pressure < noVapour {
		return constant.MoleRatio / r.state.Pressure()
	}
	return r.ratio * (1 + r.ratio/constant.MoleRatio) / r.pressure
}
