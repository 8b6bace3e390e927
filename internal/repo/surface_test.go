package repo

import (
	"fmt"
	"go/types"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

// TestSurfaceIsRecorded compares the exported surface of each package with
// testdata/api/PACKAGE.txt; -update rewrites the record.
func TestSurfaceIsRecorded(t *testing.T) {
	for _, s := range loaded(t) {
		t.Run(s.name, func(t *testing.T) {
			file := filepath.Join("testdata", "api", s.name+".txt")
			got := strings.Join(surface(s.types), "\n") + "\n"
			if *update {
				require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
				require.NoError(t, os.WriteFile(file, []byte(got), 0o600))
			}
			if _, err := os.Stat(filepath.Dir(file)); os.IsNotExist(err) {
				t.Skip("the surface is not recorded before it is settled")
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
				t.Errorf("the surface differs from the record (-recorded +now); if that is meant, run go test ./internal/repo -update\n%s", diff)
			}
		})
	}
}

// surface lists what a package exports, a line each for a constant, variable,
// function, type, field and method, sorted.
func surface(p *types.Package) []string {
	var out []string
	line := func(format string, a ...any) {
		out = append(out, "pkg "+p.Name()+", "+fmt.Sprintf(format, a...))
	}
	for _, n := range p.Scope().Names() {
		o := p.Scope().Lookup(n)
		if !o.Exported() {
			continue
		}
		switch o := o.(type) {
		case *types.Const:
			line("const %s %s = %s", n, typeText(p, o.Type()), o.Val().ExactString())
		case *types.Var:
			line("var %s %s", n, typeText(p, o.Type()))
		case *types.Func:
			line("func %s%s", n, signature(p, o.Type().(*types.Signature)))
		case *types.TypeName:
			describe(p, o, line)
		}
	}
	sort.Strings(out)
	return out
}

// describe lists a type with its exported fields and methods.
func describe(p *types.Package, o *types.TypeName, line func(string, ...any)) {
	n := o.Name()
	t := types.Unalias(o.Type())
	kind := typeText(p, t.Underlying())
	switch u := t.Underlying().(type) {
	case *types.Struct:
		kind = "struct"
		for i := range u.NumFields() {
			if f := u.Field(i); f.Exported() {
				line("type %s struct, %s %s", n, f.Name(), typeText(p, f.Type()))
			}
		}
	case *types.Interface:
		kind = "interface"
		for i := range u.NumMethods() {
			m := u.Method(i)
			name := m.Name() + signature(p, m.Type().(*types.Signature))
			if !m.Exported() {
				name = "unexported methods"
			}
			line("type %s interface, %s", n, name)
		}
	}
	if o.IsAlias() {
		kind = "= " + typeText(p, t)
	}
	line("type %s %s", n, kind)
	named, ok := t.(*types.Named)
	if !ok {
		return
	}
	for i := range named.NumMethods() {
		m := named.Method(i)
		if !m.Exported() {
			continue
		}
		sig := m.Type().(*types.Signature)
		receiver := n
		if _, pointer := sig.Recv().Type().(*types.Pointer); pointer {
			receiver = "*" + n
		}
		line("method (%s) %s%s", receiver, m.Name(), signature(p, sig))
	}
}

// signature words parameters and results by their types alone.
func signature(p *types.Package, s *types.Signature) string {
	list := func(v *types.Tuple, variadic bool) string {
		all := make([]string, v.Len())
		for i := range all {
			t := v.At(i).Type()
			if variadic && i == len(all)-1 {
				all[i] = "..." + typeText(p, t.(*types.Slice).Elem())
			} else {
				all[i] = typeText(p, t)
			}
		}
		return strings.Join(all, ", ")
	}
	text := "(" + list(s.Params(), s.Variadic()) + ")"
	switch s.Results().Len() {
	case 0:
		return text
	case 1:
		return text + " " + list(s.Results(), false)
	}
	return text + " (" + list(s.Results(), false) + ")"
}

// typeText names a type, without the package for the package's own.
func typeText(p *types.Package, t types.Type) string {
	if s, ok := t.(*types.Signature); ok {
		return "func" + signature(p, s)
	}
	return types.TypeString(t, func(q *types.Package) string {
		if q == p {
			return ""
		}
		return q.Name()
	})
}
