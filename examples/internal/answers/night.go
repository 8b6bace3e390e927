package answers

import (
	"fmt"
	"strings"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
)

// Air are the states of the air and the sky on the design night.
type Air struct {
	Pressure   float64 `json:"pressure_pa"`
	Inside     float64 `json:"inside_temperature_c"`
	InsideDew  float64 `json:"inside_dew_point_c"`
	InsideWet  float64 `json:"inside_wet_bulb_c"`
	InsideW    float64 `json:"inside_humidity_ratio_kg_kg"`
	Outside    float64 `json:"outside_temperature_c"`
	OutsideDew float64 `json:"outside_dew_point_c"`
	OutsideW   float64 `json:"outside_humidity_ratio_kg_kg"`
	Sky        float64 `json:"sky_temperature_c"`
}

// Geometry are the sizes of the house.
type Geometry struct {
	Volume     float64 `json:"volume_m3"`
	BelowGrade float64 `json:"volume_below_ground_m3"`
	Floor      float64 `json:"floor_m2"`
	Cover      float64 `json:"cover_m2"`
	Ratio      float64 `json:"cover_over_floor_ratio"`
	Perimeter  float64 `json:"floor_perimeter_m"`
}

// Night is the house on the design night, with one humidity inside.
type Night struct {
	Humidity    float64 `json:"inside_relative_humidity"`
	Evaporation float64 `json:"evaporation_kg_h"` // that it supposes
	Total       float64 `json:"total_w"`
	DryFilm     float64 `json:"total_with_dry_film_w"` // with every cover dry, at that humidity or the lower one below which none drips
	Coefficient float64 `json:"total_w_k"`
	PerFloor    float64 `json:"total_w_m2"`
	Latent      float64 `json:"latent_w"` // of the total: what evaporating takes
	Condensate  float64 `json:"condensate_l_h"`
	GroundMonth float64 `json:"ground_w"`
	GroundYear  float64 `json:"ground_annual_mean_w"`
	LeakageFlow float64 `json:"leakage_m3_s"`
	AirChanges  float64 `json:"leakage_per_h"`
	Facets      []Facet `json:"facets"`
	Terms       []Term  `json:"terms"`

	loss envelope.HouseLoss
	air  envelope.HouseAir
}

// Facet is a part of the cover. Dry, Condensing and Sky add up to Loss, and so
// does U over area and difference.
type Facet struct {
	Name       string   `json:"name"`
	Area       float64  `json:"area_m2"`
	U          float64  `json:"u_w_m2_k"`
	Loss       float64  `json:"loss_w"`
	Dry        float64  `json:"dry_heat_w"`
	Condensing float64  `json:"condensing_w"`
	Sky        float64  `json:"sky_w"`
	Inner      float64  `json:"inner_surface_c"`
	Drips      bool     `json:"drips"`
	DripsAbove *float64 `json:"drips_above_relative_humidity"` // null: it never does
	Condensate float64  `json:"condensate_l_h"`
}

// Term is a part of the loss.
type Term struct {
	Name  string  `json:"name"`
	Loss  float64 `json:"loss_w"`
	Share float64 `json:"share_fraction"`
}

func (h *House) geometry() Geometry {
	s := h.Shape
	return Geometry{s.Volume, s.BelowGrade, s.FloorArea, s.CoverArea, s.CoverRatio, s.Perimeter}
}

// drawn tells whether the screen is drawn on the design night.
func (h *House) drawn() bool { return fromplan.Drawn(h.Plan, h.Night.Outside.Temperature(), 0) }

// conditions are those of the design night.
func (h *House) conditions() (envelope.HouseConditions, bool, error) {
	return fromplan.Conditions(h.Plan, h.Night, float64(h.Plan.Site.WinterNight.Month), h.drawn())
}

func (h *House) designAir(k envelope.HouseConditions) Air {
	in, out := h.Night.Inside, h.Night.Outside
	return Air{h.Pressure, in.Temperature(), in.DewPoint(), in.WetBulb(), in.HumidityRatio(),
		out.Temperature(), out.DewPoint(), out.HumidityRatio(), out.Temperature() - k.SkyDrop}
}

// Nights are the design night with the plan's humidity, and with dry air into
// which nothing evaporates: the film is then dry, lets heat radiation pass and
// may lose more.
func (h *House) Nights() (wet, dry Night, err error) {
	if wet, err = h.night(h.Night); err != nil {
		return wet, dry, err
	}
	if err = h.dryFilm(&wet); err != nil {
		return wet, dry, err
	}
	air := h.Night
	if air.Inside, err = h.dryInside(air.Outside, air.Inside.Temperature()); err != nil {
		return wet, dry, fmt.Errorf("dry night: %w", err)
	}
	if air.Inside.RelativeHumidity() > h.Night.Inside.RelativeHumidity() {
		return wet, wet, nil // outside air is the damper one: the plan's is the dry night
	}
	dry, err = h.night(air)
	return wet, dry, err
}

