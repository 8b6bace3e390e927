package repo

import (
	"bytes"
	"flag"
	"fmt"
	"go/ast"
	"go/token"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var state = flag.String("state", "", "write the missing ranges into the comments of this package")

// TestWriteRangesIntoComments, run with -state PACKAGE, puts the range of each
// checked input that has none into the trailing comment of its field, or at the
// end of the doc comment of its function. The rest is left to the reader: what
// is checked against several ranges, and comments that give a wrong one.
func TestWriteRangesIntoComments(t *testing.T) {
	if *state == "" {
		t.Skip("only with -state PACKAGE")
	}
	said := &comments{map[string]string{}, map[string]string{}}
	var s *source
	for _, p := range loaded(t) {
		said.add(p)
		if p.name == *state {
			s = p
		}
	}
	require.NotNil(t, s, *state)
	for file, text := range stated(s, said) {
		require.NoError(t, os.WriteFile(file, text, 0o600))
	}
}

// stated returns the files of a package that change, with ranges written into
// their comments.
func stated(s *source, said *comments) map[string][]byte {
	missing := map[string][]span{}
	for _, in := range inputs(s) {
		if !said.give(in) && !slices.Contains(missing[in.name], in.allowed) {
			missing[in.name] = append(missing[in.name], in.allowed)
		}
	}
	edits := map[string]map[int]string{} // file -> offset -> text to insert
	insert := func(p token.Pos, text string) {
		at := s.fset.Position(p)
		if edits[at.Filename] == nil {
			edits[at.Filename] = map[int]string{}
		}
		if edits[at.Filename][at.Offset] == "" {
			edits[at.Filename][at.Offset] = text
		}
	}
	for _, f := range s.files {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				var all []string
				for _, p := range d.Type.Params.List {
					for _, n := range p.Names {
						if m := missing[s.name+"."+declared(d)+"("+n.Name+")"]; len(m) == 1 {
							all = append(all, fmt.Sprintf("%s, %s", n.Name, m[0]))
						}
					}
				}
				if len(all) > 0 && d.Doc != nil {
					insert(d.Doc.End(), "\n// Accepted: "+strings.Join(all, "; ")+".")
				}
			case *ast.GenDecl:
				eachField(d, func(name string, field *ast.Field) {
					m := missing[s.name+"."+name]
					if len(m) == 1 && field.Comment != nil && len(field.Comment.List) == 1 {
						c := field.Comment.List[0]
						if at := afterUnit(c.Text, m[0].unit); at > 0 {
							insert(c.Pos()+token.Pos(at), ", "+m[0].words())
						}
					}
				})
			}
		}
	}
	out := map[string][]byte{}
	for file, at := range edits {
		text, err := os.ReadFile(file)
		if err != nil {
			continue
		}
		offsets := []int{}
		for o := range at {
			offsets = append(offsets, o)
		}
		slices.Sort(offsets)
		var b bytes.Buffer
		from := 0
		for _, o := range offsets {
			b.Write(text[from:o])
			b.WriteString(at[o])
			from = o
		}
		b.Write(text[from:])
		out[file] = b.Bytes()
	}
	return out
}

// afterUnit is the place in a trailing comment where the range goes: behind the
// unit if the comment begins with it, for a number without one behind its first
// words; 0 if the comment begins in another way or gives a range.
func afterUnit(comment, unit string) int {
	const mark = "// "
	if !strings.HasPrefix(comment, mark) || len(statements(comment)) > 0 {
		return 0
	}
	rest := comment[len(mark):]
	if !plain(unit) {
		if strings.HasPrefix(rest, unit) && (len(rest) == len(unit) || strings.ContainsRune(" ,;:", rune(rest[len(unit)]))) {
			return len(mark) + len(unit)
		}
		return 0
	}
	if end := regexp.MustCompile(`[,;:(]`).FindStringIndex(rest); end != nil {
		return len(mark) + len(strings.TrimRight(rest[:end[0]], " "))
	}
	return len(comment)
}

func TestAfterUnit(t *testing.T) {
	for comment, want := range map[string]string{
		"// m²":                        "// m²@",
		"// m², of the floor":          "// m²@, of the floor",
		"// fraction of the sky":       "// fraction of the sky@",
		"// m, 0 to 5":                 "",
		"// of the floor, m²":          "",
		"// dimensionless; of the sky": "// dimensionless@; of the sky",
		"// m²x":                       "",
	} {
		unit := "m²"
		if !strings.Contains(comment, unit) {
			unit = "fraction"
		}
		at := afterUnit(comment, unit)
		got := ""
		if at > 0 {
			got = comment[:at] + "@" + comment[at:]
		}
		require.Equal(t, want, got)
	}
}
