package reference

import (
	"cmp"
	"fmt"
	"go/doc/comment"
	"html/template"
	"io"
	"slices"
	"strings"

	"cloche.example/examples/internal/page"
	"cloche.example/internal/check"
)

// Page is one page of the site.
type Page struct {
	Name  string // without its ending
	Title string
	Says  string // what it shows, a sentence
	make  func(*page.Page) error
}

// WriteHTML writes the page.
func (g Page) WriteHTML(w io.Writer) error {
	p := page.New(g.Title, g.Says)
	p.Raw(`<nav aria-label="Site"><p><a href="index.html">All worked figures</a> · <a href="checks.html">every check</a> · <a href="accuracies.html">accuracies</a> · <a href="departures.html">known departures</a></p></nav>` + "\n")
	if err := g.make(p); err != nil {
		return fmt.Errorf("%s: %w", g.Name, err)
	}
	_, err := p.WriteTo(w)
	return err
}

// Pages returns all pages, the summaries first.
func Pages() []Page {
	all := []Page{
		{"checks", "Every check", "Each published value that the tests of the library compare, counted by package and source, with those that are held to be wrong.", checksPage},
		{"accuracies", "Accuracies", "How well each function keeps to its equation or its references, and what that was measured against.", accuraciesPage},
		{"departures", "Known departures", "Where the library says something else than a source, and why.", departuresPage},
	}
	for _, pkg := range Packages {
		all = append(all, Page{"package-" + pkg, "Package " + pkg + " by question", "What to take for which question; each function with its equation, range, accuracy and check.", func(p *page.Page) error { return packagePage(p, pkg) }})
	}
	for _, part := range parts {
		all = append(all, Page{"checks-" + part, "Checks of " + name(part), "Source and place, inputs, the printed value and ours, the difference that is allowed, and the verdict.", func(p *page.Page) error { return checksOf(p, part) }})
	}
	return all
}

// Find returns the page of that name.
func Find(name string) (Page, bool) {
	for _, g := range Pages() {
		if g.Name == name {
			return g, true
		}
	}
	return Page{}, false
}

func name(part string) string {
	switch part {
	case "sun", "atmosphere":
		return "the " + part + ", which several packages share"
	}
	return "package " + part
}

func link(to, words string) template.HTML {
	return template.HTML(`<a href="` + to + `">` + template.HTMLEscapeString(words) + `</a>`)
}

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

// asked, tabled and departed tell the parts of a package comment.
func asked(head string) bool {
	return strings.HasPrefix(head, "Which") || strings.HasPrefix(head, "How a map")
}

func departed(head string) bool { return strings.Contains(strings.ToLower(head), "departures") }

func tabled(s section) bool {
	for _, b := range s.blocks {
		if c, ok := b.(*comment.Code); ok {
			if _, rows, err := table(c.Text); err != nil || rows != nil {
				return true
			}
		}
	}
	return false
}

func packagePage(p *page.Page, pkg string) error {
	all, err := sections(pkg)
	if err != nil {
		return err
	}
	p.Raw("<p>" + link("checks-"+pkg+".html", "Every check of the package") + "</p>\n")
	rank := func(s section) int {
		switch {
		case s.head == "":
			return 0
		case asked(s.head):
			return 1
		case tabled(s):
			return 2
		}
		return 3
	}
	slices.SortStableFunc(all, func(a, b section) int { return rank(a) - rank(b) })
	for _, s := range all {
		if s.head != "" {
			p.Section(s.head)
		}
		for _, b := range s.blocks {
			if err := write(p, s.head, b); err != nil {
				return err
			}
		}
	}
	return nil
}

func accuraciesPage(p *page.Page) error {
	for _, pkg := range Packages {
		all, err := sections(pkg)
		if err != nil {
			return err
		}
		p.Section("Package " + pkg)
		for _, s := range all {
			for _, b := range s.blocks {
				c, code := b.(*comment.Code)
				switch {
				case s.head == "Accuracy":
					if err := write(p, s.head, b); err != nil {
						return err
					}
				case code:
					_, rows, err := table(c.Text)
					if err != nil {
						return err
					}
					if rows == nil {
						continue
					}
					short := make([][]string, len(rows))
					for i, r := range rows {
						short[i] = []string{r[0], r[3], r[4], r[2]}
					}
					p.Table(s.head+" of "+pkg, []string{"function", "accuracy", "measured against", "range"}, short)
				case tabled(s) && !departed(words(b)):
					p.Paragraph(plain(b))
				}
			}
		}
		p.Raw("<p>" + link("package-"+pkg+".html", "Package "+pkg+" by question") + ", " + link("checks-"+pkg+".html", "its checks") + "</p>\n")
	}
	return nil
}

// words returns how a block begins.
func words(b comment.Block) string {
	s := plain(b)
	return s[:min(len(s), 20)]
}

func departuresPage(p *page.Page) error {
	for _, pkg := range Packages {
		all, err := sections(pkg)
		if err != nil {
			return err
		}
		p.Section("Package " + pkg)
		n := 0
		for _, s := range all {
			for _, b := range s.blocks {
				if departed(s.head) || departed(words(b)) {
					n++
					if err := write(p, s.head, b); err != nil {
						return err
					}
				}
			}
		}
		if n == 0 {
			return fmt.Errorf("the comment of package %s names no departures", pkg)
		}
	}
	return nil
}
