package main

import (
	"fmt"
	"io"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
	"cloche.example/internal/report"
)

// mark is a word at a place of the picture.
type mark struct {
	at   plotter.XY
	word string
}

// draw shows the area over the sun, a line for each wind with its name at the
// end, and what the plan has.
func (t *table) draw(format string) (io.WriterTo, error) {
	p := plot.New()
	p.Title.Text = fmt.Sprintf("Vent area for a rise of %s K: %s", report.Number(t.plan.SetPoints.Limits.SummerRise, 1), t.plan.Name)
	p.X.Label.Text, p.Y.Label.Text = "sun on level ground, W/m²", "vent area, m²"
	p.Add(plotter.NewGrid())
	var marks []mark
	for j, u := range t.winds {
		var xy plotter.XYs
		for i := range t.suns {
			if n := t.rows[i][j]; n.possible {
				xy = append(xy, plotter.XY{X: n.sun, Y: n.area})
			}
		}
		if len(xy) < 2 {
			continue
		}
		if err := frame.Line(p, j, "", xy); err != nil {
			return nil, err
		}
		marks = append(marks, mark{xy[len(xy)-1], fmt.Sprintf(" wind %g m/s", u)})
	}
	first, last := t.suns[0], t.suns[len(t.suns)-1]
	if !t.assumed {
		line, err := plotter.NewLine(plotter.XYs{{X: first, Y: t.have}, {X: last, Y: t.have}})
		if err != nil {
			return nil, err
		}
		line.Width = vg.Points(1)
		p.Add(line)
	}
	p.Y.Min, p.Y.Max = 0, 1.08*max(p.Y.Max, t.have)
	apart(marks, p.Y.Max/22)
	if !t.assumed {
		marks = append(marks, mark{plotter.XY{X: first, Y: t.have + p.Y.Max/50}, fmt.Sprintf("  the plan's vents, %s m²", report.Number(t.have, 1))})
	}
	if err := words(p, marks); err != nil {
		return nil, err
	}
	p.X.Max = last + 0.22*(last-first) // room for the names
	return frame.Plots(format, 20*vg.Centimeter, 13*vg.Centimeter, p)
}

// apart moves names of lines that end close to one another up, so that each can be
// read.
func apart(marks []mark, least float64) {
	slices.SortFunc(marks, func(a, b mark) int {
		if a.at.Y < b.at.Y {
			return -1
		}
		return 1
	})
	for i := 1; i < len(marks); i++ {
		marks[i].at.Y = max(marks[i].at.Y, marks[i-1].at.Y+least)
	}
}

// words writes the marks.
func words(p *plot.Plot, marks []mark) error {
	var all plotter.XYLabels
	for _, m := range marks {
		all.XYs, all.Labels = append(all.XYs, m.at), append(all.Labels, m.word)
	}
	l, err := plotter.NewLabels(all)
	if err != nil {
		return err
	}
	for i := range l.TextStyle {
		l.TextStyle[i].YAlign = text.YCenter
		l.TextStyle[i].Font.Size = vg.Points(11)
		if i == len(marks)-1 && marks[i].at.X == p.X.Min {
			l.TextStyle[i].YAlign = text.YBottom
		}
	}
	p.Add(l)
	return nil
}
