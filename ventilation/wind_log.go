package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// RoughTerrain is a class of country for the logarithmic profile of the mean
// wind.
type RoughTerrain struct {
	Name      string  // the class, as FindRoughTerrain takes it
	Roughness float64 // m, 1e-5 to 3, roughness length z0
	Least     float64 // m, twice the roughness to 50, height below which the profile is not followed
}

// roughTerrains are the categories of [EnWind05] table 4.1 (read as quoted
// elsewhere).
var roughTerrains = [...]RoughTerrain{
	{"sea", 0.003, 1},   // 0: sea, coast open to it
	{"lake", 0.01, 1},   // I: lakes, flat and bare
	{"field", 0.05, 2},  // II: low vegetation, single obstacles
	{"village", 0.3, 5}, // III: villages, suburbs, forest
	{"town", 1.0, 10},   // IV: town, 15 % built higher than 15 m
}

// basicRoughness is that of category II, for which the basic wind holds, m.
const basicRoughness = 0.05

// FindRoughTerrain returns the category of [EnWind05] table 4.1 with the given
// name, and whether there is one: "sea" (0), "lake" (I: lakes, flat and bare),
// "field" (II: low vegetation, single obstacles), "village" (III: villages,
// suburbs, forest) or "town" (IV).
func FindRoughTerrain(name string) (RoughTerrain, bool) {
	for _, t := range roughTerrains {
		if t.Name == name {
			return t, true
		}
	}
	return RoughTerrain{}, false
}

// Factor of terrain [EnWind05] eq. 4.5: k = 0.19 (z0/0.05)^0.07.
const (
	terrainFactor   = 0.19
	terrainExponent = 0.07
)

// LogWind carries a measured wind to another height and terrain by the
// logarithmic profile.
type LogWind struct {
	Measured       float64      // m/s, 0 to 45
	Station        float64      // m above the ground, 0.1 to 200, at which it was measured
	StationTerrain RoughTerrain // around the station
	Height         float64      // m above the ground, 0.1 to 200, at which it is wanted
	Terrain        RoughTerrain // there
}

// Speed returns the wind speed, m/s, at Height, both by the profile
// c(z) = k ln(z/z0), k = 0.19 (z0/0.05)^0.07 [EnWind05] eqs. 4.3 to 4.5, valid
// to 200 m. Below the terrain's Least height the standard keeps the speed of
// that height, and so does this function: among obstacles the wind at a low
// house has no profile, and the speed is an upper bound. The error joins the
// faults by field.
func (w LogWind) Speed() (float64, error) {
	if err := errors.Join(
		windRange.Check("Measured", w.Measured),
		windHeightRange.Check("Station", w.Station),
		domain.Within("StationTerrain", w.StationTerrain.check()),
		windHeightRange.Check("Height", w.Height),
		domain.Within("Terrain", w.Terrain.check()),
	); err != nil {
		return 0, err
	}
	return w.Measured * w.Terrain.factor(w.Height) / w.StationTerrain.factor(w.Station), nil
}

// factor returns the roughness factor c(z) of [EnWind05] eq. 4.4, the ratio
// (dimensionless) of the mean wind at height, m, to the basic wind, which is
// that at 10 m in open fields; the speed of Least below that height, as the
// standard has it.
func (t RoughTerrain) factor(height float64) float64 {
	k := terrainFactor * math.Pow(t.Roughness/basicRoughness, terrainExponent) // eq. 4.5
	return k * math.Log(math.Max(height, t.Least)/t.Roughness)                 // eq. 4.4
}

func (t RoughTerrain) check() error {
	return errors.Join(
		roughnessRange.Check("Roughness", t.Roughness),
		domain.Range{Min: 2 * t.Roughness, Max: 50, Unit: "m", Source: "twice the roughness and more"}.Check("Least", t.Least),
	)
}
