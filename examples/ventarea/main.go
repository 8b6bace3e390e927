// Command ventarea prints how much vent area a house needs over sun and wind
// to stay within an allowed temperature rise, side and ridge vents growing
// together.
//
//	go run ./examples/ventarea
//	go run ./examples/ventarea -rise 3 -transpired 0.3 -outside 32
package main

import (
	"io"
	"os"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// house is what the user may set.
type house struct {
	floor, low, high, share           float64 // m², m, m, fraction of the vent area at the side
	discharge, windward, lee          float64
	loss, absorbed, transpired        float64
	outside, pressure, rise, volumeOf float64
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var h house
	f := program.New("ventarea", "ventarea prints the vent area the demo house needs, over sun and wind.")
	f.Float64Var(&h.floor, "floor", demo.Span*demo.Length, "floor area, `m²`")
	f.Float64Var(&h.volumeOf, "mean-height", 0.5*(demo.EaveHeight+demo.RidgeHeight)+demo.Depth, "mean height of the air space, `m`")
	f.Float64Var(&h.low, "low", 0.8, "middle of the side vents above grade, `m`")
	f.Float64Var(&h.high, "high", 2.9, "middle of the ridge vents above grade, `m`")
	f.Float64Var(&h.share, "side-share", 0.5, "`fraction` of the vent area that is at the side")
	f.Float64Var(&h.discharge, "discharge", 0.6, "discharge coefficient on the free area, `dimensionless`")
	f.Float64Var(&h.windward, "cp-side", 0.1, "wind pressure coefficient of the side vents, `dimensionless`")
	f.Float64Var(&h.lee, "cp-ridge", -0.4, "wind pressure coefficient of the ridge vents, `dimensionless`")
	f.Float64Var(&h.loss, "loss", 900, "conductance of cover and ground, `W/K`")
	f.Float64Var(&h.absorbed, "absorbed", 0.65, "`fraction` of the sun outside that the house absorbs")
	f.Float64Var(&h.transpired, "transpired", 0.5, "`fraction` of it that goes to transpiration")
	f.Float64Var(&h.outside, "outside", 27, "outside air, `°C`")
	f.Float64Var(&h.pressure, "pressure", 97300, "air pressure, `Pa`")
	f.Float64Var(&h.rise, "rise", 4, "allowed temperature rise, `K`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) { return h.report() })
}
