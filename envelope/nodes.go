package envelope

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Nodes describes a house as three heat stores, for hours and nights:
// the air, the structure with everything in it that warms quickly, and the upper
// soil. House.Nodes makes them; airheat solves them.
//
//	Ca dTa/dt = Q  - (Cover+Leakage)(Ta-To) - CoverSky(Ta-Tsky) - AirStructure(Ta-Ts) - AirSoil(Ta-Tg)
//	Cs dTs/dt = Qs + AirStructure(Ta-Ts) - StructureOutside(Ts-To)
//	Cg dTg/dt = Qg + AirSoil(Ta-Tg) - SoilDeep(Tg-Td)
type Nodes struct {
	AirCapacity       float64 // J/K, 1 to 1e13, air and what follows it within a minute
	StructureCapacity float64 // J/K, 1 to 1e13, frame, benches, pots, plants
	SoilCapacity      float64 // J/K, 1 to 1e13, the soil layer that takes part in a day
	Cover             float64 // W/K, 0 to 1e9, air to outside air through the cover
	CoverSky          float64 // W/K, 0 to 1e9, air through the cover to the sky
	Leakage           float64 // W/K, 0 to 1e9, exchange of air with outside
	AirStructure      float64 // W/K, 0 to 1e9, air to structure
	AirSoil           float64 // W/K, 0 to 1e9, air to soil surface
	StructureOutside  float64 // W/K, 0 to 1e9, structure to outside
	SoilDeep          float64 // W/K, 0 to 1e9, soil layer to the ground below
}

// Drive is what acts on the nodes from the start of a calculation on.
type Drive struct {
	Heat          float64 // W, -1e9 to 1e9, heat given to the air
	StructureHeat float64 // W, -1e9 to 1e9, heat given to the structure, for instance sun
	SoilHeat      float64 // W, -1e9 to 1e9, heat given to the soil
	Outside       float64 // °C, -90 to 120, outside air at the start
	Ramp          float64 // K/s, -0.1 to 0.1, rise of the outside air and the sky
	SkyDrop       float64 // K, -10 to 100, how far the sky lies below the outside air
	Deep          float64 // °C, -90 to 120, ground below the soil layer
}

// NodeStores says what stores heat in a house beside its air, and how firmly it
// is joined to it.
type NodeStores struct {
	Structure    float64 // J/(m² K), 100 to 1e7, heat capacity of frame, benches, pots and plants, per floor area
	SoilDepth    float64 // m, 0.01 to 2, soil that takes part, with the heat capacity of the house's soil
	AirStructure float64 // W/(m² K), 0.1 to 100, air to structure, per floor area
	AirSoil      float64 // W/(m² K), 0.1 to 100, air to soil surface, per floor area
}

// DefaultNodeStores returns a house with plants, benches, pots and moving air as
// houses answer in the first hour after the heat stops: 120 kJ/(m² K), as of 29 kg
// of water, and 30 W/(m² K) to leaves, benches and frame, some six times the floor
// in surface. With 5 W/(m² K) to bare soil (from memory) that is the median of
// [Hemming19], see NodeStoresSpread. 0.2 m of soil follow within a night: a sudden
// change of the surface has drawn the heat of 2 sqrt(a t/pi) of depth after the
// time t, which for clay, a = 5e-7 m²/s, is 0.17 m after 12 hours and 0.23 m after
// 24. With the fan at rest about half of both exchanges is left (from memory).
func DefaultNodeStores() NodeStores {
	return NodeStores{Structure: 120e3, SoilDepth: 0.2, AirStructure: 30, AirSoil: 5}
}

// NodeStoresSpread returns the two ends of what has been measured. In nine nights
// without heat under drawn screens [Hemming19] the first 1 to 1.6 hours showed a
// heat capacity of 50 to 190 kJ per m² of floor and kelvin, with a median of 90;
// least, DefaultNodeStores and most answer so. Warming showed less, 38 in the
// median and hardly any in some hours. One capacity is no constant of a house:
// what was warm before counts. So give times as a band between the two. An empty
// house without plants and benches lies below least.
func NodeStoresSpread() (least, most NodeStores) {
	return NodeStores{Structure: 35e3, SoilDepth: 0.2, AirStructure: 30, AirSoil: 5},
		NodeStores{Structure: 375e3, SoilDepth: 0.2, AirStructure: 60, AirSoil: 8}
}

