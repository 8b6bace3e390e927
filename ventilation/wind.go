package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Terrain is a class of country with its power-law profile of the mean wind.
type Terrain struct {
	Name     string  // the class
	Exponent float64 // dimensionless exponent a
	Layer    float64 // m, thickness of the boundary layer
}

// Terrains of [AshHoF17] ch. 24 table 1 (read as quoted elsewhere).
var (
	CityTerrain   = Terrain{"large city centre, half the buildings above 25 m", 0.33, 460}
	SuburbTerrain = Terrain{"urban, suburban, wooded", 0.22, 370}
	OpenTerrain   = Terrain{"open, scattered obstacles below 9 m; weather stations", 0.14, 270}
	FlatTerrain   = Terrain{"flat and bare, open water upwind", 0.10, 210}
)

// Ranges of the wind profile.
var (
	windHeightRange = domain.Range{Min: 0.1, Max: 200, Unit: "m", Source: "heights in the boundary layer"}
	roughnessRange  = domain.Range{Min: 1e-5, Max: 3, Unit: "m", Source: "snow to city"}
)

// WindAt returns the wind speed, m/s, at height, m, in terrain from the speed
// measured, m/s, at station, m, in stationTerrain:
// U = Umet (d_met/H_met)^a_met (H/d)^a [AshHoF17] ch. 24 eq. 4 (from memory).
// Use the height to which the pressure coefficients refer. The law is one for
// heights above the roughness; below the roofs around it overstates the wind.
// The error joins the inputs outside WindRange and WindHeightRange.
func WindAt(height float64, terrain Terrain, measured, station float64, stationTerrain Terrain) (float64, error) {
	if err := errors.Join(
		windHeightRange.Check("height", height),
		windRange.Check("measured", measured),
		windHeightRange.Check("station", station),
		terrain.check("terrain"),
		stationTerrain.check("stationTerrain"),
	); err != nil {
		return 0, err
	}
	top := measured * math.Pow(stationTerrain.Layer/station, stationTerrain.Exponent)
	return top * math.Pow(height/terrain.Layer, terrain.Exponent), nil
}

func (t Terrain) check(where string) error {
	return errors.Join(
		domain.Range{Min: 0.05, Max: 0.5, Unit: "dimensionless"}.Check(where+".Exponent", t.Exponent),
		domain.Range{Min: 100, Max: 1000, Unit: "m"}.Check(where+".Layer", t.Layer),
	)
}

// LogWind returns the wind speed, m/s, at height, m, from the speed measured,
// m/s, at station, m, over the same ground of roughness length, m, with the
// zero plane raised by displacement, m:
// U = Umet ln((z - d)/z0)/ln((zm - d)/z0). NaN outside WindRange and
// RoughnessRange and unless both heights pass displacement by more than the
// roughness.
func LogWind(height, measured, station, roughness, displacement float64) float64 {
	if !(windRange.Contains(measured) && roughnessRange.Contains(roughness) && displacement >= 0 &&
		height-displacement > roughness && station-displacement > roughness) {
		return math.NaN()
	}
	return measured * math.Log((height-displacement)/roughness) / math.Log((station-displacement)/roughness)
}

// WindAtTwoMetres returns the wind speed, m/s, at 2 m over short grass from
// the speed measured, m/s, at station, m: u2 = u 4.87/ln(67.8 z - 5.42) [Fao98]
// eq. 47. NaN outside WindRange and below 0.5 m.
func WindAtTwoMetres(measured, station float64) float64 {
	if !(windRange.Contains(measured) && station >= 0.5 && windHeightRange.Contains(station)) {
		return math.NaN()
	}
	return measured * 4.87 / math.Log(67.8*station-5.42)
}
