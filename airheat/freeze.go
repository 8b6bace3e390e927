package airheat

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// FreezeCaution is to be printed with every freeze-out.
const FreezeCaution = "Before a house is opened to the frost, drain pipes, tanks and heaters, and take out what must not freeze. Cold that kills one pest spares another: the species, its stage and how dry it is decide. This model gives temperatures only."

// SoilColumn is the floor of a house as a column of wet soil.
type SoilColumn struct {
	Area         float64 // m², 0.1 to 1e6, of floor
	Depth        float64 // m, 0.1 to 5, to where the temperature is Deep
	Layers       int     // number of layers, 2 to 40, each a little thicker than the one above; the default's 24 keep the surface within 0.1 K of 40, 12 within 0.5 K
	Dry          float64 // J/(m³ K), 1e5 to 4e6, heat capacity of the soil without its water
	Water        float64 // kg/m³, 0 to 900, of water that freezes
	Thawed       float64 // W/(m K), 0.05 to 5, conductivity without frost
	Frozen       float64 // W/(m K), 0.05 to 5, conductivity frozen through
	Surface      float64 // W/(m² K), 0.1 to 50, air to soil surface
	FreezingSpan float64 // K, 0.05 to 5, below 0 °C over which the water freezes
}

// DefaultSoilColumn is moist loam under a floor of the given area, m²: values
// from memory, of the order of handbooks. Thawed, it conducts 1.1 W/(m K) and
// holds 2.0 MJ/(m³ K), between the soils of envelope: "typical soil" has 0.9 and
// 1.9, clay 1.5 and 3.0.
func DefaultSoilColumn(area float64) SoilColumn {
	return SoilColumn{Area: area, Depth: 1, Layers: 24, Dry: 1.2e6, Water: 200, Thawed: 1.1, Frozen: 1.7, Surface: 6, FreezingSpan: 0.5}
}

// Latent heats and heat capacities of water: [HoF17] ch. 1 for vapour, the
// rest from memory.
const (
	fusionHeat     = 333.6e3                 // J/kg, ice to water
	vapourHeat     = constant.LatentZero     // J/kg, water to vapour at 0 °C
	waterCapacity  = 4.2e3                   // J/(kg K)
	iceCapacity    = 2.1e3                   // J/(kg K)
	frostHeat      = vapourHeat + fusionHeat // J/kg, water vapour to ice at 0 °C
	layerGrowth    = 1.2                     // ratio of one layer's thickness to the one above, at most
	layerSpread    = 20                      // ratio of the thickest layer to the thinnest, at most: thinner ones show nothing more
	maxLayers      = 40                      // layers of a column
	freezeStateLen = maxLayers + 3           // air, structure, layers, and what was lost
)

// FreezeOut is a house opened to the frost, or left without heat, with the
// latent heats that the exact solution leaves out: soil water that freezes, and
// vapour that condenses, below 0 °C as frost, from air kept saturated by wet surfaces. FreezeCourse's
// AirFirst is then the time to frost with both.
type FreezeOut struct {
	Nodes     envelope.Nodes // air and structure; AirSoil, SoilCapacity and SoilDeep give way to Soil
	Soil      SoilColumn     // the floor
	WetAir    float64        // kg, 0 to 1e6, of dry air kept saturated while it changes temperature; 0 leaves condensation out
	Deep      float64        // °C, -60 to 50, below the column
	Start     float64        // °C, -60 to 50, air, structure and soil surface at the start; the soil runs straight to Deep
	Outside   []float64      // °C, -60 to 50, hourly means from the start on
	SkyDrop   float64        // K, -10 to 100, sky below outside air
	Heat      float64        // W, -1e9 to 1e9, heat given to the air
	AirLimit  float64        // °C, -90 to 120, whose time below is counted for the air
	SoilLimit float64        // °C, -90 to 120, whose time below is counted for the soil surface
}

// FreezeCourse is the result of a FreezeOut.
type FreezeCourse struct {
	AirFirst     time.Duration // until the air first is below AirLimit; Forever if it never is
	SurfaceFirst time.Duration // until the soil surface first is below SoilLimit; Forever if it never is
	AirBelow     time.Duration // in all with the air below AirLimit
	AirSpell     time.Duration // longest unbroken time of it
	SurfaceBelow time.Duration // in all with the soil surface below SoilLimit
	SurfaceSpell time.Duration // longest unbroken time of it
	LowestAir    float64       // °C
	LowestSoil   float64       // °C, coldest soil surface
	FrostDepth   float64       // m, deepest frost: depth of frozen soil, layers counted by their frozen share
	Air          []float64     // °C, at the end of each hour
	Surface      []float64     // °C, soil surface at the end of each hour
	Lost         float64       // J, to outside, sky and the ground below, less heat given
	Released     float64       // J, stored heat that went, latent heats included
	Residual     float64       // J, Released less Lost
	Step         time.Duration // longest step of the march
}

