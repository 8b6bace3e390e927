// Package golden is what the tests of example programs share: printed text
// against a file, and how a program answers help and wrong input.
//
// go test ./examples/... -update writes the files anew.
package golden

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Run is a program's main with its streams; it returns the exit status.
type Run func(args []string, out, problems io.Writer) int

// Print runs the program, demands status 0 and silence on problems, and
// returns what it printed.
func Print(t testing.TB, run Run, args ...string) string {
	t.Helper()
	var out, problems bytes.Buffer
	if status := run(args, &out, &problems); status != 0 || problems.Len() > 0 {
		t.Fatalf("%q: status %d, %s", args, status, problems.String())
	}
	return out.String()
}

// Refuse demands that the program answers args with status 2, prints nothing,
// and says what is wrong in one line that contains each of want.
func Refuse(t testing.TB, run Run, args []string, want ...string) {
	t.Helper()
	var out, problems bytes.Buffer
	status := run(args, &out, &problems)
	if said := problems.String(); status != 2 || out.Len() > 0 || strings.Count(said, "\n") != 1 {
		t.Fatalf("%q: status %d, printed %q, said %q", args, status, out.String(), said)
	}
	for _, w := range want {
		if !strings.Contains(problems.String(), w) {
			t.Errorf("%q: %q does not say %q", args, problems.String(), w)
		}
	}
}

var number = regexp.MustCompile(`-?\d+(\.\d+)?(e[-+]\d+)?`)

// Equal compares got with testdata/name: numbers to one in the last printed
// place, or a part in 1e9 where seven or more decimals stand, since processors
// round differently; single digits and everything else to the letter.
func Equal(t testing.TB, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := errors.Join(os.MkdirAll("testdata", 0o755), os.WriteFile(path, []byte(got), 0o644)); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if d := difference(string(want), got); d != "" {
		t.Fatalf("%s: %s", path, d)
	}
}

// difference tells in what got differs from want by the rule of Equal; empty
// if in nothing.
func difference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range max(len(w), len(g)) {
		switch {
		case i >= len(w):
			return fmt.Sprintf("line %d is one too many: %s", i+1, g[i])
		case i >= len(g):
			return fmt.Sprintf("line %d is missing: %s", i+1, w[i])
		case !sameLine(w[i], g[i]):
			return fmt.Sprintf("line %d\nwant %s\ngot  %s", i+1, w[i], g[i])
		}
	}
	return ""
}

func sameLine(want, got string) bool {
	// Spaces move with the sign and the digits of a number.
	frame := func(s string) string { return strings.Join(strings.Fields(number.ReplaceAllString(s, "#")), " ") }
	if frame(want) != frame(got) {
		return false
	}
	g := number.FindAllString(got, -1)
	for i, text := range number.FindAllString(want, -1) {
		a, err := strconv.ParseFloat(text, 64)
		b, err2 := strconv.ParseFloat(g[i], 64)
		if d := math.Abs(a - b); err != nil || err2 != nil || !(d <= tolerance(text, a)) {
			return false
		}
	}
	return true
}

// tolerance of a number as printed.
func tolerance(text string, value float64) float64 {
	_, decimals, broken := strings.Cut(text, ".")
	if !broken && math.Abs(value) < 10 {
		return 0 // a count
	}
	if len(decimals) >= 7 || strings.Contains(text, "e") {
		return 1e-9 * max(1, math.Abs(value))
	}
	unit := 1.01
	for range decimals {
		unit /= 10
	}
	return unit
}
