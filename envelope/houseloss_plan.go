package envelope

import (
	"errors"
	"fmt"

	"cloche.example/internal/domain"
)

// Door is an opaque part of a facet with a U-value of its own.
type Door struct {
	Name  string  // for reports
	Facet int     // index in Shape.Facets of the facet that it is part of
	Area  float64 // m²
	U     float64 // W/(m² K), air to air
}

// Bridge is a linear thermal bridge against the outside air, such as a metal
// sill, a gutter bar or the joint between cover and dwarf wall.
type Bridge struct {
	Name   string  // for reports
	Length float64 // m
	Psi    float64 // W/(m K)
}

// HousePlan is what a House is made from.
type HousePlan struct {
	Shape          Shape         // geometry
	Covers         []Cover       // one for each facet of the shape, see Shape.CoversByKind; those in the ground and party walls may have none
	Screened       []Cover       // the same with the screen drawn, nil in a house without one; a facet with none here keeps its cover
	FrameAllowance float64       // fraction by which bars and profiles raise the loss of roof and walls, 0.02 to 0.08 for metal (from memory)
	Doors          []Door        // doors and other opaque parts
	Bridges        []Bridge      // thermal bridges against the air
	Ground         Ground        // floor and buried walls, with the geometry of the shape
	Climate        GroundClimate // year that the ground sees
	Leakage        Leakage       // air leakage
	Annexes        []AnnexPlan   // one for each annex of the shape
}

// House is a checked house, ready to compute losses. It is made by NewHouse
// and may be used by several goroutines at once.
type House struct {
	plan   HousePlan
	net    []float64 // m², area of each facet without doors
	ground GroundCoefficients
	annex  []GroundCoefficients
}

// Ranges of a house plan.
var (
	frameRange      = domain.Range{Min: 0, Max: 0.5, Unit: "fraction", Source: "chosen"}
	uRange          = domain.Range{Min: 0, Max: 30, Unit: "W/(m² K)", Source: "chosen"}
	bridgeSpanRange = domain.Range{Min: 0, Max: 1e5, Unit: "m", Source: "chosen"}
	bridgePsiRange  = domain.Range{Min: -1, Max: 10, Unit: "W/(m K)", Source: "chosen"}
	noneMissing     = domain.Range{Min: 1, Max: MaxLayers, Unit: "layers", Source: "every facet against the air needs a cover"}
)

