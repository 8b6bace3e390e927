package plan

// Site is the section site: where the house stands.
type Site struct {
	Latitude          float64       `json:"latitude_deg"`                // degree, -80 to 80; north of the equator positive
	Longitude         float64       `json:"longitude_deg"`               // degree, -180 to 180; east of Greenwich positive
	TimeZone          float64       `json:"time_zone_h"`                 // h, -12 to 14; local standard time ahead of universal time
	Altitude          float64       `json:"altitude_m"`                  // m, -400 to 4000; above sea level
	Exposure          string        `json:"exposure"`                    // exposed, semi-sheltered or sheltered; how the house stands to the wind: nothing around, scattered obstacles half as high, or obstacles as high as the house
	Terrain           string        `json:"terrain"`                     // flat, open, suburb or city; between the wind mast and the house
	WindMastHeight    float64       `json:"wind_mast_height_m"`          // m, 1 to 100; height at which the wind of a weather file was measured
	GroundReflectance float64       `json:"ground_reflectance_fraction"` // fraction, 0 to 0.9; of sunlight that the ground around sends back: 0.2 grass, 0.7 snow
	LinkeTurbidity    float64       `json:"linke_turbidity_ratio"`       // ratio, 1 to 10; of a clear sky: 2 very clear, 5 hazy
	PhotonsOfDaylight float64       `json:"photons_of_daylight_umol_j"`  // µmol/J, 1.7 to 2.5; photons of 400 to 700 nm in a joule of sun
	WeatherFile       string        `json:"weather_file"`                // file with a year of hours; without it the months below serve
	WinterNight       WinterNight   `json:"winter_night"`                // the night that the heater is sized for
	HeatingSeason     HeatingSeason `json:"heating_season"`              // the mean weather of the heated months
	WinterMorning     WinterMorning `json:"winter_morning"`              // weather in which damp air is vented out
	SummerNoon        SummerNoon    `json:"summer_noon"`                 // the noon that the vents are sized for
	SummerDay         SummerDay     `json:"summer_day"`                  // a clear day, hour by hour
	Months            Months        `json:"months"`                      // means of each month, January to December
	Mains             Mains         `json:"mains"`                       // the electricity supply
}

// WinterNight is the section site.winter_night: the night that the heater is sized for.
type WinterNight struct {
	Temperature      float64 `json:"temperature_c"`     // °C, -50 to 20; outside air
	RelativeHumidity float64 `json:"relative_humidity"` // fraction, 0.05 to 1; outside
	Wind             float64 `json:"wind_m_s"`          // m/s, 0 to 40; at the cover
	Cloud            float64 `json:"cloud_fraction"`    // fraction, 0 to 1; of the sky
	Month            int     `json:"month"`             // number, 1 to 12; month that it falls in
}

// HeatingSeason is the section site.heating_season: the mean weather of the heated months.
type HeatingSeason struct {
	Wind  float64 `json:"wind_m_s"`       // m/s, 0 to 40; at the cover
	Cloud float64 `json:"cloud_fraction"` // fraction, 0 to 1; of the sky
}

// WinterMorning is the section site.winter_morning: weather in which damp air is vented out.
type WinterMorning struct {
	Temperature      float64 `json:"temperature_c"`     // °C, -30 to 25; outside air
	RelativeHumidity float64 `json:"relative_humidity"` // fraction, 0.05 to 1; outside
}

// SummerNoon is the section site.summer_noon: the noon that the vents are sized for.
type SummerNoon struct {
	Temperature      float64 `json:"temperature_c"`     // °C, 0 to 50; outside air
	RelativeHumidity float64 `json:"relative_humidity"` // fraction, 0.02 to 1; outside
	Sun              float64 `json:"sun_w_m2"`          // W/m², 0 to 1300; on level ground
	Wind             float64 `json:"wind_m_s"`          // m/s, 0 to 20; at ridge height
}

// SummerDay is the section site.summer_day: a clear day, hour by hour.
type SummerDay struct {
	Temperature float64 `json:"temperature_c"` // °C, 0 to 45; mean of the outside air
	Swing       float64 `json:"swing_k"`       // K, 0 to 15; half the daily range of the outside air
	DewPoint    float64 `json:"dew_point_c"`   // °C, -20 to 28; outside
	Wind        float64 `json:"wind_m_s"`      // m/s, 0 to 30; greatest of the day, at ridge height
}

// Months is the section site.months: means of each month, January to December.
type Months struct {
	Temperature      []float64 `json:"temperature_c"`     // °C, -50 to 45; outside air
	Sun              []float64 `json:"sun_mj_m2_d"`       // MJ/(m² d), 0 to 38; sun on level ground in a day
	RelativeHumidity []float64 `json:"relative_humidity"` // fraction, 0.05 to 1; outside
}

// Mains is the section site.mains: the electricity supply.
type Mains struct {
	Voltage float64 `json:"voltage_v"`    // V, 90 to 500; between a live wire and neutral
	Phases  int     `json:"phases_count"` // count, 1 to 3; live wires
}
