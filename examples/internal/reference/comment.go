package reference

import (
	"fmt"
	"go/doc/comment"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"cloche.example/examples/internal/page"
)

// section is a part of a package comment under one heading.
type section struct {
	head   string
	blocks []comment.Block
}

// sections returns the parts of a package comment; the first has no heading.
func sections(pkg string) ([]section, error) {
	text, err := records.ReadFile("docs/" + pkg + ".txt")
	if err != nil {
		return nil, err
	}
	all := []section{{}}
	for _, b := range new(comment.Parser).Parse(string(text)).Content {
		if h, ok := b.(*comment.Heading); ok {
			all = append(all, section{head: plain(&comment.Paragraph{Text: h.Text})})
			continue
		}
		last := &all[len(all)-1]
		last.blocks = append(last.blocks, b)
	}
	return all, nil
}

// plain returns a block's words in one line.
func plain(b comment.Block) string {
	p := comment.Printer{TextWidth: -1}
	return strings.Join(strings.Fields(string(p.Text(&comment.Doc{Content: []comment.Block{b}}))), " ")
}

// write sets one block.
func write(p *page.Page, under string, b comment.Block) error {
	switch b := b.(type) {
	case *comment.Code:
		head, rows, err := table(b.Text)
		switch {
		case err != nil:
			return fmt.Errorf("%s: %w", under, err)
		case rows != nil:
			p.Table(under, head, rows)
		default:
			p.Raw("<div class=\"scroll\">")
			p.Code(strings.TrimRight(b.Text, "\n"))
			p.Raw("</div>\n")
		}
	case *comment.List:
		var items []string
		for _, item := range b.Items {
			var words []string
			for _, c := range item.Content {
				words = append(words, plain(c))
			}
			items = append(items, strings.Join(words, " "))
		}
		p.List(items)
	default:
		p.Paragraph(plain(b))
	}
	return nil
}

var (
	columns = []string{"function", "equation", "range", "accuracy", "check"}
	gap     = regexp.MustCompile(`  +`)
	chunk   = regexp.MustCompile(`\S+( \S+)*`)
)

// table reads the table of functions in a package comment. Cells are parted by
// two blanks, or by one where the next head begins. A line that begins with a
// blank goes on with the row before. Other preformatted text is no table.
func table(text string) (head []string, rows [][]string, err error) {
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	first := gap.Split(lines[0], -1)
	if len(first) != len(columns) {
		return nil, nil, nil
	}
	starts := begins(lines[0])
	if strings.Join(first, " ") == strings.Join(columns, " ") {
		lines = lines[1:]
	} else if !strings.Contains(text, "Network.Solve  ") {
		return nil, nil, nil
	}
	for _, l := range lines {
		cells := cut(l, starts)
		if cells == nil {
			return nil, nil, fmt.Errorf("the row %q does not stand under its heads", l)
		}
		if n := len(rows); n > 0 && l[0] == ' ' {
			for i, c := range cells {
				rows[n-1][i] = strings.TrimSpace(rows[n-1][i] + " " + c)
			}
			continue
		}
		rows = append(rows, cells)
	}
	return columns, rows, nil
}

// begins returns the places, in characters, where the cells of a line begin.
func begins(line string) []int {
	var at []int
	for _, c := range chunk.FindAllStringIndex(line, -1) {
		at = append(at, utf8.RuneCountInString(line[:c[0]]))
	}
	return at
}

// cut returns the cells of a line, nil if it cannot be read.
func cut(line string, starts []int) []string {
	r := []rune(line)
	at := begins(line)
	if line[0] != ' ' {
		for _, from := range starts {
			if len(at) < len(columns) && from > 0 && from < len(r) && r[from-1] == ' ' && r[from] != ' ' && !slices.Contains(at, from) {
				at = append(at, from)
			}
		}
		slices.Sort(at)
		if len(at) != len(columns) {
			return nil
		}
	}
	cells := make([]string, len(columns))
	for i, from := range at {
		to := len(r)
		if i+1 < len(at) {
			to = at[i+1]
		}
		column := i
		if line[0] == ' ' {
			for k, s := range starts {
				if s <= from+1 {
					column = k
				}
			}
		}
		cells[column] = strings.TrimSpace(cells[column] + " " + string(r[from:to]))
	}
	return cells
}
