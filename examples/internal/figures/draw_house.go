package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/page"
)

// throughCover draws the temperatures on the way from the inside air, left,
// through each layer to the outside air and the sky, °C.
func throughCover(title, caption string, s envelope.Solution, k envelope.CoverConditions) Picture {
	sky := k.Outside - k.SkyDrop
	low, high := math.Min(sky, k.Outside), math.Max(k.Inside, k.Outside)
	for i := range s.Layers {
		low = math.Min(low, math.Min(s.Inner[i].Temperature, s.Outer[i].Temperature))
		high = math.Max(high, math.Max(s.Inner[i].Temperature, s.Outer[i].Temperature))
	}
	if high-low < 1 {
		high = low + 1
	}
	at := func(t float64) float64 { return 28 + 165*(t-low)/(high-low) }
	d := page.NewDrawing(0, 0, 420, 230, 420)
	blue, red := css(page.PenOf(0).Color), css(page.PenOf(1).Color)
	way := []float64{8, at(k.Inside), 105, at(k.Inside)}
	const first, last, thick = 150.0, 285.0, 10.0
	says := fmt.Sprintf("Inside air %.1f °C", k.Inside)
	for n := range s.Layers {
		i := s.Layers - 1 - n
		x := first
		if s.Layers > 1 {
			x += (last - first) * float64(n) / float64(s.Layers-1)
		} else {
			x = (first + last) / 2
		}
		in, out := s.Inner[i].Temperature, s.Outer[i].Temperature
		d.Polygon(page.Stroke{Width: 0.6, Fill: "var(--soft)"}, x, 10, x+thick, 10, x+thick, 205, x, 205)
		way = append(way, x, at(in), x+thick, at(out))
		label := func(a page.Anchor, x, t float64) { d.Text(a, x, at(t)+5, fmt.Sprintf("%.1f", t)) }
		if math.Abs(in-out) < 0.15 {
			label(page.Start, x+thick+4, out)
		} else {
			d.Text(page.End, x-4, at(in)-12, fmt.Sprintf("%.1f", in))
			label(page.Start, x+thick+4, out)
		}
		says += fmt.Sprintf(", layer at %.1f to %.1f °C", in, out)
	}
	way = append(way, 335, at(k.Outside), 412, at(k.Outside))
	d.Line(page.Stroke{Color: blue, Width: 2}, way...)
	d.Text(page.Start, 8, at(k.Inside)+6, fmt.Sprintf("inside %.1f °C", k.Inside))
	d.Text(page.End, 414, at(k.Outside)+6, fmt.Sprintf("outside %.1f °C", k.Outside))
	if k.SkyDrop != 0 {
		d.Line(page.Stroke{Color: red, Width: 1.5, Dash: "5 3"}, 335, at(sky), 412, at(sky))
		y := at(sky) - 13
		if math.Abs(at(k.Outside)-at(sky)) > 40 {
			y = at(sky) + 6
		}
		d.Text(page.End, 414, y, fmt.Sprintf("sky %.1f °C", sky))
	}
	d.Text(page.Middle, (first+last+thick)/2, 214, "cover, from the inside outwards")
	return drawn(d, title, fmt.Sprintf("%s, outside air %.1f °C, sky %.1f °C.", says, k.Outside, sky), caption)
}

// section draws a house across, its eave and ridge to scale, with what flows
// out of it written beside arrows: through the roof, the walls, the gaps and
// the ground. An arch is drawn round. An empty word leaves its arrow out.
func section(title, says, caption string, f envelope.Form, roof, walls, gaps, ground string) Picture {
	span, eave, ridge := f.Span, f.Eave, f.Ridge
	wide := math.Max(span*2.6, 2.2*(ridge+f.Depth))
	x0, x1 := span/2-wide/2, span/2+wide/2
	d := page.NewDrawing(x0, -f.Depth-0.16*wide, x1, ridge+0.16*wide, 420)
	d.Line(page.Stroke{Width: 1.5}, x0, 0, 0, 0)
	d.Line(page.Stroke{Width: 1.5}, span, 0, x1, 0)
	var outline []float64
	outline = append(outline, 0, -f.Depth, 0, eave)
	if f.Section == envelope.RoundArch {
		for i := 1; i < 24; i++ {
			a := math.Pi * (1 - float64(i)/24)
			outline = append(outline, span/2+span/2*math.Cos(a), eave+(ridge-eave)*math.Sin(a))
		}
	} else {
		outline = append(outline, span/2, ridge)
	}
	outline = append(outline, span, eave, span, -f.Depth)
	d.Line(page.Stroke{Width: 2}, outline...)
	d.Line(page.Stroke{Width: 1, Dash: "4 3"}, 0, -f.Depth, span, -f.Depth)
	blue := page.Stroke{Color: css(page.PenOf(0).Color), Width: 2, Arrow: true}
	long := 0.09 * wide
	line := 0.035 * wide // height of a line of words
	if roof != "" {
		d.Line(blue, span*0.75, (eave+ridge)/2+0.02*wide, span*0.75+0.6*long, (eave+ridge)/2+long)
		d.Text(page.Start, span*0.75+0.7*long, (eave+ridge)/2+long, "roof "+roof)
	}
	if walls != "" {
		d.Line(blue, span, eave/2, span+long, eave/2)
		d.Text(page.Start, span+1.1*long, eave/2-0.3*line, "walls "+walls)
	}
	if gaps != "" {
		d.Line(page.Stroke{Color: css(page.PenOf(1).Color), Width: 2, Arrow: true}, 0, eave*0.7, -long, eave*0.7)
		d.Text(page.End, -1.1*long, eave*0.7-0.3*line, "gaps "+gaps)
	}
	if ground != "" {
		d.Line(page.Stroke{Color: css(page.PenOf(2).Color), Width: 2, Arrow: true}, span/2, -f.Depth, span/2, -f.Depth-long)
		d.Text(page.Start, span/2+0.2*long, -f.Depth-long, "ground "+ground)
	}
	d.Dimension(0, -f.Depth+0.6*line, span, -f.Depth+0.6*line, fmt.Sprintf("%.3g m", span))
	return drawn(d, title, says, caption)
}
