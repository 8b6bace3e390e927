package main

import (
	"context"
	"io"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// stream solves plans under one weather, one a line, in their order and with
// memory for one.
type stream struct {
	ctx     context.Context
	base    plan.Filled
	change  bool // lines change the base; otherwise each is a plan
	weather *weather.Series
	in      io.Reader
}

// result is a line of the output: answers, or what was wrong with the line.
type result struct {
	Line    int     `json:"line"`
	Version int     `json:"version"`
	Error   *string `json:"error"`
	Answers *answer `json:"answers"`
}

// WriteTo answers until the input ends or is interrupted. A line that is no
// plan, or cannot be computed, gets an error of its own and the next one follows;
// empty lines get none.
func (s stream) WriteTo(w io.Writer) (n int64, err error) {
	for line, fault := range input.Lines(s.in, plan.MaxBytes) {
		if fault == nil && len(line.Text) == 0 {
			continue
		}
		text := s.line(line, fault)
		if s.ctx.Err() != nil {
			return n, errInterrupted
		}
		written, err := w.Write(append(text, '\n'))
		if n += int64(written); err != nil {
			return n, err
		}
	}
	return n, nil
}

func (s stream) line(line input.Line, fault error) []byte {
	r := result{Line: line.Number, Version: version}
	var err error
	if r.Answers, err = s.answer(line.Text, fault); err == nil {
		r.Answers.Cautions = []string{} // as for every plan: -json has them
		var text []byte
		if text, err = answers.Encode(r); err == nil {
			return text
		}
	}
	said := err.Error()
	text, _ := answers.Encode(result{Line: line.Number, Version: version, Error: &said})
	return text
}

func (s stream) answer(text []byte, fault error) (*answer, error) {
	if fault != nil {
		return nil, fault
	}
	var p plan.Filled
	var err error
	if s.change {
		p, err = s.base.Change(text)
	} else {
		p, err = plan.Parse(text)
	}
	if err != nil {
		return nil, err
	}
	return solve(s.ctx, p, s.weather, options{bare: true}, io.Discard)
}
