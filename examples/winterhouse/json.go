package main

import (
	"bytes"
	"encoding/json"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

// version counts changes of the JSON form that can break a reader: a key gone, or
// one that means something else. New keys may come without.
const version = 1

// file is the JSON form. The schema is made of it.
type file struct {
	Format   string          `json:"format"`
	Version  int             `json:"version"`
	Plan     json.RawMessage `json:"plan"`
	Defaults []taken         `json:"defaults_taken"`
	Answers  answers.Result  `json:"answers"`
}

// taken is a default that the plan took.
type taken struct {
	Key   string `json:"key"`
	Value any    `json:"value"`
	Unit  string `json:"unit"`
}

func document(p *plan.Filled, r *answers.Result) (*bytes.Buffer, error) {
	f := file{Format: "winterhouse", Version: version, Plan: p.Text(), Answers: *r, Defaults: []taken{}}
	for _, d := range p.Defaults {
		f.Defaults = append(f.Defaults, taken{d.Path, d.Value, d.Unit})
	}
	b, err := answers.Encode(f)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = json.Indent(&out, b, "", "  ")
	out.WriteByte('\n')
	return &out, err
}
