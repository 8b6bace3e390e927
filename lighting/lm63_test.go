package lighting

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// lm63Text is a small file with parts to replace.
func lm63Text(edition, numbers string) string {
	return edition + "\n[TEST] a\n[TESTLAB] b\n[ISSUEDATE] c\n[MANUFAC] d\nTILT=NONE\n" + numbers
}

const lm63Plain = "1 -1 2 3 1 1 2 0.1 0.2 0\n0.5 7 50\n0 45 90\n0\n100 50 0\n"

func readLM63(text string) (*LM63, error) { return ReadLM63(strings.NewReader(text), nil) }

func TestLM63Scaling(t *testing.T) {
	for e, want := range map[Edition]float64{LM63of1986: 700, LM63of1991: 700, LM63of1995: 100, LM63of2002: 100, LM63of2019: 100} {
		name := e.String()
		if e == LM63of1986 {
			name = "a lamp"
		}
		f, err := readLM63(lm63Text(name, lm63Plain))
		require.NoError(t, err, name)
		require.Equal(t, e, f.Edition)
		require.InEpsilon(t, want, f.Web.Candela[0][0], 1e-15, "100 x 2 x 0.5, and x 7 up to 1991")
		require.Equal(t, 7.0, f.Field12)
	}
	f, err := readLM63(lm63Text("IESNA91", strings.Replace(lm63Plain, "1 1 2 0.1", "1 1 1 0.1", 1)))
	require.NoError(t, err)
	require.InEpsilon(t, 0.03048, f.Width, 1e-14)
	require.InEpsilon(t, 0.06096, f.Length, 1e-14)
	require.True(t, math.IsNaN(f.LampLumens()))
	require.Equal(t, 1.0, f.TiltFactor(30))
}

func TestLM63AcceptsWithWarnings(t *testing.T) {
	full := func(planes string) string {
		h := strings.Fields(planes)
		s := fmt.Sprintf("1 -1 1 2 %d 1 2 0 0 0 1 1 50\n0 90\n%s\n", len(h), planes)
		for i := range h {
			s += fmt.Sprintf("%d 0\n", 100+i%4)
		}
		return s
	}
	for name, c := range map[string]struct{ text, warning string }{
		"byte order mark":      {"\xef\xbb\xbf" + lm63Text("IESNA91", lm63Plain), "byte order mark"},
		"blanks in the name":   {lm63Text("IESNA: LM-63-2002", lm63Plain), "the edition is written"},
		"no edition":           {lm63Text("free text", lm63Plain), "read as that of 1986"},
		"unknown edition":      {lm63Text("IES:LM-63-2031", lm63Plain), "unknown edition"},
		"unknown keyword":      {lm63Text("IESNA91\n[COLOUR] red", lm63Plain), "line 2: unknown keyword [COLOUR]"},
		"required keyword":     {strings.Replace(lm63Text("IES:LM-63-2019", lm63Plain), "[TEST] a\n", "", 1), "line 5: no [TEST]"},
		"text":                 {lm63Text("IESNA91\nno keyword", lm63Plain), "line 2: text without a keyword"},
		"more of nothing":      {lm63Text("IESNA91\n[MORE] x", lm63Plain), "continues nothing"},
		"no power":             {lm63Text("IESNA91", strings.Replace(lm63Plain, " 50\n", " 0\n", 1)), "0 W"},
		"more numbers":         {lm63Text("IESNA91", lm63Plain+"1 2 3"), "line 12: numbers follow"},
		"more text":            {lm63Text("IESNA91", lm63Plain+"END"), "follows the last candela"},
		"odd lumens":           {lm63Text("IESNA91", strings.Replace(lm63Plain, "1 -1 ", "1 -5 ", 1)), "absolute"},
		"circle left open":     {lm63Text("IESNA91", full("0 90 180 270")), "closed with plane 0"},
		"planes 0 and 360":     {lm63Text("IESNA91", full("0 120 240 300 330 360")), "planes 0 and 360 differ"},
		"lone carriage return": {strings.ReplaceAll(lm63Text("IESNA91\n[X] 1", lm63Plain), "\n", "\r"), "unknown keyword"},
	} {
		f, err := readLM63(c.text)
		require.NoError(t, err, name)
		require.Contains(t, strings.Join(f.Warnings, "\n"), c.warning, name)
		_, err = f.Table()
		require.NoError(t, err, name)
	}
	f, err := readLM63(lm63Text("IESNA91", full("0 90 180 270")))
	require.NoError(t, err)
	require.Equal(t, []float64{0, 90, 180, 270, 360}, f.Web.Horizontal)
	require.Equal(t, f.Web.Candela[0], f.Web.Candela[4])
	f, err = readLM63(lm63Text("IESNA:LM-63-1995", full("90 180 270")))
	require.NoError(t, err)
	require.Empty(t, f.Warnings)
}

