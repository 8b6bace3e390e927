package main

import (
	"errors"
	"strings"

	"cloche.example/airheat"
	"cloche.example/internal/report"
	"cloche.example/lighting"
)

type ridgeReturn struct {
	UpperFloor float64 `json:"upper_layer_with_low_return_c"`
	UpperRidge float64 `json:"upper_layer_with_ridge_return_c"`
	CoilView   float64 `json:"coil_view"`
	Saving     float64 `json:"real_saving"`
	SavingHeat float64 `json:"real_saving_w"`
	Bound      float64 `json:"fully_mixed_bound"`
}

type seasonFuel struct {
	AtDesign float64 `json:"fuel_at_design_kg_h"`
	Heat     float64 `json:"season_heat_kwh"`
	Mass     float64 `json:"season_fuel_kg"`
	Cost     float64 `json:"season_cost"`
	Gains    float64 `json:"season_used_gains_kwh"`
}

type cropLight struct {
	Name    string `json:"crop"`
	Lamps   string `json:"lamps_alone"`
	WithSun string `json:"with_daylight"`
}

// ridgeOf lays the roof's loss on the upper layer, all else on the lower one.
func ridgeOf(p plan, d design) (ridgeReturn, error) {
	dT := p.Inside.Temperature - p.Site.Outside
	upper := 0.0
	for _, f := range d.Facets {
		if strings.HasPrefix(f.Name, "roof") {
			upper += (f.AirDriven + f.SkyDriven) / dT
		}
	}
	r, err := airheat.TwoLayers{
		LowerLoss: d.Loss.Coefficient - upper, UpperLoss: upper, Lower: p.Inside.Temperature, Outside: p.Site.Outside,
		RisingShare: p.Ridge.Rising, Mixing: p.Ridge.Mixing, HeaterFlow: d.Heater.Inlet, HeatCapacity: d.Air.inside.HeatCapacity() / d.Air.inside.SpecificVolume(),
	}.RidgeReturn()
	return ridgeReturn{r.Floor.Upper, r.Ridge.Upper, r.CoilView, r.Saving, r.SavingHeat, r.Bound}, err
}

// days of the months.
var days = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// seasonOf is the monthly method on the plan's means, with the loss
// coefficient of the season's mean night.
func seasonOf(p plan, d design) (seasonFuel, error) {
	fuel, _ := airheat.FindFuel(p.Heater.Fuel)
	b := airheat.Burner{Rated: p.Heater.Power, Efficiency: p.Heater.Efficiency, Fuel: fuel}
	if err := b.Check(); err != nil {
		return seasonFuel{}, err
	}
	m := airheat.Months{Outside: p.Site.MonthlyMean}
	for i, mj := range p.Site.MonthlySun {
		m.Sun[i], m.Hours[i] = mj*1e6/86400, 24*days[i]
	}
	storage := 1000*p.Storage.Structure + soils[p.Ground.Soil].HeatCapacity*d.Shape.Floor*p.Storage.SoilDepth
	s, _, err := airheat.MonthlyHouse{
		SetPoint: p.Heater.SeasonInside, Loss: d.Loss.Season, Aperture: d.Sun.Gain * d.Shape.Floor,
		Storage: storage / d.Loss.Season / 3600, Burner: b, Price: p.Heater.FuelPrice,
	}.Solve(m)
	if err != nil {
		return seasonFuel{}, err
	}
	return seasonFuel{b.FuelPower(min(d.Loss.Total, b.Rated)) / b.Fuel.Lower * 3600, s.Heat / 3.6e6, s.FuelMass, s.Cost, s.Gains / 3.6e6}, nil
}

func cropsOf(l light) (rows []cropLight) {
	for _, c := range lighting.CropLights() {
		rows = append(rows, cropLight{c.Name, c.Serves(l.DLI).String(), c.Serves(l.DLIAll).String()})
	}
	return rows
}

// deepen adds what stands on the other figures.
func (d *design) deepen(p plan) error {
	var e1, e2, e3 error
	d.Ridge, e1 = ridgeOf(p, *d)
	d.Season, e2 = seasonOf(p, *d)
	d.Drying, e3 = dryingOf(p, *d)
	d.Crops = cropsOf(d.Light)
	return errors.Join(e1, e2, e3)
}

func (d *design) seasonText(r *report.Report, p plan) {
	r.Section("Return from the ridge")
	r.Value("upper layer, return low in the house", d.Ridge.UpperFloor, 1, "°C")
	r.Value("upper layer, return from the ridge", d.Ridge.UpperRidge, 1, "°C")
	r.Value("coil view", 100*d.Ridge.CoilView, 1, "%   not a saving")
	r.Value("real saving of the house", 100*d.Ridge.Saving, 1, "%")
	r.Value("  in heat", d.Ridge.SavingHeat, 0, "W")
	r.Value("  bound, fully mixed", 100*d.Ridge.Bound, 1, "%")
	r.Section("Fuel: %s", p.Heater.Fuel)
	r.Value("on the design night", d.Season.AtDesign, 1, "kg/h")
	r.Value("heat over the year", d.Season.Heat, 0, "kWh")
	r.Value("  gains from the sun put to use", d.Season.Gains, 0, "kWh")
	r.Value("fuel over the year", d.Season.Mass, 0, "kg")
	r.Value("cost over the year", d.Season.Cost, 0, p.Lighting.Currency)
	r.Note("Monthly method on the plan's monthly means, at %.0f °C inside, with %.0f W/K: the loss at %.1f °C outside, the mean of the heated months, under the season's wind and cloud.", p.Heater.SeasonInside, d.Loss.Season, d.Loss.SeasonMean)
}

func (d *design) cropText(r *report.Report) {
	rows := [][]string{}
	for _, c := range d.Crops {
		rows = append(rows, []string{c.Name, c.Lamps, c.WithSun})
	}
	r.Table([]string{"crop", "lamps alone", "with daylight"}, rows)
}
