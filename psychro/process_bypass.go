package psychro

import "cloche.example/internal/domain"

// BypassedCoil returns what a coil of few rows does: the fraction bypass, 0 to
// 0.95, of the air passes it untouched, the rest leaves at the temperature of its
// surface, °C, -100 to 200, the apparatus dew point, as from Coil; behind it the
// two mix. So the leaving air lies on the straight line from the entering air to
// the surface, 1 - bypass of the way in enthalpy and humidity ratio. Makers give
// bypass by rows and face speed, 0.02 to 0.3 (from memory); one value for heat and
// water is the usual convention. Fog that the mixing makes, in air far below 0 °C,
// counts as condensate, at its enthalpy. The error lists every fault.
func (s Stream) BypassedCoil(surface, bypass float64) (Coil, error) {
	if err := s.flowing(bypassRange.Check("bypass", bypass)); err != nil {
		return Coil{}, err
	}
	past := Stream{State: s.State, DryAir: bypass * s.DryAir}
	c, err := Stream{State: s.State, DryAir: s.DryAir - past.DryAir}.Coil(surface)
	if err != nil || bypass == 0 {
		return c, err
	}
	m, err := Mix(c.Out, past)
	if err != nil {
		return Coil{}, err
	}
	in := s.State
	c.Out = m.Air
	c.Condensate += m.FogLiquid + m.FogIce
	c.Drain += m.FogEnthalpy
	t := m.Air.State.t
	c.Sensible = s.DryAir * (in.Enthalpy() - in.model.enthalpy(t, in.p, in.x, in.w))
	c.Latent = c.Heat - c.Sensible
	return c, nil
}

var bypassRange = domain.Range{Min: 0, Max: 0.95, Unit: "fraction", Source: "a coil that meets some of the air"}
