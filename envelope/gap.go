package envelope

import (
	"math"

	"cloche.example/internal/domain"
)

var nan = math.NaN()

const degree = math.Pi / 180

// gapTiltRange is the accepted tilt of a gap or facet in degree: 0 lies flat with
// the inside below, 90 stands, 180 lies flat with the inside above.
var gapTiltRange = domain.Range{Min: 0, Max: 180, Unit: "degree", Source: "definition"}

// hollandsRayleighRange is the range of the Rayleigh number in which Hollands et
// al. measured. Beyond it the correlation is still used, as [IsoWin03] does,
// and results say so.
var hollandsRayleighRange = domain.Range{Min: 0, Max: 1e5, Unit: "number", Source: "Hollands et al. 1976"}

// Coefficients of the correlations for air layers, [IsoWin03] 5.3.3.
const (
	hollandsCritical = 1708.0 // critical Rayleigh number
	hollandsFactor   = 1.44
	hollandsSecond   = 5830.0
	hollandsAngle    = 1.8 // on the tilt
	hollandsPower    = 1.6

	elSherG0   = 0.5
	elSherG1   = 3160.0
	elSherG2   = 20.6
	elSherG3   = 0.1
	elSherA    = 0.0936
	elSherN    = 0.314
	elSherB0   = 0.104
	elSherB1   = 0.175
	elSherM    = 0.283
	wright1    = 0.0673838
	wright2    = 0.028154
	wright2N   = 0.4134
	wright3    = 1.7596678e-10
	wright3N   = 2.2984755
	wrightH    = 0.242
	wrightHN   = 0.272
	wrightLow  = 1e4 // Rayleigh number: change of branch
	wrightHigh = 5e4 // Rayleigh number: change of branch
)

// GapNusselt returns the dimensionless Nusselt number of a closed air layer
// at the Rayleigh number ra, with the aspect ratio (height over width) and the
// tilt, degree, 0 to 180: below 90 heat flows upward, above 90 downward, so that
// a layer at tilt with its upper face warmer stands at 180 - tilt. [IsoWin03]
// eq. 42-53: Hollands below 60 degree, ElSherbiny at 60, Wright at 90, linear
// in the angle between, and the sine rule beyond. NaN for a negative or
// infinite ra, an aspect of zero or less, or a tilt out of range.
//
// The vertical correlation jumps: down by 0.5 % at ra 1e4 and up by 0.6 % at
// 5e4. The values here are those of [IsoWin03] on either side.
func GapNusselt(ra, aspect, tilt float64) float64 {
	if !(ra >= 0) || !(aspect > 0) || math.IsInf(ra, 1) || !gapTiltRange.Contains(tilt) {
		return nan
	}
	s := newGapTilt(tilt)
	nu, _ := s.nusselt(ra, math.Log(aspect), branchOf(ra))
	return nu
}

// gapTilt holds the terms of the correlations that depend on the tilt alone.
type gapTilt struct {
	kind   gapKind
	cosine float64 // of the tilt
	sine   float64 // of the tilt
	power  float64 // sin(1.8 tilt)^1.6
	weight float64 // of the vertical value between 60 and 90 degree
}

type gapKind uint8

const (
	gapHollands gapKind = iota // below 60 degree
	gapSteep                   // 60 to 90 degree
	gapUpright                 // 90 degree
	gapDown                    // beyond 90 degree: heat flows down
)

func newGapTilt(tilt float64) gapTilt {
	s := gapTilt{sine: math.Sin(tilt * degree)}
	switch {
	case tilt < 60:
		s.kind = gapHollands
		s.cosine = math.Cos(tilt * degree)
		s.power = math.Pow(math.Sin(hollandsAngle*tilt*degree), hollandsPower)
	case tilt < 90:
		s.kind = gapSteep
		s.weight = (tilt - 60) / 30
	case tilt == 90:
		s.kind = gapUpright
	default:
		s.kind = gapDown
	}
	return s
}

// jumps tells whether the correlation has the jumps of the vertical layer.
func (s *gapTilt) jumps() bool {
	return s.kind == gapUpright || s.kind == gapDown || s.kind == gapSteep && s.weight > 0
}

// branchOf returns the branch of the vertical correlation: 0, 1 or 2.
func branchOf(ra float64) int {
	switch {
	case ra <= wrightLow:
		return 0
	case ra <= wrightHigh:
		return 1
	}
	return 2
}

// nusselt returns the Nusselt number and its derivative over ln(ra), with the
// given branch of the vertical correlation. lnAspect is ln(height/width).
func (s *gapTilt) nusselt(ra, lnAspect float64, branch int) (nu, slope float64) {
	if s.kind == gapHollands {
		return s.hollands(ra)
	}
	if !(ra > 1e-12) {
		return 1, 0
	}
	l := math.Log(ra)
	switch s.kind {
	case gapSteep:
		nu, slope = elSherbiny(l, lnAspect)
		if s.weight > 0 {
			n90, d90 := wright(ra, l, lnAspect, branch)
			nu += s.weight * (n90 - nu)
			slope += s.weight * (d90 - slope)
		}
		return nu, slope
	case gapUpright:
		return wright(ra, l, lnAspect, branch)
	}
	nu, slope = wright(ra, l, lnAspect, branch) // [IsoWin03] eq. 53
	return 1 + (nu-1)*s.sine, slope * s.sine
}

// hollands is [IsoWin03] eq. 42, [Hollands76] eq. 8, below 60 degree.
func (s *gapTilt) hollands(ra float64) (nu, slope float64) {
	nu = 1
	x := ra * s.cosine
	if x > hollandsCritical {
		a := hollandsCritical / x
		b := a * s.power
		nu += hollandsFactor * (1 - a) * (1 - b)
		slope += hollandsFactor * (a*(1-b) + (1-a)*b)
	}
	if x > hollandsSecond {
		c := math.Cbrt(x / hollandsSecond)
		nu += c - 1
		slope += c / 3
	}
	return nu, slope
}

// elSherbiny is the value at 60 degree, [IsoWin03] eq. 44-47, [ElSher82].
func elSherbiny(l, lnAspect float64) (nu, slope float64) {
	y := math.Exp(elSherG2 * (l - lnElSherG1))
	g := elSherG0 / math.Exp(elSherG3*math.Log1p(y))
	dg := -g * elSherG3 * elSherG2 * y / (1 + y)
	if math.IsInf(y, 1) {
		g, dg = 0, 0
	}
	a := elSherA * math.Exp(elSherN*l) / (1 + g)
	a2 := a * a
	a7 := a2 * a2 * a2 * a
	nu = math.Exp(math.Log1p(a7) / 7)
	slope = nu * a7 / (1 + a7) * (elSherN - dg/(1+g))
	if n2 := (elSherB0 + elSherB1*math.Exp(-lnAspect)) * math.Exp(elSherM*l); n2 > nu {
		return n2, n2 * elSherM
	}
	return nu, slope
}

var lnElSherG1 = math.Log(elSherG1)

// wright is the value at 90 degree, [IsoWin03] eq. 48-52, [Wright96].
func wright(ra, l, lnAspect float64, branch int) (nu, slope float64) {
	switch branch {
	case 0:
		x := wright3 * math.Exp(wright3N*l)
		nu, slope = 1+x, wright3N*x
	case 1:
		nu = wright2 * math.Exp(wright2N*l)
		slope = wright2N * nu
	default:
		nu = wright1 * math.Cbrt(ra)
		slope = nu / 3
	}
	if n2 := wrightH * math.Exp(wrightHN*(l-lnAspect)); n2 > nu {
		return n2, wrightHN * n2
	}
	return nu, slope
}
