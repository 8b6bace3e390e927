package lighting

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// lexer walks over a file: first line by line, then number by number.
type lexer struct {
	data   []byte
	pos    int
	line   int  // of pos, from 1
	tilt   bool // this is the separate tilt file
	joined bool // a comma stood between two digits
}

func newLexer(data []byte, tilt bool) *lexer {
	return &lexer{data: bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")), line: 1, tilt: tilt}
}

// fault is an error at a line with a token.
func (x *lexer) fault(line int, token, format string, a ...any) error {
	const longest = 40
	if len(token) > longest {
		token = token[:longest] + "..."
	}
	reason := fmt.Sprintf(format, a...)
	if x.joined {
		reason += " (commas stand between digits: decimal commas?)"
	}
	return &LM63Error{Line: line, Token: token, Reason: reason, InTilt: x.tilt}
}

// nextLine returns the next line without its end, CR, LF or CRLF, and its
// number.
func (x *lexer) nextLine() (text []byte, line int, ok bool) {
	if x.pos >= len(x.data) {
		return nil, x.line, false
	}
	rest, line := x.data[x.pos:], x.line
	i := bytes.IndexAny(rest, "\r\n")
	x.line++
	if i < 0 {
		x.pos = len(x.data)
		return rest, line, true
	}
	x.pos += i + 1
	if rest[i] == '\r' && i+1 < len(rest) && rest[i+1] == '\n' {
		x.pos++
	}
	return rest[:i], line, true
}

// token returns the next word of the number stream and its line; it is empty
// at the end.
func (x *lexer) token() (word []byte, line int) {
	comma := false
	start := x.pos
	for x.pos < len(x.data) {
		c := x.data[x.pos]
		switch c {
		case '\n':
			x.line++
		case '\r':
			if x.pos+1 >= len(x.data) || x.data[x.pos+1] != '\n' {
				x.line++
			}
		case ',':
			comma = true
		case ' ', '\t', '\f', '\v', 0x1a: // 0x1a ends a file of old systems
		default:
			x.joined = x.joined || comma && x.pos == start+1 && start > 0
			from := x.pos
			for x.pos < len(x.data) && !delimiter(x.data[x.pos]) {
				x.pos++
			}
			return x.data[from:x.pos], x.line
		}
		x.pos++
	}
	return nil, x.line
}

func delimiter(c byte) bool {
	switch c {
	case ' ', '\t', '\r', '\n', ',', '\f', '\v', 0x1a:
		return true
	}
	return false
}

// last is the number of the last line that holds anything, at least 1.
func (x *lexer) last() int {
	all := &lexer{data: bytes.TrimRight(x.data, blanks+"\r\n,\x1a"), line: 1}
	last := 1
	for {
		_, line, ok := all.nextLine()
		if !ok {
			return last
		}
		last = line
	}
}

// number is a value with its place, for errors.
type number struct {
	v    float64
	word []byte
	line int
}

// number reads one plain decimal number; what tells which one it is.
func (x *lexer) number(what string) (number, error) {
	word, line := x.token()
	if len(word) == 0 {
		return number{}, x.fault(x.last(), "", "the file ends where the %s should stand", what)
	}
	if v, ok := plain(word); ok {
		return number{v, word, line}, nil
	}
	for _, c := range word {
		if !(c >= '0' && c <= '9' || c == '.' || c == '+' || c == '-' || c == 'e' || c == 'E') {
			return number{}, x.fault(line, string(word), "not a plain number, for the %s", what)
		}
	}
	v, err := strconv.ParseFloat(string(word), 64)
	if err != nil || math.IsInf(v, 0) {
		return number{}, x.fault(line, string(word), "not a plain number, for the %s", what)
	}
	return number{v, word, line}, nil
}

// tens are the powers of ten up to which a quotient of whole numbers below
// 2^53 is the float64 nearest to the decimal.
var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14}

// plain converts the short decimals that fill a file, digits with one point at
// most, exactly as strconv does; it leaves all others to it.
func plain(word []byte) (float64, bool) {
	if len(word) > 15 {
		return 0, false
	}
	n, digits, places, point := uint64(0), 0, 0, false
	for _, c := range word {
		switch {
		case c >= '0' && c <= '9':
			n = 10*n + uint64(c-'0')
			digits++
			if point {
				places++
			}
		case c == '.' && !point:
			point = true
		default:
			return 0, false
		}
	}
	return float64(n) / tens[places], digits > 0
}

// count reads a whole number from least on. The numbers it announces must fit
// into what is left of the file: a number takes two bytes at least, the last
// one its digit only.
func (x *lexer) count(what string, least int, announces bool) (int, error) {
	n, err := x.number(what)
	if err != nil {
		return 0, err
	}
	if n.v != math.Trunc(n.v) || n.v < float64(least) {
		return 0, x.fault(n.line, string(n.word), "the %s must be a whole number from %d on", what, least)
	}
	if announces && n.v > float64(x.room()) {
		return 0, x.fault(n.line, string(n.word), "the %s is more than the rest of the file can hold", what)
	}
	if n.v > greatestLM63 {
		return 0, x.fault(n.line, string(n.word), "the %s must be at most %g", what, greatestLM63)
	}
	return int(n.v), nil
}

// room is how many numbers the rest of the file can hold.
func (x *lexer) room() int { return (len(x.data) - x.pos + 1) / 2 }

// numbers reads n of them; accept checks each with the one before it.
func (x *lexer) numbers(what string, n int, accept func(v, last float64, first bool) string) ([]float64, []number, error) {
	out := make([]float64, n)
	var ends [2]number
	for i := range out {
		v, err := x.number(what)
		if err != nil {
			return nil, nil, err
		}
		last := 0.0
		if i > 0 {
			last = out[i-1]
		}
		if why := accept(v.v, last, i == 0); why != "" {
			return nil, nil, x.fault(v.line, string(v.word), "%s %d of %d: %s", what, i+1, n, why)
		}
		out[i] = v.v
		if i == 0 {
			ends[0] = v
		}
		ends[1] = v
	}
	return out, ends[:], nil
}

// blanks are what a line may have about its text, a byte order mark among them.
const blanks = " \t\f\v\x00\ufeff"

// text turns the bytes of a label into UTF-8: what is not valid UTF-8 is taken
// as ISO 8859-1.
func text(b []byte) string {
	b = bytes.Trim(b, blanks)
	if utf8.Valid(b) {
		return string(b)
	}
	var s strings.Builder
	for _, c := range b {
		s.WriteRune(rune(c))
	}
	return s.String()
}
