package envelope

import (
	"errors"
	"fmt"

	"cloche.example/internal/domain"
)

// Layer is one film, pane, sheet or screen of a cover. Its long-wave
// properties are grey and diffuse; the reflectance of a face is what emittance
// and transmittance leave.
type Layer struct {
	Name          string  // for reports, may be empty
	EmittanceOut  float64 // fraction, 0 to 1, long-wave emittance of the face to the outside
	EmittanceIn   float64 // fraction, 0 to 1, long-wave emittance of the face to the inside
	Transmittance float64 // fraction, 0 to 1, long-wave transmittance, the same both ways
	Thickness     float64 // m, 1e-6 to 1
	Conductivity  float64 // W/(m K), 0.001 to 500
	Openness      float64 // fraction, 0 to 1, of the layer that is open to radiation, as in a screen; 0 when closed
	Leakage       float64 // m³/(s m²), 0 to 0.5, air exchanged through the layer, as by a screen; only 0 in the first layer, whose leakage is the house's
}

// Gap is the closed air space between two layers.
type Gap struct {
	Width          float64 // m, 1e-5 to 5
	Bridge         float64 // W/(m² K), 0 to 1000, conductance of ribs or webs beside the air
	Collapsed      float64 // fraction, 0 to 1, of the area where the two layers lie on each other; in one gap of a cover at most
	CollapsedWidth float64 // m, 1e-5 to 5, still air left between the layers there; unused while Collapsed is 0
}

// Ranges of the properties of a cover. The long-wave limits follow from the
// definitions, the others keep slips of unit out.
var (
	fractionRange       = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}
	thicknessRange      = domain.Range{Min: 1e-6, Max: 1, Unit: "m", Source: "chosen"}
	conductivityRange   = domain.Range{Min: 1e-3, Max: 500, Unit: "W/(m K)", Source: "chosen: aerogel to copper"}
	gapWidthRange       = domain.Range{Min: 1e-5, Max: 5, Unit: "m", Source: "chosen"}
	bridgeRange         = domain.Range{Min: 0, Max: 1000, Unit: "W/(m² K)", Source: "chosen"}
	layerLeakageRange   = domain.Range{Min: 0, Max: 0.5, Unit: "m³/(s m²)", Source: "chosen"}
	firstLeakageRange   = domain.Range{Min: 0, Max: 0, Unit: "m³/(s m²)", Source: "leakage of the outermost layer belongs to the house"}
	layerCountRange     = domain.Range{Min: 1, Max: MaxLayers, Unit: "count", Source: "MaxLayers"}
	collapsedCountRange = domain.Range{Min: 0, Max: 1, Unit: "gaps", Source: "one gap of a cover may be collapsed in part"}
	mirrorRange         = domain.Range{Min: 0, Max: 1 - 1e-9, Unit: "fraction", Source: "radiation between two perfect mirrors has no solution"}
)

// wetEmittance is the long-wave emittance of a face under a film of water,
// which is also opaque (from memory; tables give 0.95 to 0.96).
const wetEmittance = 0.95

// Cover is one to six checked layers, numbered from the outside. It is made by
// NewCover or is one of the ready-made ones; the zero Cover is invalid and
// refused. It is small, never changes, and may be used by several goroutines
// at once.
type Cover struct{ set *layerSet }

// layerSet is what a cover is made of.
type layerSet struct {
	n        int
	layers   [MaxLayers]Layer
	gaps     [MaxLayers - 1]Gap
	dry      longwave
	wet      longwave // with a film of water on the inner face
	patchGap int      // the gap that is collapsed in part, or -1
}

