package main

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// roof is the cover that is asked about, and the weather over it.
type roof struct {
	plan            *plan.Plan
	name            string
	bare, screened  envelope.Cover
	outside         []float64 // °C, the last is the design night unless they were given
	humidity        []float64 // fraction
	tilt, slope     float64   // degree, m
	outOfRange      bool      // air drier or damper than the sky's emissivity is known for
	inside, held    float64   // °C, fraction
	outsideHumidity float64   // fraction
}

// night is one line of the table.
type night struct {
	outside, sky float64   // °C
	drawn        bool      // the plan's screen is drawn
	face         float64   // °C, the inner face while dry
	limit        float64   // fraction, humidity inside at which it starts to condense; +Inf for never
	water        []float64 // g/(m² h) at each inside humidity
}

// names are those of the ready-made covers, quoted, since some hold a comma.
func names() []string {
	var all []string
	for _, c := range envelope.Covers() {
		all = append(all, fmt.Sprintf("%q", c.Name))
	}
	return all
}

// newRoof takes from the plan what the user did not give.
func newRoof(p *plan.Plan, c choice) (*roof, error) {
	in, out := p.SetPoints.WinterNight, p.Site.WinterNight
	r := &roof{plan: p, name: c.cover, outside: c.outside, humidity: c.humidity, inside: in.Temperature, held: in.RelativeHumidity, outsideHumidity: out.RelativeHumidity}
	if r.name == "" {
		r.name = p.Cover.Roof
	}
	shape, err := fromplan.Shape(p)
	if err != nil {
		return nil, err
	}
	for _, f := range shape.Facets {
		if f.Kind == envelope.Roof {
			r.tilt, r.slope = f.Tilt, f.Height
			break
		}
	}
	faults := []error{}
	if c.tilt != nil {
		r.tilt = *c.tilt
		faults = append(faults, (domain.Range{Min: 0, Max: 180, Unit: "degree"}).Check("-tilt", r.tilt))
	}
	if c.slope != nil {
		r.slope = *c.slope
		faults = append(faults, (domain.Range{Min: 0.01, Max: 100, Unit: "m"}).Check("-slope", r.slope))
	}
	for _, t := range c.outside {
		faults = append(faults, (domain.Range{Min: -50, Max: 40, Unit: "°C"}).Check("-outside", t))
	}
	for _, rh := range c.humidity {
		faults = append(faults, (domain.Range{Min: 0, Max: 1, Unit: "fraction"}).Check("-humidity", rh))
	}
	if r.bare, err = fromplan.Cover(p, r.name); err != nil {
		faults = append(faults, fmt.Errorf("%w: %s", err, strings.Join(names(), ", ")))
	} else if p.Screen != nil {
		r.screened, err = fromplan.Screened(p, r.bare)
		faults = append(faults, err)
	}
	if len(r.outside) == 0 {
		for _, t := range []float64{10, 5, 0, -5, -10} {
			if t > out.Temperature+2 {
				r.outside = append(r.outside, t)
			}
		}
		r.outside = append(r.outside, out.Temperature)
	}
	if len(r.humidity) == 0 {
		r.humidity = []float64{0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95}
		if !slices.Contains(r.humidity, r.held) {
			r.humidity = append(r.humidity, r.held)
			slices.Sort(r.humidity)
		}
	}
	return r, errors.Join(faults...)
}

func (r *roof) table() (nights []night, err error) {
	for _, t := range r.outside {
		n, err := r.solve(t)
		if err != nil {
			return nil, fmt.Errorf("outside %g °C: %w", t, err)
		}
		nights = append(nights, n)
	}
	return nights, nil
}

// solve finds the dry face's temperature from the cover's balance, and the
// humidity at which it draws condensation from psychro; then the balance again,
// wet, for the water.
func (r *roof) solve(outside float64) (night, error) {
	p := r.plan
	n := night{outside: outside, drawn: fromplan.Drawn(p, outside, 0), limit: math.Inf(1)}
	out, e1 := fromplan.Air(p, outside, r.outsideHumidity)
	in, e2 := fromplan.Air(p, r.inside, r.held)
	if err := errors.Join(e1, e2); err != nil {
		return n, err
	}
	house, guessed, err := fromplan.Conditions(p, envelope.HouseAir{Inside: in, Outside: out, Wind: p.Site.WinterNight.Wind, Cloud: p.Site.WinterNight.Cloud}, float64(p.Site.WinterNight.Month), n.drawn)
	if err != nil {
		return n, err
	}
	r.outOfRange = r.outOfRange || guessed
	k := house.CoverConditions
	n.sky = k.Outside - k.SkyDrop
	k.Tilt, k.Height, k.InnerFace = r.tilt, r.slope, envelope.InnerDry
	cover := r.bare
	if n.drawn {
		cover = r.screened
	}
	dry, err := cover.Solve(k)
	if err != nil {
		return n, err
	}
	n.face = dry.InnerTemperature
	if s, err := psychro.FromHumidityRatio(r.inside, psychro.SaturationHumidityRatio(n.face, in.Pressure()), in.Pressure()); err == nil {
		n.limit = s.RelativeHumidity() // else the face is warmer than the air
	}
	for _, rh := range r.humidity {
		s, err := fromplan.Air(p, r.inside, rh)
		if err != nil {
			return n, err
		}
		water := 0.0
		if s.Condenses(n.face) {
			k.InsideHumidity, k.InnerFace = rh, envelope.InnerWet
			wet, err := cover.Solve(k)
			if err != nil {
				return n, err
			}
			water = max(0, wet.Condensate*3.6e6)
		}
		n.water = append(n.water, water)
	}
	return n, nil
}
