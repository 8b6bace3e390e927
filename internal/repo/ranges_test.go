package repo

import (
	"go/ast"
	"go/types"
	"maps"
	"strings"
)

const domainPath = module + "/internal/domain"

// limit is one end of a range; open means that it is itself refused.
type limit struct {
	value float64
	open  bool
}

type span struct {
	low, high limit
	unit      string
}

// input is a field of an exported struct or an argument of an exported
// function that the library checks against a range with constant ends.
type input struct {
	name    string // package.Type.Field, or package.Func(argument)
	allowed span
	place   string
}

// tracer finds the inputs of one package.
type tracer struct {
	*source
	params  map[types.Object]param           // parameters, by whose they are
	bodies  map[types.Object]*ast.BlockStmt  // functions and closures
	calls   map[types.Object][]*ast.CallExpr // their calls within the package
	values  map[types.Object]ast.Expr        // variables set once, by their value
	element map[types.Object]ast.Expr        // variables of range loops, by what is ranged over
	moved   map[types.Object]bool            // range variables whose ends are assigned to
	found   []input
}

type param struct {
	callable types.Object
	index    int
	public   string // package.Func, when users can call it
}

// inputs lists the checked inputs of a package.
func inputs(s *source) []input {
	t := &tracer{source: s, params: map[types.Object]param{}, bodies: map[types.Object]*ast.BlockStmt{},
		calls: map[types.Object][]*ast.CallExpr{}, values: map[types.Object]ast.Expr{},
		element: map[types.Object]ast.Expr{}, moved: map[types.Object]bool{}}
	for _, f := range s.files {
		ast.Inspect(f, t.declare)
	}
	for _, f := range s.files {
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			sel, ok := call.Fun.(*ast.SelectorExpr)
			if !ok || !t.isRange(sel.X) {
				return true
			}
			switch {
			case sel.Sel.Name == "Check" && len(call.Args) == 2:
				t.trace(call, sel.X, call.Args[1], nil, 0)
			case sel.Sel.Name == "Contains" && len(call.Args) == 1:
				t.trace(call, sel.X, call.Args[0], nil, 0)
			}
			return true
		})
	}
	return t.found
}

// declare notes functions, closures, calls and variables.
func (t *tracer) declare(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.FuncDecl:
		name := ""
		if public(n) {
			name = t.name + "." + declared(n)
		}
		t.function(t.info.Defs[n.Name], n.Type, n.Body, name)
	case *ast.CallExpr:
		if obj := t.callee(n); obj != nil {
			t.calls[obj] = append(t.calls[obj], n)
		}
	case *ast.AssignStmt:
		for i, left := range n.Lhs {
			switch left := left.(type) {
			case *ast.Ident:
				if obj := t.info.Defs[left]; obj != nil && len(n.Lhs) == len(n.Rhs) {
					t.variable(obj, n.Rhs[i])
				} else if obj := t.info.Uses[left]; obj != nil {
					delete(t.values, obj)
					t.moved[obj] = true
				}
			case *ast.SelectorExpr:
				if id, ok := left.X.(*ast.Ident); ok && (left.Sel.Name == "Min" || left.Sel.Name == "Max") {
					t.moved[t.info.Uses[id]] = true
				}
			}
		}
	case *ast.ValueSpec:
		for i, id := range n.Names {
			if i < len(n.Values) {
				t.variable(t.info.Defs[id], n.Values[i])
			}
		}
	case *ast.RangeStmt:
		if id, ok := n.Value.(*ast.Ident); ok {
			if obj := t.info.Defs[id]; obj != nil {
				t.element[obj] = n.X
			}
		}
	}
	return true
}

func (t *tracer) variable(obj types.Object, value ast.Expr) {
	if f, ok := value.(*ast.FuncLit); ok {
		t.function(obj, f.Type, f.Body, "")
		return
	}
	t.values[obj] = value
}

func (t *tracer) function(obj types.Object, typ *ast.FuncType, body *ast.BlockStmt, public string) {
	t.bodies[obj] = body
	i := 0
	for _, f := range typ.Params.List {
		for _, n := range f.Names {
			t.params[t.info.Defs[n]] = param{obj, i, public}
			i++
		}
		if len(f.Names) == 0 {
			i++
		}
	}
}

// callee is the function, method or closure of this package that a call calls.
func (t *tracer) callee(call *ast.CallExpr) types.Object {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return t.info.Uses[f]
	case *ast.SelectorExpr:
		return t.info.Uses[f.Sel]
	}
	return nil
}

