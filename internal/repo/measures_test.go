package repo

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"path/filepath"
	"regexp"
	"sort"
	"strings"
)

// identifiers lists the exported names of a package's scope.
func identifiers(s *source) []string {
	var out []string
	for _, n := range s.types.Scope().Names() {
		if ast.IsExported(n) {
			out = append(out, n)
		}
	}
	return out
}

// functions lists the exported functions and the exported methods of exported
// types.
func functions(s *source) (funcs, methods []*ast.FuncDecl) {
	for _, f := range s.files {
		for _, d := range f.Decls {
			if d, ok := d.(*ast.FuncDecl); ok && public(d) {
				if d.Recv == nil {
					funcs = append(funcs, d)
				} else {
					methods = append(methods, d)
				}
			}
		}
	}
	return funcs, methods
}

// variables lists exported variables other than errors.
func variables(s *source) []string {
	var out []string
	fault := types.Universe.Lookup("error").Type()
	for _, n := range identifiers(s) {
		if v, ok := s.types.Scope().Lookup(n).(*types.Var); ok && !types.Identical(v.Type(), fault) {
			out = append(out, n)
		}
	}
	return out
}

// shown is what the rest of the repository uses of the five packages.
type shown struct {
	funcs   map[string]bool            // package.Func
	methods map[string]map[string]bool // method name -> where it is used: a package, or "" for programs and examples
}

// uses reads programs, the library code of all packages and documentation
// examples. A method counts as used wherever a method of that name is.
func uses(dir string) (*shown, error) {
	u := &shown{map[string]bool{}, map[string]map[string]bool{}}
	ours := map[string]bool{}
	for _, p := range packages {
		ours[p] = true
	}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := filepath.Base(path)
		if d.IsDir() {
			if base == "testdata" || strings.HasPrefix(base, ".") && path != dir {
				return fs.SkipDir
			}
			return nil
		}
		test := strings.HasSuffix(base, "_test.go")
		if !strings.HasSuffix(base, ".go") || test && !strings.HasPrefix(base, "example") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		from := f.Name.Name
		if test || !ours[from] {
			from = ""
		}
		ast.Inspect(f, func(n ast.Node) bool {
			sel, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := sel.X.(*ast.Ident); ok && ours[x.Name] {
				u.funcs[x.Name+"."+sel.Sel.Name] = true
				return true
			}
			if u.methods[sel.Sel.Name] == nil {
				u.methods[sel.Sel.Name] = map[string]bool{}
			}
			u.methods[sel.Sel.Name][from] = true
			return true
		})
		return nil
	})
	return u, err
}

// unshown lists functions and methods of a package that no program, no
// documentation example and no other package uses. What the language or fmt
// calls by itself counts as used.
func unshown(s *source, u *shown) []string {
	byItself := map[string]bool{"String": true, "Error": true, "Is": true, "Unwrap": true}
	var out []string
	funcs, methods := functions(s)
	for _, d := range funcs {
		if !u.funcs[s.name+"."+d.Name.Name] {
			out = append(out, d.Name.Name)
		}
	}
	for _, d := range methods {
		used := byItself[d.Name.Name]
		for from := range u.methods[d.Name.Name] {
			used = used || from != s.name
		}
		if !used {
			out = append(out, declared(d))
		}
	}
	sort.Strings(out)
	return out
}

// units are those of the library, longest first, to read an argument's.
var units = regexp.MustCompile(`W/\(m² K\)|W/\(m K\)|W/m²|W/K|J/\(kg K\)|J/\(m³ K\)|J/kg|J/K|J/m²|kg/kg|kg/m³|kg/\(s m²\)|kg/s|µmol/\(m² s\)|µmol/s|µmol/J|mol/\(m² d\)|` +
	`m³/s|m/s|m² K/W|Pa s|m²|m³|°C|\bK\b|\bPa\b|\bW\b|\bJ\b|\bkg\b|\bs\b|\bh\b|\bm\b|\bdegrees?\b|\bfractions?\b|\bnm\b|\blm\b|\blx\b|\bcd\b`)

