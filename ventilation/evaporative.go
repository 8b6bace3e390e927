package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of evaporative pads.
var (
	efficiencyRange     = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "no pad cools below the wet bulb; pads reach 0.7 to 0.85"}
	openEfficiencyRange = domain.Range{Min: domain.MoreThan(0), Max: 1, Unit: "fraction", Source: "no pad cools below the wet bulb; pads reach 0.7 to 0.85"}
	padSpeedRange       = domain.Range{Min: 0.1, Max: 3, Unit: "m/s", Source: "at the face of a pad; above, drops are carried off"}
	cyclesRange         = domain.Range{Min: 1.1, Max: 100, Unit: "ratio", Source: "salt in the sump over that of the supply"}
	padFlowRange        = domain.Range{Min: domain.MoreThan(0), Max: 1000, Unit: "m³/s", Source: "houses up to some hectares"}
)

// PadWall is a wall of evaporative pads through which fans draw the outside
// air. In a Network it is an Opening of Area whose Discharge is v sqrt(rho/(2 dp)), by
// the pressure dp, Pa, that its data sheet prints at the speed v, m/s.
type PadWall struct {
	Area       float64 // m², more than 0, at most 1e5; face of the pads
	Efficiency float64 // fraction, more than 0, at most 1; of the wet bulb depression, measured at Speed
	Speed      float64 // m/s, 0.1 to 3, at the face, at which Efficiency was measured
	Cycles     float64 // ratio, 1.1 to 100, of the salt in the sump to that of the supply, which the bleed holds
}

// PadCooling is what a pad wall does to the air, with the terms it is made of.
type PadCooling struct {
	Speed      float64       // m/s, 0.1 to 3, at the face
	Efficiency float64       // fraction, at that speed
	WetBulb    float64       // °C, the limit of the cooling
	Supply     psychro.State // air behind the pads
	Fall       float64       // K, of the air's temperature
	DryAir     float64       // kg/s
	Cooling    float64       // W, sensible heat that the air gives to the water
	Evaporated float64       // kg/s of water
	Bled       float64       // kg/s of water, to waste
	Water      float64       // kg/s, supply: Evaporated and Bled
}

// check joins every fault of p, by field.
func (p PadWall) check() error {
	return errors.Join(
		openAreaRange.Check("Area", p.Area),
		openEfficiencyRange.Check("Efficiency", p.Efficiency),
		padSpeedRange.Check("Speed", p.Speed),
		cyclesRange.Check("Cycles", p.Cycles),
	)
}

// padExponent is that of the transfer units over the face speed for rigid
// corrugated pads: a heat transfer that goes as the speed to 0.8, over a flow
// that goes as the speed [Dowdy87] (from memory).
const padExponent = -0.2

// efficiencyAt returns the efficiency, fraction, at the face speed, m/s, 0.1
// to 3: 1 - exp(-N), with the transfer units N as the speed to the
// power -0.2 [Dowdy87] (from memory) from those measured. NaN outside and for
// a faulty wall; an efficiency of 1 stays 1.
func (p PadWall) efficiencyAt(speed float64) float64 {
	if p.check() != nil || !padSpeedRange.Contains(speed) {
		return math.NaN()
	}
	units := -math.Log1p(-p.Efficiency)
	return -math.Expm1(-units * math.Pow(speed/p.Speed, padExponent))
}

// Cool returns what the pads do to the flow, m³/s, more than 0, at most 1000, of outside
// air that meets them: t = t0 - eta (t0 - twb) along the line of constant wet
// bulb; the bleed is Evaporated/(Cycles - 1). The error joins the faults by
// field; pads that would freeze are refused.
func (p PadWall) Cool(outside psychro.State, flow float64) (PadCooling, error) {
	err := errors.Join(p.check(), padFlowRange.Check("flow", flow), checkAir("outside", outside))
	if p.Area > 0 {
		err = errors.Join(err, padSpeedRange.Check("flow/Area", flow/p.Area))
	}
	if err != nil {
		return PadCooling{}, err
	}
	c := PadCooling{Speed: flow / p.Area, DryAir: flow / outside.SpecificVolume()}
	c.Efficiency = p.efficiencyAt(c.Speed)
	pad, err := psychro.Stream{State: outside, DryAir: c.DryAir}.Pad(c.Efficiency)
	if err != nil {
		return PadCooling{}, fmt.Errorf("pad wall: %w", err)
	}
	c.WetBulb, c.Supply, c.Evaporated = pad.WetBulb, pad.Out.State, pad.Evaporated
	c.Fall = outside.Temperature() - c.Supply.Temperature()
	c.Cooling = c.DryAir * outside.HeatCapacity() * c.Fall
	c.Bled = c.Evaporated / (p.Cycles - 1)
	c.Water = c.Evaporated + c.Bled
	return c, nil
}

// PadDesign asks for the pads and fans that carry a heat off while the air
// warms from the pads to the fans.
type PadDesign struct {
	Outside    psychro.State // outside air
	Sensible   float64       // W, more than 0, at most 1e8; sensible heat set free in the house, the cover's gain or loss included
	Rise       float64       // K, 0.01 to 80, from behind the pads to the fans
	Efficiency float64       // fraction, 0 to 1, of the pads at Speed
	Speed      float64       // m/s, 0.1 to 3, at the face of the pads
}

// PadSize is the answer to PadDesign.
type PadSize struct {
	Supply     psychro.State // air behind the pads
	Exhaust    psychro.State // air at the fans, the moisture of the crop not counted
	DryAir     float64       // kg/s
	Inlet      float64       // m³/s, at the pads' outer face
	Fans       float64       // m³/s, at the fans
	Area       float64       // m², face of the pads
	Evaporated float64       // kg/s of water
	Alone      float64       // kg/s of dry air that would do the same without pads; +Inf when outside air is too warm for it
}

// Size returns the air flow, the pad area and the water that the design needs:
// m = Sensible/(h(t + Rise) - h(t)) at the pads' humidity. The error joins the
// faults by field.
func (d PadDesign) Size() (PadSize, error) {
	err := errors.Join(
		checkAir("Outside", d.Outside),
		openSolarRange.Check("Sensible", d.Sensible),
		riseRange.Check("Rise", d.Rise),
		efficiencyRange.Check("Efficiency", d.Efficiency),
		padSpeedRange.Check("Speed", d.Speed),
	)
	if err != nil {
		return PadSize{}, err
	}
	pad, err := psychro.Stream{State: d.Outside, DryAir: 1}.Pad(d.Efficiency)
	if err != nil {
		return PadSize{}, fmt.Errorf("pad design: %w", err)
	}
	s := PadSize{Supply: pad.Out.State}
	s.Exhaust, err = d.Outside.Model().FromHumidityRatio(s.Supply.Temperature()+d.Rise, s.Supply.HumidityRatio(), d.Outside.Pressure())
	if err != nil {
		return PadSize{}, fmt.Errorf("pad design, air at the fans: %w", err)
	}
	s.DryAir = d.Sensible / (s.Exhaust.Enthalpy() - s.Supply.Enthalpy())
	s.Inlet = s.DryAir * d.Outside.SpecificVolume()
	s.Fans = s.DryAir * s.Exhaust.SpecificVolume()
	s.Area = s.Inlet / d.Speed
	s.Evaporated = s.DryAir * pad.Evaporated
	s.Alone = math.Inf(1)
	if left := s.Exhaust.Temperature() - d.Outside.Temperature(); left > 0 {
		s.Alone = d.Sensible / (d.Outside.HeatCapacity() * left)
	}
	return s, nil
}
