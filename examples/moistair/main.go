// Command moistair prints the whole state of moist air from any two inputs, at
// several pressures side by side, and draws it on a psychrometric chart.
//
//	go run ./examples/moistair
//	go run ./examples/moistair -p 101325,95000 t=21 rh=0.6
//	go run ./examples/moistair -to t=35,w=0.009 -chart air.svg t=21 rh=0.6
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/internal/program"
	"cloche.example/internal/report"
	"cloche.example/psychro"
)

// job is what the command line asks for.
type job struct {
	model     psychro.Model
	pressures []float64 // Pa
	from, to  given     // to may be empty
	chart     string
	demo      bool
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	f := program.New("moistair", "moistair [options] NAME=VALUE NAME=VALUE prints the state of moist air from two inputs:\n"+inputHelp()+
		"\nAs in: moistair -p 101325,95000 t=21 rh=0.6\n")
	f.MostWords = 100 // read tells what is wrong with them
	var j job
	pressures, altitudes := []float64{101325}, []float64{0}
	f.Numbers(&pressures, "p", "pressures, `Pa`, separated by commas")
	f.Numbers(&altitudes, "altitude", "altitudes, `m`, in place of pressures, standard atmosphere")
	ideal := f.Bool("ideal", false, "the handbook's ideal form in place of real gas")
	to := f.String("to", "", "a second `state` at the same pressures, as in t=35,w=0.009: prints the change")
	f.StringVar(&j.chart, "chart", "", "draw the first state, and the way to the second, into this .svg or .png `file`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		if *ideal {
			j.model = psychro.IdealGas
		}
		switch {
		case f.Given("p") && f.Given("altitude"):
			return nil, errors.New("give -p or -altitude, not both")
		case f.Given("altitude"):
			for _, z := range altitudes {
				if err := (domain.Range{Min: -500, Max: 11000, Unit: "m", Source: "ASHRAE Fundamentals 2017 ch. 1 eq. 3"}).Check("altitude", z); err != nil {
					return nil, err
				}
				j.pressures = append(j.pressures, psychro.StandardPressure(z))
			}
		default:
			j.pressures = pressures
		}
		inputs := f.Args()
		if len(args) == 0 || len(inputs) == 0 && *to == "" {
			j.demo = true
			inputs = []string{fmt.Sprintf("t=%g", demo.Inside), fmt.Sprintf("rh=%g", demo.InsideRH)}
			if !f.Given("p") && !f.Given("altitude") {
				j.pressures = append(j.pressures, psychro.StandardPressure(demo.Altitude), psychro.StandardPressure(2000))
			}
		}
		var err error
		if j.from, err = read(inputs); err != nil {
			return nil, err
		}
		if *to != "" {
			if j.to, err = read(strings.Split(*to, ",")); err != nil {
				return nil, err
			}
		}
		return j.do()
	})
}

func (j job) do() (*report.Report, error) {
	states, err := j.states(j.from)
	if err != nil {
		return nil, err
	}
	var ends []psychro.State
	if j.to.name != "" {
		if ends, err = j.states(j.to); err != nil {
			return nil, fmt.Errorf("-to: %w", err)
		}
	}
	if j.chart != "" {
		var end *psychro.State
		if ends != nil {
			end = &ends[0]
		}
		if err := drawChart(j.chart, states[0], end); err != nil {
			return nil, err
		}
	}
	return j.report(states, ends), nil
}

func (j job) states(g given) ([]psychro.State, error) {
	var out []psychro.State
	for _, p := range j.pressures {
		s, err := g.state(j.model, p)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}
