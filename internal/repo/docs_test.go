package repo

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// unit matches a unit, or a word that says a number has none.
var unit = regexp.MustCompile(`°C|\bK\b|\bPa\b|\bkg\b|\bkmol\b|\bJ\b|\bMJ\b|\bW\b|\bm\b|\bm[²³]|\bs\b|µmol|\bmol\b|\blm\b|\blx\b|\bcd\b|\bnm\b|\bsr\b|\bh\b|\bHz\b|\bL\b|` +
	`[Dd]egree|[Ff]raction|[Dd]imensionless|[Rr]atio|[Cc]urrency|[Cc]ount|[Ff]actor|[Ee]xponent|[Pp]er cent|air changes|any unit|same unit|unit of|number of|\bmm\b|kWh`)

func parse(t *testing.T, dir string) (*token.FileSet, []*ast.File) {
	t.Helper()
	fset := token.NewFileSet()
	paths, err := filepath.Glob(filepath.Join(root, dir, "*.go"))
	require.NoError(t, err)
	var files []*ast.File
	for _, p := range paths {
		if strings.HasSuffix(p, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, p, nil, parser.ParseComments)
		require.NoError(t, err)
		files = append(files, f)
	}
	require.NotEmpty(t, files)
	return fset, files
}

// TestEveryExportedNameIsDocumentedWithItsUnit reads the five packages. A
// function's comment names each float64 parameter and a unit; a float64 field
// has its unit in its own comment; a type, constant or variable has a comment
// of its own or of its group.
func TestEveryExportedNameIsDocumentedWithItsUnit(t *testing.T) {
	for _, dir := range packages {
		t.Run(dir, func(t *testing.T) {
			fset, files := parse(t, dir)
			var faults []string
			for _, f := range files {
				faults = append(faults, undocumented(fset, f)...)
			}
			sort.Strings(faults)
			for _, f := range faults {
				t.Error(f)
			}
		})
	}
}

func undocumented(fset *token.FileSet, f *ast.File) (faults []string) {
	fault := func(p token.Pos, format string, a ...any) {
		pos := fset.Position(p)
		faults = append(faults, fmt.Sprintf("%s:%d: %s", filepath.Base(pos.Filename), pos.Line, fmt.Sprintf(format, a...)))
	}
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if !d.Name.IsExported() || !exportedReceiver(d) {
				continue
			}
			doc := d.Doc.Text()
			if doc == "" {
				fault(d.Pos(), "%s has no comment", d.Name.Name)
				continue
			}
			names, in := floats(d.Type.Params)
			_, out := floats(d.Type.Results)
			for _, n := range names {
				if !regexp.MustCompile(`\b` + regexp.QuoteMeta(n) + `\b`).MatchString(doc) {
					fault(d.Pos(), "the comment of %s does not speak of its parameter %s", d.Name.Name, n)
				}
			}
			if (in || out) && !unit.MatchString(doc) {
				fault(d.Pos(), "the comment of %s states no unit", d.Name.Name)
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				switch s := s.(type) {
				case *ast.TypeSpec:
					if !s.Name.IsExported() {
						continue
					}
					if d.Doc.Text() == "" && s.Doc.Text() == "" {
						fault(s.Pos(), "%s has no comment", s.Name.Name)
					}
					if st, ok := s.Type.(*ast.StructType); ok {
						for _, field := range st.Fields.List {
							for _, n := range field.Names {
								text := field.Doc.Text() + " " + field.Comment.Text()
								if !n.IsExported() {
									continue
								}
								if strings.TrimSpace(text) == "" {
									fault(field.Pos(), "field %s.%s has no comment", s.Name.Name, n.Name)
								} else if isFloat(field.Type) && !unit.MatchString(text) {
									fault(field.Pos(), "field %s.%s states no unit", s.Name.Name, n.Name)
								}
							}
						}
					}
				case *ast.ValueSpec:
					for _, n := range s.Names {
						if n.IsExported() && d.Doc.Text() == "" && s.Doc.Text() == "" && s.Comment.Text() == "" {
							fault(s.Pos(), "%s has no comment", n.Name)
						}
					}
				}
			}
		}
	}
	return faults
}

func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	t := d.Recv.List[0].Type
	if s, ok := t.(*ast.StarExpr); ok {
		t = s.X
	}
	id, ok := t.(*ast.Ident)
	return !ok || id.IsExported()
}

// floats returns the names of a list's float64 entries, slices and arrays of
// them included, and whether there is any.
func floats(list *ast.FieldList) (names []string, found bool) {
	if list == nil {
		return nil, false
	}
	for _, f := range list.List {
		if !isFloat(f.Type) {
			continue
		}
		found = true
		for _, n := range f.Names {
			if n.Name != "_" {
				names = append(names, n.Name)
			}
		}
	}
	return names, found
}

func isFloat(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name == "float64"
	case *ast.ArrayType:
		return isFloat(e.Elt)
	case *ast.Ellipsis:
		return isFloat(e.Elt)
	case *ast.StarExpr:
		return isFloat(e.X)
	}
	return false
}

func TestUndocumentedFindsEachFault(t *testing.T) {
	src := `package x
// Speed of air at h, m/s.
func Speed(h, k float64) float64 { return h }
// Heat is a heat.
func Heat() float64 { return 0 }
func Bare() {}
type T struct {
	A float64 // a number
	B float64 // W
	C int
}
`
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "x.go", src, parser.ParseComments)
	require.NoError(t, err)
	got := strings.Join(undocumented(fset, f), "\n")
	for _, want := range []string{
		"x.go:3: the comment of Speed does not speak of its parameter k",
		"x.go:5: the comment of Heat states no unit",
		"x.go:6: Bare has no comment",
		"T has no comment",
		"field T.A states no unit",
		"field T.C has no comment",
	} {
		require.Contains(t, got, want)
	}
	require.NotContains(t, got, "T.B")
	require.NotContains(t, got, "parameter h")
}

// TestEachPackageNamesItsSources wants a list of sources under short keys in
// doc.go or a file that continues it, and every key in square brackets elsewhere
// in the package to stand in that list.
func TestEachPackageNamesItsSources(t *testing.T) {
	key := regexp.MustCompile(`\[([A-Z][A-Za-z&]{1,10}\d{2}[a-z]?)\]`)
	for _, dir := range packages {
		t.Run(dir, func(t *testing.T) {
			fset, files := parse(t, dir)
			doc := ""
			for _, f := range files {
				if base := filepath.Base(fset.Position(f.Pos()).Filename); base == "doc.go" || strings.HasPrefix(base, "doc_") {
					doc += f.Doc.Text()
				}
			}
			_, sources, found := strings.Cut(doc, "# Sources")
			require.True(t, found, "doc.go has no heading Sources")
			for _, f := range files {
				for _, g := range f.Comments {
					for _, m := range key.FindAllStringSubmatch(g.Text(), -1) {
						if !regexp.MustCompile(`(?m)^\s*` + m[1] + `\b`).MatchString(sources) {
							t.Errorf("%s cites [%s], which doc.go does not list", fset.Position(g.Pos()), m[1])
						}
					}
				}
			}
		})
	}
}
