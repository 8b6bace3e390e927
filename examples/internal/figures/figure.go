// Package figures holds the worked figures: small problems with given values,
// each step with its formula and source, and the answer beside the one that
// the source prints. One Figure makes the text, the page and the form in which
// a class changes its numbers; the documentation example of the package shows
// the same lines.
package figures

import (
	"errors"
	"fmt"
	"html/template"
	"math"
	"strings"

	"cloche.example/examples/internal/formula"
	"cloche.example/internal/domain"
)

// Figure is one worked figure.
type Figure struct {
	Name     string   // one word, lower case: what the command line takes
	Title    string   // a few words
	Subject  string   // one of Subjects
	Package  string   // the package that computes it
	Question string   // what a reader wants to know
	Source   string   // where the problem was printed; empty when it is our own invention
	Sketch   string   // a sketch's worth of words: what is where
	Given    []Given  // what may be changed, in the order of Solve's values
	Assumes  []string // what the answer takes for granted
	Change   []string // what a reader could change, and what to look for
	Example  string   // the function of the package's documentation that prints the same lines: "Example_mixing"; empty for none
	Code     string   // the function of this package that computes it, for the page
	// Solve computes the figure for the given values, each within its range.
	Solve func(v []float64) (Result, error)
}

// Given is one value of the problem.
type Given struct {
	Symbol    string  // as in the formulas
	Name      string  // in words
	Unit      string  // as in the library's table of units; "" for a pure number
	Value     float64 // of the figure as it stands
	Low, High float64 // accepted
}

// Step is one step of the way: a formula with the numbers put in, or words for
// what is found otherwise.
type Step struct {
	Says    string             // what is done, one sentence
	Formula string             // in the notation of package formula; empty for a step in words
	Source  string             // source key and equation number
	Values  map[string]float64 // of the names in the formula
	Symbol  string             // of the answer; the formula's left side when empty
	Value   float64            // the answer, from the library
	Unit    string
	Figures int     // significant figures shown; 0 for four
	Within  float64 // relative difference between formula and library that is right, as for a simplified formula; 0 for 1e-9
	Why     string  // reason for Within
}

// Result is a solved figure.
type Result struct {
	Steps   []Step
	Lines   []string // the answer, as the documentation example prints it
	Printed string   // the source's own answer, in words and numbers; empty for our own figures
	Picture Picture
}

// Picture carries the figure's idea.
type Picture struct {
	SVG     template.HTML // made by package page; names and describes itself
	Caption string
}

// Subjects are the chapters in their order.
var subjects = []string{"moist air", "covers", "the whole house", "ground and walls", "heater and fuel", "ducts and fans", "warming and freezing", "season", "light on the bed", "photons and spectra", "sun and daylight", "vents and wind", "summer", "moisture and crop"}

// Subjects returns the chapters in their order.
func Subjects() []string { return append([]string(nil), subjects...) }

// Find returns the figure of that name. The error names the nearest ones.
func Find(name string) (Figure, error) {
	var near []string
	for _, f := range All() {
		if f.Name == name {
			return f, nil
		}
		if len(name) >= 3 && (strings.Contains(f.Name, name) || strings.Contains(strings.ToLower(f.Title), strings.ToLower(name))) {
			near = append(near, f.Name)
		}
	}
	if len(near) > 0 {
		return Figure{}, fmt.Errorf("no figure %q; near it: %s", name, strings.Join(near, ", "))
	}
	return Figure{}, fmt.Errorf("no figure %q; without a name the program lists them", name)
}

// Defaults returns the given values as the figure stands.
func (f Figure) Defaults() []float64 {
	v := make([]float64, len(f.Given))
	for i, g := range f.Given {
		v[i] = g.Value
	}
	return v
}

// Check returns an error for each value outside its range.
func (f Figure) Check(v []float64) error {
	if len(v) != len(f.Given) {
		return fmt.Errorf("%d values for the %d given", len(v), len(f.Given))
	}
	var faults []error
	for i, g := range f.Given {
		faults = append(faults, domain.Range{Min: g.Low, Max: g.High, Unit: g.Unit}.Check(g.Name, v[i]))
	}
	return errors.Join(faults...)
}

// Run checks the values and solves. An answer that is not finite is an error.
func (f Figure) Run(v []float64) (Result, error) {
	if err := f.Check(v); err != nil {
		return Result{}, err
	}
	r, err := f.Solve(v)
	if err != nil {
		return Result{}, err
	}
	if said(f.Given, v, "as printed") == "" {
		r.Printed = "" // the source answers for its own numbers alone
	}
	for _, s := range r.Steps {
		if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
			return Result{}, fmt.Errorf("%s: these values give no answer at the step %q", f.Name, s.Says)
		}
	}
	return r, nil
}

// figures returns the count of significant figures to show.
func (s Step) figures() int {
	if s.Figures == 0 {
		return 4
	}
	return s.Figures
}

// answer returns the answer's symbol, which may be empty, and its value with
// the unit.
func (s Step) answer() (symbol, value string) {
	symbol = s.Symbol
	if symbol == "" {
		symbol, _, _ = strings.Cut(s.Formula, "=")
		symbol = strings.TrimSpace(symbol)
	}
	value = formula.Number(s.Value, s.figures())
	if s.Unit != "" {
		value += " " + s.Unit
	}
	return symbol, value
}

// put returns the formula with its numbers, or nothing for a step in words.
func (s Step) put() (whole, numbers formula.Formula, err error) {
	if s.Formula == "" {
		return
	}
	whole, err = formula.Parse(s.Formula)
	if err != nil {
		return
	}
	return whole, whole.Put(s.Values, s.figures()+1), nil
}