// argumentUnit reads the unit of an argument from the doc comment of its
// function: the first unit between a mention of it and the next argument or
// full stop. Arguments joined by commas or "and" alone share the unit of the
// last one. "" means that the comment gives none in this form.
func argumentUnit(doc, argument string, others []string) string {
	for _, m := range regexp.MustCompile(`\b`+regexp.QuoteMeta(argument)+`\b`).FindAllStringIndex(doc, -1) {
		rest := doc[m[1]:]
		if stop := regexp.MustCompile(`\.(\s|$)`).FindStringIndex(rest); stop != nil {
			rest = rest[:stop[0]]
		}
		next, following := len(rest), ""
		for _, o := range others {
			if at := regexp.MustCompile(`\b` + regexp.QuoteMeta(o) + `\b`).FindStringIndex(rest); o != argument && at != nil && at[0] < next {
				next, following = at[0], o
			}
		}
		if u := units.FindString(rest[:next]); u != "" {
			return strings.NewReplacer("degrees", "degree", "fractions", "fraction").Replace(u)
		}
		if joint.MatchString(rest[:next]) && following != "" {
			return argumentUnit(doc[m[1]+next:], following, others)
		}
	}
	return ""
}

var joint = regexp.MustCompile(`^[\s,]*(and|or|to)?\s*$`)

// rows lists functions and methods that take four float64 in a row, or three
// or more of one unit.
func rows(s *source) []string {
	var out []string
	funcs, methods := functions(s)
	for _, d := range append(funcs, methods...) {
		run, longest := 0, 0
		alike := map[string]int{}
		doc := strings.NewReplacer("'s", "", "’s", "").Replace(oneLine(d.Doc.Text())) // a possessive is no second
		names, _ := floats(d.Type.Params)
		for _, f := range d.Type.Params.List {
			id, ok := f.Type.(*ast.Ident)
			if !ok || id.Name != "float64" {
				run = 0
				continue
			}
			run += len(f.Names)
			longest = max(longest, run)
			for _, n := range f.Names {
				alike[argumentUnit(doc, n.Name, names)]++
			}
		}
		if longest >= 4 {
			out = append(out, fmt.Sprintf("%s takes %d float64 in a row", declared(d), longest))
		}
		for unit, n := range alike {
			if n >= 3 && unit != "" {
				out = append(out, fmt.Sprintf("%s takes %d arguments in %s", declared(d), n, unit))
			}
		}
	}
	sort.Strings(out)
	return out
}

// constructor matches names of functions that make a value.
var constructor = regexp.MustCompile(`^(New|Default|From|Find)[A-Z]`)

// pointerMethods lists types that a constructor or a function without
// arguments returns by value although some of their methods have a pointer for
// a receiver, so that what it returns cannot be used at once.
func pointerMethods(s *source) []string {
	seen := map[string]bool{}
	var out []string
	for _, n := range identifiers(s) {
		f, ok := s.types.Scope().Lookup(n).(*types.Func)
		if !ok {
			continue
		}
		sig := f.Type().(*types.Signature)
		if sig.Results().Len() == 0 || !constructor.MatchString(n) && sig.Params().Len() > 0 {
			continue
		}
		t, ok := types.Unalias(sig.Results().At(0).Type()).(*types.Named)
		if !ok || t.Obj().Pkg() != s.types {
			continue
		}
		for i := range t.NumMethods() {
			m := t.Method(i)
			_, pointer := m.Type().(*types.Signature).Recv().Type().(*types.Pointer)
			fault := fmt.Sprintf("%s returns %s by value, and %s has a pointer receiver", n, t.Obj().Name(), m.Name())
			if m.Exported() && pointer && !seen[t.Obj().Name()] {
				seen[t.Obj().Name()] = true
				out = append(out, fault)
			}
		}
	}
	return out
}

// silentEnums lists exported integer types with constants and no String.
func silentEnums(s *source) []string {
	constants := map[*types.TypeName]int{}
	for _, n := range s.types.Scope().Names() {
		if c, ok := s.types.Scope().Lookup(n).(*types.Const); ok {
			if t, ok := c.Type().(*types.Named); ok && isInteger(t) && t.Obj().Pkg() == s.types && t.Obj().Exported() {
				constants[t.Obj()]++
			}
		}
	}
	var out []string
	for t, n := range constants {
		if m, _, _ := types.LookupFieldOrMethod(t.Type(), true, s.types, "String"); n > 1 && m == nil {
			out = append(out, t.Name())
		}
	}
	sort.Strings(out)
	return out
}

// clashes lists names that another package exports, too, the shared errors
// apart.
func clashes(s *source, all []*source) []string {
	var out []string
	for _, n := range identifiers(s) {
		if n == "RangeError" || strings.HasPrefix(n, "Err") {
			continue
		}
		for _, other := range all {
			if other != s && other.types.Scope().Lookup(n) != nil {
				out = append(out, n+" also in "+other.name)
			}
		}
	}
	return out
}
