package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of the soil as a store of heat.
var (
	soilCapacityRange = domain.Range{Min: 0, Max: 1e8, Unit: "J/(m² K)", Source: "nothing to 30 m of wet soil"}
	heaterRange       = domain.Range{Min: 0, Max: 1e8, Unit: "W", Source: "houses up to some hectares"}
)

// FloorStore is the ground under the floor's conductance as one mass of one
// temperature, which takes heat from the floor's surface and gives it to the
// deep ground. It is the house's only store of heat in a year: the air, whose
// store lasts minutes, is steady in each hour, and so are crop and structure.
type FloorStore struct {
	Capacity float64 // J/(m² K), 0 to 1e8, of the mass; 0: none, the floor stands on the deep ground
	Deep     float64 // W/(m² K), 0 to 100, from the mass to the deep ground
	Ground   float64 // °C, -40 to 60, deep ground
	Start    float64 // °C, -40 to 60, the mass at the start of the first hour
}

// Hours are columns of equal length with the means of each hour.
type Hours struct {
	Temperature      []float64  // °C, outside air
	RelativeHumidity []float64  // fraction, outside air
	Sun              []float64  // W/m², on the horizontal
	Wind             []float64  // m/s, at the height to which the pressure coefficients refer
	Sky              []float64  // °C, radiant temperature of the sky
	Pressure         float64    // Pa, all year
	Settings         []Setting  // one an hour, or one for all hours
	Rule             *Rule      // moves vents and heater; nil: they stand as Settings have them
	Soil             FloorStore // the ground as a store of heat
}

// Rule moves the vents and the heater of each hour. With it Opening of the
// hour's setting is not used, and Heat of it is what is there without the heater.
type Rule struct {
	Vent   float64 // °C, -60 to 80, the vents open as far as keeps the inside at this
	Warm   float64 // °C, the heater works as far as keeps the inside at this; at most Vent
	Heater float64 // W, 0 to 1e8, the heater's power
}

// HouseYear is a house over hours: columns of equal length.
type HouseYear struct {
	Temperature      []float64 // °C, inside
	HumidityRatio    []float64 // kg/kg dry air, inside
	RelativeHumidity []float64 // fraction, inside
	Deficit          []float64 // Pa, vapour pressure deficit of the inside air
	Canopy           []float64 // °C; NaN without a crop
	DryAir           []float64 // kg/s
	Opening          []float64 // fraction, position of the vents
	Heat             []float64 // W, put into the air
	Transpired       []float64 // kg/s
	Condensed        []float64 // kg/s, on the cover
	Soil             []float64 // °C, the soil's mean over the hour
	Short            int       // count of hours in which the rule was not kept
	Failed           int       // count of hours without a state: NaN in every column
}

// newHouseYear returns columns for n hours.
func newHouseYear(n int) *HouseYear {
	y := new(HouseYear)
	all := make([]float64, 11*n)
	for i, c := range y.columns() {
		*c = all[i*n : (i+1)*n : (i+1)*n]
	}
	return y
}

// check joins every fault of r, by field; nil has none.
func (r *Rule) check() error {
	if r == nil {
		return nil
	}
	return domain.Within("Rule", errors.Join(
		temperatureRange.Check("Vent", r.Vent),
		domain.Range{Min: temperatureRange.Min, Max: r.Vent, Unit: "°C", Source: "the heater must not fight the vents"}.Check("Warm", r.Warm),
		heaterRange.Check("Heater", r.Heater),
	))
}

func (y *HouseYear) columns() [11]*[]float64 {
	return [11]*[]float64{&y.Temperature, &y.HumidityRatio, &y.RelativeHumidity, &y.Deficit, &y.Canopy,
		&y.DryAir, &y.Opening, &y.Heat, &y.Transpired, &y.Condensed, &y.Soil}
}

