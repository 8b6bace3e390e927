package formula_test

import (
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/formula"
)

func parse(t *testing.T, line string) formula.Formula {
	t.Helper()
	f, err := formula.Parse(line)
	require.NoError(t, err)
	return f
}

func TestValueFollowsTheRulesOfWriting(t *testing.T) {
	values := map[string]float64{"a": 2, "b": 3, "c": 5, "h_c": 7, "U_film": 11, "ΔT": 13, "β": 30}
	for line, want := range map[string]float64{
		"a + b c":                 17,
		"x = a - b - c":           -6,
		"x = a/b c":               2.0 / 3 * 5,
		"x = a/(b c)":             2.0 / 15,
		"-a^2":                    -4,
		"a^-2":                    0.25,
		"a^b^1 ":                  math.NaN(),
		"a^(b - 1)":               4,
		"h_c U_film ΔT":           7 * 11 * 13,
		"sqrt(a b + 3)":           3,
		"sin(β) + cos(2 β)":       1,
		"asin(0.5)":               30,
		"2e3 a + 1.5e-3":          4000.0015,
		"min(a, b, c) + max(a,b)": 5,
		"abs(a - c)":              3,
		"x = y = a·b":             6,
		"ln(exp(a)) + log(100)":   4,
		"2 π":                     2 * math.Pi,
		"a −b":                    -1,
		"(a + b)(c - 1)":          20,
	} {
		f, err := formula.Parse(line)
		if math.IsNaN(want) {
			require.Error(t, err, line)
			continue
		}
		require.NoError(t, err, line)
		got, err := f.Value(values)
		require.NoError(t, err, line)
		require.InDelta(t, want, got, 1e-12, line)
	}
	_, err := parse(t, "x = a q").Value(values)
	require.ErrorContains(t, err, "q has no value")
	_, err = parse(t, "a ± b").Value(values)
	require.Error(t, err)
	require.Equal(t, []string{"a", "h_c"}, parse(t, "W = a h_c/(a + 1)").Names())
}

func TestPutKeepsTheValue(t *testing.T) {
	values := map[string]float64{"p_w": 1705.25, "p": 101325, "t": -3.5, "n": 2}
	for line, want := range map[string]string{
		"W = 0.621945 p_w/(p - p_w)": "W = 0.621945 · 1705/(101300 - 1705)",
		"y = n t^2":                  "y = 2 (-3.5)^2",
		"y = tan(t) + n":             "y = tan(-3.5) + 2",
		"y = n p":                    "y = 2 · 101300",
		"y = q + n":                  "y = q + 2",
	} {
		f := parse(t, line).Put(values, 4)
		if strings.Contains(want, "101300") {
			want = strings.ReplaceAll(want, "101300", "101325") // whole numbers keep their figures
		}
		require.Equal(t, want, f.String())
	}
	f := parse(t, "W = 0.621945 p_w/(p - p_w)")
	exact, err := f.Value(values)
	require.NoError(t, err)
	again := parse(t, f.Put(values, 12).String())
	put, err := again.Value(nil)
	require.NoError(t, err)
	require.InEpsilon(t, exact, put, 1e-10)
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{101325, "101325"}, {0.00001234567, "1.235e-5"}, {1.5, "1.5"}, {-0.0345678, "-0.03457"}, {5.67e-8, "5.67e-8"}, {123456789, "1.235e8"}} {
		require.Equal(t, c.want, formula.Number(c.v, 4))
	}
}

func TestMathMLIsWellFormed(t *testing.T) {
	m := parse(t, "q = -ε σ (T_i^4 - T_o^4)/(1 + sqrt(a_1) < 2)").MathML()
	d := xml.NewDecoder(strings.NewReader(m))
	for {
		_, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err, m)
	}
	require.Contains(t, m, "<mfrac>")
	require.Contains(t, parse(t, "y = a sin(b)").MathML(), `<mo stretchy="false">(</mo>`, "nothing within is higher than a line")
	require.Contains(t, parse(t, "y = (a/b)^2").MathML(), "<mo>(</mo>", "as high as the fraction")
	require.Contains(t, m, "<msqrt>")
	require.Contains(t, m, "<msub><mi>a</mi><mtext>1</mtext></msub>")
	require.Contains(t, m, "&lt;")
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"W = 0.6 p/(p - q)", "a^-2", "sqrt(", "min(a,b", "((((", "x_{", "2e", "1.2.3", "a/ /b", "−", "sin(β)^2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, line string) {
		g, err := formula.Parse(line)
		if err != nil {
			return
		}
		values := map[string]float64{}
		for _, n := range g.Names() {
			values[n] = 2
		}
		g.Value(values)
		g.MathML()
		again, err := formula.Parse(g.Put(nil, 6).String())
		if err != nil {
			t.Fatalf("%q prints as %q, which is refused: %v", line, g.Put(nil, 6), err)
		}
		if again.Put(nil, 6).String() != g.Put(nil, 6).String() {
			t.Fatalf("%q prints as %q and then as %q", line, g.Put(nil, 6), again.Put(nil, 6))
		}
	})
}
