// Command winterhouse answers what a plan's house does in winter and summer, the
// decisions first.
//
//	go run ./examples/winterhouse
//	go run ./examples/winterhouse -print-plan > mine.json
//	go run ./examples/winterhouse -plan mine.json
//	go run ./examples/winterhouse -plan mine.json -html house.html
//	go run ./examples/winterhouse -plan - -json < mine.json
//	go run ./examples/winterhouse -plan mine.json -lines < changes.jsonl
package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/program"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// options are the flags.
type options struct {
	plan, html                       string
	print, explain, json, lines, try bool
}

// run is main with its streams; the result is the exit status. Nothing is
// printed to out before all is computed, but with -lines, line by line.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := program.New("winterhouse", "winterhouse answers what the house of a plan does in winter and summer.")
	f.Between = "\n  "
	var o options
	f.StringVar(&o.plan, "plan", "", "read the plan from this `file`, - for standard input; without it the demo house")
	f.StringVar(&o.html, "html", "", "write the report with its drawings to this `file`, one page that needs nothing else")
	f.BoolVar(&o.print, "print-plan", false, "write the plan with every key, to start from")
	f.BoolVar(&o.explain, "explain", false, "print every key of a plan with its unit, range, default and meaning; a word after it chooses sections")
	f.BoolVar(&o.json, "json", false, "print every figure as JSON; schema.json beside the program describes it")
	f.BoolVar(&o.lines, "lines", false, "read a plan a line from standard input, or with -plan a change to that plan a line, and print a result a line")
	f.BoolVar(&o.try, "cures", false, "with -lines: try a second film, a screen, digging in and the like too")
	f.MostWords = 1
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		if f.NArg() > 0 && !o.explain {
			return nil, fmt.Errorf("%q is not understood; -h explains", f.Arg(0))
		}
		return o.answer(f.Arg(0), in)
	})
}

func (o options) answer(about string, in io.Reader) (io.WriterTo, error) {
	if o.explain {
		var b bytes.Buffer
		err := plan.Explain(&b, about)
		return &b, err
	}
	if o.lines && o.plan == "-" {
		return nil, errors.New("-lines reads standard input: -plan names a file, or is left out")
	}
	p := plan.Demo()
	if o.plan != "" {
		var err error
		if p, err = plan.Open(o.plan, in); err != nil {
			return nil, err
		}
	}
	switch {
	case o.print:
		return bytes.NewReader(p.Text()), nil
	case o.lines:
		return stream{base: p, change: o.plan != "", cures: o.try, in: in}, nil
	}
	r, err := answers.Of(&p.Plan, true)
	if err != nil {
		return nil, fmt.Errorf("the plan can be read but not computed: %w", err)
	}
	if o.html != "" {
		var b bytes.Buffer
		if _, err := newPage(&p, &r).WriteTo(&b); err != nil {
			return nil, err
		}
		if err := os.WriteFile(o.html, b.Bytes(), 0o644); err != nil {
			return nil, fmt.Errorf("-html: %w", err)
		}
	}
	if o.json {
		return document(&p, &r)
	}
	return text(&p, &r), nil
}
