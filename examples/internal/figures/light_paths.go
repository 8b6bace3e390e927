package figures

import (
	"fmt"
	"math"
	"time"

	"cloche.example/examples/internal/page"
	"cloche.example/lighting"
)

func sunPaths() Figure {
	return Figure{
		Name: "sun-paths", Title: "Sun paths through the year", Subject: "sun and daylight", Package: "lighting",
		Question: "Where does the sun rise, how high does it climb and how long does it shine, at midsummer, at the equinox and at midwinter?",
		Sketch:   "The sky as on a compass: the horizon is the rim, the point straight above is the middle.",
		Given: []Given{
			{"φ", "latitude, north positive", "degree", 50.6, -60, 60},
			{"L", "longitude, east positive", "degree", 14.1, -20, 50},
		},
		Assumes: []string{"A level horizon. The picture and the days count the upper rim of the disc, bent by the air; the formulas count the middle of a disc without air, which makes the day some ten minutes shorter."},
		Change:  []string{"Latitude 0: all paths rise straight up, and every day has twelve hours.", "Latitude -35: noon stands in the north."},
		Code:    "solveSunPaths",
		Solve:   solveSunPaths,
	}
}

func solveSunPaths(v []float64) (r Result, err error) {
	site, err := lighting.NewSite(v[0], v[1], 0)
	if err != nil {
		return r, err
	}
	zone := time.FixedZone("", int(math.Round(v[1]/15))*3600)
	dates := []struct {
		name string
		at   time.Time
	}{{"21 June", time.Date(2025, 6, 21, 0, 0, 0, 0, zone)}, {"20 March", time.Date(2025, 3, 20, 0, 0, 0, 0, zone)}, {"21 December", time.Date(2025, 12, 21, 0, 0, 0, 0, zone)}}
	d := skyDome()
	for i, date := range dates {
		day, err := site.SunDay(date.at, lighting.RiseElevation)
		if err != nil {
			return r, err
		}
		rise := site.Sun(day.Rise)
		δ, h := day.Noon.Declination, day.Noon.Elevation
		r.Lines = append(r.Lines, fmt.Sprintf("%-12s rises at azimuth %5.1f degree, stands %4.1f degree high at noon, shines %5.2f h", date.name, rise.Azimuth, h, day.Length.Hours()))
		r.Steps = append(r.Steps,
			Step{Says: date.name + ": height at noon, from latitude and the sun's declination.", Formula: "h = 90 - abs(φ - δ)", Values: numbers{"φ": v[0], "δ": δ}, Value: h, Unit: "degree", Within: 2e-3, Why: "the library sees the sun from the ground, not from the Earth's centre"},
			Step{Says: "Hours with the middle of the disc above the horizon, without air.", Formula: "N = 2/15 acos(-tan(φ) tan(δ))", Source: "FAO56 eqs. 25, 34", Values: numbers{"φ": v[0], "δ": δ}, Value: 2.0 / 15 * 180 / math.Pi * math.Acos(-math.Tan(v[0]*math.Pi/180)*math.Tan(δ*math.Pi/180)), Unit: "h"})
		pen := page.PenOf(i)
		var path []float64
		for t := day.Rise; !t.After(day.Set); t = t.Add(6 * time.Minute) {
			x, y := onDome(site.Sun(t))
			path = append(path, x, y)
		}
		x, y := onDome(site.Sun(day.Set))
		d.Line(page.Stroke{Color: css(pen.Color), Width: 2}, append(path, x, y)...)
		for hour := 0; hour < 24; hour += 3 {
			if s := site.Sun(date.at.Add(time.Duration(hour) * time.Hour)); s.Elevation > 0 {
				x, y := onDome(s)
				d.Circle(page.Stroke{Color: css(pen.Color), Fill: css(pen.Color)}, x, y, 1.5)
				if i == 0 {
					d.Text(page.Middle, x, y+3, fmt.Sprint(hour))
				}
			}
		}
		d.Text(page.Start, 104, 76-13*float64(i)*1.2, date.name)
		d.Line(page.Stroke{Color: css(pen.Color), Width: 2.5}, 94, 79-13*float64(i)*1.2, 102, 79-13*float64(i)*1.2)
	}
	r.Picture = drawn(d, "The sun's paths on three days", "A round map of the sky with the sun's way at midsummer, at the equinox and at midwinter; marks at every third hour.", "Marks at 3, 6, 9, 12, 15, 18 and 21 h of zone time; the rings are 30 and 60 degree high.")
	return r, nil
}

// skyDome draws an empty map of the sky, its rim of radius 90.
func skyDome() *page.Drawing {
	d := page.NewDrawing(-125, -108, 165, 108, 420)
	for _, radius := range []float64{90, 60, 30} {
		width := 0.6
		if radius == 90 {
			width = 1.4
		}
		d.Circle(page.Stroke{Color: "var(--rule)", Width: width}, 0, 0, radius)
	}
	d.Line(page.Stroke{Color: "var(--rule)", Width: 0.6}, -90, 0, 90, 0)
	d.Line(page.Stroke{Color: "var(--rule)", Width: 0.6}, 0, -90, 0, 90)
	d.Text(page.Middle, 0, 95, "north")
	d.Text(page.Middle, 0, -104, "south")
	d.Text(page.End, -93, -3, "west")
	d.Text(page.Start, 93, -3, "east")
	return d
}

// onDome places the sun on the map of the sky.
func onDome(s lighting.Sun) (x, y float64) {
	sin, cos := math.Sincos(s.Azimuth * math.Pi / 180)
	r := 90 - math.Max(0, s.Elevation)
	return r * sin, r * cos
}
