package answers

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/lighting"
)

// Sun is how much of the sun outside comes in.
type Sun struct {
	OnTrays  float64 `json:"daylight_on_trays_over_outside_ratio"`
	Gain     float64 `json:"sun_kept_over_sun_on_floor_area_ratio"`
	Daylight float64 `json:"daylight_on_trays_mol_m2_d"` // in the month of the design night

	months [12]float64 // mol/(m² d) on the trays
}

// Sun takes the sun as even light from the whole sky: that of a cloudy day, and
// about the mean over a day. On the trays it has come through the roof; the gain
// comes through all facets.
func (h *House) Sun() (Sun, error) {
	p := h.Plan
	g, err := fromplan.Glazing(p, h.Shape)
	if err != nil {
		return Sun{}, err
	}
	const level = 100 // W/m², cancels
	gain, err := g.Gain(envelope.Sunlight{DiffuseHorizontal: level, Albedo: p.Site.GroundReflectance})
	if err != nil {
		return Sun{}, err
	}
	roof, err := fromplan.Light(p, p.Cover.Roof)
	if err != nil {
		return Sun{}, err
	}
	s := Sun{OnTrays: roof.Diffuse().Transmittance * p.Cover.LightLeft, Gain: gain.Gain / (level * h.Shape.FloorArea)}
	if q := p.Screen; q != nil && q.Drawn == "always" {
		left := fromplan.ScreenLight(q)
		s.OnTrays, s.Gain = s.OnTrays*left, s.Gain*left
	}
	for i, mj := range p.Site.Months.Sun {
		outside := lighting.OutdoorDLI(mj*1e6, p.Site.PhotonsOfDaylight)
		s.months[i] = lighting.InsideDLI(outside, s.OnTrays)
		if math.IsNaN(s.months[i]) {
			err = errors.Join(err, fmt.Errorf("site.months.sun_mj_m2_d[%d] is %g: its daylight lies outside the model's range", i, mj))
		}
	}
	s.Daylight = s.months[p.Site.WinterNight.Month-1]
	return s, err
}
