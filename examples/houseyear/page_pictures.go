package main

import (
	"fmt"
	"html/template"
	"math"

	"gonum.org/v1/plot/plotter"

	"cloche.example/examples/internal/page"
)

// fills are those of stacked bars, from below.
var fills = []string{"#1f6fb4", "var(--faint)", "#c65a11", "#a87b00", "#5b3f8f"} // the last for the stores

// told is the share of the whole below which a part is not drawn or named.
const told = 0.002

// parts leaves out the parts of each month that are next to nothing in all of them.
func (a *answer) parts(names []string, of func(*sums) []float64) ([]string, func(*sums) []float64) {
	all, sum := make([]float64, len(names)), 0.0
	for i := range a.Account.Months {
		for k, v := range of(&a.Account.Months[i]) {
			all[k], sum = all[k]+max(0, v), sum+max(0, v)
		}
	}
	var kept []int
	var left []string
	for k, v := range all {
		if v > told*sum {
			kept, left = append(kept, k), append(left, names[k])
		}
	}
	return left, func(t *sums) (v []float64) {
		every := of(t)
		for _, k := range kept {
			v = append(v, every[k])
		}
		return v
	}
}

// monthBars draws parts of each month on top of each other. Parts below nothing
// are left out; the unit is a thousand of the sums'.
func (a *answer) monthBars(title, unit string, names []string, of func(*sums) []float64) (template.HTML, string) {
	names, of = a.parts(names, of)
	most := 1e-9
	for i := range a.Account.Months {
		sum := 0.0
		for _, v := range of(&a.Account.Months[i]) {
			sum += max(0, v)
		}
		most = max(most, sum)
	}
	const high, wide, left = 170.0, 31.0, 14.0
	d := page.NewDrawing(0, -24, pictureWidth, high+60, pictureWidth)
	said := ""
	for i := range a.Account.Months {
		m := &a.Account.Months[i]
		x, y := left+wide*float64(i), 0.0
		said += monthNames[m.Month]
		for k, v := range of(m) {
			to := y + high*max(0, v)/most
			rectangle(d, page.Stroke{Width: 0.6, Fill: fills[k]}, x+4, y, x+wide-4, to)
			said += fmt.Sprintf(" %s %s,", names[k], num(v/1000, 1))
			y = to
		}
		d.Text(page.Middle, x+wide/2, y+4, num(y/high*most/1000, 1))
		d.Text(page.Middle, x+wide/2, -16, monthNames[m.Month])
	}
	d.Line(page.Stroke{Width: 0.6}, left, 0, left+wide*float64(len(a.Account.Months)), 0)
	for k, name := range names {
		x, y := left+128*float64(k%3), high+26+16*float64((len(names)-1)/3-k/3)
		rectangle(d, page.Stroke{Width: 0.6, Fill: fills[k]}, x, y, x+12, y+10)
		d.Text(page.Start, x+18, y, name)
	}
	return d.HTML(title+" in each month, "+unit, said), title + " in each month, " + unit + "."
}

func rectangle(d *page.Drawing, s page.Stroke, x0, y0, x1, y1 float64) {
	d.Polygon(s, x0, y0, x1, y0, x1, y1, x0, y1)
}

// shades is how many steps a carpet has between its least and greatest value.
const shades = 24

// carpet draws a value of every hour, a column a day and the hour upward. Hours of
// one shade after each other are one mark, so that a year stays a small picture.
func (a *answer) carpet(title, unit string, of func(i int) float64) (template.HTML, string) {
	y := a.year
	low, high := math.Inf(1), math.Inf(-1)
	for i := range y.State {
		if !y.Failed[i] {
			low, high = min(low, of(i)), max(high, of(i))
		}
	}
	off := y.house.weather.Time[0].Hour() // hours of the first day before the first
	days := (len(y.State) + off + 23) / 24
	const left, tall = 26.0, 6.0
	wide := (pictureWidth - left - 10) / float64(days)
	d := page.NewDrawing(0, -40, pictureWidth, 24*tall+8, pictureWidth)
	step := func(i int) int {
		if y.Failed[i] {
			return -1
		}
		return int(math.Min(shades-1, shades*(of(i)-low)/max(high-low, 1e-9)))
	}
	for i := 0; i < len(y.State); {
		k, end := step(i), i+1
		for end < len(y.State) && (end+off)%24 != 0 && step(end) == k {
			end++
		}
		if fill := shadeOf(float64(k) / (shades - 1)); k >= 0 {
			x := left + wide*float64((i+off)/24)
			rectangle(d, page.Stroke{Width: 0.2, Color: fill, Fill: fill}, x, tall*float64((i+off)%24), x+wide, tall*float64((end-1+off)%24+1))
		}
		i = end
	}
	for h := 0; h <= 24; h += 6 {
		d.Text(page.End, left-4, tall*float64(h)-4, fmt.Sprint(h))
	}
	last := 0
	for i, at := range y.house.weather.Time {
		if m := int(at.Month()); m != last {
			last = m
			d.Text(page.Start, left+wide*float64((i+off)/24), -14, monthNames[m])
		}
	}
	for k := range 6 {
		x := left + 58*float64(k)
		rectangle(d, page.Stroke{Width: 0.5, Fill: shadeOf(float64(k) / 5)}, x, -34, x+14, -24)
		d.Text(page.Start, x+18, -34, num(low+(high-low)*float64(k)/5, 0))
	}
	said := fmt.Sprintf("%s of every hour, a column a day and the hours of the day upward: from %s to %s %s.", title, num(low, 1), num(high, 1), unit)
	return d.HTML(title+", day by hour", said), said
}

// shadeOf is a fill from dark, at 0, to light, at 1.
func shadeOf(x float64) string {
	mix := func(dark, light float64) int { return int(math.Round(dark + (light-dark)*min(1, max(0, x)))) }
	return fmt.Sprintf("#%02x%02x%02x", mix(0x10, 0xff), mix(0x3a, 0xf4), mix(0x6e, 0xc8))
}

// dayPicture draws the day of an hour: temperatures, and below them heat, sun and
// light.
func (a *answer) dayPicture(title string, hour int) (template.HTML, string) {
	y := a.year
	w := y.house.weather
	first := hour - w.Time[hour].Hour()
	var in, out, heat, light plotter.XYs
	for i := max(0, first); i < min(first+24, len(y.State)); i++ {
		if y.Failed[i] {
			continue
		}
		x := float64(w.Time[i].Hour()) + 0.5
		in, out = append(in, plotter.XY{X: x, Y: y.State[i].Temperature}), append(out, plotter.XY{X: x, Y: w.Temperature[i]})
		heat, light = append(heat, plotter.XY{X: x, Y: y.heat(i) / 1000}), append(light, plotter.XY{X: x, Y: w.Global[i] / 100})
	}
	said := fmt.Sprintf("%s, %s: temperatures inside and outside, the heater in kW and the sun outside in units of 100 W/m².", title, w.Time[hour].Format("2006-01-02"))
	return chart(title, said, "hour of the day", "°C, kW, 100 W/m²", 280, line{"inside", in}, line{"outside", out}, line{"heater", heat}, line{"sun", light}), said
}
