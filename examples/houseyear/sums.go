package main

// sums are what comes together in a month or in the whole time. Heat that goes
// out of the house is positive among the losses, heat that comes in among the
// gains; the two differ by what house and soil have stored and by nothing else.
type sums struct {
	Month   int     `json:"month"` // 1 to 12; 0 for the whole time
	Hours   int     `json:"hours_count"`
	Outside float64 `json:"outside_c"`
	Inside  float64 `json:"inside_c"`

	CoverAir   float64 `json:"covers_to_air_kwh"`     // with what condensing sets free on them, sun on the covers apart
	CoverSky   float64 `json:"covers_to_sky_kwh"`     // beyond what surroundings as warm as the air would take
	Ground     float64 `json:"into_ground_kwh"`       // from the floor
	Tubes      float64 `json:"into_tubes_kwh"`        // of air in the soil, sensible
	TubeWater  float64 `json:"vapour_into_tubes_kwh"` // with what condenses in them, some of which drains off
	Structure  float64 `json:"into_structure_kwh"`    // less the sun that it takes up itself
	Leakage    float64 `json:"leakage_kwh"`           // sensible
	Venting    float64 `json:"venting_kwh"`           // sensible, with the heater off
	Drying     float64 `json:"venting_heated_kwh"`    // sensible, through vents while the heater works: for humidity
	Latent     float64 `json:"vapour_out_kwh"`        // with the air that leaves
	SunCover   float64 `json:"sun_in_covers_kwh"`     // what the covers take up
	Sun        float64 `json:"sun_inside_kwh"`        // what crop and floor take up
	Lamps      float64 `json:"lamps_heat_kwh"`        // of which some goes out again as light
	Heater     float64 `json:"heater_kwh"`            // useful heat
	Burner     float64 `json:"co2_burner_heat_kwh"`   // with its vapour
	Water      float64 `json:"water_enthalpy_kwh"`    // of liquid water that crop and soil take up and covers shed
	Fuel       float64 `json:"heater_energy_kwh"`     // fuel by its lower heating value, or electricity
	BurnerFuel float64 `json:"co2_burner_energy_kwh"` // by its lower heating value
	LampPower  float64 `json:"lamps_electric_kwh"`    //
	FanPower   float64 `json:"fan_controls_kwh"`      // of the heater
	VentPower  float64 `json:"vent_fans_kwh"`         // in walls and roof
	TubePower  float64 `json:"tubes_fan_kwh"`         // of the tubes in the soil
	Ridge      float64 `json:"saved_at_ridge_kwh"`    // where the heater draws from there
	DayLight   float64 `json:"daylight_mol_m2"`       // on the trays
	LampLight  float64 `json:"lamps_mol_m2"`          //
	Drawn      float64 `json:"transpired_kg"`         //
	Soil       float64 `json:"from_floor_kg"`         // evaporated
	Fog        float64 `json:"fog_kg"`                // evaporated
	Sprayed    float64 `json:"fog_sprayed_kg"`        //
	Pads       float64 `json:"pads_kg"`               // with what is drained off
	Condensed  float64 `json:"condensed_kg"`          // on the covers
	Fell       float64 `json:"fell_as_mist_kg"`       // from air that can hold no more
	InTubes    float64 `json:"condensed_in_tubes_kg"` //
	Burnt      float64 `json:"co2_burner_vapour_kg"`  //
	Vented     float64 `json:"vapour_vented_kg"`      //
	Given      float64 `json:"irrigation_kg"`         //
	CO2        float64 `json:"co2_umol_mol"`          // mean
	Dosed      float64 `json:"co2_given_kg"`          //
	TakenUp    float64 `json:"co2_taken_up_kg"`       // by the crop
	CarbonOut  float64 `json:"co2_vented_kg"`         //
	Cold       int     `json:"cold_hours_count"`      // more than half a kelvin below the set-point
	Hot        int     `json:"hot_hours_count"`       // above the plan's limit
	Humid      int     `json:"humid_hours_count"`     // above the plan's limit
	Dripping   int     `json:"dripping_hours_count"`  // more than 1 g/(m² h) of floor condenses
	Heated     int     `json:"heated_hours_count"`    //
	VentHours  int     `json:"vents_open_hours_count"`
	FanHours   int     `json:"vent_fans_hours_count"`
	Failed     int     `json:"without_state_hours_count"`
	Dark       int     `json:"dark_days_count"` // short of the crop's least light
	Days       int     `json:"days_count"`
}

