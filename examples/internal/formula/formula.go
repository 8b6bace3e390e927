// Package formula holds a formula as data: one line of plain text that can be
// printed as it stands, set as MathML, shown with its numbers put in, and
// computed, so that what a page shows is what was calculated.
//
// The line is written as one would type it: W = 0.621945 p_w/(p - p_w). Names
// are a letter with letters and digits behind it and may carry an index after
// an underscore (h_c, U_{film}); Greek letters stand as themselves. A space or
// · multiplies; / divides what stands next to it, so that a/b c is (a/b) c;
// ^ raises, -x^2 is -(x^2). Functions are sqrt, exp, ln, log, sin, cos, tan,
// asin, acos, atan, abs, min and max; angles are in degrees. Relations are =,
// ≈, <, >, ≤ and ≥.
package formula

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Formula is a parsed line. The zero Formula is empty.
type Formula struct {
	source string
	root   *node
}

type kind uint8

const (
	number kind = iota
	name
	sum      // kids with + or - between them, in ops
	product  // kids with "" or · between them
	fraction // kids 0 over 1
	power    // kids 0 to the 1
	negative
	call     // text names the function
	relation // kids with ops between them
	group    // parentheses that were written
)

type node struct {
	kind kind
	text string
	kids []*node
	ops  []string
}

var functions = map[string]bool{"sqrt": true, "exp": true, "ln": true, "log": true, "sin": true, "cos": true, "tan": true,
	"asin": true, "acos": true, "atan": true, "abs": true, "min": true, "max": true}

const relations = "=≈<>≤≥"

// Parse reads a line. The error says where it is not understood.
func Parse(line string) (Formula, error) {
	if !utf8.ValidString(line) {
		return Formula{}, fmt.Errorf("formula %q is not valid UTF-8", line)
	}
	p := &parser{rest: line, line: line}
	root, err := p.relation()
	if err == nil && p.peek() != 0 {
		err = p.fault("%q was not expected", p.peek())
	}
	if err != nil {
		return Formula{}, err
	}
	return Formula{source: strings.TrimSpace(line), root: root}, nil
}

// String returns the line as it was written.
func (f Formula) String() string { return f.source }

type parser struct {
	rest, line string
	depth      int
}

const maxDepth = 50 // parentheses within one another; no printed formula has ten

func (p *parser) fault(format string, a ...any) error {
	return fmt.Errorf("formula %q at %d: %s", p.line, len(p.line)-len(p.rest)+1, fmt.Sprintf(format, a...))
}

func (p *parser) peek() rune {
	p.rest = strings.TrimLeft(p.rest, " ")
	if p.rest == "" {
		return 0
	}
	r, _ := utf8.DecodeRuneInString(p.rest)
	return r
}

func (p *parser) take() rune {
	r := p.peek()
	if r != 0 {
		p.rest = p.rest[utf8.RuneLen(r):]
	}
	return r
}

func (p *parser) relation() (*node, error) {
	return p.chain(relation, func(r rune) bool { return strings.ContainsRune(relations, r) }, p.sum)
}

func (p *parser) sum() (*node, error) {
	return p.chain(sum, func(r rune) bool { return r == '+' || r == '-' || r == '−' || r == '±' }, p.product)
}

func (p *parser) chain(k kind, is func(rune) bool, next func() (*node, error)) (*node, error) {
	first, err := next()
	if err != nil {
		return nil, err
	}
	n := &node{kind: k, kids: []*node{first}}
	for r := p.peek(); r != 0 && is(r); r = p.peek() {
		p.take()
		if r == '−' {
			r = '-'
		}
		kid, err := next()
		if err != nil {
			return nil, err
		}
		n.kids, n.ops = append(n.kids, kid), append(n.ops, string(r))
	}
	if len(n.kids) == 1 {
		return first, nil
	}
	return n, nil
}

// product reads factors; a / takes the factor before it and the one after.
func (p *parser) product() (*node, error) {
	first, err := p.signed()
	if err != nil {
		return nil, err
	}
	n := &node{kind: product, kids: []*node{first}}
	for {
		r := p.peek()
		switch {
		case r == '/':
			p.take()
			under, err := p.signed()
			if err != nil {
				return nil, err
			}
			last := len(n.kids) - 1
			n.kids[last] = &node{kind: fraction, kids: []*node{n.kids[last], under}}
		case r == '·', r == '*', r == '×':
			p.take()
			kid, err := p.signed()
			if err != nil {
				return nil, err
			}
			n.kids, n.ops = append(n.kids, kid), append(n.ops, "·")
		case r == '(' || r == '|' || unicode.IsLetter(r) || unicode.IsDigit(r):
			kid, err := p.power()
			if err != nil {
				return nil, err
			}
			n.kids, n.ops = append(n.kids, kid), append(n.ops, "")
		default:
			if len(n.kids) == 1 {
				return n.kids[0], nil
			}
			return n, nil
		}
	}
}

