package airheat

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// AirOrWater compares bringing the same heat by air in ducts and by water in
// pipes.
type AirOrWater struct {
	Load    float64 // W, 1 to 1e8, heat wanted in the house
	House   float64 // °C, -60 to 200
	Outside float64 // °C, -60 to 200, around the carriers when everything has stopped
	ByAir   Carrier // the ducts and the air in them
	ByWater Carrier // the pipes and the water in them
}

// Carrier is one way to bring heat: a fluid, its circuit and what drives it.
type Carrier struct {
	Supply       float64 // °C, at most 130, and at least 0.1 K above Return; leaving the heater
	Return       float64 // °C, -60 to 130, coming back to it
	HeatCapacity float64 // J/(kg K), 900 to 4500
	Density      float64 // kg/m³, 0.5 to 1200
	Pressure     float64 // Pa, 0 to 1e6, that the circuit takes at this load
	Efficiency   float64 // fraction, 0.01 to 1, from electricity to fluid power
	WallLoss     float64 // W/K, 0 to 1e6, of the circuit where its heat is lost to the outside
	Volume       float64 // m³, 0 to 1e5, of the fluid in circuit and heat exchangers
	Metal        float64 // J/K, 0 to 1e10, heat capacity of what holds the fluid
	Frost        float64 // W/K, 0 to 1e6, from the stopped circuit to the outside
}

// DefaultAirCarrier is air at 45 °C supply and 15 °C return against 300 Pa at
// an efficiency of 0.4 (common practice, no source); sizes are to be set.
func DefaultAirCarrier() Carrier {
	return Carrier{Supply: 45, Return: 15, HeatCapacity: heatCapacityDryAir, Density: StandardDensity, Pressure: 300, Efficiency: 0.4}
}

// DefaultWaterCarrier is water at 60 °C supply and 40 °C return against 30 kPa
// at an efficiency of 0.4 (common practice, no source); 4187 J/(kg K) and 988
// kg/m³ are those of water near 50 °C, from memory. Sizes are to be set.
func DefaultWaterCarrier() Carrier {
	return Carrier{Supply: 60, Return: 40, HeatCapacity: 4187, Density: 988, Pressure: 30000, Efficiency: 0.4}
}

// The ranges of AirOrWater's fields.
var (
	carrierLoadRange        = domain.Range{Min: 1, Max: 1e8, Unit: "W", Source: "houses"}
	carrierTemperatureRange = domain.Range{Min: -60, Max: 130, Unit: "°C", Source: "air and pressureless water"}
	carrierCapacityRange    = domain.Range{Min: 900, Max: 4500, Unit: "J/(kg K)", Source: "air to water"}
	carrierDensityRange     = domain.Range{Min: 0.5, Max: 1200, Unit: "kg/m³", Source: "air to brine"}
	carrierLossRange        = domain.Range{Min: 0, Max: 1e6, Unit: "W/K", Source: "houses"}
	carrierVolumeRange      = domain.Range{Min: 0, Max: 1e5, Unit: "m³", Source: "houses"}
	carrierMetalRange       = domain.Range{Min: 0, Max: 1e10, Unit: "J/K", Source: "houses"}
)

func (c Carrier) check() error {
	supply := carrierTemperatureRange
	if supply.Contains(c.Return) {
		supply.Min, supply.Source = c.Return+0.1, "above Return"
	}
	return errors.Join(
		carrierTemperatureRange.Check("Return", c.Return),
		supply.Check("Supply", c.Supply),
		carrierCapacityRange.Check("HeatCapacity", c.HeatCapacity),
		carrierDensityRange.Check("Density", c.Density),
		ductPressureRange.Check("Pressure", c.Pressure),
		fanEfficiencyRange.Check("Efficiency", c.Efficiency),
		carrierLossRange.Check("WallLoss", c.WallLoss),
		carrierVolumeRange.Check("Volume", c.Volume),
		carrierMetalRange.Check("Metal", c.Metal),
		carrierLossRange.Check("Frost", c.Frost),
	)
}

