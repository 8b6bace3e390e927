package input

import (
	"bytes"
	"errors"
	"fmt"
	"unicode/utf8"
)

// mark is the byte-order mark that some editors put before UTF-8.
var mark = []byte("\xef\xbb\xbf")

// unmark drops the mark, and a second one that a careless editor put before it.
func unmark(text []byte) []byte {
	for bytes.HasPrefix(text, mark) {
		text = text[len(mark):]
	}
	return text
}

// Clean returns the text without a byte-order mark. It refuses what is no
// text, and names the line of the first byte that is not UTF-8 or is a control
// character other than tab and line end.
func Clean(text []byte) ([]byte, error) {
	text = unmark(text)
	if kind := foreign(text); kind != "" {
		return nil, fmt.Errorf("it is %s", kind)
	}
	if at, fault := flaw(text); fault != nil {
		return nil, fmt.Errorf("line %d: %w", 1+bytes.Count(text[:at], []byte("\n")), fault)
	}
	return text, nil
}

var (
	errNotUTF8 = errors.New("the text is not UTF-8; save it as UTF-8")
	errControl = errors.New("a control character stands in the text")
)

// flaw returns the place of the first byte that is not part of plain text.
func flaw(text []byte) (int, error) {
	for i := 0; i < len(text); {
		c := text[i]
		if c < utf8.RuneSelf {
			if c < ' ' && c != '\t' && c != '\n' && c != '\r' || c == 0x7f {
				return i, errControl
			}
			i++
			continue
		}
		r, n := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && n == 1 {
			return i, errNotUTF8
		}
		if Hidden(r) {
			return i, errControl
		}
		i += n
	}
	return 0, nil
}

// Hidden reports whether a character of a name would steer a terminal or turn
// the direction of the text: controls, line and paragraph separators, and the
// marks that embed or override a direction.
func Hidden(r rune) bool {
	switch {
	case r < ' ', r >= 0x7f && r < 0xa0, r == 0x2028, r == 0x2029, r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
		return true
	}
	return false
}

// magics are the first bytes of what people hand in by mistake.
var magics = []struct{ begins, is string }{
	{"\x1f\x8b", "compressed with gzip; unpack it first"},
	{"PK\x03\x04", "a zip archive or a spreadsheet, not text"},
	{"%PDF", "a PDF document, not text"},
	{"\x89PNG", "a picture, not text"},
	{"\xff\xd8\xff", "a picture, not text"},
	{"\xff\xfe", "text in UTF-16; save it as UTF-8"},
	{"\xfe\xff", "text in UTF-16; save it as UTF-8"},
	{"\x7fELF", "a program, not text"},
}

// foreign says what the text is when it is no text in UTF-8, or returns "".
func foreign(text []byte) string {
	for _, m := range magics {
		if bytes.HasPrefix(text, []byte(m.begins)) {
			return m.is
		}
	}
	begin := text[:min(len(text), 512)]
	if bytes.IndexByte(begin, 0) < 0 {
		return ""
	}
	if len(begin) > 3 && (begin[0] == 0) != (begin[1] == 0) && (begin[2] == 0) != (begin[3] == 0) {
		return "text in UTF-16; save it as UTF-8"
	}
	return "binary data, not text"
}
