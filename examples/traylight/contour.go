package main

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// contours draws the lines of equal light of a map. It stands in for the
// contours of the plotting library, which come in another order in each run.
type contours struct {
	g      grid
	levels []float64
}

// Plot draws the lines, level after level.
func (k contours) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	c.SetLineStyle(plotter.DefaultLineStyle)
	for _, v := range k.levels {
		var path vg.Path
		for _, line := range joined(k.segments(v)) {
			for i, at := range line {
				to := vg.Point{X: x(at.X), Y: y(at.Y)}
				if i == 0 {
					path.Move(to)
				} else {
					path.Line(to)
				}
			}
		}
		if len(path) > 0 {
			c.Stroke(path)
		}
	}
}

// corner is a point of the map with its light.
type corner struct{ x, y, z float64 }

// segments cuts each cell of the map into four triangles about its middle, in
// each of which a line of equal light is straight.
func (k contours) segments(v float64) (out [][2]plotter.XY) {
	nx, ny := k.g.Dims()
	for j := range ny - 1 {
		for i := range nx - 1 {
			at := func(di, dj int) corner { return corner{k.g.X(i + di), k.g.Y(j + dj), k.g.Z(i+di, j+dj)} }
			around := [5]corner{at(0, 0), at(1, 0), at(1, 1), at(0, 1), at(0, 0)}
			var m corner
			for _, a := range around[:4] {
				m.x, m.y, m.z = m.x+a.x/4, m.y+a.y/4, m.z+a.z/4
			}
			for n := range 4 {
				var ends []plotter.XY
				a, b := around[n], around[n+1]
				for _, side := range [3][2]corner{{a, b}, {b, m}, {m, a}} {
					if p, q := side[0], side[1]; (p.z < v) != (q.z < v) {
						ends = append(ends, crossing(p, q, v))
					}
				}
				if len(ends) == 2 && ends[0] != ends[1] {
					out = append(out, [2]plotter.XY{ends[0], ends[1]})
				}
			}
		}
	}
	return out
}

// crossing is the place of the value v on the line from the darker to the
// lighter of two points, so that two triangles find the same one.
func crossing(p, q corner, v float64) plotter.XY {
	if p.z > q.z {
		p, q = q, p
	}
	f := (v - p.z) / (q.z - p.z)
	return plotter.XY{X: p.x + f*(q.x-p.x), Y: p.y + f*(q.y-p.y)}
}

// joined puts segments end to end, in the order in which they come.
func joined(segments [][2]plotter.XY) (lines []plotter.XYs) {
	at := map[plotter.XY][]int{}
	for i, s := range segments {
		at[s[0]], at[s[1]] = append(at[s[0]], i), append(at[s[1]], i)
	}
	used := make([]bool, len(segments))
	follow := func(line plotter.XYs) plotter.XYs {
	next:
		for {
			end := line[len(line)-1]
			for _, i := range at[end] {
				if s := segments[i]; !used[i] {
					used[i] = true
					if s[0] == end {
						s[0] = s[1]
					}
					line = append(line, s[0])
					continue next
				}
			}
			return line
		}
	}
	for i, s := range segments {
		if used[i] {
			continue
		}
		used[i] = true
		back := follow(plotter.XYs{s[1], s[0]})
		var line plotter.XYs
		for j := len(back) - 1; j >= 0; j-- {
			line = append(line, back[j])
		}
		lines = append(lines, follow(line))
	}
	return lines
}
