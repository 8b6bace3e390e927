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
	"io"
	"os"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// The house as a box above the trays, which stand 0.8 m above the floor: half
// way between eaves and ridge. Film lets most light out; common practice, no
// source.
const (
	trayHeight  = 0.8                                                            // m above the floor
	roomHeight  = (demo.EaveHeight+demo.RidgeHeight)/2 + demo.Depth - trayHeight // m
	reflectance = 0.15                                                           // fraction
)

// input is what the user may set.
type input struct {
	length, width, height             float64 // m
	rows, perRow                      int
	ppf, watts, beam                  float64 // µmol/s, W, degree
	hours, price                      float64 // h a day, currency per kWh
	maintenance                       float64 // fraction
	roomLength, roomWidth, roomHeight float64 // m
	reflectance                       float64 // fraction
	figure                            string
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var in input
	f := program.New("traylight", "traylight maps the light on a bed of trays under rows of fixtures.")
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
	f.Float64Var(&in.roomLength, "room-length", demo.Length, "length of the house around the bed, `m`")
	f.Float64Var(&in.roomWidth, "room-width", demo.Span, "width of the house, `m`")
	f.Float64Var(&in.roomHeight, "room-height", roomHeight, "mean height of the house above the trays, `m`")
	f.Float64Var(&in.reflectance, "reflectance", reflectance, "`fraction` of the light that walls, roof and floor reflect")
	f.StringVar(&in.figure, "figure", "", "write a picture of the map to this `file` (.png, .svg or .pdf)")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		r, err := in.solve()
		if err == nil && in.figure != "" {
			err = drawMap(in.figure, r)
		}
		if err != nil {
			return nil, err
		}
		return write(in, r), nil
	})
}
