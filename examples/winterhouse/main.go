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
	"fmt"
	"io"
	"os"

	"cloche.example/internal/program"
)

//go:embed plan.json
var demoPlan []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status. Nothing is
// printed to out before all is computed.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := program.New("winterhouse", "winterhouse designs a small heated greenhouse from a plan.")
	f.Between = "\n  "
	file := f.String("plan", "", "read the plan from this `file`, - for standard input; without it the demo house")
	printPlan := f.Bool("print-plan", false, "write the demo plan to start from")
	asJSON := f.Bool("json", false, "print every computed figure as JSON")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		if *printPlan {
			return bytes.NewReader(demoPlan), nil
		}
		p, err := load(*file, in)
		if err != nil {
			return nil, err
		}
		d, err := compute(p)
		if err != nil {
			return nil, fmt.Errorf("the plan can be read but not computed: %w", err)
		}
		if !*asJSON {
			return d.text(p), nil
		}
		text, err := json.MarshalIndent(d, "", "  ")
		return bytes.NewBuffer(append(text, '\n')), err
	})
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
		// Opening a pipe that nobody writes to would hang.
		if info, err := os.Stat(file); err != nil {
			return plan{}, err
		} else if !info.Mode().IsRegular() {
			return plan{}, fmt.Errorf("%s is no file; - reads standard input", file)
		}
		f, err := os.Open(file)
		if err != nil {
			return plan{}, err
		}
		defer f.Close()
		r = f
	}
	p, err := decode(r)
	if err != nil {
		return p, fmt.Errorf("plan %s: %w", file, err)
	}
	return p, nil
}
