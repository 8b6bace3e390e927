package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of a purge.
var (
	exchangeRange  = domain.Range{Min: 0.01, Max: 50, Unit: "air changes", Source: "one opening of the vents"}
	roundRange     = domain.Range{Min: 1, Max: 100, Unit: "count", Source: "a morning"}
	structureRange = domain.Range{Min: 0, Max: 1e10, Unit: "J/K", Source: "houses up to some hectares"}
	purgeRange     = domain.Range{Min: 0, Max: 1e6, Unit: "kg", Source: "houses up to some hectares"}
)

// Purge dries a house by rounds of heat and vent: the air is heated with the
// vents shut, then exchanged with the heater off, then heated again. Warm air
// holds more water, so each exchange carries more.
type Purge struct {
	Start     psychro.State // air in the house before
	Outside   psychro.State // outside air
	Volume    float64       // m³, more than 0, at most 1e6; of the house
	Warm      float64       // °C, -60 to 80, to which the air is heated
	Exchange  float64       // air changes, 0.01 to 50, at one venting; well mixed, exp(-Exchange) of the air stays
	Release   float64       // kg, 0 to 1e6, vapour from crop and soil while the air warms, each round
	Structure float64       // J/K, 0 to 1e10, heat capacity of what warms with the air in the first round and keeps warm
}

// PurgeRound is one round of Purge.
type PurgeRound struct {
	Heat    float64       // J, to warm the air, in the first round the structure too; evaporating Release takes heat of crop and soil besides
	Heated  psychro.State // air before the vents open, with what was released
	Vented  psychro.State // air when they close
	Fog     float64       // kg, water afloat in it; the next heating takes it up
	Removed float64       // kg, water carried out
}

// PurgeCourse is the answer of Purge.
type PurgeCourse struct {
	Mass    float64       // kg, dry air in the house, taken as that of the warm house throughout
	Rounds  []PurgeRound  // one after the other
	Reheat  float64       // J, to warm the air after the last venting
	End     psychro.State // the air then
	Heat    float64       // J, of all rounds and Reheat
	Removed float64       // kg, of all rounds
	Limit   float64       // kg/kg dry air, humidity ratio to which rounds without end lead
}

// check joins every fault of p, by field.
func (p Purge) check() error {
	err := errors.Join(
		checkAir("Start", p.Start), checkAir("Outside", p.Outside),
		houseVolumeRange.Check("Volume", p.Volume),
		temperatureRange.Check("Warm", p.Warm),
		exchangeRange.Check("Exchange", p.Exchange),
		purgeRange.Check("Release", p.Release),
		structureRange.Check("Structure", p.Structure),
	)
	if err != nil {
		return err
	}
	return errors.Join(
		sameAir("Outside", p.Outside, "Start", p.Start),
		domain.Range{Min: p.Start.Temperature(), Max: temperatureRange.Max, Unit: "°C", Source: "no cooler than the air at the start"}.Check("Warm", p.Warm),
	)
}

// Rounds returns the course of count rounds, 1 to 100. Mixing takes place at
// constant enthalpy, that of psychro.Mix. The error joins every fault by field;
// ErrNoSolution says that what is released would saturate the warm air.
func (p Purge) Rounds(count int) (PurgeCourse, error) {
	if err := errors.Join(p.check(), roundRange.Check("count", float64(count))); err != nil {
		return PurgeCourse{}, err
	}
	c, err := p.begin()
	for i := 0; i < count && err == nil; i++ {
		err = p.round(&c)
	}
	if err != nil {
		return PurgeCourse{}, err
	}
	return c, nil
}

// RoundsFor returns the shortest course that ends, warm, at the relative
// humidity rh, fraction, 0 to 1, or below: no round where heating alone does.
// ErrNoSolution says that no number of rounds leads there, or not
// 100; other errors join every fault by field.
func (p Purge) RoundsFor(rh float64) (PurgeCourse, error) {
	if err := errors.Join(p.check(), (domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "saturation; to accept a sensor's 1.01, clip it before: min(rh, 1)"}).Check("rh", rh)); err != nil {
		return PurgeCourse{}, err
	}
	c, err := p.begin()
	if err != nil {
		return c, err
	}
	for c.End.RelativeHumidity() > rh {
		if float64(len(c.Rounds)) == roundRange.Max {
			return PurgeCourse{}, fmt.Errorf("purge: %w: rounds without end lead to %.5g kg/kg; after %g of them the relative humidity is %.3g, wanted %.3g", ErrNoSolution, c.Limit, roundRange.Max, c.End.RelativeHumidity(), rh)
		}
		if err := p.round(&c); err != nil {
			return PurgeCourse{}, err
		}
	}
	return c, nil
}

// begin makes the course without a round: the air is heated.
func (p Purge) begin() (PurgeCourse, error) {
	warm, err := p.Start.Model().FromHumidityRatio(p.Warm, p.Start.HumidityRatio(), p.Start.Pressure())
	if err != nil {
		return PurgeCourse{}, err
	}
	c := PurgeCourse{Mass: p.Volume / warm.SpecificVolume(), End: warm}
	c.Reheat = c.Mass*(warm.Enthalpy()-p.Start.Enthalpy()) + p.Structure*(p.Warm-p.Start.Temperature())
	c.Heat = c.Reheat
	kept := math.Exp(-p.Exchange)
	c.Limit = p.Outside.HumidityRatio() + p.Release/c.Mass*kept/(1-kept)
	return c, nil
}

// round adds a round to c: its heating is the last reheating.
func (p Purge) round(c *PurgeCourse) error {
	model, pressure := p.Start.Model(), p.Start.Pressure()
	r := PurgeRound{Heat: c.Reheat}
	w := c.End.HumidityRatio() + p.Release/c.Mass
	if top := model.SaturationHumidityRatio(p.Warm, pressure); w > top {
		return fmt.Errorf("purge: %w: with what is released the air holds %.5g kg/kg, at %g °C it saturates at %.5g", ErrNoSolution, w, p.Warm, top)
	}
	var err error
	if r.Heated, err = model.FromHumidityRatio(p.Warm, w, pressure); err != nil {
		return err
	}
	kept := math.Exp(-p.Exchange)
	mixed, err := psychro.Mix(psychro.Stream{State: r.Heated, DryAir: c.Mass * kept}, psychro.Stream{State: p.Outside, DryAir: c.Mass * (1 - kept)})
	if err != nil {
		return err
	}
	r.Vented = mixed.Air.State
	r.Fog = mixed.FogLiquid + mixed.FogIce
	left := r.Vented.HumidityRatio() + r.Fog/c.Mass
	r.Removed = c.Mass * (w - left)
	if c.End, err = model.FromHumidityRatio(p.Warm, left, pressure); err != nil {
		return err
	}
	c.Reheat = c.Mass*(c.End.Enthalpy()-r.Vented.Enthalpy()) - mixed.FogEnthalpy
	c.Heat += c.Reheat
	c.Removed += r.Removed
	c.Rounds = append(c.Rounds, r)
	return nil
}
