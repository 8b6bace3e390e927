// Package check runs tables of published check values. A row says where a
// value stands in its source, the inputs, and the value as the source prints
// it; the default tolerance is half a unit in the last printed place.
package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
)

// Row is one published value.
type Row struct {
	Where   string    // source key and place, as in "HoF17.ch1.Table3/25C"; it names the subtest
	In      []float64 // inputs, in the order and units the test's function takes
	Printed string    // the value as the source prints it, without its unit
	Tol     float64   // allowed difference, in the printed unit; 0 means half a unit in the last printed place
	Why     string    // reason for a tolerance wider than that; required then
	Suspect string    // reason why the printed value is wrong; the row then passes only if the value disagrees
	Seen    Seen      // how the printed value was seen; by the list of sources when it is not said
	Right   string    // with Suspect: the value that the source should print, checked like a printed one
}

// Verify returns nil when got agrees with the row. A row whose table entry is
// itself at fault (a wide tolerance without a reason, a value that cannot be
// read) is an error too.
func (r Row) Verify(got float64) error {
	err := r.compare(got)
	if err == nil {
		record(r.line(caller(), got))
	}
	return err
}

func (r Row) compare(got float64) error {
	want, half, err := Parse(r.Printed)
	if err != nil {
		return fmt.Errorf("%s: %w", r.Where, err)
	}
	tol := half
	if r.Tol != 0 {
		tol = r.Tol
	}
	if tol > half*(1+1e-9) && strings.TrimSpace(r.Why) == "" {
		return fmt.Errorf("%s: tolerance %g is wider than half a unit in the last printed place of %s and gives no reason", r.Where, tol, r.Printed)
	}
	if math.IsNaN(tol) || tol < 0 {
		return fmt.Errorf("%s: tolerance %g", r.Where, tol)
	}
	agrees := math.Abs(got-want) <= tol+1e-12*math.Abs(want)
	if r.Suspect == "" {
		if !agrees {
			return fmt.Errorf("%s: got %.12g, printed %s, difference %.3g, allowed %.3g", r.Where, got, r.Printed, got-want, tol)
		}
		return nil
	}
	if agrees {
		return fmt.Errorf("%s: got %.12g, which agrees with the printed %s although the row calls it suspect (%s)", r.Where, got, r.Printed, r.Suspect)
	}
	if r.Right == "" {
		return fmt.Errorf("%s: a suspect row must give the right value", r.Where)
	}
	right, half, err := Parse(r.Right)
	if err != nil {
		return fmt.Errorf("%s: %w", r.Where, err)
	}
	if !(math.Abs(got-right) <= half+1e-12*math.Abs(right)) {
		return fmt.Errorf("%s: got %.12g, right value %s, difference %.3g, allowed %.3g", r.Where, got, r.Right, got-right, half)
	}
	return nil
}

// Parse returns the value of a printed number and half a unit in its last
// printed place. Digits behind an exponent count as printed: 1.50e3 has a last
// place of 10.
func Parse(printed string) (value, half float64, err error) {
	s := strings.TrimSpace(printed)
	value, err = strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(value) || math.IsInf(value, 0) {
		return 0, 0, fmt.Errorf("printed value %q is not a plain number", printed)
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(s), "e")
	places := 0
	if _, decimals, ok := strings.Cut(mantissa, "."); ok {
		places = len(decimals)
	}
	e := 0
	if exponent != "" {
		if e, err = strconv.Atoi(exponent); err != nil {
			return 0, 0, fmt.Errorf("printed value %q: %w", printed, err)
		}
	}
	return value, 0.5 * math.Pow(10, float64(e-places)), nil
}

// Run verifies each row as a subtest named by Where; f computes the value in
// the printed unit from the row's inputs.
func Run(t *testing.T, rows []Row, f func(in ...float64) float64) {
	t.Helper()
	if len(rows) == 0 {
		t.Fatal("no rows to check")
	}
	test, _, _ := strings.Cut(t.Name(), "/")
	for _, r := range rows {
		t.Run(r.Where, func(t *testing.T) {
			t.Helper()
			got := f(r.In...)
			if err := r.compare(got); err != nil {
				t.Error(err)
				return
			}
			record(r.line(test, got))
		})
	}
}

// Got is a row with the value that was computed for it, in the printed unit.
type Got struct {
	Row
	Value float64
}

// Verify verifies each row, whose values were computed beforehand, as a subtest.
func Verify(t *testing.T, rows []Got) {
	t.Helper()
	if len(rows) == 0 {
		t.Fatal("no rows to check")
	}
	for _, r := range rows {
		Run(t, []Row{r.Row}, func(...float64) float64 { return r.Value })
	}
}
