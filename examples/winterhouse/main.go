// Command winterhouse designs a small heated greenhouse for the coldest night
// and for a summer noon, from a plan.
//
//	go run ./examples/winterhouse
//	go run ./examples/winterhouse -print-plan > mine.json
//	go run ./examples/winterhouse -plan mine.json
//	go run ./examples/winterhouse -plan - -json < mine.json
package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

//go:embed plan.json
var demoPlan []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status. Nothing is
// printed to out before all is computed.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := flag.NewFlagSet("winterhouse", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	file := f.String("plan", "", "read the plan from this `file`, - for standard input; without it the demo house")
	printPlan := f.Bool("print-plan", false, "write the demo plan to start from")
	asJSON := f.Bool("json", false, "print every computed figure as JSON")
	fail := func(err error) int {
		fmt.Fprintln(problems, "winterhouse:", err)
		return 2
	}
	if err := f.Parse(args); errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(out, "winterhouse designs a small heated greenhouse from a plan.")
		f.SetOutput(out)
		f.PrintDefaults()
		return 0
	} else if err != nil {
		return fail(err)
	}
	if f.NArg() > 0 {
		return fail(fmt.Errorf("%q is not understood; -h explains", f.Arg(0)))
	}
	if *printPlan {
		_, err := out.Write(demoPlan)
		if err != nil {
			return fail(err)
		}
		return 0
	}
	p, err := load(*file, in)
	if err != nil {
		return fail(err)
	}
	d, err := compute(p)
	if err != nil {
		return fail(fmt.Errorf("the plan can be read but not computed: %w", err))
	}
	text := []byte(d.text(p))
	if *asJSON {
		if text, err = json.MarshalIndent(d, "", "  "); err != nil {
			return fail(err)
		}
		text = append(text, '\n')
	}
	if _, err := out.Write(text); err != nil {
		return fail(err)
	}
	return 0
}

// load reads and checks the plan.
func load(file string, in io.Reader) (plan, error) {
	r := in
	switch file {
	case "":
		r = bytes.NewReader(demoPlan)
	case "-":
		file = "standard input"
	default:
		f, err := os.Open(file)
		if err != nil {
			return plan{}, err
		}
		defer f.Close()
		if info, err := f.Stat(); err != nil {
			return plan{}, err
		} else if !info.Mode().IsRegular() {
			return plan{}, fmt.Errorf("%s is no file", file)
		}
		r = f
	}
	p, err := decode(r)
	if err != nil {
		return p, fmt.Errorf("plan %s: %w", file, err)
	}
	return p, nil
}
