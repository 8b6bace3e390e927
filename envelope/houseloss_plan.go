package envelope

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"cloche.example/internal/domain"
)

// Door is an opaque part of a facet with a U-value of its own.
type Door struct {
	Name  string  // for reports
	Facet int     // index in Shape.Facets of the facet that it is part of
	Area  float64 // m², 0 to what the facet has; only 0 in a party wall or in the ground
	U     float64 // W/(m² K), 0 to 30, air to air
}

// Bridge is a linear thermal bridge against the outside air, such as a metal
// sill, a gutter bar or the joint between cover and dwarf wall.
type Bridge struct {
	Name   string  // for reports
	Length float64 // m, 0 to 1e5
	Psi    float64 // W/(m K), -1 to 10
}

// HousePlan is what a House is made from: a shape, covers by the kind of their
// facets, the ground under it and its leaks.
type HousePlan struct {
	Shape          Shape               // geometry, of NewShape or NewFacetShape
	Covers         map[FacetKind]Cover // cover of each kind of facet against the air; party walls need none
	Screened       map[FacetKind]Cover // covers with the screen drawn; a kind that is not in it keeps its cover
	Single         map[int]Cover       // covers of facets that differ from their kind, screen or not, by index in Shape.Facets
	FrameAllowance float64             // fraction, 0 to 0.5, by which bars and profiles raise the loss of roof and walls, 0.02 to 0.08 for metal (from memory)
	Doors          []Door              // doors and other opaque parts
	Bridges        []Bridge            // thermal bridges against the air
	Ground         Ground              // floor and buried walls; its Area, Perimeter and Depth are taken from the shape
	Climate        GroundClimate       // year that the ground sees
	Leakage        Leakage             // air leakage
	Annexes        []AnnexPlan         // one for each annex of the shape
	Radiant        RadiantRoom         // what the inner faces see, RadiantEnclosure unless said; an annex is always RadiantAir
}

// House is a checked house, ready to compute losses. It is made by NewHouse,
// never changes, and may be used by several goroutines at once.
type House struct {
	plan          HousePlan
	covers, drawn []Cover   // of each facet, with the screen open and drawn
	annexCovers   [][]Cover // of each facet of each annex
	twin          []int     // of each facet, the first before it that is its like, or -1
	net           []float64 // m², area of each facet without doors
	ground        GroundCoefficients
	annex         []GroundCoefficients
	annexMean     []float64 // °C, annual mean of each annex
	room          roomView  // with RadiantEnclosure
}

// Ranges of a house plan.
var (
	frameRange      = domain.Range{Min: 0, Max: 0.5, Unit: "fraction", Source: "chosen"}
	uRange          = domain.Range{Min: 0, Max: 30, Unit: "W/(m² K)", Source: "chosen"}
	bridgeSpanRange = domain.Range{Min: 0, Max: 1e5, Unit: "m", Source: "chosen"}
	bridgePsiRange  = domain.Range{Min: -1, Max: 10, Unit: "W/(m K)", Source: "chosen"}
	facetKindRange  = domain.Range{Min: 0, Max: float64(facetKinds - 1), Unit: "number", Source: "constants of FacetKind"}
)

// NewHouse checks the plan. The error joins a *RangeError for each fault, with
// Field as in "layers of Covers[roof]": a shape that no house has, a kind of
// facet without cover, doors larger than their facet, and all faults of the
// parts. The plan may be changed and used again.
func NewHouse(p HousePlan) (*House, error) {
	if err := p.Shape.check(); err != nil {
		return nil, domain.Within("Shape", err)
	}
	p.Shape = p.Shape.clone()
	p.Doors, p.Bridges, p.Annexes = slices.Clone(p.Doors), slices.Clone(p.Bridges), slices.Clone(p.Annexes)
	p.Ground.Area, p.Ground.Depth = p.Shape.FloorArea, p.Shape.Depth
	p.Ground.Perimeter, p.Ground.shared = exposed(&p)
	h := &House{plan: p, net: make([]float64, len(p.Shape.Facets))}
	faults := h.cover()
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(frameRange, "FrameAllowance", p.FrameAllowance)
	check(radiantRooms, "Radiant", float64(p.Radiant))
	if p.Radiant == RadiantEnclosure {
		check(enclosedRange, "number of facets", float64(len(p.Shape.Facets)))
	}
	faults = append(faults, h.doors()...)
	for i, b := range p.Bridges {
		check(bridgeSpanRange, fmt.Sprintf("Bridges[%d].Length", i), b.Length)
		check(bridgePsiRange, fmt.Sprintf("Bridges[%d].Psi", i), b.Psi)
	}
	var err error
	h.ground, err = p.Ground.Solve()
	faults = append(faults, domain.Within("Ground", err), domain.Within("Climate", p.Climate.check()), domain.Within("Leakage", p.Leakage.check()))
	faults = append(faults, h.checkAnnexes()...)
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	if err := h.floatAnnexes(); err != nil {
		return nil, err
	}
	h.twin = h.twins()
	if p.Radiant == RadiantEnclosure {
		h.room = newRoomView(&p.Shape)
	}
	return h, nil
}

