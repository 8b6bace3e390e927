package main

import (
	"bufio"
	"io"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
)

// stream answers plans, one a line, in their order and with memory for one.
type stream struct {
	base   plan.Filled
	change bool // lines change the base; otherwise each is a plan
	cures  bool
	in     io.Reader
}

// result is a line of the output: answers, or what was wrong with the line.
type result struct {
	Line    int             `json:"line"`
	Version int             `json:"version"`
	Error   *string         `json:"error"`
	Answers *answers.Result `json:"answers"`
}

// WriteTo answers until the input ends. A line that is no plan, or cannot be
// computed, gets an error of its own and the next one follows; empty lines get
// none.
func (s stream) WriteTo(w io.Writer) (n int64, err error) {
	out := bufio.NewWriterSize(w, 1<<16)
	for line, fault := range input.Lines(s.in, plan.MaxBytes) {
		if fault == nil && len(line.Text) == 0 {
			continue
		}
		text := s.line(line, fault)
		written, err := out.Write(append(text, '\n'))
		if n += int64(written); err == nil {
			err = out.Flush() // whoever sends a line may wait for its answer
		}
		if err != nil {
			return n, err
		}
	}
	return n, nil
}

func (s stream) line(line input.Line, fault error) []byte {
	r := result{Line: line.Number, Version: version}
	a, err := s.answer(line.Text, fault)
	if err == nil {
		a.Cautions = []string{} // as for every plan: -json has them
		r.Answers = &a
		var text []byte
		if text, err = answers.Encode(r); err == nil {
			return text
		}
	}
	said := err.Error()
	text, _ := answers.Encode(result{Line: line.Number, Version: version, Error: &said})
	return text
}

func (s stream) answer(text []byte, fault error) (answers.Result, error) {
	if fault != nil {
		return answers.Result{}, fault
	}
	var p plan.Filled
	var err error
	if s.change {
		p, err = s.base.Change(text)
	} else {
		p, err = plan.Parse(text)
	}
	if err != nil {
		return answers.Result{}, err
	}
	return answers.Of(&p.Plan, s.cures)
}
