package answers

import (
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
)

// Saving is what one change of the house saves in a year.
type Saving struct {
	Code     string   `json:"code"`
	Name     string   `json:"name"`
	Possible bool     `json:"possible"`
	Why      string   `json:"why_not"`
	Cost     float64  `json:"cost_currency"`
	Needed   float64  `json:"heater_needed_w"` // after the change
	Heat     float64  `json:"heat_saved_kwh"`
	Money    float64  `json:"saved_per_year_currency"`
	Share    float64  `json:"heat_saved_fraction"`
	Years    *float64 `json:"payback_years"`               // null: it saves nothing
	Interest *float64 `json:"payback_with_interest_years"` // null: never
	Drips    *float64 `json:"drips_above_relative_humidity"`
	Dimmer   *float64 `json:"daylight_lost_fraction"`
}

// change makes a plan another one; the cost is in the plan's currency.
type change struct {
	code, name string
	apply      func(h *House, q *plan.Plan) (cost float64, why string)
}

var changes = []change{
	{"second_film", "a second film", secondFilm},
	{"screen", "a screen drawn at night", screen},
	{"digging_in", "dug in deeper, as high above its floor", digIn},
	{"edge_insulation", "insulation of the edge below ground", edge},
}

func secondFilm(h *House, q *plan.Plan) (float64, string) {
	double := map[string]string{"single film": "double film", "single infrared film": "double film, infrared inside"}
	area := 0.0
	for _, part := range []struct {
		name *string
		kind envelope.FacetKind
	}{{&q.Cover.Roof, envelope.Roof}, {&q.Cover.SideWalls, envelope.SideWall}, {&q.Cover.EndWalls, envelope.EndWall}} {
		if other, single := double[*part.name]; single {
			*part.name = other
			for _, f := range h.Shape.Facets {
				if f.Kind == part.kind && !f.Party {
					area += f.Area
				}
			}
		}
	}
	if area == 0 {
		return 0, "no part is covered with a single film"
	}
	return area * q.Prices.SecondFilmPerM2, ""
}

func screen(h *House, q *plan.Plan) (float64, string) {
	if q.Screen != nil {
		return 0, "the house has a screen"
	}
	q.Screen = &plan.Screen{Name: "aluminised screen", DrawnBelow: "roof and walls", Drawn: "at night", SunBelow: 5, OutsideBelow: 5, Gap: 0.2}
	return h.Shape.FloorArea * q.Prices.ScreenPerM2, ""
}

// deeper is how far a house is dug in for the comparison, m.
const deeper = 0.5

func digIn(h *House, q *plan.Plan) (float64, string) {
	d := min(deeper, q.House.EaveHeight-q.House.DwarfWall.Height, 4-q.House.Depth, q.House.Span-q.House.Depth)
	switch {
	case d < 0.2:
		return 0, "its eaves are too low, or it is deep enough"
	case len(q.House.Annexes) > 0:
		return 0, "its annexes stand at the height they do"
	}
	q.House.Depth += d
	q.House.EaveHeight -= d
	q.House.RidgeHeight -= d
	q.Ground.EdgeInsulation.Lies = "none"
	return d * h.Shape.FloorArea * q.Prices.DiggingPerM3, ""
}

func edge(h *House, q *plan.Plan) (float64, string) {
	e := &q.Ground.EdgeInsulation
	cost := h.Shape.Perimeter * q.Prices.EdgeInsulationPer
	if q.House.Depth > 0 {
		if q.Ground.BuriedWallResistance > 1 {
			return 0, "the walls below ground are insulated"
		}
		q.Ground.BuriedWallResistance += e.Thickness / e.Conductivity
		return cost, ""
	}
	if e.Lies != "none" {
		return 0, "the edge is insulated"
	}
	e.Lies = "upright"
	return cost, ""
}

// Savings tries each change alone. A change that cannot be computed is none.
func (h *House) Savings(before Year, needed float64, ridge Ridge, light *Light, sun Sun, fan float64) []Saving {
	var list []Saving
	for _, c := range changes {
		s := Saving{Code: c.code, Name: c.name}
		q := *h.Plan
		s.Cost, s.Why = c.apply(h, &q)
		if s.Why == "" {
			h.try(&s, &q, before, light, sun, fan)
		}
		list = append(list, s)
	}
	return append(list, h.ridgeSaving(before, needed, ridge))
}

func (h *House) try(s *Saving, q *plan.Plan, before Year, light *Light, was Sun, fan float64) {
	other, err := NewHouse(q)
	if err != nil {
		s.Why = "it cannot be computed: " + err.Error()
		return
	}
	night, needed, e1 := other.need()
	sun, e2 := other.Sun()
	after, e3 := other.Year(sun, light, fan)
	for _, err := range []error{e1, e2, e3} {
		if err != nil {
			s.Why = "it cannot be computed: " + err.Error()
			return
		}
	}
	s.Possible = true
	s.Needed = needed
	s.saved(before, before.Heat-after.Heat, before.HeatCost+before.FanCost-after.HeatCost-after.FanCost, h.Plan.Prices.Interest)
	s.Drips = firstDrip(night)
	s.Dimmer = some(1 - sun.OnTrays/was.OnTrays)
}

// need is what the house asks of its heater on the worse night, and its wet night.
func (h *House) need() (wet Night, needed float64, err error) {
	wet, dry, err := h.Nights()
	if err != nil {
		return wet, 0, err
	}
	n, needed, _ := worse(wet, dry)
	saving, _, err := h.drawnAir(n, h.statedInlet())
	return wet, needed * (1 - saving), err
}

func (h *House) ridgeSaving(before Year, needed float64, ridge Ridge) Saving {
	s := Saving{Code: "ridge_return", Name: "air drawn from the ridge", Cost: h.Plan.Prices.RidgeReturn}
	switch {
	case h.Plan.Heater.TakesAirFrom == "the ridge":
		s.Why = "the heater draws from the ridge"
	case ridge.Costs:
		s.Why = "the air under the ridge is cooler than that at the crop"
	default:
		s.Possible, s.Needed = true, needed*(1-ridge.Saving)
		s.saved(before, before.Heat*ridge.Saving, before.HeatCost*ridge.Saving, h.Plan.Prices.Interest)
	}
	return s
}

func (s *Saving) saved(before Year, heat, money, interest float64) {
	s.Heat, s.Money = heat, money
	if before.Heat > 0 {
		s.Share = heat / before.Heat
	}
	if money > 0 {
		s.Years = some(s.Cost / money)
		s.Interest = some(PaidBack(s.Cost, money, interest))
	}
}

// PaidBack is after how many years the money saved each year, at its end, has
// paid what was spent and the interest on it; infinite when it never does.
func PaidBack(cost, yearly, interest float64) float64 {
	if interest == 0 {
		return cost / yearly
	}
	if left := 1 - interest*cost/yearly; left > 0 {
		return -math.Log(left) / math.Log1p(interest)
	}
	return math.Inf(1)
}

// firstDrip is the least relative humidity at which a facet drips.
func firstDrip(n Night) *float64 {
	var least *float64
	for _, f := range n.Facets {
		if f.DripsAbove != nil && (least == nil || *f.DripsAbove < *least) {
			least = f.DripsAbove
		}
	}
	return least
}
