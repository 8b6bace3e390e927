package figures

import (
	"fmt"
	"math"
	"time"

	"cloche.example/lighting"
)

func sunOfDay() Figure {
	return Figure{
		Name: "sun-path", Title: "The sun of a day", Subject: "sun and daylight", Package: "lighting", Example: "Example_sunOfADay",
		Question: "Where does the sun stand at noon, how long is the day, and what does a clear sky give?",
		Sketch:   "The sun's path over a site on one day, height against time; clock time an hour ahead of UTC.",
		Given: []Given{
			{"φ", "latitude, north positive", "degree", 50.6, -60, 60},
			{"L", "longitude, east positive", "degree", 14.1, -20, 50},
			{"n", "day of the year 2025", "", 70, 1, 365},
			{"z", "altitude", "m", 340, 0, 3000},
		},
		Assumes: []string{"A level horizon; air of a turbidity of 3, ordinary clear air."},
		Change:  []string{"Take day 172 and 355: the longest day and the shortest.", "Go to latitude 0: noon is high all year and days are alike."},
		Code:    "solveSunOfDay",
		Solve:   solveSunOfDay,
	}
}

func solveSunOfDay(v []float64) (r Result, err error) {
	site, err := lighting.NewSite(v[0], v[1], v[3])
	if err != nil {
		return r, err
	}
	zone := time.FixedZone("CET", 3600)
	date := time.Date(2025, 1, int(math.Round(v[2])), 0, 0, 0, 0, zone)
	day, err := site.SunDay(date, lighting.RiseElevation)
	if err != nil {
		return r, err
	}
	sky, err := site.ClearSky(day.Transit, 3)
	if err != nil {
		return r, err
	}
	later := site.Sun(day.Transit.Add(time.Hour)).Azimuth
	r.Lines = []string{
		fmt.Sprintf("sunrise %s, noon %s, sunset %s: %.2f h", day.Rise.Format("15:04"), day.Transit.Format("15:04"), day.Set.Format("15:04"), day.Length.Hours()),
		fmt.Sprintf("noon: %.1f degree high, azimuth %.1f, %.0f W/m² outside the atmosphere", day.Noon.Elevation, day.Noon.Azimuth, day.Noon.Extraterrestrial()),
		fmt.Sprintf("clear sky at noon: %.0f W/m², of which %.0f diffuse", sky.Global, sky.Diffuse),
		fmt.Sprintf("an hour later the sun has turned to %.1f degree", later),
	}
	r.Steps = []Step{
		{Says: "Height of the sun at noon, by its place among the stars.", Symbol: "h", Source: "Reda04", Value: day.Noon.Elevation, Unit: "degree"},
		{Says: "From rise to set, the upper limb on the horizon and its light bent by the air.", Symbol: "N", Source: "Meeus98", Value: day.Length.Hours(), Unit: "h"},
		{Says: "Radiation outside the atmosphere across the beam, with the day's distance of the sun.", Symbol: "I_0", Value: day.Noon.Extraterrestrial(), Unit: "W/m²"},
		{Says: "Clear sky at noon on level ground.", Symbol: "G", Source: "Ineichen02", Value: sky.Global, Unit: "W/m²"},
		{Says: "Of which straight from the sun.", Formula: "B = G - D", Values: numbers{"G": sky.Global, "D": sky.Diffuse}, Value: sky.Global - sky.Diffuse, Unit: "W/m²"},
	}
	high := func(h float64) float64 {
		if e := site.Sun(date.Add(time.Duration(h * float64(time.Hour)))).Elevation; e > 0 {
			return e
		}
		return math.NaN()
	}
	r.Picture, err = chart{title: "Height of the sun over the day", says: "An arch from sunrise to sunset.", x: "hour", y: "height, degree", zero: true, curves: []curve{{"", along(0, 24, 96, high)}},
		marks: []mark{{"noon", day.Transit.Sub(date).Hours(), day.Noon.Elevation}}}.picture("Noon by the sun is seldom noon by the clock.")
	return r, err
}

