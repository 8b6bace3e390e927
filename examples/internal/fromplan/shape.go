package fromplan

import (
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
)

var sections = map[string]envelope.Section{
	"gable": envelope.Gable, "uneven gable": envelope.UnevenGable, "round arch": envelope.RoundArch,
	"pointed arch": envelope.PointedArch, "lean-to": envelope.LeanTo,
}

var places = map[string]envelope.Place{
	"near end": envelope.AtNearEnd, "far end": envelope.AtFarEnd, "right side": envelope.AtRightSide, "left side": envelope.AtLeftSide,
}

// Form is the house as the library shapes it.
func Form(p *plan.Plan) envelope.Form {
	h := p.House
	f := envelope.DefaultForm()
	f.Section = sections[h.Shape]
	f.Span, f.Length, f.Eave, f.Ridge, f.Depth = h.Span, h.Length, h.EaveHeight, h.RidgeHeight, h.Depth
	f.DwarfWall, f.Azimuth, f.RidgeOffset, f.RidgeTilt = h.DwarfWall.Height, h.RidgeAzimuth, h.RidgeOffset, h.RidgeSlope
	f.ArchStrips, f.Bays, f.GutterWidth = h.ArchStrips, h.Bays, h.GutterWidth
	f.BackWallOpen = h.BackWall.BehindIt == "outside air"
	f.Annexes = nil
	for _, a := range h.Annexes {
		f.Annexes = append(f.Annexes, envelope.Annex{Name: a.Name, Place: places[a.Place], Width: a.Width, Reach: a.Reach, High: a.High, Low: a.Low, Depth: a.Depth})
	}
	return f
}

// Shape is the geometry of the house. A cover's area given by a published
// example scales all facets against the air alike.
func Shape(p *plan.Plan) (envelope.Shape, error) {
	s, err := envelope.NewShape(Form(p))
	if err != nil || p.Assumptions.CoverArea == nil {
		return s, err
	}
	k := *p.Assumptions.CoverArea / s.CoverArea
	for i, f := range s.Facets {
		if !f.Party && !f.Kind.InGround() {
			s.Facets[i].Area *= k
		}
	}
	s.CoverArea *= k
	s.CoverRatio *= k
	return s, nil
}

// wall returns the facet that stands at a place, -1 for none: a wall, or the
// lowest strip of the roof where an arch has no wall there.
func wall(s envelope.Shape, place string) int {
	turn := map[string]float64{"far end": 0, "right side": 90, "near end": 180, "left side": 270}[place]
	want := math.Mod(s.Form.Azimuth+turn, 360)
	found := -1
	for i, f := range s.Facets {
		if f.Party || math.Abs(math.Remainder(f.Azimuth-want, 360)) > 1e-6 || f.Tilt == 0 {
			continue
		}
		switch f.Kind {
		case envelope.SideWall, envelope.EndWall, envelope.BackWall:
			return i
		case envelope.Roof:
			if found < 0 {
				found = i
			}
		}
	}
	return found
}
