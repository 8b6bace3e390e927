package fromplan

import (
	"math"

	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
	"cloche.example/ventilation"
)

// Crop is the light that the crop asks for, with the plan's own figures.
func Crop(p *plan.Plan) lighting.CropLight {
	q := p.Crop
	c, found := lighting.FindCropLight(q.Name)
	if !found {
		c = lighting.CropLight{Name: "own crop", Least: math.NaN(), Target: math.NaN(), Most: math.NaN(), Basis: "the plan", Source: "the plan"}
	}
	for _, own := range []struct{ to, from *float64 }{{&c.Least, q.LeastLight}, {&c.Target, q.WantedLight}, {&c.Most, q.MostLight}} {
		if own.from != nil {
			*own.to = *own.from
		}
	}
	return c
}

var stomata = map[string]ventilation.Stomata{"tomato": ventilation.TomatoStomata, "grass": ventilation.GrassStomata}

// Canopy is the crop as it gives off water.
func Canopy(p *plan.Plan) ventilation.Canopy {
	q := p.Crop
	c := ventilation.DefaultCanopy(q.LeafArea)
	c.LeafSize, c.AirSpeed, c.Extinction, c.Reflectance, c.Stomata = q.LeafWidth, q.AirSpeed, q.LightExtinction, q.SunReflected, stomata[q.Stomata]
	if p.CO2 != nil {
		c.CO2 = p.CO2.Level
	}
	return c
}

// FloorSurface is the floor under the crop.
func FloorSurface(p *plan.Plan) ventilation.FloorSurface {
	f := ventilation.DefaultFloorSurface()
	q := p.Floor
	f.Wet, f.Resistance, f.Absorptance, f.Conductance = q.Wet, q.Resistance, q.Absorptance, q.Conductance
	return f
}
