package answers

import (
	"errors"

	"cloche.example/examples/internal/plan"
)

// Result is everything that a plan answers.
type Result struct {
	Decisions []Decision `json:"decisions"`
	Warnings  []Warning  `json:"warnings"`
	Air       Air        `json:"air"`
	Shape     Geometry   `json:"shape"`
	Wet       Night      `json:"wet_night"`
	Dry       Night      `json:"dry_night"`
	Crop      float64    `json:"crop_evaporation_kg_h"`
	Settled   float64    `json:"humidity_the_crop_makes_relative_humidity"`
	Fog       float64    `json:"fog_kg_h"`
	Heater    Heater     `json:"heater"`
	Ducts     *Ducts     `json:"ducts"`
	Ridge     Ridge      `json:"ridge_return"`
	Frost     Frost      `json:"warm_up_and_frost"`
	Sun       Sun        `json:"sun"`
	Light     *Light     `json:"light"`
	Summer    Summer     `json:"summer"`
	Drying    Drying     `json:"winter_drying"`
	Fresh     Fresh      `json:"least_ventilation"`
	Doors     []Door     `json:"doors"`
	Water     Water      `json:"water"`
	Carbon    *Carbon    `json:"carbon_dioxide"`
	Power     Power      `json:"electricity"`
	Year      Year       `json:"year"`
	Savings   []Saving   `json:"savings"`
	Cautions  []string   `json:"cautions"`

	House *House `json:"-"`
}

// Of answers for the plan. Cures are tried when asked for: other covers, a
// screen, digging in and the like, each a house of its own.
func Of(p *plan.Plan, cures bool) (Result, error) {
	var r Result
	h, err := NewHouse(p)
	if err != nil {
		return r, err
	}
	r.House, r.Shape = h, h.geometry()
	if r.Wet, r.Dry, err = h.Nights(); err != nil {
		return r, err
	}
	if err := r.air(h); err != nil {
		return r, err
	}
	night, needed, name := worse(r.Wet, r.Dry)
	var e [8]error
	r.Ducts, e[0] = h.Blow()
	if r.Heater, e[1] = h.Heater(needed, night, r.Ducts); e[1] == nil {
		r.Heater.Worse = name
		needed = r.Heater.Needed
	}
	r.Frost, e[2] = h.Frost(night)
	if r.Sun, e[3] = h.Sun(); e[3] == nil {
		r.Light, e[4] = h.Light(r.Sun)
		r.Summer, e[5] = h.Summer(r.Sun)
	}
	r.Drying, e[6] = h.Drying()
	if e[3] == nil && e[4] == nil {
		r.Fresh, e[7] = h.Fresh(r.Wet.LeakageFlow, r.Sun, r.Light)
	}
	if err := errors.Join(e[:]...); err != nil {
		return r, err
	}
	fan := 0.0
	if r.Ducts != nil {
		fan = r.Ducts.Electric
	}
	r.Water, r.Power, r.Carbon = h.Water(r.Sun), h.Power(r.Light, fan), h.Carbon(r.Wet.LeakageFlow)
	if r.Year, err = h.Year(r.Sun, r.Light, fan); err != nil {
		return r, err
	}
	r.Doors = r.Year.passages
	if r.Ridge, err = h.Ridge(r.Year.loss, r.Year.air, r.Heater.Inlet); err != nil {
		return r, err
	}
	if cures {
		r.Savings = h.Savings(r.Year, needed, r.Ridge, r.Light, r.Sun, fan)
	}
	r.warn()
	r.decide()
	r.Cautions = cautions(p, &r)
	return r, nil
}

// air notes the states of the design night, and what humidity the crop's water
// would make in it.
func (r *Result) air(h *House) error {
	p := h.Plan
	n := p.Site.WinterNight
	k, drier, err := h.conditions()
	if err != nil {
		return err
	}
	h.Drier = drier
	r.Air = h.designAir(k)
	r.Crop = p.Crop.Vapour
	air, _, fog, err := h.settled(weather{h.Night.Outside, n.Wind, n.Cloud, float64(n.Month), h.drawn()}, h.Night.Inside.Temperature(), 0)
	r.Fog = fog
	r.Settled = air.Inside.RelativeHumidity()
	return err
}
