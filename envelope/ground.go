package envelope

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Edge is how the rim of a slab is insulated beyond the floor itself.
type Edge uint8

// The edge insulations of a slab.
const (
	EdgeBare       Edge = iota // none
	EdgeHorizontal             // along the floor, from the wall inward or outward
	EdgeVertical               // down along the foundation
)

// Ground is a house against the ground: a slab at grade or, with a Depth, a
// heated basement in the words of ISO 13370. DefaultGround gives a complete
// one to change.
type Ground struct {
	Area             float64 // m², 0.1 to 1e6, of the floor
	Perimeter        float64 // m, 0.5 to 1e5, of the floor, exposed to the outside
	Depth            float64 // m, 0 to 5, floor below grade; only 0 for a slab with an Edge
	WallThickness    float64 // m, 0 to 2, of the walls above grade, insulation included
	FloorResistance  float64 // m² K/W, 0 to 20, of insulation and paving on the whole floor, surfaces apart
	WallResistance   float64 // m² K/W, 0 to 20, of the buried wall, surfaces apart
	Soil             Soil    // soil under and beside the house
	Edge             Edge    // edge insulation of a slab; EdgeBare with a Depth, where the buried wall is the edge
	EdgeWidth        float64 // m, 0.05 to 5, width of horizontal or depth of vertical edge insulation
	EdgeThickness    float64 // m, 0.005 to 0.5, of the edge insulation
	EdgeConductivity float64 // W/(m K), at least 0.005, of the edge insulation, no more than the soil's
	JunctionPsi      float64 // W/(m K), -1 to 3, thermal bridge between floor and wall along the perimeter
	FloorSurface     float64 // m² K/W, 0.001 to 1, inside surface resistance of the floor
	WallSurface      float64 // m² K/W, 0.001 to 1, inside surface resistance of the buried wall
	OutsideSurface   float64 // m² K/W, 0.001 to 1, outside surface resistance

	shared float64 // m² of buried wall that stands against a room instead of soil
}

// DefaultGround returns the soil without insulation, walls of 0.1 m, and the
// surface resistances 0.17, 0.13 and 0.04 m² K/W of the standard. Its area and
// perimeter are to be set; NewHouse takes them from the shape.
func DefaultGround(soil Soil) Ground {
	return Ground{
		WallThickness: 0.1, Soil: soil, EdgeConductivity: 0.036,
		FloorSurface: 0.17, WallSurface: 0.13, OutsideSurface: 0.04, // [IsoWall17] Table 7
	}
}

// GroundCoefficients are the result of ISO 13370. The total of floor and wall
// is good to some per cent against two-dimensional conduction; FloorPart and
// WallPart taken alone are only the standard's split of it. At 1 m depth
// conduction puts a sixth to a third more through the wall than the standard
// says, and less through the floor, where the standard is up to two fifths high.
type GroundCoefficients struct {
	CharacteristicWidth float64 // m, B = area over half the perimeter
	FloorThickness      float64 // m, equivalent thickness of soil of the floor
	WallThickness       float64 // m, equivalent thickness of soil of the buried wall
	PenetrationDepth    float64 // m, delta, of the yearly wave
	UFloor              float64 // W/(m² K), of the floor, edge insulation apart
	UWall               float64 // W/(m² K), of the buried wall, mean over its depth
	EdgePsi             float64 // W/(m K), of edge insulation, negative
	UFloorWithEdge      float64 // W/(m² K), UFloor + 2 EdgePsi/B
	UEffective          float64 // W/(m² K), Total without the junction over the area of floor and buried wall
	Total               float64 // W/K, steady: annual mean flow over annual mean difference
	FloorPart           float64 // W/K, the standard's share of the floor with its edge
	WallPart            float64 // W/K, the standard's share of the buried wall
	JunctionPart        float64 // W/K, junction of floor and wall
	Inside              float64 // W/K, periodic, for swings of the inside temperature
	Outside             float64 // W/K, periodic, for swings of the outside temperature
}

