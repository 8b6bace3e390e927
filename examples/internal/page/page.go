// Package page writes what the example programs show as one HTML file that
// needs nothing else: text, tables and SVG pictures whose words a screen reader
// finds, in light and dark, for phone, screen and A4 paper.
package page

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"
)

//go:embed style.css
var style string

// Page is one document, built from top to bottom.
type Page struct {
	title string
	body  bytes.Buffer
	open  bool // a section is open
	heads int  // sections so far, for their marks
}

// New starts a page with its title and one sentence that says what it is.
func New(title, lead string) *Page {
	p := &Page{title: title}
	fmt.Fprintf(&p.body, "<h1>%s</h1>\n", text(title))
	if lead != "" {
		fmt.Fprintf(&p.body, "<p class=\"lead\">%s</p>\n", text(lead))
	}
	return p
}

// Section closes the section before it and starts the next.
func (p *Page) Section(name string) {
	p.close()
	p.heads++
	fmt.Fprintf(&p.body, "<section aria-labelledby=\"s%d\">\n<h2 id=\"s%d\">%s</h2>\n", p.heads, p.heads, text(name))
	p.open = true
}

// Paragraph writes plain text.
func (p *Page) Paragraph(words string) { fmt.Fprintf(&p.body, "<p>%s</p>\n", text(words)) }

// Note writes a caution or a remark that stands out.
func (p *Page) Note(words string) {
	fmt.Fprintf(&p.body, "<p class=\"note\">%s</p>\n", text(words))
}

// List writes one line for each item.
func (p *Page) List(items []string) {
	p.body.WriteString("<ul>\n")
	for _, s := range items {
		fmt.Fprintf(&p.body, "<li>%s</li>\n", text(s))
	}
	p.body.WriteString("</ul>\n")
}

// Verdict writes a decision: what was asked, whether it holds, by what margin,
// and what cures it; cure may be empty. The answer stands in words, so that
// nothing hangs on a colour.
func (p *Page) Verdict(holds bool, question, answer, cure string) {
	class, word := "holds", "holds"
	if !holds {
		class, word = "fails", "does not hold"
	}
	fmt.Fprintf(&p.body, "<div class=\"verdict %s\"><p><strong>%s</strong> <span class=\"mark\">%s</span></p><p>%s</p>", class, text(question), word, text(answer))
	if cure != "" {
		fmt.Fprintf(&p.body, "<p class=\"cure\">%s</p>", text(cure))
	}
	p.body.WriteString("</div>\n")
}

// Table writes rows under their heads. In a column of numbers these are set to
// the right.
func (p *Page) Table(caption string, heads []string, rows [][]string) {
	p.body.WriteString("<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"" + text(caption) + "\"><table>\n")
	fmt.Fprintf(&p.body, "<caption>%s</caption>\n<thead><tr>", text(caption))
	number := make([]bool, len(heads))
	for i, h := range heads {
		class := ""
		if number[i] = numbers(rows, i); number[i] {
			class = " class=\"n\""
		}
		fmt.Fprintf(&p.body, "<th scope=\"col\"%s>%s</th>", class, text(h))
	}
	p.body.WriteString("</tr></thead>\n<tbody>\n")
	for _, row := range rows {
		p.body.WriteString("<tr>")
		for i, cell := range row {
			switch {
			case i < len(number) && number[i] && numeric(cell):
				fmt.Fprintf(&p.body, "<td class=\"n\">%s</td>", text(cell))
			case i == 0 && !numeric(cell):
				fmt.Fprintf(&p.body, "<th scope=\"row\">%s</th>", text(cell))
			default:
				fmt.Fprintf(&p.body, "<td>%s</td>", text(cell))
			}
		}
		p.body.WriteString(strings.Repeat("<td></td>", max(0, len(heads)-len(row))))
		p.body.WriteString("</tr>\n")
	}
	p.body.WriteString("</tbody></table></div>\n")
}

// numbers tells a column of numbers: three in four of its cells are.
func numbers(rows [][]string, column int) bool {
	is, full := 0, 0
	for _, r := range rows {
		if column >= len(r) || r[column] == "" {
			continue
		}
		full++
		if numeric(r[column]) {
			is++
		}
	}
	return is > 0 && 4*is >= 3*full
}

// numeric tells a number, with its unit or a range, from words that begin with
// one.
func numeric(cell string) bool {
	s := strings.TrimLeft(cell, "+-−")
	return s != "" && s[0] >= '0' && s[0] <= '9' && len(strings.Fields(s)) <= 3
}

// Lines writes lines of text as they stand, folded where the screen is narrow.
func (p *Page) Lines(lines []string) {
	fmt.Fprintf(&p.body, "<pre class=\"lines\">%s</pre>\n", text(strings.Join(lines, "\n")))
}

// Code writes program text as it stands.
func (p *Page) Code(source string) {
	fmt.Fprintf(&p.body, "<pre tabindex=\"0\"><code>%s</code></pre>\n", text(source))
}

// Picture writes an SVG picture made by Chart or Drawing, with a caption.
func (p *Page) Picture(svg template.HTML, caption string) {
	fmt.Fprintf(&p.body, "<figure>\n%s", svg)
	if caption != "" {
		fmt.Fprintf(&p.body, "<figcaption>%s</figcaption>", text(caption))
	}
	p.body.WriteString("</figure>\n")
}

// Raw writes markup that the program made itself; never a user's text.
func (p *Page) Raw(markup template.HTML) { p.body.WriteString(string(markup)) }

func (p *Page) close() {
	if p.open {
		p.body.WriteString("</section>\n")
		p.open = false
	}
}

// WriteTo writes the whole document. The page may not be added to afterwards.
func (p *Page) WriteTo(w io.Writer) (int64, error) {
	p.close()
	var b bytes.Buffer
	fmt.Fprintf(&b, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<meta name=\"color-scheme\" content=\"light dark\"/>\n<title>%s</title>\n<style>\n%s</style>\n</head>\n<body>\n<main>\n", text(p.title), style)
	b.Write(p.body.Bytes())
	b.WriteString("</main>\n</body>\n</html>\n")
	return b.WriteTo(w)
}

// text escapes words for HTML and drops what no document may hold.
func text(s string) string {
	s = strings.ToValidUTF8(s, "�")
	s = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r == 0x7f {
			return -1
		}
		return r
	}, s)
	return template.HTMLEscapeString(s)
}
