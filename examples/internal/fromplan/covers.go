package fromplan

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
)

// filmContact is the still air left between two films that lie on each other,
// m; from memory.
const filmContact = 0.002

// Cover is the plan's cover of that name, one of its own or a ready-made one.
func Cover(p *plan.Plan, name string) (envelope.Cover, error) {
	for _, own := range p.Cover.Own {
		if own.Name == name {
			return ownCover(own)
		}
	}
	ready, found := envelope.FindCover(name)
	if !found {
		return envelope.Cover{}, fmt.Errorf("cover %q is none of the plan's own and none that is ready-made", name)
	}
	gaps := ready.Cover.Gaps()
	if len(gaps) == 1 && gaps[0].Bridge == 0 && ready.Cover.Layers()[0].Thickness < 1e-3 {
		gaps[0].Width, gaps[0].Collapsed, gaps[0].CollapsedWidth = p.Cover.FilmGap, p.Cover.Collapsed, filmContact
		return envelope.NewCover(ready.Cover.Layers(), gaps)
	}
	return ready.Cover, nil
}

func ownCover(own plan.OwnCover) (envelope.Cover, error) {
	var layers []envelope.Layer
	var gaps []envelope.Gap
	for i, l := range own.Layers {
		layers = append(layers, envelope.Layer{Name: l.Name, EmittanceOut: l.EmittanceOutward, EmittanceIn: l.EmittanceInward, Transmittance: l.LongWaveTransmittance,
			Thickness: l.Thickness, Conductivity: l.Conductivity, Openness: l.Openness, Leakage: l.AirLeakage})
		if i < len(own.Layers)-1 {
			gaps = append(gaps, envelope.Gap{Width: l.Gap, Bridge: l.GapRibs, Collapsed: l.GapCollapsed, CollapsedWidth: filmContact})
		}
	}
	c, err := envelope.NewCover(layers, gaps)
	if err != nil {
		return c, fmt.Errorf("cover %q: %w", own.Name, err)
	}
	return c, nil
}

// Screened is a cover with the plan's screen drawn below it, as in a house.
func Screened(p *plan.Plan, c envelope.Cover) (envelope.Cover, error) {
	s := p.Screen
	layer, found := envelope.FindLayer(s.Name)
	if o := s.Own; o != nil {
		layer = envelope.Layer{Name: "own screen", EmittanceOut: o.EmittanceOutward, EmittanceIn: o.EmittanceInward, Transmittance: o.LongWaveTransmittance,
			Thickness: o.Thickness, Conductivity: o.Conductivity, Openness: o.Openness, Leakage: o.AirLeakage}
	} else if !found {
		return c, fmt.Errorf("screen %q is not ready-made", s.Name)
	}
	drawn, err := envelope.WithScreen(c, layer)
	if err != nil {
		return c, err
	}
	gaps := drawn.Gaps()
	gaps[len(gaps)-1].Width = s.Gap
	return envelope.NewCover(drawn.Layers(), gaps)
}

// covers are those of each kind of facet, without and with the screen; a kind
// that the screen does not reach is not in the second.
func covers(p *plan.Plan) (bare, screened map[envelope.FacetKind]envelope.Cover, err error) {
	bare = map[envelope.FacetKind]envelope.Cover{}
	for kind, name := range map[envelope.FacetKind]string{envelope.Roof: p.Cover.Roof, envelope.SideWall: p.Cover.SideWalls, envelope.EndWall: p.Cover.EndWalls} {
		if bare[kind], err = Cover(p, name); err != nil {
			return nil, nil, err
		}
	}
	bare[envelope.Gutter] = bare[envelope.Roof]
	if p.Screen != nil {
		screened = map[envelope.FacetKind]envelope.Cover{}
		reach := []envelope.FacetKind{envelope.Roof, envelope.SideWall, envelope.EndWall}
		if p.Screen.DrawnBelow == "roof" {
			reach = reach[:1]
		}
		for _, kind := range reach {
			if screened[kind], err = Screened(p, bare[kind]); err != nil {
				return nil, nil, err
			}
		}
	}
	d, b := p.House.DwarfWall, p.House.BackWall
	if bare[envelope.DwarfWall], err = envelope.OpaqueWall("dwarf wall", d.Thickness/d.Conductivity, d.Thickness); err != nil {
		return nil, nil, err
	}
	bare[envelope.BackWall], err = envelope.OpaqueWall("back wall", b.Thickness/b.Conductivity, b.Thickness)
	return bare, screened, err
}
