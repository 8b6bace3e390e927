package answers

import (
	"errors"
	"fmt"
	"slices"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/psychro"
)

// House is the house of a plan, made once and asked many times, by one goroutine
// at a time.
type House struct {
	Plan     *plan.Plan
	Envelope *envelope.House
	Shape    envelope.Shape
	Pressure float64           // Pa
	Night    envelope.HouseAir // the night that the heater is sized for, at the plan's humidity inside
	Drier    bool              // the night is drier than the sky's emissivity is known for

	vapour envelope.VapourBalance // of the last state asked for: the next begins there
	last   envelope.HouseLoss     // likewise
}

// NewHouse makes the house. The ground sees it kept all year at the mean of the
// set-points.
func NewHouse(p *plan.Plan) (*House, error) {
	h := &House{Plan: p, Pressure: fromplan.Pressure(p)}
	var e1, e2 error
	h.Night, e1 = fromplan.WinterNight(p)
	h.Envelope, e2 = fromplan.House(p, MeanSetPoint(p))
	if err := errors.Join(e1, e2); err != nil {
		return nil, err
	}
	h.Shape = h.Envelope.Shape()
	return h, nil
}

// MeanSetPoint is the mean of the set-points over day and night, °C.
func MeanSetPoint(p *plan.Plan) float64 {
	s := p.SetPoints
	day := (s.DayUntil - s.DayFrom) / 24
	return day*s.Day.Temperature + (1-day)*s.Night.Temperature
}

// Loss is what the house loses in the given air, in a month, with the screen
// as its rule has it at night. It follows the plan's switches: without a loss
// into the ground, and with leakage counted by a given heat capacity and then
// without vapour.
func (h *House) Loss(air envelope.HouseAir, month float64) (envelope.HouseLoss, error) {
	return h.loss(air, month, fromplan.Drawn(h.Plan, air.Outside.Temperature(), 0))
}

func (h *House) loss(air envelope.HouseAir, month float64, drawn bool) (r envelope.HouseLoss, err error) {
	err = h.lossTo(&h.last, air, month, drawn)
	r = h.last
	r.Facets, r.Annexes = slices.Clone(r.Facets), slices.Clone(r.Annexes)
	return r, err
}

// lossTo is loss that begins with what dst holds and uses its slices again.
func (h *House) lossTo(dst *envelope.HouseLoss, air envelope.HouseAir, month float64, drawn bool) error {
	k, drier, err := fromplan.Conditions(h.Plan, air, month, drawn)
	if err != nil {
		return err
	}
	h.Drier = h.Drier || drier
	if err := h.Envelope.LossTo(dst, &k); err != nil {
		return fmt.Errorf("heat loss: %w", err)
	}
	h.assume(dst, air.Inside.Temperature()-air.Outside.Temperature())
	return nil
}

// assume puts the plan's assumptions in place of what the library computes; rise
// is the inside over the outside air, K.
func (h *House) assume(r *envelope.HouseLoss, rise float64) {
	a := h.Plan.Assumptions
	dryFilm := r.DryTotal - r.Total
	if a.NoGroundLoss {
		r.Total -= r.Ground.Total
		r.Ground = envelope.GroundFlow{Month: r.Ground.Month, Inside: r.Ground.Inside, Outside: r.Ground.Outside}
	}
	if a.AirHeatCapacity != nil {
		r.Total -= r.Leakage.Total
		r.Latent -= r.Leakage.Latent
		r.Leakage.Coefficient = r.Leakage.Volume * *a.AirHeatCapacity
		r.Leakage.Sensible, r.Leakage.Latent = r.Leakage.Coefficient*rise, 0
		r.Leakage.Total = r.Leakage.Sensible
		r.Total += r.Leakage.Total
	}
	r.DryTotal = r.Total + dryFilm
	r.PerFloor, r.Coefficient = r.Total/h.Shape.FloorArea, r.Total/rise
}

// Evaporation is the water that must evaporate in the house to hold its
// humidity, kg/h: what condenses on the covers and what leaks out.
func Evaporation(r *envelope.HouseLoss, air envelope.HouseAir) float64 {
	return 3600 * (r.Condensate + r.Leakage.DryAir*(air.Inside.HumidityRatio()-air.Outside.HumidityRatio()))
}

// dryInside is house air at t, °C, into which nothing evaporates: with the water
// of the outside air.
func (h *House) dryInside(outside psychro.State, t float64) (psychro.State, error) {
	return psychro.FromHumidityRatio(t, outside.HumidityRatio(), h.Pressure)
}

// some points to x, and to nothing where it is no number.
func some(x float64) *float64 {
	if x-x != 0 { // NaN or infinite
		return nil
	}
	return &x
}