// Ranges of the ground calculation.
var (
	groundAreaRange      = domain.Range{Min: 0.1, Max: 1e6, Unit: "m²", Source: "chosen"}
	groundPerimeterRange = domain.Range{Min: 0.5, Max: 1e5, Unit: "m", Source: "chosen"}
	groundWallRange      = domain.Range{Min: 0, Max: 2, Unit: "m", Source: "chosen"}
	resistanceLimits     = domain.Range{Min: 0, Max: 20, Unit: "m² K/W", Source: "chosen"}
	surfaceRange         = domain.Range{Min: 0.001, Max: 1, Unit: "m² K/W", Source: "chosen"}
	edgeWidthRange       = domain.Range{Min: 0.05, Max: 5, Unit: "m", Source: "chosen"}
	edgeThickRange       = domain.Range{Min: 0.005, Max: 0.5, Unit: "m", Source: "chosen"}
	junctionRange        = domain.Range{Min: -1, Max: 3, Unit: "W/(m K)", Source: "chosen"}
	edges                = domain.Range{Min: 0, Max: float64(EdgeVertical), Unit: "number", Source: "constants of Edge"}
)

// Coefficients of [IsoGround17].
const (
	groundYear     = 3.15e7 // s, eq. H.1
	groundInsul    = 0.457  // eq. 5, well insulated floors
	groundPeriodic = 0.37   // eq. H.3
)

// equivalentThickness returns the thickness in m of soil of the conductivity
// in W/(m K) that resists as a wall thickness in m and the resistances in
// m² K/W inside, of the construction and outside do: w + lambda (Rsi + R +
// Rse), [IsoGround17] eq. 3. NaN for a negative or infinite argument.
func equivalentThickness(wall, conductivity, inside, construction, outside float64) float64 {
	if !(wall >= 0) || !(conductivity >= 0) || !(inside >= 0) || !(construction >= 0) || !(outside >= 0) {
		return nan
	}
	return wall + conductivity*(inside+construction+outside) // eq. 3
}

// PenetrationDepth returns the depth in m at which the yearly wave has sunk to
// 1/e, for the conductivity in W/(m K) and the heat capacity in J/(m³ K):
// [IsoGround17] eq. H.1. NaN out of range.
func penetrationDepth(conductivity, capacity float64) float64 {
	if !soilConductivityRange.Contains(conductivity) || !soilHeatCapacityRange.Contains(capacity) {
		return nan
	}
	return math.Sqrt(groundYear * conductivity / (math.Pi * capacity)) // eq. H.1
}

// slabU returns the U-value in W/(m² K) of a floor of width b and equivalent
// thickness d in m: [IsoGround17] eq. 4 and 5, with a depth eq. 13 and 14. The
// two do not quite meet at d = b: the standard jumps there by 0.014 %.
func slabU(lambda, b, d float64) float64 {
	if d < b {
		return 2 * lambda / (math.Pi*b + d) * math.Log(math.Pi*b/d+1) // eq. 4
	}
	return lambda / (groundInsul*b + d) // eq. 5
}

