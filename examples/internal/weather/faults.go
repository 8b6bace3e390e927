package weather

import (
	"errors"
	"fmt"
)

// mostFaults is how many faults of one file are named.
const mostFaults = 20

// faults gathers what is wrong with a file.
type faults struct {
	list  []error
	count int
	lines map[int]bool // that have been named
}

func (f *faults) add(line int, err error) {
	if f.lines == nil {
		f.lines = map[int]bool{}
	}
	f.lines[line] = true
	if f.count++; len(f.list) < mostFaults {
		f.list = append(f.list, fmt.Errorf("line %d: %w", line, err))
	}
}

func (f *faults) addf(line int, format string, a ...any) { f.add(line, fmt.Errorf(format, a...)) }

// file adds a fault of the whole file.
func (f *faults) file(err error) {
	if f.count++; len(f.list) < mostFaults {
		f.list = append(f.list, err)
	}
}

func (f *faults) err() error {
	if f.count == 0 {
		return nil
	}
	list := f.list
	if more := f.count - len(f.list); more > 0 {
		list = append(list[:len(list):len(list)], fmt.Errorf("and %d more faults", more))
	}
	return errors.Join(list...)
}
