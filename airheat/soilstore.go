package airheat

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// SoilStore is a set of equal tubes under the soil that warm ridge air passes
// by day and house air by night. Around each tube the soil is a thick pipe out
// to half the spacing, where no heat passes, for the next tube does the same.
type SoilStore struct {
	Tubes            int     // number, 1 to 1000, of tubes in parallel
	Diameter         float64 // m, 0.01 to 10, of a tube
	Length           float64 // m, 1e-9 to 10000, of a tube
	Spacing          float64 // m, from axis to axis
	Film             float64 // W/(m² K), 0.1 to 1000, from the air through the tube's wall to the soil; see DuctFilm
	Roughness        float64 // m, 0 to 0.02, of the tube's wall
	Fittings         float64 // sum of loss factors of a tube with inlet and outlet, dimensionless, 0 to 1e6
	SoilConductivity float64 // W/(m K), 0.1 to 5
	SoilCapacity     float64 // J/(m³ K), 2e5 to 5e6, of the soil by volume
	FanEfficiency    float64 // fraction, 0.01 to 1, from electricity to air power
}

// DefaultSoilStore returns a store with the soil of ISO 13370's middle class
// (2 W/(m K), 2.0 MJ/(m³ K), sand or gravel), smooth pipes of 6 W/(m² K) film
// and an efficiency of 0.4 (common practice, no source); sizes are to be set.
func DefaultSoilStore() SoilStore {
	return SoilStore{Film: 6, Roughness: 1e-5, Fittings: 2.5, SoilConductivity: 2, SoilCapacity: 2e6, FanEfficiency: 0.4}
}

// The ranges of SoilStore's fields and hours.
var (
	soilSpacingRange      = domain.Range{Min: 0.02, Max: 5, Unit: "m", Source: "tubes under houses"}
	soilFilmRange         = domain.Range{Min: 0.1, Max: 1000, Unit: "W/(m² K)", Source: "air in tubes"}
	soilConductivityRange = domain.Range{Min: 0.1, Max: 5, Unit: "W/(m K)", Source: "dry peat to wet rock"}
	soilCapacityRange     = domain.Range{Min: 2e5, Max: 5e6, Unit: "J/(m³ K)", Source: "dry peat to water"}
	storeStepRange        = domain.Range{Min: 1, Max: 86400, Unit: "s", Source: "the course of a day"}
)

func (s SoilStore) check() error {
	spacing := soilSpacingRange
	if ductSizeRange.Contains(s.Diameter) {
		spacing.Min, spacing.Source = 1.05*s.Diameter, "soil between the tubes"
	}
	return errors.Join(
		tubeHolesRange.Check("Tubes", float64(s.Tubes)),
		ductSizeRange.Check("Diameter", s.Diameter),
		notZero(ductLengthRange).Check("Length", s.Length),
		spacing.Check("Spacing", s.Spacing),
		soilFilmRange.Check("Film", s.Film),
		ductRoughnessRange.Check("Roughness", s.Roughness),
		relativeRoughnessRange.Check("Roughness over Diameter", s.Roughness/s.Diameter),
		fittingsRange.Check("Fittings", s.Fittings),
		soilConductivityRange.Check("SoilConductivity", s.SoilConductivity),
		soilCapacityRange.Check("SoilCapacity", s.SoilCapacity),
		fanEfficiencyRange.Check("FanEfficiency", s.FanEfficiency),
	)
}

// The store is cut into cells along the air and rings of soil around them.
const (
	storeCells = 24
	storeRings = 12
)

// Store is a SoilStore or RockBed in use, with its temperatures. Step and
// StepMoist change it: it is not for use by several goroutines at once. Make it
// with NewSoilStore or NewRockBedStore; the zero Store is invalid.
type Store struct {
	film    float64   // W/K, air to the first ring's middle, each cell
	wall    float64   // W/K, of that from the air to the wall
	behind  float64   // K/W, and from the wall to the ring's middle
	between []float64 // W/K, ring to ring, each cell
	content []float64 // J/K, of each ring, each cell
	temp    [][]float64
	start   float64
	cost    func(flow float64, air Air) (pressure, power float64)
}

// New returns the store at rest with all soil at the temperature start (−60 to
// 200 °C). The error lists every fault.
func NewSoilStore(s SoilStore, start float64) (*Store, error) {
	if err := errors.Join(s.check(), airTemperatureRange.Check("start", start)); err != nil {
		return nil, err
	}
	n := float64(s.Tubes)
	l := s.Length / storeCells * n
	inner, outer := s.Diameter/2, s.Spacing/math.Sqrt(math.Pi) // equal area of a square around each tube
	growth := math.Pow(outer/inner, 1.0/storeRings)
	st := &Store{start: start}
	resist := 1 / (s.Film * math.Pi * s.Diameter * l)
	r := inner
	for i := range storeRings {
		next := r * growth
		mid := math.Sqrt(r * next)
		half := math.Log(mid/r) / (2 * math.Pi * s.SoilConductivity * l)
		if i == 0 {
			st.film, st.wall, st.behind = 1/(resist+half), 1/resist, half
		} else {
			st.between = append(st.between, 1/(2*half)) // rings grow by one ratio: all halves are equal
		}
		st.content = append(st.content, math.Pi*(next*next-r*r)*l*s.SoilCapacity)
		r = next
	}
	g := Segment{Section: Round(s.Diameter), Length: s.Length, Roughness: s.Roughness, Fittings: s.Fittings}
	st.cost = func(flow float64, air Air) (float64, float64) {
		p := g.Loss(flow/n, air).Total
		return p, p * flow / s.FanEfficiency
	}
	st.fill(start)
	return st, nil
}

