package main

import (
	"cloche.example/envelope"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// lamps are those of the plan, switched by clock, daylight and what the crop has
// had since midnight.
type lamps struct {
	ppfd   float64 // µmol/(m² s) on the trays, in the mean
	power  float64 // W
	share  float64 // fraction of the power that leaves as light
	asked  float64 // mol/(m² d) that they add up to; 0: they burn as the clock says
	from   float64 // h
	long   float64 // h
	above  float64 // µmol/(m² s) of daylight above which they are off
	photon float64 // µmol/J of daylight
}

func newLamps(p *plan.Plan, l *answers.Light) (lamps, error) {
	r := lamps{photon: p.Site.PhotonsOfDaylight}
	if l == nil {
		return r, nil
	}
	q := p.Lights
	r.ppfd, r.power, r.from, r.long, r.above = l.Mean, l.Power, q.From, q.Photoperiod, q.OffAbove
	for _, v := range []*float64{l.Least, l.Wanted} {
		if v != nil {
			r.asked = *v
		}
	}
	counted, m, err := answers.Counted(p)
	if err != nil {
		return r, err
	}
	levels := fromplan.Levels(counted)
	for _, f := range m.Layout {
		r.share += levels[f.Group] * f.Light.Flux() / q.Maintenance / q.PhotonsOfLamp * float64(q.Tiers) / r.power
	}
	r.share = min(1, r.share)
	return r, nil
}

// burn is the part of an hour that the lamps burn: clock is its start, h, day
// the daylight on the trays, µmol/(m² s), and had the light since midnight,
// mol/m².
func (l *lamps) burn(clock, day, had float64) float64 {
	if l.ppfd <= 0 || day > l.above {
		return 0
	}
	on := 0.0
	for _, turn := range [2]float64{0, 24} { // the time lit may pass midnight
		on += max(0, min(clock+1+turn, l.from+l.long)-max(clock+turn, l.from))
	}
	if l.asked > 0 {
		on = min(on, max(0, l.asked-had-day*0.0036)/(l.ppfd*0.0036))
	}
	return min(on, 1)
}

// heat is that of the lamps which burn for a part of an hour.
func (l *lamps) heat(on float64) ventilation.LampHeat {
	w := on * l.power
	return ventilation.LampHeat{Light: w * l.share, Air: w * (1 - l.share)}
}

// lighting fills the daylight on the trays, µmol/(m² s), and the part of each
// hour that the lamps burn. Under one bay the beam's shade is followed; several
// bays, and a bed that the plan does not place, have the roof's share of even
// light.
func (h *house) lighting(y *year) error {
	p := h.plan
	var bed *envelope.BedLight
	if q := p.Lights; q != nil && p.House.Bays == 1 {
		place := envelope.BedPlace{Width: min(q.BedWidth, p.House.Span), Length: min(q.BedLength, p.House.Length), Height: q.TraysAboveFloor}
		place.Left, place.Near = (p.House.Span-place.Width)/2, (p.House.Length-place.Length)/2
		b, err := envelope.NewBedLight(h.glazing, place)
		if err != nil {
			return err
		}
		bed = &b
	}
	had, day := 0.0, -1
	for i, at := range h.weather.Time {
		s := h.sunlight(i)
		on := h.steady.Sun.OnTrays * h.weather.Global[i]
		if bed != nil && s.BeamNormal+s.DiffuseHorizontal > 0 {
			l, err := bed.Light(s)
			if err != nil {
				return err
			}
			on = l.Beam + l.Diffuse
		}
		if at.YearDay() != day {
			had, day = 0, at.YearDay()
		}
		y.Daylight[i] = on * h.lamps.photon
		y.Burn[i] = h.lamps.burn(float64(at.Hour()), y.Daylight[i], had)
		had += (y.Daylight[i] + y.Burn[i]*h.lamps.ppfd) * 0.0036
	}
	return nil
}

// sunlight is the sun and sky of hour i.
func (h *house) sunlight(i int) envelope.Sunlight {
	s := h.weather
	return envelope.Sunlight{BeamNormal: s.Direct[i], DiffuseHorizontal: s.Diffuse[i], Albedo: h.plan.Site.GroundReflectance, Elevation: s.Sun[i].Elevation, Azimuth: s.Sun[i].Azimuth}
}
