// Command covers compares covers and combinations of covers for one house:
// what the house loses on the design night, what share goes to the sky, at
// which humidity it drips, and how much light it lets in.
//
//	go run ./examples/covers
//	go run ./examples/covers -outside -20 -cloud 0.5
//	go run ./examples/covers -figure covers.png
package main

import (
	"io"
	"os"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// night is what the user may set.
type night struct {
	inside, humidity, outside, outsideHumidity, wind, cloud float64
	figure                                                  string
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var n night
	f := program.New("covers", "covers compares covers of the demo house on one night.")
	f.Float64Var(&n.inside, "inside", demo.Inside, "inside air, `°C`")
	f.Float64Var(&n.humidity, "humidity", demo.InsideRH, "relative humidity inside, `fraction`")
	f.Float64Var(&n.outside, "outside", demo.OutsideDesign, "outside air, `°C`")
	f.Float64Var(&n.outsideHumidity, "outside-humidity", demo.OutsideRH, "relative humidity outside, `fraction`")
	f.Float64Var(&n.wind, "wind", demo.Wind, "wind at the cover, `m/s`")
	f.Float64Var(&n.cloud, "cloud", demo.CloudCover, "cloud cover, `fraction`")
	f.StringVar(&n.figure, "figure", "", "write a picture of the losses to this `file` (.png, .svg or .pdf)")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		t, err := compare(n)
		if err == nil && n.figure != "" {
			err = draw(n.figure, t)
		}
		if err != nil {
			return nil, err
		}
		return strings.NewReader(write(t)), nil
	})
}
