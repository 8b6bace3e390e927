package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Ranges of a crop.
var (
	leafAreaRange     = domain.Range{Min: 0, Max: 12, Unit: "m²/m²", Source: "leaf over floor area; dense trellised crops reach about 6"}
	openLeafAreaRange = domain.Range{Min: domain.MoreThan(0), Max: 12, Unit: "m²/m²", Source: "leaf over floor area; dense trellised crops reach about 6"}
	extinctionRange   = domain.Range{Min: 0.1, Max: 1.2, Source: "upright leaves to flat ones"}
	reflectanceRange  = domain.Range{Min: 0, Max: 0.6, Unit: "fraction", Source: "leaves reflect 0.1 to 0.3 of the sun"}
	leafSizeRange     = domain.Range{Min: 0.002, Max: 1, Unit: "m", Source: "needles to banana leaves"}
	airSpeedRange     = domain.Range{Min: 0.01, Max: 10, Unit: "m/s", Source: "air inside is never wholly still"}
	carbonRange       = domain.Range{Min: 50, Max: 5000, Unit: "µmol/mol", Source: "depleted air to the limit for people at work"}
)

// Canopy is a stand of plants as one layer of leaves.
type Canopy struct {
	LAI                float64 // m²/m², 0 to 12, leaf area, one side, over floor area; 0 for none
	Extinction         float64 // dimensionless, 0.1 to 1.2, extinction of the sun per unit of LAI
	LongwaveExtinction float64 // dimensionless, 0.1 to 1.2, of heat radiation per unit of LAI
	Reflectance        float64 // fraction, 0 to 0.6, of the sun that the leaves turn back
	LeafSize           float64 // m, 0.002 to 1, mean width of a leaf along the air's path
	AirSpeed           float64 // m/s, 0.01 to 10, among the leaves
	CO2                float64 // µmol/mol, 50 to 5000
	Stomata            Stomata // which published response
}

// DefaultCanopy returns a crop of leaf area lai, m²/m², 0 to 12, with the
// coefficients of a trellised tomato: extinction 0.48 of the sun and 0.64 of
// heat radiation, leaves of 0.05 m in air of 0.09 m/s [Stanghellini87] (from
// memory), reflectance 0.2, outdoor CO2 of 420 µmol/mol.
func DefaultCanopy(lai float64) Canopy {
	return Canopy{LAI: lai, Extinction: 0.48, LongwaveExtinction: 0.64, Reflectance: 0.2,
		LeafSize: 0.05, AirSpeed: 0.09, CO2: 420, Stomata: TomatoStomata}
}

// check joins every fault of c, by field, with where before each field's name.
// Without leaves only LAI is looked at.
func (c Canopy) check(where string) error {
	if c.LAI == 0 {
		return nil
	}
	return errors.Join(
		leafAreaRange.Check(where+"LAI", c.LAI),
		extinctionRange.Check(where+"Extinction", c.Extinction),
		extinctionRange.Check(where+"LongwaveExtinction", c.LongwaveExtinction),
		reflectanceRange.Check(where+"Reflectance", c.Reflectance),
		leafSizeRange.Check(where+"LeafSize", c.LeafSize),
		airSpeedRange.Check(where+"AirSpeed", c.AirSpeed),
		carbonRange.Check(where+"CO2", c.CO2),
		c.Stomata.check(where),
	)
}

// interception returns the share (fraction) of radiation from above that a
// leaf area lai, m²/m², with the extinction coefficient extinction
// (dimensionless) takes: 1 - exp(-k LAI) [MonsiSaeki53].
func interception(lai, extinction float64) float64 { return -math.Expm1(-extinction * lai) }

// CanopySun is what becomes of the sun that reaches a crop.
type CanopySun struct {
	Canopy    float64 // W/m² of floor, absorbed by the leaves
	Floor     float64 // W/m² of floor, that passes the leaves
	Reflected float64 // W/m² of floor, turned back by the leaves
	Leaf      float64 // W/m² of leaf surface, both sides counted: Canopy/(2 LAI)
}

// sun returns how the leaves share out the sun, W/m² of floor, that falls on
// them: they take interception of it and turn back Reflectance of that.
func (c Canopy) sun(sun float64) CanopySun {
	if c.LAI == 0 {
		return CanopySun{Floor: sun}
	}
	taken := interception(c.LAI, c.Extinction) * sun
	s := CanopySun{Canopy: taken * (1 - c.Reflectance), Floor: sun - taken, Reflected: taken * c.Reflectance}
	s.Leaf = s.Canopy / (2 * c.LAI)
	return s
}

// Boundary layer of leaves in slow air [Stanghellini87] (from memory).
const (
	boundaryFactor = 1174.0 // s^0.5... of re = 1174 l^0.5/(l |dT| + 207 u²)^0.25
	boundaryForced = 207.0  // K m^-1 s²
)

// leafBoundary returns the resistance, s/m, of the air at both sides of a leaf
// of width size, m, to heat and vapour, at the difference of temperature of
// leaf and air difference, K, in air of speed, m/s:
// re = 1174 l^0.5/(l |T0 - Ta| + 207 u²)^0.25 [Stanghellini87] (from memory),
// free and forced convection together.
func leafBoundary(size, difference, speed float64) float64 {
	return boundaryFactor * math.Sqrt(size) / math.Sqrt(math.Sqrt(size*math.Abs(difference)+boundaryForced*speed*speed))
}