// NewHouse checks the plan. The error joins a *RangeError for each fault, with
// Field as in "Covers[3] (roof, south)": a facet without cover, doors larger
// than their facet, ground that does not fit the shape, and all faults of the
// parts. The slices are copied.
func NewHouse(p HousePlan) (House, error) {
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	n := len(p.Shape.Facets)
	if n == 0 {
		check(domain.Range{Min: 1, Max: inf, Unit: "facets", Source: "made by NewShape or NewFacetShape"}, "number of Shape.Facets", 0)
		return House{}, errors.Join(faults...)
	}
	count := domain.Range{Min: float64(n), Max: float64(n), Unit: "covers", Source: "one for each facet of the shape"}
	check(count, "number of Covers", float64(len(p.Covers)))
	if len(p.Covers) == n {
		for i := range p.Covers {
			f := &p.Shape.Facets[i]
			if !f.Kind.InGround() && !f.Party {
				check(noneMissing, fmt.Sprintf("Covers[%d] (%s)", i, f.Name), float64(p.Covers[i].Len()))
				check(facetHeightRange, fmt.Sprintf("Shape.Facets[%d].Height (%s)", i, f.Name), f.Height)
			}
		}
	}
	if len(p.Screened) != 0 {
		check(count, "number of Screened", float64(len(p.Screened)))
	}
	check(frameRange, "FrameAllowance", p.FrameAllowance)
	h := House{plan: p, net: make([]float64, n)}
	for i := range p.Shape.Facets {
		h.net[i] = p.Shape.Facets[i].Area
	}
	for i, d := range p.Doors {
		at := fmt.Sprintf("Doors[%d].", i)
		check(domain.Range{Max: float64(n - 1), Unit: "index of a facet", Source: "Shape.Facets"}, at+"Facet", float64(d.Facet))
		check(uRange, at+"U", d.U)
		if d.Facet < 0 || d.Facet >= n {
			continue
		}
		f := &p.Shape.Facets[d.Facet]
		if f.Kind.InGround() || f.Party {
			check(domain.Range{Unit: "m²", Source: "no door to the outside in " + f.Name}, at+"Area", d.Area)
			continue
		}
		check(domain.Range{Max: h.net[d.Facet], Unit: "m²", Source: "what other doors leave of " + f.Name}, at+"Area", d.Area)
		h.net[d.Facet] -= d.Area
	}
	for i, b := range p.Bridges {
		check(bridgeSpanRange, fmt.Sprintf("Bridges[%d].Length", i), b.Length)
		check(bridgePsiRange, fmt.Sprintf("Bridges[%d].Psi", i), b.Psi)
	}
	near := func(field string, v, want float64) {
		check(domain.Range{Min: want * (1 - 1e-9), Max: want * (1 + 1e-9), Unit: "m², m", Source: "of the shape; Shape.Ground fills it in"}, field, v)
	}
	near("Ground.Area", p.Ground.Area, p.Shape.FloorArea)
	near("Ground.Perimeter", p.Ground.Perimeter, p.Shape.Perimeter)
	near("Ground.Depth", p.Ground.Depth, p.Shape.Depth)
	var err error
	if h.ground, err = p.Ground.Solve(); err != nil {
		faults = append(faults, fmt.Errorf("Ground: %w", err))
	}
	if err = p.Climate.Check(); err != nil {
		faults = append(faults, fmt.Errorf("Climate: %w", err))
	}
	if err = p.Leakage.Check(); err != nil {
		faults = append(faults, fmt.Errorf("Leakage: %w", err))
	}
	faults = append(faults, h.checkAnnexes()...)
	if len(faults) > 0 {
		return House{}, errors.Join(faults...)
	}
	h.plan.Covers = append([]Cover(nil), p.Covers...)
	h.plan.Screened = append([]Cover(nil), p.Screened...)
	h.plan.Doors = append([]Door(nil), p.Doors...)
	h.plan.Bridges = append([]Bridge(nil), p.Bridges...)
	h.plan.Annexes = append([]AnnexPlan(nil), p.Annexes...)
	h.plan.Shape.Facets = append([]Facet(nil), p.Shape.Facets...)
	return h, nil
}

// Shape returns the house's geometry.
func (h *House) Shape() Shape { return h.plan.Shape }

// Ground returns the coefficients of the house's floor and buried walls.
func (h *House) Ground() GroundCoefficients { return h.ground }

// Climate returns the year that the house's ground sees.
func (h *House) Climate() GroundClimate { return h.plan.Climate }

// OpaqueWall returns a wall, door or dwarf wall of the resistance in m² K/W
// without its surfaces and of the thickness in m as a cover of one layer, so
// that it too radiates to the sky; its emittance is 0.9. The error joins a
// *RangeError for each fault: the thickness lies within ThicknessRange and
// thickness over resistance within ConductivityRange.
func OpaqueWall(name string, resistance, thickness float64) (Cover, error) {
	if err := thicknessRange.Check("thickness", thickness); err != nil {
		return Cover{}, errors.Join(err, domain.Range{Min: thicknessRange.Min / conductivityRange.Max, Max: thicknessRange.Max / conductivityRange.Min, Unit: "m² K/W", Source: "thickness over ConductivityRange"}.Check("resistance", resistance))
	}
	allowed := domain.Range{Min: thickness / conductivityRange.Max * (1 + 1e-12), Max: thickness / conductivityRange.Min * (1 - 1e-12), Unit: "m² K/W", Source: "thickness over ConductivityRange"}
	if err := allowed.Check("resistance", resistance); err != nil {
		return Cover{}, err
	}
	return NewCover([]Layer{{Name: name, EmittanceOut: opaqueEmittance, EmittanceIn: opaqueEmittance, Thickness: thickness, Conductivity: thickness / resistance}}, nil)
}

// opaqueEmittance is that of building materials, [IsoWall17] Annex C.
const opaqueEmittance = 0.9
