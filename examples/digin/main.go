// Command digin tells what digging the demo house into the ground saves: the
// floor goes down while the room under the roof stays the same, so that cover
// gives way to buried wall. Each depth is shown bare and with its edge or
// buried wall insulated, on the design night and over the year.
//
//	go run ./examples/digin
//	go run ./examples/digin -soil sand -insulation 2.5
package main

import (
	"io"
	"os"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// choice is what the user may set.
type choice struct {
	inside, outside, mean, swing, insulation float64
	soil                                     string
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var c choice
	f := program.New("digin", "digin tells what digging the demo house into the ground saves.")
	f.Float64Var(&c.inside, "inside", demo.Inside, "inside air, day and night, `°C`")
	f.Float64Var(&c.outside, "outside", demo.OutsideDesign, "outside air on the design night, `°C`")
	f.Float64Var(&c.mean, "mean", 8.5, "annual mean of the outside air, `°C`")
	f.Float64Var(&c.swing, "swing", 10, "swing of its monthly means, `K`")
	f.Float64Var(&c.insulation, "insulation", 1.5, "resistance of edge or wall insulation, `m² K/W`")
	f.StringVar(&c.soil, "soil", "clay", "`clay`, sand or rock")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		rows, sky, err := compare(c)
		if err != nil {
			return nil, err
		}
		return strings.NewReader(write(c, sky, rows)), nil
	})
}
