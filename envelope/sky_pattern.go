package envelope

import "math"

// SkyPattern says how the heat radiation of the sky is spread over the part of
// it that a tilted facet sees.
type SkyPattern uint8

// The patterns of the sky. A level roof sees both alike; a wall under the
// weighted one takes 29 % less from a clear sky.
const (
	SkyEven     SkyPattern = iota // the same temperature all over
	SkyWeighted                   // the outside air's temperature towards the horizon, where the sky shines through much air: Walton 1983
)

// fromOutside returns the long-wave in W/m² on a facet of the tilt: from the
// sky by its view (1 + cos b)/2, of which with SkyWeighted the part beta, its
// square root, has the sky's temperature and the rest the outside air's
// [Walton83], and from the ground.
func (k *CoverConditions) fromOutside(pc *constants) float64 {
	view := skyView(k.Tilt)
	sky := pc.emission(k.sky())
	if k.Sky == SkyWeighted {
		beta := math.Sqrt(view) // [Walton83]
		sky = beta*sky + (1-beta)*pc.emission(k.Outside)
	}
	return view*sky + (1-view)*pc.emission(k.ground())
}
