package lighting

import (
	"errors"
	"fmt"
	goparser "go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A file of type A made for this test, whose flux is known: ∫ (1 - 2V/π) cos V dV
// from -π/2 to π/2 is 4/π, the mean over the horizontal half circle 0.625, and
// 1000 x 4/π x 0.625 π = 2500 lm.
func TestReadLM63TypeA(t *testing.T) {
	f, err := ReadLM63(strings.NewReader(string(lm63File(t, "own_typeA_2019.ies"))), nil)
	require.NoError(t, err)
	require.Empty(t, f.Warnings)
	require.Equal(t, LM63of2019, f.Edition)
	require.Equal(t, TypeA, f.Web.Coordinates)
	require.Equal(t, 1.1, f.Field12)
	table, err := f.Table()
	require.NoError(t, err)
	require.InEpsilon(t, 2500, table.Lumens(), 1e-14)
	for _, c := range []struct{ gamma, c, want float64 }{
		{90, 0, 1000},  // V = 0, H = 0
		{90, -90, 500}, // H = 90, clockwise
		{90, 270, 500},
		{90, 90, 0}, // H = -90
		{90, 45, 500},
		{45, -45, 375}, // V = -45, H = 45: 500 x 0.75
		{135, -45, 375},
		{0, 0, 0}, // V = -90 is straight down
		{90, 180, 0},
	} {
		require.InDelta(t, c.want, table.Intensity(c.gamma, c.c), 1e-10, "%v", c)
	}
	var b strings.Builder
	require.NoError(t, f.Write(&b))
	g, err := ReadLM63(strings.NewReader(b.String()), nil)
	require.NoError(t, err)
	require.Equal(t, f.Web, g.Web)
	require.Equal(t, f.Labels, g.Labels)
}

// planes is a file of type C with the given horizontal angles, vertical angles 0
// to 90 and, on the planes, 1, 2, 3, ... cd (the last as given).
func planes(vertical, horizontal string, last int) string {
	h := strings.Fields(horizontal)
	s := fmt.Sprintf("1 -1 1 2 %d 1 2 0 0 0 1 1 50\n%s\n%s\n", len(h), vertical, horizontal)
	for i := range h {
		v := i + 1
		if v == len(h) {
			v = last
		}
		s += fmt.Sprintf("%d %d\n", v, v)
	}
	return lm63Text("IESNA:LM-63-1995", s)
}

// Even light on each plane, linear between them: the flux is 2π times the mean.
func TestLM63Symmetries(t *testing.T) {
	for _, c := range []struct {
		horizontal string
		last       int
		mean       float64
		at, cd     float64 // azimuth and intensity there
	}{
		{"0", 7, 7, 123, 7},
		{"0 90", 3, 2, 135, 2},       // both mirrors
		{"0 90", 3, 2, -30, 5.0 / 3}, // 1 + 2 x 30/90
		{"0 45 90", 3, 2, 225, 2},    //
		{"0 90 180", 5, 2.5, 270, 2}, // mirrored in the plane 0-180
		{"0 90 180", 5, 2.5, 225, 3.5},
		{"90 180 270", 3, 2, 0, 2},     // mirrored in the plane 90-270
		{"90 180 270", 3, 2, 45, 1.5},  // as at 135
		{"90 180 270", 3, 2, 315, 2.5}, // as at 225
		{"0 90 180 270 360", 1, 2.5, 315, 2.5},
		{"0 90 180 270", 4, 2.5, 315, 2.5}, // closed by the reader
	} {
		f, err := readLM63(planes("0 90", c.horizontal, c.last))
		require.NoError(t, err, c.horizontal)
		table, err := f.Table()
		require.NoError(t, err)
		require.InEpsilon(t, 2*math.Pi*c.mean, table.Lumens(), 1e-14, c.horizontal)
		require.InEpsilon(t, c.cd, table.Intensity(60, c.at), 1e-12, "%v", c)
	}
	up, err := readLM63(planes("90 180", "0", 1))
	require.NoError(t, err)
	table, err := up.Table()
	require.NoError(t, err)
	require.InEpsilon(t, 2*math.Pi, table.Lumens(), 1e-14)
	require.Zero(t, table.Intensity(89, 0), "zero outside the tabulated angles")
}

// What the standard leaves free changes nothing: the same file in other dress.
func TestLM63DressMakesNoDifference(t *testing.T) {
	plain := lm63Text("IESNA91", lm63Plain)
	want, err := readLM63(plain)
	require.NoError(t, err)
	head := plain[:strings.Index(plain, "1 -1")]
	numbers := strings.Fields(lm63Plain)
	for name, text := range map[string]string{
		"one long line":    head + strings.Join(numbers, " ") + strings.Repeat(" ", 2000),
		"a number a line":  head + strings.Join(numbers, "\r\n"),
		"mixed line ends":  strings.Replace(strings.Replace(plain, "\n", "\r\n", 3), "0\n", "0\r", 1),
		"commas":           head + strings.Join(numbers, ","),
		"tabs":             head + strings.Join(numbers, "\t") + "\t\t\n",
		"blank lines":      strings.ReplaceAll(plain, "\n", "\n\n \n"),
		"leading blanks":   strings.ReplaceAll(plain, "\n[", "\n \t["),
		"blanks at TILT":   strings.Replace(plain, "TILT=NONE", "  TILT = none \t", 1),
		"exponents, signs": strings.Replace(plain, "0 45 90\n0\n100 50 0", "+0 4.5E+1 90.\n.0\n1e2 5.0e+01 +0", 1),
		"end of old files": plain + "\x1a",
	} {
		got, err := readLM63(text)
		require.NoError(t, err, name)
		require.Equal(t, want, got, name)
	}
	got, err := readLM63(strings.Replace(plain, "[TEST] a", "[TEST] 20\xb0", 1))
	require.NoError(t, err)
	value, _ := got.Label("TEST")
	require.Equal(t, "20°", value, "a byte above 127 is ISO 8859-1")
	got, err = readLM63(strings.Replace(plain, "0.1 0.2 0", "-0.1 -0.1 0", 1))
	require.NoError(t, err)
	require.Equal(t, "circle or ellipse", got.Opening())
	require.Equal(t, want.Web, got.Web)
	// Lamps and their lumens never scale candela.
	got, err = readLM63(strings.Replace(plain, "1 -1 2", "3 5000 2", 1))
	require.NoError(t, err)
	require.Equal(t, want.Web, got.Web)
	require.Equal(t, 15000.0, got.LampLumens())
	// The twelfth number: 1.5 is applied in 1986 and 1991 only.
	for e := LM63of1986; e <= LM63of2019; e++ {
		line := e.String()
		if e == LM63of1986 {
			line = "free text"
		}
		f, err := readLM63(lm63Text(line, strings.Replace(lm63Plain, "0.5 7 50", "0.5 1.5 50", 1)))
		require.NoError(t, err)
		want := 100.0
		if e <= LM63of1991 {
			want = 150
		}
		require.InEpsilon(t, want, f.Web.Candela[0][0], 1e-15, line)
	}
}

// Every keyword of the standard, and one of the user's own, passes without a
// warning; [MORE] joins the line before it; a keyword may come again.
func TestLM63Keywords(t *testing.T) {
	names := strings.Fields("TEST TESTLAB ISSUEDATE MANUFAC LUMCAT LUMINAIRE LAMPCAT LAMP BALLAST BALLASTCAT MAINTCAT DISTRIBUTION " +
		"FLASHAREA COLORCONSTANT LAMPPOSITION NEARFIELD OTHER SEARCH BLOCK ENDBLOCK _OWN")
	var b strings.Builder
	b.WriteString("IESNA:LM-63-2002\n")
	for _, n := range names {
		fmt.Fprintf(&b, "[%s] a value\n[MORE] more of it\n", n)
	}
	b.WriteString("[OTHER] again\nTILT=NONE\n" + lm63Plain)
	f, err := readLM63(b.String())
	require.NoError(t, err)
	require.Empty(t, f.Warnings)
	require.Len(t, f.Labels, len(names)+1)
	for i, n := range names {
		require.Equal(t, Label{n, "a value\nmore of it"}, f.Labels[i])
	}
	value, ok := f.Label("OTHER")
	require.True(t, ok)
	require.Equal(t, "a value\nmore of it", value, "the first")
	_, ok = f.Label("NOSUCH")
	require.False(t, ok)
}

func TestLM63RefusesCountsAndAngles(t *testing.T) {
	swap := func(old, new string) string { return lm63Text("IESNA91", strings.Replace(lm63Plain, old, new, 1)) }
	tilt := func(block string) string {
		return strings.Replace(swap("", ""), "TILT=NONE", "TILT=INCLUDE\n"+block, 1)
	}
	for name, c := range map[string]struct {
		text, token, reason string
		line                int
	}{
		"vertical count in part":   {swap("2 3 1 1 2", "2 3.5 1 1 2"), "3.5", "number of vertical angles must be a whole number", 7},
		"no vertical angles":       {swap("2 3 1 1 2", "2 0 1 1 2"), "0", "number of vertical angles must be a whole number from 2", 7},
		"negative count":           {swap("2 3 1 1 2", "2 -3 1 1 2"), "-3", "number of vertical angles must be a whole number", 7},
		"horizontal count in part": {swap("2 3 1 1 2", "2 3 0.5 1 2"), "0.5", "number of horizontal angles must be a whole number from 1", 7},
		"no horizontal angles":     {swap("2 3 1 1 2", "2 3 0 1 2"), "0", "number of horizontal angles must be a whole number from 1", 7},
		"type in part":             {swap("3 1 1 2", "3 1 1.5 2"), "1.5", "from 1 to 3", 7},
		"unit zero":                {swap("3 1 1 2", "3 1 1 0"), "0", "from 1 to 2", 7},
		"tilt count in part":       {tilt("1 1.5 0 1"), "1.5", "number of tilt angles", 7},
		"tilt count zero":          {tilt("1 0 0 1"), "0", "number of tilt angles", 7},
		"tilt count beyond":        {tilt("1 1000000000 0 1"), "1000000000", "more than the rest", 7},
		"tilt angles fall":         {tilt("1 2 30 20 1 1"), "20", "not increasing after 30", 7},
		"tilt ends":                {"TILT=INCLUDE\n1\n3\n0 45", "", "the file ends where the tilt angle should stand", 4},
		"horizontal falls":         {lm63Text("IESNA91", "1 -1 1 2 3 1 2 0 0 0 1 1 50\n0 90\n0 90 45\n1 1 1 1 1 1"), "45", "horizontal angle 3 of 3: not increasing after 90", 9},
		"horizontal repeats":       {lm63Text("IESNA91", "1 -1 1 2 3 1 2 0 0 0 1 1 50\n0 90\n0 90 90\n1 1 1 1 1 1"), "90", "not increasing after 90", 9},
		"beyond a circle":          {lm63Text("IESNA91", "1 -1 1 2 2 1 2 0 0 0 1 1 50\n0 90\n0 361\n1 1 1 1"), "361", "allowed 0 to 360", 9},
		"from 90 to 180":           {lm63Text("IESNA91", "1 -1 1 2 2 1 2 0 0 0 1 1 50\n0 90\n90 180\n1 1 1 1"), "90", "begin at 0, or run from 90 to 270", 9},
		"from 30":                  {lm63Text("IESNA91", "1 -1 1 2 2 1 2 0 0 0 1 1 50\n0 90\n30 90\n1 1 1 1"), "30", "the angles of type C begin at 0 or 90", 9},
		"vertical beyond":          {lm63Text("IESNA91", "1 -1 1 2 1 1 2 0 0 0 1 1 50\n0 181\n0\n1 1"), "181", "allowed 0 to 180", 8},
		"vertical below":           {lm63Text("IESNA91", "1 -1 1 2 1 1 2 0 0 0 1 1 50\n-90 90\n0\n1 1"), "-90", "allowed 0 to 180", 8},
		"type B beyond":            {lm63Text("IESNA91", "1 -1 1 2 2 2 2 0 0 0 1 1 50\n-91 90\n0 90\n1 1 1 1"), "-91", "allowed -90 to 90", 8},
		"type B just above":        {lm63Text("IESNA91", "1 -1 1 2 2 2 2 0 0 0 1 1 50\n-90 90.5\n0 90\n1 1 1 1"), "90.5", "allowed -90 to 90", 8},
		"type B just below":        {lm63Text("IESNA91", "1 -1 1 2 2 2 2 0 0 0 1 1 50\n-90.5 90\n0 90\n1 1 1 1"), "-90.5", "allowed -90 to 90", 8},
		"not a number":             {swap("100 50", "nan 50"), "nan", "not a plain number, for the candela", 11},
		"an infinity":              {swap("100 50", "+Inf 50"), "+Inf", "not a plain number", 11},
		"a word as count":          {swap("1 -1", "one -1"), "one", "not a plain number, for the number of lamps", 7},
		"too few in the header":    {lm63Text("IESNA91", "1 -1 2"), "", "the file ends where the number of vertical angles should stand", 7},
		"ballast not a number":     {swap("0.5 7", "x 7"), "x", "for the ballast factor", 8},
		"candela beyond":           {swap("100 50", "1.005e12 50"), "1.005e12", "candela 1 of plane 1: negative, or above 1e+12 cd", 11},
		"decimal comma, width":     {swap("0.1 0.2 0\n", "0,1 0,2 0\n"), "0", "the twelfth number must be above 0 (commas stand between digits", 7},
		"decimal comma, watts":     {swap("7 50", "7 57,5"), "5", "begin at 0 or 90", 8},
		"decimal comma, factor":    {swap("1 -1 2", "1 -1 1,0"), "0", "number of vertical angles must be", 7},
		"decimal comma, candela":   {swap("100 50 0", "100,2 50,1 0"), "1", "numbers are left over (commas stand between digits", 11},
	} {
		_, err := readLM63(c.text)
		var e *LM63Error
		require.True(t, errors.As(err, &e), "%s: %v", name, err)
		require.ErrorIs(t, err, ErrRange)
		require.Equal(t, c.token, e.Token, "%s: %v", name, err)
		require.Contains(t, e.Reason, c.reason, name)
		require.Equal(t, c.line, e.Line, "%s: %v", name, err)
	}
}

// A file never makes the reader open another one: the data of a tilt file that
// exists are not read, and no file of the package can open any.
func TestLM63OpensNothing(t *testing.T) {
	name := filepath.Join(t.TempDir(), "real.tlt")
	require.NoError(t, os.WriteFile(name, []byte("1\n2\n0 90\n1 1\n"), 0o600))
	_, err := readLM63(strings.Replace(lm63Text("IESNA:LM-63-2002", lm63Plain), "TILT=NONE", "TILT="+name, 1))
	require.ErrorContains(t, err, "the tilt data are in another file")
	sources, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, s := range sources {
		if strings.HasSuffix(s, "_test.go") {
			continue
		}
		file, err := goparser.ParseFile(token.NewFileSet(), s, nil, goparser.ImportsOnly)
		require.NoError(t, err)
		for _, i := range file.Imports {
			require.NotContains(t, []string{`"os"`, `"io/ioutil"`, `"io/fs"`, `"syscall"`, `"net/http"`, `"embed"`}, i.Path.Value, s)
		}
	}
}

// A kilobyte that claims a thousand million angles takes kilobytes.
func TestLM63AllocatesWhatAFileHolds(t *testing.T) {
	pad := strings.Repeat("1 ", 400)
	for name, text := range map[string]string{
		"vertical":   lm63Text("IESNA91", "1 -1 1 1000000000 1 1 2 0 0 0 1 1 50 "+pad),
		"horizontal": lm63Text("IESNA91", "1 -1 1 2 1000000000 1 2 0 0 0 1 1 50 "+pad),
		"both":       lm63Text("IESNA91", "1 -1 1 2000000000 2000000000 1 2 0 0 0 1 1 50 "+pad),
		"product":    lm63Text("IESNA91", "1 -1 1 400 400 1 2 0 0 0 1 1 50 "+pad),
		"tilt":       "TILT=INCLUDE\n1 1000000000 " + pad,
	} {
		require.Less(t, len(text), 1024)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := readLM63(text)
		runtime.ReadMemStats(&after)
		require.ErrorContains(t, err, "more than the rest of the file can hold", name)
		require.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(32<<10), name)
	}
}