func fao56Sun() Figure {
	return Figure{
		Name: "daily-radiation", Title: "Radiation of a day from latitude and date", Subject: "sun and daylight", Package: "lighting", Example: "Example_radiationByFAO56",
		Question: "What falls on a level square metre outside the atmosphere and below it, from latitude, date and hours of sunshine?",
		Source:   "FAO56, examples 8 to 10 and 19 (the figures of example 19 from memory)",
		Sketch:   "One site, one day in May. The sky takes its share; the rest reaches the ground.",
		Given: []Given{
			{"φ", "latitude, north positive", "degree", -22.9, -60, 60},
			{"J", "day of the year", "", 135, 1, 366},
			{"n", "sunshine of a month of 31 days", "h", 220, 0, 300},
		},
		Assumes: []string{"The mean sky of the formulas' two constants, 0.25 and 0.50; sea level; the last line stands for a place and an hour of its own."},
		Change:  []string{"No sunshine at all: a quarter of the radiation still comes through the clouds."},
		Code:    "solveFAO56Sun",
		Solve:   solveFAO56Sun,
	}
}

func solveFAO56Sun(v []float64) (r Result, err error) {
	lat, day := v[0], int(math.Round(v[1]))
	ra := lighting.ExtraterrestrialDay(lat, day)
	n := lighting.DayLength(lat, day)
	share := v[2] / 31 / n
	if share > 1 {
		return r, fmt.Errorf("%g h of sunshine in 31 days of %.1f h: more than there is daylight", v[2], n)
	}
	rs, rso := lighting.GlobalFromSunshine(ra, share), lighting.ClearSkyDay(ra, 0)
	hour := lighting.SunPeriod{Latitude: 16 + 13.0/60, Longitude: -16.25, Day: 274, Zone: -time.Hour, From: 14 * time.Hour, Until: 15 * time.Hour}
	part, err := hour.Extraterrestrial()
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("eq. 21  Ra  = %.1f MJ/(m² d) (25.1)", ra/1e6),
		fmt.Sprintf("eq. 34  N   = %.1f h (10.9)", n),
		fmt.Sprintf("eq. 35  Rs  = %.1f MJ/(m² d) with %g h of sun in May (14.5)", rs/1e6, v[2]),
		fmt.Sprintf("eq. 37  Rso = %.1f MJ/(m² d) (18.8)", rso/1e6),
		fmt.Sprintf("eq. 28  Ra  = %.3f MJ/(m² h) from 14 to 15 h (3.543)", part/1e6),
	}
	r.Printed = "the figures in brackets: Ra 25.1, N 10.9 h, Rs 14.5, Rso 18.8, and 3.543 for the hour."
	r.Steps = []Step{
		{Says: "How far north the sun stands that day.", Formula: "δ = 0.409 sin(360 J/365 - 1.39 180/π) 180/π", Source: "FAO56 eq. 24", Values: numbers{"J": float64(day)}, Value: 180 / math.Pi * 0.409 * math.Sin(2*math.Pi*float64(day)/365-1.39), Unit: "degree"},
		{Says: "Radiation of the day outside the atmosphere.", Symbol: "R_a", Source: "FAO56 eq. 21", Value: ra / 1e6, Unit: "MJ/(m² d)"},
		{Says: "Hours of daylight.", Symbol: "N", Source: "FAO56 eq. 34", Value: n, Unit: "h"},
		{Says: "Radiation at the ground.", Formula: "R_s = (0.25 + 0.50 n/(31 N)) R_a", Source: "FAO56 eq. 35", Values: numbers{"n": v[2], "N": n, "R_a": ra / 1e6}, Value: rs / 1e6, Unit: "MJ/(m² d)"},
		{Says: "And under a clear sky at sea level.", Formula: "R_so = 0.75 R_a", Source: "FAO56 eq. 37", Values: numbers{"R_a": ra / 1e6}, Value: rso / 1e6, Unit: "MJ/(m² d)"},
	}
	r.Picture, err = chart{title: "Radiation over the year at this latitude", says: "Two curves over the days of the year: outside the atmosphere, and below a clear sky.", x: "day of the year", y: "MJ/(m² d)", zero: true, curves: []curve{
		{"outside the atmosphere", along(1, 365, 91, func(x float64) float64 { return lighting.ExtraterrestrialDay(lat, int(x)) / 1e6 })},
		{"clear sky", along(1, 365, 91, func(x float64) float64 {
			return lighting.ClearSkyDay(lighting.ExtraterrestrialDay(lat, int(x)), 0) / 1e6
		})},
	}, marks: []mark{{"this day", float64(day), rs / 1e6}}}.picture("The mark is the day with its clouds.")
	return r, err
}
