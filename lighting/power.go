package lighting

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// Energy is what lights draw, turn into heat and cost over a running time.
type Energy struct {
	Power       float64 // W of electricity at the level, driver included
	Photons     float64 // W leaving the fixtures as photons
	HeatInside  float64 // W into the house: all power less the photons that leave it
	Electricity float64 // J over the running time
	Heat        float64 // J into the house over the running time
	Cost        float64 // currency over the running time
}

// EnergyInput says how lights run.
type EnergyInput struct {
	Power    float64       // W, 0 to 1e9; at full output, driver included
	PPF      float64       // µmol/s, 0 to 1e9; at full output, no more light than power
	PerJoule float64       // µmol/J, 3 to 7; of the fixture's spectrum: photons in a joule of light
	Level    float64       // fraction, 0 to 1; of full output
	Idle     float64       // W, 0 to 1e9; that a driver draws at any level above 0, no more than Power
	Leaves   float64       // fraction, 0 to 1; of the photons that leave through the cover
	Run      time.Duration // running time, 0 to 10,000 h
	Price    float64       // currency per kWh, 0 to 1000
}

// Ranges of the energy figures.
var (
	perJouleRange = domain.Range{Min: 3, Max: 7, Unit: "µmol/J", Source: "Planck: 3.34 at 400 nm to 5.85 at 700 nm"}
	priceRange    = domain.Range{Min: 0, Max: 1000, Unit: "currency per kWh"}
	shareRange    = domain.Range{Min: 0, Max: 1, Unit: "fraction"}
	fluxRange     = domain.Range{Min: 0, Max: 1e9, Unit: "µmol/s"}
	wattsRange    = domain.Range{Min: 0, Max: 1e9, Unit: "W"}
	runRange      = domain.Range{Min: 0, Max: 10000, Unit: "h"}
)

// joulesPerKWh is exact.
const joulesPerKWh = 3.6e6

// Solve returns what the lights draw and give. All power ends as heat inside
// except the photons that leave through the cover; heat carried off by
// ventilation is not counted here. Fixtures that give out more light than they
// draw are refused. All faults are reported together.
func (in EnergyInput) Solve() (Energy, error) {
	err := errors.Join(wattsRange.Check("Power", in.Power), fluxRange.Check("PPF", in.PPF), perJouleRange.Check("PerJoule", in.PerJoule),
		levelRange.Check("Level", in.Level), wattsRange.Check("Idle", in.Idle), shareRange.Check("Leaves", in.Leaves),
		runRange.Check("Run", in.Run.Hours()), priceRange.Check("Price", in.Price))
	if err == nil {
		most := domain.Range{Min: 0, Max: in.Power * in.PerJoule, Unit: "µmol/s", Source: "no more light than power"}
		err = errors.Join(most.Check("PPF", in.PPF), domain.Range{Min: 0, Max: in.Power, Unit: "W", Source: "no more than the power"}.Check("Idle", in.Idle))
	}
	if err != nil {
		return Energy{}, err
	}
	var e Energy
	if in.Level > 0 {
		e.Power = in.Idle + in.Level*(in.Power-in.Idle)
	}
	e.Photons = in.Level * in.PPF / in.PerJoule
	e.HeatInside = e.Power - in.Leaves*e.Photons
	e.Electricity = e.Power * in.Run.Seconds()
	e.Heat = e.HeatInside * in.Run.Seconds()
	e.Cost = e.Electricity / joulesPerKWh * in.Price
	return e, nil
}

// PowerDensity returns the electrical power in W/m² for ppfd, µmol/(m² s), at
// least 0, from fixtures of the efficacy, µmol/J, above 0, of whose photons
// the fraction utilisation, above 0 to 1, reaches the bed. NaN outside.
func PowerDensity(ppfd, efficacy, utilisation float64) float64 {
	if !(ppfd >= 0) || !(efficacy > 0) || !(utilisation > 0 && utilisation <= 1) {
		return math.NaN()
	}
	return ppfd / (efficacy * utilisation)
}

// LightShare returns the fraction of the electrical power that leaves a
// fixture of the given efficacy, µmol/J, at least 0, as photons of perJoule,
// µmol/J, 3 to 7. NaN outside.
func LightShare(efficacy, perJoule float64) float64 {
	if !(efficacy >= 0) || !perJouleRange.Contains(perJoule) {
		return math.NaN()
	}
	return efficacy / perJoule
}
