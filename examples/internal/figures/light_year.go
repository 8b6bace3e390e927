package figures

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"gonum.org/v1/plot/plotter"

	"cloche.example/internal/year"
	"cloche.example/lighting"
)

func darkDays() Figure {
	return Figure{
		Name: "dark-days", Title: "A year of dark days", Subject: "sun and daylight", Package: "lighting",
		Question: "On how many days of a year is there too little light under the cover, how long must the lamps burn, and are they strong enough?",
		Sketch:   "A year's days from the darkest to the brightest: daylight under the cover, the lamps on top, the crop's wish as a level line.",
		Given: []Given{
			{"D_c", "what the crop wants", "mol/(m² d)", 12, 2, 30},
			{"τ", "of the light outside at the bed", "fraction", 0.6, 0.1, 1},
			{"E", "PPFD of the lamps", "µmol/(m² s)", 120, 10, 500},
			{"h_1", "lamps may burn from", "h", 4, 0, 12},
			{"h_2", "until", "h", 20, 12, 24},
		},
		Assumes: []string{"The library's invented year, a sum of waves with cloudy spells, at 50 degree north; 2.016 µmol in each joule of the sun; each day is planned knowing its own daylight."},
		Change:  []string{"Lamps of 200 µmol/(m² s): no day stays short; they give a sixth more in the year, in fewer hours.", "Shut the lamps at 16 h: more days stay short."},
		Code:    "solveDarkDays",
		Solve:   solveDarkDays,
	}
}

func solveDarkDays(v []float64) (r Result, err error) {
	hour := func(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
	sky := year.At(year.Place{Latitude: 50, Longitude: 15, Zone: 1})
	season := lighting.LightingSeason{Global: sky.Sun, PerJoule: lighting.DaylightFaust, Transmittance: v[1], Target: v[0], PPFD: v[2], From: hour(v[3]), Until: hour(v[4]), OffAbove: 5000}
	all, err := season.Solve()
	if err != nil {
		return r, err
	}
	darkest, worst := 0, all.Days[0]
	for i, d := range all.Days {
		if d.Daylight < worst.Daylight {
			darkest, worst = i, d
		}
	}
	low, most := all.Percentile(0.1), lighting.DLI(v[2], hour(v[4]-v[3]))
	r.Lines = []string{
		fmt.Sprintf("%d days of the year are too dark; the lamps burn %.0f h and give %.0f of %.0f mol/m²", all.DarkDays, all.LampTime.Hours(), all.Lamps, all.Lamps+all.Daylight),
		fmt.Sprintf("%d days stay short in spite of them", all.ShortDays),
		fmt.Sprintf("one day in ten has less than %.1f mol/(m² d) of daylight on the bed; the darkest, %s, has %.1f", low, time.Date(2025, 1, 1+darkest, 0, 0, 0, 0, time.UTC).Format("2 January"), worst.Daylight),
	}
	r.Steps = []Step{
		{Says: "Light on the bed on the darkest day.", Formula: "D = τ D_o", Values: numbers{"τ": v[1], "D_o": worst.Outdoor}, Value: worst.Daylight, Unit: "mol/(m² d)"},
		{Says: "Missing then.", Formula: "D_m = max(0, D_c - D)", Values: numbers{"D_c": v[0], "D": worst.Daylight}, Value: worst.Deficit, Unit: "mol/(m² d)"},
		{Says: "The most that the lamps can give in their hours.", Formula: "D_L = 0.0036 E (h_2 - h_1)", Values: numbers{"E": v[2], "h_2": v[4], "h_1": v[3]}, Value: most, Unit: "mol/(m² d)"},
		{Says: "What they give on the darkest day.", Formula: "L = min(D_m, D_L)", Values: numbers{"D_m": worst.Deficit, "D_L": most}, Value: worst.Lamps, Unit: "mol/(m² d)"},
		{Says: "Hours of the year that the lamps burn.", Formula: "H = L_y/(0.0036 E)", Values: numbers{"L_y": all.Lamps, "E": v[2]}, Value: all.LampTime.Hours(), Unit: "h", Within: 1e-6, Why: "time is kept in whole nanoseconds"},
		{Says: "One day in ten is darker than this: size lamps for it, not for a mean.", Symbol: "D_10", Value: low, Unit: "mol/(m² d)"},
	}
	sorted := slices.SortedFunc(slices.Values(all.Days), func(a, b lighting.LightingDay) int { return cmp.Compare(a.Daylight, b.Daylight) })
	day, lit := make(plotter.XYs, len(sorted)), make(plotter.XYs, len(sorted))
	for i, d := range sorted {
		day[i] = plotter.XY{X: float64(i + 1), Y: d.Daylight}
		lit[i] = plotter.XY{X: float64(i + 1), Y: d.Daylight + d.Lamps}
	}
	r.Picture, err = chart{title: "Light on the bed, days from dark to bright", says: "Daylight rises from the darkest day to the brightest; with the lamps the dark days come up to the level line of what is wanted, the darkest not all the way.", x: "days, from the darkest on", y: "mol/(m² d)", zero: true, curves: []curve{
		{"daylight", day}, {"with the lamps", lit}, {"wanted", straight(1, v[0], float64(len(day)), v[0])},
	}}.picture("The lamps lift the dark days to the line, as far as their hours reach; how far the curve lies below it on the left is what stays short.")
	return r, err
}