// The bounds of what is written: a value at each is, one beyond is not.
func TestLM63WriteBounds(t *testing.T) {
	var b strings.Builder
	base := func() *LM63 {
		f, err := readLM63(strings.Replace(lm63Text("IESNA91", lm63Plain), "TILT=NONE", "TILT=INCLUDE\n1 1 0 1", 1))
		require.NoError(t, err)
		return f
	}
	for name, set := range map[string]func(f *LM63, k float64){
		"Lamps":         func(f *LM63, k float64) { f.Lamps = int(1e9 * k) },
		"InputPower":    func(f *LM63, k float64) { f.InputPower = 1e9 * k },
		"LumensPerLamp": func(f *LM63, k float64) { f.LumensPerLamp = -1e9 * k },
		"Field12":       func(f *LM63, k float64) { f.Field12 = 1e9 * k },
		"Width":         func(f *LM63, k float64) { f.Width = -1e9 * k },
		"Length":        func(f *LM63, k float64) { f.Length = 1e9 * k },
		"Height":        func(f *LM63, k float64) { f.Height = -1e9 * k },
		"tilt factor 1": func(f *LM63, k float64) { f.Tilt.Factors[0] = 1e9 * k },
		"intensity 1":   func(f *LM63, k float64) { f.Web.Candela[0][0] = 1e12 * k },
	} {
		f := base()
		set(f, 1)
		require.NoError(t, f.Write(&b), name)
		set(f, 1.005)
		require.ErrorContains(t, f.Write(&b), name)
	}
}
