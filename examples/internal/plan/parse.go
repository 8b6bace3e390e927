package plan

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// What a plan may hold at most.
const (
	MaxBytes = 1 << 20 // bytes of a plan
	MaxDepth = 8       // brackets within brackets
	MaxKeys  = 200     // keys in one object
	MaxItems = 1000    // entries of one list
	MaxText  = 500     // bytes of one text or key
)

// parser reads one JSON text, as RFC 8259 has it. Its first error ends it; keys
// that stand twice are gathered beside.
type parser struct {
	text  []byte
	at    int
	path  []string // keys and places on the way to here
	twice []string // paths
}

// parse reads a whole text that holds one object.
func parse(text []byte) (v value, twice []string, err error) {
	p := &parser{text: text}
	p.space()
	switch c := p.peek(); {
	case c == 0:
		return v, nil, errors.New("it is empty; -print-plan writes a plan to start from")
	case c == '<':
		return v, nil, errors.New("it looks like HTML or XML; a plan is JSON and begins with {")
	case c != '{':
		return v, nil, errors.New("it does not begin with {; a plan is JSON, and -print-plan writes one to start from")
	}
	if v, err = p.value(0); err == nil {
		if p.space(); p.at < len(p.text) {
			err = errors.New("something follows the plan's closing brace")
		}
	}
	if err != nil {
		return v, nil, fmt.Errorf("line %d: %w", 1+count(text[:min(p.at, len(text))], '\n'), err)
	}
	return v, p.twice, nil
}

func count(text []byte, c byte) (n int) {
	for _, b := range text {
		if b == c {
			n++
		}
	}
	return n
}

// peek is the next byte, 0 at the end.
func (p *parser) peek() byte {
	if p.at < len(p.text) {
		return p.text[p.at]
	}
	return 0
}

func (p *parser) space() {
	for p.at < len(p.text) {
		switch p.text[p.at] {
		case ' ', '\t', '\n', '\r':
			p.at++
		default:
			return
		}
	}
}

var errEnd = errors.New("the text ends before the plan does")

func (p *parser) value(depth int) (value, error) {
	if depth > MaxDepth {
		return value{}, fmt.Errorf("brackets stand more than %d deep", MaxDepth)
	}
	switch c := p.peek(); {
	case c == '{':
		return p.object(depth)
	case c == '[':
		return p.list(depth)
	case c == '"':
		s, err := p.string()
		return value{form: isText, text: s}, err
	case c == '-' || c >= '0' && c <= '9':
		x, err := p.number()
		return value{form: isNumber, number: x}, err
	case p.word("true"):
		return value{form: isBool, yes: true}, nil
	case p.word("false"):
		return value{form: isBool}, nil
	case p.word("null"):
		return value{}, nil
	case c == 0 && p.at >= len(p.text):
		return value{}, errEnd
	case c == '}' || c == ']':
		return value{}, fmt.Errorf("a value is missing before %c; after a last entry there is no comma", c)
	case c == '\'':
		return value{}, errors.New("texts stand in double quotation marks")
	case c == '/' || c == '#':
		return value{}, errors.New("JSON has no comments; the key note takes a remark")
	case c == '+' || c == '.':
		return value{}, errors.New("a number begins with a digit or a minus")
	}
	return value{}, fmt.Errorf("a value is wanted: a number, a text in quotation marks, true, false, null, [ or {; found %s", p.found())
}

// found is what stands at the place of an error.
func (p *parser) found() string {
	end := p.at
	for end < len(p.text) && end-p.at < 20 && p.text[end] > ' ' && p.text[end] != ',' {
		end++
	}
	if end == p.at {
		if p.at >= len(p.text) {
			return "the end"
		}
		end++
	}
	return strconv.Quote(string(p.text[p.at:end]))
}

func (p *parser) word(w string) bool {
	if len(p.text)-p.at < len(w) || string(p.text[p.at:p.at+len(w)]) != w {
		return false
	}
	p.at += len(w)
	return true
}

// next steps over a comma and returns true, or over the closing bracket and
// returns false, after the value of a key or the entry of a list.
func (p *parser) next(closing byte, key string) (bool, error) {
	p.space()
	switch c := p.peek(); {
	case c == ',':
		p.at++
		if p.space(); p.peek() == closing {
			return false, fmt.Errorf("after a last entry there is no comma: %c follows one", closing)
		}
		return true, nil
	case c == closing:
		p.at++
		return false, nil
	case p.at >= len(p.text):
		return false, errEnd
	}
	after := "an entry of a list"
	if closing == '}' {
		after = "the value of " + quote(key)
	}
	return false, fmt.Errorf("a comma or %c is wanted after %s; found %s", closing, after, p.found())
}

func (p *parser) object(depth int) (value, error) {
	v := value{form: isObject}
	p.at++
	if p.space(); p.peek() == '}' {
		p.at++
		return v, nil
	}
	for more := true; more; {
		if p.space(); p.peek() != '"' {
			if p.at >= len(p.text) {
				return v, errEnd
			}
			if c := p.peek(); c >= '0' && c <= '9' {
				return v, errors.New("a key in double quotation marks is wanted; numbers take a decimal point, not a comma")
			}
			return v, fmt.Errorf("a key in double quotation marks is wanted; found %s", p.found())
		}
		key, err := p.string()
		if err != nil {
			return v, err
		}
		if p.space(); p.peek() != ':' {
			return v, fmt.Errorf("a colon is wanted after the key %s; found %s", quote(key), p.found())
		}
		p.at++
		p.space()
		p.path = append(p.path, key)
		m, err := p.value(depth + 1)
		if err != nil {
			return v, err
		}
		if v.has(key) {
			p.twice = append(p.twice, p.here())
		}
		p.path = p.path[:len(p.path)-1]
		if v.members == nil {
			v.members = make([]member, 0, 12)
		}
		if v.members = append(v.members, member{key, m}); len(v.members) > MaxKeys {
			return v, fmt.Errorf("an object holds more than %d keys", MaxKeys)
		}
		if more, err = p.next('}', key); err != nil {
			return v, err
		}
	}
	return v, nil
}

// here is the path of what is being read.
func (p *parser) here() string {
	path := ""
	for _, part := range p.path {
		if path != "" && !strings.HasPrefix(part, "[") {
			path += "."
		}
		path += part
	}
	return path
}

func (p *parser) list(depth int) (value, error) {
	v := value{form: isList}
	p.at++
	if p.space(); p.peek() == ']' {
		p.at++
		return v, nil
	}
	for more := true; more; {
		p.space()
		var place string
		if p.peek() == '{' { // alone holds keys
			place = "[" + strconv.Itoa(len(v.items)) + "]"
		}
		p.path = append(p.path, place)
		item, err := p.value(depth + 1)
		if err != nil {
			return v, err
		}
		p.path = p.path[:len(p.path)-1]
		if v.items = append(v.items, item); len(v.items) > MaxItems {
			return v, fmt.Errorf("a list holds more than %d entries", MaxItems)
		}
		if more, err = p.next(']', ""); err != nil {
			return v, err
		}
	}
	return v, nil
}
