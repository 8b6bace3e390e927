package ventilation

import (
	"errors"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
)

// Ranges of the stores of heat.
var (
	soilCapacityRange = domain.Range{Min: 0, Max: 1e8, Unit: "J/(m² K)", Source: "nothing to 30 m of wet soil"}
	massRange         = domain.Range{Min: 0, Max: 1e7, Unit: "J/(m² K)", Source: "nothing to 2 m of water"}
)

// FloorStore is the ground under the floor's conductance as one mass of one
// temperature, which takes heat from the floor's surface and gives it to the
// deep ground.
type FloorStore struct {
	Capacity float64 // J/(m² K), 0 to 1e8, of the mass; 0: none, and with Deep at 0, too, the floor stands on the deep ground
	Deep     float64 // W/(m² K), 0 to 100, from the mass to the deep ground
	Ground   float64 // °C, -40 to 60, deep ground
	Start    float64 // °C, -40 to 60, the mass at the start of the first hour
}

// floorFilm is the resistance from the air to a floor that the coefficients of
// envelope.Ground contain, m² K/W: ISO 13370, from memory.
const floorFilm = 0.17

// FloorStoreUnder returns what lies below the floor f of the house h by its
// ground, edge and buried walls included: from below the floor's conductance to
// the mean of the outside air, so that a floor that keeps its temperature loses
// what the steady coefficient of h.Ground says. It has no capacity of its own:
// whoever follows a day sets that of the soil to some decimetres.
func FloorStoreUnder(h *envelope.House, f FloorSurface) FloorStore {
	c := h.Climate()
	s := FloorStore{Ground: c.OutsideMean, Start: c.InsideMean}
	through := h.Shape().FloorArea/h.Ground().Total - floorFilm
	if f.Conductance > 0 {
		through -= 1 / f.Conductance
	}
	s.Deep = min(conductanceRange.Max, 1/max(through, 1/conductanceRange.Max))
	return s
}

// StructureStore is the frame, benches, pots and what stands in them as one mass
// of one temperature, which takes heat from the air and part of the sun, per
// floor area.
type StructureStore struct {
	Capacity float64 // J/(m² K), 0 to 1e7, of the mass; 0: none, its sun warms the air at once
	Exchange float64 // W/(m² K), 0 to 100, from the air to the mass
	Sun      float64 // fraction, 0 to 1, of the sun that arrives inside
	Start    float64 // °C, -60 to 80, the mass at the start of the first hour
}

// DefaultStructureStore returns frame, benches and pots alone, 26 kJ/(m² K) and
// 7 W/(m² K), as of an empty house (chosen), with a tenth of the sun
// [Vanthoor11], at 15 °C at first. Measured houses answer the first hour of
// cooling with 50 to 190 kJ/(m² K), of which wet topsoil and the crop's water are
// a part: envelope.DefaultNodeStores, with 120 kJ/(m² K) and 30 W/(m² K), stands
// for all of it, and is too much here, where floor and crop are apart.
func DefaultStructureStore() StructureStore {
	return StructureStore{Capacity: 26e3, Exchange: 7, Sun: 0.1, Start: 15}
}

// storeSeen is what the house sees of a store in an hour.
type storeSeen struct {
	conductance float64 // W/(m² K)
	temperature float64 // °C
}

const secondsPerHour = 3600.0

// hourDecay returns e^-x and (1 - e^-x)/x for the exchange sum, W/(m² K), of a
// mass of the capacity, J/(m² K), over an hour.
func hourDecay(sum, capacity float64) (decay, mean float64) {
	x := sum * secondsPerHour / capacity
	return math.Exp(-x), -math.Expm1(-x) / x
}

// soilMass is the soil in an hour during which the floor's surface holds its
// temperature: with G the floor's conductance, D that to the deep ground, x =
// (G + D) dt/C and phi = (1 - e^-x)/x, the mass goes from Ts towards
// (G Tf + D Td)/(G + D) and is there in the mean but for phi times the way, so
// that the surface sees a conductance and a temperature that do not depend on
// it.
type soilMass struct {
	FloorStore
	floor    float64 // W/(m² K)
	decay    float64 // fraction e^-x
	mean     float64 // fraction phi
	now      float64 // °C
	seen     storeSeen
	constant bool
}

