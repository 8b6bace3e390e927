package plan

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strconv"
	"strings"
)

// Text returns the plan as a file would hold it: every key in the order of the
// table, with its value, or null where a key is open or a section is absent.
// Reading it gives the same plan.
func (p Plan) Text() []byte {
	var out bytes.Buffer
	object(&out, tree(), fieldsOf(&p), "")
	out.WriteByte('\n')
	return out.Bytes()
}

func object(out *bytes.Buffer, n *node, v reflect.Value, indent string) {
	deeper := indent + "  "
	out.WriteByte('{')
	for i, c := range n.children {
		if i > 0 {
			out.WriteByte(',')
		}
		out.WriteString("\n" + deeper + `"` + c.last + `": `)
		entry(out, c, v.Field(c.field), deeper)
	}
	out.WriteString("\n" + indent + "}")
}

func entry(out *bytes.Buffer, n *node, v reflect.Value, indent string) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			out.WriteString("null")
			return
		}
		v = v.Elem()
	}
	switch n.Kind {
	case Number:
		out.WriteString(plainNumber(v.Float()))
	case Whole:
		out.WriteString(strconv.FormatInt(v.Int(), 10))
	case Text, Choice, Name:
		out.Write(quotedText(v.String()))
	case Switch:
		out.WriteString(strconv.FormatBool(v.Bool()))
	case Numbers:
		words := make([]string, v.Len())
		for i := range words {
			words[i] = plainNumber(v.Index(i).Float())
		}
		out.WriteString("[" + strings.Join(words, ", ") + "]")
	case Section, Optional:
		object(out, n, v, indent)
	case List:
		out.WriteByte('[')
		for i := range v.Len() {
			if i > 0 {
				out.WriteString(", ")
			}
			object(out, n, v.Index(i), indent)
		}
		out.WriteByte(']')
	}
}

// plainNumber prints a number as JSON takes it, without an exponent where
// people would write none.
func plainNumber(v float64) string {
	form := byte('g')
	if v > -1e9 && v < 1e9 && (v == 0 || v >= 1e-6 || v <= -1e-6) {
		form = 'f'
	}
	return strconv.FormatFloat(v, form, -1, 64)
}

// quotedText is a text as JSON writes it, with < and > as they are.
func quotedText(s string) []byte {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		panic(err) // a text always has a JSON form
	}
	return bytes.TrimSpace(out.Bytes())
}
