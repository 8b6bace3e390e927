package plan_test

import (
	"os"
	"path/filepath"
	"testing"

	"cloche.example/examples/internal/plan"
)

func TestX(t *testing.T) {
	names, _ := filepath.Glob("../../plans/*.json")
	for _, n := range append(names, "demo.json") {
		f, err := plan.Open(n, nil)
		if err != nil {
			t.Error(err)
		}
		os.WriteFile("/tmp/full-"+filepath.Base(n), f.Text(), 0o644)
	}
}
func BenchmarkX(b *testing.B) {
	text := plan.Demo().Text()
	for b.Loop() { plan.Parse(text) }
}
func BenchmarkC(b *testing.B) {
	d, err := plan.Parse(plan.Demo().Text())
	if err != nil { b.Fatal(err) }
	for b.Loop() { d.Change([]byte(`{"house":{"length_m":20}}`)) }
}
func BenchmarkD(b *testing.B) {
	d:= plan.Demo()
	for b.Loop() { d.Change([]byte(`{"house":{"length_m":20}}`)) }
}
