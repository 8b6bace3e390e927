package airheat

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
)

// SoilStore is a set of equal tubes under the soil that warm ridge air passes
// by day and house air by night. Around each tube the soil is a thick pipe as
// large as the square of its Spacing, beyond which the next tube does the same:
// its radius is Spacing/√π. From its rim heat goes up to the floor, without the
// storage of the soil in between; none goes down, as in a store that has been in
// use for weeks.
type SoilStore struct {
	Tubes            int     // number, 1 to 1000, of tubes in parallel
	Diameter         float64 // m, 0.01 to 10, of a tube
	Length           float64 // m, 1e-9 to 10000, of a tube
	Spacing          float64 // m, 0.02 to 5, from axis to axis, and at least 1.05 diameters
	Depth            float64 // m, 0.02 to 5, from the floor's surface to the axes, and at least half a Spacing
	Above            float64 // °C, -60 to 200, mean of the air above the floor
	Film             float64 // W/(m² K), 0.1 to 1000, from the air through the tube's wall to the soil; see DuctNusselt
	Roughness        float64 // m, 0 to 0.02, of the tube's wall
	Fittings         float64 // sum of loss factors of a tube with inlet and outlet, dimensionless, 0 to 1e6
	SoilConductivity float64 // W/(m K), 0.1 to 5
	SoilCapacity     float64 // J/(m³ K), 2e5 to 5e6, of the soil by volume
	FanEfficiency    float64 // fraction, 0.01 to 1, from electricity to air power
}

