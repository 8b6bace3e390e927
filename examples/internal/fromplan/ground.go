package fromplan

import (
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
)

var soils = map[string]func() envelope.Soil{"clay or silt": envelope.ClaySoil, "sand or gravel": envelope.SandSoil, "rock": envelope.RockSoil}

// Soil is what the house stands in.
func Soil(p *plan.Plan) envelope.Soil {
	g := p.Ground
	var s envelope.Soil
	if of, ready := soils[g.Soil]; ready {
		s = of()
	} else {
		s.Name, s.Source = "own soil", "the plan"
	}
	if g.SoilConductivity != nil {
		s.Conductivity = *g.SoilConductivity
	}
	if g.SoilHeatCapacity != nil {
		s.HeatCapacity = *g.SoilHeatCapacity * 1e6
	}
	return s
}

var edges = map[string]envelope.Edge{"none": envelope.EdgeBare, "flat": envelope.EdgeHorizontal, "upright": envelope.EdgeVertical}

// Ground is what lies under and beside the house; area and perimeter are taken
// from the shape when the house is made.
func Ground(p *plan.Plan) envelope.Ground {
	g := envelope.DefaultGround(Soil(p))
	q := p.Ground
	g.WallThickness, g.FloorResistance, g.WallResistance, g.JunctionPsi = q.WallThickness, q.FloorResistance, q.BuriedWallResistance, q.EdgeBridge
	e := q.EdgeInsulation
	g.Edge, g.EdgeWidth, g.EdgeThickness, g.EdgeConductivity = edges[e.Lies], e.Width, e.Thickness, e.Conductivity
	return g
}

// Climate fits the ground's yearly wave to the monthly means: the mean, and the
// amplitude and month of the first harmonic; the house is kept at inside, °C,
// all year.
func Climate(p *plan.Plan, inside float64) envelope.GroundClimate {
	c := envelope.DefaultGroundClimate()
	mean, a, b := 0.0, 0.0, 0.0
	for i, t := range p.Site.Months.Temperature {
		s, k := math.Sincos(2 * math.Pi * float64(i) / 12)
		mean, a, b = mean+t/12, a+t*k/6, b+t*s/6
	}
	c.OutsideMean, c.OutsideSwing = mean, math.Hypot(a, b)
	// T = mean + a cos + b sin is lowest half a year after its crest; 1 stands
	// for the middle of January and 12.5 for the end of the year.
	c.Coldest = 1 + 12*math.Atan2(-b, -a)/(2*math.Pi)
	if c.Coldest < 0.5 {
		c.Coldest += 12
	}
	c.InsideMean, c.InsideSwing = inside, 0
	return c
}
