package answers

import (
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// LampMap is the direct light of the plan's lamps on the lowest trays at harvest,
// each group at its level.
type LampMap struct {
	Layout        lighting.Layout
	Points        *lighting.Points
	Along, Across int       // points
	PPFD          []float64 // µmol/(m² s), rows along the bed from its near left corner
	lighting.Statistics
}

// work is how many pairs of lamp and point a map may have.
const work = 60_000

// lampGrid bounds the map: as fine as the height asks, and no finer than the work
// allows. Its counts share no factor with those of the lamps where they are
// coarse, so that the points do not all lie alike under them.
func lampGrid(bed lighting.Bed, height float64, lamps int) (nx, ny int) {
	most := max(work/lamps, 48)
	step := max(height/4, math.Sqrt(bed.Area()/float64(most)))
	nx, ny = int(math.Ceil(bed.Length/step)), int(math.Ceil(bed.Width/step))
	for nx*ny > most && nx > 4 && ny > 4 {
		if nx > ny {
			nx--
		} else {
			ny--
		}
	}
	return max(nx, 3), max(ny, 3)
}

// MapLamps maps the lamps as the plan counts them.
func MapLamps(p *plan.Plan) (m LampMap, err error) {
	if m.Layout, err = fromplan.Lamps(p); err != nil {
		return m, err
	}
	bed := fromplan.Bed(p)
	m.Along, m.Across = lampGrid(bed, p.Lights.HeightAboveTrays, len(m.Layout))
	if m.Points, err = bed.Grid(m.Along, m.Across); err != nil {
		return m, err
	}
	if m.PPFD, err = mapped(m.Layout, m.Points, fromplan.Levels(p)); err != nil {
		return m, err
	}
	m.Statistics, err = lighting.Evenness(m.PPFD)
	return m, err
}

// mapped is the light of all groups, each at its level.
func mapped(layout lighting.Layout, points *lighting.Points, levels map[string]float64) ([]float64, error) {
	if len(levels) == 1 {
		lights, err := lighting.NewLights(layout...)
		if err != nil {
			return nil, err
		}
		return lights.MapTo(nil, points)
	}
	maps, err := lighting.GroupMaps(layout, points)
	if err != nil {
		return nil, err
	}
	var at []float64
	for _, m := range maps {
		at = append(at, levels[m.Group])
	}
	return lighting.DimmedTo(nil, maps, at)
}