const kWh = 3.6e6 / 3600 // W over an hour

// drips is the condensation above which an hour counts as dripping, kg/(s m²).
const drips = 1e-3 / 3600

// chilly is how far below the set-point the house counts as cold, K.
const chilly = 0.5

// add counts hour i.
func (t *sums) add(y *year, i int) {
	h, x := y.house, &y.State[i]
	p := h.plan
	t.Hours++
	t.Outside += h.weather.Temperature[i]
	t.DayLight += y.lit(i) * 0.0036
	t.LampLight += y.Burn[i] * h.lamps.ppfd * 0.0036
	t.LampPower += y.Burn[i] * h.lamps.power / 1000
	if y.Failed[i] {
		t.Failed++
		return
	}
	area := h.steady.House.Shape.FloorArea
	t.Inside += x.Temperature
	q := split(x, y.Opening[i])
	lamp := y.lampShare(i)
	absorbed := x.SunCanopy + x.SunFloor
	t.CoverSky += x.SkyLoss / kWh
	t.CoverAir += (x.CoverLoss - x.SkyLoss + x.SunCover - y.saved(i)) / kWh
	t.Ridge += y.saved(i) / kWh
	t.SunCover += x.SunCover / kWh
	t.Ground += x.Ground / kWh
	t.Tubes += x.ToStore / kWh
	t.TubeWater += x.StoreLatent / kWh
	t.Structure += x.ToStructure / kWh
	t.Leakage += q.leak / kWh
	if h.heater(x) > 0 {
		t.Drying += q.vent / kWh
		t.Heated++
	} else {
		t.Venting += q.vent / kWh
	}
	t.Latent += x.AirLatent / kWh
	t.Sun += absorbed * (1 - lamp) / kWh
	t.Lamps += (absorbed*lamp + x.LampAir) / kWh
	t.Heater += y.heat(i) / kWh
	t.Burner += (y.burnt(i) + x.MoistureHeat) / kWh
	t.BurnerFuel += y.burnt(i) / kWh
	t.Water += x.Liquid / kWh
	t.Fuel += y.fuel(i) / kWh
	t.VentPower += y.fans(i) / kWh
	t.TubePower += y.tubesFan(i) / kWh
	t.FanPower += y.heat(i) / p.Heater.Power * (h.fan + p.Heater.Electric) / kWh
	t.Drawn += 3600 * x.Transpired
	t.Soil += 3600 * x.FloorEvaporated
	t.Fog += 3600 * x.Mist
	t.Sprayed += 3600 * y.sprayed(i)
	t.Pads += 3600 * y.pads(i)
	t.CO2 += y.CO2[i]
	t.Dosed += 3600 * y.Given[i]
	t.TakenUp += 3600 * y.TakenUp[i]
	t.CarbonOut += 3600 * y.carbonOut(i)
	t.Condensed += 3600 * x.Condensed
	t.Fell += 3600 * x.Drip
	t.InTubes += 3600 * x.IntoStore
	t.Burnt += 3600 * x.Moisture
	t.Vented += 3600 * x.ByAir
	t.Given += 3600 * max(0, x.Transpired+x.FloorEvaporated) / p.Irrigation.Efficiency / (1 - p.Irrigation.Leaching)
	count(&t.Cold, x.Temperature < y.setPoint(i)-chilly)
	count(&t.Hot, x.Temperature > p.SetPoints.Limits.Hot)
	count(&t.Humid, x.RelativeHumidity > p.SetPoints.Limits.RelativeHumidity+0.005)
	count(&t.Dripping, x.Condensed > drips*area)
	count(&t.VentHours, y.Opening[i] > 1e-6)
	count(&t.FanHours, x.Forced)
}

func count(n *int, yes bool) {
	if yes {
		*n++
	}
}
