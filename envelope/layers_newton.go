package envelope

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

// Unknowns of a cover: for each layer its outer temperature and the flux
// conducted through it (not its inner temperature, so that a layer that
// conducts well loses no digits), then the air of each gap where a layer
// leaks, then the heat that holds the inner face at a temperature where it is
// held, then the Nusselt number of each gap held at a jump.
const maxVars = maxFaces + 2*(MaxLayers-1) + 1

type system struct {
	matrix [maxVars][maxVars + mostSides + 1]float64 // Jacobian and, behind it, the right-hand sides, that of the share under drops last
}

const (
	closure      = 1e-10 // W/m², aim of the solver for each face
	closureLimit = 1e-9  // W/m², accepted when rounding stops it short

	// W/m², accepted where the inner face is known to the last digit and this
	// is what the digit is worth: water near boiling.
	roundingLimit = 1e-7
	stepLimit     = 60.0 // K, longest step of a temperature: over more the fourth power leaves its tangent by over a third
)

// gapCalc is one gap during the solution.
type gapCalc struct {
	width    float64
	bridge   float64
	lnAspect float64
	flow     [2]gapTilt // house side warmer, outer side warmer
	tilt     [2]float64 // degree
	locked   bool       // keep branch whatever the Rayleigh number
	branch   int
	pinned   bool // hold ra at wrightHigh, the Nusselt number being an unknown
	upright  bool // the correlation has jumps

	held      float64 // Nusselt number while the solver relaxes, else 0
	unsettled bool    // held apart from the correlation at the end

	ra, nu, h float64    // last evaluation, h without bridge
	side      int        // of flow and tilt
	air       float64    // °C
	films     [2]float64 // W/(m² K), h of the outer and the inner side where screens leak
}

// solver holds the problem and the iterate of one cover. It lives on the
// caller's stack.
type solver struct {
	n      int
	vars   int
	dry    *longwave // with a dry inner face
	wet    *longwave // with water on it
	mixed  longwave  // with water on a share of it
	c      *constants
	k      *CoverConditions
	room   *roomAir
	near   *nearPart // last iterates, or nil
	system *system   // space for the balances
	aim    float64   // W/m², to which balances are closed
	fresh  bool      // system holds the Jacobian of the state
	in     float64   // °C
	out    float64   // °C
	eIn    float64   // W/m²
	eOut   float64   // W/m²
	hOut   float64   // W/(m² K)
	film   innerFilmCalc
	inner  faceMode
	held   float64 // °C, where the inner face is held
	under  faceMode
	closed float64 // fraction of the innermost layer that is not open
	ice    float64 // fraction of the condensate that freezes
	dripAt float64 // °C, the dry inner face; NaN when it was not solved
	leaks  bool
	plain  bool // freeze the coefficients in the Jacobian
	far    bool // a state was sought from afar

	resist [MaxLayers]float64 // m² K/W
	half   [MaxLayers]float64 // W/m², sun at each face
	leak   [MaxLayers]float64 // W/(m² K)
	gaps   [MaxLayers - 1]gapCalc

	x [maxVars]float64

	// Last evaluation.
	t        [maxFaces]float64 // °C
	black    [maxFaces]float64 // W/m²
	g        [maxFaces]float64 // W/m², irradiance
	f        [maxVars]float64  // balances
	hIn      float64
	hInSlope float64 // W/(m² K), of the convection inside with the face
	latent   float64 // W/m², with the heat that holds the face
	vapour   float64 // kg/(s m²)
	water    wetAt   // of the face as water or frost
	steps    int
	biggest  float64 // W/m², largest open balance
}

// prepare fills the problem for cover c in conditions k; the pointers of s
// are set by the caller, which keeps them off the heap. With touching true
// the partly collapsed gap has its collapsed width.
func (s *solver) prepare(c *layerSet, k *CoverConditions, pc *constants, touching bool) {
	s.n, s.closed = c.n, 1-c.layers[c.n-1].Openness
	s.in, s.out = k.Inside, k.Outside
	s.eIn = pc.emission(k.radiant())
	s.eOut = k.fromOutside(pc)
	s.hOut = k.outerConvection()
	made := s.near != nil && s.near.film.of(k) // the same facet as before
	if made {
		s.film = s.near.film
	} else {
		s.film = newInnerFace(k.InsideConvection, k.Tilt, k.Height, k.Pressure, pc, k.InsideCoefficient)
	}
	room := pc.air(k.Inside+constant.ZeroCelsius, k.Pressure)
	for i := range s.n {
		s.resist[i] = c.layers[i].Thickness / c.layers[i].Conductivity
		s.half[i] = k.AbsorbedSun[i] / 2
		s.leak[i] = c.layers[i].Leakage * room.Density * room.HeatCapacity
		s.leaks = s.leaks || s.leak[i] > 0
	}
	if made {
		copy(s.gaps[:s.n-1], s.near.gaps[:])
	} else {
		s.prepareGaps(c, k, touching)
		if s.near != nil {
			s.near.film = s.film
			copy(s.near.gaps[:], s.gaps[:s.n-1])
		}
	}
	s.vars = s.base()
	s.start()
}

// prepareGaps fills in the gaps of cover c, see prepare.
func (s *solver) prepareGaps(c *layerSet, k *CoverConditions, touching bool) {
	if s.n == 1 {
		return
	}
	direct, reverse := newGapTilt(k.Tilt), newGapTilt(180-k.Tilt)
	for i := range s.n - 1 {
		g := &s.gaps[i]
		g.width = c.gaps[i].Width
		g.bridge = c.gaps[i].Bridge
		if touching && i == c.patchGap {
			g.width = c.gaps[i].CollapsedWidth
		}
		g.lnAspect = math.Log(k.Height / g.width)
		g.flow = [2]gapTilt{direct, reverse}
		g.tilt = [2]float64{k.Tilt, 180 - k.Tilt}
		g.upright = direct.jumps() || reverse.jumps()
	}
}

