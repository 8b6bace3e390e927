// Command houseyear solves a plan's house hour by hour on real weather: covers,
// heat, light, air and water together, what it takes and what it costs.
//
//	go run ./examples/houseyear
//	go run ./examples/houseyear -plan mine.json -weather place.csv
//	go run ./examples/houseyear -plan mine.json -lines < changes.jsonl
//	go run ./examples/houseyear -day 01-15 -hours hours.csv -html year.html
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/program"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := program.New("houseyear", "houseyear solves the house of a plan hour by hour on real weather.")
	f.Between = "\n  "
	var o options
	f.StringVar(&o.plan, "plan", "", "read the plan from this `file`, - for standard input; without it the demo house, which is invented")
	f.StringVar(&o.weather, "weather", "", "read hourly weather from this `file`: Cloche's own CSV, TMY3 or an excerpt of it, or a typical year of PVGIS; one that names no site has that of the plan; without it the plan's, and else a typical year of Greensboro, North Carolina")
	f.BoolVar(&o.fill, "fill", false, "fill gaps of at most 3 hours in the weather")
	f.BoolVar(&o.bare, "no-changes", false, "try no changes of the house: one year instead of several")
	f.StringVar(&o.day, "day", "", "print the hours of this `day` too, as in 01-15")
	f.StringVar(&o.hours, "hours", "", "write every hour to this `file`, CSV with units in the header")
	f.StringVar(&o.html, "html", "", "write the report with its pictures to this `file`, one page that needs nothing else")
	f.BoolVar(&o.json, "json", false, "print every figure as JSON")
	f.BoolVar(&o.print, "print-plan", false, "write the plan with every key as the hours see it, its site and months those of the weather, to start from")
	explain := f.Bool("explain", false, "print every key of a plan with its unit, range, default and meaning; a word after it chooses sections")
	f.BoolVar(&o.lines, "lines", false, "read a plan a line from standard input, or with -plan a change to that plan a line, and print a result a line, under one weather and with no changes tried")
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	f.MostWords = 1
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		switch {
		case *explain:
			var b bytes.Buffer
			err := plan.Explain(&b, f.Arg(0))
			return &b, err
		case f.NArg() > 0:
			return nil, fmt.Errorf("%q is not understood; -h explains", f.Arg(0))
		}
		return o.answer(ctx, in, program.Progress(problems))
	})
}

func (o options) answer(ctx context.Context, in io.Reader, progress io.Writer) (io.WriterTo, error) {
	if o.plan == "-" && (o.weather == "-" || o.lines) || o.weather == "-" && o.lines {
		return nil, errors.New("-plan, -weather and -lines: one alone can read standard input")
	}
	if (o.lines || o.print) && (o.hours != "" || o.html != "" || o.day != "" || o.lines && o.print) {
		return nil, errors.New("-lines and -print-plan print nothing else: leave out -hours, -html and -day")
	}
	p := plan.Demo()
	var err error
	if o.plan != "" {
		if p, err = plan.Open(o.plan, in); err != nil {
			return nil, err
		}
	}
	if o.weather == "" {
		o.weather = p.Site.WeatherFile
	}
	s, err := readWeather(o.weather, o.fill, in, &p.Plan)
	if err != nil {
		return nil, err
	}
	if o.print {
		p, err := atSite(p, s)
		return bytes.NewReader(p.Text()), err
	}
	if o.lines {
		return stream{ctx: ctx, base: p, change: o.plan != "", weather: s, in: in}, nil
	}
	a, err := solve(ctx, p, s, o, progress)
	if errors.Is(err, context.Canceled) {
		return nil, errInterrupted
	}
	if err != nil {
		return nil, err
	}
	if o.hours != "" {
		if err := os.WriteFile(o.hours, a.year.table().Bytes(), 0o644); err != nil {
			return nil, fmt.Errorf("-hours: %w", err)
		}
	}
	if o.html != "" {
		if err := program.WritePicture(o.html, a.newPage()); err != nil {
			return nil, fmt.Errorf("-html: %w", err)
		}
	}
	if o.json {
		return a.document()
	}
	return a.text(), nil
}

// errInterrupted ends what the user stopped.
var errInterrupted = errors.New("interrupted")

// version counts changes of the JSON form that can break a reader.
const version = 1

// file is the JSON form.
type file struct {
	Format  string          `json:"format"`
	Version int             `json:"version"`
	Plan    json.RawMessage `json:"plan"`
	Answers *answer         `json:"answers"`
}

func (a *answer) document() (*bytes.Buffer, error) {
	b, err := answers.Encode(file{"houseyear", version, a.filled.Text(), a})
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = json.Indent(&out, b, "", "  ")
	out.WriteByte('\n')
	return &out, err
}
