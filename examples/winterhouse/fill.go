package main

import (
	"encoding/json"
	"fmt"
	"reflect"
	"sort"
	"strconv"
	"strings"

	"cloche.example/internal/domain"
)

// fill copies data into v and appends a fault for everything that does not
// fit. tag is the struct tag of the field that v stands in.
func fill(path string, v reflect.Value, data any, tag reflect.StructTag, faults *[]error) {
	fault := func(format string, a ...any) { *faults = append(*faults, fmt.Errorf(format, a...)) }
	switch v.Kind() {
	case reflect.Struct:
		m, ok := data.(map[string]any)
		if !ok {
			fault("%s is %s, wanted an object in braces", orPlan(path), show(data))
			return
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			key := f.Tag.Get("json")
			d, given := m[key]
			if !given {
				fault("%s is missing%s", join(path, key), wanted(f.Tag))
				continue
			}
			delete(m, key)
			fill(join(path, key), v.Field(i), d, f.Tag, faults)
		}
		unknown := make([]string, 0, len(m))
		for key := range m {
			unknown = append(unknown, key)
		}
		sort.Strings(unknown)
		for _, key := range unknown {
			fault("%s is not a key of a plan (its value is %s)", join(path, key), show(m[key]))
		}
	case reflect.Array:
		list, ok := data.([]any)
		if !ok || len(list) != v.Len() {
			fault("%s is %s, wanted a list of %d values", path, show(data), v.Len())
			return
		}
		for i, d := range list {
			fill(path+"["+strconv.Itoa(i)+"]", v.Index(i), d, tag, faults)
		}
	case reflect.String:
		s, ok := data.(string)
		if !ok || !allowed(tag, s) {
			fault("%s is %s%s", path, show(data), wanted(tag))
			return
		}
		v.SetString(s)
	case reflect.Float64, reflect.Int:
		x, ok := data.(float64)
		if !ok {
			fault("%s is %s, wanted a number%s", path, show(data), wanted(tag))
			return
		}
		r := limits(tag)
		if err := r.Check(path, x); err != nil {
			*faults = append(*faults, err)
			return
		}
		if v.Kind() == reflect.Float64 {
			v.SetFloat(x)
		} else if x != float64(int(x)) {
			fault("%s is %s, wanted a whole number%s", path, show(data), wanted(tag))
		} else {
			v.SetInt(int64(x))
		}
	}
}

func join(path, key string) string { return strings.TrimPrefix(path+"."+key, ".") }

func orPlan(path string) string {
	if path == "" {
		return "the plan"
	}
	return path
}

// limits reads a range:"min max" tag.
func limits(tag reflect.StructTag) domain.Range {
	var r domain.Range
	if _, err := fmt.Sscan(tag.Get("range"), &r.Min, &r.Max); err != nil {
		panic("a number of the plan has no range: " + string(tag))
	}
	return r
}

// allowed reads a one:"a|b" tag; without it every text of sensible length is.
func allowed(tag reflect.StructTag, s string) bool {
	one := tag.Get("one")
	if one == "" {
		return len(s) <= 200
	}
	for _, o := range strings.Split(one, "|") {
		if s == o {
			return true
		}
	}
	return false
}

func wanted(tag reflect.StructTag) string {
	if tag.Get("one") != "" {
		return ", wanted one of: " + strings.ReplaceAll(tag.Get("one"), "|", ", ")
	}
	if tag.Get("range") != "" {
		r := limits(tag)
		return fmt.Sprintf(", allowed %g to %g", r.Min, r.Max)
	}
	return ""
}

// show prints a value of the plan, shortened.
func show(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		return "unprintable"
	}
	if len(text) > 60 {
		return string(text[:57]) + "..."
	}
	return string(text)
}
