package page

import (
	"fmt"
	"image/color"
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// schemes reads the colours of the style sheet: light, dark and print, each a
// change of the one before it in the sheet.
func schemes(t *testing.T) map[string]map[string]color.RGBA {
	t.Helper()
	roots := regexp.MustCompile(`:root \{([^}]*)\}`).FindAllStringSubmatch(style, -1)
	require.Len(t, roots, 3)
	colour := regexp.MustCompile(`--([a-z]+): (#[0-9a-f]{3,6})`)
	all := map[string]map[string]color.RGBA{}
	for i, name := range []string{"light", "dark", "print"} {
		all[name] = map[string]color.RGBA{}
		for _, m := range colour.FindAllStringSubmatch(roots[i][1], -1) {
			all[name][m[1]] = hex(t, m[2])
		}
	}
	for name, s := range all {
		require.Len(t, s, len(all["light"]), name)
	}
	return all
}

// hex reads #rgb and #rrggbb.
func hex(t *testing.T, s string) color.RGBA {
	t.Helper()
	if len(s) == 4 {
		s = fmt.Sprintf("#%c%c%c%c%c%c", s[1], s[1], s[2], s[2], s[3], s[3])
	}
	v, err := strconv.ParseUint(s[1:], 16, 32)
	require.NoError(t, err)
	return color.RGBA{uint8(v >> 16), uint8(v >> 8), uint8(v), 0xff}
}

// contrast is the ratio of two colours by WCAG 2.1: relative luminance of
// linear sRGB, each with 0.05 of stray light added.
func contrast(a, b color.RGBA) float64 {
	light := func(c color.RGBA) float64 {
		linear := func(v uint8) float64 {
			x := float64(v) / 255
			if x <= 0.04045 {
				return x / 12.92
			}
			return math.Pow((x+0.055)/1.055, 2.4)
		}
		return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
	}
	x, y := light(a)+0.05, light(b)+0.05
	return math.Max(x, y) / math.Min(x, y)
}

func TestContrast(t *testing.T) {
	require.InDelta(t, 21, contrast(color.RGBA{A: 255}, color.RGBA{255, 255, 255, 255}), 1e-9)
	require.InDelta(t, 4.54, contrast(hex(t, "#767676"), hex(t, "#fff")), 0.005) // the grey that is known to pass by a hair
	for name, s := range schemes(t) {
		for _, words := range []string{"ink", "link", "fail", "hold"} {
			for _, ground := range []string{"paper", "soft"} {
				require.GreaterOrEqual(t, contrast(s[words], s[ground]), 4.5, "%s on %s, %s", words, ground, name)
			}
		}
		// Lines that carry meaning: frames of inputs, arms of notes, axes.
		require.GreaterOrEqual(t, contrast(s["rule"], s["paper"]), 3.0, "rule, %s", name)
		for i, pen := range pens {
			require.GreaterOrEqual(t, contrast(pen.Color, s["paper"]), 3.0, "pen %d, %s", i, name)
		}
	}
}

// Words in pictures have the page's ink, whatever drew them.
func TestWordsInPicturesFollowTheInk(t *testing.T) {
	require.Regexp(t, `svg text \{ fill: currentColor; \}`, style)
	p := NewPlot("hour", "air, °C")
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 1, 0, 1
	d := NewDrawing(0, 0, 10, 10, 100)
	d.Text(Start, 1, 1, "here")
	for _, svg := range []string{string(Chart("a", "b", 200, 100, p)), string(d.HTML("a", "b"))} {
		for _, m := range regexp.MustCompile(`<text[^>]*>`).FindAllString(svg, -1) {
			require.NotRegexp(t, `fill[:=]"?(#|rgb|black)`, m)
		}
	}
}