// made refuses the zero Store.
func (s *Store) made() error {
	if len(s.temp) == 0 {
		return fmt.Errorf("%w: the zero Store is invalid, make it with NewSoilStore or NewRockBedStore", ErrRange)
	}
	return nil
}

func (s *Store) fill(start float64) {
	s.temp = make([][]float64, storeCells)
	for i := range s.temp {
		s.temp[i] = make([]float64, len(s.content))
		for j := range s.temp[i] {
			s.temp[i][j] = start
		}
	}
}

// StoreStep is what a store did in one step.
type StoreStep struct {
	Outlet   float64 // °C, of the air that leaves
	Heat     float64 // W, from the air into the store; negative where it gives heat back
	Pressure float64 // Pa, that the fan must give
	FanPower float64 // W, electric
	Units    float64 // number of transfer units of air to first ring, dimensionless
}

// Step passes the flow (0 to 1000 m³/s) of air at the inlet temperature (−60
// to 200 °C) through the store for the time step (1 to 86400 s); backward
// sends it from the far end, as a store is best emptied. At no flow the heat
// in the store only spreads. Air in a cell follows 1 − exp(−NTU) against the
// first ring; the rings conduct, solved implicitly, so that any step is stable
// and heat is kept to rounding. Moisture that condenses is not counted;
// StepMoist does. The error lists every fault.
func (s *Store) Step(flow, inlet float64, air Air, step time.Duration, backward bool) (StoreStep, error) {
	if err := errors.Join(
		s.made(),
		ductFlowRange.Check("flow", flow),
		airTemperatureRange.Check("inlet", inlet),
		storeStepRange.Check("step", step.Seconds()),
		air.check("Air."),
	); err != nil {
		return StoreStep{}, err
	}
	capacity := flow * air.Density * air.HeatCapacity
	r := StoreStep{Outlet: inlet}
	grip := 0.0 // W/K, from entering air to first ring
	if flow > 0 {
		r.Units = s.film * storeCells / capacity
		grip = -capacity * math.Expm1(-s.film/capacity)
		r.Pressure, r.FanPower = s.cost(flow, air)
	}
	for i := range storeCells {
		cell := s.temp[i]
		if backward {
			cell = s.temp[storeCells-1-i]
		}
		c := s.sweep(cell, step.Seconds())
		c.settle(cell, (c.free+grip*c.per*r.Outlet)/(1+grip*c.per))
		if flow > 0 {
			q := grip * (r.Outlet - cell[0])
			r.Heat += q
			r.Outlet -= q / capacity
		}
	}
	return r, nil
}

// rings is one cell's implicit step: a tridiagonal system, swept from the
// outside in. The first ring ends at free, and per W of heat into it by per K
// more; each further one follows from the one before.
type rings struct {
	free, per      float64 // °C, K/W
	factor, source [storeRings]float64
}

func (s *Store) sweep(cell []float64, seconds float64) rings {
	var r rings
	// Ring i as a line in ring i−1: T_i = factor T_(i−1) + source.
	below, from := 0.0, 0.0
	for i := len(cell) - 1; i >= 1; i-- {
		c, in := s.content[i]/seconds, s.between[i-1]
		d := c + in + below
		r.factor[i], r.source[i] = in/d, (c*cell[i]+from)/d
		below, from = in*(1-r.factor[i]), in*r.source[i]
	}
	c := s.content[0] / seconds
	r.per = 1 / (c + below)
	r.free = (c*cell[0] + from) * r.per
	return r
}

// settle sets the cell's rings from the first one's end.
func (r *rings) settle(cell []float64, first float64) {
	cell[0] = first
	for i := 1; i < len(cell); i++ {
		cell[i] = r.factor[i]*cell[i-1] + r.source[i]
	}
}

// Stored returns the heat in the store above its start temperature, J.
func (s *Store) Stored() float64 {
	sum := 0.0
	for _, cell := range s.temp {
		for j, t := range cell {
			sum += s.content[j] * (t - s.start)
		}
	}
	return sum
}

// Capacity returns the heat capacity of the store, J/K.
func (s *Store) Capacity() float64 {
	sum := 0.0
	for _, c := range s.content {
		sum += c * storeCells
	}
	return sum
}