// Check returns every fault of s in one error, or nil.
func (s NodeStores) Check() error {
	return errors.Join(
		structureRange.Check("Structure", s.Structure),
		nodeDepthRange.Check("SoilDepth", s.SoilDepth),
		exchangeRange.Check("AirStructure", s.AirStructure),
		exchangeRange.Check("AirSoil", s.AirSoil),
	)
}

// Nodes returns the three nodes of the house and what acts on them on the night
// k, warmer inside than outside, for the air between k.Inside and level, °C, -60 to 60 (another temperature
// than k.Inside; 0 for a time to frost).
//
// The loss through the covers and by leakage is computed at both temperatures,
// vapour included, since the wet soil and plants that supply it cool by doing
// so, and taken as a straight line between them. What the line leaves at the
// outside air's temperature goes to the sky, in Nodes.CoverSky; where it leaves
// less than nothing, or more than a sky of k.SkyDrop can take, the line goes
// through the loss at k.Inside alone. The ground stands at the steady
// coefficient, and at the temperature that makes its flow the month's. So the
// heat that holds k.Inside in the steady state is HouseLoss.Total. The sun
// k.Sun and annexes' own heat are left aside.
func (h *House) Nodes(k HouseConditions, level float64, stores NodeStores) (Nodes, Drive, error) {
	if err := errors.Join(stores.Check(), nodeLevelRange.Check("level", level)); err != nil {
		return Nodes{}, Drive{}, err
	}
	if level == k.Inside {
		return Nodes{}, Drive{}, &RangeError{Field: "level", Value: level, Min: nodeLevelRange.Min, Max: nodeLevelRange.Max, Unit: "°C", Source: "another temperature than Inside"}
	}
	if k.Inside <= k.Outside {
		return Nodes{}, Drive{}, &RangeError{Field: "Inside", Value: k.Inside, Min: domain.MoreThan(k.Outside), Max: nodeLevelRange.Max, Unit: "°C", Source: "warmer than Outside"}
	}
	k.Sun = nil
	var low HouseLoss
	if err := h.LossTo(&low, &k); err != nil {
		return Nodes{}, Drive{}, err
	}
	held := low // but for its facets
	there := k
	there.Inside = level
	if err := h.LossTo(&low, &there); err != nil {
		return Nodes{}, Drive{}, domain.Within("at level", err)
	}
	floor := h.plan.Shape.FloorArea
	air, err := psychro.FromRelativeHumidity(k.Inside, k.InsideHumidity, k.Pressure)
	if err != nil {
		return Nodes{}, Drive{}, err
	}
	n := Nodes{
		AirCapacity:       h.plan.Shape.Volume / air.SpecificVolume() * air.HeatCapacity(),
		StructureCapacity: stores.Structure * floor,
		SoilCapacity:      h.plan.Ground.Soil.HeatCapacity * stores.SoilDepth * floor,
		AirStructure:      stores.AirStructure * floor,
		AirSoil:           stores.AirSoil * floor,
	}
	d := Drive{Outside: k.Outside, SkyDrop: k.SkyDrop, Deep: h.plan.Climate.OutsideMean}
	n.lose(&held, &low, k.Inside, level, &d)
	if g := h.ground.Total; g > 0 {
		d.Deep = k.Inside - held.Ground.Total/g
		if n.SoilDeep = 1 / (1/g - 1/n.AirSoil); !(n.SoilDeep > 0) {
			n.SoilDeep = g // a ground that takes more than the air gives to the soil
		}
	}
	return n, d, errors.Join(n.Check(), d.Check())
}

