package page_test

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/plotter"

	"cloche.example/examples/internal/page"
)

func document(t *testing.T) []byte {
	t.Helper()
	p := page.New("A house & its <loss>", "An invented house.")
	p.Section("Decisions")
	p.Verdict(true, "Is the heater enough?", "Yes, by 12 %.", "")
	p.Verdict(false, "Does the cover drip?", "At 82 % humidity.", "Hold 74 %.")
	p.Section("Terms")
	p.Paragraph("Text with control\x00 characters\x1b and bad \xff bytes.")
	p.Table("Loss", []string{"part", "W", "remark"}, [][]string{{"roof", "7628", "north"}, {"ground", "-12.5", ""}})
	p.List([]string{"one", "two"})
	p.Note("Keep an alarm that works without mains power.")
	p.Code("if a < b && c > d {\n}")
	plot := page.NewPlot("hour", "air, °C")
	for k := range 3 {
		line, err := plotter.NewLine(plotter.XYs{{X: 0, Y: float64(k)}, {X: 12, Y: 9}, {X: 24, Y: float64(k)}})
		require.NoError(t, err)
		line.Color, line.Dashes = page.PenOf(k).Color, page.PenOf(k).Dashes
		plot.Add(line)
		plot.Legend.Add("line", line)
	}
	p.Picture(page.Chart("A day", "Three lines that rise to noon.", 480, 240, plot), "One day.")
	d := page.NewDrawing(-1, -1, 7, 4, 480)
	d.Polygon(page.Stroke{Fill: "var(--soft)"}, 0, 0, 6, 0, 6, 1.8, 3, 3.2, 0, 1.8)
	d.Dimension(0, -0.4, 6, -0.4, "6 m")
	d.Dimension(6.4, 0, 6.4, 1.8, "1.8 m")
	d.Circle(page.Stroke{Color: "#1f6fb4"}, 3, 1, 0.3)
	d.Line(page.Stroke{Arrow: true, Dash: "4 2"}, 0.5, 2.5, 2, 3.5)
	d.Text(page.Middle, 3, 0.2, "section <to scale>")
	p.Picture(d.HTML("Section", "A gable of 6 m by 3.2 m."), "")
	var b bytes.Buffer
	_, err := p.WriteTo(&b)
	require.NoError(t, err)
	if file := os.Getenv("CLOCHE_PAGE"); file != "" { // to look at it
		require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	}
	return b.Bytes()
}

func TestADocumentNeedsNothingElse(t *testing.T) {
	doc := document(t)
	require.NoError(t, page.Check(doc))
	require.Equal(t, doc, document(t), "the same text in every run")
	require.Contains(t, string(doc), "A house &amp; its &lt;loss&gt;")
	require.NotContains(t, string(doc), "\x1b")
	require.NotContains(t, string(doc), "#000000")
}

// Numbers stand to the right in a column of numbers alone; words that begin with
// a number are words.
func TestTableSetsNumbersToTheRight(t *testing.T) {
	p := page.New("t", "")
	p.Table("c", []string{"what", "W", "why"}, [][]string{{"roof", "7628", "0.45 x 4.48 is less than the print"}, {"52 N in March by rule", "-12.5", "12 %"}, {"door", "never", ""}, {"gap", "3 to 5", "none"}})
	var b bytes.Buffer
	_, err := p.WriteTo(&b)
	require.NoError(t, err)
	for _, want := range []string{`<td class="n">7628</td>`, `<td class="n">-12.5</td>`, `<td>never</td>`, `<td class="n">3 to 5</td>`, `<td>0.45 x 4.48 is`, `<td>12 %</td>`, `<th scope="row">52 N in March by rule</th>`, `<th scope="col" class="n">W</th>`} {
		require.Contains(t, b.String(), want)
	}
}

func TestCheckFindsFaults(t *testing.T) {
	wrap := func(body string) []byte {
		return []byte("<!DOCTYPE html>\n<html><head><title>t</title></head><body>" + body + "</body></html>")
	}
	require.NoError(t, page.Check(wrap(`<h1 id="a">x</h1><a href="#a">a</a>`)))
	require.NoError(t, page.Check(wrap(`<a href="other.html#x">a</a>`), "other.html"))
	for body, want := range map[string]string{
		`<p>`:                    "not well formed",
		`<script>1</script>`:     "<script>",
		`<p onclick="x">a</p>`:   "script in onclick",
		`<img src="a.png"/>`:     "refers to",
		`<a href="other.html"/>`: "refers to",
		`<a href="#b"/>`:         "leads nowhere",
		`<p id="a"/><p id="a"/>`: "stands 2 times",
		`<h1>a</h1><h3>b</h3>`:   "heading h3 follows h1",
		`<svg xmlns="http://www.w3.org/2000/svg"><title>a</title></svg>`:      "lacks its title or description",
		`<style>a{background:url(x)}</style>`:                                 "style sheet refers",
		`<p style="background:url(http://x)">a</p>`:                           "style with a reference",
		`<svg xmlns="http://www.w3.org/2000/svg"><desc>only</desc><g/></svg>`: "lacks its title",
	} {
		require.ErrorContains(t, page.Check(wrap(body)), want, body)
	}
	require.ErrorContains(t, page.Check([]byte(`<html><head></head><body/></html>`)), "no title")
}
