package ventilation

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of the drying balance.
var (
	releaseRange     = domain.Range{Min: 0, Max: 100, Unit: "kg/s", Source: "houses up to some hectares; a value in g/s or kg/h falls outside for a large house"}
	dryAirRange      = domain.Range{Min: 0, Max: 1e4, Unit: "kg/s", Source: "houses up to some hectares"}
	openDryAirRange  = domain.Range{Min: domain.MoreThan(0), Max: 1e4, Unit: "kg/s", Source: "houses up to some hectares"}
	filmRange        = domain.Range{Min: 0, Max: 100, Unit: "W/(m² K)", Source: "convection at a surface indoors"}
	recoveryRange    = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition of an effectiveness"}
	marginRange      = domain.Range{Min: 0, Max: 20, Unit: "K", Source: "a safety against condensation"}
	houseVolumeRange = domain.Range{Min: domain.MoreThan(0), Max: 1e6, Unit: "m³", Source: "houses up to some hectares"}
)

// ColdSurface is a part of the cover, or a leaf or pipe, that the inside air
// touches.
type ColdSurface struct {
	Name        string  // names the surface in errors and reports
	Temperature float64 // °C, -60 to 80, of the inner face
	Area        float64 // m², 0 to 1e5
	Film        float64 // W/(m² K), 0 to 100, convective coefficient of the air at it, without radiation
	Wet         bool    // it carries water that evaporates where the air is drier than it; else it only takes
}

// DryingCase is a house held at a wanted humidity by outside air. The release
// and the temperatures are given: crop, heater and cover answer for them.
type DryingCase struct {
	Wanted   psychro.State // inside air as it is to be
	Outside  psychro.State // outside air
	Release  float64       // kg/s, 0 to 100, vapour from crop, soil and wet floor
	Surfaces []ColdSurface // what the air may condense on; may be nil
	Recovery float64       // fraction, 0 to 1, effectiveness of heat recovery on the side of the supply air; 0 is none
}

// Drying is the answer of DryingCase with the terms it is made of. Heat
// counts from the outside air: what the heater gives to hold the temperature
// against this air flow, cover losses aside.
type Drying struct {
	Release    float64      // kg/s, vapour set free
	Condensed  float64      // kg/s, onto the surfaces at the wanted humidity; negative: wet ones give more than cold ones take
	Excess     float64      // kg/s, what air must carry out: Release less Condensed, zero at least
	Difference float64      // kg/kg dry air, humidity ratio wanted over that outside
	DryAir     float64      // kg/s, 0 to 10000, dry air through the house; zero if the surfaces take enough
	Uncounted  float64      // kg/s dry air, for comparison, the flow if condensation is left out: Release over Difference; NaN where air cannot dry
	Supply     float64      // m³/s, DryAir at the outside state
	Exhaust    float64      // m³/s, DryAir at the wanted state
	Sensible   float64      // W, warms the outside air with its vapour to the inside temperature
	Latent     float64      // W, carried out with the vapour in excess of the outside air's
	Total      float64      // W, DryAir times the difference of the enthalpies: Sensible and Latent
	OnSurfaces float64      // W, set free by Condensed; most of it leaves through the cover
	Heat       RecoveredAir // what heat recovery returns
	Cost       float64      // W, Total less what is recovered
}

// check joins every fault of d, by field.
func (d DryingCase) check() error {
	var faults error
	add := func(err error) {
		if err != nil {
			faults = errors.Join(faults, err)
		}
	}
	add(checkAir("Wanted", d.Wanted))
	add(checkAir("Outside", d.Outside))
	add(releaseRange.Check("Release", d.Release))
	add(recoveryRange.Check("Recovery", d.Recovery))
	if d.Wanted.Pressure() > 0 && d.Outside.Pressure() > 0 {
		add(sameAir("Outside", d.Outside, "Wanted", d.Wanted))
	}
	for i := range d.Surfaces {
		if s := &d.Surfaces[i]; !s.sound() {
			add(s.check(place("Surfaces", i, s.Name)))
		}
	}
	return faults
}

// sound spares the name of s while nothing is wrong with it.
func (s *ColdSurface) sound() bool {
	return temperatureRange.Contains(s.Temperature) && areaRange.Contains(s.Area) && filmRange.Contains(s.Film)
}

func (s *ColdSurface) check(where string) error {
	return errors.Join(
		temperatureRange.Check(where+".Temperature", s.Temperature),
		areaRange.Check(where+".Area", s.Area),
		filmRange.Check(where+".Film", s.Film),
	)
}

// sameAir refuses two states of unlike pressure or model.
func sameAir(field string, s psychro.State, like string, of psychro.State) error {
	var err error
	if s.Pressure() != of.Pressure() {
		err = &RangeError{Field: field + ".Pressure", Value: s.Pressure(), Min: of.Pressure(), Max: of.Pressure(), Unit: "Pa", Source: "the pressure of " + like}
	}
	if s.Model() != of.Model() {
		err = errors.Join(err, fmt.Errorf("%s: %w: its model is %v, that of %s %v", field, ErrRange, s.Model(), like, of.Model()))
	}
	return err
}