func TestLM63RefusesWithLineAndToken(t *testing.T) {
	swap := func(old, new string) string { return lm63Text("IESNA91", strings.Replace(lm63Plain, old, new, 1)) }
	for name, c := range map[string]struct {
		text, token, reason string
		line                int
	}{
		"lamps in part":        {swap("1 -1", "1.5 -1"), "1.5", "whole number", 7},
		"no lamps":             {swap("1 -1", "0 -1"), "0", "whole number", 7},
		"multiplier":           {swap("-1 2", "-1 0"), "0", "above 0", 7},
		"type":                 {swap("3 1 1 2", "3 1 4 2"), "4", "from 1 to 3", 7},
		"unit":                 {swap("3 1 1 2", "3 1 1 3"), "3", "from 1 to 2", 7},
		"ballast":              {swap("0.5 7", "-1 7"), "-1", "above 0", 8},
		"watts":                {swap("7 50", "7 -50"), "-50", "at least 0", 8},
		"hexadecimal":          {swap("100 50", "0x10 50"), "0x10", "plain number", 11},
		"infinite":             {swap("100 50", "1e999 50"), "1e999", "plain number", 11},
		"underscore":           {swap("100 50", "1_0 50"), "1_0", "plain number", 11},
		"negative candela":     {swap("100 50", "100 -50"), "-50", "negative", 11},
		"first angle":          {swap("0 45 90", "5 45 90"), "5", "begin at 0 or 90", 9},
		"last angle":           {swap("0 45 90", "0 45 80"), "80", "end at 90 or 180", 9},
		"horizontal":           {swap("\n0\n", "\n30\n"), "30", "begin at 0", 10},
		"last horizontal":      {lm63Text("IESNA91", "1 -1 1 2 2 1 2 0 0 0 1 1 50 0 90 0 120 1 1 1 1"), "120", "end at 0", 7},
		"type B angles":        {lm63Text("IESNA91", "1 -1 1 2 2 2 2 0 0 0 1 1 50 -90 80 0 90 1 1 1 1"), "80", "end at 90", 7},
		"type A first":         {lm63Text("IESNA91", "1 -1 1 2 2 3 2 0 0 0 1 1 50 -80 90 0 90 1 1 1 1"), "-80", "begin at -90 or 0", 7},
		"type A horizontal":    {lm63Text("IESNA91", "1 -1 1 2 2 3 2 0 0 0 1 1 50 -90 90 -80 90 1 1 1 1"), "-80", "begin at -90 or 0", 7},
		"type B one plane":     {lm63Text("IESNA91", "1 -1 1 2 1 2 2 0 0 0 1 1 50 -90 90 0 1 1 1 1"), "0", "stands for all in type C alone", 7},
		"product of counts":    {lm63Text("IESNA91", "1 -1 1 12 12 1 2 0 0 0 1 1 50 0 90 0 90 1 1 1 1"), "12", "more than the rest", 7},
		"decimal comma":        {lm63Text("IESNA91", strings.Replace(lm63Plain, "100 50 0", "100,5 50,5 0,0", 1)), "5", "decimal commas?", 11},
		"decimal comma, early": {swap("0.1 0.2", "0,1 0,2"), "", "", 0},
		"empty tilt":           {strings.Replace(swap("", ""), "TILT=NONE", "TILT=", 1), "TILT=", "neither", 6},
		"tilt geometry":        {strings.Replace(swap("", ""), "TILT=NONE", "TILT=INCLUDE\n4 1 0 1", 1), "4", "1, 2 or 3", 7},
		"tilt factor":          {strings.Replace(swap("", ""), "TILT=NONE", "TILT=INCLUDE\n1 1 0 -1", 1), "-1", "negative", 7},
		"tilt angle":           {strings.Replace(swap("", ""), "TILT=NONE", "TILT=INCLUDE\n1 1 181 1", 1), "181", "allowed 0 to 180", 7},
		"empty":                {"", "", "no line TILT=", 1},
		"long token":           {swap("100 50", strings.Repeat("9x", 400)+" 50"), strings.Repeat("9x", 20) + "...", "plain number", 11},
	} {
		_, err := readLM63(c.text)
		var e *LM63Error
		require.True(t, errors.As(err, &e), "%s: %v", name, err)
		if c.reason == "" {
			continue
		}
		require.Equal(t, c.token, e.Token, name)
		require.Equal(t, c.line, e.Line, name)
		require.Contains(t, e.Reason, c.reason, name)
		require.Contains(t, e.Error(), "LM-63 file: ")
	}
	_, err := ReadLM63(&endless{}, nil)
	require.ErrorContains(t, err, "longer than")
}

