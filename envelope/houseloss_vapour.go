package envelope

import (
	"errors"

	"cloche.example/internal/domain"
)

// VapourSources is what makes a house's air moist, and the air exchanged beside
// its leakage.
type VapourSources struct {
	Released float64 // kg/s, 0 to 1000, vapour set free by crop, soil, people and unvented burners
	Unheated float64 // kg/s, 0 to 1000 and no more than Released: of it, what the heater does not evaporate, as what a burner gives off
	Exchange float64 // kg/s, 0 to 1e5, dry air through vents and fans, beside the leakage
}

// VapourBalance is the humidity at which a house's air gets rid of the vapour
// that is set free, and the heat that the house then loses.
type VapourBalance struct {
	Humidity      float64   // fraction, relative humidity inside
	HumidityRatio float64   // kg/kg dry air
	Condensate    float64   // kg/s, on covers, frame and doors
	Carried       float64   // kg/s, that leakage, vents and fans carry off more than they bring
	Fog           float64   // kg/s, what saturated air cannot get rid of
	Residual      float64   // kg/s, what the balance leaves open: 1e-9 of the larger of Released and the vapour that comes in
	Solutions     int       // of all covers that it took, most of them rough
	Loss          HouseLoss // at this humidity
	Exchange      float64   // W, to warm the air of VapourSources.Exchange
	Latent        float64   // W, that evaporates what the heater evaporates, less what fog gives back
	Total         float64   // W: Loss.Total with Latent in the place of Loss.Latent, and Exchange
}

// Ranges of the vapour.
var (
	vapourReleasedRange = domain.Range{Min: 0, Max: 1000, Unit: "kg/s", Source: "chosen"}
	vapourExchangeRange = domain.Range{Min: 0, Max: 1e5, Unit: "kg/s", Source: "chosen"}
)

// check returns nil, or the join of a *RangeError for each field out of range.
func (v VapourSources) check() error {
	err := errors.Join(
		vapourReleasedRange.Check("Released", v.Released),
		vapourReleasedRange.Check("Unheated", v.Unheated),
		vapourExchangeRange.Check("Exchange", v.Exchange),
	)
	if err == nil && v.Unheated > v.Released {
		err = domain.Range{Min: 0, Max: v.Released, Unit: "kg/s", Source: "a part of Released"}.Check("Unheated", v.Unheated)
	}
	return err
}

// SolveVapour returns the humidity that the house settles to in the conditions
// k, whose InsideHumidity is not read, with what crop and soil set free: the
// condensate on all covers, their frame and the doors and what the exchanged
// air carries off are as much as is released. Where even saturated air does not
// get rid of all, the rest is fog; where nothing is released and no air is
// exchanged, the answer is the highest humidity at which nothing condenses. The
// error joins a *RangeError for each field out of range.
//
// There is one answer, whatever came before. A film that passes heat radiation
// sends more of it when wet, so that other covers take less vapour: a house may
// have a balance with the film wet and a drier one with it dry, and the answer
// is the moister, with FacetLoss.TwoStates where a film could be dry. At its
// humidity Loss, which judges such films anew, may find the drier state: so it
// does in 1 of 25,000 random houses.
func (h *House) SolveVapour(k HouseConditions, v VapourSources) (VapourBalance, error) {
	var r VapourBalance
	err := h.SolveVapourTo(&r, &k, v)
	return r, err
}

// SolveVapourTo is SolveVapour that writes to dst, uses its slices again and
// begins at its humidity. On an error dst is undefined.
func (h *House) SolveVapourTo(dst *VapourBalance, k *HouseConditions, v VapourSources) error {
	one := *k
	one.InsideHumidity = 1
	full, outside, err := h.states(&one)
	if err = errors.Join(err, v.check()); err != nil {
		return err
	}
	near := dst.HumidityRatio
	*dst = VapourBalance{Loss: dst.Loss}
	dst.Loss.clear()
	b := vapourSearch{dst: dst, v: v, full: full, near: near}
	b.t = together{h: h, dst: &dst.Loss, k: one, outside: outside}
	if err := b.find(); err != nil {
		return err
	}
	dst.Solutions = b.t.rounds
	if err := b.t.total(); err != nil {
		return err
	}
	heat := evaporation(k.Inside)
	l := &dst.Loss
	dst.Condensate, dst.Carried = l.Condensate, l.Evaporation-l.Condensate+b.vented()
	dst.Residual = dst.Condensate + dst.Carried + dst.Fog - v.Released
	dst.Exchange = v.Exchange * outside.HeatCapacity() * (k.Inside - k.Outside)
	dst.Latent = (v.Released - v.Unheated - dst.Fog) * heat
	dst.Total = l.Total - l.Latent + dst.Latent + dst.Exchange
	return nil
}
