package plan

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// compact prints a value as JSON.
func (v value) compact() string {
	switch v.form {
	case isText:
		return string(quotedText(v.text))
	case isNumber:
		return strconv.FormatFloat(v.number, 'g', -1, 64)
	case isList:
		parts := []string{}
		for _, item := range v.items {
			parts = append(parts, item.compact())
		}
		return "[" + strings.Join(parts, ",") + "]"
	case isObject:
		parts := []string{}
		for _, m := range v.members {
			parts = append(parts, string(quotedText(m.key))+":"+m.value.compact())
		}
		return "{" + strings.Join(parts, ",") + "}"
	}
	return v.show()
}

// TestMergeRFC7396 are the examples of RFC 7396 appendix A, as several
// implementations quote them in their tests.
func TestMergeRFC7396(t *testing.T) {
	for _, c := range [][3]string{
		{`{"a":"b"}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"b"}`, `{"b":"c"}`, `{"a":"b","b":"c"}`},
		{`{"a":"b"}`, `{"a":null}`, `{}`},
		{`{"a":"b","b":"c"}`, `{"a":null}`, `{"b":"c"}`},
		{`{"a":["b"]}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"c"}`, `{"a":["b"]}`, `{"a":["b"]}`},
		{`{"a":{"b":"c"}}`, `{"a":{"b":"d","c":null}}`, `{"a":{"b":"d"}}`},
		{`{"a":[{"b":"c"}]}`, `{"a":[1]}`, `{"a":[1]}`},
		{`["a","b"]`, `["c","d"]`, `["c","d"]`},
		{`{"a":"b"}`, `["c"]`, `["c"]`},
		{`{"a":"foo"}`, `null`, `null`},
		{`{"a":"foo"}`, `"bar"`, `"bar"`},
		{`{"e":null}`, `{"a":1}`, `{"e":null,"a":1}`},
		{`[1,2]`, `{"a":"b","c":null}`, `{"a":"b"}`},
		{`{}`, `{"a":{"bb":{"ccc":null}}}`, `{"a":{"bb":{}}}`},
	} {
		base, err := (&parser{text: []byte(c[0])}).value(0)
		require.NoError(t, err)
		change, err := (&parser{text: []byte(c[1])}).value(0)
		require.NoError(t, err)
		require.Equal(t, c[2], merge(base, change).compact(), "%s changed by %s", c[0], c[1])
		require.Equal(t, c[0], base.compact(), "the base stays as it is")
	}
}

