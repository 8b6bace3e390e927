package main

import (
	"context"
	"io"
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

// BenchmarkChanges is the demo house with all its changes over thirty days of April;
// go test -bench Changes -cpu 1,2 shows what the second core gives.
func BenchmarkChanges(b *testing.B) {
	s := part(b, "04-01", 30)
	p, err := atSite(plan.Demo(), s)
	if err == nil {
		err = fillSky(&p.Plan, s)
	}
	if err != nil {
		b.Fatal(err)
	}
	h, err := newHouse(&p.Plan, s)
	if err != nil {
		b.Fatal(err)
	}
	trials := h.trials()
	for b.Loop() {
		if _, err := h.years(context.Background(), p, trials, io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}

var sink *account
