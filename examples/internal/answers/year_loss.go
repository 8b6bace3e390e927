package answers

import (
	"math"
	"slices"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/psychro"
)

// season is the house kept at the mean of its set-points through the hours of a
// year.
type season struct {
	house    *House
	setPoint float64 // °C
	outside  float64 // °C, the mean of the heated months, each by its loss
	humidity float64 // outside, relative, likewise
	mean     damp    // there
	limit    psychro.State
	limited  venting // as in the state asked for last, which is tried first
	atLimit  envelope.HouseLoss
}

// mostVented is the outside air that is let in against damp at the most, house
// volumes an hour; chosen, about what vents a tenth open pass.
const mostVented = 5

// damp is the house in one state of the air outside, with the air that is let in
// against damp.
type damp struct {
	air        envelope.HouseAir
	loss       envelope.HouseLoss // its facets until the next is asked for
	vented     float64            // kg/s, dry air
	evaporated float64            // W, what that air carries off
	warmed     float64            // W, that warms it
}

// newSeason is the house kept at a set-point, °C.
func (h *House) newSeason(setPoint float64) (s season, err error) {
	p := h.Plan
	s = season{house: h, setPoint: setPoint}
	all, outside := 0.0, 0.0
	for i, t := range p.Site.Months.Temperature {
		w := monthHours{t}.below(setPoint) * fromplan.Hours()[i]
		all, outside, s.humidity = all+w, outside+w*t, s.humidity+w*p.Site.Months.RelativeHumidity[i]
	}
	if all < 1e-9 { // no hour of the year is colder than the house
		i := p.Site.WinterNight.Month - 1
		all, outside, s.humidity = 1, p.Site.Months.Temperature[i], p.Site.Months.RelativeHumidity[i]
	}
	s.outside, s.humidity = min(outside/all, setPoint-1), s.humidity/all
	s.limit, err = fromplan.Air(p, setPoint, p.SetPoints.Limits.RelativeHumidity)
	return s, err
}

// colder is the share of the year's hours that are colder than t, °C.
func (s *season) colder(t float64) (share float64) {
	for _, m := range s.house.Plan.Site.Months.Temperature {
		part, _ := monthHours{m}.upTo(t)
		share += part / 12
	}
	return share
}

// venting is what is done about damp air.
type venting int

const (
	shut   venting = iota // the humidity is what the crop's water makes of it
	held                  // it is held at the limit
	widest                // it stays above it by mostVented of outside air
)

// damp is the house at t, °C, outside under the season's wind and cloud. Its
// humidity is the plan's limit at most, as long as mostVented of outside air
// carries the rest away. Where covers have two states they are wet.
func (s *season) damp(t float64, screen bool) (d damp, err error) {
	p := s.house.Plan
	outside, err := fromplan.Air(p, t, s.humidity)
	if err != nil {
		return d, err
	}
	w := weather{outside, p.Site.HeatingSeason.Wind, p.Site.HeatingSeason.Cloud, 1, screen}
	for try := range venting(3) {
		how := (s.limited + try) % 3
		var fits bool
		if d, fits, err = s.vented(w, how); err != nil {
			return d, err
		}
		if fits {
			s.limited = how
			break
		}
	}
	return d, nil
}

// vented is the house with as much done about damp, and whether that fits.
func (s *season) vented(w weather, how venting) (d damp, fits bool, err error) {
	h, dry := s.house, s.limit.HumidityRatio()
	out := w.outside.HumidityRatio()
	most := mostVented * h.Shape.Volume / 3600 / w.outside.SpecificVolume()
	switch how {
	case held:
		d.air = envelope.HouseAir{Inside: s.limit, Outside: w.outside, Wind: w.wind, Cloud: w.cloud}
		if err = h.lossTo(&s.atLimit, d.air, w.month, w.drawn); err != nil {
			return d, false, err
		}
		d.loss = s.atLimit
		left := (h.Plan.Crop.Vapour - Evaporation(&d.loss, d.air)) / 3600
		d.vented, fits = left/(dry-out), left > 0 && left <= most*(dry-out)
	case widest:
		d.vented = most
		fallthrough
	default:
		if d.air, d.loss, _, err = h.settled(w, s.setPoint, d.vented); err != nil {
			return d, false, err
		}
		in := d.air.Inside.HumidityRatio()
		fits = in <= max(dry, out) == (how == shut)
	}
	d.evaporated = max(0, d.vented*(d.air.Inside.HumidityRatio()-out)) * psychro.LatentHeat(s.setPoint)
	d.warmed = d.vented * w.outside.HeatCapacity() * (s.setPoint - w.outside.Temperature())
	return d, fits, nil
}

// seasonLoss is the loss per kelvin of each month under the season's wind and
// cloud, with the screen as its rule has it: the mean over the hours of the month
// that are colder than the house. Heat that evaporates water is the heater's by
// night; by day it is the sun's, which loses it in what it gives. The ground counts
// with its steady coefficient.
func (h *House) seasonLoss(y *Year) (months [12]float64, err error) {
	p := h.Plan
	s, err := h.newSeason(y.SetPoint)
	if err != nil {
		return months, err
	}
	high := y.SetPoint - 0.5
	low := max(-55, min(slices.Min(p.Site.Months.Temperature)-1.5*Deviation, s.outside-Deviation))
	var bare, drawn []stretch
	var c curve
	q := p.Screen
	if q == nil || q.Drawn != "always" {
		if c, err = s.curve(low, high, false); err != nil {
			return months, err
		}
		bare = c.stretches(y.SetPoint)
	}
	if q != nil {
		if c, err = s.curve(low, high, true); err != nil {
			return months, err
		}
		drawn = c.stretches(y.SetPoint)
	}
	y.Outside, y.Humidity, y.air, y.loss = s.outside, s.mean.air.Inside.RelativeHumidity(), s.mean.air, s.mean.loss
	y.Vented = s.mean.vented * s.mean.air.Inside.SpecificVolume()
	ground := h.Envelope.Ground().Total
	if p.Assumptions.NoGroundLoss {
		ground = 0
	}
	for i, t := range p.Site.Months.Temperature {
		night := 1 - dayLength(p.Site.Latitude, i+1)/24
		in := monthHours{min(t, y.SetPoint+4*Deviation)} // where digits are left
		heat, vapour := 0.0, 0.0
		switch {
		case q == nil:
			heat, vapour = in.over(bare, deepest, y.SetPoint)
		case q.Drawn == "always":
			heat, vapour = in.over(drawn, deepest, y.SetPoint)
		case q.Drawn == "at night":
			day, _ := in.over(bare, deepest, y.SetPoint)
			heat, vapour = in.over(drawn, deepest, y.SetPoint)
			heat = (1-night)*day + night*heat
		default: // in the cold
			at := min(q.OutsideBelow, y.SetPoint)
			heat, vapour = in.over(drawn, deepest, at)
			open, damp := in.over(bare, at, y.SetPoint)
			heat, vapour = heat+open, vapour+damp
		}
		months[i] = math.Max(0.001, (heat+night*vapour)/in.below(y.SetPoint)+ground)
	}
	return months, nil
}
