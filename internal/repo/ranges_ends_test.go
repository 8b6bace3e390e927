package repo

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math"
)

// unbound returns the function whose parameter the range r is.
func (t *tracer) unbound(r ast.Expr, b bound) types.Object {
	id, ok := r.(*ast.Ident)
	if !ok {
		return nil
	}
	obj := t.info.Uses[id]
	if arg, ok := b[obj]; ok {
		return t.unbound(arg, b)
	}
	return t.params[obj].callable
}

// span evaluates a range whose ends are constant.
func (t *tracer) span(e ast.Expr, b bound) (span, bool) {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return t.span(e.X, b)
	case *ast.Ident:
		obj := t.info.Uses[e]
		if t.moved[obj] {
			return span{}, false
		}
		if arg, ok := b[obj]; ok {
			return t.span(arg, b)
		}
		if v, ok := t.values[obj]; ok {
			return t.span(v, b)
		}
	case *ast.CallExpr:
		if f, ok := e.Fun.(*ast.Ident); ok && f.Name == positive && len(e.Args) == 1 {
			s, ok := t.span(e.Args[0], b)
			if s.low.value == 0 {
				s.low.open = true
			}
			return s, ok
		}
	case *ast.CompositeLit:
		if !t.isRange(e) {
			return span{}, false
		}
		var s span
		for i, elt := range e.Elts {
			key, value := "", elt
			if kv, ok := elt.(*ast.KeyValueExpr); ok {
				key, value = kv.Key.(*ast.Ident).Name, kv.Value
			} else {
				key = []string{"Min", "Max", "Unit", "Source"}[i]
			}
			ok := true
			switch key {
			case "Min":
				s.low, ok = t.number(value, b)
			case "Max":
				s.high, ok = t.number(value, b)
			case "Unit":
				c := t.info.Types[value].Value
				if ok = c != nil; ok {
					s.unit = constant.StringVal(c)
				}
			}
			if !ok {
				return span{}, false
			}
		}
		return s, true
	}
	return span{}, false
}

// number evaluates one end of a range.
func (t *tracer) number(e ast.Expr, b bound) (limit, bool) {
	if c := t.info.Types[e].Value; c != nil {
		v, _ := constant.Float64Val(constant.ToFloat(c))
		if math.Abs(v) >= math.MaxFloat64 {
			v = math.Inf(int(math.Copysign(1, v))) // every finite number
		}
		return limit{value: v}, true
	}
	switch e := e.(type) {
	case *ast.ParenExpr:
		return t.number(e.X, b)
	case *ast.UnaryExpr:
		v, ok := t.number(e.X, b)
		v.value = -v.value
		return v, ok && e.Op == token.SUB
	case *ast.SelectorExpr:
		if t.isRange(e.X) {
			s, ok := t.span(e.X, b)
			if e.Sel.Name == "Min" {
				return s.low, ok
			}
			return s.high, ok && e.Sel.Name == "Max"
		}
	case *ast.CallExpr:
		sel, ok := e.Fun.(*ast.SelectorExpr)
		if !ok || len(e.Args) != 1 {
			return limit{}, false
		}
		v, known := t.number(e.Args[0], b)
		switch sel.Sel.Name {
		case "Inf":
			return limit{value: math.Inf(int(v.value))}, known
		case "MoreThan", "LessThan":
			return limit{v.value, true}, known
		}
	}
	return limit{}, false
}
