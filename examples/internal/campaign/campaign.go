// Package campaign puts random plans to the example programs: for tests.
package campaign

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

var rounds = flag.Int("plans", 40, "random plans to try")

// Rounds is how many random plans a test is to try.
func Rounds() int { return *rounds }

// Keys are those that stand in no list and hold one value.
func Keys() (list []plan.Key) {
	for _, k := range plan.Keys() {
		if strings.Contains(k.Path, "[]") || strings.HasSuffix(k.Path, "_file") {
			continue
		}
		switch k.Kind {
		case plan.Number, plan.Whole, plan.Choice, plan.Name, plan.Switch:
			list = append(list, k)
		}
	}
	return list
}

// value is a random value for a key, at an end of its range now and then.
func value(r *rand.Rand, k plan.Key) any {
	x := k.Min + r.Float64()*(k.Max-k.Min)
	switch r.IntN(6) {
	case 0:
		x = k.Min
	case 1:
		x = k.Max
	case 2:
		if usual, ok := k.Default.(float64); ok {
			x = min(max(usual*(0.5+r.Float64()), k.Min), k.Max)
		}
	}
	switch k.Kind {
	case plan.Number:
		return x
	case plan.Whole:
		return math.Round(x)
	case plan.Switch:
		return r.IntN(2) == 0
	}
	return k.Choices[r.IntN(len(k.Choices))]
}

// Change is a plan's change of a few random keys.
func Change(r *rand.Rand, keys []plan.Key) string {
	root := map[string]any{}
	for range 1 + r.IntN(5) {
		k := keys[r.IntN(len(keys))]
		parts := strings.Split(k.Path, ".")
		m := root
		for _, p := range parts[:len(parts)-1] {
			if m[p] == nil {
				m[p] = map[string]any{}
			}
			m = m[p].(map[string]any)
		}
		m[parts[len(parts)-1]] = value(r, k)
	}
	text, _ := json.Marshal(root)
	return string(text)
}

// Bases are the demo house and the plans beside it, seen from a program's folder.
func Bases(t testing.TB) []plan.Filled {
	t.Helper()
	list := []plan.Filled{plan.Demo()}
	files, err := filepath.Glob("../plans/*.json")
	if err != nil || len(files) < 3 {
		t.Fatalf("%d plans, %v", len(files), err)
	}
	for _, name := range files {
		p, err := plan.Open(name, os.Stdin)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, p)
	}
	return list
}

// Run puts a tenth of the random plans, at least four, and all with the flag
// -plans, to a program, and demands an answer without odd figures, as text and as
// JSON, or one clear line of what is wrong.
func Run(t *testing.T, run golden.Run, args ...string) {
	t.Helper()
	r := rand.New(rand.NewPCG(3, 14))
	keys, bases := Keys(), Bases(t)
	n := max(4, *rounds/10)
	flag.Visit(func(f *flag.Flag) {
		if f.Name == "plans" {
			n = *rounds
		}
	})
	refused, failed := 0, map[string]int{}
	file := filepath.Join(t.TempDir(), "plan.json")
	for i := range n {
		change := Change(r, keys)
		p, err := bases[i%len(bases)].Change([]byte(change))
		if err != nil {
			refused++
			continue
		}
		if err := os.WriteFile(file, p.Text(), 0o600); err != nil {
			t.Fatal(err)
		}
		with := append([]string{"-plan", file}, args...)
		if i%2 == 0 {
			with = append(with, "-json")
		}
		var out, problems bytes.Buffer
		status := run(with, &out, &problems)
		said := problems.String()
		switch {
		case status == 0 && i%2 == 0 && !json.Valid(out.Bytes()):
			t.Errorf("no JSON: %s", change)
		case status == 2 && out.Len() == 0 && strings.Count(said, "\n") == 1:
			failed[said]++
		case status != 0:
			t.Errorf("status %d, printed %d bytes, said %q: %s", status, out.Len(), said, change)
		}
		for _, odd := range []string{"NaN", "Inf", "-0.0 ", "%!", "panic"} {
			if strings.Contains(out.String(), odd) || strings.Contains(said, odd) {
				t.Errorf("%q in the answer to %s: %.300s", odd, change, said)
			}
		}
	}
	t.Logf("%d plans, %d refused, %d kinds not computed", n, refused, len(failed))
	for said, n := range failed {
		t.Logf("%d × %.400s", n, said)
	}
	if n >= 20 && refused > n*9/10 {
		t.Errorf("%d of %d plans were refused", refused, n)
	}
}
