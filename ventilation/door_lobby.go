package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/solve"
)

// Lobby is an air lock before a door: its outer door leads outside.
type Lobby struct {
	Volume float64 // m³, more than 0, at most 1e6
	Outer  Doorway // between lobby and outdoors; DoorCase.Door is the inner one
}

// LobbyLoss compares a door with and without a lobby.
type LobbyLoss struct {
	Bare    DoorLoss // the door without it, with the wind of Outer's wall on it
	Before  float64  // fraction of the difference outdoors to house that the lobby air holds as the outer door opens
	Filled  float64  // the same fraction as it closes and the inner door opens
	Passage float64  // J, of one passage with one door open at a time
	Water   float64  // kg, vapour of one passage
	Most    float64  // J, bound on Passage: the lobby once full of outdoor air, once of house air
	Saved   float64  // fraction of Bare.Each that the lobby saves, one door open at a time
	Both    float64  // W, while both doors stand open together
	Middle  float64  // fraction as Before, of the lobby then
	Kept    float64  // fraction of the bare door's W that the lobby saves even so
	Air     float64  // kg/s, that enters the house through the inner door then
}

// check joins every fault of l, by field.
func (l Lobby) check() error {
	return errors.Join(houseVolumeRange.Check("Lobby.Volume", l.Volume), l.Outer.check("Lobby.Outer"))
}

// WithLobby returns what l saves. One door at a time: the lobby's air, well
// mixed, exchanges with outdoors while the outer door is open for Duration and
// with the house while the inner one is; its difference to the side that is
// open falls as 1/(1 + x/2)², x the flow at the start times the time over the
// mass of its air, since the two-way flow goes as the root of the difference.
// What it has after many passages counts. Wind is left out there: with one door
// shut it drives no air through. Both open: the steady flow of Zones with lobby
// and house as two zones, leaks, openings and wind on all of them, and the
// lobby at the difference at which its heat balances, its density linear
// between the two airs. The error joins every fault by field.
func (d DoorCase) WithLobby(l Lobby) (LobbyLoss, error) {
	if err := errors.Join(d.check(), l.check()); err != nil {
		return LobbyLoss{}, err
	}
	var r LobbyLoss
	var err error
	bare := d
	bare.Door.PressureCoefficient = l.Outer.PressureCoefficient
	if r.Bare, err = bare.Loss(); err != nil {
		return LobbyLoss{}, err
	}
	s, err := exchange(d.Inside, d.Outside)
	if err != nil {
		return LobbyLoss{}, err
	}
	if err := d.passage(&r, l, s); err != nil {
		return LobbyLoss{}, err
	}
	if err := d.bothOpen(&r, l, s); err != nil {
		return LobbyLoss{}, err
	}
	return r, nil
}

// passage fills in what one passage costs.
func (d DoorCase) passage(r *LobbyLoss, l Lobby, s perKilogram) error {
	c := d.conditions()
	outer, inner := singleOpening(l.Outer.Opening(), c), singleOpening(d.Door.Opening(), c)
	mass := l.Volume * c.InsideDensity // kg
	a, b := 0.5*outer.Flow*d.Duration.Seconds()/mass, 0.5*inner.Flow*d.Duration.Seconds()/mass
	open := func(difference, rate float64) float64 {
		f := 1 + rate*math.Sqrt(difference)
		return difference / (f * f)
	}
	if a > 0 || b > 0 {
		turn := func(before float64) float64 { return 1 - open(1-open(before, a), b) - before }
		before, err := solve.Root(turn, 0, 1, flowFound)
		if err != nil {
			return err
		}
		r.Before, r.Filled = before, open(before, a)
	}
	total := s.sensible + s.latent
	moved := mass * (r.Before - r.Filled) // kg of outdoor air that the house takes, in effect
	r.Passage, r.Water, r.Most = moved*total, moved*s.vapour, mass*total
	if r.Bare.Each != 0 {
		r.Saved = 1 - r.Passage/r.Bare.Each
	}
	return nil
}

// bothOpen fills in what both doors open together cost.
func (d DoorCase) bothOpen(r *LobbyLoss, l Lobby, s perKilogram) error {
	links := []Link{{A: OutsideZone, B: 0, Element: l.Outer.Opening()}, {A: 0, B: 1, Element: d.Door.Opening()}}
	for _, o := range d.Openings {
		links = append(links, Link{A: OutsideZone, B: 1, Element: o})
	}
	for _, k := range d.Leaks {
		links = append(links, Link{A: OutsideZone, B: 1, Element: k})
	}
	z, err := NewZones(2, links)
	if err != nil {
		return err
	}
	c := d.conditions()
	var fault error
	at := func(middle float64) ZoneBalance {
		b, err := z.Solve(ZoneConditions{ZoneDensities: []float64{c.OutsideDensity + middle*(c.InsideDensity-c.OutsideDensity), c.InsideDensity}, OutsideDensity: c.OutsideDensity, Wind: c.Wind})
		fault = errors.Join(fault, err)
		return b
	}
	gain := func(middle float64) float64 {
		b := at(middle)
		if fault != nil {
			return math.NaN()
		}
		return b.Links[1].Out*(1-middle) - b.Links[0].In*middle
	}
	switch low, high := gain(0), gain(1); {
	case fault != nil:
		return fmt.Errorf("both doors open: %w", fault)
	case low <= 0: // no house air comes into the lobby
		r.Middle = 0
	case high >= 0: // no outdoor air does
		r.Middle = 1
	default:
		if r.Middle, err = solve.Root(gain, 0, 1, shareFound); err != nil {
			return errors.Join(fault, err)
		}
	}
	b := at(r.Middle)
	if fault != nil {
		return fmt.Errorf("both doors open: %w", fault)
	}
	r.Air = b.Links[1].In
	cold := r.Air * (1 - r.Middle)
	for _, f := range b.Links[2:] {
		cold += f.In
	}
	total := s.sensible + s.latent
	r.Both = (cold - r.Bare.Shut) * total
	if w := r.Bare.Sensible + r.Bare.Latent; w != 0 {
		r.Kept = 1 - r.Both/w
	}
	return nil
}
