// Command colddraught tells how cold the air is that falls on the crop from
// the vents of the demo house in winter, when the ridge vents open first and
// when the side vents do, and how far each may open.
//
//	go run ./examples/colddraught
//	go run ./examples/colddraught -limit 12 -outside -15,-5,5 -figure path.svg
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strconv"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
	"cloche.example/psychro"
)

// choice is what the user may set.
type choice struct {
	inside, limit, crop, wind, pressure float64
	side, ridge, length, leak, volume   float64
	air                                 float64
	outside, opened                     []float64
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var c choice
	f := program.New("colddraught", "colddraught tells how cold the air is that falls on the crop from ridge and side vents.")
	f.Float64Var(&c.inside, "inside", demo.Inside, "house air, `°C`")
	f.Float64Var(&c.limit, "limit", 10, "chill limit of the crop, `°C`")
	f.Float64Var(&c.crop, "crop", 0.3, "top of the crop above outside grade, `m`")
	f.Float64Var(&c.wind, "wind", 0, "wind at ridge height, `m/s`")
	f.Float64Var(&c.pressure, "pressure", math.Round(psychro.StandardPressure(demo.Altitude)), "air pressure, `Pa`")
	f.Float64Var(&c.side, "side", 2.4, "free area of the side vents wide open, `m²`")
	f.Float64Var(&c.ridge, "ridge", 2.4, "free area of the ridge vents wide open, `m²`")
	f.Float64Var(&c.length, "length", 6, "length of each run of vents, `m`")
	f.Float64Var(&c.leak, "leak", 0.02, "leakage low and as much high, `m³/s` at 1 Pa")
	f.Float64Var(&c.volume, "volume", demo.Span*demo.Length*(0.5*(demo.EaveHeight+demo.RidgeHeight)+demo.Depth), "air in the house, `m³`")
	f.Float64Var(&c.air, "air", 500, "air wanted, as for drying, `m³/h` of outside air")
	outside := f.String("outside", "-10,-5,0,5", "outside air, `°C` between commas")
	opened := f.String("opened", "5,10,25,50,100", "openings of the first vents, `per cent` between commas")
	figure := f.String("figure", "", "draw the fall at the coldest outside and the last opening to this .svg, .png or .pdf `file`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		var err error
		if c.outside, err = numbers("-outside", *outside); err != nil {
			return nil, err
		}
		if c.opened, err = numbers("-opened", *opened); err != nil {
			return nil, err
		}
		h, err := c.house()
		if err != nil {
			return nil, err
		}
		r, err := h.report()
		if err == nil && *figure != "" {
			err = h.draw(*figure)
		}
		return r, err
	})
}

// numbers reads a list.
func numbers(name, list string) ([]float64, error) {
	var all []float64
	for _, s := range strings.Split(list, ",") {
		v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		if err != nil {
			return nil, fmt.Errorf("%s %q: numbers between commas, please", name, list)
		}
		all = append(all, v)
	}
	return all, nil
}
