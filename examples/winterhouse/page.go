package main

import (
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
)

// newPage is the report as one HTML file.
func newPage(p *plan.Filled, a *answers.Result) *page.Page {
	d := page.New("Winter and summer: "+p.Name, p.Note)
	return d
}
