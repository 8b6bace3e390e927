package check

import (
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
)

var update = flag.Bool("update-checks", false, "write anew the files of what the checks of a package compared")

// Columns are those of a file of checks.
var Columns = []string{"where", "test", "inputs", "printed", "ours", "allowed", "verdict", "reason", "right", "seen", "source"}

// Verdicts of a check.
const (
	Agrees  = "agrees"
	Suspect = "suspect" // the source is held to be wrong; ours has the right value
)

// recorded is what the package's tests compared so far.
var recorded struct {
	sync.Mutex
	lines [][]string
}

func record(line []string) {
	recorded.Lock()
	defer recorded.Unlock()
	recorded.lines = append(recorded.lines, line)
}

// line is the record of a row that passed.
func (r Row) line(test string, got float64) []string {
	_, tol, _ := Parse(r.Printed)
	if r.Tol != 0 {
		tol = r.Tol
	}
	inputs := make([]string, len(r.In))
	for i, v := range r.In {
		inputs[i] = strconv.FormatFloat(v, 'g', 10, 64)
	}
	verdict, reason := Agrees, r.Why
	if r.Suspect != "" {
		verdict, reason = Suspect, r.Suspect
	}
	return []string{r.Where, test, strings.Join(inputs, " "), r.Printed, digits(got), digits(tol), verdict, reason, r.Right, r.seen().String(), ""}
}

// digits writes a number short enough that processors agree on it.
func digits(v float64) string {
	if math.IsNaN(v) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', 7, 64)
}

// caller returns the test in which a row is verified. A helper's subtest hides
// it, and Main then fails: rows in a loop go through Run or Verify.
func caller() string {
	pc := make([]uintptr, 16)
	frames := runtime.CallersFrames(pc[:runtime.Callers(3, pc)])
	for {
		f, more := frames.Next()
		for part := range strings.SplitSeq(f.Function, ".") {
			if strings.HasPrefix(part, "Test") {
				return part
			}
		}
		if !more {
			return ""
		}
	}
}

// Main runs a package's tests and then holds the file at path to what their
// checks compared; -update-checks writes it anew. A run of some of the tests
// compares nothing.
func Main(m *testing.M, path string) int {
	flag.Parse()
	status := m.Run()
	if status != 0 || testing.Short() {
		return status
	}
	for _, name := range []string{"run", "skip", "list", "fuzz"} {
		if f := flag.Lookup("test." + name); f != nil && f.Value.String() != "" {
			return status
		}
	}
	if err := whole(recorded.lines); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	if err := current(path, recorded.lines, *update); err != nil {
		fmt.Fprintf(os.Stderr, "%s is not what the checks compared (-update-checks writes it anew):\n%v\n", path, err)
		return 1
	}
	return status
}

// whole reports lines that name no test, or do not say how their value was seen.
func whole(lines [][]string) error {
	var faults []error
	for _, l := range lines {
		if l[1] == "" {
			faults = append(faults, fmt.Errorf("%s names no test: give its rows to Run or Verify", l[0]))
		}
		if l[slices.Index(Columns, "seen")] == "" {
			faults = append(faults, fmt.Errorf("%s: how was the value seen? Say it in the row or in the list of sources", l[0]))
		}
	}
	return errors.Join(faults...)
}

// current compares a file of checks with the lines, or writes it.
func current(path string, lines [][]string, write bool) error {
	lines = slices.Clone(lines)
	slices.SortFunc(lines, slices.Compare[[]string])
	lines = slices.CompactFunc(lines, func(a, b []string) bool { return same(a, b) == nil })
	if write {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		f, err := os.Create(path)
		if err != nil {
			return err
		}
		w := csv.NewWriter(f)
		return errors.Join(w.Write(Columns), w.WriteAll(lines), f.Close())
	}
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	held, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return err
	}
	if len(held) == 0 || len(held)-1 != len(lines) {
		return fmt.Errorf("%d checks, and the file has %d", len(lines), max(len(held)-1, 0))
	}
	var faults []error
	for i, l := range lines {
		if err := same(held[i+1], l); err != nil && len(faults) < 5 {
			faults = append(faults, err)
		}
	}
	return errors.Join(faults...)
}

// same compares two records: our value to a hundredth of what is allowed or a
// part in a million, since processors round differently, all else to the letter.
func same(held, now []string) error {
	if len(held) != len(now) {
		return fmt.Errorf("%s: %d columns, and the file has %d", now[0], len(now), len(held))
	}
	for i, column := range Columns {
		if held[i] == now[i] {
			continue
		}
		if column == "ours" {
			a, err1 := strconv.ParseFloat(held[i], 64)
			b, err2 := strconv.ParseFloat(now[i], 64)
			tol, err3 := strconv.ParseFloat(now[slices.Index(Columns, "allowed")], 64)
			if errors.Join(err1, err2, err3) == nil && math.Abs(a-b) <= max(0.01*tol, 1e-6*math.Abs(a)) {
				continue
			}
		}
		return fmt.Errorf("%s, %s: held %q, now %q", now[0], column, held[i], now[i])
	}
	return nil
}
