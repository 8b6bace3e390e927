package main

import (
	"errors"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/psychro"
)

// A design is every computed figure, with the terms it is made of. Keys of
// the JSON form carry the unit.
type design struct {
	Air     airStates     `json:"air"`
	Shape   shapeOf       `json:"shape"`
	Facets  []facet       `json:"facets"`
	Loss    loss          `json:"design_loss"`
	Heater  heaterDuty    `json:"heater"`
	Time    timeFigures   `json:"warm_up_and_frost"`
	Sun     sunInside     `json:"sun"`
	Light   light         `json:"lighting"`
	Summer  summerNoon    `json:"summer"`
	Ridge   ridgeReturn   `json:"ridge_return"`
	Season  seasonFuel    `json:"fuel"`
	Crops   []cropLight   `json:"crops"`
	Drying  dryingMorning `json:"winter_drying"`
	Caution []string      `json:"cautions"`
	house   *envelope.House
	night   envelope.HouseConditions
}

type airStates struct {
	Pressure    float64 `json:"pressure_pa"`
	InsideW     float64 `json:"inside_humidity_ratio_kg_kg"`
	InsideDew   float64 `json:"inside_dew_point_c"`
	InsideWet   float64 `json:"inside_wet_bulb_c"`
	OutsideW    float64 `json:"outside_humidity_ratio_kg_kg"`
	OutsideDew  float64 `json:"outside_dew_point_c"`
	Sky         float64 `json:"sky_temperature_c"`
	inside      psychro.State
	outside     psychro.State
	skyBelowAir float64
}

type shapeOf struct {
	Volume     float64 `json:"volume_m3"`
	BelowGrade float64 `json:"volume_below_grade_m3"`
	Floor      float64 `json:"floor_m2"`
	Cover      float64 `json:"cover_m2"`
	Ratio      float64 `json:"cover_to_floor"`
	Perimeter  float64 `json:"perimeter_m"`
}

type facet struct {
	Name      string  `json:"name"`
	Area      float64 `json:"area_m2"`
	U         float64 `json:"u_w_m2_k"`
	UAir      float64 `json:"u_sky_at_air_w_m2_k"`
	AirDriven float64 `json:"air_driven_w"`
	SkyDriven float64 `json:"sky_driven_w"`
	Inner     float64 `json:"inner_surface_c"`
	Drips     bool    `json:"drips"`
	DripRH    float64 `json:"drips_above_rh"`
}

type loss struct {
	Total       float64 `json:"total_w"`
	Coefficient float64 `json:"total_w_k"`
	PerFloor    float64 `json:"total_w_m2"`
	Terms       []term  `json:"terms"`
	GroundYear  float64 `json:"ground_annual_mean_w"`
	GroundTotal float64 `json:"ground_design_month_w"`
	SeasonMean  float64 `json:"season_outside_mean_c"`
	Season      float64 `json:"season_w_k"`
	LeakSens    float64 `json:"leakage_sensible_w"`
	LeakLatent  float64 `json:"leakage_latent_w"`
	Condensate  float64 `json:"condensate_l_h"`
	linear      envelope.LinearLoss
}

type term struct {
	Name  string  `json:"name"`
	Loss  float64 `json:"loss_w"`
	Share float64 `json:"share"`
}

var covers = map[string]func() envelope.Cover{
	"single film":     envelope.SingleFilm,
	"infrared film":   envelope.SingleInfraredFilm,
	"double film":     envelope.DoubleFilm,
	"single glass":    envelope.SingleGlass,
	"twin-wall sheet": envelope.TwinWall10,
}

var soils = map[string]envelope.Soil{
	"clay or silt": envelope.ClaySoil(), "sand or gravel": envelope.SandSoil(), "rock": envelope.RockSoil(),
}

// compute runs the whole design.
func compute(p plan) (design, error) {
	var d design
	var err error
	if d.Air, err = airOf(p); err != nil {
		return d, err
	}
	shape, err := shapeFrom(p.House)
	if err != nil {
		return d, err
	}
	d.Shape = shapeOf{shape.Volume, shape.BelowGrade, shape.FloorArea, shape.CoverArea, shape.CoverRatio, shape.Perimeter}
	if err = d.coldNight(p, shape); err != nil {
		return d, err
	}
	if d.Sun, err = sunOf(p, shape); err != nil {
		return d, err
	}
	var faults [4]error
	d.Heater, faults[0] = dutyOf(p, d)
	d.Time, faults[1] = timesOf(p, d)
	d.Light, faults[2] = lightOf(p, d.Sun.Daylight)
	d.Summer, faults[3] = summerOf(p, d)
	d.Caution = []string{
		"Check structure, snow and wind loads, electricity and heater installation against local codes; leave them to licensed trades.",
		airheat.CombustionCaution,
		airheat.SupplyCaution,
		airheat.FrostCaution,
	}
	d.Caution = append(d.Caution, d.Light.cautions...)
	if err := errors.Join(faults[:]...); err != nil {
		return d, err
	}
	return d, d.deepen(p)
}

// airOf returns the design states of the air and the sky's temperature.
func airOf(p plan) (airStates, error) {
	var a airStates
	var e1, e2 error
	a.Pressure = psychro.StandardPressure(p.Site.Altitude)
	a.inside, e1 = psychro.FromRelativeHumidity(p.Inside.Temperature, p.Inside.RH, a.Pressure)
	a.outside, e2 = psychro.FromRelativeHumidity(p.Site.Outside, p.Site.OutsideRH, a.Pressure)
	if err := errors.Join(e1, e2); err != nil {
		return a, err
	}
	a.InsideW, a.InsideDew, a.InsideWet = a.inside.HumidityRatio(), a.inside.DewPoint(), a.inside.WetBulb()
	a.OutsideW, a.OutsideDew = a.outside.HumidityRatio(), a.outside.DewPoint()
	a.Sky, e1 = envelope.SkyTemperature(a.outside, 0, p.Site.Cloud)
	a.skyBelowAir = p.Site.Outside - a.Sky
	return a, e1
}

func shapeFrom(h house) (envelope.Shape, error) {
	f := envelope.DefaultForm()
	f.Section = envelope.Gable
	if h.Shape == "round arch" {
		f.Section = envelope.RoundArch
	}
	f.Span, f.Length, f.Eave, f.Ridge, f.Depth, f.Azimuth = h.Span, h.Length, h.EaveHeight, h.RidgeHeight, h.Depth, h.Azimuth
	f.DwarfWall, f.Annexes = 0, nil
	return envelope.NewShape(f)
}
