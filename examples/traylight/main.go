// Command traylight maps the light on a bed of trays under rows of fixtures:
// the map and its evenness, whether the spots meet, what reaches bed, aisles
// and walls, the day's photons against crops' needs, other hanging heights,
// power, heat and cost.
//
//	go run ./examples/traylight
//	go run ./examples/traylight -height 0.8 -beam 90
//	go run ./examples/traylight -figure traylight.png
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"cloche.example/internal/demo"
	"cloche.example/lighting"
)

// input is what the user may set.
type input struct {
	length, width, height float64 // m
	rows, perRow          int
	ppf, watts, beam      float64 // µmol/s, W, degree
	hours, price          float64 // h a day, currency per kWh
	maintenance           float64 // fraction
	figure                string
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var in input
	f := flag.NewFlagSet("traylight", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Float64Var(&in.length, "length", demo.BedLength, "length of the bed, `m`")
	f.Float64Var(&in.width, "width", demo.BedWidth, "width of the bed, `m`")
	f.Float64Var(&in.height, "height", demo.LampHeight, "height of the fixtures above the trays, `m`")
	f.IntVar(&in.rows, "rows", demo.FixtureRows, "rows of fixtures along the bed, `count`")
	f.IntVar(&in.perRow, "per-row", demo.Fixtures/demo.FixtureRows, "fixtures in a row, `count`")
	f.Float64Var(&in.ppf, "ppf", demo.FixturePPF, "photon flux of a fixture, `µmol/s`")
	f.Float64Var(&in.watts, "watts", demo.FixtureW, "power of a fixture with its driver, `W`")
	f.Float64Var(&in.beam, "beam", demo.BeamAngle, "beam angle, the full angle at half intensity, `degree`")
	f.Float64Var(&in.hours, "hours", demo.Photoperiod, "lit `hours` a day")
	f.Float64Var(&in.price, "price", demo.ElectricPrice, "price of electricity, `currency` per kWh")
	f.Float64Var(&in.maintenance, "maintenance", 0.9, "`fraction` of the first day's light left at harvest")
	f.StringVar(&in.figure, "figure", "", "write a picture of the map to this `file` (.png, .svg or .pdf)")
	if err := f.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(out, "traylight maps the light on a bed of trays under rows of fixtures.")
			f.SetOutput(out)
			f.PrintDefaults()
			return 0
		}
		fmt.Fprintln(problems, "traylight:", err)
		return 2
	}
	if f.NArg() > 0 {
		fmt.Fprintf(problems, "traylight: %q is not understood; -h explains\n", f.Arg(0))
		return 2
	}
	r, err := in.solve()
	if err == nil && in.figure != "" {
		err = drawMap(in.figure, r)
	}
	if err != nil {
		fmt.Fprintln(problems, "traylight:", strings.ReplaceAll(err.Error(), "\n", "; "))
		return 2
	}
	write(out, in, r)
	return 0
}

// result is what the report prints.
type result struct {
	light  lighting.CosinePower
	bed    lighting.Bed
	layout lighting.Layout
	points *lighting.Points
	ppfd   []float64 // µmol/(m² s), first day
	stats  lighting.Statistics
	onBed  float64 // fraction of the photons
	energy lighting.Energy
	sweep  []height
}

// height is one line of the height sweep.
type height struct {
	z     float64 // m above the trays
	stats lighting.Statistics
	onBed float64 // fraction
}

// The range of the two inputs that no constructor sees.
var (
	rangeHours       = lighting.Range{Min: 0, Max: 24, Unit: "h"}
	rangeMaintenance = lighting.Range{Min: 0.1, Max: 1, Unit: "fraction"}
)

func (in input) solve() (result, error) {
	var r result
	var lightErr, energyErr error
	r.light, lightErr = lighting.FromBeamAngle(in.ppf, in.beam)
	r.bed = lighting.Bed{Length: in.length, Width: in.width}
	n := float64(in.rows * in.perRow)
	r.energy, energyErr = lighting.EnergyInput{Power: n * in.watts, PPF: n * in.ppf, PerJoule: photonsPerJoule, Level: 1,
		Run: time.Duration(in.hours * float64(time.Hour)), Price: in.price}.Use()
	err := errors.Join(lightErr, r.bed.Check(), rangeHours.Check("hours", in.hours), rangeMaintenance.Check("maintenance", in.maintenance), energyErr)
	if err != nil {
		return r, err
	}
	if r.layout, r.points, r.ppfd, err = in.at(r.light, r.bed, in.height); err != nil {
		return r, err
	}
	if r.stats, err = lighting.Evenness(r.ppfd); err != nil {
		return r, err
	}
	r.onBed = share(r.layout, r.bed)
	for _, k := range []float64{0.5, 0.75, 1, 1.25, 1.5} {
		layout, _, ppfd, err := in.at(r.light, r.bed, k*in.height)
		if err != nil {
			return r, err
		}
		s, err := lighting.Evenness(ppfd)
		if err != nil {
			return r, err
		}
		r.sweep = append(r.sweep, height{k * in.height, s, share(layout, r.bed)})
	}
	return r, nil
}

// photonsPerJoule is of a white and red LED spectrum, µmol/J; common practice,
// no source.
const photonsPerJoule = 4.9

// at hangs the rows at a height, m, and maps them.
func (in input) at(light lighting.CosinePower, bed lighting.Bed, z float64) (lighting.Layout, *lighting.Points, []float64, error) {
	layout, err := lighting.Rows(lighting.Fixture{Light: light, Power: in.watts}, bed, z, in.perRow, in.rows)
	if err != nil {
		return nil, nil, nil, err
	}
	lights, err := lighting.NewLights(layout...)
	if err != nil {
		return nil, nil, nil, err
	}
	points, err := bed.GridFor(z)
	if err != nil {
		return nil, nil, nil, err
	}
	ppfd, err := lights.Map(points)
	return layout, points, ppfd, err
}

// share is the fraction of all photons that falls on the bed directly.
func share(layout lighting.Layout, b lighting.Bed) float64 {
	flux := 0.0
	for _, f := range layout {
		flux += lighting.CosineFlux(f, lighting.Point{}, lighting.Point{X: b.Length}, lighting.Point{X: b.Length, Y: b.Width}, lighting.Point{Y: b.Width})
	}
	return flux / layout.PPF()
}
