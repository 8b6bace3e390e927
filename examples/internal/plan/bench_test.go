package plan_test

import (
	"fmt"
	"testing"

	"cloche.example/examples/internal/plan"
)

var sink plan.Filled

// BenchmarkParse reads, checks and fills full plans.
func BenchmarkParse(b *testing.B) {
	var texts [][]byte
	for _, name := range files(b) {
		f, err := plan.Open(name, nil)
		if err != nil {
			b.Fatal(err)
		}
		texts = append(texts, f.Text())
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		f, err := plan.Parse(texts[i%len(texts)])
		if err != nil {
			b.Fatal(err)
		}
		sink = f
	}
}

// BenchmarkChange merges, checks and fills one line of changes.
func BenchmarkChange(b *testing.B) {
	base, err := plan.Parse(plan.Demo().Text())
	if err != nil {
		b.Fatal(err)
	}
	var lines [][]byte
	for i := range 16 {
		lines = append(lines, fmt.Appendf(nil, `{"house": {"length_m": %g}, "heater": {"power_w": %d}}`, 14.8+float64(i), 30000+500*i))
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		f, err := base.Change(lines[i%len(lines)])
		if err != nil {
			b.Fatal(err)
		}
		sink = f
	}
}
