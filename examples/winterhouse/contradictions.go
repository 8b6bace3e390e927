package main

import "fmt"

// contradictions lists what no single value's range can show.
func (p plan) contradictions() (faults []error) {
	fault := func(format string, a ...any) { faults = append(faults, fmt.Errorf(format, a...)) }
	h, l, s := p.House, p.Lighting, p.Summer
	if h.RidgeHeight < h.EaveHeight+leastRise {
		fault("house.ridge_height_m is %g, not above house.eave_height_m, which is %g, by %g", h.RidgeHeight, h.EaveHeight, leastRise)
	} else if h.Shape == "round arch" && h.RidgeHeight > h.EaveHeight+h.Span/2 {
		fault("house.ridge_height_m is %g, above house.eave_height_m by more than half of house.span_m: no round arch rises higher than %g", h.RidgeHeight, h.EaveHeight+h.Span/2)
	}
	if p.Inside.Temperature <= p.Site.Outside {
		fault("inside.temperature_c is %g, not above site.outside_design_c, which is %g: nothing to heat", p.Inside.Temperature, p.Site.Outside)
	}
	if p.Drying.Outside >= p.Inside.Temperature {
		fault("winter_drying.outside_c is %g, not below inside.temperature_c, which is %g", p.Drying.Outside, p.Inside.Temperature)
	}
	if l.BedWidth > h.Span || l.BedLength > h.Length {
		fault("lighting.bed_length_m and bed_width_m are %g and %g, more than the house's %g and %g", l.BedLength, l.BedWidth, h.Length, h.Span)
	}
	if l.Height > h.RidgeHeight+h.Depth {
		fault("lighting.height_above_trays_m is %g, more than the ridge's %g above the floor", l.Height, h.RidgeHeight+h.Depth)
	}
	if l.PPF > photonsPerJoule*l.Power {
		fault("lighting.ppf_umol_s is %g, but lighting.power_w of %g makes no more than %g, all of it light", l.PPF, l.Power, photonsPerJoule*l.Power)
	}
	if top := s.SideLevel + s.SideHeight/2; s.SideHeight > 0 && top > h.RidgeHeight {
		fault("summer.side_vent_centre_above_grade_m is %g: the vent's top at %g would stand above the ridge at %g", s.SideLevel, top, h.RidgeHeight)
	}
	if s.SideLength*s.SideHeight+s.RidgeLength*s.RidgeWidth <= 0 {
		fault("summer: the house has no vent, both areas are zero")
	}
	return faults
}

// leastRise from eave to ridge that makes a roof, m.
const leastRise = 0.05

// named puts the plan's keys in place of the field that a package refused.
func named(err error, keys string) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: %w", keys, err)
}