// endless is a reader that never stops.
type endless struct{}

func (*endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}

func TestLM63TiltFile(t *testing.T) {
	text := string(lm63File(t, "m11_tilt_file_reference.ies"))
	f, err := ReadLM63(strings.NewReader(text), strings.NewReader("2\n3\n0 45 90\n1 .9 .8\n"))
	require.NoError(t, err)
	require.Equal(t, &LampTilt{2, []float64{0, 45, 90}, []float64{1, 0.9, 0.8}}, f.Tilt)
	require.InEpsilon(t, 0.95, f.TiltFactor(22.5), 1e-15)
	require.Equal(t, 1.0, f.TiltFactor(0))
	require.Equal(t, 0.8, f.TiltFactor(90))
	require.True(t, math.IsNaN(f.TiltFactor(91)))
	_, err = ReadLM63(strings.NewReader(text), strings.NewReader("2\n3\n0 45\n"))
	require.ErrorContains(t, err, "tilt file: line 3")
}

func TestLM63Opening(t *testing.T) {
	for want, d := range map[string][3]float64{
		"point": {0, 0, 0}, "rectangle": {1, 2, 0}, "box": {1, 2, 3}, "circle or ellipse": {-1, -1, 0}, "vertical cylinder": {-1, 0, 1},
		"sphere or spheroid": {-1, -1, -1}, "horizontal cylinder along the 0-180 plane": {-1, 2, -1},
		"horizontal cylinder across the 0-180 plane": {1, -2, -1}, "vertical disc": {-1, 0, -1}, "not in the standard's list": {0, 0, 1},
	} {
		f := LM63{Edition: LM63of2002, Width: d[0], Length: d[1], Height: d[2]}
		require.Equal(t, want, f.Opening())
	}
	for want, d := range map[string][3]float64{"circle or ellipse": {-1, 0, 0}, "vertical cylinder": {-1, 0, 1}, "sphere or spheroid": {-1, 0, -1}} {
		f := LM63{Edition: LM63of1995, Width: d[0], Length: d[1], Height: d[2]}
		require.Equal(t, want, f.Opening(), "0 for the second minus")
	}
}

// What is written reads back the same, for the samples and in every edition.
func TestLM63WriteReadsBack(t *testing.T) {
	for name := range lm63Samples(t).Valid {
		for e := LM63of1991; e <= LM63of2019; e++ {
			f, err := ReadLM63(bytes.NewReader(lm63File(t, name)), nil)
			require.NoError(t, err)
			f.Edition = e
			var b bytes.Buffer
			require.NoError(t, f.Write(&b))
			g, err := ReadLM63(&b, nil)
			require.NoError(t, err)
			f.Multiplier, f.BallastFactor = 1, 1
			require.Empty(t, cmp.Diff(f, g, cmpopts.IgnoreFields(LM63{}, "Warnings")))
		}
	}
}

// unusualLabels are first lines of files that are read, each with its end.
var unusualLabels = []string{
	"[a line without its bracket\n",
	"IESNA91\n[another one\n",
	"IESNA91\n[TE[T] two opening brackets\n",
	"IESNA91\n[] no keyword\n[ ] nor here\n[]\n",
	"IESNA91\nfree text\n[MORE] that goes on\n[MORE]\n[MORE] TILT=NONE\n",
	"IESNA91\n[MORE] that continues nothing\n[more] and goes on\n",
	"[MORE] in a file of 1986\n",
	"IESNOT an edition\n",
	"IESNA91\nIESNA91\nIES: a second\n",
	"IESNA91\n[ key ]  blanks\t\n  free  \n[x\xe9]\xe9\n",
	"\xef\xbb\xbf\xef\xbb\xbf[TEST] two byte order marks\n",
	" \xef\xbb\xbf \xef\xbb\xbfa line after a third\n",
}

