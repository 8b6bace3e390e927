package envelope

import "cloche.example/internal/domain"

// Soil is the ground under and beside a house.
type Soil struct {
	Name             string  // for reports
	Conductivity     float64 // W/(m K), 0.1 to 6
	ConductivityLow  float64 // W/(m K), dry end of its kind
	ConductivityHigh float64 // W/(m K), wet end of its kind
	HeatCapacity     float64 // J/(m³ K), 3e5 to 5e6, per volume
	Source           string  // source, or "from memory"
}

// Accepted soils. Water sets the conductivity: a factor of three between dry
// and wet of the same soil is usual, and dry soil under a house beside wet
// soil outside is too.
var (
	soilConductivityRange = domain.Range{Min: 0.1, Max: 6, Unit: "W/(m K)", Source: "chosen: dry peat to dense rock"}
	soilHeatCapacityRange = domain.Range{Min: 0.3e6, Max: 5e6, Unit: "J/(m³ K)", Source: "chosen: dry peat to wet clay"}
)

// ClaySoil returns clay or silt of [IsoGround17] Table 7; the ends are from memory.
func ClaySoil() Soil {
	return Soil{Name: "clay or silt", Conductivity: 1.5, ConductivityLow: 0.8, ConductivityHigh: 2.1, HeatCapacity: 3.0e6, Source: "ISO 13370:2017 Table 7"}
}

// SandSoil returns sand or gravel of [IsoGround17] Table 7 (from memory); the ends are from memory.
func SandSoil() Soil {
	return Soil{Name: "sand or gravel", Conductivity: 2.0, ConductivityLow: 0.3, ConductivityHigh: 2.5, HeatCapacity: 2.0e6, Source: "ISO 13370:2017 Table 7; ends from memory"}
}

// RockSoil returns homogeneous rock of [IsoGround17] Table 7 (from memory); the ends are from memory.
func RockSoil() Soil {
	return Soil{Name: "homogeneous rock", Conductivity: 3.5, ConductivityLow: 2.0, ConductivityHigh: 4.5, HeatCapacity: 2.0e6, Source: "ISO 13370:2017 Table 7; ends from memory"}
}

// openSlabTest is where the measured-looking soils were read.
const openSlabTest = "input file of an open ground-coupling program for the IEA slab tests"

// Soils returns the table of soils, as a fresh slice: the three of ISO 13370
// first, then others that are drier and conduct less.
func Soils() []Soil {
	return []Soil{
		ClaySoil(), SandSoil(), RockSoil(),
		{"typical soil", 0.864, 0.4, 1.5, 1510 * 1260, openSlabTest + "; ends from memory"},
		{"dry sandy soil", 0.264, 0.2, 0.4, 1650 * 795, openSlabTest + "; ends from memory"},
		{"dry loam", 0.251, 0.2, 0.4, 1250 * 837, openSlabTest + "; ends from memory"},
		{"wet clay", 1.51, 1.2, 2.1, 1500 * 2930, openSlabTest + "; ends from memory"},
	}
}

// FindSoil returns the soil of the name, as Soils has it, and whether there is
// one.
func FindSoil(name string) (Soil, bool) {
	for _, s := range Soils() {
		if s.Name == name {
			return s, true
		}
	}
	return Soil{}, false
}
