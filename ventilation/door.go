package ventilation

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of a door.
var (
	doorSideRange     = domain.Range{Min: domain.MoreThan(0), Max: 20, Unit: "m", Source: "doors and gates"}
	doorTimesRange    = domain.Range{Min: 0, Max: 1e5, Unit: "count", Source: "a day to a year"}
	doorDurationRange = domain.Range{Min: 0, Max: 3.2e7, Unit: "s", Source: "up to a year"}
)

// Doorway is a rectangular doorway.
type Doorway struct {
	Width               float64 // m, more than 0, at most 20
	Height              float64 // m, more than 0, at most 20
	Sill                float64 // m, -10 to 50, above the datum (outside grade), lower edge; negative where steps lead down
	Discharge           float64 // dimensionless, more than 0, at most 1; on Width times Height; where air passes both ways, as through the one open door in calm, ExchangeDischarge
	PressureCoefficient float64 // dimensionless, -3 to 2, wind pressure coefficient of the wall it is in
}

// Opening returns the open door as a tall opening for a network.
func (d Doorway) Opening() Opening {
	return Opening{
		Name: "door", Height: d.Sill + 0.5*d.Height, Vertical: d.Height,
		Area: d.Width * d.Height, Discharge: d.Discharge, PressureCoefficient: d.PressureCoefficient,
	}
}

func (d Doorway) check(where string) error {
	return errors.Join(
		doorSideRange.Check(where+".Width", d.Width),
		doorSideRange.Check(where+".Height", d.Height),
		heightRange.Check(where+".Sill", d.Sill),
		heightRange.Check(where+".Sill + Height/2", d.Sill+0.5*d.Height),
		openDischargeRange.Check(where+".Discharge", d.Discharge),
		pressureCoefRange.Check(where+".PressureCoefficient", d.PressureCoefficient),
	)
}

// DoorCase is a house with a door that is opened now and then.
type DoorCase struct {
	Door     Doorway       // opened
	Inside   psychro.State // house air, held by the heater
	Outside  psychro.State // outdoor air
	Wind     float64       // m/s, 0 to 45, at the height to which the pressure coefficients refer
	Openings []Opening     // what else is open; may be nil
	Leaks    []Leak        // of the house; may be nil: it is tight except for the door
	Volume   float64       // m³, more than 0, at most 1e6; of the house
	Times    int           // count, 0 to 1e5, of openings
	Duration time.Duration // of each, 0 to 3.2e7 s
}

// DoorLoss is what an open door costs, over the shut one. Losses are positive
// where the house is warmer, or more humid, than outside.
type DoorLoss struct {
	In        float64 // kg/s, moist air inward through the door
	Out       float64 // kg/s, outward
	Shut      float64 // kg/s, air that enters the house while the door is shut
	Gusts     float64 // kg/s, exchange by the turbulence of the wind at the door alone [Warren84]
	Extra     float64 // kg/s, air that enters more while it is open: by stack and mean wind, or Gusts if that is more
	Sensible  float64 // W, to warm Extra with its vapour
	Latent    float64 // W, with the vapour that leaves in excess
	Vapour    float64 // kg/s, that leaves in excess
	Each      float64 // J, of one opening while the heater holds the house
	Let       float64 // J, of one opening if the air is allowed to cool instead, its warmth alone counted
	Exchanged float64 // fraction of the house air that one opening replaces, above 1 for more than all
	Energy    float64 // J, Each times the count of openings
	Water     float64 // kg, vapour of all openings
}

// check joins every fault of d, by field.
func (d DoorCase) check() error {
	err := errors.Join(
		checkAir("Inside", d.Inside), checkAir("Outside", d.Outside),
		windRange.Check("Wind", d.Wind),
		houseVolumeRange.Check("Volume", d.Volume),
		doorTimesRange.Check("Times", float64(d.Times)),
		doorDurationRange.Check("Duration", d.Duration.Seconds()),
	)
	if d.Door.check("") != nil { // names are made where there is a fault
		err = errors.Join(d.Door.check("Door"), err)
	}
	if d.Inside.Pressure() > 0 && d.Outside.Pressure() > 0 {
		if fault := sameAir("Outside", d.Outside, "Inside", d.Inside); fault != nil {
			err = errors.Join(err, fault)
		}
	}
	for i := range d.Openings {
		if o := &d.Openings[i]; o.check("") != nil {
			err = errors.Join(err, o.check(place("Openings", i, o.Name)))
		}
	}
	for i := range d.Leaks {
		if l := &d.Leaks[i]; l.check("") != nil {
			err = errors.Join(err, l.check(place("Leaks", i, l.Name)))
		}
	}
	return err
}