func (f *FreezeOut) check() error {
	s := &f.Soil
	n := f.Nodes
	n.SoilCapacity, n.AirSoil, n.SoilDeep = 1, 1, 1
	err := errors.Join(n.Check(),
		domain.Range{Min: 0.1, Max: 1e6, Unit: "m²"}.Check("Soil.Area", s.Area), domain.Range{Min: 0.1, Max: 5, Unit: "m"}.Check("Soil.Depth", s.Depth),
		domain.Range{Min: 2, Max: maxLayers, Unit: "layers"}.Check("Soil.Layers", float64(s.Layers)),
		domain.Range{Min: 1e5, Max: 4e6, Unit: "J/(m³ K)"}.Check("Soil.Dry", s.Dry), domain.Range{Min: 0, Max: 900, Unit: "kg/m³"}.Check("Soil.Water", s.Water),
		domain.Range{Min: 0.05, Max: 5, Unit: "W/(m K)"}.Check("Soil.Thawed", s.Thawed), domain.Range{Min: 0.05, Max: 5, Unit: "W/(m K)"}.Check("Soil.Frozen", s.Frozen),
		domain.Range{Min: 0.1, Max: 50, Unit: "W/(m² K)"}.Check("Soil.Surface", s.Surface), domain.Range{Min: 0.05, Max: 5, Unit: "K"}.Check("Soil.FreezingSpan", s.FreezingSpan),
		domain.Range{Min: 0, Max: 1e6, Unit: "kg"}.Check("WetAir", f.WetAir), wetRange.Check("Deep", f.Deep), wetRange.Check("Start", f.Start),
		skyDropRange.Check("SkyDrop", f.SkyDrop), heatRange.Check("Heat", f.Heat), roomRange.Check("AirLimit", f.AirLimit), roomRange.Check("SoilLimit", f.SoilLimit),
	)
	if len(f.Outside) == 0 || len(f.Outside) > 8784 {
		err = errors.Join(err, fmt.Errorf("Outside has %d values, allowed 1 to 8784: %w", len(f.Outside), ErrRange))
	}
	for i, v := range f.Outside {
		if e := wetRange.Check("Outside", v); e != nil {
			return errors.Join(err, fmt.Errorf("hour %d: %w", i, e))
		}
	}
	return err
}

var wetRange = domain.Range{Min: -60, Max: 50, Unit: "°C"}

// column is the state's geometry: heat contents are of air, structure, layers.
type column struct {
	f      *FreezeOut
	layers int
	thick  [maxLayers]float64 // m
	depth  [maxLayers]float64 // m, of a layer's middle
}

// soilHeat is the heat content of soil at t, J/m³ above thawed at 0 °C.
func (s *SoilColumn) soilHeat(t float64) float64 {
	thawed, frozen := s.Dry+waterCapacity*s.Water, s.Dry+iceCapacity*s.Water
	switch {
	case t >= 0:
		return thawed * t
	case t >= -s.FreezingSpan:
		return (thawed + fusionHeat*s.Water/s.FreezingSpan) * t
	}
	return -thawed*s.FreezingSpan - fusionHeat*s.Water + frozen*(t+s.FreezingSpan)
}

// soilAt is the inverse of soilHeat, with the frozen fraction.
func (s *SoilColumn) soilAt(e float64) (t, ice float64) {
	thawed, frozen := s.Dry+waterCapacity*s.Water, s.Dry+iceCapacity*s.Water
	full := -thawed*s.FreezingSpan - fusionHeat*s.Water
	switch {
	case e >= 0:
		return e / thawed, 0
	case e >= full:
		t = e / (thawed + fusionHeat*s.Water/s.FreezingSpan)
		return t, -t / s.FreezingSpan
	}
	return (e-full)/frozen - s.FreezingSpan, 1
}

// airHeat is the heat content of the air at t, J, its vapour included, and
// its slope in J/K.
func (f *FreezeOut) airHeat(t float64) (e, slope float64) {
	e, slope = f.Nodes.AirCapacity*t, f.Nodes.AirCapacity
	if f.WetAir > 0 {
		p := psychro.SaturationPressure(t)
		dry := constant.StandardPressure - p
		heat := vapourHeat
		if t < 0 { // as frost
			heat = frostHeat
			e -= f.WetAir * fusionHeat * vapourRatio * pressureAtZero / (constant.StandardPressure - pressureAtZero)
		}
		e += f.WetAir * heat * vapourRatio * p / dry
		slope += f.WetAir * heat * vapourRatio * constant.StandardPressure / (dry * dry) * psychro.SaturationSlope(t)
	}
	return e, slope
}

// pressureAtZero is the saturation pressure over ice at 0 °C, Pa, as psychro has it, to all its
// digits, so that the heat of air does not jump there.
const pressureAtZero = 611.15347502253292

const vapourRatio = constant.MoleRatio // ratio of the molar masses of water and dry air [HoF17] ch. 1

// airSettled is how well airAt finds the air, K: below what the march can show.
const airSettled = 1e-11

// Newton's steps for the temperature of the air stay between these, °C: beyond any
// house, and where saturation is known.
const (
	coldestAir = -100.0
	warmestAir = 90.0
)

// airAt inverts airHeat from a near guess by Newton's steps, kept in range.
func (f *FreezeOut) airAt(e, guess float64) float64 {
	if f.WetAir == 0 {
		return e / f.Nodes.AirCapacity
	}
	t := guess
	for range 30 {
		v, slope := f.airHeat(t)
		dt := (e - v) / slope
		t = math.Max(coldestAir, math.Min(warmestAir, t+dt))
		if math.Abs(dt) < airSettled {
			break
		}
	}
	return t
}