// cover gives each facet against the air its cover, with the screen open and
// drawn.
func (h *House) cover() (faults []error) {
	p := &h.plan
	facets := slices.Clone(p.Shape.Facets)
	for _, i := range slices.Sorted(maps.Keys(p.Single)) {
		if err := (domain.Range{Max: float64(len(facets) - 1), Unit: "number", Source: "index in Shape.Facets"}).Check("index in Single", float64(i)); err != nil {
			return append(faults, err)
		}
		if err := layersNeeded("").Check(fmt.Sprintf("layers of Single[%d]", i), float64(p.Single[i].count())); err != nil {
			faults = append(faults, err)
		}
		facets[i].Party = true // needs none of its kind
	}
	covers, bad := coversOf(facets, p.Covers, "Covers")
	h.covers, faults = covers, append(faults, bad...)
	h.drawn = slices.Clone(h.covers)
	for _, k := range slices.Sorted(maps.Keys(p.Screened)) {
		if err := layersNeeded("").Check(fmt.Sprintf("layers of Screened[%s]", k), float64(p.Screened[k].count())); err != nil {
			faults = append(faults, err)
		}
	}
	for i := range facets {
		if c, ok := p.Screened[facets[i].Kind]; ok {
			h.drawn[i] = c
		}
		if c, ok := p.Single[i]; ok {
			h.covers[i], h.drawn[i] = c, c
		}
	}
	return faults
}

// layersNeeded is the range of the layers of a cover that a facet needs.
func layersNeeded(facet string) domain.Range {
	r := domain.Range{Min: 1, Max: MaxLayers, Unit: "layers"}
	if facet != "" {
		r.Source = facet + " needs a cover"
	}
	return r
}

// coversOf returns the cover of each facet by its kind, and a fault for each
// kind of facet against the air that has none.
func coversOf(facets []Facet, kinds map[FacetKind]Cover, field string) (covers []Cover, faults []error) {
	covers = make([]Cover, len(facets))
	for _, k := range slices.Sorted(maps.Keys(kinds)) {
		if err := facetKindRange.Check("kind in "+field, float64(k)); err != nil {
			faults = append(faults, err)
		}
	}
	told := map[FacetKind]bool{}
	for i := range facets {
		f := &facets[i]
		covers[i] = kinds[f.Kind]
		if f.Kind.InGround() || f.Party || covers[i].count() > 0 || told[f.Kind] {
			continue
		}
		told[f.Kind] = true
		faults = append(faults, layersNeeded(f.Name).Check(fmt.Sprintf("layers of %s[%s]", field, f.Kind), 0))
	}
	return covers, faults
}

// doors takes the doors from the areas of their facets.
func (h *House) doors() (faults []error) {
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	facets := h.plan.Shape.Facets
	for i := range facets {
		h.net[i] = facets[i].Area
	}
	for i, d := range h.plan.Doors {
		at := fmt.Sprintf("Doors[%d].", i)
		check(domain.Range{Max: float64(len(facets) - 1), Unit: "number", Source: "index in Shape.Facets"}, at+"Facet", float64(d.Facet))
		check(uRange, at+"U", d.U)
		if d.Facet < 0 || d.Facet >= len(facets) {
			continue
		}
		f := &facets[d.Facet]
		if f.Kind.InGround() || f.Party {
			check(domain.Range{Unit: "m²", Source: "no door to the outside in " + f.Name}, at+"Area", d.Area)
			continue
		}
		check(domain.Range{Max: h.net[d.Facet], Unit: "m²", Source: "what other doors leave of " + f.Name}, at+"Area", d.Area)
		h.net[d.Facet] -= d.Area
	}
	return faults
}

// Shape returns the house's geometry.
func (h *House) Shape() Shape { return h.plan.Shape }

// Ground returns the coefficients of the house's floor and buried walls.
func (h *House) Ground() GroundCoefficients { return h.ground }

// Radiant returns what the inner faces of the house's covers see.
func (h *House) Radiant() RadiantRoom { return h.plan.Radiant }

// WithRadiant returns the house with other radiant surroundings. The error is
// that of NewHouse.
func (h *House) WithRadiant(r RadiantRoom) (*House, error) {
	p := h.plan
	p.Radiant = r
	return NewHouse(p)
}

// Climate returns the year that the house's ground sees.
func (h *House) Climate() GroundClimate { return h.plan.Climate }

// OpaqueWall returns a wall, door or dwarf wall of the resistance, m² K/W,
// without its surfaces, and of the thickness, m, 1e-6 to 1, as a cover of one
// layer, so that it too radiates to the sky; its emittance is 0.9. The error
// joins a *RangeError for each fault; thickness over resistance must be a
// conductivity within 0.001 to 500 W/(m K).
func OpaqueWall(name string, resistance, thickness float64) (Cover, error) {
	if err := thicknessRange.Check("thickness", thickness); err != nil {
		return Cover{}, errors.Join(err, domain.Range{Min: thicknessRange.Min / conductivityRange.Max, Max: thicknessRange.Max / conductivityRange.Min, Unit: "m² K/W", Source: "thickness over a conductivity of 0.001 to 500 W/(m K)"}.Check("resistance", resistance))
	}
	allowed := domain.Range{Min: thickness / conductivityRange.Max * (1 + 1e-12), Max: thickness / conductivityRange.Min * (1 - 1e-12), Unit: "m² K/W", Source: "thickness over a conductivity of 0.001 to 500 W/(m K)"}
	if err := allowed.Check("resistance", resistance); err != nil {
		return Cover{}, err
	}
	return NewCover([]Layer{{Name: name, EmittanceOut: opaqueEmittance, EmittanceIn: opaqueEmittance, Thickness: thickness, Conductivity: thickness / resistance}}, nil)
}

// opaqueEmittance is that of building materials, [IsoWall17] Annex C.
const opaqueEmittance = 0.9
