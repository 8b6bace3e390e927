// Command moistair prints the whole state of moist air from any two inputs, at
// several pressures side by side, and draws it on a psychrometric chart. With a
// plan it takes the site's pressure and, without inputs, the air that the plan
// holds.
//
//	go run ./examples/moistair
//	go run ./examples/moistair -plan house.json t=21 rh=0.6
//	go run ./examples/moistair -p 101325,95000 t=21 rh=0.6
//	go run ./examples/moistair t=21 rh=0.6 -to t=35,w=0.009 -figure air.svg
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// job is what the command line asks for.
type job struct {
	model     psychro.Model
	pressures []float64 // Pa
	from, to  given     // to may be empty
	note      string
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	f := frame.New("moistair", "moistair [options] NAME=VALUE NAME=VALUE prints the state of moist air from two inputs:\n"+inputHelp()+
		"\nAs in: moistair -p 101325,95000 t=21 rh=0.6\n", "the first state, and the way to the second,")
	f.Words = 100 // read tells what is wrong with them
	var pressures, altitudes []float64
	f.Numbers(&pressures, "p", "pressures, `Pa`, between commas; without them that of the plan's site, or at sea level")
	f.Numbers(&altitudes, "altitude", "altitudes, `m`, -500 to 11000, between commas, in place of pressures, standard atmosphere")
	ideal := f.Bool("ideal", false, "the handbook's ideal form in place of real gas")
	to := f.String("to", "", "a second `state` at the same pressures, as in t=35,w=0.009: prints the change")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		j := job{pressures: pressures}
		if *ideal {
			j.model = psychro.IdealGas
		}
		if f.Given("p") && f.Given("altitude") {
			return frame.Answer{}, errors.New("give -p or -altitude, not both")
		}
		for _, z := range altitudes {
			if err := (domain.Range{Min: -500, Max: 11000, Unit: "m", Source: "ASHRAE Fundamentals 2017 ch. 1 eq. 3"}).Check("-altitude", z); err != nil {
				return frame.Answer{}, err
			}
			j.pressures = append(j.pressures, psychro.StandardPressure(z))
		}
		inputs, site := f.Args(), fromplan.Pressure(&p.Plan)
		planned := f.Given("plan")
		if len(inputs) == 0 && *to == "" {
			held := p.SetPoints.WinterNight
			inputs = []string{fmt.Sprintf("t=%g", held.Temperature), fmt.Sprintf("rh=%g", held.RelativeHumidity)}
			j.note = p.Note
			if len(j.pressures) == 0 && !planned {
				j.note += " It is shown at sea level, at its site, and at 2000 m."
				j.pressures = []float64{constant.StandardPressure, site, psychro.StandardPressure(2000)}
			}
		}
		if len(j.pressures) == 0 {
			j.pressures = []float64{constant.StandardPressure}
			if planned {
				j.pressures[0] = site
			}
		}
		var err error
		if j.from, err = read(inputs); err != nil {
			return frame.Answer{}, err
		}
		if *to != "" {
			if j.to, err = read(strings.Split(*to, ",")); err != nil {
				return frame.Answer{}, err
			}
		}
		return j.do()
	})
}

func (j job) do() (frame.Answer, error) {
	states, err := j.states(j.from)
	if err != nil {
		return frame.Answer{}, err
	}
	var ends []psychro.State
	if j.to.name != "" {
		if ends, err = j.states(j.to); err != nil {
			return frame.Answer{}, fmt.Errorf("-to: %w", err)
		}
	}
	picture := func(format string) (io.WriterTo, error) {
		var end *psychro.State
		if ends != nil {
			end = &ends[0]
		}
		return drawChart(format, states[0], end)
	}
	return frame.Answer{Text: j.report(states, ends), Data: data(states, ends), Draw: picture}, nil
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
