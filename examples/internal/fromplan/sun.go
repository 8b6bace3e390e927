package fromplan

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
)

// optics of a sheet of a ready-made cover: refractive index, and the fraction
// of light that passes it square on; typical values of envelope.Materials.
var optics = map[string]struct{ index, light float64 }{
	"clear film":         {1.515, 0.88},
	"infrared film":      {1.515, 0.87},
	"glass":              {1.526, 0.90},
	"polycarbonate wall": {1.585, 0.895},
}

// Light is the cover of that name for light and sun.
func Light(p *plan.Plan, name string) (envelope.LightLayers, error) {
	for _, own := range p.Cover.Own {
		if own.Name == name {
			return ownLight(own)
		}
	}
	c, err := Cover(p, name)
	if err != nil {
		return envelope.LightLayers{}, err
	}
	var sheets []envelope.Sheet
	for _, l := range c.Layers() {
		o, known := optics[l.Name]
		if !known {
			return envelope.LightLayers{}, fmt.Errorf("cover %q: what light %q lets through is not known", name, l.Name)
		}
		sheets = append(sheets, envelope.Sheet{Index: o.index, Thickness: l.Thickness, Extinction: envelope.ExtinctionOf(o.index, l.Thickness, o.light)})
	}
	return envelope.NewLightLayers(sheets...)
}

// ownLight takes each layer's light, or seeks one extinction for all layers
// with which the whole cover lets through what the data sheet says.
func ownLight(own plan.OwnCover) (envelope.LightLayers, error) {
	with := func(extinction func(l plan.Layer) float64) (envelope.LightLayers, error) {
		var sheets []envelope.Sheet
		for _, l := range own.Layers {
			sheets = append(sheets, envelope.Sheet{Index: l.Refractive, Thickness: l.Thickness, Extinction: extinction(l)})
		}
		return envelope.NewLightLayers(sheets...)
	}
	if own.Light == nil {
		c, err := with(func(l plan.Layer) float64 {
			return envelope.ExtinctionOf(l.Refractive, l.Thickness, l.LightTransmittance)
		})
		if err != nil {
			err = fmt.Errorf("cover %q: a smooth layer of its refractive_ratio cannot have its light_transmittance_fraction: %w", own.Name, err)
		}
		return c, err
	}
	clear, err := with(func(plan.Layer) float64 { return 0 })
	if err != nil {
		return clear, fmt.Errorf("cover %q: %w", own.Name, err)
	}
	if most := clear.At(0).Transmittance; *own.Light > most {
		return clear, fmt.Errorf("cover %q: light_fraction is %g, but reflection alone leaves %.3g of such layers' light", own.Name, *own.Light, most)
	}
	// Each layer takes the same share of light whatever its thickness.
	low, high := 0.0, 40.0
	for range 60 {
		mid := (low + high) / 2
		if clear, err = with(func(l plan.Layer) float64 { return min(mid/l.Thickness, 1e5) }); err != nil {
			return clear, fmt.Errorf("cover %q: %w", own.Name, err)
		}
		if clear.At(0).Transmittance > *own.Light {
			low = mid
		} else {
			high = mid
		}
	}
	return clear, nil
}

// Glazing is the house for the sun.
func Glazing(p *plan.Plan, s envelope.Shape) (envelope.Glazing, error) {
	names := map[envelope.FacetKind]string{envelope.Roof: p.Cover.Roof, envelope.SideWall: p.Cover.SideWalls, envelope.EndWall: p.Cover.EndWalls}
	layers := map[envelope.FacetKind]envelope.LightLayers{}
	var faults []error
	for kind, name := range names {
		l, err := Light(p, name)
		layers[kind] = l
		faults = append(faults, err)
	}
	if err := errors.Join(faults...); err != nil {
		return envelope.Glazing{}, err
	}
	factors := envelope.DefaultLightFactors()
	factors.Dirt = p.Cover.LightLeft
	lights := make([]envelope.FacetLight, len(s.Facets))
	for i, f := range s.Facets {
		lights[i] = envelope.FacetLight{Sheets: layers[f.Kind], Factors: factors}
	}
	return envelope.NewGlazing(s, lights, p.Cover.SunKept)
}

// readyScreenLight is what a ready-made screen lets through; from memory.
const readyScreenLight = 0.4

// ScreenLight is the part of the light that the plan's drawn screen lets through.
func ScreenLight(q *plan.Screen) float64 {
	if q.Own != nil {
		return q.Own.LightTransmittance
	}
	return readyScreenLight
}

// ShadeLight is the part of the light that the plan's shade lets through under the sun,
// W/m² on level ground.
func ShadeLight(p *plan.Plan, sun float64) float64 {
	if q := p.Shade; q != nil && sun > q.AboveSun {
		return 1 - q.Drawn*(1-q.Transmittance)
	}
	return 1
}

// ShadeLeft is the part of the sun, W/m² on level ground, that the plan's shade
// leaves the house: what an inside screen takes up stays in it.
func ShadeLeft(p *plan.Plan, sun float64) float64 {
	switch q := p.Shade; {
	case q == nil || sun <= q.AboveSun:
		return 1
	case q.Place == "inside screen":
		return 1 - q.Drawn*q.Reflectance
	default:
		return ShadeLight(p, sun)
	}
}
