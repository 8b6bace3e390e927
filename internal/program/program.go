// Package program is the frame of the example programs: flags, help, one clear
// line for a wrong input, and the exit status.
package program

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Exit statuses.
const (
	Done       = 0 // all printed
	NotWritten = 1 // the output could not be written
	WrongInput = 2 // nothing printed but one line that says what is wrong
)

// Program is a program's flags with what its help says. Set flags with the
// methods of the FlagSet.
type Program struct {
	*flag.FlagSet
	MostWords int    // words allowed after the flags
	Between   string // what stands between several faults, "; " from New

	about string
}

// New returns a program of that name; about is the sentence that -h prints
// above the flags.
func New(name, about string) *Program {
	p := &Program{FlagSet: flag.NewFlagSet(name, flag.ContinueOnError), Between: "; ", about: about}
	p.SetOutput(io.Discard)
	return p
}

// Run parses args, calls compute and prints what it returns to out. A wrong
// flag and any error of compute go to problems, and nothing goes to out. The
// result is the exit status.
func (p *Program) Run(args []string, out, problems io.Writer, compute func() (io.WriterTo, error)) int {
	err := p.parse(args)
	if errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(out, p.about)
		p.SetOutput(out)
		p.PrintDefaults()
		return Done
	}
	if err == nil && p.NArg() > p.MostWords {
		err = fmt.Errorf("%q is not understood; -h explains", p.Arg(p.MostWords))
	}
	var text io.WriterTo
	if err == nil {
		text, err = compute()
	}
	if err != nil {
		fmt.Fprintf(problems, "%s: %s\n", p.Name(), strings.ReplaceAll(err.Error(), "\n", p.Between))
		return WrongInput
	}
	if _, err := text.WriteTo(out); err != nil {
		fmt.Fprintf(problems, "%s: %v\n", p.Name(), err)
		return NotWritten
	}
	return Done
}

// parse takes flags before, between and after the words. Two dashes alone end
// the flags.
func (p *Program) parse(args []string) error {
	var words []string
	for {
		if err := p.Parse(args); err != nil {
			return err
		}
		rest := p.Args()
		ended := len(args) > len(rest) && args[len(args)-len(rest)-1] == "--"
		if len(rest) == 0 || ended {
			words = append(words, rest...)
			break
		}
		words, args = append(words, rest[0]), rest[1:]
	}
	return p.Parse(append([]string{"--"}, words...))
}

// Numbers defines a flag of numbers between commas; dst holds its default.
func (p *Program) Numbers(dst *[]float64, name, usage string) {
	shown := strings.Trim(strings.ReplaceAll(fmt.Sprint(*dst), " ", ","), "[]")
	if shown != "" {
		usage += " (default " + shown + ")"
	}
	p.Func(name, usage, func(list string) error {
		*dst = nil
		for _, word := range strings.Split(list, ",") {
			v, err := strconv.ParseFloat(strings.TrimSpace(word), 64)
			if err != nil {
				return fmt.Errorf("%q is not a number", word)
			}
			*dst = append(*dst, v)
		}
		return nil
	})
}

// Given tells whether args set the flag of that name.
func (p *Program) Given(name string) bool {
	given := false
	p.Visit(func(f *flag.Flag) { given = given || f.Name == name })
	return given
}
