package plan

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// contradictions notes what no single value's range can show.
func (f *filler) contradictions() {
	p := &f.plan
	f.shape(p.House)
	f.annexes(p.House)
	f.weather(p)
	f.setPoints(p)
	f.covers(p)
	f.heater(p)
	f.stores(p)
	f.ducts(p)
	if p.Lights != nil {
		f.lights(p)
	}
	f.vents(p)
	f.crop(p)
}

// clash notes that keys contradict each other: what must hold, and the keys
// with their values.
func (f *filler) clash(must string, paths ...string) {
	parts := make([]string, len(paths))
	for i, path := range paths {
		parts[i] = f.stands(path)
	}
	f.add(fmt.Errorf("%s: %s", must, strings.Join(parts, ", ")), append(paths, "")...)
}

// stands prints a key with its value, and says when it is a default.
func (f *filler) stands(path string) string {
	n, v := tree(), fieldsOf(&f.plan)
	for _, part := range strings.Split(path, ".") {
		name, index, listed := strings.Cut(part, "[")
		if v.Kind() == reflect.Pointer {
			v = v.Elem()
		}
		n = n.byName[name]
		v = v.Field(n.field)
		if i, err := strconv.Atoi(strings.TrimSuffix(index, "]")); listed && err == nil {
			v = v.Index(i)
		}
	}
	s := path + " is "
	switch {
	case v.Kind() == reflect.Pointer && v.IsNil():
		return s + "not given"
	case v.Kind() == reflect.Pointer && n.Kind != Optional:
		v = v.Elem()
	}
	switch {
	case v.Kind() == reflect.Float64:
		s += strings.TrimSpace(strconv.FormatFloat(v.Float(), 'g', 6, 64) + " " + unitWord(n.Unit))
	case v.Kind() == reflect.String:
		s += quote(v.String())
	case v.Kind() == reflect.Slice && v.Len() > 0 && v.Type().Elem().Kind() == reflect.Float64:
		s += strings.Trim(strings.ReplaceAll(fmt.Sprint(v.Interface()), " ", ", "), "[]") + " " + unitWord(n.Unit)
	case v.Kind() == reflect.Slice:
		s += fmt.Sprintf("a list of %d", v.Len())
	case n.Kind == Optional:
		return s + "given"
	default:
		s += fmt.Sprint(v.Interface())
	}
	for _, d := range f.defaults {
		if d.Path == path {
			return s + " by default"
		}
	}
	return s
}

// under returns the path of an item's key.
func under(list string, at int, key string) string {
	return list + "[" + strconv.Itoa(at) + "]." + key
}

// once notes names that stand twice in a list.
func once[T any](f *filler, list string, items []T, name func(T) string, taken ...string) {
	for i, item := range items {
		if name(item) == "" {
			continue // missed already
		}
		for _, t := range taken {
			if name(item) == t {
				f.add(fmt.Errorf("%s is %s, a name that is taken already", under(list, i, "name"), quote(t)), under(list, i, "name"))
			}
		}
		taken = append(taken, name(item))
	}
}
