package envelope

import (
	"math"
	"slices"
)

// The sides that a part of a house faces, in the order in which NewShape
// names them.
const (
	toLeftSide = iota
	toRightSide
	toFarEnd
	toNearEnd
	toLevel
)

// part is a plane part of the inside of a house: all that Shape.Facets holds
// under one kind, direction and strip.
type part struct {
	kind  FacetKind
	side  int
	strip int // of an arch, counted from the eave
}

// long is a part that runs along the house on an edge of the section, the house
// lying to the left of the edge.
type long struct {
	part part
	edge edge
}

// low is a rectangular part of both end walls below the rest of them.
type low struct {
	kind     FacetKind
	from, to float64 // m, height
}

// prism is a convex body between two equal ends: the inside of a house of one
// bay, of one bay's roof, or of all that lies below the roofs.
type prism struct {
	longs  []long
	lows   []low
	width  float64 // m, of the lows
	end    float64 // m², of each whole end
	length float64 // m
}

// point returns where an arch that begins at the ridge has the tilt in degree,
// out from the ridge and down from it in m.
func (d *side) point(tilt float64) (out, down float64) {
	radius := d.length / ((d.low - d.high) * degree)
	sh, ch := math.Sincos(d.high * degree)
	st, ct := math.Sincos(tilt * degree)
	return radius * (st - sh), radius * (ch - ct)
}

// roofEdges returns the edges of one bay's roof, from the right eave over the
// ridge to the left eave, for the roof whose left eave stands at the origin.
func (f *Form) roofEdges() []long {
	left, right := f.sides()
	ridge := planar{f.Span / 2, f.Ridge - f.Eave}
	switch f.Section {
	case UnevenGable:
		ridge.x = f.RidgeOffset
	case LeanTo:
		ridge.x = 0
	}
	var all []long
	strips := 1
	if right.curved {
		strips = f.ArchStrips
	}
	at := func(d *side, sign float64, i int) planar {
		if !d.curved {
			if i == 0 {
				return planar{ridge.x + sign*d.run(), 0}
			}
			return ridge
		}
		out, down := d.point(d.low - (d.low-d.high)*float64(i)/float64(strips))
		return planar{ridge.x + sign*out, ridge.z - down}
	}
	for i := range strips {
		all = append(all, long{part{Roof, toRightSide, i}, edge{at(&right, 1, i), at(&right, 1, i+1)}})
	}
	for i := strips - 1; i >= 0 && left.length > 0; i-- {
		all = append(all, long{part{Roof, toLeftSide, i}, edge{at(&left, -1, i+1), at(&left, -1, i)}})
	}
	return all
}

// run returns the breadth in m of a straight side.
func (d *side) run() float64 { return d.length * math.Cos(d.low*degree) }

// raised returns the edges lifted by z in m.
func raised(longs []long, z float64) []long {
	for i := range longs {
		longs[i].edge.a.z += z
		longs[i].edge.b.z += z
	}
	return longs
}

// walls returns the parts of the wall at x up to the height top above grade, from
// the floor up on the right, from the top down on the left.
func (f *Form) walls(x, top float64, kind FacetKind, side int) []long {
	heights := []struct {
		kind     FacetKind
		from, to float64
	}{{BuriedWall, -f.Depth, 0}, {DwarfWall, 0, f.DwarfWall}, {kind, f.DwarfWall, top}}
	var all []long
	for _, h := range heights {
		if h.to <= h.from {
			continue
		}
		e := edge{planar{x, h.from}, planar{x, h.to}}
		if side == toLeftSide {
			e.a, e.b = e.b, e.a
		}
		all = append(all, long{part{h.kind, side, 0}, e})
	}
	if side == toLeftSide {
		slices.Reverse(all)
	}
	return all
}

// lows returns the parts of the end walls below the rest.
func (f *Form) lows() (all []low) {
	if f.Depth > 0 {
		all = append(all, low{BuriedWall, -f.Depth, 0})
	}
	if f.DwarfWall > 0 {
		all = append(all, low{DwarfWall, 0, f.DwarfWall})
	}
	return all
}

// body returns the prism below the eaves, with the ceiling for its top, or for
// one bay the whole inside.
func (f *Form) body() prism {
	bays := float64(f.Bays)
	width := bays*f.Span + (bays-1)*f.GutterWidth
	p := prism{width: width, length: f.Length, lows: f.lows()}
	p.longs = append(p.longs, long{part{Floor, toLevel, 0}, edge{planar{0, -f.Depth}, planar{width, -f.Depth}}})
	p.longs = append(p.longs, f.walls(width, f.Eave, SideWall, toRightSide)...)
	p.end = width * (f.Eave + f.Depth)
	if f.Bays == 1 {
		left, right := f.sides()
		p.end += left.area + right.area
		p.longs = append(p.longs, raised(f.roofEdges(), f.Eave)...)
	} else {
		p.longs = append(p.longs, long{ceiling, edge{planar{width, f.Eave}, planar{0, f.Eave}}})
	}
	if f.Section == LeanTo {
		p.longs = append(p.longs, f.walls(0, f.Ridge, BackWall, toLeftSide)...)
	} else {
		p.longs = append(p.longs, f.walls(0, f.Eave, SideWall, toLeftSide)...)
	}
	return p
}

// attic returns the prism of one bay's roof over its open bottom.
func (f *Form) attic() prism {
	left, right := f.sides()
	return prism{
		longs:  append([]long{{ceiling, edge{planar{0, 0}, planar{f.Span, 0}}}}, f.roofEdges()...),
		end:    left.area + right.area,
		length: f.Length,
	}
}

// ceiling stands for the level at the eaves of several bays: the open bottoms
// of their roofs and the gutters between them.
var ceiling = part{kind: facetKinds, side: toLevel}
