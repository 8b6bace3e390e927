package envelope

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
