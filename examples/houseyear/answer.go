package main

import (
	"context"
	"io"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// money is what the time costs, in the plan's currency.
type money struct {
	Heat  float64 `json:"heating_currency"`
	Lamps float64 `json:"lamps_currency"`
	Fan   float64 `json:"fan_controls_currency"`
	Vents float64 `json:"vent_and_tube_fans_currency"`
	Water float64 `json:"water_currency"`
	CO2   float64 `json:"co2_currency"`
	Total float64 `json:"total_currency"`
}

// answer is all that the program tells.
type answer struct {
	Site      siteOf     `json:"site"`
	Decisions []decision `json:"decisions"`
	Account   *account   `json:"account"`
	Money     money      `json:"money"`
	Amount    float64    `json:"heater_energy_amount"`
	Unit      string     `json:"heater_energy_unit"`
	Durations []duration `json:"heater_durations"` // none: it never works
	Cures     []cure     `json:"cures"`
	Vents     *hotVents  `json:"vents_for_hot_hours"` // null: no hot hour, or no changes were tried
	Methods   []method   `json:"methods"`
	Use       use        `json:"use"`
	Bands     []band     `json:"published"` // of whole years
	Day       []dayHour  `json:"day"`
	Notes     []string   `json:"notes"`
	Cautions  []string   `json:"cautions"`

	filled plan.Filled
	year   *year
}

// siteOf is where and when the weather was.
type siteOf struct {
	Name      string  `json:"name"`
	Format    string  `json:"format"`
	Latitude  float64 `json:"latitude_deg"`
	Longitude float64 `json:"longitude_deg"`
	Zone      float64 `json:"time_zone_h"`
	Altitude  float64 `json:"altitude_m"`
	Moved     bool    `json:"overrides_the_plan"`
	First     string  `json:"first_hour"`
	Last      string  `json:"last_hour"`
	Hours     int     `json:"hours_count"`
}

// options are what the flags ask for.
type options struct {
	plan, weather, hours, html, day string
	json, fill, bare, lines, print  bool
}

// solve answers for a plan under a weather, whose sky is filled.
func solve(ctx context.Context, p plan.Filled, s *weather.Series, o options, progress io.Writer) (*answer, error) {
	moved := s.SiteInFile && (s.Site.Latitude != p.Site.Latitude || s.Site.Longitude != p.Site.Longitude || s.Site.Zone != p.Site.TimeZone || s.Site.Altitude != p.Site.Altitude)
	p, err := atSite(p, s)
	if err != nil {
		return nil, err
	}
	if err := fillSky(&p.Plan, s); err != nil {
		return nil, err
	}
	h, err := newHouse(&p.Plan, s)
	if err != nil {
		return nil, err
	}
	var trials []answers.Change
	if !o.bare {
		trials = h.trials()
	}
	r, err := h.years(ctx, p, trials, progress)
	if err != nil {
		return nil, err
	}
	y := r.own
	a := &answer{filled: p, year: y, Account: y.account(), Cautions: h.steady.Cautions}
	n := s.Hours()
	a.Site = siteOf{s.Site.Name, s.Format.String(), s.Site.Latitude, s.Site.Longitude, s.Site.Zone, s.Site.Altitude, moved, s.Time[0].Format(stamp), s.Time[n-1].Format(stamp), n}
	if a.Site.Name == "" {
		a.Site.Name = "a place without a name"
	}
	a.Durations = y.durations()
	a.Money = h.money(&a.Account.Whole)
	a.Amount, a.Unit = a.Account.Whole.Fuel*3.6e6*h.source.PerJ, h.source.Unit
	if !o.bare {
		a.Cures, a.Vents = h.cures(a, r), r.vents
	}
	if a.Methods, err = h.methods(a); err != nil {
		return nil, err
	}
	if a.Use = a.use(); s.Whole() {
		a.Bands = published
	}
	if a.Day, err = y.day(o.day); err != nil {
		return nil, err
	}
	a.Decisions = a.decide()
	a.Notes = append(leftOut(&p.Plan), s.Account.Lines()...)
	switch {
	case s.Wind == nil:
		a.Notes = append(a.Notes, "the weather has no wind: the air outside stands still")
	case s.WindFrom == nil:
		a.Notes = append(a.Notes, "the weather does not say whence the wind blows: it is taken to blow across the house from the left")
	}
	if !s.SiteInFile {
		a.Notes = append(a.Notes, "the weather file names no site: it is taken to be that of the plan")
	}
	return a, nil
}

// money prices the sums.
func (h *house) money(t *sums) money {
	q := h.plan.Prices
	m := money{
		Heat: t.Fuel * 3.6e6 * h.source.Price, Lamps: t.LampPower * q.ElectricityPerKWh,
		Fan: t.FanPower * q.ElectricityPerKWh, Vents: (t.VentPower + t.TubePower) * q.ElectricityPerKWh,
		Water: (t.Given + t.Sprayed + t.Pads) / 1000 * q.WaterPerM3, CO2: h.carbonMoney(t.Dosed),
	}
	m.Total = m.Heat + m.Lamps + m.Fan + m.Vents + m.Water + m.CO2
	return m
}