// base returns the count of unknowns without Nusselt numbers.
func (s *solver) base() int {
	v := 2 * s.n
	if s.leaks {
		v += s.n - 1
	}
	if s.inner == faceHeld {
		v++
	}
	return v
}

// emission returns the black-body emission in W/m² at t in °C.
func (c *constants) emission(t float64) float64 {
	k := t + constant.ZeroCelsius
	k2 := k * k
	return c.sigma * k2 * k2
}

// slopeOf returns the slope of the black emission of a face, W/(m² K).
func (s *solver) slopeOf(face int) float64 {
	return 4 * s.black[face] / (s.t[face] + constant.ZeroCelsius)
}

// start sets a first iterate: resistances in a row, of the usual size.
func (s *solver) start() {
	const inside, gap = 0.13, 0.16 // m² K/W
	outside := 1 / (s.hOut + 4)
	total := inside + outside + gap*float64(s.n-1)
	q := (s.in - s.out) / total
	t := s.out + q*outside
	for i := range s.n {
		s.x[2*i] = t
		s.x[2*i+1] = 0
		t += q * gap
		if s.leaks && i < s.n-1 {
			s.x[2*s.n+i] = t - q*gap/2
		}
	}
}

// evaluate computes balances and, unless j is nil, the Jacobian at s.x. The
// return value is the sum of squares of the balances.
func (s *solver) evaluate(j *system) float64 {
	n, faces := s.n, 2*s.n
	var emit [maxFaces]float64 // slope of the black emission
	for i := range n {
		o, f := outerFace(i), innerFace(i)
		s.t[o] = s.x[2*i]
		s.t[f] = s.x[2*i] + s.x[2*i+1]*s.resist[i]
		for _, a := range [2]int{o, f} {
			k := s.t[a] + constant.ZeroCelsius
			emit[a] = 4 * s.c.sigma * k * k * k
			s.black[a] = emit[a] * k / 4
		}
	}
	rad := s.optics()
	if j != nil {
		for r := range s.vars {
			row := &j.matrix[r]
			for q := range s.vars {
				row[q] = 0
			}
		}
	}
	// Long-wave, sun and conduction; columns are face temperatures at first.
	for a := range faces {
		s.g[a] = rad.irradiance(a, faces, &s.black, s.eOut, s.eIn)
		e := rad.emittance[a]
		s.f[a] = e*(s.g[a]-s.black[a]) + s.half[a/2]
		if j != nil {
			row := &j.matrix[a]
			for b := range faces {
				row[b] = e * rad.face[a][b] * emit[b]
			}
			row[a] -= e * emit[a]
		}
	}
	// Convection outside.
	s.f[0] += s.hOut * (s.out - s.t[0])
	// Convection and vapour inside.
	last := faces - 1
	h, slope := s.film.coefficient(s.in, s.t[last])
	s.hIn, s.hInSlope = h, slope
	s.f[last] += h * (s.in - s.t[last])
	if s.plain {
		slope = -h
	}
	if j != nil {
		j.matrix[0][0] -= s.hOut
		j.matrix[last][last] += slope
	}
	pin := s.base()
	switch s.inner {
	case faceWater, faceFrost:
		w := s.room.wetAt(s.t[last])
		s.water = w
		carry := s.closed * max(h, stillVapour) * w.perH
		heat := latentHeat(s.t[last], s.inner == faceFrost)
		s.vapour = carry * (s.room.ratio - w.ratio)
		s.latent = heat * s.vapour
		if j != nil {
			j.matrix[last][last] += s.latent*w.bends - heat*carry*w.slope
			if s.inner == faceWater && s.t[last] > psychro.TriplePoint && s.t[last] < hottestHeat {
				j.matrix[last][last] += s.vapour * evaporationBend
			}
			if d := s.in - s.t[last]; !s.plain && h > stillVapour && math.Abs(d) > alikeAir {
				j.matrix[last][last] += s.latent * (slope + h) / (d * h)
			}
		}
	case faceHeld:
		s.vapour, s.latent = 0, s.x[pin-1]
		s.f[pin-1] = holding * (s.t[last] - s.held)
		if j != nil {
			j.matrix[last][pin-1]++
			j.matrix[pin-1][last] = holding
		}
	default:
		s.vapour, s.latent = 0, 0
	}
	s.f[last] += s.latent
	for i := range n - 1 {
		pin = s.gap(i, pin, j)
	}
	// The flux conducted, and the change of columns to the unknowns.
	sum := 0.0
	for i := range n {
		o, f := outerFace(i), innerFace(i)
		s.f[o] += s.x[2*i+1]
		s.f[f] -= s.x[2*i+1]
		if j == nil {
			continue
		}
		for r := range s.vars {
			row := &j.matrix[r]
			inner := row[f]
			row[o] += inner
			row[f] = inner * s.resist[i]
		}
		j.matrix[o][f]++
		j.matrix[f][f]--
	}
	s.biggest = 0
	for r := range s.vars {
		sum += s.f[r] * s.f[r]
		s.biggest = math.Max(s.biggest, math.Abs(s.f[r]))
	}
	s.fresh = j != nil && !s.plain
	return sum
}
