package plan

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Default is a value that a plan did not give.
type Default struct {
	Path  string // key
	Value any    // float64, int, string, bool or []float64; nil for a section that the house does not have, int 0 for an empty list
	Unit  string // of a number
}

// String prints the default as a report would: "house.depth_m 0 m".
func (d Default) String() string { return d.Path + " " + d.value() }

// value prints the value with its unit.
func (d Default) value() string {
	s := "none"
	switch v := d.Value.(type) {
	case float64:
		s = strconv.FormatFloat(v, 'g', -1, 64)
	case []float64:
		s = joinNumbers(v)
	case string:
		s = strconv.Quote(v)
	case int, bool:
		s = fmt.Sprint(v)
	}
	return strings.TrimSpace(s + " " + unitWord(d.Unit))
}

// Taken lists the defaults in few lines, one for each section that took any:
// "site.mains: voltage_v 230 V, phases_count 1 (count)".
func (f Filled) Taken() []string {
	var lines []string
	section := "-"
	for _, d := range f.Defaults {
		i := strings.LastIndexByte(d.Path, '.')
		here, key := d.Path[:max(i, 0)], d.Path[i+1:]
		switch {
		case here != section && here == "":
			lines = append(lines, d.String())
		case here != section:
			lines = append(lines, here+": "+key+" "+d.value())
		default:
			lines[len(lines)-1] += ", " + key + " " + d.value()
		}
		section = here
	}
	return lines
}

func joinNumbers(v []float64) string {
	words := make([]string, len(v))
	for i, x := range v {
		words[i] = strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strings.Join(words, ", ")
}

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

func (f *filler) unknown(n *node, path string, m member) {
	words := make([]string, len(n.children))
	for i, c := range n.children {
		words[i] = c.last
	}
	text := fmt.Sprintf("%s is not a key of a plan (its value is %s)", shown(path), m.show())
	if w := nearest(m.key, words); w != "" {
		meant := join(path[:max(0, len(path)-len(m.key)-1)], w)
		text += "; perhaps " + meant
		defer func() { f.at[meant] = true }() // nothing can be said about its value
	} else if places := elsewhere(m.key); places != "" {
		text += "; perhaps " + places
	}
	f.add(fmt.Errorf("%s", text), path)
}

// shown is a path for a message; what a plan calls its keys may hold anything.
func shown(path string) string {
	for _, r := range path {
		if r > '~' || r <= ' ' || r == '"' {
			return quote(path)
		}
	}
	if len(path) > 100 {
		return quote(path)
	}
	return path
}

// elsewhere finds a key of that name in another section.
func elsewhere(key string) string {
	for _, k := range Keys() {
		if k.Last() == key {
			return k.Path
		}
	}
	return ""
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

// given sets a value that the plan gives.
func (f *filler) given(n *node, path string, v reflect.Value, d value, at int) {
	fault := func(wanted string) {
		f.add(fmt.Errorf("%s is %s, wanted %s%s", path, d.show(), wanted, n.allowed()), path)
	}
	switch n.Kind {
	case Number, Whole:
		if d.form != isNumber {
			fault("a number")
		} else if err := n.accepts().Check(path, d.number); err != nil {
			f.add(err, path)
		} else if n.Kind == Whole && d.number != float64(int(d.number)) {
			fault("a whole number")
		} else if n.Kind == Whole {
			v.SetInt(int64(d.number))
		} else if v.Kind() == reflect.Pointer {
			x := d.number
			v.Set(reflect.ValueOf(&x))
		} else {
			v.SetFloat(d.number)
		}
	case Text:
		if d.form != isText {
			fault("a text in quotation marks")
		} else if n.Needed && strings.TrimSpace(d.text) == "" {
			fault("a text that is not empty")
		} else {
			v.SetString(d.text)
		}
	case Choice, Name:
		switch {
		case d.form != isText:
			fault("a text in quotation marks")
		case n.Kind == Name && n.of != nil:
			v.SetString(d.text)
			f.names = append(f.names, name{n, path, at, d.text})
		case !f.among(n.Choices, path, d.text):
		default:
			v.SetString(d.text)
		}
	case Switch:
		if d.form != isBool {
			fault("true or false")
		} else {
			v.SetBool(d.yes)
		}
	case Numbers:
		f.numbers(n, path, v, d)
	}
}

// among reports whether text is one of the words, and notes a fault if not.
func (f *filler) among(words []string, path, text string) bool {
	for _, w := range words {
		if w == text {
			return true
		}
	}
	message := fmt.Sprintf("%s is %s, wanted one of: %s", path, quote(text), strings.Join(quoted(words), ", "))
	if w := nearest(text, words); w != "" {
		message += "; perhaps " + quote(w)
	}
	f.add(fmt.Errorf("%s", message), path)
	return false
}

func quoted(words []string) []string {
	out := make([]string, 0, len(words))
	for i, w := range words {
		if i == 20 {
			return append(out, "...")
		}
		out = append(out, quote(w))
	}
	return out
}

func (f *filler) numbers(n *node, path string, v reflect.Value, d value) {
	if d.form != isList || len(d.items) < n.Least || len(d.items) > n.Most {
		wanted := fmt.Sprintf("%d to %d", n.Least, n.Most)
		if n.Least == n.Most {
			wanted = strconv.Itoa(n.Least)
		}
		f.add(fmt.Errorf("%s is %s, wanted a list of %s numbers%s", path, d.show(), wanted, n.allowed()), path)
		return
	}
	out := make([]float64, len(d.items))
	for i, item := range d.items {
		here := path + "[" + strconv.Itoa(i) + "]"
		if item.form != isNumber {
			f.add(fmt.Errorf("%s is %s, wanted a number%s", here, item.show(), n.allowed()), here)
		} else {
			f.add(n.accepts().Check(here, item.number), here)
			out[i] = item.number
		}
		if f.at[here] {
			f.at[path] = true
		}
	}
	v.Set(reflect.ValueOf(out))
}

// allowed words what a key accepts, to follow the words of a fault.
func (k Key) allowed() string {
	switch k.Kind {
	case Number, Whole, Numbers:
		return ", allowed " + k.limits()
	case Choice, Name:
		return ", one of: " + strings.Join(quoted(k.Choices), ", ")
	}
	return ""
}

// limits prints the range with its unit.
func (k Key) limits() string {
	return strings.TrimSpace(limit(k.Min) + " to " + limit(k.Max) + " " + unitWord(k.Unit))
}

// limit prints an end of a range as people write it.
func limit(v float64) string {
	if size := math.Abs(v); size >= 1e-4 && size < 1e7 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return strings.NewReplacer("e-0", "e-", "e+0", "e").Replace(strconv.FormatFloat(v, 'g', -1, 64))
}

// unitWord sets the words that stand where a unit would in brackets.
func unitWord(unit string) string {
	switch unit {
	case "fraction", "ratio", "factor", "count", "number", "exponent":
		return "(" + unit + ")"
	}
	return unit
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