// What is read is written and read back the same, however unusual its labels.
func TestUnusualLabelsReadBack(t *testing.T) {
	for _, labels := range unusualLabels {
		f, err := readLM63(labels + "TILT=NONE\n" + lm63Plain)
		require.NoError(t, err, labels)
		require.NotEmpty(t, f.Labels, labels)
		var b bytes.Buffer
		require.NoError(t, f.Write(&b), labels)
		g, err := ReadLM63(&b, nil)
		require.NoError(t, err, labels)
		require.Equal(t, f.Labels, g.Labels, labels)
		require.Equal(t, f.Edition, g.Edition, labels)
	}
	f, err := readLM63(lm63Text("IESNA:LM-63-2002", lm63Plain))
	require.NoError(t, err)
	for name, l := range map[string]Label{"MORE": {"MORE", "x"}, "small letters": {"test", "x"}, "a bracket": {"A]B", "x"}, "a line end": {"A\nB", "x"}, "blanks": {"A", " x"},
		"a carriage return": {"A", "x\ry"}, "bytes": {"A", "\xff"}, "a keyword in free text": {"", "[A] b"}, "tilt": {"", "TILT=NONE"}, "nothing": {"", ""}} {
		f.Labels = []Label{{"TEST", "a"}, l}
		require.ErrorContains(t, f.Write(io.Discard), "label 2", name)
	}
}

// Numbers beyond any fixture's are refused where they stand, so that what is
// read can be written.
func TestLM63RefusesHugeNumbers(t *testing.T) {
	for old, name := range map[string]string{"1 -1 2": "1 2e9 2", "-1 2 3": "-1 2e9 3", "0.1 0.2 0": "0.1 0.2 2e9", "0.5 7 50": "2e9 7 50", "7 50": "2e9 50", " 50\n": " 2e9\n"} {
		_, err := readLM63(lm63Text("IESNA91", strings.Replace(lm63Plain, old, name, 1)))
		require.ErrorContains(t, err, "at most 1e+09", name)
	}
	_, err := readLM63(lm63Text("IESNA91", strings.Replace(lm63Plain, "1 -1", "2e9 -1", 1)))
	require.ErrorContains(t, err, "at most 1e+09")
}

func TestLM63WriteRefuses(t *testing.T) {
	var b bytes.Buffer
	f := LM63{Edition: 9, Labels: []Label{{"", "TILT=NONE"}, {"MORE", "x"}, {"A", "a\rb"}}, InputPower: math.NaN(),
		Tilt: &LampTilt{Angles: []float64{1, 0}, Factors: []float64{-1}},
		Web:  CandelaWeb{TypeC, []float64{5, 80}, []float64{0}, [][]float64{{1, 1}}}}
	err := f.Write(&b)
	for _, want := range []string{"begin at 0 or 90", "edition 9", "Lamps is 0", "InputPower", "label 1", "label 2", "label 3", "tilt geometry 0", "tilt angle 2", "tilt factor 1"} {
		require.ErrorContains(t, err, want)
	}
	require.Zero(t, b.Len())
	f.Web.Horizontal = nil
	require.ErrorIs(t, f.Write(&b), ErrRange)
	f = LM63{Edition: LM63of1986, Lamps: 1, Field12: 3, Labels: []Label{{"", "a free line"}}, Web: CandelaWeb{TypeC, []float64{0, 90}, []float64{0}, [][]float64{{1, 1}}}}
	require.NoError(t, f.Write(&b))
	require.Equal(t, "a free line\r\nTILT=NONE\r\n1 0 1 2 1 1 2 0 0 0\r\n1 1 0\r\n0 90\r\n0\r\n1 1\r\n", b.String())
}

func TestPlainNumbersAsStrconv(t *testing.T) {
	for _, s := range []string{"0", "1", "12.5", "0.1", ".5", "5.", "999999999999999", "0.3000000000001", "123456.789", "98765432.12345", "00.70"} {
		v, ok := plain([]byte(s))
		want, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		require.True(t, ok, s)
		require.Equal(t, want, v, s)
	}
	for places := 1; places <= 14; places++ { // every power of ten
		s := "." + strings.Repeat("0", places-1) + "7"
		v, ok := plain([]byte(s))
		want, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		require.True(t, ok, s)
		require.Equal(t, want, v, s)
	}
	for _, s := range []string{"", ".", "1.2.3", "-1", "1e3", "9O0", "1234567890123456", "+5"} {
		_, ok := plain([]byte(s))
		require.False(t, ok, s)
	}
}
