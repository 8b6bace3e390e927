package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// HeatFlow is the direction in which heat crosses a wall, roof or floor.
type HeatFlow uint8

// Directions of heat flow. Within 30 degree of the horizontal counts as
// horizontal.
const (
	FlowHorizontal HeatFlow = iota // through walls
	FlowUp                         // through roofs out of a warm house
	FlowDown                       // through floors
)

// Coefficients of [IsoWall17] (from memory; the surface coefficients are
// confirmed by open tests of a national calculation model).
const (
	surfaceLevel, surfaceUp, surfaceDown = 2.5, 5.0, 0.7    // W/(m² K), Annex C
	spaceStill                           = 0.025            // W/(m K), Annex D
	spaceLevel, spaceUp                  = 1.25, 1.95       // W/(m² K), Annex D, to 5 K
	spaceDown, spaceDownN                = 0.12, -0.44      // Annex D, to 5 K
	spaceLevelT, spaceUpT, spaceDownT    = 0.73, 1.14, 0.09 // Annex D, above 5 K
	spaceDownTN                          = 0.187            // Annex D, above 5 K
	spaceBranch                          = 5.0              // K
)

// Ranges of an unventilated air layer.
var (
	airSpaceWidthRange = domain.Range{Min: 1e-3, Max: 0.3, Unit: "m", Source: "ISO 6946: below 0.3 m"}
	differenceRange    = domain.Range{Min: 0, Max: 200, Unit: "K", Source: "chosen"}
)

// radiativeCoefficient returns eps 4 sigma T³ in W/(m² K) for a surface of the
// emittance, a fraction, at the mean temperature t in °C, [IsoWall17] eq. C.3;
// NaN out of range.
func radiativeCoefficient(emittance, t float64) float64 {
	if !fractionRange.Contains(emittance) || !airTemperatureRange.Contains(t) {
		return nan
	}
	k := t + constant.ZeroCelsius
	return emittance * 4 * constant.StefanBoltzmann * k * k * k
}

// InsideResistance returns the surface resistance inside in m² K/W for the
// direction of heat flow, the emittance, fraction, 0 to 1, and the surface
// temperature t, °C, -100 to 120: [IsoWall17] eq. C.1; NaN outside these.
func InsideResistance(flow HeatFlow, emittance, t float64) float64 {
	h := nan
	switch flow {
	case FlowHorizontal:
		h = surfaceLevel
	case FlowUp:
		h = surfaceUp
	case FlowDown:
		h = surfaceDown
	}
	return 1 / (h + radiativeCoefficient(emittance, t))
}

// OutsideResistance returns the surface resistance outside in m² K/W for the
// wind, m/s, 0 to 40, the emittance, fraction, 0 to 1, and the surface
// temperature t, °C, -100 to 120: [IsoWall17] eq. C.5; NaN outside these.
func OutsideResistance(wind, emittance, t float64) float64 {
	return 1 / (OutsideISO6946.Coefficient(wind) + radiativeCoefficient(emittance, t))
}

// AirSpace is a closed, unventilated air layer.
type AirSpace struct {
	Flow       HeatFlow   // direction of the heat
	Width      float64    // m, 0.001 to 0.3
	Emittance  [2]float64 // fraction, 0 to 1, of its two faces
	Mean       float64    // °C, -100 to 120, mean temperature
	Difference float64    // K, 0 to 200, between its faces
}

// AirSpaceResistance returns the resistance in m² K/W of the air layer s,
// [IsoWall17] Annex D. NaN for a field out of range.
func AirSpaceResistance(s AirSpace) float64 {
	width, dt := s.Width, s.Difference
	e1, e2 := s.Emittance[0], s.Emittance[1]
	if !airSpaceWidthRange.Contains(width) || !fractionRange.Contains(e1) || !fractionRange.Contains(e2) || !differenceRange.Contains(dt) || s.Flow > FlowDown {
		return nan
	}
	flow := s.Flow
	large := dt > spaceBranch
	var h float64
	switch {
	case flow == FlowUp && large:
		h = spaceUpT * math.Cbrt(dt)
	case flow == FlowUp:
		h = spaceUp
	case flow == FlowDown && large:
		h = spaceDownT * math.Pow(dt, spaceDownTN) * math.Pow(width, spaceDownN)
	case flow == FlowDown:
		h = spaceDown * math.Pow(width, spaceDownN)
	case large:
		h = spaceLevelT * math.Cbrt(dt)
	default:
		h = spaceLevel
	}
	h = math.Max(h, spaceStill/width) // Annex D
	exchange := 0.0
	if e1 > 0 && e2 > 0 {
		exchange = 1 / (1/e1 + 1/e2 - 1)
	}
	return 1 / (h + radiativeCoefficient(exchange, s.Mean))
}

