package main

import (
	"bytes"
	"strconv"
)

// column is one of the hourly table.
type column struct {
	name     string // with its unit
	decimals int
	of       func(y *year, i int) float64
}

// columns are those that -hours writes. The first is the time.
var columns = []column{
	{"outside_c", 3, func(y *year, i int) float64 { return y.house.weather.Temperature[i] }},
	{"outside_relative_humidity", 5, func(y *year, i int) float64 { return y.house.weather.RelativeHumidity[i] }},
	{"pressure_pa", 1, func(y *year, i int) float64 { return y.Pressure }},
	{"global_w_m2", 3, func(y *year, i int) float64 { return y.house.weather.Global[i] }},
	{"direct_w_m2", 3, func(y *year, i int) float64 { return y.house.weather.Direct[i] }},
	{"diffuse_w_m2", 3, func(y *year, i int) float64 { return y.house.weather.Diffuse[i] }},
	{"sun_elevation_deg", 4, func(y *year, i int) float64 { return y.house.weather.Sun[i].Elevation }},
	{"sun_azimuth_deg", 4, func(y *year, i int) float64 { return y.house.weather.Sun[i].Azimuth }},
	{"wind_m_s", 3, func(y *year, i int) float64 { return y.Wind[i] }},
	{"wind_from_deg", 1, func(y *year, i int) float64 { return y.from(i) }},
	{"sky_c", 3, func(y *year, i int) float64 { return y.Sky[i] }},
	{"deep_ground_c", 4, func(y *year, i int) float64 { return y.Deep[i] }},
	{"inside_c", 6, func(y *year, i int) float64 { return y.State[i].Temperature }},
	{"humidity_ratio_kg_kg", 9, func(y *year, i int) float64 { return y.State[i].HumidityRatio }},
	{"relative_humidity", 6, func(y *year, i int) float64 { return y.State[i].RelativeHumidity }},
	{"leaf_c", 5, func(y *year, i int) float64 { return y.State[i].CanopyTemperature }},
	{"floor_c", 6, func(y *year, i int) float64 { return y.State[i].FloorTemperature }},
	{"soil_c", 6, func(y *year, i int) float64 { return y.Soil[i] }},
	{"structure_c", 6, func(y *year, i int) float64 { return y.Mass[i] }},
	{"opening_fraction", 9, func(y *year, i int) float64 { return y.Opening[i] }},
	{"vent_fans_w", 1, func(y *year, i int) float64 { return y.fans(i) }},
	{"air_changes_per_h", 5, func(y *year, i int) float64 { return y.State[i].AirChanges }},
	{"heater_w", 4, func(y *year, i int) float64 { return y.heat(i) }},
	{"ridge_saves_w", 4, func(y *year, i int) float64 { return y.saved(i) }},
	{"heater_energy_w", 4, func(y *year, i int) float64 { return y.fuel(i) }},
	{"lamps_fraction", 6, func(y *year, i int) float64 { return y.Burn[i] }},
	{"daylight_umol_m2_s", 4, func(y *year, i int) float64 { return y.lit(i) }},
	{"sun_leaves_floor_w", 3, func(y *year, i int) float64 { return y.State[i].SunCanopy + y.State[i].SunFloor }},
	{"sun_structure_w", 3, func(y *year, i int) float64 { return y.State[i].SunStructure }},
	{"sun_covers_w", 3, func(y *year, i int) float64 { return y.State[i].SunCover }},
	{"covers_w", 4, func(y *year, i int) float64 { return y.State[i].CoverLoss }},
	{"sky_loss_w", 4, func(y *year, i int) float64 { return y.State[i].SkyLoss }},
	{"ground_w", 4, func(y *year, i int) float64 { return y.State[i].Ground }},
	{"to_structure_w", 4, func(y *year, i int) float64 { return y.State[i].ToStructure }},
	{"to_tubes_w", 4, func(y *year, i int) float64 { return y.State[i].ToStore }},
	{"vapour_to_tubes_w", 4, func(y *year, i int) float64 { return y.State[i].StoreLatent }},
	{"tubes_fan_w", 2, func(y *year, i int) float64 { return y.tubesFan(i) }},
	{"air_sensible_w", 4, func(y *year, i int) float64 { return y.State[i].AirSensible }},
	{"air_latent_w", 4, func(y *year, i int) float64 { return y.State[i].AirLatent }},
	{"water_enthalpy_w", 4, func(y *year, i int) float64 { return y.State[i].Liquid }},
	{"transpired_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].Transpired }},
	{"from_floor_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].FloorEvaporated }},
	{"fog_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].Mist }},
	{"pads_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.pads(i) }},
	{"co2_burner_w", 4, func(y *year, i int) float64 { return y.burnt(i) }},
	{"co2_burner_vapour_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].Moisture }},
	{"condensed_in_tubes_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].IntoStore }},
	{"condensed_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].Condensed }},
	{"vented_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.State[i].ByAir }},
	{"co2_umol_mol", 2, func(y *year, i int) float64 { return y.CO2[i] }},
	{"co2_given_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.Given[i] }},
	{"co2_taken_up_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.TakenUp[i] }},
	{"co2_vented_kg_h", 6, func(y *year, i int) float64 { return 3600 * y.carbonOut(i) }},
	{"heat_residue_w", 9, func(y *year, i int) float64 { return y.State[i].HeatResidual }},
	{"water_residue_kg_h", 12, func(y *year, i int) float64 { return 3600 * y.State[i].WaterResidual }},
}

// outsideColumns is how many columns there are of the world outside.
const outsideColumns = 12

// table writes every hour; one without a state has empty fields where the state
// would stand.
func (y *year) table() *bytes.Buffer {
	var b bytes.Buffer
	b.WriteString("time")
	for _, c := range columns {
		b.WriteString("," + c.name)
	}
	b.WriteByte('\n')
	for i, at := range y.house.weather.Time {
		b.WriteString(at.Format("2006-01-02T15:04"))
		for k, c := range columns {
			b.WriteByte(',')
			v := c.of(y, i)
			if v != v || y.Failed[i] && k >= outsideColumns {
				continue
			}
			b.Write(strconv.AppendFloat(b.AvailableBuffer(), v, 'f', c.decimals, 64))
		}
		b.WriteByte('\n')
	}
	return &b
}
