package figures

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"cloche.example/examples/internal/formula"
)

// longest is the count of characters of a line that keeps its columns; a longer
// one is words, such as a caution.
const longest = 110

// Text returns the figure as a lesson in plain text.
func (f Figure) Text(v []float64) (string, error) {
	r, err := f.Run(v)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	rule := func(words, line string) {
		fmt.Fprintf(&b, "%s\n%s\n", words, strings.Repeat(line, utf8.RuneCountInString(words)))
	}
	rule(f.Title, "=")
	wrap(&b, "", f.Question)
	wrap(&b, "", f.origin())
	if f.Sketch != "" {
		b.WriteByte('\n')
		wrap(&b, "", f.Sketch)
	}
	b.WriteByte('\n')
	rule("Given", "-")
	for i, g := range f.Given {
		fmt.Fprintf(&b, "%-44s %8s = %s %s\n", g.Name, g.Symbol, formula.Number(v[i], 6), g.Unit)
	}
	b.WriteByte('\n')
	rule("Steps", "-")
	for i, s := range r.Steps {
		wrap(&b, fmt.Sprintf("%d. ", i+1), s.Says+source(s.Source))
		whole, put, err := s.put()
		if err != nil {
			return "", err
		}
		if s.Formula != "" {
			fmt.Fprintf(&b, "     %s\n", whole)
			if len(whole.Names()) > 0 {
				fmt.Fprintf(&b, "     %s\n", put)
			}
		}
		name, value := s.answer()
		if name != "" {
			name += " = "
		}
		fmt.Fprintf(&b, "     %s%s\n", name, value)
	}
	b.WriteByte('\n')
	rule("Answer", "-")
	for _, l := range r.Lines {
		if utf8.RuneCountInString(l) > longest {
			wrap(&b, "", l)
			continue
		}
		b.WriteString(l + "\n")
	}
	if r.Printed != "" {
		wrap(&b, "", "The source prints: "+r.Printed)
	}
	for _, part := range []struct {
		head  string
		items []string
	}{{"It assumes", f.Assumes}, {"To change", f.Change}} {
		if len(part.items) == 0 {
			continue
		}
		b.WriteByte('\n')
		rule(part.head, "-")
		for _, item := range part.items {
			wrap(&b, "- ", item)
		}
	}
	if names := also(f.Name); len(names) > 0 {
		b.WriteByte('\n')
		rule("See also", "-")
		wrap(&b, "", strings.Join(names, ", "))
	}
	return b.String(), nil
}

func (f Figure) origin() string {
	if f.Source == "" {
		return "The numbers are our own, invented for this figure."
	}
	return "From " + f.Source + "."
}

func source(s string) string {
	if s == "" {
		return ""
	}
	return " [" + s + "]"
}

// wrap writes words in lines of at most 78 characters, the first after mark
// and the others as far in.
func wrap(b *strings.Builder, mark, words string) {
	const width = 78
	indent := strings.Repeat(" ", utf8.RuneCountInString(mark))
	line, empty := mark, true
	for _, w := range strings.Fields(words) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(w) > width {
			b.WriteString(line + "\n")
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line, empty = line+w, false
	}
	if !empty {
		b.WriteString(line + "\n")
	}
}
