package plan

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

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