func (t *tracer) isRange(e ast.Expr) bool {
	n := named(t.info.TypeOf(e))
	return n != nil && n.Obj().Name() == "Range" && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == domainPath
}

func named(typ types.Type) *types.Named {
	if typ == nil {
		return nil
	}
	typ = types.Unalias(typ)
	if p, ok := typ.(*types.Pointer); ok {
		typ = types.Unalias(p.Elem())
	}
	n, _ := typ.(*types.Named)
	return n
}

// bound gives parameters the arguments of the call that is being followed.
type bound map[types.Object]ast.Expr

// trace notes the input that value is, if the ends of the range are constant.
// A range or a value that is a parameter is followed to each call.
func (t *tracer) trace(at ast.Node, r, value ast.Expr, b bound, depth int) {
	name, owner := t.target(value, b)
	if owner == nil {
		owner = t.unbound(r, b)
	}
	if owner != nil {
		if depth < 4 {
			for _, call := range t.calls[owner] {
				t.trace(at, r, value, t.bind(owner, call, b), depth+1)
			}
		}
		return
	}
	if !strings.HasPrefix(name, t.name+".") { // computed, or told by the package that it belongs to
		return
	}
	if s, ok := t.span(r, b); ok {
		if t.through(b) && s.low.value == 0 {
			s.low.open = true
		}
		t.found = append(t.found, input{name, s, t.at(at.Pos())})
	}
}

// positive is the name of the helpers that leave the zero out of a range.
const positive = "positive"

// through reports whether a parameter of positive is bound.
func (t *tracer) through(b bound) bool {
	for obj := range b {
		if t.params[obj].callable.Name() == positive {
			return true
		}
	}
	return false
}

func (t *tracer) bind(owner types.Object, call *ast.CallExpr, b bound) bound {
	out := maps.Clone(b)
	if out == nil {
		out = bound{}
	}
	for obj, p := range t.params {
		if p.callable == owner && p.index < len(call.Args) {
			out[obj] = call.Args[p.index]
		}
	}
	return out
}

// target names the input that e stands for, or the function whose calls must
// be followed to tell; neither for what is computed.
func (t *tracer) target(e ast.Expr, b bound) (name string, follow types.Object) {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return t.target(e.X, b)
	case *ast.StarExpr:
		return t.target(e.X, b)
	case *ast.IndexExpr:
		return t.target(e.X, b)
	case *ast.SliceExpr:
		return t.target(e.X, b)
	case *ast.CallExpr:
		if t.info.Types[e.Fun].IsType() && len(e.Args) == 1 {
			if _, enum := types.Unalias(t.info.TypeOf(e.Args[0])).(*types.Named); enum && isInteger(t.info.TypeOf(e.Args[0])) {
				return "", nil
			}
			return t.target(e.Args[0], b)
		}
		if sel, ok := e.Fun.(*ast.SelectorExpr); ok && len(e.Args) == 0 {
			if n := named(t.info.TypeOf(sel.X)); n != nil && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == "time" && n.Obj().Name() == "Duration" {
				return t.target(sel.X, b)
			}
		}
	case *ast.SelectorExpr:
		s := t.info.Selections[e]
		if s == nil || s.Kind() != types.FieldVal {
			return "", nil
		}
		n := named(t.info.TypeOf(e.X))
		if n == nil || !n.Obj().Exported() || !s.Obj().Exported() || n.Obj().Pkg() == nil || !strings.HasPrefix(n.Obj().Pkg().Path(), module) {
			return "", nil
		}
		if strings.HasPrefix(n.Obj().Pkg().Path(), module+"/internal/") && n.Obj().Pkg() != t.types {
			return "", nil
		}
		return n.Obj().Pkg().Name() + "." + n.Obj().Name() + "." + s.Obj().Name(), nil
	case *ast.Ident:
		obj := t.info.Uses[e]
		if obj == nil {
			return "", nil
		}
		if arg, ok := b[obj]; ok {
			return t.target(arg, b)
		}
		if p, ok := t.params[obj]; ok {
			if p.public != "" {
				return p.public + "(" + obj.Name() + ")", nil
			}
			return "", p.callable
		}
		if x, ok := t.element[obj]; ok {
			return t.target(x, b)
		}
		if v, ok := t.values[obj]; ok && !t.moved[obj] && obj.Parent() != t.types.Scope() {
			return t.target(v, b)
		}
	}
	return "", nil
}

func isInteger(typ types.Type) bool {
	basic, ok := typ.Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsInteger != 0
}
