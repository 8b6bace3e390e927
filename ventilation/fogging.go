package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
	"cloche.example/psychro"
)

// Ranges of fogging.
var (
	sprayRange      = domain.Range{Min: 0, Max: 100, Unit: "kg/s", Source: "houses up to some hectares"}
	sprayWaterRange = domain.Range{Min: 0.01, Max: 60, Unit: "°C", Source: "liquid water from a main or tank"}
)

// Fogging sprays fine drops into the air of the house, part of which
// evaporates before it settles.
type Fogging struct {
	Spray      float64 // kg/s, 0 to 100, of water pumped
	Evaporates float64 // fraction, 0 to 1, of it that evaporates before it settles, as long as the air can take it; high pressure far more than low
	Water      float64 // °C, 0.01 to 60, of the water
}

// FogCooling is what fogging does to air, with the terms it is made of.
type FogCooling struct {
	Air        psychro.State // air after it
	Fall       float64       // K, of the air's temperature
	Limit      float64       // kg/s of water that would saturate the air
	Evaporated float64       // kg/s of water
	Dripped    float64       // kg/s of water that falls on crop and floor
	Saturated  bool          // true: the air takes no more
	Efficiency float64       // fraction, Fall over the depression to the adiabatic saturation by this water
	Latent     float64       // W, heat that the evaporation takes from the air
}

// check joins every fault of f, by field.
func (f Fogging) check() error {
	return errors.Join(
		sprayRange.Check("Spray", f.Spray),
		shareRange.Check("Evaporates", f.Evaporates),
		sprayWaterRange.Check("Water", f.Water),
	)
}

// Into returns what f does to air, a stream that passes the house: mass and
// enthalpy are kept, no heat comes from elsewhere. The evaporation stops at
// saturation, whatever is pumped. The error joins the faults by field.
func (f Fogging) Into(air psychro.Stream) (FogCooling, error) {
	if err := errors.Join(f.check(), checkAir("air.State", air.State), openDryAirRange.Check("air.DryAir", air.DryAir)); err != nil {
		return FogCooling{}, err
	}
	limit, saturated, err := f.limit(air)
	if err != nil {
		return FogCooling{}, err
	}
	c := FogCooling{Limit: limit, Evaporated: math.Min(f.Spray*f.Evaporates, limit)}
	c.Saturated = c.Evaporated == limit
	c.Air = saturated
	switch {
	case c.Evaporated == 0:
		c.Air = air.State
	case !c.Saturated:
		mix, err := air.Changed(0, c.Evaporated, psychro.LiquidEnthalpy(f.Water))
		if err != nil {
			return FogCooling{}, fmt.Errorf("fogging: %w", err)
		}
		c.Air = mix.Air.State
	}
	t := air.State.Temperature()
	c.Dripped = f.Spray - c.Evaporated
	c.Fall = t - c.Air.Temperature()
	if t > saturated.Temperature() {
		c.Efficiency = c.Fall / (t - saturated.Temperature())
	}
	c.Latent = air.DryAir * air.State.HeatCapacity() * c.Fall
	return c, nil
}

// limit returns the water, kg/s, that saturates air, and the saturated air.
func (f Fogging) limit(air psychro.Stream) (float64, psychro.State, error) {
	h := psychro.LiquidEnthalpy(f.Water)
	var last psychro.State
	var fault error
	lack := func(water float64) float64 {
		mix, err := air.Changed(0, water, h)
		if err != nil {
			fault = err
			return math.NaN()
		}
		last = mix.Air.State
		if fog := mix.FogLiquid + mix.FogIce; fog > 0 {
			return -fog
		}
		return air.DryAir * (psychro.SaturationHumidityRatio(last.Temperature(), last.Pressure()) - last.HumidityRatio())
	}
	first := lack(0)
	if fault != nil || first <= 0 {
		return 0, air.State, wrapFogging(fault)
	}
	// As much as would saturate the air at its present temperature is too much.
	water, err := solve.Root(lack, 0, first, flowFound)
	if err = errors.Join(fault, err); err != nil {
		return 0, last, wrapFogging(err)
	}
	lack(water)
	return water, last, wrapFogging(fault)
}

func wrapFogging(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("fogging: %w", err)
}
