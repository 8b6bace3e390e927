package psychro

import (
	"errors"
	"math"
)

// SurfaceVapour is the exchange of vapour between air and a wet, or wetting,
// surface by the Lewis relation.
type SurfaceVapour struct {
	Film        float64 // °C, mean of air and surface, where the properties are taken
	Lewis       float64 // dimensionless, heat over vapour diffusivity at the film
	Coefficient float64 // kg/(m² s) per kg/kg of humidity ratio: h over heat capacity per kg of dry air and Le^(2/3)
	Saturation  float64 // kg/kg dry air, humidity ratio at the surface
	Flux        float64 // kg/(m² s) towards the surface: condensation positive, evaporation negative
	Latent      float64 // W/m², Flux times the latent heat at the surface
}

// VapourFlux returns the vapour that the air gives to a surface of temperature
// t, °C, -100 to 110 and below boiling, where heat passes by the convective
// coefficient h, W/(m² K), 0 to 1000. By the analogy of [ChiCol34] the flux is
// h/(cp Le^(2/3)) times the difference of the humidity ratios, with cp per kg
// of dry air and all properties those of air halfway between the two; so it is
// zero at the dew point. The surface is ice below 0.01 °C. A negative flux is
// evaporation and holds for a wet surface; a dry one warmer than the dew point
// exchanges nothing. The error names each input outside its range.
func (s State) VapourFlux(t, h float64) (SurfaceVapour, error) {
	if err := errors.Join(s.check(), surfaceTemperaturesRange.Check("surface temperature", t), coefficientsRange.Check("convective coefficient", h)); err != nil {
		return SurfaceVapour{}, err
	}
	xs := s.model.saturated(SurfaceAt(t), t, s.p)
	if !(xs < mostVapour) {
		return SurfaceVapour{}, s.model.boils("surface temperature", t, s.p)
	}
	film := State{t: 0.5 * (s.t + t), p: s.p, model: s.model}
	film.w = 0.5 * (s.w + ratioOf(xs))
	film.x = fractionOf(film.w)
	v := SurfaceVapour{Film: film.t, Lewis: film.lewisNumber(), Saturation: ratioOf(xs)}
	v.Coefficient = h / (film.HeatCapacity() * math.Cbrt(v.Lewis*v.Lewis)) // LewisFactor
	v.Flux = v.Coefficient * (s.w - v.Saturation)
	v.Latent = v.Flux * LatentHeat(t)
	return v, nil
}

// Condenses reports whether water condenses or frost forms from the air on a
// surface of temperature t, °C.
func (s State) Condenses(t float64) bool { return s.VapourPressureDeficitAt(t) < 0 }
