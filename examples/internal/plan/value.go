package plan

import (
	"fmt"
	"strconv"
	"strings"
)

// form is the JSON form of a value.
type form uint8

const (
	isNull form = iota
	isBool
	isNumber
	isText
	isList
	isObject
)

// value is a JSON value as it was read; it never changes.
type value struct {
	form    form
	yes     bool
	number  float64
	text    string
	items   []value
	members []member
}

type member struct {
	key string
	value
}

// member returns the value at a key, and whether there is one: the last, if
// the key stands twice.
func (v *value) member(key string) (value, bool) {
	for i := len(v.members) - 1; i >= 0; i-- {
		if v.members[i].key == key {
			return v.members[i].value, true
		}
	}
	return value{}, false
}

// show prints a value for a message, shortened.
func (v value) show() string {
	switch v.form {
	case isNull:
		return "null"
	case isBool:
		return strconv.FormatBool(v.yes)
	case isNumber:
		return strconv.FormatFloat(v.number, 'g', 8, 64)
	case isText:
		return quote(v.text)
	case isList:
		return fmt.Sprintf("a list of %d", len(v.items))
	}
	return "an object in braces"
}

// quote prints a text from a plan so that no character of it can harm a
// terminal, shortened.
func quote(s string) string {
	const most = 40
	if r := []rune(s[:min(len(s), 4*most)]); len(r) > most {
		s = string(r[:most]) + "..."
	}
	return strconv.Quote(s)
}

// merge returns base changed by change, as RFC 7396 says. Neither is altered.
func merge(base, change value) value {
	if change.form != isObject {
		return change
	}
	out := value{form: isObject}
	if base.form == isObject {
		out.members = make([]member, 0, len(base.members)+len(change.members))
		for _, m := range base.members {
			if c, changed := change.member(m.key); !changed {
				out.members = append(out.members, m)
			} else if c.form != isNull {
				out.members = append(out.members, member{m.key, merge(m.value, c)})
			}
		}
	}
	for i, m := range change.members {
		if m.form == isNull {
			continue
		}
		if _, known := base.member(m.key); known && base.form == isObject {
			continue
		}
		if later := (&value{members: change.members[i+1:]}); later.has(m.key) {
			continue
		}
		out.members = append(out.members, member{m.key, merge(value{}, m.value)})
	}
	return out
}

func (v *value) has(key string) bool {
	_, ok := v.member(key)
	return ok
}

func join(path, key string) string { return strings.TrimPrefix(path+"."+key, ".") }