// dryFilm is the loss of the damp night with every cover dry, at the plan's humidity
// or the lower one below which none drips: dry films let heat radiation pass, and
// damp air leaks vapour beside.
func (h *House) dryFilm(wet *Night) error {
	humidity := wet.Humidity
	if least := firstDrip(*wet); least != nil {
		humidity = min(humidity, *least)
	}
	air := h.Night
	var err error
	if air.Inside, err = fromplan.Air(h.Plan, air.Inside.Temperature(), max(0, humidity)); err != nil {
		return err
	}
	k, _, err := fromplan.Conditions(h.Plan, air, float64(h.Plan.Site.WinterNight.Month), h.drawn())
	if err != nil {
		return err
	}
	k.InnerFace = envelope.InnerDry
	r := &h.last
	if err := h.Envelope.LossTo(r, &k); err != nil {
		return fmt.Errorf("damp night with dry covers: %w", err)
	}
	h.assume(r, air.Inside.Temperature()-air.Outside.Temperature())
	wet.DryFilm = r.Total
	return nil
}

func (h *House) night(air envelope.HouseAir) (Night, error) {
	r, err := h.Loss(air, float64(h.Plan.Site.WinterNight.Month))
	if err != nil {
		return Night{}, err
	}
	n := Night{
		Humidity: air.Inside.RelativeHumidity(), Evaporation: Evaporation(&r, air),
		Total: r.Total, DryFilm: r.Total, Coefficient: r.Coefficient, PerFloor: r.PerFloor, Latent: r.Latent, Condensate: 3600 * r.Condensate,
		GroundMonth: r.Ground.Total, GroundYear: r.Ground.Steady,
		LeakageFlow: r.Leakage.Volume, AirChanges: r.Leakage.AirChanges, loss: r, air: air,
	}
	for _, f := range r.Facets {
		if f.Area <= 0 {
			continue // a given U stands for all of it
		}
		facet := Facet{Name: f.Name, Area: f.Area, U: f.U, Loss: f.Loss, Dry: f.AirDriven - f.Latent, Condensing: f.Latent, Sky: f.SkyDriven,
			Inner: f.InnerTemperature, Drips: f.Drips, Condensate: 3600 * f.Condensate}
		if f.DripHumidity <= 1 {
			facet.DripsAbove = some(f.DripHumidity)
		}
		n.Facets = joined(n.Facets, facet, r.Linear.Inside-r.Linear.Outside)
	}
	for _, t := range r.Terms() {
		if t.Loss != 0 {
			n.Terms = term(n.Terms, Term{whole(t.Name), t.Loss, t.Share})
		}
	}
	return n, nil
}

// worse is the night that the heater is sized for, what it needs, and which it is.
func worse(wet, dry Night) (n Night, needed float64, name string) {
	switch {
	case dry.Total > max(wet.Total, wet.DryFilm):
		return dry, dry.Total, "dry"
	case wet.DryFilm > wet.Total*(1+1e-9):
		return wet, wet.DryFilm, "damp, dry-film"
	}
	return wet, wet.Total, "wet"
}

// Worse is the night of Nights that the heater is sized for.
func Worse(wet, dry Night) Night {
	n, _, _ := worse(wet, dry)
	return n
}

// whole is the name of the side of an arch that a strip is part of.
func whole(name string) string {
	side, _, _ := strings.Cut(name, ", strip ")
	return side
}

// joined adds a facet to the list, strips of one side of an arch together: with
// the coldest of their inner faces and the driest air that drips.
func joined(list []Facet, f Facet, rise float64) []Facet {
	f.Name = whole(f.Name)
	last := len(list) - 1
	if last < 0 || list[last].Name != f.Name {
		return append(list, f)
	}
	l := &list[last]
	l.Area, l.Loss, l.Dry, l.Condensing, l.Sky = l.Area+f.Area, l.Loss+f.Loss, l.Dry+f.Dry, l.Condensing+f.Condensing, l.Sky+f.Sky
	l.U = l.Loss / l.Area / rise
	l.Inner = min(l.Inner, f.Inner)
	l.Drips = l.Drips || f.Drips
	l.Condensate += f.Condensate
	if l.DripsAbove == nil || f.DripsAbove != nil && *f.DripsAbove < *l.DripsAbove {
		l.DripsAbove = f.DripsAbove
	}
	return list
}

// term adds a term to the list, strips together.
func term(list []Term, t Term) []Term {
	if last := len(list) - 1; last >= 0 && list[last].Name == t.Name {
		list[last].Loss += t.Loss
		list[last].Share += t.Share
		return list
	}
	return append(list, t)
}
