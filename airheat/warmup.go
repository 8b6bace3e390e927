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

// WarmUp returns when the air reaches setPoint, °C, -90 to 120, if the house
// starts from its unheated steady state under d and then gets the full d.Heat,
// looking as far as limit. A set-point that is never reached is answered by
// Event.Reached false, with the temperature that the air would settle at in
// Event.Limiting; one that the unheated house already has, or exceeds, takes no
// time. The error lists every fault.
func (h Transient) WarmUp(d envelope.Drive, setPoint float64, limit time.Duration) (Event, error) {
	cold := d
	cold.Heat = 0
	start := h.steady(cold)
	return h.reachFrom(start, d, airNode, [2]string{"setPoint", "limit"}, setPoint, start.Air >= setPoint, limit)
}

// HeatFailure says how the heat of a house fails and which temperature of the
// air is looked for.
type HeatFailure struct {
	SetPoint float64       // °C, -90 to 120, held in the steady state until the failure
	Share    float64       // fraction, 0 to 1, of the heat that held it which is left; 0 for a heater that has stopped altogether
	Level    float64       // °C, -90 to 120, of the air, that it is to fall to
	Limit    time.Duration // more than 0, how far ahead to look; Forever for no limit
}

// CoolDown returns when the air comes down to c.Level after the heat of the
// house h has failed as c says; d.Heat is ignored, and a level at or above
// c.SetPoint takes no time. after is the house from then on: h itself where the
// heater alone fails, or another where a power cut stops the fan too, so that
// air, structure and soil are less firmly joined and the leakage changes. The
// error lists every fault.
func (h Transient) CoolDown(after Transient, d envelope.Drive, c HeatFailure) (Event, error) {
	if err := errors.Join(h.made(), d.Check(), roomRange.Check("SetPoint", c.SetPoint), shareRange.Check("Share", c.Share)); err != nil {
		return Event{}, err
	}
	q, start := h.holdingHeat(d, c.SetPoint)
	d.Heat = c.Share * q
	return after.reachFrom(start, d, airNode, [2]string{"Level", "Limit"}, c.Level, c.SetPoint <= c.Level, c.Limit)
}

var shareRange = domain.Range{Min: 0, Max: 1, Unit: "fraction"}

// PowerForWarmUp returns the heat in W that brings the air from the unheated
// steady state under d to setPoint, °C, -90 to 120, at the end of the time
// within; d.Heat is ignored. The air's temperature is linear in the heat, so
// the answer is exact. It is ErrNoSolution when no positive heat is needed.
func (h Transient) PowerForWarmUp(d envelope.Drive, setPoint float64, within time.Duration) (float64, error) {
	if err := errors.Join(h.made(), d.Check(), roomRange.Check("setPoint", setPoint), checkLimit("within", within)); err != nil {
		return 0, err
	}
	d.Heat = 0
	start := h.steady(d)
	bare := h.after(start, d, within).Air
	one := envelope.Drive{Heat: 1}
	gain := h.after(Temperatures{}, one, within).Air // K/W
	q := (setPoint - bare) / gain
	if q <= 0 {
		return 0, fmt.Errorf("%w: the unheated air is at %.2f °C by then, setPoint is %g °C", ErrNoSolution, bare, setPoint)
	}
	return q, nil
}
