package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Terrain is a class of country with its power-law profile of the mean wind.
type Terrain struct {
	Name     string  // the class, as FindTerrain takes it
	Exponent float64 // dimensionless, 0.05 to 0.5, exponent a
	Layer    float64 // m, 100 to 1000, thickness of the boundary layer
}

// terrains of [HoF17] ch. 24 table 1 (read as quoted elsewhere).
var terrains = [...]Terrain{
	{"city", 0.33, 460},   // large city centre, half the buildings above 25 m
	{"suburb", 0.22, 370}, // urban, suburban, wooded
	{"open", 0.14, 270},   // scattered obstacles below 9 m; weather stations
	{"flat", 0.10, 210},   // flat and bare, open water upwind
}

// FindTerrain returns the terrain of [HoF17] ch. 24 table 1 with the given
// name, and whether there is one: "city" (large city centre), "suburb" (urban,
// suburban, wooded), "open" (scattered obstacles; weather stations) or "flat"
// (flat and bare, open water upwind).
func FindTerrain(name string) (Terrain, bool) {
	for _, t := range terrains {
		if t.Name == name {
			return t, true
		}
	}
	return Terrain{}, false
}

// Ranges of the wind profile.
var (
	windHeightRange  = domain.Range{Min: 0.1, Max: 200, Unit: "m", Source: "heights in the boundary layer"}
	powerRange       = domain.Range{Min: 0.05, Max: 0.5, Unit: "", Source: "exponents of the mean wind's profile"}
	layerRange       = domain.Range{Min: 100, Max: 1000, Unit: "m", Source: "boundary layers"}
	grassHeightRange = domain.Range{Min: 0.5, Max: 200, Unit: "m", Source: "heights over grass"}
	roughnessRange   = domain.Range{Min: 1e-5, Max: 3, Unit: "m", Source: "snow to city"}
)

// PowerWind carries a measured wind to another height and terrain by the power
// law.
type PowerWind struct {
	Measured       float64 // m/s, 0 to 45
	Station        float64 // m above the ground, 0.1 to 200, at which it was measured
	StationTerrain Terrain // around the station
	Height         float64 // m above the ground, 0.1 to 200, at which it is wanted
	Terrain        Terrain // there
}

// Speed returns the wind speed, m/s, at Height:
// U = Umet (d_met/H_met)^a_met (H/d)^a [HoF17] ch. 24 eq. 4 (from memory).
// Use the height to which the pressure coefficients refer. The law is one for
// heights above the roughness; below the roofs around it overstates the wind.
// The error joins the faults by field.
func (w PowerWind) Speed() (float64, error) {
	if err := errors.Join(
		windRange.Check("Measured", w.Measured),
		windHeightRange.Check("Station", w.Station),
		domain.Within("StationTerrain", w.StationTerrain.check()),
		windHeightRange.Check("Height", w.Height),
		domain.Within("Terrain", w.Terrain.check()),
	); err != nil {
		return 0, err
	}
	top := w.Measured * math.Pow(w.StationTerrain.Layer/w.Station, w.StationTerrain.Exponent)
	return top * math.Pow(w.Height/w.Terrain.Layer, w.Terrain.Exponent), nil
}

func (t Terrain) check() error {
	return errors.Join(powerRange.Check("Exponent", t.Exponent), layerRange.Check("Layer", t.Layer))
}

// FAO56WindAtTwoMetres returns the wind speed, m/s, at 2 m over short grass from
// the speed measured, m/s, 0 to 45, at station, m, 0.5 to 200:
// u2 = u 4.87/ln(67.8 z - 5.42) [FAO56] eq. 47. NaN outside.
func FAO56WindAtTwoMetres(measured, station float64) float64 {
	if !windRange.Contains(measured) || !grassHeightRange.Contains(station) {
		return math.NaN()
	}
	return measured * 4.87 / math.Log(67.8*station-5.42)
}
