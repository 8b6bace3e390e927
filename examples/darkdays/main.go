// Command darkdays counts how long lamps must burn over a year of hours so
// that a bed gets a crop's daily light: by month, in the darkest days, with
// power, heat and cost.
//
//	go run ./examples/darkdays
//	go run ./examples/darkdays -crop tomato -ppfd 220 -figure year.svg
//	go run ./examples/darkdays -global hours.txt -per-joule 2.05
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"time"

	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/internal/program"
	"cloche.example/internal/year"
	"cloche.example/lighting"
)

// input is what the user may set.
type input struct {
	crop                        string
	target, ppfd, transmittance float64 // mol/(m² d), µmol/(m² s), fraction
	perJoule, from, until, off  float64 // µmol/J, h, h, µmol/(m² s)
	efficacy, onBed, area       float64 // µmol/J, fraction, m²
	price                       float64 // currency per kWh
	global                      string  // file
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, stdin io.Reader, out, problems io.Writer) int {
	var in input
	f := program.New("darkdays", "darkdays counts how long lamps must burn over a year.")
	f.StringVar(&in.crop, "crop", "lettuce", "`crop` whose target to reach; a wrong name lists them")
	f.Float64Var(&in.target, "target", math.NaN(), "daily light wanted, `mol/(m² d)`, in place of the crop's")
	f.Float64Var(&in.ppfd, "ppfd", 200, "light of the lamps on the bed, `µmol/(m² s)`")
	f.Float64Var(&in.transmittance, "transmittance", 0.62, "`fraction` of the light outside that reaches the bed")
	f.Float64Var(&in.perJoule, "per-joule", lighting.DaylightFaust, "photons of 400-700 nm in a joule of global radiation, `µmol/J`")
	f.Float64Var(&in.from, "from", 3, "`hour` of the day from which lamps may burn, local standard time")
	f.Float64Var(&in.until, "until", 21, "`hour` of the day until which they may; before -from it is the next morning's")
	f.Float64Var(&in.off, "off-above", 300, "daylight on the bed above which lamps are off, `µmol/(m² s)`")
	f.Float64Var(&in.efficacy, "efficacy", demo.FixturePPF/demo.FixtureW, "photons of the fixtures for their power, `µmol/J`")
	f.Float64Var(&in.onBed, "on-bed", 0.85, "`fraction` of the lamps' photons that lands on the bed")
	f.Float64Var(&in.area, "area", demo.BedLength*demo.BedWidth, "area of the bed, `m²`")
	f.Float64Var(&in.price, "price", demo.ElectricPrice, "price of electricity, `currency` per kWh")
	f.StringVar(&in.global, "global", "", "`file` with a year of hourly global radiation, W/m², a number a line; - is standard input")
	figure := f.String("figure", "", "draw the year day by day to this .svg, .png or .pdf `file`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		r, err := in.solve(f.Given("target"), stdin)
		if err == nil && *figure != "" {
			err = draw(*figure, r, in.global == "")
		}
		if err != nil {
			return nil, err
		}
		return write(in, r), nil
	})
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
func (in input) allowed() float64 {
	if in.from > in.until {
		return 24 - in.from + in.until
	}
	return in.until - in.from
}

var rangeArea = domain.Range{Min: 0.01, Max: 1e6, Unit: "m²"}

func (in input) solve(targetGiven bool, stdin io.Reader) (r result, err error) {
	var ok bool
	if r.crop, ok = lighting.FindCropLight(in.crop); !ok {
		var names []string
		for _, c := range lighting.CropLights() {
			names = append(names, fmt.Sprintf("%q", c.Name))
		}
		return r, fmt.Errorf("no crop %q; there are: %s", in.crop, strings.Join(names, ", "))
	}
	r.target = in.target
	if !targetGiven {
		r.target = r.crop.Target
		if math.IsNaN(r.target) {
			r.target = r.crop.Min
		}
	}
	global, err := in.hours(stdin)
	if err != nil {
		return r, err
	}
	hour := func(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
	season := lighting.LightingSeason{Global: global, PerJoule: in.perJoule, Transmittance: in.transmittance, Target: r.target, PPFD: in.ppfd,
		From: hour(in.from), Until: hour(in.until), OffAbove: in.off}
	clock := domain.Range{Min: 0, Max: 24, Unit: "h"}
	err = errors.Join(clock.Check("from", in.from), clock.Check("until", in.until), rangeArea.Check("area", in.area),
		(domain.Range{Min: 0, Max: 1000, Unit: "currency per kWh"}).Check("price", in.price))
	if r.power = lighting.PowerDensity(in.ppfd, in.efficacy, in.onBed); math.IsNaN(r.power) {
		err = errors.Join(err, fmt.Errorf("ppfd %g, efficacy %g, on-bed %g: at least 0, above 0, above 0 to 1", in.ppfd, in.efficacy, in.onBed))
	}
	year, seasonErr := season.Solve()
	if err = errors.Join(err, seasonErr); err != nil {
		return r, err
	}
	r.year = year
	w := r.power * in.area
	r.energy, err = lighting.EnergyInput{Power: w, PPF: w * in.efficacy, PerJoule: photonsPerJoule, Level: 1, Run: year.Burn, Price: in.price}.Solve()
	return r, err
}

// photonsPerJoule is of a white and red LED spectrum, µmol/J; common practice,
// no source.
const photonsPerJoule = 4.9

// hours returns the year.
func (in input) hours(stdin io.Reader) ([]float64, error) {
	switch in.global {
	case "":
		return year.Demo().Sun, nil
	case "-":
		return readYear(stdin)
	}
	file, err := os.Open(in.global)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return readYear(file)
}