// Flow returns the dry-air flow that holds the wanted humidity and what it
// costs. What condenses comes first, by the Lewis relation of
// psychro.State.VapourFlux at the wanted humidity:
//
//	DryAir = (Release - Condensed)/(W - Wo)
//
// Air is zero where the surfaces take all: the house then stays drier than
// wanted (see Settled). ErrNoSolution says that the outside air holds as much
// water as the wanted air, so that no flow dries; other errors join every
// fault by field.
func (d DryingCase) Flow() (Drying, error) {
	if err := d.check(); err != nil {
		return Drying{}, err
	}
	r := Drying{Release: d.Release, Difference: d.Wanted.HumidityRatio() - d.Outside.HumidityRatio()}
	for i := range d.Surfaces {
		s := &d.Surfaces[i]
		v, err := d.Wanted.VapourFlux(s.Temperature, s.Film)
		if err != nil {
			return Drying{}, fmt.Errorf("%s: %w", place("Surfaces", i, s.Name), err)
		}
		if v.Flux > 0 || s.Wet {
			r.Condensed += s.Area * v.Flux
			r.OnSurfaces += s.Area * v.Latent
		}
	}
	r.Excess = math.Max(0, d.Release-r.Condensed)
	r.Uncounted = math.NaN()
	if r.Difference > 0 {
		r.Uncounted = d.Release / r.Difference
	}
	if r.Excess == 0 {
		r.Heat = idleRecovery(d.Outside, d.Wanted)
		return r, nil
	}
	if !(r.Difference > 0) {
		return Drying{}, fmt.Errorf("drying: %w: %.4g kg/s must be removed, but outside air holds %.5g kg/kg and the wanted air only %.5g: heat the house or allow more humidity", ErrNoSolution, r.Excess, d.Outside.HumidityRatio(), d.Wanted.HumidityRatio())
	}
	r.DryAir = r.Excess / r.Difference
	if err := dryAirRange.Check("dry air needed", r.DryAir); err != nil {
		return Drying{}, fmt.Errorf("drying: %w: the outside air is drier by %.3g kg/kg only: %w", ErrNoSolution, r.Difference, err)
	}
	warmed, err := d.Wanted.Model().FromHumidityRatio(d.Wanted.Temperature(), d.Outside.HumidityRatio(), d.Wanted.Pressure())
	if err != nil {
		return Drying{}, err
	}
	r.Supply = r.DryAir * d.Outside.SpecificVolume()
	r.Exhaust = r.DryAir * d.Wanted.SpecificVolume()
	r.Sensible = r.DryAir * (warmed.Enthalpy() - d.Outside.Enthalpy())
	r.Latent = r.DryAir * (d.Wanted.Enthalpy() - warmed.Enthalpy())
	r.Total = r.Sensible + r.Latent
	if r.Heat, err = recoverHeat(d.Wanted, d.Outside, r.DryAir, d.Recovery); err != nil {
		return Drying{}, err
	}
	r.Cost = r.Total - r.Heat.Saved
	return r, nil
}

// DryingEnergy is what drying takes over a time.
type DryingEnergy struct {
	Water    float64 // kg, carried out by the air
	Dripped  float64 // kg, taken by the surfaces
	Sensible float64 // J
	Latent   float64 // J
	Saved    float64 // J, by heat recovery
	Cost     float64 // J, Sensible and Latent less Saved
}

// Over returns what r takes over the time t.
func (r Drying) Over(t time.Duration) DryingEnergy {
	s := t.Seconds()
	return DryingEnergy{
		Water: r.Excess * s, Dripped: r.Condensed * s,
		Sensible: r.Sensible * s, Latent: r.Latent * s, Saved: r.Heat.Saved * s, Cost: r.Cost * s,
	}
}

// DewLimit returns the air of temperature t, °C, -60 to 80, at pressure p, Pa,
// 60000 to 110000, whose dew point lies margin, K, 0 to 20, below the coldest
// of surfaces: the most humid air that keeps all of them dry. It may be used as
// DryingCase.Wanted. ErrNoSolution says that no surface is colder than the air,
// so that any air short of saturation does; other errors join every fault by
// field.
func DewLimit(t, margin, p float64, surfaces []ColdSurface) (psychro.State, error) {
	faults := []error{temperatureRange.Check("t", t), marginRange.Check("margin", margin), pressureRange.Check("p", p)}
	if len(surfaces) == 0 {
		faults = append(faults, &RangeError{Field: "number of surfaces", Min: 1, Max: math.Inf(1), Unit: "count"})
	}
	coldest := math.Inf(1)
	for i := range surfaces {
		faults = append(faults, surfaces[i].check(place("surfaces", i, surfaces[i].Name)))
		coldest = math.Min(coldest, surfaces[i].Temperature)
	}
	if err := errors.Join(faults...); err != nil {
		return psychro.State{}, err
	}
	if coldest-margin >= t {
		return psychro.State{}, fmt.Errorf("dew limit: %w: the coldest surface, %g °C, less the margin is not below the air, %g °C", ErrNoSolution, coldest, t)
	}
	return psychro.FromDewPoint(t, coldest-margin, p)
}
