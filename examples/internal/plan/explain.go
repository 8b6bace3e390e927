package plan

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Explain prints the table of keys: every key with its unit, range, default
// and meaning; of the sections that hold the word about, or all of them when it
// is empty.
func Explain(w io.Writer, about string) error {
	var out strings.Builder
	out.WriteString(intro)
	sections := map[string]Key{}
	section, none := "-", true
	for _, k := range Keys() {
		if k.Kind == Section || k.Kind == Optional || k.Kind == List {
			sections[k.Path] = k
			continue
		}
		if !strings.Contains(k.Path, about) {
			continue
		}
		none = false
		if s := strings.TrimSuffix(strings.TrimRight(strings.TrimSuffix(k.Path, k.Last()), "."), "[]"); s != section {
			section = s
			sections[s].head(&out)
		}
		k.line(&out)
	}
	if none {
		fmt.Fprintf(&out, "\nno key holds %s\n", quote(about))
	}
	_, err := io.WriteString(w, out.String())
	return err
}

const intro = `A plan is a JSON object. Keys may be left out: the default then holds, and the
report says so; null stands for leaving out. A section that is absent unless given
comes with all its defaults as {}. A list is given whole; "to be given" are keys
that its entries cannot do without. Defaults are those of an invented house or
common practice: put your own figures first. Columns: key, allowed, default,
meaning.
`

// written is a path as a plan's reader would say it.
func written(path string) string { return strings.ReplaceAll(path, "[]", "[...]") }

// head prints the line above the keys of a section.
func (k Key) head(out *strings.Builder) {
	if k.Path == "" {
		out.WriteString("\nthe plan itself\n")
		return
	}
	fmt.Fprintf(out, "\n%s: %s%s\n", written(k.Path), k.Means, k.presence())
}

// presence says when a section is there.
func (k Key) presence() string {
	switch {
	case k.Kind == Optional:
		return "\n  absent unless given"
	case k.Kind == List && k.Needed:
		return fmt.Sprintf("\n  a list of %d to %d, to be given", k.Least, k.Most)
	case k.Kind == List && k.Unless > 0:
		return fmt.Sprintf("\n  a list of up to %d; %d with all its defaults unless given", k.Most, k.Unless)
	case k.Kind == List:
		return fmt.Sprintf("\n  a list of up to %d; empty unless given", k.Most)
	}
	return ""
}

// line prints a key in columns. What does not fit stands in lines of its own.
func (k Key) line(out *strings.Builder) {
	allowed, usual := "a word", k.usual()
	var below []string
	switch k.Kind {
	case Number, Whole:
		allowed = k.limits()
	case Numbers:
		allowed = k.limits()
		below = append(below, fmt.Sprintf("a list of %d to %d numbers", k.Least, k.Most))
		if k.Least == k.Most {
			below[0] = fmt.Sprintf("a list of %d numbers", k.Most)
		}
	case Choice:
		below = append(below, "one of: "+strings.Join(k.Choices, ", "))
	case Name:
		below = append(below, "one of: "+strings.Join(k.Choices, "; ")+nameTail(k))
	case Text:
		allowed = "text"
	case Switch:
		allowed = "true or false"
	}
	if utf8.RuneCountInString(usual) > 12 || k.rule != nil {
		below = append(below, "default: "+usual)
		usual = "see below"
	}
	fmt.Fprintf(out, "  %s %s %s %s\n", padded(k.Last(), 34), padded(allowed, 26), padded(usual, 12), k.Means)
	for _, text := range below {
		for _, l := range wrapped(text, 90) {
			fmt.Fprintf(out, "      %s\n", l)
		}
	}
}

func nameTail(k Key) string {
	if k.of == nil {
		return ""
	}
	return "; or the name of one that the plan holds"
}

// usual prints the default.
func (k Key) usual() string {
	switch d := k.Default.(type) {
	case float64:
		return limit(d)
	case bool:
		return strconv.FormatBool(d)
	case string:
		if d == "" {
			return "empty"
		}
		return d
	case []float64:
		if len(d) == 0 {
			return "empty"
		}
		return joinNumbers(d)
	}
	switch {
	case k.Needed:
		return "to be given"
	case k.rule != nil:
		return k.Derived
	}
	return "none"
}

func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(s)))
}

// wrapped breaks a text between words.
func wrapped(text string, width int) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return append(lines, line)
}