// CarrierResult is what one way of bringing the heat needs.
type CarrierResult struct {
	Loss           float64       // W, lost to the outside on the way
	Heat           float64       // W, from the heater: the load and the loss
	MassFlow       float64       // kg/s
	VolumeFlow     float64       // m³/s
	Transport      float64       // W, electric power of fan or pump
	TransportShare float64       // fraction of the load
	Content        float64       // kg of fluid in the circuit
	Inertia        float64       // J/K, of fluid and metal
	Stored         float64       // J, above house temperature at the mean of supply and return
	Transit        time.Duration // for the fluid to pass once: content over mass flow
	Response       time.Duration // to bring the circuit from house to mean temperature with the heat it is given
	CoolToFreezing time.Duration // after a stop, from house temperature to 0 °C; Forever if it never gets there or nothing in it freezes
	FreezeThrough  time.Duration // from 0 °C until all content is ice; Forever as above
}

// latentIce is the heat of melting of ice, J/kg [HoF17] ch. 1.
const latentIce = 333600

// Solve returns what air and water each need for the same load. Loss: WallLoss
// times the mean of supply and return above outside. Flow: heat over cp times
// the fall from supply to return. Transport: volume flow times pressure over
// efficiency; nearly all of it ends as heat in the house, but at the price of
// electricity. Freezing is reckoned for a Density above 500 kg/m³ only, without
// glycol, as if nothing drains and the content cooled as one body: a thin pipe
// in the draught freezes sooner. The error lists every fault.
func (a AirOrWater) Solve() (air, water CarrierResult, err error) {
	if err := errors.Join(
		carrierLoadRange.Check("Load", a.Load),
		airTemperatureRange.Check("House", a.House),
		airTemperatureRange.Check("Outside", a.Outside),
		domain.Within("ByAir", a.checkCarrier(a.ByAir)),
		domain.Within("ByWater", a.checkCarrier(a.ByWater)),
	); err != nil {
		return CarrierResult{}, CarrierResult{}, err
	}
	return a.take(a.ByAir), a.take(a.ByWater), nil
}

// checkCarrier adds to the carrier's own faults a mean temperature that does
// not warm the house or is below what is around the circuit.
func (a AirOrWater) checkCarrier(c Carrier) error {
	if err := c.check(); err != nil {
		return err
	}
	around := domain.Range{Min: math.Max(a.House, a.Outside), Max: carrierTemperatureRange.Max, Unit: "°C", Source: "above House and Outside, or nothing is brought"}
	return around.Check("mean of Supply and Return", 0.5*(c.Supply+c.Return))
}

func (a AirOrWater) take(c Carrier) CarrierResult {
	mean := 0.5 * (c.Supply + c.Return)
	r := CarrierResult{Loss: c.WallLoss * (mean - a.Outside), Content: c.Volume * c.Density}
	r.Heat = a.Load + r.Loss
	r.MassFlow = r.Heat / (c.HeatCapacity * (c.Supply - c.Return))
	r.VolumeFlow = r.MassFlow / c.Density
	r.Transport = r.VolumeFlow * c.Pressure / c.Efficiency
	r.TransportShare = r.Transport / a.Load
	r.Inertia = r.Content*c.HeatCapacity + c.Metal
	r.Stored = r.Inertia * (mean - a.House)
	r.Transit = duration(r.Content / r.MassFlow)
	r.Response = duration(r.Stored / r.Heat)
	r.CoolToFreezing, r.FreezeThrough = Forever, Forever
	const liquid = 500 // kg/m³
	if c.Density > liquid && a.Outside < 0 && c.Frost > 0 {
		// A body of one temperature: T − To falls as exp(−t UA/C).
		r.CoolToFreezing = duration(r.Inertia / c.Frost * math.Log(math.Max(a.House, 0)/-a.Outside+1))
		r.FreezeThrough = duration(r.Content * latentIce / (c.Frost * -a.Outside))
	}
	return r
}
