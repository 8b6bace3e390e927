package envelope

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

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
	took  [insideDrives]float64
	slope insideSlope
	inner float64 // °C, of the inner face
}

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
// convection over it is found.
const filmStep = 1e-4

// slopes fills in the slopes of p from the balances at their root, all faces moved
// along with the drives. byRatio is what 1 Pa of vapour adds to the humidity ratio. It
// reports false for a singular matrix.
func (s *solver) slopes(byRatio float64, p *partTakes) bool {
	if s.plain = false; !s.fresh {
		s.evaluate(s.system)
	}
	j := s.system
	n, faces := s.vars, 2*s.n
	last := faces - 1
	rad := s.optics()
	air, glow, vap := n+airDrive, n+glowDrive, n+vapourDrive
	for r := range n {
		row := &j.matrix[r]
		row[air], row[glow], row[vap] = 0, 0, 0
	}
	for a := range faces {
		j.matrix[a][glow] = -rad.emittance[a] * rad.inside[a]
	}
	d := s.in - s.t[last]
	h, slope := s.film.coefficient(s.in, s.t[last])
	warmer, _ := s.film.coefficient(s.in+filmStep, s.t[last])
	hByAir := (warmer - h) / filmStep
	hByFace := 0.0
	if math.Abs(d) > 1e-9 {
		hByFace = (slope + h) / d
	}
	byOwnAir := h + hByAir*d
	j.matrix[last][air] = -byOwnAir
	wets := s.inner == faceWater || s.inner == faceFrost
	carry, heat := 0.0, 0.0
	if wets {
		carry = s.closed * max(h, stillVapour) * s.water.perH
		heat = latentHeat(s.t[last], s.inner == faceFrost)
		j.matrix[last][vap] = -heat * carry * s.water.drives * byRatio
		if h > stillVapour {
			j.matrix[last][air] -= s.latent * hByAir / h
		}
	}
	node := -1
	if s.leaks && s.n > 1 {
		node = faces + s.n - 2
		j.matrix[node][air] = -s.leak[s.n-1]
	}
	s.fresh = false
	if !j.eliminate(n, insideDrives) {
		return false
	}
	for drive := range insideDrives {
		c := n + drive
		black := func(a int) float64 { // W/m² of a black face
			i := a / 2
			t := j.matrix[2*i][c]
			if a%2 == 1 {
				t += s.resist[i] * j.matrix[2*i+1][c]
			}
			return 4 * s.black[a] / (s.t[a] + constant.ZeroCelsius) * t
		}
		face := j.matrix[last-1][c] + s.resist[s.n-1]*j.matrix[last][c]
		var on [2]float64 // W/m², irradiance on the outer and inner face of the last layer
		if drive == glowDrive {
			on = [2]float64{rad.inside[last-1], rad.inside[last]}
		}
		for b := range faces {
			v := black(b)
			on[0] += rad.face[last-1][b] * v
			on[1] += rad.face[last][b] * v
		}
		sensible, glows := slope*face, -rad.radiosity(last, black(last), on[1], on[0])
		vapour, hMoves := (s.vapour*s.water.bends-carry*s.water.slope)*face, hByFace*face
		switch drive {
		case airDrive:
			sensible += byOwnAir
			hMoves += hByAir
			if node >= 0 {
				sensible += s.leak[s.n-1]
			}
		case glowDrive:
			glows++
		case vapourDrive:
			vapour += carry * s.water.drives * byRatio
		}
		if node >= 0 {
			sensible -= s.leak[s.n-1] * j.matrix[node][c]
		}
		if wets && h > stillVapour {
			vapour += s.vapour * hMoves / h
		}
		p.slope[airTakes][drive], p.slope[glowTakes][drive] = sensible, glows
		if wets {
			p.slope[vapourTakes][drive] = vapour
		}
	}
	return true
}

// byVapourPressure returns what 1 Pa of vapour adds to the air's humidity ratio,
// kg/kg per Pa.
func (r *roomAir) byVapourPressure() float64 {
	rh := r.state.RelativeHumidity()
	t := r.state.Temperature()
	e := rh * psychro.SaturationPressureOver(psychro.SurfaceAt(t), t)
	if e < 1e-6 {
		return constant.MoleRatio / r.state.Pressure()
	}
	return r.ratio * (1 + r.ratio/constant.MoleRatio) / e
}
