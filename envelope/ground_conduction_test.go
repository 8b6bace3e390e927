package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// pit is half of a long house's cross-section dug into a block of soil, on
// square cells of size h, inside at 1 K and outside at 0 K, solved for steady
// conduction by successive over-relaxation.
type pit struct {
	h, half, depth, lambda float64
	t                      [][]float64
}

func (p *pit) inside(i, j int) bool {
	return (float64(i)+0.5)*p.h < p.half && (float64(j)+0.5)*p.h < p.depth
}

// conduct returns the flows in W/m through the floor and the wall of one half.
func (p *pit) conduct(size float64) (floor, wall float64) {
	n := int(size/p.h + 0.5)
	p.t = make([][]float64, n)
	for i := range p.t {
		p.t[i] = make([]float64, n)
	}
	cell, film := p.lambda/p.h, p.h/2/p.lambda
	toFloor, toWall, toSky := 1/(0.17+film), 1/(0.13+film), 1/(0.04+film)
	for range 4000 {
		most := 0.0
		for i := range n {
			for j := range n {
				if p.inside(i, j) {
					continue
				}
				a, s := 0.0, 0.0
				link := func(k, l int, surface float64) {
					switch {
					case k < 0 || k >= n || l >= n:
					case l < 0:
						a += toSky
					case p.inside(k, l):
						a, s = a+surface, s+surface
					default:
						a, s = a+cell, s+cell*p.t[k][l]
					}
				}
				link(i-1, j, toWall)
				link(i+1, j, toWall)
				link(i, j-1, toFloor)
				link(i, j+1, toFloor)
				d := s/a - p.t[i][j]
				p.t[i][j] += 1.95 * d
				most = math.Max(most, math.Abs(d))
			}
		}
		if most < 1e-6 {
			break
		}
	}
	side, below := int(p.half/p.h+0.5), int(p.depth/p.h+0.5)
	for i := range side {
		floor += toFloor * (1 - p.t[i][below]) * p.h
	}
	for j := range below {
		wall += toWall * (1 - p.t[side][j]) * p.h
	}
	return floor, wall
}

// A long house 6 m wide dug in by 1 m: the standard's total agrees with
// conduction, its split does not, as GroundCoefficients says.
func TestDugInHouseAgainstConduction(t *testing.T) {
	p := pit{h: 0.125, half: 3, depth: 1, lambda: 1.5}
	floor, wall := p.conduct(12)
	g := DefaultGround(ClaySoil())
	g.WallThickness, g.Depth = 0, 1
	g.Area, g.Perimeter = 6e3, 2e3 // end walls far away
	r := solved(t, g)
	require.InEpsilon(t, floor+wall, r.Total/2e3, 0.05)
	require.InDelta(t, -0.18, r.WallPart/2e3/wall-1, 0.05)
	require.InDelta(t, 0.28, r.FloorPart/2e3/floor-1, 0.08)
}