// lose sets what the air loses to outside and sky, from the losses at inside
// and level.
func (n *Nodes) lose(held, low *HouseLoss, inside, level float64, d *Drive) {
	air := func(r *HouseLoss) float64 { return r.Total - r.Ground.Total }
	line := func(a, b float64) (slope, rest float64) {
		slope = (a - b) / (inside - level)
		return slope, b - slope*(level-d.Outside)
	}
	slope, rest := line(air(held), air(low))
	leak, _ := line(held.Leakage.Total, low.Leakage.Total)
	toSky := 0.0
	if d.SkyDrop > 0 {
		toSky = rest / d.SkyDrop
	}
	if !(toSky >= 0 && toSky <= slope-leak) || rest < 0 {
		toSky = math.Max(0, math.Min(toSky, slope-leak))
		// Through the loss at inside: slope (Ti - To) + toSky drop is that loss.
		slope = (air(held) - toSky*d.SkyDrop) / (inside - d.Outside)
	}
	n.Leakage = math.Max(0, leak)
	n.CoverSky = toSky
	n.Cover = math.Max(0, slope-toSky-n.Leakage)
}

// Ranges of the nodes.
var (
	storeRange       = domain.Range{Min: 1, Max: 1e13, Unit: "J/K"}
	conductanceRange = domain.Range{Min: 0, Max: 1e9, Unit: "W/K"}
	driveHeatRange   = domain.Range{Min: -1e9, Max: 1e9, Unit: "W"}
	nodeRange        = domain.Range{Min: -90, Max: 120, Unit: "°C"}
	rampRange        = domain.Range{Min: -0.1, Max: 0.1, Unit: "K/s"}
	nodeSkyRange     = domain.Range{Min: -10, Max: 100, Unit: "K"}
	nodeLevelRange   = domain.Range{Min: -60, Max: 60, Unit: "°C"}
	structureRange   = domain.Range{Min: 100, Max: 1e7, Unit: "J/(m² K)"}
	nodeDepthRange   = domain.Range{Min: 0.01, Max: 2, Unit: "m"}
	exchangeRange    = domain.Range{Min: 0.1, Max: 100, Unit: "W/(m² K)"}
)

// Check returns every fault of n in one error, or nil.
func (n Nodes) Check() error {
	err := errors.Join(
		storeRange.Check("AirCapacity", n.AirCapacity),
		storeRange.Check("StructureCapacity", n.StructureCapacity),
		storeRange.Check("SoilCapacity", n.SoilCapacity),
		conductanceRange.Check("Cover", n.Cover),
		conductanceRange.Check("CoverSky", n.CoverSky),
		conductanceRange.Check("Leakage", n.Leakage),
		conductanceRange.Check("AirStructure", n.AirStructure),
		conductanceRange.Check("AirSoil", n.AirSoil),
		conductanceRange.Check("StructureOutside", n.StructureOutside),
		conductanceRange.Check("SoilDeep", n.SoilDeep),
	)
	if err != nil {
		return err
	}
	// Each node must lose heat somewhere, or it has no steady state.
	out := n.Cover + n.CoverSky + n.Leakage
	structure, soil := n.StructureOutside > 0, n.SoilDeep > 0
	if out == 0 && !(structure && n.AirStructure > 0) && !(soil && n.AirSoil > 0) {
		err = errors.Join(err, &RangeError{Field: "Cover + CoverSky + Leakage", Value: out, Min: domain.MoreThan(0), Max: conductanceRange.Max, Unit: "W/K", Source: "the air must lose heat somewhere"})
	}
	if n.AirStructure+n.StructureOutside == 0 {
		err = errors.Join(err, &RangeError{Field: "AirStructure + StructureOutside", Value: 0, Min: domain.MoreThan(0), Max: conductanceRange.Max, Unit: "W/K", Source: "the structure must be joined to something"})
	}
	if n.AirSoil+n.SoilDeep == 0 {
		err = errors.Join(err, &RangeError{Field: "AirSoil + SoilDeep", Value: 0, Min: domain.MoreThan(0), Max: conductanceRange.Max, Unit: "W/K", Source: "the soil must be joined to something"})
	}
	return err
}

// Check returns every fault of d in one error, or nil.
func (d Drive) Check() error {
	return errors.Join(
		driveHeatRange.Check("Heat", d.Heat),
		driveHeatRange.Check("StructureHeat", d.StructureHeat),
		driveHeatRange.Check("SoilHeat", d.SoilHeat),
		nodeRange.Check("Outside", d.Outside),
		rampRange.Check("Ramp", d.Ramp),
		nodeSkyRange.Check("SkyDrop", d.SkyDrop),
		nodeRange.Check("Deep", d.Deep),
	)
}
