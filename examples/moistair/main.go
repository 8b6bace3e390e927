// Command moistair prints the whole state of moist air from any two inputs, at
// several pressures side by side, and draws it on a psychrometric chart.
//
//	go run ./examples/moistair
//	go run ./examples/moistair -p 101325,95000 t=21 rh=0.6
//	go run ./examples/moistair -to t=35,w=0.009 -chart air.svg t=21 rh=0.6
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"cloche.example/internal/demo"
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
	j, err := parse(args, out)
	if errors.Is(err, flag.ErrHelp) {
		return 0
	}
	if err == nil {
		err = j.do(out)
	}
	if err != nil {
		fmt.Fprintln(problems, "moistair: "+strings.ReplaceAll(err.Error(), "\n", "; "))
		return 2
	}
	return 0
}

func (j job) do(out io.Writer) error {
	states, err := j.states(j.from)
	if err != nil {
		return err
	}
	var ends []psychro.State
	if j.to.name != "" {
		if ends, err = j.states(j.to); err != nil {
			return fmt.Errorf("-to: %w", err)
		}
	}
	if j.chart != "" {
		var end *psychro.State
		if ends != nil {
			end = &ends[0]
		}
		if err := drawChart(j.chart, states[0], end); err != nil {
			return err
		}
	}
	_, err = j.report(states, ends).WriteTo(out)
	return err
}

func parse(args []string, out io.Writer) (job, error) {
	var j job
	set := flag.NewFlagSet("moistair", flag.ContinueOnError)
	set.SetOutput(io.Discard)
	set.Usage = func() {}
	p := set.String("p", "", "pressures, `Pa`, separated by commas (default 101325)")
	altitude := set.String("altitude", "", "altitudes, `m`, in place of pressures, standard atmosphere")
	ideal := set.Bool("ideal", false, "the handbook's ideal form in place of real gas")
	to := set.String("to", "", "a second `state` at the same pressures, as in t=35,w=0.009: prints the change")
	set.StringVar(&j.chart, "chart", "", "draw the first state, and the way to the second, into this .svg or .png `file`")
	if err := set.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(out, "moistair [options] NAME=VALUE NAME=VALUE prints the state of moist air from two inputs:")
			fmt.Fprintln(out, inputHelp())
			set.SetOutput(out)
			set.PrintDefaults()
			fmt.Fprintln(out, "As in: moistair -p 101325,95000 t=21 rh=0.6")
		}
		return j, err
	}
	if *ideal {
		j.model = psychro.IdealGas
	}
	var err error
	switch {
	case *p != "" && *altitude != "":
		return j, errors.New("give -p or -altitude, not both")
	case *altitude != "":
		heights, err := numbers("-altitude", *altitude)
		if err != nil {
			return j, err
		}
		for _, z := range heights {
			if err := psychro.Altitudes.Check("altitude", z); err != nil {
				return j, err
			}
			j.pressures = append(j.pressures, psychro.StandardPressure(z))
		}
	case *p != "":
		if j.pressures, err = numbers("-p", *p); err != nil {
			return j, err
		}
	default:
		j.pressures = []float64{101325}
	}
	inputs := set.Args()
	if len(args) == 0 || len(inputs) == 0 && *to == "" {
		j.demo = true
		inputs = []string{fmt.Sprintf("t=%g", demo.Inside), fmt.Sprintf("rh=%g", demo.InsideRH)}
		if *p == "" && *altitude == "" {
			j.pressures = append(j.pressures, psychro.StandardPressure(demo.Altitude), psychro.StandardPressure(2000))
		}
	}
	if j.from, err = read(inputs); err != nil {
		return j, err
	}
	if *to != "" {
		j.to, err = read(strings.Split(*to, ","))
	}
	return j, err
}

func numbers(name, list string) ([]float64, error) {
	var out []float64
	for _, s := range strings.Split(list, ",") {
		v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		if err != nil {
			return nil, fmt.Errorf("%s: %q is not a number", name, s)
		}
		out = append(out, v)
	}
	return out, nil
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
