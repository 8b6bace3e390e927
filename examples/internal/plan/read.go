package plan

import (
	_ "embed"
	"fmt"
	"io"
	"sync"

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
// says, checked and filled as a whole plan is: defaults that are reckoned from
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

//go:embed demo.json
var demoText []byte

// Demo returns the plan of the demo house. The house, its site and its prices
// are invented, as its note says.
var Demo = sync.OnceValue(func() Filled {
	f, err := Parse(demoText)
	if err != nil {
		panic(err) // a test reads it
	}
	return f
})
