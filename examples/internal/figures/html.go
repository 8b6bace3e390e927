package figures

import (
	"embed"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"html/template"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"cloche.example/examples/internal/formula"
	"cloche.example/examples/internal/page"
)

//go:embed *.go
var sources embed.FS

// Form is what a served page shows around a figure; the zero Form gives a page
// that only shows.
type Form struct {
	On     bool     // the given values can be changed
	Wrote  []string // what the reader wrote, to show again; nil for the values used
	Faults []string // why it was refused; the values used are then the ones before
}

// WriteHTML writes the figure's page for the values.
func (f Figure) WriteHTML(w io.Writer, v []float64, form Form) error {
	r, err := f.Run(v)
	if err != nil {
		return err
	}
	p := page.New(f.Title, f.Question)
	f.writePath(p)
	p.Paragraph(f.origin() + " Computed by package " + f.Package + ".")
	if f.Sketch != "" {
		p.Paragraph(f.Sketch)
	}
	if r.Picture.SVG != "" {
		p.Picture(r.Picture.SVG, r.Picture.Caption)
	}
	p.Section("Given")
	f.writeGiven(p, v, form)
	p.Section("Steps")
	p.Raw("<ol>\n")
	for _, s := range r.Steps {
		if err := s.writeHTML(p); err != nil {
			return err
		}
	}
	p.Raw("</ol>\n")
	p.Section("Answer")
	writeLines(p, r.Lines)
	if r.Printed != "" {
		p.Paragraph("The source prints: " + r.Printed)
	}
	if len(f.Assumes) > 0 {
		p.Section("It assumes")
		p.List(f.Assumes)
	}
	if len(f.Change) > 0 {
		p.Section("To change")
		p.List(f.Change)
	}
	f.writeAlso(p)
	if code := f.code(); code != "" {
		p.Section("The code that computes it")
		p.Code(code)
	}
	_, err = p.WriteTo(w)
	return err
}

func (s Step) writeHTML(p *page.Page) error {
	whole, put, err := s.put()
	if err != nil {
		return err
	}
	esc := template.HTMLEscapeString
	fmt.Fprintf(raw{p}, "<li><p>%s%s</p>\n", esc(s.Says), esc(source(s.Source)))
	if s.Formula != "" {
		fmt.Fprintf(raw{p}, "<div class=\"scroll\">%s</div>\n", whole.MathML())
		if len(whole.Names()) > 0 {
			fmt.Fprintf(raw{p}, "<div class=\"scroll\">%s</div>\n", put.MathML())
		}
	}
	name, value := s.answer()
	if name != "" {
		name = symbol(name) + " = "
	}
	fmt.Fprintf(raw{p}, "<p class=\"answer\">%s%s</p></li>\n", name, powers.ReplaceAllString(esc(value), "$1 × 10<sup>$2</sup>"))
	return nil
}

// writeLines writes lines that keep their columns, and long ones, such as a
// caution, as words.
func writeLines(p *page.Page, lines []string) {
	var block []string
	flush := func() {
		for len(block) > 0 && block[len(block)-1] == "" {
			block = block[:len(block)-1]
		}
		if len(block) > 0 {
			fmt.Fprintf(raw{p}, "<pre class=\"columns\" tabindex=\"0\">%s</pre>\n", template.HTMLEscapeString(strings.Join(block, "\n")))
		}
		block = nil
	}
	for _, l := range lines {
		if utf8.RuneCountInString(l) > longest {
			flush()
			p.Note(l)
			continue
		}
		block = append(block, l)
	}
	flush()
}

// powers finds a power of ten as programs write it.
var powers = regexp.MustCompile(`^(-?[0-9.]+)e(-?[0-9]+)`)

// symbol sets a symbol with its index: t_i, U_{film}.
func symbol(s string) string {
	base, index, ok := strings.Cut(s, "_")
	out := "<i>" + template.HTMLEscapeString(base) + "</i>"
	if ok {
		out += "<sub>" + template.HTMLEscapeString(strings.Trim(index, "{}")) + "</sub>"
	}
	return out
}

// raw lets fmt write markup to a page.
type raw struct{ p *page.Page }

func (r raw) Write(b []byte) (int, error) {
	r.p.Raw(template.HTML(b))
	return len(b), nil
}

func (f Figure) writeGiven(p *page.Page, v []float64, form Form) {
	if !form.On {
		out, esc := raw{p}, template.HTMLEscapeString
		fmt.Fprint(out, "<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"Given values\"><table>\n<thead><tr><th scope=\"col\">what</th><th scope=\"col\">symbol</th><th scope=\"col\" class=\"n\">value</th><th scope=\"col\">unit</th><th scope=\"col\" class=\"n\">may be</th></tr></thead>\n<tbody>\n")
		for i, g := range f.Given {
			fmt.Fprintf(out, "<tr><th scope=\"row\">%s</th><td>%s</td><td class=\"n\">%s</td><td>%s</td><td class=\"n\">%s to %s</td></tr>\n", esc(g.Name), symbol(g.Symbol), formula.Number(v[i], 6), esc(g.Unit), formula.Number(g.Low, 6), formula.Number(g.High, 6))
		}
		fmt.Fprint(out, "</tbody></table></div>\n")
		return
	}
	out := raw{p}
	esc := template.HTMLEscapeString
	if len(form.Faults) > 0 {
		fmt.Fprint(out, "<div class=\"note\" role=\"alert\" id=\"faults\"><p>Not taken; the answer below is still for the values before.</p><ul>\n")
		for _, fault := range form.Faults {
			fmt.Fprintf(out, "<li>%s</li>\n", esc(fault))
		}
		fmt.Fprint(out, "</ul></div>\n")
	}
	fmt.Fprint(out, "<form method=\"get\" class=\"given\">\n")
	for i, g := range f.Given {
		shown := formula.Number(v[i], 12)
		if form.Wrote != nil {
			shown = form.Wrote[i]
		}
		wrong := ""
		if slices.ContainsFunc(form.Faults, func(s string) bool { return strings.HasPrefix(s, g.Name) }) {
			wrong = ` aria-invalid="true"`
		}
		fmt.Fprintf(out, "<p><label for=\"v%d\">%s, %s</label> <input id=\"v%d\" name=\"v%d\" inputmode=\"decimal\" autocomplete=\"off\" maxlength=\"40\" value=\"%s\" aria-describedby=\"r%d\"%s/> <span id=\"r%d\">%s, %s to %s</span><input type=\"hidden\" name=\"w%d\" value=\"%s\"/></p>\n",
			i, esc(g.Name), symbol(g.Symbol), i, i, esc(shown), i, wrong, i, esc(g.Unit), formula.Number(g.Low, 6), formula.Number(g.High, 6), i, strconv.FormatFloat(v[i], 'g', -1, 64))
	}
	fmt.Fprintf(out, "<p><button type=\"submit\">Compute</button> <a href=\"%s.html\">as it was</a></p></form>\n", f.Name)
}

// code returns the source of the function that computes the figure.
func (f Figure) code() string {
	files, err := sources.ReadDir(".")
	if err != nil {
		return ""
	}
	for _, file := range files {
		text, err := sources.ReadFile(file.Name())
		if err != nil || !strings.Contains(string(text), "func "+f.Code+"(") {
			continue
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file.Name(), text, parser.ParseComments)
		if err != nil {
			return ""
		}
		for _, d := range tree.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == f.Code {
				from := fn.Pos()
				if fn.Doc != nil {
					from = fn.Doc.Pos()
				}
				return string(text[set.Position(from).Offset:set.Position(fn.End()).Offset])
			}
		}
	}
	return ""
}
