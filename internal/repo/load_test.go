package repo

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// source is one package, parsed and type-checked, without its tests.
type source struct {
	name  string
	fset  *token.FileSet
	files []*ast.File
	types *types.Package
	info  *types.Info
}

// exports maps import paths to the compiled declarations that the five
// packages depend on, themselves included.
var exports = sync.OnceValues(func() (map[string]string, error) {
	args := []string{"list", "-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}"}
	for _, p := range packages {
		args = append(args, "./"+p)
	}
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	files := map[string]string{}
	for line := range strings.Lines(string(out)) {
		if path, file, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
			files[path] = file
		}
	}
	return files, nil
})

// load reads the package in a directory below the module's root.
func load(dir string) (*source, error) {
	compiled, err := exports()
	if err != nil {
		return nil, err
	}
	s := &source{name: filepath.Base(dir), fset: token.NewFileSet(), info: &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{},
		Uses: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{},
	}}
	paths, err := filepath.Glob(filepath.Join(root, dir, "*.go"))
	if err != nil {
		return nil, err
	}
	for _, p := range paths {
		if strings.HasSuffix(p, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(s.fset, p, nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		s.files = append(s.files, f)
	}
	config := types.Config{Importer: importer.ForCompiler(s.fset, "gc", func(path string) (io.ReadCloser, error) {
		return os.Open(compiled[path])
	})}
	s.types, err = config.Check(module+"/"+dir, s.fset, s.files, s.info)
	return s, err
}

// five are the packages that users import, loaded once for all tests.
var five = sync.OnceValues(func() ([]*source, error) {
	var all []*source
	for _, dir := range packages {
		s, err := load(dir)
		if err != nil {
			return nil, err
		}
		all = append(all, s)
	}
	return all, nil
})

func loaded(t *testing.T) []*source {
	t.Helper()
	all, err := five()
	require.NoError(t, err)
	return all
}

// at is the place of a node, as file:line.
func (s *source) at(p token.Pos) string {
	pos := s.fset.Position(p)
	return fmt.Sprintf("%s:%d", filepath.Base(pos.Filename), pos.Line)
}

// comments are what the documentation of packages says, by name.
type comments struct {
	fields map[string]string // package.Type.Field -> comments of the field
	funcs  map[string]string // package.Func or package.Type.Method -> doc comment
}

func (c *comments) add(s *source) {
	for _, f := range s.files {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				c.funcs[s.name+"."+declared(d)] = d.Doc.Text()
			case *ast.GenDecl:
				eachField(d, func(name string, field *ast.Field) {
					c.fields[s.name+"."+name] = oneLine(field.Doc.Text() + " " + field.Comment.Text())
				})
			}
		}
	}
}

// eachField calls do with Type.Field and the line of each field that the
// declaration names.
func eachField(d *ast.GenDecl, do func(name string, field *ast.Field)) {
	for _, spec := range d.Specs {
		t, ok := spec.(*ast.TypeSpec)
		if !ok {
			continue
		}
		st, ok := t.Type.(*ast.StructType)
		if !ok {
			continue
		}
		for _, field := range st.Fields.List {
			for _, n := range field.Names {
				do(t.Name.Name+"."+n.Name, field)
			}
		}
	}
}

// declared is Func or Type.Method.
func declared(d *ast.FuncDecl) string {
	if t := receiver(d); t != "" {
		return t + "." + d.Name.Name
	}
	return d.Name.Name
}

// receiver is the name of the type that a method belongs to, "" for a function.
func receiver(d *ast.FuncDecl) string {
	if d.Recv == nil {
		return ""
	}
	t := d.Recv.List[0].Type
	if s, ok := t.(*ast.StarExpr); ok {
		t = s.X
	}
	if x, ok := t.(*ast.IndexExpr); ok {
		t = x.X
	}
	if id, ok := t.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}

// public reports whether users of the package can call d.
func public(d *ast.FuncDecl) bool {
	t := receiver(d)
	return d.Name.IsExported() && (t == "" || ast.IsExported(t))
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
