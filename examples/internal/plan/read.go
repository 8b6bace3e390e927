package plan

import (
	_ "embed"
	"fmt"
	"io"
	"slices"
	"strings"

	"cloche.example/examples/internal/input"
)

// Filled is a plan with all its defaults.
type Filled struct {
	Plan
	Defaults []Default // values that the plan did not give, in the order of the table

	source value // the plan as it was given
}

// Open reads the plan in the named file, or in for the name -. The error
// begins with the file's name and lists every fault in a line of its own.
func Open(name string, in io.Reader) (Filled, error) {
	text, err := input.Text(name, in, MaxBytes)
	if err != nil {
		return Filled{}, err
	}
	f, err := Parse(text)
	if err != nil {
		return f, fmt.Errorf("plan %s: %w", input.Name(name), err)
	}
	return f, nil
}

// Read is Open for a reader.
func Read(r io.Reader) (Filled, error) {
	text, err := input.All(r, MaxBytes)
	if err != nil {
		return Filled{}, err
	}
	return Parse(text)
}

// Parse is Read for a text in memory.
func Parse(text []byte) (Filled, error) {
	source, twice, err := read(text)
	if err != nil {
		return Filled{}, err
	}
	return fill(source, twice)
}

func read(text []byte) (value, []string, error) {
	if len(text) > MaxBytes {
		return value{}, nil, fmt.Errorf("it is longer than %d bytes", MaxBytes)
	}
	text, err := input.Clean(text)
	if err != nil {
		return value{}, nil, err
	}
	return parse(text)
}

// Change returns the plan with a change merged into it, as the package comment
// says, checked and filled as a whole plan is: defaults that are derived from
// changed keys follow. The plan itself stays as it is, and may be changed by
// several goroutines at once.
func (f Filled) Change(text []byte) (Filled, error) {
	change, twice, err := read(text)
	if err != nil {
		return Filled{}, err
	}
	return fill(merge(f.source, change), twice)
}

// fill checks a tree of values and makes it a plan.
func fill(source value, twice []string) (Filled, error) {
	f := filler{defaults: make([]Default, 0, len(tree().children)*8)}
	for _, path := range twice {
		f.add(fmt.Errorf("%s stands twice", shown(path)), path)
	}
	f.section(tree(), "", fieldsOf(&f.plan), source, 0)
	f.finish()
	f.contradictions()
	if err := f.err(); err != nil {
		return Filled{}, err
	}
	return Filled{Plan: f.plan, Defaults: f.defaults, source: source}, nil
}

// Figure is one value for a key of a plan, as a flag of a program gives it.
type Figure struct {
	Path  string // of a key that stands in no list
	Value any    // float64, int, string, bool or []float64; nil takes the key out
}

// With is Change by single figures: all are merged before the plan is checked.
func (f Filled) With(figures ...Figure) (Filled, error) {
	source := f.source
	for _, g := range figures {
		v, err := valueOfAny(g.Value)
		if err != nil {
			return Filled{}, fmt.Errorf("%s: %w", shown(g.Path), err)
		}
		parts := strings.Split(g.Path, ".")
		for _, key := range slices.Backward(parts) {
			v = value{form: isObject, members: []member{{key, v}}}
		}
		source = merge(source, v)
	}
	return fill(source, nil)
}

func valueOfAny(x any) (value, error) {
	switch x := x.(type) {
	case nil:
		return value{}, nil
	case float64:
		return value{form: isNumber, number: x}, nil
	case int:
		return value{form: isNumber, number: float64(x)}, nil
	case bool:
		return value{form: isBool, yes: x}, nil
	case string:
		return value{form: isText, text: x}, plain(x)
	case []float64:
		v := value{form: isList}
		for _, n := range x {
			v.items = append(v.items, value{form: isNumber, number: n})
		}
		return v, nil
	}
	return value{}, fmt.Errorf("a plan holds no %T", x)
}

//go:embed demo.json
var demoText []byte

// Demo returns the plan of the demo house. The house, its site and its prices
// are invented, as its note says.
func Demo() Filled {
	f, err := Parse(demoText)
	if err != nil {
		panic(err) // a test reads it
	}
	return f
}