// NewCover returns the cover made of layers, from the outside to the inside,
// and of the gaps between them, one fewer. The error joins a *RangeError for
// each fault, with Field as in "layers[0].Thickness".
func NewCover(layers []Layer, gaps []Gap) (Cover, error) {
	c := &layerSet{n: len(layers), patchGap: -1}
	if err := layerCountRange.Check("number of layers", float64(len(layers))); err != nil {
		return Cover{}, err
	}
	want := float64(len(layers) - 1)
	count := domain.Range{Min: want, Max: want, Unit: "gaps", Source: "one fewer than layers"}
	if err := count.Check("number of gaps", float64(len(gaps))); err != nil {
		return Cover{}, err
	}
	var faults []error
	check := func(r domain.Range, v float64, format string, i int) {
		if !r.Contains(v) {
			faults = append(faults, r.Check(fmt.Sprintf(format, i), v))
		}
	}
	for i, l := range layers {
		check(fractionRange, l.EmittanceOut, "layers[%d].EmittanceOut", i)
		check(fractionRange, l.EmittanceIn, "layers[%d].EmittanceIn", i)
		check(fractionRange, l.Transmittance, "layers[%d].Transmittance", i)
		if fractionRange.Contains(l.EmittanceOut) && fractionRange.Contains(l.EmittanceIn) && fractionRange.Contains(l.Transmittance) {
			check(fractionRange, sumToOne(l.EmittanceOut+l.Transmittance), "layers[%d].EmittanceOut + Transmittance", i)
			check(fractionRange, sumToOne(l.EmittanceIn+l.Transmittance), "layers[%d].EmittanceIn + Transmittance", i)
		}
		check(thicknessRange, l.Thickness, "layers[%d].Thickness", i)
		check(conductivityRange, l.Conductivity, "layers[%d].Conductivity", i)
		check(fractionRange, l.Openness, "layers[%d].Openness", i)
		if i == 0 {
			check(firstLeakageRange, l.Leakage, "layers[%d].Leakage", i)
		} else {
			check(layerLeakageRange, l.Leakage, "layers[%d].Leakage", i)
		}
	}
	collapsed := 0
	for i, g := range gaps {
		check(gapWidthRange, g.Width, "gaps[%d].Width", i)
		check(bridgeRange, g.Bridge, "gaps[%d].Bridge", i)
		check(fractionRange, g.Collapsed, "gaps[%d].Collapsed", i)
		if g.Collapsed > 0 {
			check(gapWidthRange, g.CollapsedWidth, "gaps[%d].CollapsedWidth", i)
			c.patchGap = i
			collapsed++
		}
	}
	if err := collapsedCountRange.Check("number of collapsed gaps", float64(collapsed)); err != nil {
		faults = append(faults, err)
	}
	if len(faults) > 0 {
		return Cover{}, errors.Join(faults...)
	}
	copy(c.layers[:], layers)
	copy(c.gaps[:], gaps)
	for i, l := range layers {
		closed := 1 - l.Openness
		c.dry.emittance[outerFace(i)] = closed * l.EmittanceOut
		c.dry.emittance[innerFace(i)] = closed * l.EmittanceIn
		c.dry.transmit[i] = closed*l.Transmittance + l.Openness
	}
	c.wet = c.dry
	last := c.n - 1
	l := c.layers[last]
	closed, wet := 1-l.Openness, l.wetted() // open area stays open
	c.wet.emittance[outerFace(last)] = closed * wet.EmittanceOut
	c.wet.emittance[innerFace(last)] = closed * wet.EmittanceIn
	c.wet.transmit[last] = l.Openness
	if !c.dry.trace(c.n) || !c.wet.trace(c.n) {
		return Cover{}, mirrorRange.Check("reflectance of facing layers", 1)
	}
	return Cover{c}, nil
}

// slack is the fraction by which rounding may put a sum or a length beyond a limit that
// it was made to meet.
const slack = 1e-12

// sumToOne takes off the rounding of a sum that should end at 1.
func sumToOne(v float64) float64 {
	if v > 1 && v < 1+slack {
		return 1
	}
	return v
}

// count returns the number of layers, 0 of the zero Cover.
func (c Cover) count() int {
	if c.set == nil {
		return 0
	}
	return c.set.n
}

// Layers returns the layers from the outside, as a fresh slice.
func (c Cover) Layers() []Layer {
	return append([]Layer(nil), c.layers()...)
}

// Gaps returns the gaps from the outside, one fewer than layers, as a fresh
// slice.
func (c Cover) Gaps() []Gap {
	return append([]Gap(nil), c.gaps()...)
}

func (c Cover) layers() []Layer {
	if c.set == nil {
		return nil
	}
	return c.set.layers[:c.set.n]
}

func (c Cover) gaps() []Gap {
	if c.set == nil {
		return nil
	}
	return c.set.gaps[:c.set.n-1]
}
