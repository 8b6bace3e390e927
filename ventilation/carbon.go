package ventilation

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
	"cloche.example/psychro"
)

// Ranges of the balance of CO2.
var (
	parRange        = domain.Range{Min: 0, Max: 3000, Unit: "µmol/(m² s)", Source: "full sun at noon is 2,000 to 2,300"}
	leafWarmthRange = domain.Range{Min: 0, Max: 45, Unit: "°C", Source: "living leaves"}
	airFlowRange    = domain.Range{Min: 0, Max: 1e5, Unit: "m³/s", Source: "none to houses of hectares wide open"}
	carbonFlowRange = domain.Range{Min: 0, Max: 100, Unit: "kg/s", Source: "houses up to some hectares"}
	carbonStepRange = domain.Range{Min: 1, Max: 24 * 3600, Unit: "s", Source: "a second to a day"}
)

// CO2Case is the CO2 of a house: what is given and set free, what the crop
// takes and what the exchanged air carries.
type CO2Case struct {
	FloorArea   float64       // m², 0.1 to 1e6
	Volume      float64       // m³, 0.05 to 1e7, of the air
	Crop        Canopy        // the plants; only LAI is read
	Air         psychro.State // inside air
	Leaf        float64       // °C, 0 to 45, of the canopy; read with leaves and light
	PAR         float64       // µmol/(m² s), 0 to 3000, above the crop
	Exchange    float64       // m³/s, 0 to 1e5, of air at the inside's density that enters and leaves
	Outside     float64       // µmol/mol, 0 to 5000, outside air
	Supply      float64       // kg/s, 0 to 100, from burners and dosing
	Respiration float64       // kg/s, 0 to 100, set free by crop and soil
}

// CO2State is the CO2 of a house with each term. In a state over a time all are
// means over it.
type CO2State struct {
	Concentration float64 // µmol/mol
	Density       float64 // kg/m³, of CO2
	Uptake        float64 // kg/s, by the crop's photosynthesis
	Carried       float64 // kg/s, carried off by the exchanged air; negative is brought
	Supply        float64 // kg/s, given
	Respiration   float64 // kg/s, set free
	End           float64 // µmol/mol, at the end of the time; Concentration in a steady state
	Residual      float64 // kg/s, what the terms leave beyond the change of the store
}

// check joins every fault of c, by field.
func (c *CO2Case) check() error {
	leaf := error(nil)
	if c.PAR > 0 && c.Crop.LAI > 0 {
		leaf = leafWarmthRange.Check("Leaf", c.Leaf)
	}
	return errors.Join(
		floorAreaRange.Check("FloorArea", c.FloorArea),
		volumeRange.Check("Volume", c.Volume),
		leafAreaRange.Check("Crop.LAI", c.Crop.LAI),
		temperatureRange.Check("temperature of Air", c.Air.Temperature()),
		pressureRange.Check("pressure of Air", c.Air.Pressure()),
		leaf,
		parRange.Check("PAR", c.PAR),
		airFlowRange.Check("Exchange", c.Exchange),
		doseRange.Check("Outside", c.Outside),
		carbonFlowRange.Check("Supply", c.Supply),
		carbonFlowRange.Check("Respiration", c.Respiration),
	)
}

// carbon is a case ready for its one unknown, the concentration.
type carbon struct {
	c    *CO2Case
	per  float64 // kg/m³ for each µmol/mol
	take uptake
	lit  bool
}

func (c *CO2Case) ready() carbon {
	r := carbon{c: c, per: carbonPer(c.Air.Temperature(), c.Air.Pressure()), lit: c.PAR > 0 && c.Crop.LAI > 0}
	if r.lit {
		r.take = uptakeOf(c.Crop.LAI, c.PAR, c.Leaf)
	}
	return r
}

// taken returns the uptake, kg/s, at the concentration co2, µmol/mol.
func (r *carbon) taken(co2 float64) float64 {
	if !r.lit {
		return 0
	}
	v, _ := r.take.at(co2)
	return v * r.c.FloorArea
}

// mostCO2 bounds the concentrations that are sought, µmol/mol: pure CO2.
const mostCO2 = 1e6

