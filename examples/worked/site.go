package main

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"os"
	"path/filepath"

	"cloche.example/examples/internal/figures"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/reference"
)

// writeSite writes the index, one page for each figure and the pages of
// reference, and returns how many. A figure that cannot be drawn leaves the files before it.
func writeSite(dir string) (int, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return 0, err
	}
	n := 0
	write := func(name string, content func(io.Writer) error) error {
		var b bytes.Buffer
		if err := content(&b); err != nil {
			return err
		}
		n++
		return os.WriteFile(filepath.Join(dir, name), b.Bytes(), 0o644)
	}
	if err := write("index.html", writeIndex); err != nil {
		return n, err
	}
	for _, f := range figures.All() {
		if err := write(f.Name+".html", func(w io.Writer) error { return f.WriteHTML(w, f.Defaults(), figures.Form{}) }); err != nil {
			return n, fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	for _, g := range reference.Pages() {
		if err := write(g.Name+".html", g.WriteHTML); err != nil {
			return n, err
		}
	}
	return n, nil
}

// writeIndex writes the list of figures by subject and by package.
func writeIndex(w io.Writer) error {
	all := figures.All()
	p := page.New("Worked figures", "Small problems of protected cropping, each step with its formula and source, computed by the library.")
	list := func(pick func(figures.Figure) bool) {
		p.Raw("<ul>\n")
		for _, f := range all {
			if !pick(f) {
				continue
			}
			origin := "from a source"
			if f.Source == "" {
				origin = "invented"
			}
			p.Raw(template.HTML(fmt.Sprintf("<li><a href=\"%s.html\">%s</a>: %s (%s)</li>\n", f.Name, template.HTMLEscapeString(f.Title), template.HTMLEscapeString(f.Question), origin)))
		}
		p.Raw("</ul>\n")
	}
	some := func(pick func(figures.Figure) bool) bool {
		for _, f := range all {
			if pick(f) {
				return true
			}
		}
		return false
	}
	for _, subject := range figures.Subjects() {
		pick := func(f figures.Figure) bool { return f.Subject == subject }
		if some(pick) {
			p.Section(subject)
			list(pick)
		}
	}
	for _, pkg := range []string{"psychro", "envelope", "airheat", "lighting", "ventilation"} {
		pick := func(f figures.Figure) bool { return f.Package == pkg }
		if some(pick) {
			p.Section("Package " + pkg)
			list(pick)
		}
	}
	p.Section("Reference")
	p.Raw("<ul>\n")
	for _, g := range reference.Pages() {
		p.Raw(template.HTML(fmt.Sprintf("<li><a href=\"%s.html\">%s</a>: %s</li>\n", g.Name, template.HTMLEscapeString(g.Title), template.HTMLEscapeString(g.Says))))
	}
	p.Raw("</ul>\n")
	_, err := p.WriteTo(w)
	return err
}
