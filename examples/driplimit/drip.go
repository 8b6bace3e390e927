package main

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/internal/report"
	"cloche.example/psychro"
)

// night is one line of the table.
type night struct {
	outside, sky float64   // °C
	face         float64   // °C, the inner face while dry
	limit        float64   // fraction, humidity inside at which it starts to condense
	water        []float64 // g/(m² h) at each inside humidity
}

// solve finds the dry face's temperature from the cover's balance, and the
// humidity at which it draws condensation from psychro; then the balance again,
// wet, for the water.
func (h house) solve(cover envelope.Cover, outside, p float64) (night, error) {
	n := night{outside: outside}
	air, err := psychro.FromRelativeHumidity(outside, h.outsideHumidity, p)
	if err != nil {
		return n, fmt.Errorf("outside: %w", err)
	}
	inside, err := psychro.FromRelativeHumidity(h.inside, 0, p)
	if err != nil {
		return n, fmt.Errorf("inside: %w", err)
	}
	k, err := envelope.NewCoverConditions(envelope.HouseAir{Inside: inside, Outside: air, Wind: h.wind, Cloud: h.cloud})
	if err = errors.Join(err,
		(domain.Range{Min: 0, Max: 180, Unit: "degree"}).Check("Tilt", h.tilt), (domain.Range{Min: 0.01, Max: 100, Unit: "m"}).Check("Height", h.height)); err != nil {
		return n, named(err)
	}
	n.sky = k.Outside - k.SkyDrop
	k.Tilt, k.Height = h.tilt, h.height
	k.InnerFace = envelope.InnerDry
	dry, err := cover.Solve(k)
	if err != nil {
		return n, named(err)
	}
	n.face = dry.InnerTemperature
	n.limit = psychro.SaturationHumidityRatio(n.face, p)
	if s, err := psychro.FromHumidityRatio(h.inside, n.limit, p); err == nil {
		n.limit = s.RelativeHumidity()
	} else {
		n.limit = 1 // the face is warmer than the air
	}
	for _, rh := range h.humidity {
		s, err := psychro.FromRelativeHumidity(h.inside, rh, p)
		if err != nil {
			return n, fmt.Errorf("inside: %w", err)
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

// named gives the faults of the cover's balance the names of the options, and
// leaves out those that follow from another.
func named(err error) error {
	if err == nil {
		return nil
	}
	if all, ok := err.(interface{ Unwrap() []error }); ok {
		var kept []error
		for _, e := range all.Unwrap() {
			kept = append(kept, named(e))
		}
		return errors.Join(kept...)
	}
	r, ok := err.(*psychro.RangeError)
	if !ok {
		return err
	}
	option := map[string]string{"temperature of Inside": "-inside", "temperature of Outside": "-outside",
		"Wind": "-wind", "Tilt": "-tilt", "Height": "-slope"}
	name, known := option[r.Field]
	switch {
	case !known:
		return err
	case name == "":
		return nil
	}
	renamed := *r
	renamed.Field = name
	return &renamed
}

func (h house) report() (*report.Report, error) {
	cover, err := h.find()
	p, bad := h.pressure()
	if err = errors.Join(err, bad, (domain.Range{Min: 0, Max: 1, Unit: "fraction"}).Check("-cloud", h.cloud)); err != nil {
		return nil, err
	}
	r := new(report.Report)
	r.Title("When the cover drips: %s, %g °C inside", h.cover, h.inside)
	r.Note("%s", demo.Note)
	r.Section("Water on the inner face, g/(m² h), by inside relative humidity")
	header := []string{"outside °C", "sky °C", "dry face °C", "begins at"}
	for _, rh := range h.humidity {
		header = append(header, fmt.Sprintf("%g %%", math.Round(1000*rh)/10))
	}
	var rows [][]string
	for _, t := range h.outside {
		n, err := h.solve(cover, t, p)
		if err != nil {
			return nil, err
		}
		row := []string{report.Number(t, 1), report.Number(n.sky, 1), report.Number(n.face, 1), report.Number(100*n.limit, 1) + " %"}
		for _, w := range n.water {
			if w == 0 {
				row = append(row, "dry")
			} else {
				row = append(row, report.Number(w, 1))
			}
		}
		rows = append(rows, row)
	}
	r.Table(header, rows)
	r.Section("What it assumes")
	r.Value("wind at the cover", h.wind, 1, "m/s")
	r.Value("tilt of the cover", h.tilt, 0, "degree")
	r.Value("air pressure", p, 0, "Pa")
	r.Value("relative humidity outside", 100*h.outsideHumidity, 0, "%")
	r.Note("Night, steady, the inside as warm for radiation as its air. The face condenses from the humidity in the fourth column; the water is that of the wet face, which its latent heat warms. A face below 0 °C takes frost. Where the cover is too flat, or too dirty, for its water to run to the eave, it drips.")
	r.Note("Water that drips on lamps, fans and cables can kill: fixtures and wiring for wet rooms, by local code and a licensed electrician.")
	return r, nil
}
