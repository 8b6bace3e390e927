package main

import (
	"context"
	"testing"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// BenchmarkYear is the demo house over the whole real year, no changes tried. Its
// limit is the cost of the hours of package ventilation.
func BenchmarkYear(b *testing.B) {
	p := plan.Demo()
	s, err := weather.Greensboro()
	if err == nil {
		p, err = atSite(p, s)
	}
	if err == nil {
		err = fillSky(&p.Plan, s)
	}
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		h, err := newHouse(&p.Plan, s)
		if err != nil {
			b.Fatal(err)
		}
		y, err := h.solve(context.Background())
		if err != nil {
			b.Fatal(err)
		}
		sink = y.account()
	}
}

var sink *account