func (d DoorCase) conditions() FlowConditions {
	return MoistSides{Inside: d.Inside, Outside: d.Outside, Wind: d.Wind}.conditions()
}

// flow returns the air that enters the house, kg/s, with the door open or
// shut, and the flow of the door. The input has been checked.
func (d DoorCase) flow(open bool) (total float64, door PathFlow, err error) {
	var room [16]path
	var flows [16]PathFlow
	paths, dst := room[:0], flows[:0]
	if open {
		paths = append(paths, d.Door.Opening().path())
	}
	for i := range d.Openings {
		paths = append(paths, d.Openings[i].path())
	}
	for i := range d.Leaks {
		paths = append(paths, d.Leaks[i].path())
	}
	if len(paths) == 0 {
		return 0, PathFlow{}, nil
	}
	for range paths {
		dst = append(dst, PathFlow{})
	}
	n := Network{paths: paths}
	b, err := n.SolveTo(dst, d.conditions())
	if open {
		door = dst[0]
	}
	return b.Flow, door, err
}

// Loss returns what the door costs. While it is open air passes it both ways,
// with the exact integral over its height on the densities of moist air, and
// through the rest of the house by stack and mean wind: Network.Solve. Wind on
// the door of a tight house drives no mean flow, only turbulence: the larger of
// the two counts, as [Warren84] do. Each is for a house held at its state:
// true of openings that are short against Volume over the flow. Let counts the
// air alone, which cools as it is replaced: its excess falls as 1/(1 + x/2)² in
// calm (the flow goes as its root) and as exp(-x) in wind, x the Exchanged
// fraction. The error joins every fault by field.
func (d DoorCase) Loss() (DoorLoss, error) {
	if err := d.check(); err != nil {
		return DoorLoss{}, err
	}
	var r DoorLoss
	shut, _, err := d.flow(false)
	if err != nil {
		return DoorLoss{}, err
	}
	open, door, err := d.flow(true)
	if err != nil {
		return DoorLoss{}, err
	}
	c := d.conditions()
	r.Shut, r.In, r.Out = shut, door.In, door.Out
	r.Gusts = c.OutsideDensity * warrenParkins.Flow(OneFace{
		Area: d.Door.Width * d.Door.Height, Height: d.Door.Height,
		Inside: d.Outside.Temperature(), Outside: d.Outside.Temperature(), Wind: d.Wind,
	})
	r.Extra = math.Max(open-shut, r.Gusts)
	s, err := exchange(d.Inside, d.Outside)
	if err != nil {
		return DoorLoss{}, err
	}
	r.Sensible, r.Latent, r.Vapour = r.Extra*s.sensible, r.Extra*s.latent, r.Extra*s.vapour
	seconds := d.Duration.Seconds()
	r.Each = (r.Sensible + r.Latent) * seconds
	r.Exchanged = r.Extra * seconds / (d.Volume * c.InsideDensity)
	left := math.Exp(-r.Exchanged)
	if d.Wind == 0 {
		left = 1 / ((1 + 0.5*r.Exchanged) * (1 + 0.5*r.Exchanged))
	}
	r.Let = d.Volume * c.InsideDensity * (s.sensible + s.latent) * (1 - left)
	r.Energy = float64(d.Times) * r.Each
	r.Water = float64(d.Times) * seconds * r.Vapour
	return r, nil
}

// perKilogram is what a kilogram of outside air costs that takes the place of
// house air.
type perKilogram struct {
	sensible, latent float64 // J/kg moist air
	vapour           float64 // kg/kg moist air
}

// exchange splits the difference of the enthalpies; its parts need no air of
// the one temperature and the other humidity, which may not exist.
func exchange(inside, outside psychro.State) (perKilogram, error) {
	dry := func(t float64) (float64, error) {
		s, err := inside.Model().FromHumidityRatio(t, 0, inside.Pressure())
		return s.Enthalpy(), err
	}
	hi, err1 := dry(inside.Temperature())
	ho, err2 := dry(outside.Temperature())
	if err := errors.Join(err1, err2); err != nil {
		return perKilogram{}, err
	}
	moist := 1 + outside.HumidityRatio()
	e := perKilogram{vapour: (inside.HumidityRatio() - outside.HumidityRatio()) / moist}
	total := (inside.Enthalpy() - outside.Enthalpy()) / moist
	vapour := 0.0 // J/kg of vapour at the inside temperature
	if inside.HumidityRatio() > 0 {
		vapour = (inside.Enthalpy() - hi) / inside.HumidityRatio()
	} else if outside.HumidityRatio() > 0 {
		vapour = (outside.Enthalpy() - ho) / outside.HumidityRatio()
	}
	e.latent = e.vapour * vapour
	e.sensible = total - e.latent
	return e, nil
}
