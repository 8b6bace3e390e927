package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// RockBed is a bed of stones that the air passes between. Each stone is taken
// to be at one temperature throughout.
type RockBed struct {
	Area          float64 // m², 0.01 to 10000, face that the air enters
	Depth         float64 // m, 0.05 to 100, along the air
	Stone         float64 // m, 0.005 to 0.3, diameter of the stones
	Void          float64 // fraction, 0.25 to 0.6, of the bed that is air
	StoneCapacity float64 // J/(m³ K), 2e5 to 5e6, of solid stone
	DesignFlow    float64 // m³/s, that carries 0.01 to 1 kg/s through each m² of Area; the heat transfer is calculated for it
	FanEfficiency float64 // fraction, 0.01 to 1, from electricity to air power
}

// DefaultRockBed returns a bed of 40 mm stones of 2.1 MJ/(m³ K) with 42 % voids
// and an efficiency of 0.4 (common practice, no source); Area, Depth and
// DesignFlow are to be set.
func DefaultRockBed() RockBed {
	return RockBed{Stone: 0.04, Void: 0.42, StoneCapacity: 2.1e6, FanEfficiency: 0.4}
}

// The ranges of RockBed's fields.
var (
	bedAreaRange  = domain.Range{Min: 0.01, Max: 10000, Unit: "m²", Source: "beds under houses"}
	bedDepthRange = domain.Range{Min: 0.05, Max: 100, Unit: "m", Source: "beds under houses"}
	bedStoneRange = domain.Range{Min: 0.005, Max: 0.3, Unit: "m", Source: "washed gravel to boulders"}
	bedVoidRange  = domain.Range{Min: 0.25, Max: 0.6, Unit: "fraction", Source: "packed stones"}
)

// Löf and Hawley's volumetric coefficient and Ergun's pressure drop.
const (
	lofHawley      = 650.0 // W/(m³ K) at 1 kg/(m² s) over 1 m
	lofHawleyPower = 0.7
	ergunLaminar   = 150.0
	ergunTurbulent = 1.75
)

// bedTransfer returns the heat transfer of a rock bed by volume, W/(m³ K), for
// the mass flow per face massFlux (0.01 to 1 kg/(m² s)) and the diameter stone
// (m, 0.005 to 0.3): 650 (G/D)^0.7. NaN outside. [DufBec13] ch. 9, after Löf and
// Hawley, from memory.
func bedTransfer(massFlux, stone float64) float64 {
	if !(massFlux >= 0.01 && massFlux <= 1) || !bedStoneRange.Contains(stone) {
		return math.NaN()
	}
	return lofHawley * math.Pow(massFlux/stone, lofHawleyPower)
}

// A bed is cut fine along the air and in time: at the design flow at most bedUnits
// transfer units to a cell, and to a part of a step. Both errors go by the square
// of it; against Schumann's solution they stay below 0.1 K of 20 K.
const (
	bedUnits = 0.25
	bedCells = 2000 // at most, of beds beyond 500 transfer units
)

// loss returns the pressure, Pa, that the flow (m³/s) of air loses in the bed:
// Ergun's equation with the speed as if the bed were empty. [Ergun52].
func (b RockBed) loss(flow float64, air AirProperties) float64 {
	v := flow / b.Area
	e3, solid := b.Void*b.Void*b.Void, 1-b.Void
	return b.Depth * (ergunLaminar*air.Viscosity*solid*solid*v/(e3*b.Stone*b.Stone) +
		ergunTurbulent*air.Density*solid*v*math.Abs(v)/(e3*b.Stone)) // [Ergun52]
}

// NewRockBedStore returns the bed at rest with all stones at the temperature start (-60 to
// 200 °C), for air as at DesignFlow. The error lists every fault.
func NewRockBedStore(b RockBed, start float64, air AirProperties) (*Store, error) {
	if err := errors.Join(
		bedAreaRange.Check("Area", b.Area),
		bedDepthRange.Check("Depth", b.Depth),
		bedStoneRange.Check("Stone", b.Stone),
		bedVoidRange.Check("Void", b.Void),
		soilCapacityRange.Check("StoneCapacity", b.StoneCapacity),
		fanEfficiencyRange.Check("FanEfficiency", b.FanEfficiency),
		airTemperatureRange.Check("start", start),
		domain.Within("air", air.check()),
		domain.Range{Min: 0.01, Max: 1, Unit: "kg/(m² s)", Source: "Löf and Hawley's measurements"}.Check("DesignFlow over Area", b.DesignFlow*air.Density/b.Area),
	); err != nil {
		return nil, err
	}
	flux := b.DesignFlow * air.Density / b.Area
	cells := math.Max(storeCells, math.Ceil(bedTransfer(flux, b.Stone)*b.Depth/(flux*air.HeatCapacity)/bedUnits))
	cells = math.Min(cells, bedCells)
	volume := b.Area * b.Depth / cells
	s := &Store{
		start:   start,
		film:    bedTransfer(flux, b.Stone) * volume,
		late:    0.5,
		content: []float64{volume * (1 - b.Void) * b.StoneCapacity},
	}
	s.wall = s.film
	s.inner = s.film / s.content[0] / bedUnits
	s.cost = func(flow float64, air AirProperties) (float64, float64) {
		p := b.loss(flow, air)
		return p, p * flow / b.FanEfficiency
	}
	s.fill(start, int(cells))
	return s, nil
}