func TestSlipsOfJSONAreNamedWithTheirLine(t *testing.T) {
	for text, want := range map[string]string{
		"":                                    "it is empty; -print-plan writes a plan to start from",
		" \n\t ":                              "it is empty; -print-plan writes a plan to start from",
		"<!doctype html>":                     "it looks like HTML or XML; a plan is JSON and begins with {",
		"span,length\n3,4":                    "it does not begin with {; a plan is JSON, and -print-plan writes one to start from",
		"[1]":                                 "it does not begin with {; a plan is JSON, and -print-plan writes one to start from",
		"null":                                "it does not begin with {; a plan is JSON, and -print-plan writes one to start from",
		"{\n\"a\": 1,\n}":                     "line 3: after a last entry there is no comma: } follows one",
		"{\"a\": [1,\n2,]}":                   "line 2: after a last entry there is no comma: ] follows one",
		"{\"a\": 1\n\"b\": 2}":                `line 2: a comma or } is wanted after the value of "a"; found "\"b\":"`,
		"{\"a\" 1}":                           `line 1: a colon is wanted after the key "a"; found "1}"`,
		"{\"span_m\": 6,4}":                   "line 1: a key in double quotation marks is wanted; numbers take a decimal point, not a comma",
		"{a: 1}":                              `line 1: a key in double quotation marks is wanted; found "a:"`,
		"{'a': 1}":                            `line 1: a key in double quotation marks is wanted; found "'a':"`,
		"{\"a\": 'b'}":                        "line 1: texts stand in double quotation marks",
		"{\"a\": // no\n1}":                   "line 1: JSON has no comments; the key note takes a remark",
		"{\"a\": .5}":                         "line 1: a number begins with a digit or a minus",
		"{\"a\": 01}":                         "line 1: a number does not begin with 0 before other digits",
		"{\"a\": -}":                          "line 1: a digit is wanted after the minus",
		"{\"a\": 1.}":                         "line 1: a digit is wanted after the decimal point",
		"{\"a\": 1e}":                         "line 1: a digit is wanted after the exponent's e",
		"{\"a\": 1e999}":                      "line 1: a number is too large",
		"{\"a\": NaN}":                        `line 1: a value is wanted: a number, a text in quotation marks, true, false, null, [ or {; found "NaN}"`,
		"{\"a\": True}":                       `line 1: a value is wanted: a number, a text in quotation marks, true, false, null, [ or {; found "True}"`,
		"{\"a\": }":                           "line 1: a value is missing before }; after a last entry there is no comma",
		"{\"a\": \"b\n\"}":                    "line 1: a text ends at its line's end; its closing quotation mark is missing",
		"{\"a\": \"C:\\plans\"}":              `line 1: a backslash stands before one of " \ / b f n r t u; a path takes / or two backslashes`,
		"{\"a\": \"\\u12g4\"}":                "line 1: four hexadecimal digits are wanted after \\u",
		"{\"a\": \"\\ud800\"}":                "line 1: half a surrogate pair stands in a text",
		"{\"a\": \"\\u001b[31m\"}":            `line 1: the text "\x1b[31m" holds a control character`,
		"{\"\\u0000\": 1}":                    `line 1: the text "\x00" holds a control character`,
		"{\"a\": \"\\u202e\"}":                `line 1: the text "\u202e" holds a control character`,
		"{\"a\": 1":                           "line 1: the text ends before the plan does",
		"{\"a\": \"b":                         "line 1: the text ends before the plan does",
		"{\"a\": \"\\u1":                      "line 1: the text ends before the plan does",
		"{\"a\":":                             "line 1: the text ends before the plan does",
		"{":                                   "line 1: the text ends before the plan does",
		"{}\n{}":                              "line 2: something follows the plan's closing brace",
		"{\"a\": 1}}":                         "line 1: something follows the plan's closing brace",
		"{\"a\": \xff}":                       "line 1: the text is not UTF-8; save it as UTF-8",
		"{\n\x00}":                            "it is binary data, not text",
		"{\x00\"\x00a\x00\"\x00":              "it is text in UTF-16; save it as UTF-8",
		"\xff\xfe{\x00":                       "it is text in UTF-16; save it as UTF-8",
		"\x1f\x8b\x08\x00":                    "it is compressed with gzip; unpack it first",
		"{\"a\": \"\x07\"}":                   "line 1: a control character stands in the text",
		strings.Repeat("[", 9):                "it does not begin with {; a plan is JSON, and -print-plan writes one to start from",
		"{\"a\":" + strings.Repeat("[", 1000): "line 1: brackets stand more than 8 deep",
		strings.Repeat("{\"a\":", 1000):       "line 1: brackets stand more than 8 deep",
		"{\"a\": \"" + strings.Repeat("x", 501) + "\"}":  "line 1: a text is longer than 500 bytes",
		"{\"a\": [" + strings.Repeat("1,", 1001) + "1]}": "line 1: a list holds more than 1000 entries",
	} {
		_, err := Parse([]byte(text))
		require.EqualError(t, err, want, "%.60q", text)
		_, err = Demo().Change([]byte(text))
		require.EqualError(t, err, want, "a change: %.60q", text)
	}
	many := "{"
	for i := range 202 {
		many += fmt.Sprintf("\"k%d\": 1,", i)
	}
	_, err := Parse([]byte(many + "\"x\": 1}"))
	require.EqualError(t, err, "line 1: an object holds more than 200 keys")
}

func TestAByteOrderMarkIsDropped(t *testing.T) {
	f, err := Parse([]byte("\xef\xbb\xbf{\"name\": \"mine\"}"))
	require.NoError(t, err)
	require.Equal(t, "mine", f.Name)
}

func TestTextsAreUnescaped(t *testing.T) {
	f, err := Parse([]byte(`{"name": "a \"b\" \\ \/ \u00b5 \ud83c\udf31 é", "note": "<&>"}`))
	require.NoError(t, err)
	require.Equal(t, `a "b" \ / µ 🌱 é`, f.Name)
	again, err := Parse(f.Text())
	require.NoError(t, err)
	require.Equal(t, f.Name, again.Name)
	require.Contains(t, string(f.Text()), `"note": "<&>"`)
}

