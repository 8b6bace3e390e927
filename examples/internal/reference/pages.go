package reference

import (
	"fmt"
	"go/doc/comment"
	"html/template"
	"io"
	"slices"
	"strings"

	"cloche.example/examples/internal/page"
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
