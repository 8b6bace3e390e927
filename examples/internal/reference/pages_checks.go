package reference

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"cloche.example/examples/internal/page"
	"cloche.example/internal/check"
)

func checksPage(p *page.Page) error {
	p.Paragraph("A value agrees when it differs from the printed one by at most half a unit in the last printed place, or by what its row allows and gives a reason for. A suspect row is one whose printed value is held to be wrong: ours must differ from it, and agree with the right value. Each value says how it was seen: read in print, that is in the source itself; second-hand, quoted by another text or carried by another's program; from memory, recalled and not read; computed independently, where no source prints it; or common practice without a source. Cells of data tables are compared with their records, whose units may have been converted; a table's cells are second-hand or from memory where any of what their row names is.")
	var counts, suspects [][]string
	var sources []string
	ways := []check.Seen{check.InPrint, check.SecondHand, check.FromMemory, check.Apart, check.Practice}
	total := make([]int, 3+len(ways))
	used := map[string]int{} // rows by the entry of the list of sources
	for _, part := range parts {
		checks, err := Checks(part)
		if err != nil {
			return err
		}
		n := make([]int, len(total))
		by := map[string]int{}
		for _, c := range checks {
			n[0]++
			by[c.Source()]++
			if c.Reason != "" && c.Verdict == check.Agrees {
				n[1]++
			}
			if c.Verdict == check.Suspect {
				n[2]++
				suspects = append(suspects, []string{c.Where, c.Printed, c.Ours, c.Right, c.Reason})
			}
			for i, w := range ways {
				if c.Seen == w.String() {
					n[3+i]++
				}
			}
			used[check.SourceOf(c.Where).Begins]++
		}
		counts = append(counts, counted(part, n))
		for i := range n {
			total[i] += n[i]
		}
		keys := make([]string, 0, len(by))
		for k := range by {
			keys = append(keys, k)
		}
		slices.SortFunc(keys, func(a, b string) int { return cmp.Or(by[b]-by[a], cmp.Compare(a, b)) })
		for i, k := range keys {
			keys[i] = fmt.Sprintf("%s %d", k, by[k])
		}
		sources = append(sources, strings.Join(keys, "; "))
	}
	counts = append(counts, counted("all", total))
	p.Section("Counts")
	p.Table("Checks by package", append([]string{"package", "checks", "wider, with a reason", "suspect"}, named(ways)...), counts)
	p.Section("Sources")
	for i, part := range parts {
		p.Raw("<p>" + link("checks-"+part+".html", name(part)) + template.HTML(": "+template.HTMLEscapeString(sources[i])) + "</p>\n")
	}
	p.Section("Suspect values")
	p.Table("Printed values that are held to be wrong", []string{"where", "printed", "ours", "right", "why"}, suspects)
	p.Section("How each source was seen")
	var seen [][]string
	for _, s := range check.Sources() {
		if used[s.Begins] > 0 {
			seen = append(seen, []string{strings.TrimRight(s.Begins, "./"), s.Seen.String(), s.How})
		}
	}
	p.Table("Rows that begin so, where they say nothing else", []string{"source", "seen", "by way of"}, seen)
	return nil
}

// counted is a row of counts.
func counted(name string, n []int) []string {
	row := []string{name}
	for _, v := range n {
		row = append(row, fmt.Sprint(v))
	}
	return row
}

// named are the ways as heads of columns.
func named(ways []check.Seen) (heads []string) {
	for _, w := range ways {
		head, _, _ := strings.Cut(w.String(), ",")
		heads = append(heads, head)
	}
	return heads
}

func checksOf(p *page.Page, part string) error {
	checks, err := Checks(part)
	if err != nil {
		return err
	}
	slices.SortStableFunc(checks, func(a, b Check) int { return cmp.Compare(a.Source(), b.Source()) })
	for len(checks) > 0 {
		source := checks[0].Source()
		n := slices.IndexFunc(checks, func(c Check) bool { return c.Source() != source })
		if n < 0 {
			n = len(checks)
		}
		var rows [][]string
		for _, c := range checks[:n] {
			where := c.Where
			if c.Inputs != "" {
				where += "; inputs " + strings.ReplaceAll(c.Inputs, " ", ", ")
			}
			rows = append(rows, []string{where, c.Printed, c.Ours, c.Allowed, remark(c)})
		}
		p.Section(source)
		p.Table(fmt.Sprintf("%s: %d", source, n), []string{"where", "printed", "ours", "allowed", "verdict, and how it was seen"}, rows)
		checks = checks[n:]
	}
	return nil
}

// remark is the verdict with all that a reader must know of it.
func remark(c Check) string {
	words := c.Verdict
	if c.Right != "" {
		words += ", right is " + c.Right
	}
	if c.Reason != "" {
		words += ": " + c.Reason
	}
	words += "; " + c.Seen
	if c.Words != "" {
		words += ": " + c.Words
	}
	return words
}
