package envelope

import "cloche.example/internal/domain"

// RadiantRoom says what heat radiation the inner faces of a house's covers see.
type RadiantRoom uint8

// The radiant surroundings of the inner faces. The enclosure is what a
// HousePlan has that says nothing else; see the package comment for the
// difference.
const (
	RadiantEnclosure RadiantRoom = iota // each other, and the floor with the crop, black and RadiantRise above the inside air
	RadiantAir                          // a black body at the inside air's temperature: every facet alone
	RadiantGiven                        // a black body RadiantRise above the inside air: every facet alone
)

var radiantRooms = domain.Range{Min: 0, Max: float64(RadiantGiven), Unit: "number", Source: "constants of RadiantRoom"}

// enclosedRange is the number of facets that may see each other: their table
// takes the square of it.
var enclosedRange = domain.Range{Min: 1, Max: 500, Unit: "facets", Source: "that see each other; other choices of Radiant take more"}

// The drives of a house's flux.
const (
	splitInside = iota // inside air, floor and vapour
	splitSky           // sky and ground
	splitSun           // absorbed sun
	splitUnit          // 1 K of inside air and floor
	splits
)

// same takes for the facet r the solution of its twin.
func (h *House) same(r, twin *FacetLoss) {
	r.Solution, r.DripHumidity = twin.Solution, twin.DripHumidity
	r.scale(r.Facet, &h.plan.Shape.Facets[r.Facet], h.net[r.Facet])
}

// twinOf returns where in before the twin of the facet of the shape stands that
// has the same sun, or -1.
func (h *House) twinOf(k *HouseConditions, before []FacetLoss, facet int) int {
	j := h.twin[facet]
	if j < 0 || k.Sun != nil && k.Sun[j] != k.Sun[facet] {
		return -1
	}
	for at := range before {
		if before[at].Facet == j {
			return at
		}
	}
	return -1
}

// twins returns for each facet the first before it of the same covers, tilt and
// height, or -1.
func (h *House) twins() []int {
	facets := h.plan.Shape.Facets
	twin := make([]int, len(facets))
	for i := range facets {
		twin[i] = -1
		for j := range i {
			a, b := &facets[i], &facets[j]
			if a.Tilt == b.Tilt && a.Height == b.Height && h.covers[i] == h.covers[j] && h.drawn[i] == h.drawn[j] &&
				!b.Kind.InGround() && !b.Party {
				twin[i] = j
				break
			}
		}
	}
	return twin
}

// own gathers a cover's own drives into those of the house, what it sees apart.
func own(r *[drives]float64, dt float64) [splits]float64 {
	return [splits]float64{
		splitInside: r[driveAir]*dt + r[driveVapour],
		splitSky:    r[driveSky], splitSun: r[driveSun], splitUnit: r[driveAir],
	}
}
