package main

import (
	"context"
	"flag"
	"math"
	"testing"
	"time"

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

// BenchmarkChanges is the demo house with eight changes over sixty days of spring, one
// at a time and two in turn, and tells by how much two are faster: the least times of
// all turns, since other work on the machine only lengthens them. With -cores it fails
// below 1.8.
func BenchmarkChanges(b *testing.B) {
	s := part(b, "03-20", 60)
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
	least := [3]time.Duration{1: math.MaxInt64, 2: math.MaxInt64}
	for b.Loop() {
		for _, workers := range []int{1, 2} {
			begun := time.Now()
			spread(workers, 8, func(i int) {
				change := trials[i%len(trials)]
				if change.WhyNot != "" {
					change.Plan = p.Plan
				}
				if r := h.try(context.Background(), change); r.fault != nil {
					b.Error(r.fault)
				}
			})
			least[workers] = min(least[workers], time.Since(begun))
		}
	}
	faster := least[1].Seconds() / least[2].Seconds()
	b.ReportMetric(faster, "times")
	if *cores && faster < 1.8 {
		b.Errorf("two at a time are %.2f times as fast as one", faster)
	}
}

var cores = flag.Bool("cores", false, "BenchmarkChanges fails where two cores do not give 1.8 times")

var sink *account