func (c *Climate) soil(s FloorStore) (soilMass, error) {
	if err := errors.Join(
		soilCapacityRange.Check("Soil.Capacity", s.Capacity),
		conductanceRange.Check("Soil.Deep", s.Deep),
		groundRange.Check("Soil.Ground", s.Ground),
		groundRange.Check("Soil.Start", s.Start),
	); err != nil {
		return soilMass{}, err
	}
	m := soilMass{FloorStore: s, floor: c.house.Floor.Conductance, now: s.Start}
	sum := m.floor + s.Deep
	if s.Capacity == 0 && s.Deep == 0 || sum == 0 {
		m.constant = true
		m.seen = storeSeen{m.floor, s.Ground}
		return m, nil
	}
	if s.Capacity > 0 {
		m.decay, m.mean = hourDecay(sum, s.Capacity)
	}
	m.look()
	return m, nil
}

// look sets what the surface sees: G (Tf - mean of the mass) as a conductance
// times a difference of temperature.
func (m *soilMass) look() {
	g, d := m.floor, m.Deep
	m.seen.conductance = g * (1 - (1-m.mean)*g/(g+d))
	m.seen.temperature = 0
	if m.seen.conductance > 0 {
		m.seen.temperature = g * ((1-m.mean)*d*m.Ground/(g+d) + m.mean*m.now) / m.seen.conductance
	}
}

// over sets the temperature of the deep ground, °C.
func (m *soilMass) over(deep float64) {
	if m.Ground = deep; m.constant {
		m.seen.temperature = deep
		return
	}
	m.look()
}

// step ends an hour in which the surface had the temperature surface, °C, and
// returns the mean of the mass over it.
func (m *soilMass) step(surface float64) float64 {
	if m.constant {
		return m.Ground
	}
	goal := (m.floor*surface + m.Deep*m.Ground) / (m.floor + m.Deep)
	mean := goal + (m.now-goal)*m.mean
	m.now = goal + (m.now-goal)*m.decay
	m.look()
	return mean
}

// structureMass is the structure in an hour during which the air holds its
// temperature: C dT/dt = G (Ta - T) + S goes from T towards Ta + S/G, so that
// in the mean the air gives G phi (Ta - T) - (1 - phi) S to it, phi as of
// soilMass.
type structureMass struct {
	StructureStore
	decay, mean float64 // fractions e^-x and phi
	now         float64 // °C
	constant    bool
}

func (s StructureStore) mass() (structureMass, error) {
	if err := errors.Join(
		massRange.Check("Structure.Capacity", s.Capacity),
		conductanceRange.Check("Structure.Exchange", s.Exchange),
		shareRange.Check("Structure.Sun", s.Sun),
		temperatureRange.Check("Structure.Start", s.Start),
	); err != nil {
		return structureMass{}, err
	}
	m := structureMass{StructureStore: s, now: s.Start}
	if m.constant = s.Capacity == 0 || s.Exchange == 0; m.constant {
		return m, nil
	}
	m.decay, m.mean = hourDecay(s.Exchange, s.Capacity)
	return m, nil
}

// join puts the mass of a house of the floor area floor, m², beside the air of k.
func (m *structureMass) join(k *climateCase, floor float64) {
	k.mass = storeSeen{floor * m.Exchange * m.mean, m.now}
	k.massGives = (1 - m.mean) * k.massSun
}

// step ends an hour in which the air had the temperature air, °C, and the mass
// sun, W/m² of floor, and returns its mean temperature.
func (m *structureMass) step(air, sun float64) float64 {
	if m.constant {
		return air
	}
	goal := air + sun/m.Exchange
	mean := goal + (m.now-goal)*m.mean
	m.now = goal + (m.now-goal)*m.decay
	return mean
}