// TestHostilePlansEndSoon gives the largest plans of several bad kinds.
func TestHostilePlansEndSoon(t *testing.T) {
	for name, text := range map[string]string{
		"same key":     "{" + strings.Repeat(`"a":1,`, MaxBytes/6-1) + `"a":1}`,
		"deep":         strings.Repeat(`{"a":`, MaxBytes/5),
		"long number":  `{"a":` + strings.Repeat("1", MaxBytes-6) + "}",
		"long text":    `{"a":"` + strings.Repeat("x", MaxBytes-8) + `"}`,
		"many objects": `{"vents":[` + strings.Repeat(`{"a":{}},`, 999) + `{}]}`,
		"wide":         `{"vents":[` + strings.Repeat(`[`+strings.Repeat(`{},`, 300)+`{}],`, 999) + `[]]}`,
		"blanks":       "{" + strings.Repeat(" ", MaxBytes-2) + "}",
		"too long":     `{"name":"` + strings.Repeat("\n", MaxBytes) + `"}`,
		"escapes":      `{"a":"` + strings.Repeat(`\u0041`, (MaxBytes-8)/6) + `"}`,
	} {
		begin := time.Now()
		f, err := Parse([]byte(text))
		require.Less(t, time.Since(begin), 3*time.Second, name)
		if name == "blanks" {
			require.NoError(t, err)
			require.Equal(t, 6.4, f.House.Span)
			continue
		}
		require.Error(t, err, name)
		require.Less(t, len(err.Error()), 20000, name)
	}
}

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		d    int
	}{{"", "", 0}, {"abc", "abc", 0}, {"abc", "abd", 1}, {"abc", "ab", 1}, {"abc", "acb", 1}, {"lenght_m", "length_m", 1}, {"kitten", "sitting", 3}, {"abc", "xyz", 3}} {
		require.Equal(t, c.d, distance(c.a, c.b, 5), c)
		require.Equal(t, c.d, distance(c.b, c.a, 5), c)
		if c.d > 0 {
			require.Equal(t, c.d, distance(c.a, c.b, c.d-1), "more than most is most and one")
		}
	}
	require.Equal(t, "span_m", nearest("span", []string{"length_m", "span_m"}))
	require.Empty(t, nearest(strings.Repeat("x", 1000), []string{"x"}))
}

// FuzzParse looks for plans that are read although they are no JSON, plans that
// do not read the same again, and anything that panics.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		`{}`, `{"name":"a"}`, `{"site":null}`, `{"house":{"span_m":3}}`, `{"fog":{}}`, `{"vents":[{"name":"a"}]}`, `{"crop":{"name":"own"}}`,
		`{"house":{"shape":"lean-to"}}`, `{"heater_fan":{"flow_m3_s":[0,1],"pressure_pa":[9,0]}}`, `{"a":[1e3,-2.5,true,"\u00e9"]}`, `{"lights":{"groups":[{"name":"a","rows":[1]}]}}`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		v, _, err := read(text)
		if err != nil {
			return
		}
		require.True(t, json.Valid([]byte(strings.ReplaceAll(string(text), "\xef\xbb\xbf", ""))), "%q", text)
		again, _, err := read([]byte(v.compact()))
		require.NoError(t, err)
		require.Equal(t, v.compact(), again.compact())
		p, err := Parse(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		same, err := Parse(p.Text())
		require.NoError(t, err)
		require.Equal(t, string(p.Text()), string(same.Text()))
	})
}

// FuzzChange changes the demo plan.
func FuzzChange(f *testing.F) {
	for _, s := range []string{`{}`, `{"house":null}`, `{"vents":[]}`, `{"lights":{"rows_count":2}}`, `{"screen":{}}`, `{"site":{"altitude_m":9}}`} {
		f.Add([]byte(s))
	}
	demo := Demo()
	before := string(demo.Text())
	f.Fuzz(func(t *testing.T, text []byte) {
		c, err := demo.Change(text)
		if err == nil {
			again, err := demo.Change(text)
			require.NoError(t, err)
			require.Equal(t, string(c.Text()), string(again.Text()))
			same, err := Parse(c.Text())
			require.NoError(t, err)
			require.Equal(t, string(c.Text()), string(same.Text()))
		}
		require.Equal(t, before, string(demo.Text()))
	})
}
