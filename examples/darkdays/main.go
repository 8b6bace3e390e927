// Command darkdays counts how long a plan's lamps must burn over a year of hours
// so that a bed gets a crop's daily light: by month, in the darkest days, with
// power, heat and cost.
//
//	go run ./examples/darkdays
//	go run ./examples/darkdays -plan house.json -figure year.svg
//	go run ./examples/darkdays -weather place.csv
//	go run ./examples/darkdays -crop tomato -ppfd 220
//	go run ./examples/darkdays -global hours.txt -per-joule 2.05
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"time"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// lamps is what is counted with: the plan's figures, or the user's in their
// place.
type lamps struct {
	plan                *plan.Plan
	assumed             bool    // the plan has no lamps: those of the defaults stand for them
	ppfd, transmittance float64 // µmol/(m² s), fraction
	from, until         float64 // h
	efficacy, onBed     float64 // µmol/J, fraction
	global              string  // file
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, stdin io.Reader, out, problems io.Writer) int {
	f := frame.New("darkdays", "darkdays counts how long lamps must burn over a year.", "the year day by day")
	crop := f.String("crop", "", "`crop` whose light to reach, in place of the plan's; a wrong name lists them")
	f.Figure("wanted", "crop.wanted_light_mol_m2_d", "daily light wanted, in place of the crop's own")
	ppfd := f.Float64("ppfd", 0, "light of the lamps on the bed, `µmol/(m² s)`; without it the mean of the plan's lamps")
	f.Figure("per-joule", "site.photons_of_daylight_umol_j", "photons of 400 to 700 nm in a joule of global radiation")
	f.Figure("from", "lights.from_h", "hour of the day from which lamps may burn, local standard time")
	f.Figure("photoperiod", "lights.photoperiod_h", "for how long they may burn from then on")
	f.Figure("off-above", "lights.off_above_umol_m2_s", "daylight on the bed above which lamps are off")
	f.Figure("price", "prices.electricity_per_kwh", "price of electricity")
	f.Word("weather", "site.weather_file", "`file` of a year of hourly weather, as houseyear reads it")
	global := f.String("global", "", "`file` with a year of hourly global radiation, W/m², a number a line, - for standard input, in place of weather; without both an invented year with the plan's months")
	return f.Run(args, stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		in := lamps{global: *global}
		var err error
		if *crop != "" {
			if _, ok := lighting.FindCropLight(*crop); !ok {
				return frame.Answer{}, noCrop(*crop)
			}
			if p, err = p.With(plan.Figure{Path: "crop.name", Value: *crop}); err != nil {
				return frame.Answer{}, err
			}
		}
		if p.Lights == nil {
			in.assumed = true
			if p, err = p.With(plan.Figure{Path: "lights.known_from", Value: "count"}); err != nil {
				return frame.Answer{}, err
			}
		}
		if err := in.take(&p.Plan); err != nil {
			return frame.Answer{}, err
		}
		if f.Given("ppfd") {
			in.ppfd = *ppfd
		}
		r, err := in.solve(stdin)
		if err != nil {
			return frame.Answer{}, err
		}
		draw := func(format string) (io.WriterTo, error) { return draw(format, r, in.invented()) }
		return frame.Answer{Text: write(in, r), Data: data(in, r), Warnings: r.warnings(), Draw: draw}, nil
	})
}

func noCrop(name string) error {
	var names []string
	for _, c := range lighting.CropLights() {
		names = append(names, fmt.Sprintf("%q", c.Name))
	}
	return fmt.Errorf("no crop %q; there are: %s", name, strings.Join(names, ", "))
}

// take reads the plan: its lamps as they light the trays, and the daylight that
// its cover lets through.
func (in *lamps) take(p *plan.Plan) error {
	in.plan = p
	house, err := answers.NewHouse(p)
	if err != nil {
		return err
	}
	sun, err := house.Sun()
	if err != nil {
		return err
	}
	light, err := house.Light(sun)
	if err != nil {
		return err
	}
	in.transmittance, in.ppfd = sun.OnTrays, light.Mean
	in.from = p.Lights.From
	in.until = in.from + p.Lights.Photoperiod
	switch {
	case p.Lights.Photoperiod == 24:
		in.from, in.until = 0, 24
	case in.until > 24:
		in.until -= 24
	}
	bed := p.Lights.BedLength * p.Lights.BedWidth
	in.efficacy = p.Lights.PPF / p.Lights.Power
	in.onBed = math.Min(1, light.Mean*bed/(p.Lights.PPF*float64(light.Rows*light.PerRow)))
	return nil
}

// result is what the report prints.
type result struct {
	crop   lighting.CropLight
	target float64 // mol/(m² d)
	year   lighting.LightingYear
	power  float64 // W/m²
	energy lighting.Energy
}

// allowed returns for how many hours of a day the lamps may burn.
func (in lamps) allowed() float64 {
	if in.from > in.until {
		return 24 - in.from + in.until
	}
	return in.until - in.from
}

func (in lamps) solve(stdin io.Reader) (r result, err error) {
	r.crop = fromplan.Crop(in.plan)
	r.target = r.crop.Target
	if math.IsNaN(r.target) {
		r.target = r.crop.Least
	}
	if math.IsNaN(r.target) {
		return r, errors.New("crop.wanted_light_mol_m2_d is not given, and the crop has none of its own")
	}
	global, err := in.hours(stdin)
	if err != nil {
		return r, err
	}
	hour := func(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
	season := lighting.LightingSeason{Global: global, PerJoule: in.plan.Site.PhotonsOfDaylight, Transmittance: in.transmittance, Target: r.target, PPFD: in.ppfd,
		From: hour(in.from), Until: hour(in.until), OffAbove: in.plan.Lights.OffAbove}
	if r.power = lighting.PowerDensity(in.ppfd, in.efficacy, in.onBed); math.IsNaN(r.power) {
		err = errors.Join(err, fmt.Errorf("-ppfd %g must be 0 or more", in.ppfd))
	}
	year, seasonErr := season.Solve()
	if err = errors.Join(err, seasonErr); err != nil {
		return r, err
	}
	r.year = year
	w := r.power * in.plan.Lights.BedLength * in.plan.Lights.BedWidth
	r.energy, err = lighting.EnergyInput{Power: w, PPF: w * in.efficacy, PerJoule: in.plan.Lights.PhotonsOfLamp, Level: 1, Run: year.LampTime, Price: in.plan.Prices.ElectricityPerKWh}.Solve()
	return r, err
}
