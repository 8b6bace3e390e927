package main

import (
	"math"
	"strings"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/psychro"
)

// row is one cover on the demo house.
type row struct {
	name  string
	loss  float64 // W, through roof and walls
	sky   float64 // W, part of it that the sky takes
	u     float64 // W/(m² K), roof, air to air
	uAir  float64 // W/(m² K), roof, sensible, without the sky's part
	face  float64 // °C, coldest inner face
	drip  float64 // fraction, humidity above which some face drips
	water float64 // kg/h, condensate on roof and walls
	light float64 // fraction, at normal incidence
}

// facets of the demo house above grade: tilt, area, length along the slope.
type facet struct{ tilt, area, height float64 }

func house() []facet {
	rise := demo.RidgeHeight - demo.EaveHeight
	slope := math.Hypot(demo.Span/2, rise)
	tilt := math.Atan2(rise, demo.Span/2) * 180 / math.Pi
	return []facet{
		{tilt, 2 * slope * demo.Length, slope},
		{90, 2 * demo.EaveHeight * demo.Length, demo.EaveHeight},
		{90, 2 * demo.Span * (demo.EaveHeight + rise/2), demo.EaveHeight + rise/2},
	}
}

// skyOf returns the sky temperature in °C for the night.
func skyOf(n night) (float64, error) {
	air, err := psychro.FromRelativeHumidity(n.outside, n.outsideHumidity, psychro.StandardPressure(demo.Altitude))
	if err != nil {
		return 0, err
	}
	if err := (envelope.FractionRange).Check("cloud", n.cloud); err != nil {
		return 0, err
	}
	dew := air.DewPoint()
	if err := envelope.SkyDewPoint.Check("dew point outside", dew); err != nil {
		return 0, err
	}
	clear := envelope.SkyEmissivity(dew, 0, psychro.StandardPressure(demo.Altitude))
	return envelope.SkyTemperatureOf(n.outside, envelope.CloudySky(clear, n.cloud, 1, 1000)), nil
}

// compare solves every cover on every facet.
func compare(n night) ([]row, float64, error) {
	sky, err := skyOf(n)
	if err != nil {
		return nil, 0, err
	}
	covers := envelope.Covers()
	for _, i := range []int{0, 4, 2} {
		screened, err := envelope.WithScreen(covers[i].Cover, envelope.AluminisedScreen)
		if err != nil {
			return nil, 0, err
		}
		covers = append(covers, envelope.NamedCover{Name: covers[i].Name + ", screen drawn", Cover: screened})
	}
	var rows []row
	for _, c := range covers {
		r := row{name: c.Name, light: c.Light, face: math.Inf(1), drip: math.Inf(1)}
		if c.Light == 0 {
			r.light = math.NaN()
		}
		for i, f := range house() {
			k := envelope.DefaultConditions()
			k.Inside, k.InsideRadiant, k.InsideHumidity = n.inside, n.inside, n.humidity
			k.Outside, k.Ground, k.Sky, k.Wind = n.outside, n.outside, sky, n.wind
			k.Pressure = psychro.StandardPressure(demo.Altitude)
			k.Tilt, k.Height = f.tilt, f.height
			dry, err := c.Cover.Solve(k)
			if err != nil {
				return nil, 0, err
			}
			r.drip = math.Min(r.drip, dry.DripHumidity)
			k.InnerFace = envelope.InnerAuto
			s, err := c.Cover.Solve(k)
			if err != nil {
				return nil, 0, err
			}
			r.loss += f.area * s.FluxIn
			r.sky += f.area * s.SkyDriven
			r.water += f.area * math.Max(0, s.Condensate) * 3600
			r.face = math.Min(r.face, s.InnerTemperature)
			if i == 0 {
				r.u, r.uAir = s.U, s.UAir
			}
		}
		rows = append(rows, r)
	}
	return rows, sky, nil
}

// oneLine puts joined errors on one line.
func oneLine(err error) string { return strings.ReplaceAll(err.Error(), "\n", "; ") }
