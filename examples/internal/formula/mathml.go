package formula

import (
	"html"
	"strconv"
	"strings"
)

// MathML returns the formula as a MathML element.
func (f Formula) MathML() string {
	if f.root == nil {
		return ""
	}
	var b strings.Builder
	b.WriteString(`<math xmlns="http://www.w3.org/1998/Math/MathML" display="block"><mrow>`)
	f.root.mathML(&b)
	b.WriteString("</mrow></math>")
	return b.String()
}

// Put returns the formula with the numbers of values in place of the names
// behind the last relation sign, each with the given count of significant
// figures. Names without a value stay.
func (f Formula) Put(values map[string]float64, figures int) Formula {
	if f.root == nil {
		return f
	}
	root := *f.root
	if root.kind == relation {
		kids := append([]*node(nil), root.kids...)
		last := len(kids) - 1
		kids[last] = kids[last].put(values, figures)
		root.kids = kids
	} else {
		root = *root.put(values, figures)
	}
	var b strings.Builder
	root.plain(&b)
	return Formula{source: b.String(), root: &root}
}

func (n *node) put(values map[string]float64, figures int) *node {
	c := *n
	if n.kind == name {
		if v, ok := values[n.text]; ok {
			one := &node{kind: number, text: Number(v, figures)}
			if v < 0 {
				return &node{kind: group, kids: []*node{one}}
			}
			return one
		}
		return &c
	}
	c.kids = make([]*node, len(n.kids))
	for i, k := range n.kids {
		c.kids[i] = k.put(values, figures)
	}
	if c.kind == call { // its parentheses hold a negative number already
		for i, k := range c.kids {
			if k.kind == group && n.kids[i].kind == name {
				c.kids[i] = k.kids[0]
			}
		}
	}
	if c.kind == product { // 2 3 would read as one number
		c.ops = append([]string(nil), c.ops...)
		for i := range c.ops {
			if numeral(c.kids[i+1]) {
				c.ops[i] = "·"
			}
		}
	}
	return &c
}

// numeral tells whether a factor begins with a digit.
func numeral(n *node) bool {
	switch n.kind {
	case number:
		return true
	case power, fraction, product:
		return numeral(n.kids[0])
	}
	return false
}

// Number prints v with the count of significant figures, without an exponent
// where that is short.
func Number(v float64, figures int) string {
	s := strconv.FormatFloat(v, 'g', figures, 64)
	if m, e, ok := strings.Cut(s, "e"); ok {
		x, _ := strconv.Atoi(e)
		if x > 0 && x < 7 {
			return strconv.FormatFloat(v, 'f', 0, 64)
		}
		return m + "e" + strconv.Itoa(x)
	}
	return s
}

func (n *node) plain(b *strings.Builder) {
	switch n.kind {
	case number, name:
		if base, index, ok := strings.Cut(n.text, "_"); ok && strings.ContainsAny(index, " ,.") {
			b.WriteString(base + "_{" + index + "}")
			return
		}
		b.WriteString(n.text)
	case sum, relation, product:
		for i, k := range n.kids {
			switch {
			case i > 0 && (n.kind != product || n.ops[i-1] != ""):
				b.WriteString(" " + n.ops[i-1] + " ")
			case i > 0:
				b.WriteString(" ")
			}
			k.plain(b)
		}
	case fraction:
		n.kids[0].plain(b)
		b.WriteString("/")
		n.kids[1].plain(b)
	case power:
		n.kids[0].plain(b)
		b.WriteString("^")
		n.kids[1].plain(b)
	case negative:
		b.WriteString("-")
		n.kids[0].plain(b)
	case group:
		b.WriteString("(")
		n.kids[0].plain(b)
		b.WriteString(")")
	case call:
		b.WriteString(n.text + "(")
		for i, k := range n.kids {
			if i > 0 {
				b.WriteString(", ")
			}
			k.plain(b)
		}
		b.WriteString(")")
	}
}

// minus stands first in its row where it is a sign and not an operation.
const minus = "<mo>−</mo>"

// parentheses returns those around a group or a function's values, of one line
// where nothing within is higher.
func (n *node) parentheses() (open, shut string) {
	high := false
	n.walk(func(k *node) { high = high || k.kind == fraction })
	if high {
		return "<mo>(</mo>", "<mo>)</mo>"
	}
	return `<mo stretchy="false">(</mo>`, `<mo stretchy="false">)</mo>`
}

func (n *node) mathML(b *strings.Builder) {
	row := func(k *node) {
		b.WriteString("<mrow>")
		k.mathML(b)
		b.WriteString("</mrow>")
	}
	bare := func(k *node) *node { // a fraction bar or a root does what parentheses did
		if k.kind == group {
			return k.kids[0]
		}
		return k
	}
	switch n.kind {
	case number:
		m, e, ok := strings.Cut(n.text, "e")
		if strings.HasPrefix(m, "-") {
			b.WriteString("<mrow>" + minus + "<mn>" + m[1:] + "</mn></mrow>")
		} else {
			b.WriteString("<mn>" + m + "</mn>")
		}
		if ok {
			b.WriteString("<mo>×</mo><msup><mn>10</mn><mrow>")
			if strings.HasPrefix(e, "-") {
				b.WriteString(minus)
			}
			b.WriteString("<mn>" + strings.TrimLeft(e, "+-") + "</mn></mrow></msup>")
		}
	case name:
		base, index, ok := strings.Cut(n.text, "_")
		if ok {
			b.WriteString("<msub><mi>" + html.EscapeString(base) + "</mi><mtext>" + html.EscapeString(index) + "</mtext></msub>")
			return
		}
		b.WriteString("<mi>" + html.EscapeString(base) + "</mi>")
	case sum, relation, product:
		for i, k := range n.kids {
			switch {
			case i > 0 && n.kind == product && n.ops[i-1] == "":
				b.WriteString("<mo>&#8290;</mo>") // multiplication that is not seen
			case i > 0 && n.ops[i-1] == "-":
				b.WriteString(minus)
			case i > 0:
				b.WriteString("<mo>" + html.EscapeString(n.ops[i-1]) + "</mo>")
			}
			k.mathML(b)
		}
	case fraction:
		b.WriteString("<mfrac>")
		row(bare(n.kids[0]))
		row(bare(n.kids[1]))
		b.WriteString("</mfrac>")
	case power:
		b.WriteString("<msup>")
		row(n.kids[0])
		row(bare(n.kids[1]))
		b.WriteString("</msup>")
	case negative:
		b.WriteString("<mrow>" + minus)
		n.kids[0].mathML(b)
		b.WriteString("</mrow>")
	case group:
		open, shut := n.parentheses()
		b.WriteString("<mrow>" + open) // a row of its own: parentheses are as high as what they hold
		row(n.kids[0])
		b.WriteString(shut + "</mrow>")
	case call:
		if n.text == "sqrt" {
			b.WriteString("<msqrt>")
			row(n.kids[0])
			b.WriteString("</msqrt>")
			return
		}
		open, shut := n.parentheses()
		b.WriteString("<mrow><mi>" + n.text + "</mi>" + open)
		for i, k := range n.kids {
			if i > 0 {
				b.WriteString("<mo>,</mo>")
			}
			k.mathML(b)
		}
		b.WriteString(shut + "</mrow>")
	}
}
