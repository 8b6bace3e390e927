// Command ventarea prints how much vent area a house needs over sun and wind to
// stay within an allowed temperature rise, all its vents growing together.
//
//	go run ./examples/ventarea
//	go run ./examples/ventarea -plan house.json -figure ventarea.svg
//	go run ./examples/ventarea -rise 3 -transpired 0.3 -outside 32
package main

import (
	"context"
	"io"
	"os"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	f := frame.New("ventarea", "ventarea prints the vent area that a house needs, over sun and wind.", "the area over the sun for some winds")
	f.Figure("rise", "set_points.limits.summer_rise_k", "allowed rise of inside over outside")
	f.Figure("outside", "site.summer_noon.temperature_c", "outside air")
	f.Figure("sun", "site.summer_noon.sun_w_m2", "sun on level ground at the noon that the vents are sized for")
	f.Figure("wind", "site.summer_noon.wind_m_s", "wind at ridge height then")
	f.Figure("transpired", "crop.transpired_sun_fraction", "sun in the house that evaporates water")
	f.Figure("altitude", "site.altitude_m", "altitude above sea level")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		n, err := needs(&p.Plan)
		if err != nil {
			return frame.Answer{}, err
		}
		return frame.Answer{Text: n.write(), Data: n.data(), Warnings: n.warnings(), Draw: n.draw}, nil
	})
}
