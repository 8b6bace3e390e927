package main

import (
	"errors"
	"math"

	"cloche.example/envelope"
	"cloche.example/lighting"
)

type sunInside struct {
	OnTrays  float64 `json:"daylight_on_trays_over_outside"`
	Gain     float64 `json:"sun_kept_as_heat_over_sun_on_the_floor_area"`
	Daylight float64 `json:"daylight_on_trays_mol_m2_d"` // in the design month
}

// sheet is a sheet of a cover for light: refractive index, thickness in m, and
// the fraction of light it lets through at normal incidence. Index and light
// are the typical values of envelope.Materials.
type sheet struct{ index, thickness, light float64 }

var sheets = map[string][]sheet{
	"single film":     {{1.515, 0.15e-3, 0.88}},
	"infrared film":   {{1.515, 0.18e-3, 0.87}},
	"double film":     {{1.515, 0.15e-3, 0.88}, {1.515, 0.15e-3, 0.88}},
	"single glass":    {{1.526, 4e-3, 0.90}},
	"twin-wall sheet": {{1.585, 0.5e-3, 0.895}, {1.585, 0.5e-3, 0.895}},
}

func layersOf(name string) (envelope.LightLayers, error) {
	var of []envelope.Sheet
	for _, s := range sheets[name] {
		of = append(of, envelope.Sheet{Index: s.index, Thickness: s.thickness, Extinction: envelope.ExtinctionOf(s.index, s.thickness, s.light)})
	}
	return envelope.NewLightLayers(of...)
}

// retained is the share of the sun in the house that stays as heat or vapour,
// the rest shines out again, fraction; albedo is what grass reflects,
// fraction. Both from memory.
const (
	retained = 0.8
	albedo   = 0.2
)

// sunOf takes the sun as even light from the whole sky: that of a cloudy day,
// and about the mean over a day. On the trays it has come through the roof;
// the gain comes through all facets.
func sunOf(p plan, shape envelope.Shape) (sunInside, error) {
	var lights []envelope.FacetLight
	var faults []error
	factors := envelope.DefaultLightFactors()
	factors.Dirt = p.Cover.LightLeft
	names := map[envelope.FacetKind]string{envelope.Roof: p.Cover.Roof, envelope.SideWall: p.Cover.SideWalls, envelope.EndWall: p.Cover.EndWalls}
	for _, f := range shape.Facets {
		l := envelope.FacetLight{Factors: factors}
		if name, clear := names[f.Kind]; clear {
			var err error
			l.Sheets, err = layersOf(name)
			faults = append(faults, err)
		}
		lights = append(lights, l)
	}
	g, err := envelope.NewGlazing(shape, lights, retained)
	if err := errors.Join(append(faults, err)...); err != nil {
		return sunInside{}, err
	}
	const level = 100 // W/m², cancels
	gain, err := g.Gain(envelope.Sunlight{DiffuseHorizontal: level, Albedo: albedo})
	if err != nil {
		return sunInside{}, err
	}
	roof, err := layersOf(p.Cover.Roof)
	s := sunInside{OnTrays: roof.Diffuse().Transmittance * factors.Total(), Gain: gain.Gain / (level * shape.FloorArea)}
	outside := lighting.OutdoorDLI(p.Site.MonthlySun[p.Site.DesignMonth-1]*1e6, lighting.DaylightFaust)
	s.Daylight = lighting.InsideDLI(outside, s.OnTrays)
	if math.IsNaN(s.Daylight) {
		err = errors.Join(err, errors.New("the daylight of the design month lies outside the model's range"))
	}
	return s, err
}