func (p *parser) signed() (*node, error) {
	if r := p.peek(); r == '-' || r == '−' {
		p.take()
		kid, err := p.power()
		if err != nil {
			return nil, err
		}
		return &node{kind: negative, kids: []*node{kid}}, nil
	}
	return p.power()
}

func (p *parser) power() (*node, error) {
	base, err := p.atom()
	if err != nil || p.peek() != '^' {
		return base, err
	}
	p.take()
	var exponent *node
	if r := p.peek(); r == '-' || r == '−' {
		exponent, err = p.signed()
	} else {
		exponent, err = p.atom()
	}
	if err != nil {
		return nil, err
	}
	return &node{kind: power, kids: []*node{base, exponent}}, nil
}

func (p *parser) atom() (*node, error) {
	if p.depth++; p.depth > maxDepth {
		return nil, p.fault("more than %d levels deep", maxDepth)
	}
	defer func() { p.depth-- }()
	r := p.peek()
	switch {
	case r == '(':
		p.take()
		inner, err := p.relation()
		if err != nil {
			return nil, err
		}
		if p.take() != ')' {
			return nil, p.fault("a closing parenthesis is missing")
		}
		return &node{kind: group, kids: []*node{inner}}, nil
	case unicode.IsDigit(r):
		return p.number()
	case unicode.IsLetter(r):
		return p.name()
	case r == 0:
		return nil, p.fault("the formula ends where a value should stand")
	}
	return nil, p.fault("%q stands where a value should", r)
}

func (p *parser) number() (*node, error) {
	end := 0
	for end < len(p.rest) && (p.rest[end] >= '0' && p.rest[end] <= '9' || p.rest[end] == '.') {
		end++
	}
	// An exponent follows only with a digit behind it: 2e3, but 2 e stays a product.
	if end < len(p.rest) && p.rest[end] == 'e' {
		at := end + 1
		if at < len(p.rest) && (p.rest[at] == '-' || p.rest[at] == '+') {
			at++
		}
		if at < len(p.rest) && p.rest[at] >= '0' && p.rest[at] <= '9' {
			for end = at; end < len(p.rest) && p.rest[end] >= '0' && p.rest[end] <= '9'; {
				end++
			}
		}
	}
	text := p.rest[:end]
	if _, err := strconv.ParseFloat(text, 64); err != nil {
		return nil, p.fault("%q is not a number", text)
	}
	p.rest = p.rest[end:]
	return &node{kind: number, text: text}, nil
}

func (p *parser) name() (*node, error) {
	word := p.word()
	if functions[word] && strings.HasPrefix(p.rest, "(") {
		p.take()
		n := &node{kind: call, text: word}
		for {
			kid, err := p.sum()
			if err != nil {
				return nil, err
			}
			n.kids = append(n.kids, kid)
			switch r := p.take(); r {
			case ',':
			case ')':
				if want := map[string]int{"min": 0, "max": 0}; len(n.kids) > 1 {
					if _, many := want[word]; !many {
						return nil, p.fault("%s takes one value", word)
					}
				}
				return n, nil
			default:
				return nil, p.fault("the parenthesis of %s is not closed", word)
			}
		}
	}
	if strings.HasPrefix(p.rest, "_") {
		p.rest = p.rest[1:]
		if strings.HasPrefix(p.rest, "{") {
			index, after, ok := strings.Cut(p.rest[1:], "}")
			if !ok || index == "" {
				return nil, p.fault("the index of %s is not closed", word)
			}
			p.rest = after
			return &node{kind: name, text: word + "_" + index}, nil
		}
		index := p.word()
		if index == "" {
			return nil, p.fault("%s_ has no index", word)
		}
		word += "_" + index
	}
	return &node{kind: name, text: word}, nil
}

// word takes letters, digits and primes.
func (p *parser) word() string {
	end := strings.IndexFunc(p.rest, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '′'
	})
	if end < 0 {
		end = len(p.rest)
	}
	word := p.rest[:end]
	p.rest = p.rest[end:]
	return word
}
