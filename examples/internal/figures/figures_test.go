package figures_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/figures"
	"cloche.example/examples/internal/formula"
	"cloche.example/examples/internal/page"
)

// each runs a test over every figure as it stands.
func each(t *testing.T, f func(t *testing.T, fig figures.Figure, r figures.Result)) {
	t.Helper()
	for _, fig := range figures.All() {
		t.Run(fig.Name, func(t *testing.T) {
			r, err := fig.Run(fig.Defaults())
			require.NoError(t, err)
			f(t, fig, r)
		})
	}
}

// hold tests that the formula which a step shows, with the numbers it shows,
// gives the value that the library computed.
func hold(t *testing.T, name string, r figures.Result) {
	t.Helper()
	for _, s := range r.Steps {
		require.NotEmpty(t, s.Says, name)
		if s.Formula == "" {
			require.NotEmpty(t, s.Symbol, "%s: step %q", name, s.Says)
			continue
		}
		f, err := formula.Parse(s.Formula)
		require.NoError(t, err, name)
		got, err := f.Value(s.Values)
		require.NoError(t, err, "%s: step %q", name, s.Says)
		within := 1e-9
		if s.Within != 0 {
			require.NotEmpty(t, s.Why, "%s: step %q", name, s.Says)
			within = s.Within
		}
		require.LessOrEqual(t, math.Abs(got-s.Value), within*math.Max(math.Abs(s.Value), 1e-9), "%s: step %q: %s gives %g, the library %g", name, s.Says, s.Formula, got, s.Value)
	}
}

func TestFormulasGiveTheLibrarysValues(t *testing.T) {
	each(t, func(t *testing.T, fig figures.Figure, r figures.Result) { hold(t, fig.Name, r) })
}

// Related figures exist, and every figure has some.
func TestLinks(t *testing.T) {
	for _, theme := range figures.Themes() {
		for _, name := range theme {
			_, err := figures.Find(name)
			require.NoError(t, err)
		}
	}
	for _, f := range figures.All() {
		n := len(figures.Also(f.Name))
		require.True(t, 1 <= n && n <= 6, "%s has %d related figures: name it in a theme", f.Name, n)
	}
}

func TestEveryFigureIsWhole(t *testing.T) {
	pages := []string{"index.html"}
	for _, f := range figures.All() {
		pages = append(pages, f.Name+".html")
	}
	subjects := map[string]bool{}
	for _, s := range figures.Subjects() {
		subjects[s] = true
	}
	names := map[string]bool{}
	each(t, func(t *testing.T, fig figures.Figure, r figures.Result) {
		require.False(t, names[fig.Name], "the name stands twice")
		names[fig.Name] = true
		require.Regexp(t, `^[a-z][a-z0-9-]*$`, fig.Name)
		require.True(t, subjects[fig.Subject], "subject %q", fig.Subject)
		require.NotEmpty(t, fig.Question)
		require.NotEmpty(t, fig.Assumes)
		require.NotEmpty(t, fig.Change)
		require.NotEmpty(t, r.Lines)
		require.NotEmpty(t, r.Steps)
		require.NotEmpty(t, r.Picture.SVG)
		if fig.Source != "" {
			require.NotEmpty(t, r.Printed, "a published figure shows the source's answer")
		}
		for _, g := range fig.Given {
			require.True(t, g.Low <= g.Value && g.Value <= g.High, g.Name)
		}
		text, err := fig.Text(fig.Defaults())
		require.NoError(t, err)
		for _, line := range strings.Split(text, "\n") {
			require.LessOrEqual(t, len([]rune(line)), 110, line)
		}
		var b bytes.Buffer
		require.NoError(t, fig.WriteHTML(&b, fig.Defaults(), figures.Form{}))
		require.NoError(t, page.Check(b.Bytes(), pages...))
		require.Contains(t, b.String(), "The code that computes it", "the function %q was not found", fig.Code)
		b.Reset()
		require.NoError(t, fig.WriteHTML(&b, fig.Defaults(), figures.Form{On: true, Faults: []string{"a <b> fault"}}))
		require.NoError(t, page.Check(b.Bytes(), pages...))
	})
}

// The ends of every range, one at a time, give an answer whose formulas hold,
// or an error.
func TestEndsOfRanges(t *testing.T) {
	for _, fig := range figures.All() {
		for i, g := range fig.Given {
			for _, end := range []float64{g.Low, g.High} {
				v := fig.Defaults()
				v[i] = end
				if r, err := fig.Run(v); err == nil {
					hold(t, fmt.Sprintf("%s at %s %g", fig.Name, g.Name, end), r)
				}
			}
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Nextafter(g.Low, math.Inf(-1)), math.Nextafter(g.High, math.Inf(1))} {
				v := fig.Defaults()
				v[i] = bad
				_, err := fig.Run(v)
				require.ErrorContains(t, err, g.Name, "%s: %v", fig.Name, bad)
			}
		}
	}
}
