package plan

import (
	"errors"
	"fmt"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"

	"cloche.example/examples/internal/input"
)

// number reads minus, digits, fraction and exponent.
func (p *parser) number() (float64, error) {
	begin := p.at
	if p.peek() == '-' {
		p.at++
	}
	if p.peek() == '0' {
		p.at++
		if c := p.peek(); c >= '0' && c <= '9' {
			return 0, errors.New("a number does not begin with 0 before other digits")
		}
	} else if p.digits() == 0 {
		return 0, errors.New("a digit is wanted after the minus")
	}
	if p.peek() == '.' {
		if p.at++; p.digits() == 0 {
			return 0, errors.New("a digit is wanted after the decimal point")
		}
	}
	if c := p.peek(); c == 'e' || c == 'E' {
		p.at++
		if c := p.peek(); c == '+' || c == '-' {
			p.at++
		}
		if p.digits() == 0 {
			return 0, errors.New("a digit is wanted after the exponent's e")
		}
	}
	x, err := strconv.ParseFloat(string(p.text[begin:p.at]), 64)
	if err != nil {
		return 0, errors.New("a number is too large")
	}
	return x, nil
}

func (p *parser) digits() (n int) {
	for c := p.peek(); c >= '0' && c <= '9'; c = p.peek() {
		p.at++
		n++
	}
	return n
}

// string reads a text in quotation marks. Texts are for people: characters
// that steer a terminal are refused, escaped or not.
func (p *parser) string() (string, error) {
	p.at++
	begin := p.at
	for p.at < len(p.text) && p.text[p.at] != '"' && p.text[p.at] != '\\' && p.text[p.at] >= ' ' {
		p.at++
	}
	if p.peek() == '"' { // without escapes, as nearly all are
		s := string(p.text[begin:p.at])
		p.at++
		return s, plain(s)
	}
	out := append([]byte(nil), p.text[begin:p.at]...)
	for p.at < len(p.text) {
		c := p.text[p.at]
		p.at++
		switch {
		case c == '"':
			return string(out), plain(string(out))
		case c == '\n' || c == '\r':
			p.at--
			return "", errors.New("a text ends at its line's end; its closing quotation mark is missing")
		case c < ' ':
			return "", errors.New("a control character stands in a text")
		case c != '\\':
			out = append(out, c)
		default:
			r, err := p.escape()
			if err != nil {
				return "", err
			}
			out = utf8.AppendRune(out, r)
		}
	}
	return "", errEnd
}

var escapes = map[byte]rune{'"': '"', '\\': '\\', '/': '/', 'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}

// escape reads what follows a backslash.
func (p *parser) escape() (rune, error) {
	c := p.peek()
	p.at++
	if r, ok := escapes[c]; ok {
		return r, nil
	}
	if c != 'u' {
		return 0, errors.New("a backslash stands before one of \" \\ / b f n r t u; a path takes / or two backslashes")
	}
	r, err := p.hex()
	if err != nil || !utf16.IsSurrogate(r) {
		return r, err
	}
	if p.word("\\u") {
		if low, err := p.hex(); err != nil {
			return 0, err
		} else if whole := utf16.DecodeRune(r, low); whole != utf8.RuneError {
			return whole, nil
		}
	}
	return 0, errors.New("half a surrogate pair stands in a text")
}

func (p *parser) hex() (rune, error) {
	if len(p.text)-p.at < 4 {
		return 0, errEnd
	}
	x, err := strconv.ParseUint(string(p.text[p.at:p.at+4]), 16, 16)
	if err != nil {
		return 0, errors.New("four hexadecimal digits are wanted after \\u")
	}
	p.at += 4
	return rune(x), nil
}

// plain refuses a text that is too long or would steer a terminal.
func plain(s string) error {
	if len(s) > MaxText {
		return fmt.Errorf("a text is longer than %d bytes", MaxText)
	}
	for _, r := range s {
		if input.Hidden(r) {
			return fmt.Errorf("the text %s holds a control character", quote(s))
		}
	}
	return nil
}
