package envelope

import (
	"math"
	"testing"
)

// Ranges that the tests of package envelope_test read.
var (
	AirChangesRange  = airChangesRange
	SoilConductivity = soilConductivityRange
	SoilHeatCapacity = soilHeatCapacityRange
)

// Closure lends the closure of a shape to tests outside the package.
func Closure(s Shape) float64 { return s.closure() }

// CheckClimate and CheckLeakage lend the checks of what NewHouse is made from.
func CheckClimate(c GroundClimate) error { return c.check() }
func CheckLeakage(l Leakage) error       { return l.check() }

// Formulas that other results carry, for their published values.
var (
	EquivalentThickness = equivalentThickness
	PenetrationDepth    = penetrationDepth
)

// LeakageClasses lends the table of air changes.
func LeakageClasses() []LeakageClass { return leakageClasses() }

// View lends the share of what one facet sees that is another.
func View(h *House, from, to int) float64 {
	a, b := -1, -1
	n := 0
	for i := range h.plan.Shape.Facets {
		if f := &h.plan.Shape.Facets[i]; f.Kind.InGround() || f.Party {
			continue
		}
		if i == from {
			a = n
		}
		if i == to {
			b = n
		}
		n++
	}
	return h.room.share[a*h.room.n+b]
}

// Landing lends the section in m² of the sun's beam that enters through one
// facet and lands on another, for all facets of the inside, and the area in m² of
// each as it is drawn.
func Landing(l BedLight, elevation, azimuth float64) (section [][]float64, area []float64) {
	v := l.view(elevation, azimuth)
	n := len(l.glazing.facets)
	section, area = make([][]float64, n), make([]float64, n)
	for i := range section {
		section[i] = make([]float64, n)
	}
	for _, f := range l.faces {
		for _, g := range l.faces {
			if l.glazing.facets[f.facet].cosIncidence(elevation, azimuth) > 0 && l.glazing.facets[g.facet].cosIncidence(elevation, azimuth) < 0 {
				section[f.facet][g.facet] += v.common(f.outline, g.outline)
			}
		}
		s := f.outline
		for i := 1; i+1 < len(s); i++ {
			var a, b [3]float64
			for k := range a {
				a[k], b[k] = s[i][k]-s[0][k], s[i+1][k]-s[0][k]
			}
			area[f.facet] += math.Sqrt(math.Pow(a[1]*b[2]-a[2]*b[1], 2)+math.Pow(a[2]*b[0]-a[0]*b[2], 2)+math.Pow(a[0]*b[1]-a[1]*b[0], 2)) / 2
		}
	}
	return section, area
}

// DoorHeat lends what a square metre of door does: W/m², kg/(s m²).
type DoorHeat struct{ Load, Condensate, Ice float64 }

// DoorOf returns it for the U-value.
func DoorOf(t testing.TB, k HouseConditions, u float64) DoorHeat {
	t.Helper()
	room := newRoomAir(&k.CoverConditions)
	x := room.door(u, k.Outside)
	return DoorHeat{x.load, x.condensate, x.ice}
}

// AnnexMean lends the annual mean temperature of annex i.
func AnnexMean(h *House, i int) float64 { return h.annexMean[i] }