// YearTo fills dst with the house of each of the hours, its vents and heat as
// each hour's setting has them, or moved by hours.Rule: shut and with heat where
// the house would be colder than Warm, open as far as needed where it would be
// warmer than Vent. Hours in which full power or any opening falls short of the
// rule have the best that can be had and are counted in Short.
//
// Temperature, humidity and flow of each hour are solved together in a steady
// state; the soil alone remembers, exactly for a floor's temperature that holds
// for an hour. A nil dst allocates; otherwise its columns must have the length
// of the hours, and nothing is allocated. The error joins the faults of soil,
// rule and settings by field; where hours are refused or have no state it gives
// their number, the first and why: they are NaN in every column and leave the
// soil as it was. It panics for columns of unequal length.
func (c *Climate) YearTo(dst *HouseYear, hours Hours) (*HouseYear, error) {
	n := len(hours.Temperature)
	for _, column := range [4][]float64{hours.RelativeHumidity, hours.Sun, hours.Wind, hours.Sky} {
		if len(column) != n {
			panic("ventilation: columns of unequal length")
		}
	}
	if dst == nil {
		dst = newHouseYear(n)
	}
	for _, column := range dst.columns() {
		if len(*column) != n {
			panic("ventilation: columns of unequal length")
		}
	}
	if len(hours.Settings) == 0 {
		return nil, &RangeError{Field: "number of Settings", Min: 1, Max: math.Inf(1), Unit: "count", Source: "one an hour, or one for all"}
	}
	if len(hours.Settings) != n && len(hours.Settings) != 1 {
		panic("ventilation: Settings has neither one entry nor one an hour")
	}
	soil, err := c.soil(hours.Soil)
	if err = errors.Join(c.check(), err, hours.Rule.check()); err != nil {
		return nil, err
	}
	dst.Short, dst.Failed = 0, 0
	var o openings
	var state ClimateState
	first, why := 0, error(nil)
	for i := range n {
		setting := &hours.Settings[0]
		if len(hours.Settings) > 1 {
			setting = &hours.Settings[i]
		}
		err := c.hour(&o, &state, &hours, i, *setting, soil.seen, dst)
		if err != nil {
			if dst.Failed == 0 {
				first, why = i, err
			}
			dst.Failed++
			for _, column := range dst.columns() {
				(*column)[i] = math.NaN()
			}
			continue
		}
		dst.Soil[i] = soil.step(state.Surface)
	}
	if dst.Failed > 0 {
		return dst, fmt.Errorf("%d of %d hours have no state; hour %d: %w", dst.Failed, n, first, why)
	}
	return dst, nil
}

// hour solves hour i and stores it.
func (c *Climate) hour(o *openings, state *ClimateState, hours *Hours, i int, s Setting, ground groundSeen, dst *HouseYear) error {
	out, err := psychro.FromRelativeHumidity(hours.Temperature[i], hours.RelativeHumidity[i], hours.Pressure)
	if err != nil {
		return err
	}
	rule := hours.Rule
	w := Weather{Air: out, Sun: hours.Sun[i], Wind: hours.Wind[i], Sky: hours.Sky[i], Ground: ground.temperature}
	if rule != nil {
		s.Opening = 0
		if c.house.Air.fansAlone() {
			s.Opening = 1
		}
	}
	if err := c.prepare(&o.k, &w, &s); err != nil {
		return err
	}
	o.k.floorConductance = c.house.FloorArea * ground.conductance
	if rule == nil {
		x, stable, err := o.k.solve()
		if err != nil {
			return err
		}
		o.k.state(state, &x, stable)
	} else {
		kept, err := o.follow(state, rule)
		if err != nil {
			return err
		}
		if !kept {
			dst.Short++
		}
	}
	dst.Temperature[i], dst.HumidityRatio[i], dst.RelativeHumidity[i] = state.Temperature, state.HumidityRatio, state.RelativeHumidity
	dst.Deficit[i], dst.Canopy[i], dst.DryAir[i] = state.Deficit, state.Canopy, state.DryAir
	dst.Opening[i], dst.Heat[i] = o.k.opening, state.Heat
	dst.Transpired[i], dst.Condensed[i] = state.Transpired, state.Condensed
	return nil
}

// follow moves vents and heater by the rule and reports whether it could be
// kept.
func (o *openings) follow(out *ClimateState, rule *Rule) (kept bool, err error) {
	p, err := o.coolerThan(rule.Vent)
	if err != nil {
		return false, err
	}
	if p.State.Temperature >= rule.Warm || p.Opening > 0 && !o.k.c.house.Air.fansAlone() {
		*out = p.State
		o.k.opening = p.Opening
		return p.Met, nil
	}
	base := o.k.heat
	x, stable, err := o.k.hold(rule.Warm)
	if err != nil {
		return false, err
	}
	if kept = o.k.heat-base <= rule.Heater; !kept {
		o.k.heat = base + rule.Heater
		if x, stable, err = o.k.solve(); err != nil {
			return false, err
		}
	}
	o.k.state(out, &x, stable)
	return kept, nil
}

// groundSeen is what the floor's surface sees below it in an hour.
type groundSeen struct {
	conductance float64 // W/(m² K)
	temperature float64 // °C
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
	seen     groundSeen
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
	if s.Capacity == 0 || sum == 0 {
		m.constant = true
		m.seen = groundSeen{m.floor, s.Ground}
		return m, nil
	}
	x := sum * 3600 / s.Capacity
	m.decay, m.mean = math.Exp(-x), -math.Expm1(-x)/x
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