// DefaultSoilStore returns a store in envelope.SandSoil, 0.5 m below a house at
// 15 °C, with smooth pipes of 6 W/(m² K) film and an efficiency of 0.4 (common
// practice, no source); sizes are to be set.
func DefaultSoilStore() SoilStore {
	soil := envelope.SandSoil()
	return SoilStore{Depth: 0.5, Above: 15, Film: 6, Roughness: 1e-5, Fittings: 2.5, SoilConductivity: soil.Conductivity, SoilCapacity: soil.HeatCapacity, FanEfficiency: 0.4}
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
	depth := soilSpacingRange
	if soilSpacingRange.Contains(s.Spacing) {
		depth.Min, depth.Source = s.Spacing/2, "half a Spacing"
	}
	return errors.Join(
		depth.Check("Depth", s.Depth),
		airTemperatureRange.Check("Above", s.Above),
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

// A soil store is cut into cells along the air and rings of soil around them.
const (
	storeCells = 24
	storeRings = 12
)

// From the thick pipe's rim to the floor: with the soil of Depth less rimRise
// spacings the whole way is that of a row of pipes below a plane, ln(2 S/(π D)
// sinh(2π z/S))/(2π k) for one metre of one (textbook shape factor, from memory),
// as far as the rows lie deep: rimRise is ln(2 √π)/2π. floorResistance is that of
// a floor's surface for heat going up (ISO 6946, from memory).
const (
	rimRise         = 0.201412509995
	floorResistance = 0.10 // m² K/W
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
	inner   float64 // 1/s, largest share of a step that counts as one, inverse; 0: any step
	up      float64 // W/K, from the outermost ring to the air above the floor, each cell
	above   float64 // °C, of that air
	late    float64 // part of a step's heat that the wall has taken when the air meets it
	cost    func(flow float64, air AirProperties) (pressure, power float64)
}

// NewSoilStore returns the store at rest with all soil at the temperature start (-60 to
// 200 °C). The error lists every fault.
func NewSoilStore(s SoilStore, start float64) (*Store, error) {
	if err := errors.Join(s.check(), airTemperatureRange.Check("start", start)); err != nil {
		return nil, err
	}
	n := float64(s.Tubes)
	l := s.Length / storeCells * n
	inner, outer := s.Diameter/2, s.Spacing/math.Sqrt(math.Pi) // equal area of a square around each tube
	growth := math.Pow(outer/inner, 1.0/storeRings)
	st := &Store{start: start, late: 1, above: s.Above}
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
		st.up = 1 / (half + ((s.Depth-rimRise*s.Spacing)/s.SoilConductivity+floorResistance)/(s.Spacing*l))
		r = next
	}
	g := Segment{Section: Round(s.Diameter), Length: s.Length, Roughness: s.Roughness, Fittings: s.Fittings}
	st.cost = func(flow float64, air AirProperties) (float64, float64) {
		p := g.Loss(flow/n, air).Total
		return p, p * flow / s.FanEfficiency
	}
	st.fill(start, storeCells)
	return st, nil
}

// made refuses the zero Store.
func (s *Store) made() error {
	if len(s.temp) == 0 {
		return fmt.Errorf("%w: the zero Store is invalid, make it with NewSoilStore or NewRockBedStore", ErrRange)
	}
	return nil
}

func (s *Store) fill(start float64, cells int) {
	s.temp = make([][]float64, cells)
	for i := range s.temp {
		s.temp[i] = make([]float64, len(s.content))
		for j := range s.temp[i] {
			s.temp[i][j] = start
		}
	}
}

// StoreStep is what a store did in one step.
type StoreStep struct {
	Outlet   float64 // °C, of the air that leaves, mean of the step
	Heat     float64 // W, from the air into the store; negative where it gives heat back
	Up       float64 // W, from the store through the floor
	Pressure float64 // Pa, that the fan must give
	FanPower float64 // W, electric
	Units    float64 // number of transfer units of air to first ring, dimensionless
}

// Step passes the flow (0 to 1000 m³/s) of air at the inlet temperature (-60
// to 200 °C) through the store for the time step (1 to 86400 s); backward
// sends it from the far end, as a store is best emptied. At no flow the heat
// in the store only spreads. Air in a cell follows 1 − exp(−NTU) against the
// first ring; the rings conduct, solved implicitly, so that any step is stable
// and heat is kept to rounding. A step is marched in parts, in soil of an hour at
// most, in a rock bed of less, so that it hardly shows in the answer: by 1 % of the
// heat of a soil store's first day. Moisture that condenses is not counted;
// StepMoist does. The error lists every fault.
func (s *Store) Step(flow, inlet float64, air AirProperties, step time.Duration, backward bool) (StoreStep, error) {
	if err := errors.Join(
		s.made(),
		ductFlowRange.Check("flow", flow),
		airTemperatureRange.Check("inlet", inlet),
		storeStepRange.Check("step", step.Seconds()),
		domain.Within("air", air.check()),
	); err != nil {
		return StoreStep{}, err
	}
	capacity := flow * air.Density * air.HeatCapacity
	r := StoreStep{Outlet: inlet}
	grip := 0.0 // W/K, from entering air to first ring
	if flow > 0 {
		r.Units = s.film * float64(len(s.temp)) / capacity
		grip = -capacity * math.Expm1(-s.film/capacity)
		r.Pressure, r.FanPower = s.cost(flow, air)
	}
	parts := s.parts(flow, step)
	seconds, share := step.Seconds()/float64(parts), 1/float64(parts)
	for range parts {
		t := inlet
		for i := range s.temp {
			cell := s.cell(i, backward)
			c := s.sweep(cell, seconds)
			q := grip * (t - c.free) / (1 + s.late*grip*c.per)
			c.settle(cell, c.free+c.per*q)
			r.Heat += q * share
			r.Up += s.rising(cell) * share
			if flow > 0 {
				t -= q / capacity
			}
		}
	}
	if flow > 0 {
		r.Outlet -= r.Heat / capacity
	}
	return r, nil
}

// longestPart is the longest that soil is marched at once.
const longestPart = time.Hour

// parts is into how many equal parts a step is cut.
func (s *Store) parts(flow float64, step time.Duration) int {
	n := 1 + int((step-1)/longestPart)
	if flow == 0 {
		return n
	}
	return max(n, 1+int(s.inner*step.Seconds()))
}

// rising is the heat from a cell up through the floor, W, when its rings have
// settled.
func (s *Store) rising(cell []float64) float64 {
	return s.up * (cell[len(cell)-1] - s.above)
}

// cell is the i-th on the air's way.
func (s *Store) cell(i int, backward bool) []float64 {
	if backward {
		i = len(s.temp) - 1 - i
	}
	return s.temp[i]
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
	// Ring i as a line in ring i-1: T_i = factor T_(i-1) + source.
	below, from := s.up, s.up*s.above
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

// SetAbove sets the temperature above the floor from now on, t, °C, -60 to 200, as
// it changes by the hour: Up goes there. The error is a *RangeError for t, or says
// that the store was not made.
func (s *Store) SetAbove(t float64) error {
	if err := errors.Join(s.made(), airTemperatureRange.Check("t", t)); err != nil {
		return err
	}
	s.above = t
	return nil
}

// Clone returns a store that stands where s does, and goes its own way.
func (s *Store) Clone() *Store {
	c := *s
	c.temp = make([][]float64, len(s.temp))
	for i, cell := range s.temp {
		c.temp[i] = append([]float64(nil), cell...)
	}
	return &c
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
		sum += c * float64(len(s.temp))
	}
	return sum
}
