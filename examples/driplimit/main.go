// Command driplimit prints when a cover drips: for a range of outside
// temperatures and inside humidities, the temperature of its inner face, the
// humidity at which condensation begins, and how much water then forms.
//
//	go run ./examples/driplimit
//	go run ./examples/driplimit -cover glass -inside 18 -outside 5,0,-5
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/internal/program"
	"cloche.example/psychro"
)

// covers are the ready-made ones, by the name that -cover takes.
var covers = []struct {
	name string
	make func() envelope.Cover
}{
	{"film", envelope.SingleFilm},
	{"infrared-film", envelope.SingleInfraredFilm},
	{"two-films", envelope.DoubleFilm},
	{"two-infrared-films", envelope.DoubleInfraredFilm},
	{"glass", envelope.SingleGlass},
	{"two-panes", envelope.DoubleGlass},
	{"twin-wall-6", envelope.TwinWall6},
	{"twin-wall-10", envelope.TwinWall10},
	{"triple-wall-16", envelope.TripleWall16},
}

// house is what the user may set.
type house struct {
	cover                  string
	inside                 float64   // °C
	outside, humidity      []float64 // °C, fraction
	outsideHumidity, cloud float64   // fraction
	wind, tilt, height     float64   // m/s, degree, m
	altitude               float64   // m
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	h := house{outside: []float64{10, 5, 0, -5, demo.OutsideDesign}, humidity: []float64{0.5, 0.6, 0.7, demo.InsideRH, 0.85, 0.9, 0.95}}
	f := program.New("driplimit", "driplimit prints when a cover drips, at night, over outside temperature and inside humidity.")
	f.StringVar(&h.cover, "cover", "film", "one of "+names())
	f.Float64Var(&h.inside, "inside", demo.Inside, "inside air, `°C`")
	f.Float64Var(&h.outsideHumidity, "outside-rh", demo.OutsideRH, "relative humidity outside, `fraction`")
	f.Float64Var(&h.cloud, "cloud", demo.CloudCover, "`fraction` of the sky under low cloud")
	f.Float64Var(&h.wind, "wind", demo.Wind, "wind at the cover, `m/s`")
	f.Float64Var(&h.tilt, "tilt", 29, "tilt of the cover, `degree` from flat")
	f.Float64Var(&h.height, "slope", 3.7, "length of the cover along its slope, `m`")
	f.Float64Var(&h.altitude, "altitude", demo.Altitude, "altitude above sea level, `m`")
	f.Numbers(&h.outside, "outside", "outside temperatures, `°C`, separated by commas")
	f.Numbers(&h.humidity, "rh", "inside relative humidities, `fractions`, separated by commas")
	return f.Run(args, out, problems, func() (io.WriterTo, error) { return h.report() })
}

func names() string {
	var all []string
	for _, c := range covers {
		all = append(all, c.name)
	}
	return strings.Join(all, ", ")
}

func (h house) find() (envelope.Cover, error) {
	for _, c := range covers {
		if c.name == h.cover {
			return c.make(), nil
		}
	}
	return envelope.Cover{}, fmt.Errorf("-cover: %q is none of %s", h.cover, names())
}

// pressure is that of the standard atmosphere at the house.
func (h house) pressure() (float64, error) {
	return psychro.StandardPressure(h.altitude), (domain.Range{Min: -500, Max: 11000, Unit: "m", Source: "ASHRAE Fundamentals 2017 ch. 1 eq. 3"}).Check("altitude", h.altitude)
}
