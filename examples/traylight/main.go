// Command traylight maps the light on a plan's bed of trays under its lamps: the
// map and its evenness, whether the spots meet, what reaches bed, aisles and
// walls, the day's photons against the crop's need, other heights and other rows,
// power, heat and cost. Lamps are beams, or photometric files with the stated
// photons per lumen.
//
//	go run ./examples/traylight
//	go run ./examples/traylight -plan house.json -figure light.png
//	go run ./examples/traylight -height 0.8 -beam 90
//	go run ./examples/traylight -photometry lamp.ies -per-lumen 0.018
//	go run ./examples/traylight -target 200 -evenness 0.7 -design
package main

import (
	"context"
	"fmt"
	"io"
	"os"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/program"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := frame.New("traylight", "traylight maps the light on a bed of trays under rows of lamps.", "the map")
	f.Figure("length", "lights.bed_length_m", "length of the bed")
	f.Figure("width", "lights.bed_width_m", "width of the bed")
	f.Figure("height", "lights.height_above_trays_m", "height of the lamps above the trays")
	f.Figure("rows", "lights.rows_count", "rows of lamps along the bed")
	f.Figure("per-row", "lights.per_row_count", "lamps in a row")
	f.Figure("target", "lights.target_umol_m2_s", "mean light wanted at harvest; finds the count of lamps")
	f.Figure("evenness", "lights.evenness_fraction", "evenness wanted, least over mean")
	f.Figure("ppf", "lights.ppf_umol_s", "photons of a lamp")
	f.Figure("watts", "lights.power_w", "power of a lamp with its driver")
	f.Figure("beam", "lights.beam_deg", "beam, the full angle at half intensity")
	f.Word("photometry", "lights.photometric_file", "photometric `file` of LM-63 of a lamp")
	f.Figure("per-lumen", "lights.photons_per_lumen_umol_s_lm", "photons in a lumen of the photometric file")
	f.Word("spectrum", "lights.spectrum_file", "`file` of the lamp's spectrum: lines of nm and W/nm, a comma between, in place of -per-lumen")
	f.Figure("photoperiod", "lights.photoperiod_h", "time lit in a day")
	f.Figure("price", "prices.electricity_per_kwh", "price of electricity")
	f.Figure("maintenance", "lights.maintenance_factor", "light left at harvest")
	f.Figure("reflectance", "lights.reflectance_fraction", "light that walls, roof and floor reflect")
	design := f.Bool("design", false, "look for the fewest lamps that reach target and evenness, at any height under the roof; takes a while")
	return f.Run(args, in, out, problems, func(ctx context.Context, p plan.Filled) (frame.Answer, error) {
		assumed := p.Lights == nil
		var err error
		switch {
		case assumed:
			p, err = p.With(plan.Figure{Path: "lights.known_from", Value: "count"})
		case f.Given("target") && !f.Given("rows") && !f.Given("per-row"):
			p, err = p.With(plan.Figure{Path: "lights.known_from", Value: "target"})
		case f.Given("rows") || f.Given("per-row"):
			p, err = p.With(plan.Figure{Path: "lights.known_from", Value: "count"})
		}
		if err != nil {
			return frame.Answer{}, err
		}
		meter := program.NewMeter(problems, "light")
		defer meter.Done()
		r, err := solve(ctx, &p.Plan, meter)
		if err != nil {
			return frame.Answer{}, err
		}
		r.assumed = assumed
		if *design {
			if r.design, err = search(ctx, r, meter); err != nil {
				return frame.Answer{}, fmt.Errorf("-design: %w", err)
			}
		}
		draw := func(format string) (io.WriterTo, error) { return drawMap(ctx, format, r) }
		return frame.Answer{Text: r.write(), Data: r.data(), Warnings: r.warnings(), Draw: draw}, nil
	})
}
