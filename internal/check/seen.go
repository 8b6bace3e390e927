package check

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
	"sync"
)

// Seen says how the value that a check compares was seen.
type Seen uint8

// The ways. A row without one is looked up: words of memory in its place or its
// reason count first, then the list of sources.
const (
	Unsaid     Seen = iota
	InPrint         // read in the source itself
	SecondHand      // quoted by another text, or carried by another's program
	FromMemory      // recalled, not read
	Apart           // computed independently; no source prints it
	Practice        // common practice, no source
)

var seenWords = [...]string{"", "read in print", "second-hand", "from memory", "computed independently", "common practice, no source"}

// String returns the words of the page of checks.
func (s Seen) String() string {
	if int(s) < len(seenWords) {
		return seenWords[s]
	}
	return fmt.Sprintf("Seen(%d)", s)
}

// Source is how the values of one source were seen.
type Source struct {
	Begins string // how the places of its rows begin
	Seen   Seen
	How    string // by way of what; may be empty
}

//go:embed sources.csv
var sourcesFile string

// Sources returns the list of sources.
func Sources() []Source { return append([]Source(nil), sources()...) }

var sources = sync.OnceValue(func() []Source {
	rows, err := csv.NewReader(strings.NewReader(sourcesFile)).ReadAll()
	if err != nil {
		panic("sources.csv: " + err.Error()) // a file of this package, held by its test
	}
	var all []Source
	for _, r := range rows[1:] {
		s := Source{Begins: r[0], How: r[2]}
		for i, w := range seenWords {
			if w == r[1] {
				s.Seen = Seen(i)
			}
		}
		all = append(all, s)
	}
	return all
})

// SourceOf returns the entry of the list that fits a place best, the zero
// Source if none does.
func SourceOf(where string) (best Source) {
	for _, s := range sources() {
		if strings.HasPrefix(where, s.Begins) && len(s.Begins) > len(best.Begins) {
			best = s
		}
	}
	return best
}

// seen tells how the row's value was seen.
func (r Row) seen() Seen {
	switch {
	case r.Seen != Unsaid:
		return r.Seen
	case strings.Contains(r.Where+r.Why, "from memory"):
		return FromMemory
	}
	return SourceOf(r.Where).Seen
}

// seenInTable reads how the cells of a data table's row were seen from the
// words of its record.
func seenInTable(source string) Seen {
	for _, c := range []struct {
		words string
		seen  Seen
	}{{"from memory", FromMemory}, {"quoted", SecondHand}, {"trade", Practice}, {"estimate", Practice}, {"closed weave", Practice}, {"opaque to long-wave", Practice}, {"1 - ", Apart}, {"slopes whose mean", Apart}} {
		if strings.Contains(source, c.words) {
			return c.seen
		}
	}
	return InPrint
}
