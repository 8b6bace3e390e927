package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// RoughTerrain is a class of country for the logarithmic profile of the mean
// wind.
type RoughTerrain struct {
	Name      string  // the class
	Roughness float64 // m, roughness length z0
	Least     float64 // m, height below which the profile is not followed
}

// Terrain categories of [EnWind05] table 4.1 (read as quoted elsewhere).
var (
	SeaTerrain    = RoughTerrain{"0: sea, coast open to it", 0.003, 1}
	LakeTerrain   = RoughTerrain{"I: lakes, flat and bare", 0.01, 1}
	FieldTerrain  = RoughTerrain{"II: low vegetation, single obstacles", 0.05, 2}
	VillageLand   = RoughTerrain{"III: villages, suburbs, forest", 0.3, 5}
	TownTerrain   = RoughTerrain{"IV: town, 15 % built higher than 15 m", 1.0, 10}
	windReference = FieldTerrain
)

// Factor of terrain [EnWind05] eq. 4.5: k = 0.19 (z0/0.05)^0.07.
const (
	terrainFactor   = 0.19
	terrainExponent = 0.07
)

// LogWindAt returns the wind speed, m/s, at height, m, in terrain from the
// speed measured, m/s, at station, m, in stationTerrain, both by the profile
// c(z) = k ln(z/z0), k = 0.19 (z0/0.05)^0.07 [EnWind05] eqs. 4.3 to 4.5, valid
// to 200 m. Below the terrain's Least height the standard keeps the speed of
// that height, and so does this function: among obstacles the wind at a low
// house has no profile, and the speed is an upper bound. The error joins the
// inputs outside WindRange, WindHeightRange and RoughnessRange.
func LogWindAt(height float64, terrain RoughTerrain, measured, station float64, stationTerrain RoughTerrain) (float64, error) {
	if err := errors.Join(
		windHeightRange.Check("height", height),
		terrain.check("terrain"),
		windRange.Check("measured", measured),
		windHeightRange.Check("station", station),
		stationTerrain.check("stationTerrain"),
	); err != nil {
		return 0, err
	}
	return measured * terrain.Factor(height) / stationTerrain.Factor(station), nil
}

// Factor returns the roughness factor c(z) of [EnWind05] eq. 4.4, the ratio
// (dimensionless) of the mean wind at height, m, to the basic wind, which is
// that at 10 m in FieldTerrain; the speed of Least below that height, as the
// standard has it. NaN outside WindHeightRange and for a faulty terrain.
func (t RoughTerrain) Factor(height float64) float64 {
	if !windHeightRange.Contains(height) || t.check("") != nil {
		return math.NaN()
	}
	k := terrainFactor * math.Pow(t.Roughness/windReference.Roughness, terrainExponent) // eq. 4.5
	return k * math.Log(math.Max(height, t.Least)/t.Roughness)                          // eq. 4.4
}

func (t RoughTerrain) check(where string) error {
	return errors.Join(
		roughnessRange.Check(where+".Roughness", t.Roughness),
		domain.Range{Min: 2 * t.Roughness, Max: 50, Unit: "m", Source: "twice the roughness and more"}.Check(where+".Least", t.Least),
	)
}
