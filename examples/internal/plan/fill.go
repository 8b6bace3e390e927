package plan

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
)

// filler copies a tree of values into a plan.
type filler struct {
	faults
	plan     Plan
	defaults []Default
	later    []rule // defaults to be derived
	names    []name // names to be looked up
}

type rule struct {
	n     *node
	path  string
	at    int
	into  reflect.Value
	index int // in defaults
}

type name struct {
	n    *node
	path string
	at   int
	text string
}

// section fills a struct from an object; given is false when the plan does not
// have it.
func (f *filler) section(n *node, path string, v reflect.Value, o value, at int) {
	for _, c := range n.children {
		d, given := o.member(c.last)
		f.key(c, f.path(n, c, path), v.Field(c.field), d, given && d.form != isNull, at)
	}
	if o.form != isObject {
		return
	}
	for i, m := range o.members {
		if n.byName[m.key] == nil && !(&value{members: o.members[i+1:]}).has(m.key) {
			f.unknown(n, join(path, m.key), m)
		}
	}
}

// path is the path of c within n, which stands at path.
func (f *filler) path(n, c *node, path string) string {
	if path == n.Path { // no list on the way
		return c.Path
	}
	return join(path, c.last)
}

// key fills one field.
func (f *filler) key(n *node, path string, v reflect.Value, d value, given bool, at int) {
	switch {
	case n.Kind == Section:
		if given && d.form != isObject {
			f.add(fmt.Errorf("%s is %s, wanted an object in braces", path, d.show()), path)
			d = value{}
		}
		f.section(n, path, v, d, at)
	case n.Kind == Optional:
		f.optional(n, path, v, d, given, at)
	case n.Kind == List:
		f.items(n, path, v, d, given)
	case given:
		f.given(n, path, v, d, at)
	case n.Needed:
		f.add(fmt.Errorf("%s is missing: %s%s", path, n.Means, n.allowed()), path)
	case n.rule != nil:
		f.later = append(f.later, rule{n, path, at, v, len(f.defaults)})
		f.defaults = append(f.defaults, Default{Path: path, Unit: n.Unit})
	case n.Default != nil:
		f.usual(n, path, v, at)
	}
}

// usual sets the default.
func (f *filler) usual(n *node, path string, v reflect.Value, at int) {
	d := n.Default
	switch x := d.(type) {
	case float64:
		if n.Kind == Whole {
			v.SetInt(int64(x))
		} else {
			v.SetFloat(x)
		}
	case string:
		v.SetString(x)
	case bool:
		v.SetBool(x)
	case []float64:
		v.Set(reflect.ValueOf(append([]float64{}, x...)))
	}
	f.defaults = append(f.defaults, Default{path, d, n.Unit})
}

func (f *filler) optional(n *node, path string, v reflect.Value, d value, given bool, at int) {
	switch {
	case !given:
		f.defaults = append(f.defaults, Default{Path: path})
		return
	case d.form != isObject:
		f.add(fmt.Errorf("%s is %s, wanted an object in braces, {} for all its defaults", path, d.show()), path)
		d = value{}
	}
	v.Set(reflect.New(v.Type().Elem()))
	f.section(n, path, v.Elem(), d, at)
}

func (f *filler) items(n *node, path string, v reflect.Value, d value, given bool) {
	switch {
	case !given && n.Needed:
		f.add(fmt.Errorf("%s is missing: %s", path, n.Means), path)
	case !given:
		f.defaults = append(f.defaults, Default{path, n.Unless, ""})
		d = value{form: isList, items: make([]value, n.Unless)}
	case d.form != isList:
		f.add(fmt.Errorf("%s is %s, wanted a list in square brackets", path, d.show()), path)
		d = value{form: isList}
	case len(d.items) > n.Most || len(d.items) < n.Least:
		f.add(fmt.Errorf("%s has %d entries, allowed %d to %d", path, len(d.items), n.Least, n.Most), path)
		d = value{form: isList}
	}
	v.Set(reflect.MakeSlice(v.Type(), len(d.items), len(d.items)))
	for i, item := range d.items {
		here := path + "[" + strconv.Itoa(i) + "]"
		if item.form != isObject && given {
			f.add(fmt.Errorf("%s is %s, wanted an object in braces", here, item.show()), here)
		}
		f.section(n, here, v.Index(i), item, i)
	}
}

// finish derives the defaults that follow from other keys, and looks up names.
func (f *filler) finish() {
	for _, r := range f.later {
		v := r.n.rule(&f.plan, r.at)
		if math.IsNaN(v) {
			continue
		}
		switch v = r.n.clamped(v); {
		case r.n.Kind == Whole:
			r.into.SetInt(int64(v))
		case r.n.Open:
			r.into.Set(reflect.ValueOf(&v))
		default:
			r.into.SetFloat(v)
		}
		f.defaults[r.index].Value = v
	}
	f.defaults = slices.DeleteFunc(f.defaults, func(d Default) bool { return d.Value == nil && d.Unit != "" })
	for _, m := range f.names {
		f.among(append(m.n.Choices[:len(m.n.Choices):len(m.n.Choices)], m.n.of(&f.plan, m.at)...), m.path, m.text)
	}
}

// fieldsOf is the struct behind p, to be set.
func fieldsOf(p *Plan) reflect.Value { return reflect.ValueOf(p).Elem() }