// mean returns the concentration, µmol/mol, at which pull (Outside - C) + push +
// Supply + Respiration - Uptake(C) is zero, all in kg/s with pull per µmol/mol:
// it falls strictly with C, so that there is one.
func (r *carbon) mean(pull, reference, supply float64) (float64, error) {
	in := supply + r.c.Respiration
	f := func(co2 float64) float64 { return pull*(reference-co2) + in - r.taken(co2) }
	at, err := solve.Root(f, 0, mostCO2, co2Found)
	if err != nil {
		return at, fmt.Errorf("CO2: %w: more than all air can hold is set free, or none leaves", ErrNoSolution)
	}
	return at, nil
}

// Steady returns the CO2 that stays:
//
//	Supply + Respiration - Uptake(C) = Exchange rho(C - Outside)
//
// with the uptake of Canopy.Uptake at that concentration. It has one solution.
// The error joins a *RangeError for each fault; ErrNoSolution where more than
// air can hold is set free in a house without exchange.
func (c CO2Case) Steady() (CO2State, error) {
	if err := c.check(); err != nil {
		return CO2State{}, err
	}
	if c.Exchange == 0 && c.Supply+c.Respiration == 0 {
		return CO2State{}, fmt.Errorf("CO2: %w: a sealed house to which none is given keeps what it has; Over tells how long", ErrNoSolution)
	}
	r := c.ready()
	at, err := r.mean(c.Exchange*r.per, c.Outside, c.Supply)
	if err != nil {
		return CO2State{}, err
	}
	s := r.state(at, c.Supply)
	s.End = at
	s.Residual = s.Supply + s.Respiration - s.Uptake - s.Carried
	return s, nil
}

func (r *carbon) state(at, supply float64) CO2State {
	return CO2State{
		Concentration: at, Density: at * r.per, Uptake: r.taken(at), Carried: r.c.Exchange * r.per * (at - r.c.Outside),
		Supply: supply, Respiration: r.c.Respiration,
	}
}

// Over returns the means over the time d, 1 s to 24 h, from the concentration
// start, µmol/mol, 0 to 5000, with the air of the volume as the store: exact for
// an uptake that holds its mean. Errors are those of Steady.
func (c CO2Case) Over(start float64, d time.Duration) (CO2State, error) {
	if err := errors.Join(c.check(), doseRange.Check("start", start), carbonStepRange.Check("d", d.Seconds())); err != nil {
		return CO2State{}, err
	}
	r := c.ready()
	return r.over(start, d.Seconds(), c.Supply)
}

// over is Over for t seconds. V rho dC/dt = G rho (Co - C) + net: with x = G t/V
// and phi = (1 - e^-x)/x the mean is phi C0 + (1 - phi)(Co + net/(G rho)), so that
//
//	net = b (mean - phi C0 - (1 - phi) Co), b = rho G/(1 - phi), rho 2 V/t without exchange.
func (r *carbon) over(start, t, supply float64) (CO2State, error) {
	pull, phi := r.store(t)
	rest := phi*start + (1-phi)*r.c.Outside
	at, err := r.mean(pull, rest, supply)
	if err != nil {
		return CO2State{}, err
	}
	s := r.state(at, supply)
	change := s.Supply + s.Respiration - s.Uptake - s.Carried
	s.End = max(0, start+change*t/(r.c.Volume*r.per))
	s.Residual = change - (s.End-start)*r.c.Volume*r.per/t
	return s, nil
}

// fewChanges is the number of air changes below which the series to the square is
// exact to rounding where the exponential has lost digits.
const fewChanges = 1e-5

// store returns b and phi of over.
func (r *carbon) store(t float64) (pull, phi float64) {
	x := r.c.Exchange * t / r.c.Volume
	if x < fewChanges { // 1 - phi = x/2 - x²/6
		return r.per * r.c.Volume / t / (0.5 - x/6), 1 - x*(0.5-x/6)
	}
	phi = -math.Expm1(-x) / x
	return r.per * r.c.Exchange / (1 - phi), phi
}

// Dose returns the supply, kg/s, at least 0, that keeps the steady
// concentration at co2, µmol/mol, 0 to 5000; Supply is not read. The error joins a *RangeError
// for each fault.
func (c CO2Case) Dose(co2 float64) (float64, error) {
	if err := errors.Join(c.check(), doseRange.Check("co2", co2)); err != nil {
		return math.NaN(), err
	}
	r := c.ready()
	return max(0, r.taken(co2)+c.Exchange*r.per*(co2-c.Outside)-c.Respiration), nil
}