// Solve returns the coefficients by [IsoGround17]: 7.1 and 7.3 for the steady
// part, Annex D for edge insulation, Annex H for the yearly part. The error
// joins a *RangeError for each fault, by field.
func (g Ground) Solve() (GroundCoefficients, error) {
	if err := g.check(); err != nil {
		return GroundCoefficients{}, err
	}
	lambda := g.Soil.Conductivity
	r := GroundCoefficients{
		CharacteristicWidth: g.Area / (g.Perimeter / 2), // eq. 2
		FloorThickness:      equivalentThickness(g.WallThickness, lambda, g.FloorSurface, g.FloorResistance, g.OutsideSurface),
		WallThickness:       equivalentThickness(0, lambda, g.WallSurface, g.WallResistance, g.OutsideSurface), // eq. 15
		PenetrationDepth:    penetrationDepth(lambda, g.Soil.HeatCapacity),
	}
	b, d, dw, delta, z := r.CharacteristicWidth, r.FloorThickness, r.WallThickness, r.PenetrationDepth, g.Depth
	r.UFloor = slabU(lambda, b, d+z/2) // eq. 4, 5; basement with eq. 12: eq. 13, 14
	if z > 0 {
		df := math.Min(d, dw)
		r.UWall = 2 * lambda / (math.Pi * z) * (1 + 0.5*df/(df+z)) * math.Log(z/dw+1) // eq. 16
	}
	// Far part of the rim that edge insulation leaves bare, for the yearly wave.
	extra, bare := 0.0, 1.0
	if g.Edge != EdgeBare {
		reach := g.EdgeWidth
		if g.Edge == EdgeVertical {
			reach *= 2
		}
		extra = (g.EdgeThickness/g.EdgeConductivity - g.EdgeThickness/lambda) * lambda      // eq. D.1, D.2
		r.EdgePsi = -lambda / math.Pi * (math.Log(reach/d+1) - math.Log(reach/(d+extra)+1)) // eq. D.5, D.6
		bare = math.Exp(-reach / delta)
	}
	r.UFloorWithEdge = r.UFloor + 2*r.EdgePsi/b // eq. D.4
	r.FloorPart = g.Area*r.UFloor + g.Perimeter*r.EdgePsi
	buried := z*g.Perimeter - g.shared
	r.WallPart = buried * r.UWall
	r.JunctionPart = g.Perimeter * g.JunctionPsi
	r.Total = r.FloorPart + r.WallPart + r.JunctionPart // eq. 1, 18, D.3
	r.UEffective = (r.FloorPart + r.WallPart) / (g.Area + buried)

	wave := func(area, d float64) float64 {
		x := 1 + delta/d
		return area * lambda / d * math.Sqrt(2/(x*x+1)) // eq. H.2
	}
	r.Inside = wave(g.Area, d)
	rim := groundPeriodic * g.Perimeter * lambda
	if z > 0 {
		r.Inside += wave(buried, dw)
		sunk, against := math.Exp(-z/delta), 1.0 // against: the part of the wall that stands against soil
		if g.shared > 0 {
			against = buried / (z * g.Perimeter)
		}
		r.Outside = rim * (sunk*math.Log(delta/d+1) + 2*(1-sunk)*math.Log(delta/dw+1)*against) // basement, H.7.2
	} else {
		r.Outside = rim * ((1-bare)*math.Log(delta/(d+extra)+1) + bare*math.Log(delta/d+1)) // eq. H.3, H.4, H.5
	}
	return r, nil
}

func (g *Ground) check() error {
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(groundAreaRange, "Area", g.Area)
	check(groundPerimeterRange, "Perimeter", g.Perimeter)
	check(depthRange, "Depth", g.Depth)
	check(groundWallRange, "WallThickness", g.WallThickness)
	check(resistanceLimits, "FloorResistance", g.FloorResistance)
	check(resistanceLimits, "WallResistance", g.WallResistance)
	check(soilConductivityRange, "Soil.Conductivity", g.Soil.Conductivity)
	check(soilHeatCapacityRange, "Soil.HeatCapacity", g.Soil.HeatCapacity)
	check(edges, "Edge", float64(g.Edge))
	if g.Edge != EdgeBare {
		check(edgeWidthRange, "EdgeWidth", g.EdgeWidth)
		check(edgeThickRange, "EdgeThickness", g.EdgeThickness)
		most := conductivityRange.Max
		if soilConductivityRange.Contains(g.Soil.Conductivity) {
			most = g.Soil.Conductivity
		}
		check(domain.Range{Min: 0.005, Max: most, Unit: "W/(m K)", Source: "below the soil's"}, "EdgeConductivity", g.EdgeConductivity)
		if g.Depth > 0 {
			check(domain.Range{Unit: "m", Source: "edge insulation belongs to a slab; insulate the buried wall by WallResistance"}, "Depth with an Edge", g.Depth)
		}
	}
	check(junctionRange, "JunctionPsi", g.JunctionPsi)
	check(surfaceRange, "FloorSurface", g.FloorSurface)
	check(surfaceRange, "WallSurface", g.WallSurface)
	check(surfaceRange, "OutsideSurface", g.OutsideSurface)
	if groundAreaRange.Contains(g.Area) && g.Perimeter > 0 {
		// No figure of a given area has less rim than a circle; of a rim, a part may
		// be exposed.
		const leastRim = 0.02
		if least := 2 * math.Sqrt(math.Pi*g.Area); g.Perimeter < leastRim*least {
			check(domain.Range{Min: leastRim * least, Max: groundPerimeterRange.Max, Unit: "m", Source: "a fiftieth of the rim of a circle of this area"}, "Perimeter", g.Perimeter)
		}
	}
	return errors.Join(faults...)
}