// WallPart is one strip of an inhomogeneous layer.
type WallPart struct {
	Share      float64 // fraction, 0 to 1, of the area
	Resistance float64 // m² K/W, 1e-6 to 50
}

// WallLayer is one layer of a wall: of one resistance, or of parts beside each
// other such as studs and insulation.
type WallLayer struct {
	Name       string     // for reports
	Resistance float64    // m² K/W, 1e-6 to 50, thickness over conductivity or an air space; unused when there are parts
	Parts      []WallPart // strips whose shares make 1
}

// Wall is an opaque component by ISO 6946.
type Wall struct {
	ROut   float64     // m² K/W, 0 to 50, outside surface resistance, 0.04 by convention
	RIn    float64     // m² K/W, 0 to 50, inside surface resistance, 0.13, 0.10 up, 0.17 down by convention
	Layers []WallLayer // from the outside
}

// WallResult carries the terms of a wall's U-value.
type WallResult struct {
	U     float64 // W/(m² K), between the environmental temperatures
	R     float64 // m² K/W, total, surfaces included
	Upper float64 // m² K/W, upper limit: paths that do not mix
	Lower float64 // m² K/W, lower limit: layers of one temperature
	Error float64 // fraction, the largest relative error, (Upper - Lower)/(2 R)
}

// combinedMethodRatio is the largest ratio Upper/Lower for which the combined
// method may be used; it also must not be used where metal bridges insulation.
const combinedMethodRatio = 1.5

// Solve returns the U-value by [IsoWall17] 6.7. Parts of different layers are
// taken to cross at random, so that each combination of parts is a path with
// the product of their shares. The error joins a *RangeError for each fault,
// ErrNoSolution when the upper limit is more than 1.5 times the lower one;
// the result is given then, too.
func (w Wall) Solve() (WallResult, error) {
	if err := w.check(); err != nil {
		return WallResult{}, err
	}
	surfaces := w.ROut + w.RIn
	r := WallResult{Lower: surfaces}
	paths := []WallPart{{Share: 1, Resistance: surfaces}}
	for _, l := range w.Layers {
		parts := l.Parts
		if len(parts) == 0 {
			parts = []WallPart{{Share: 1, Resistance: l.Resistance}}
		}
		side := 0.0
		next := make([]WallPart, 0, len(paths)*len(parts))
		for _, p := range parts {
			side += p.Share / p.Resistance // eq. 8
			for _, q := range paths {
				next = append(next, WallPart{Share: q.Share * p.Share, Resistance: q.Resistance + p.Resistance})
			}
		}
		paths = next
		r.Lower += 1 / side // eq. 9
	}
	sum := 0.0
	for _, p := range paths {
		sum += p.Share / p.Resistance // eq. 6
	}
	r.Upper = 1 / sum
	r.R = (r.Upper + r.Lower) / 2 // eq. 5
	r.U = 1 / r.R
	r.Error = (r.Upper - r.Lower) / (2 * r.R) // eq. 10
	if r.Upper > combinedMethodRatio*r.Lower {
		return r, fmt.Errorf("%w: upper limit %.3g over lower limit %.3g m² K/W is more than %.2g, the combined method does not hold", ErrNoSolution, r.Upper, r.Lower, combinedMethodRatio)
	}
	return r, nil
}

func (w Wall) check() error {
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(resistanceRange, "ROut", w.ROut)
	check(resistanceRange, "RIn", w.RIn)
	check(domain.Range{Min: 1, Max: 40, Unit: "layers", Source: "chosen"}, "number of Layers", float64(len(w.Layers)))
	layer := domain.Range{Min: 1e-6, Max: 50, Unit: "m² K/W", Source: "chosen"}
	count := 1
	for i, l := range w.Layers {
		if len(l.Parts) == 0 {
			check(layer, fmt.Sprintf("Layers[%d].Resistance", i), l.Resistance)
			continue
		}
		sum := 0.0
		for j, p := range l.Parts {
			check(layer, fmt.Sprintf("Layers[%d].Parts[%d].Resistance", i, j), p.Resistance)
			check(fractionRange, fmt.Sprintf("Layers[%d].Parts[%d].Share", i, j), p.Share)
			sum += p.Share
		}
		check(domain.Range{Min: 1 - 1e-9, Max: 1 + 1e-9, Unit: "fraction", Source: "the parts cover the layer"}, fmt.Sprintf("Layers[%d] sum of shares", i), sum)
		count = min(1<<20, count*len(l.Parts))
	}
	check(domain.Range{Min: 1, Max: 4096, Unit: "paths", Source: "chosen"}, "number of combinations of parts", float64(count))
	return errors.Join(faults...)
}
