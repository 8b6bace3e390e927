// Package frame is what the example programs share: the plan of a house comes
// in, flags change single figures of it, and the answer goes out as text, as
// JSON or as a picture.
package frame

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strconv"
	"strings"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/program"
)

// Version is that of the JSON which the programs print. It changes when a key
// is taken away or means something else, not when one is added.
const Version = 1

// Frame is a program on a plan. Set its own flags with the methods of the
// FlagSet.
type Frame struct {
	*program.Program
	Words int // words allowed beside the flags

	plan, figure         *string
	json, explain, print *bool
	changes              []plan.Figure
	flags                map[string]string // of the flag that changes a key, by the key's path
}

// Answer is what a program found.
type Answer struct {
	Text     io.WriterTo                              // the report
	Data     any                                      // marshalled under "answer": every figure, its unit in the key
	Warnings []string                                 // what the reader should not miss; also in Text
	Draw     func(format string) (io.WriterTo, error) // draws svg, png or pdf; nil for a program without a picture
}

// New returns a program of that name; about is the sentence that -h prints
// above the flags. picture says what -figure draws; empty for a program
// without.
func New(name, about, picture string) *Frame {
	f := &Frame{Program: program.New(name, about), flags: map[string]string{}}
	f.plan = f.String("plan", "", "read the house from this plan, a `file` of JSON, - for standard input; without it the invented demo house")
	f.json = f.Bool("json", false, "print JSON: version, plan with all defaults, answer, warnings")
	f.explain = f.Bool("explain", false, "print every key of a plan with its unit, range, default and meaning; a word after it chooses sections")
	f.print = f.Bool("print-plan", false, "write the plan with every key and the flags' changes, to start from")
	f.figure = new(string)
	if picture != "" {
		f.figure = f.String("figure", "", "draw "+picture+" to this `file`, .svg, .png or .pdf")
	}
	return f
}

// Figure defines a flag that changes the number of the plan's key at path. Its
// help shows the unit, the range and the demo house's value.
func (f *Frame) Figure(name, path, usage string) {
	for _, k := range plan.Keys() {
		if k.Path != path {
			continue
		}
		f.flags[path] = name
		unit := k.Unit
		if unit == "" {
			unit = "number"
		}
		f.Func(name, fmt.Sprintf("%s, `%s`, %g to %g, in place of the plan's", usage, unit, k.Min, k.Max), func(s string) error {
			v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
			if err != nil {
				return fmt.Errorf("%q is not a number", s)
			}
			f.changes = append(f.changes, plan.Figure{Path: path, Value: v})
			return nil
		})
		return
	}
	panic("frame: no key " + path) // a program's own mistake; its first run shows it
}

// Word defines a flag that changes the text of the plan's key at path.
func (f *Frame) Word(name, path, usage string) {
	f.flags[path] = name
	f.Func(name, usage+", in place of the plan's", func(s string) error {
		f.changes = append(f.changes, plan.Figure{Path: path, Value: s})
		return nil
	})
}

// Run parses args, reads the plan, changes it by the flags, and prints what
// solve answers. Wrong input is one line on problems with nothing on out. An
// interrupt ends the context. The result is the exit status.
func (f *Frame) Run(args []string, in io.Reader, out, problems io.Writer, solve func(context.Context, plan.Filled) (Answer, error)) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	f.MostWords = max(f.Words, 1) // one after -explain
	return f.Program.Run(args, out, problems, func() (io.WriterTo, error) {
		if *f.explain {
			var b bytes.Buffer
			err := plan.Explain(&b, f.Arg(0))
			return &b, err
		}
		if f.NArg() > f.Words {
			return nil, fmt.Errorf("%q is not understood; -h explains", f.Arg(f.Words))
		}
		format := ""
		if *f.figure != "" {
			var err error
			if format, err = program.PictureFormat(*f.figure); err != nil {
				return nil, err
			}
		}
		p, err := f.read(in)
		if err != nil {
			return nil, err
		}
		if *f.print {
			return bytes.NewReader(p.Text()), nil
		}
		a, err := solve(ctx, p)
		if ctx.Err() != nil {
			return nil, errors.New("interrupted")
		}
		if err != nil {
			return nil, f.named(err)
		}
		if format != "" {
			picture, err := a.Draw(format)
			if err != nil {
				return nil, fmt.Errorf("-figure %q: %w", *f.figure, err)
			}
			if err := program.WritePicture(*f.figure, picture); err != nil {
				return nil, err
			}
		}
		if *f.json {
			return f.encode(p, a)
		}
		return a.Text, nil
	})
}

// read returns the plan that was named, or the demo, with the flags' changes.
func (f *Frame) read(in io.Reader) (p plan.Filled, err error) {
	p = plan.Demo()
	if *f.plan != "" {
		if p, err = plan.Open(*f.plan, in); err != nil {
			return p, err
		}
	}
	if len(f.changes) == 0 {
		return p, nil
	}
	changed, err := p.With(f.changes...)
	return changed, f.named(err)
}

// named puts the flag beside each key that the user gave by a flag.
func (f *Frame) named(err error) error {
	if err == nil {
		return nil
	}
	text := err.Error()
	for _, c := range f.changes {
		text = strings.ReplaceAll(text, c.Path, "-"+f.flags[c.Path])
	}
	if text == err.Error() {
		return err
	}
	return fmt.Errorf("%s", text)
}

// document is what -json prints.
type document struct {
	Program  string    `json:"program"`
	Version  int       `json:"version"`
	Plan     plan.Plan `json:"plan"`
	Defaults []string  `json:"defaults_taken"`
	Answer   any       `json:"answer"`
	Warnings []string  `json:"warnings"`
}

func (f *Frame) encode(p plan.Filled, a Answer) (io.WriterTo, error) {
	d := document{Program: f.Name(), Version: Version, Plan: p.Plan, Defaults: []string{}, Answer: a.Data, Warnings: a.Warnings}
	for _, one := range p.Defaults {
		d.Defaults = append(d.Defaults, one.String())
	}
	if d.Warnings == nil {
		d.Warnings = []string{}
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(d); err != nil {
		return nil, fmt.Errorf("a figure has no JSON form: %w", err)
	}
	return &b, nil
}
