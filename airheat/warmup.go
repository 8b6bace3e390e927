package airheat

import (
	"errors"
	"fmt"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
)

// FrostCaution is to be printed wherever a time to frost is shown.
const FrostCaution = "A computed time to frost assumes the stated house and weather; plants, pipes and power supplies fail earlier. Keep an alarm that works without mains power, and follow local codes and licensed practice."

// WarmUp returns when the air reaches setPoint, °C, if the house starts from
// its unheated steady state under d and then gets the full d.Heat. A set-point
// that is never reached is answered by Event.Reached false, with the
// temperature that the air would settle at in Event.Limiting; one that the
// unheated house already has, or exceeds, takes no time.
func (h *Transient) WarmUp(d envelope.Drive, setPoint float64, limit time.Duration) (Event, error) {
	cold := d
	cold.Heat = 0
	start := h.Steady(cold)
	return h.reachFrom(start, d, AirNode, setPoint, start.Air >= setPoint, limit)
}

// CoolDown returns when the air reaches level, °C, if the house starts from
// the steady state at setPoint, °C, and from then on gets the given fraction of
// the heat that held it there; d.Heat is left aside. Fraction 0 is a heater
// out of work. A level at or above setPoint takes no time.
func (h *Transient) CoolDown(d envelope.Drive, setPoint, fraction, level float64, limit time.Duration) (Event, error) {
	return h.Failure(*h, d, setPoint, fraction, level, limit)
}

// Failure is CoolDown with another house after the failure than before it: a
// power cut stops the fan, so that air, structure and soil are less firmly
// joined and the leakage changes, while a fault of the heater alone leaves
// the fan at work. The house h holds setPoint, °C, until the failure; then the
// house after gets the given fraction of the holding heat, and the answer is
// when its air reaches level, °C.
func (h *Transient) Failure(after Transient, d envelope.Drive, setPoint, fraction, level float64, limit time.Duration) (Event, error) {
	if err := errors.Join(h.made("Transient"), d.Check(), roomRange.Check("setPoint", setPoint), shareRange.Check("fraction", fraction)); err != nil {
		return Event{}, err
	}
	q, start := h.HoldingHeat(d, setPoint)
	d.Heat = fraction * q
	return after.reachFrom(start, d, AirNode, level, setPoint <= level, limit)
}

var shareRange = domain.Range{Min: 0, Max: 1, Unit: "fraction"}

// PowerForWarmUp returns the heat in W that brings the air from the unheated
// steady state under d to setPoint, °C, at the end of the time within; d.Heat
// is left aside. The air's temperature is linear in the heat, so the answer is
// exact. It is ErrNoSolution when no positive heat is needed.
func (h *Transient) PowerForWarmUp(d envelope.Drive, setPoint float64, within time.Duration) (float64, error) {
	if err := errors.Join(h.made("Transient"), d.Check(), roomRange.Check("setPoint", setPoint), checkLimit(within)); err != nil {
		return 0, err
	}
	d.Heat = 0
	start := h.Steady(d)
	bare := h.After(start, d, within).Air
	one := envelope.Drive{Heat: 1}
	gain := h.After(Temperatures{}, one, within).Air // K/W
	q := (setPoint - bare) / gain
	if q <= 0 {
		return 0, fmt.Errorf("%w: the unheated air is at %.2f °C by then, setPoint is %g °C", ErrNoSolution, bare, setPoint)
	}
	return q, nil
}
