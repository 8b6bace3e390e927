package envelope

import (
	"cloche.example/internal/solve"
	"cloche.example/psychro"
)

// Surface resistances in m² K/W of [IsoWall17] Table 7, horizontal flow: by
// them the inner face of a door is found.
const doorInside, doorOutside = 0.13, 0.04

// doorStep is the last step in K of the search for a door's face: worth 1e-7 W/m².
const doorStep = 1e-9

// doorHeat is what a square metre of door does.
type doorHeat struct {
	load       float64 // W/m², that the heater pays for
	condensate float64 // kg/(s m²)
	ice        float64 // fraction of it that freezes
}

// door returns the heat through a door of the U-value u, W/(m² K), between the
// air of the room and outside. Its inner face lies U R_si dT below the room
// and is judged as that of a cover: where it is below the dew point, vapour
// condenses on it with the convection of ISO 6946 and warms it. A U-value that
// leaves no resistance beside those of the surfaces divides them in proportion.
func (r *roomAir) door(u, outside float64) doorHeat {
	inside := r.state.Temperature()
	dt := inside - outside
	film := doorInside
	if u > 0 {
		film = min(film, doorInside/(doorInside+doorOutside)/u)
	}
	face := inside - u*film*dt
	if u == 0 || face >= r.dew {
		return doorHeat{load: u * dt}
	}
	out := 1 / (1/u - film) // W/(m² K), from the face to the outside
	sensible := func(t float64) float64 { return (inside-t)/film - out*(t-outside) }
	// balance with the latent heat of water or frost; falls with the face.
	root := func(frost bool) (t, g float64) {
		s := solve.NewBracket(face, r.dew, true)
		t = s.Start(face)
		for range solve.MaxIterations {
			w := r.wetAt(t)
			g = iso6946Level * w.perH * (r.ratio - w.ratio)
			heat := latentHeat(t, frost)
			var done bool
			if t, done = s.Next(t, sensible(t)+g*heat, -1/film-out-iso6946Level*w.perH*w.slope*heat, doorStep); done {
				break
			}
		}
		return t, max(0, g)
	}
	ice := 0.0
	t, g := root(false)
	if t < psychro.TriplePoint {
		if t, g = root(true); t < psychro.TriplePoint {
			ice = 1
		} else { // part of each, as on a cover
			t = psychro.TriplePoint
			w := r.wetAt(t)
			g = iso6946Level * w.perH * (r.ratio - w.ratio)
			water, frost := latentHeat(t, false), latentHeat(t, true)
			ice = min(1, max(0, (-sensible(t)/g-water)/(frost-water)))
		}
	}
	return doorHeat{load: (inside-t)/film + g*r.load, condensate: g, ice: ice}
}
